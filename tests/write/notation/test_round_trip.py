"""Read, print, read: the tree stays the same, for rows of our own and for trees made up by chance."""

from __future__ import annotations

import os
from dataclasses import fields, is_dataclass
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, note, settings
from hypothesis import strategies as st

from gradegen.design.rows import (
    Bound,
    Chain,
    Change,
    Counts,
    Even,
    Into,
    Join,
    Label,
    Make,
    Number,
    Repeat,
    Row,
    Skip,
    Slip,
    Stated,
    Step,
    Thing,
    Times,
    Turn,
    Unread,
    Work,
)
from gradegen.findings import Place, Written
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.pattern.file import read_pattern_and_table
from gradegen.trade.folders import data_folder
from gradegen.trade.stitches import Terms
from gradegen.write.notation.row import write_row

SIZES = ("S", "M", "L")
NOWHERE = Place("<made up>", 1, 1, 1, 1)
COUNTS = frozenset({"band", "body"})
EXAMPLES = int(os.environ.get("GRADEGEN_EXAMPLES", "120"))  # more by hand, before a release


def read(text: str, terms: Terms = "US") -> Row:
    row, _ = read_row(Written.plain(text), RowNames(terms, SIZES, counts=COUNTS))
    assert row is not None
    return row


def holds_unread(part: Any) -> bool:
    if isinstance(part, Unread):
        return True
    if isinstance(part, tuple):
        return any(holds_unread(item) for item in part)
    return is_dataclass(part) and any(holds_unread(getattr(part, each.name)) for each in fields(part))


def assert_same(row: Row, again: Row) -> None:
    """Equal but for the words of the label, which house style may write otherwise."""
    assert again.steps == row.steps
    assert again.stated == row.stated
    assert (again.side, again.sizes, again.turning_chain) == (row.side, row.sizes, row.turning_chain)
    for name in ("kind", "name", "first", "last", "listed", "rows"):
        assert getattr(again.label, name) == getattr(row.label, name), name


# ---- rows of our own -------------------------------------------------------------------------------------------------

ROWS = """
Row 1: Sc in 2nd ch from hook and in each ch across. (24 sc)
Row 2: Ch 1, sc in each st across, turn.
Row 3 (RS): Ch 3 (counts as dc), dc in next 4 sts, ch 2, sk next 2 sts, dc in last st, turn. (6 dc, 1 ch-2 sp)
Row 4: Ch 1 (does not count as a st), (2 dc, ch 2, 2 dc) in next ch-2 sp, turn.
Rnd 5: *Sc in next 3 sts, inc; rep from * around; join. (30)
Rnd 6: *Sc in next 4 sts, inc; rep from * to last 2 sts, sc in last 2 sts; join.
Rnd 7: (Dc in next st, ch 1, sk 1 st) 12 times; join with sl st in top of beg ch. (12 dc, 12 ch-1 sps)
Rnd 8: *Dc in next sp, ch 2; rep from * 5 more times; join.
Rnd 9: *Dc in next sp, ch 2; rep from * 5 times; join.
Rnd 10: **Ch 4, *sc in next sp; rep from * 2 more times; rep from ** around; join.
Row 11: Sc2tog, sc in next 8 (10, 12) sts, sc2tog, turn. (10 (12, 14) sts)
Row 12: FPdc around next dc, BPdc around next dc, hdc in same st.
Row 13: Sc in first st, sc in each st to last st, 2 sc in last st.
Row 14: Sl st in next 3 sts, sc in next st.
Row 15: Ch 4 (counts as dc and ch-1 sp), sk next st, dc in next st.
Row 16: Sc in back loop only of each st across.
Rows 17-20: Sc in each st across.
Rows 21 and 22: Dc in each st across.
Rnds 23-26 (27, 28): Sc in each st around.
Row 30 (M and L only): Sc in each st across. (84 (90, 96) sts)
Row 31: Inc 4 sts evenly across. (28)
Row 32: Dec 1 st at each end.
Row 33: Work even in sc.
Row 34: Rep Rows 2 and 3.
Foundation: Ch {band}, join with sl st to form ring.
Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.
Rnd 35: Sc in next {2 * body + 1} sts.
Row 36: Hdc in next 5 sts, turn, leave rem sts unworked.
Row 37: 3-dc cluster in next st, picot, popcorn in next st.
Row 38: *3 dc in next ch-1 sp, ch 1; rep from * to next ch-3 sp, (3 dc, ch 3, 3 dc) in next ch-3 sp.
Row 39: 2 sc in each of next 3 sts, sc in each of next 2 sts.
Row 40: [(Dc in next st, ch 1) 3 times, sk next st] 4 times.
Row 41: Sc in top of tch, sl st in ring, dc in 3rd dc of next group.
Row 42: Sc in each sc and ch-1 sp across.
Next row: Sc in each st across.
Next 4 rows: Sc in each st across.
Sc in each st across, turn.
Rnd 43: *Sc in next st, **ch 3, sk next st; rep from * around, ending last rep at **; join.
Row 44: Rep Row 2 8 (10, 12) times.
Row 45: Rep Rows 3-6 2 more times.
Row 46: Sl st to next ch-2 sp, ch 3, dc in same sp.
Row 47: Sc in next st, ch 3, sk 2 sts, sc in next st. (2 sc, 1 ch-3 sp)
Row 48: Dc3tog, 2 hdc in next st, dc2tog 3 times.
Row 49: Sc in next 0 (1, 2) sts, dc in next 3 sts.
Row 50: Dc in each of next 10 sts and in top of tch, turn.
"""
OWN = [line for line in ROWS.strip().splitlines()]


@pytest.mark.parametrize("text", OWN)
def test_our_own_rows_come_back_as_the_same_rows(text: str) -> None:
    row = read(text)
    assert not holds_unread(row.steps), "these are common forms"
    written = write_row(row, sizes=SIZES)
    again = read(written)
    assert_same(row, again)
    assert write_row(again, sizes=SIZES) == written, "house style written again is the same text"


@pytest.mark.parametrize("text", OWN)
def test_the_same_in_uk_terms(text: str) -> None:
    row = read(text)
    assert_same(row, read(write_row(row, sizes=SIZES, terms="UK"), "UK"))


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("text", OWN)
def test_one_size_is_read_without_a_list(text: str, size: str) -> None:
    written = write_row(read(text), sizes=SIZES, size=size, worth=lambda formula, index: 12)
    row, findings = read_row(Written.plain(written), RowNames("US", (size,)))
    assert not holds_unread(row.steps)
    assert not findings
    assert not any("(" in text for listed in row.lists for text in listed.values)
    assert all(len(one.number.values) == 1 for one in row.stated)


# ---- the demos -------------------------------------------------------------------------------------------------------


DEMOS = [path for path in sorted(data_folder("shared").glob("patterns/*.yaml")) if "pieces:" in path.read_text("utf-8")]


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_the_demos_rows_come_back_as_the_same_rows(path: Path) -> None:
    both, _ = read_pattern_and_table(path)
    assert both is not None
    pattern, table = both
    own = {definition.name: definition for definition in pattern.definitions}
    names = RowNames(
        pattern.terms, table.sizes, own, counts=frozenset(pattern.counts), measures=frozenset(pattern.measures)
    )
    for piece in pattern.pieces:
        for row in piece.rows:
            again, _ = read_row(Written.plain(write_row(row, sizes=table.sizes, terms=pattern.terms)), names)
            assert_same(row, again)


# ---- trees made up by chance -----------------------------------------------------------------------------------------


def _number(value: int | tuple[int, ...]) -> Number:
    return Number(value if isinstance(value, tuple) else (value,), place=NOWHERE)


numbers = st.one_of(
    st.integers(2, 60).map(_number),
    st.lists(st.integers(2, 200), min_size=3, max_size=3)
    .filter(lambda n: len(set(n)) > 1)
    .map(lambda n: _number(tuple(n))),
)
plain_numbers = st.integers(2, 9).map(_number)
plain = st.sampled_from(["sc", "hdc", "dc", "tr", "dtr"])
posts = st.sampled_from(["FPdc", "BPdc", "FPtr", "BPhdc"])
spaces = st.integers(1, 5).map(lambda n: Thing("sp", _number(n)))
things = st.one_of(st.just(Thing("st")), plain.map(Thing), spaces)
makes = st.builds(lambda name, times: Make(name, times, place=NOWHERE), plain, st.one_of(st.none(), plain_numbers))
chains_in = st.builds(lambda n: Make("ch", _number(n), place=NOWHERE), st.integers(2, 5))


def _into(which: str, thing: Thing, number: Number | None = None, bound: Bound | None = None) -> Into:
    return Into(which, (thing,), number, bound=bound, place=NOWHERE)  # type: ignore[arg-type]


nexts = st.builds(lambda thing, number: _into("next", thing, number), things, st.one_of(st.none(), numbers))
bounds = st.one_of(
    st.just(Bound("end")),
    st.builds(lambda n, thing: Bound("last", n, thing), st.one_of(st.none(), plain_numbers), things),
    spaces.map(lambda thing: Bound("thing", thing=thing)),
)
ones = st.one_of(
    nexts,
    things.map(lambda thing: _into("first", thing)),
    st.builds(lambda thing, n: _into("last", thing, n), things, st.one_of(st.none(), plain_numbers)),
    st.builds(lambda thing, bound: _into("each", thing, None, bound), things, bounds),
    st.builds(lambda thing, n: _into("each", thing, n), things, plain_numbers),
)
one_place = st.one_of(
    things.map(lambda thing: _into("next", thing)),
    things.map(lambda thing: _into("first", thing)),
    things.map(lambda thing: _into("last", thing)),
    st.just(Into("ring", place=NOWHERE)),
)
works = st.one_of(
    st.builds(lambda name, into: Work((Make(name, place=NOWHERE),), into, place=NOWHERE), plain, ones),
    st.builds(lambda make, into: Work((make,), into, place=NOWHERE), makes, one_place),
    st.builds(lambda a, b, c, into: Work((a, b, c), into, place=NOWHERE), makes, chains_in, makes, one_place),
    st.builds(
        lambda name, thing: Work((Make(name, place=NOWHERE),), _into("next", thing), place=NOWHERE),
        posts,
        plain.map(Thing),
    ),
    st.sampled_from(["sc2tog", "dc3tog", "inc", "dec", "hdc inc"]).map(
        lambda name: Work((Make(name, place=NOWHERE),), _into("next", Thing("st")), place=NOWHERE)
    ),
)
skips = nexts.map(lambda into: Skip(into, place=NOWHERE))
middle = st.one_of(works, skips, st.integers(1, 9).map(lambda n: Chain(_number(n), place=NOWHERE)))
bodies = st.lists(middle, min_size=1, max_size=4).filter(lambda body: any(isinstance(step, Work) for step in body))
often = st.one_of(
    numbers.map(lambda n: Times("in all", n)),
    plain_numbers.map(lambda n: Times("more", n)),
    plain_numbers.map(lambda n: Times("unsure", n)),
    st.just(Times("more", _number(1))),
    bounds.map(lambda bound: Times("bound", bound=bound)),
)


def _repeat(body: list[Step], times: Times) -> Repeat:
    return Repeat(tuple(body), times, place=NOWHERE)


repeats = st.builds(_repeat, bodies, often)
nested = st.builds(
    lambda body, inner, times: _repeat([*body, inner], times),
    bodies,
    st.builds(_repeat, bodies, plain_numbers.map(lambda n: Times("in all", n))),
    often,
)
first_steps = st.one_of(
    st.none(),
    st.builds(
        lambda n, as_, on: Chain(_number(n), Counts(as_, on, place=NOWHERE), place=NOWHERE),
        st.integers(1, 5),
        st.sampled_from([(), ("dc",), ("tr",), ("dc", "ch-1 sp")]),
        st.booleans(),
    ),
)
last_steps = st.one_of(
    st.none(),
    st.just(Turn(place=NOWHERE)),
    st.just(Join(place=NOWHERE)),
    st.just(Join("first st", place=NOWHERE)),
    st.just(Join("top of chain", place=NOWHERE)),
    st.just(Join("top of chain", _number(3), place=NOWHERE)),
)
others = st.one_of(
    st.builds(
        lambda sign, n, where: Change(sign, n, where, place=NOWHERE),
        st.sampled_from([1, -1]),
        numbers,
        st.sampled_from(["evenly", "each end"]),
    ),
    st.just(Even(place=NOWHERE)),
    plain.map(lambda name: Even(name, place=NOWHERE)),
    st.builds(lambda n: Slip(_into("next", Thing("st"), n), place=NOWHERE), plain_numbers),
)
units = st.one_of(st.just(Thing("st")), plain.map(Thing), spaces)
stated = st.lists(st.builds(lambda n, unit: Stated(n, unit, place=NOWHERE), numbers, units), max_size=3).filter(
    lambda counts: len({(one.unit.name, one.unit.length) for one in counts}) == len(counts)
)


@st.composite
def rows(draw: Any) -> Row:
    """A row in the form the reader gives: it starts with a chain or not, and ends with a turn, a join or nothing."""
    first, last = draw(first_steps), draw(last_steps)
    steps = [draw(works), *draw(st.lists(st.one_of(middle, middle, repeats, nested, others), max_size=4))]
    if isinstance(last, Turn) and isinstance(steps[-1], Chain):
        last = None  # a chain before the turn is read as the next row's
    kind = draw(st.sampled_from(["row", "round"]))
    ends = tuple(step for step in (last,) if step is not None)
    whole = tuple(step for step in (first,) if step is not None) + tuple(steps) + ends
    label = Label("", kind, first=_number(draw(st.integers(1, 99))), place=NOWHERE)
    return Row(label, whole, tuple(draw(stated)), place=NOWHERE)


SAYS_ITS_PLACE = ("sc2tog", "dc3tog", "inc", "dec", "hdc inc")


def is_read_two_ways(steps: tuple[Step, ...]) -> bool:
    """True for `dc2tog, ch 1, dc in next st`, which may be a group without brackets."""
    inner = any(is_read_two_ways(step.body) for step in steps if isinstance(step, Repeat))
    before_chain = any(
        isinstance(step, Work) and step.makes[0].stitch in SAYS_ITS_PLACE and isinstance(after, Chain)
        for step, after in pairwise(steps)
    )
    return inner or before_chain


made_up_rows = rows().filter(lambda row: not is_read_two_ways(row.steps))


@settings(derandomize=True, deadline=None, max_examples=EXAMPLES)
@given(made_up_rows)
def test_trees_come_back_as_the_same_trees(row: Row) -> None:
    written = write_row(row, sizes=SIZES)
    note(written)
    assert_same(row, read(written))


@settings(derandomize=True, deadline=None, max_examples=EXAMPLES // 2)
@given(made_up_rows)
def test_trees_come_back_through_uk_terms(row: Row) -> None:
    written = write_row(row, sizes=SIZES, terms="UK")
    note(written)
    assert_same(row, read(written, "UK"))


@settings(derandomize=True, deadline=None, max_examples=EXAMPLES // 2)
@given(made_up_rows, st.sampled_from(SIZES))
def test_one_size_never_shows_another_sizes_numbers(row: Row, size: str) -> None:
    written = write_row(row, sizes=SIZES, size=size)
    again, _ = read_row(Written.plain(written), RowNames("US", (size,)))
    assert again is not None
    assert all(len(one.number.values) == 1 for one in again.stated)
    assert [one.number.values[0] for one in again.stated] == [
        one.number.values[SIZES.index(size)] if len(one.number.values) > 1 else one.number.values[0]
        for one in row.stated
    ]
