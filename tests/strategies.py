"""Hypothesis strategies: written rows that are right by construction, and the same rows with one number changed.

A row is built from moves. A move knows its words, the things of the edge it takes, in order, and what it makes of them;
the edge a row is worked into is simply everything its moves take, one after the other. So the right answer is known
before anybody reads a word.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from hypothesis import strategies as st

SIZE_NAMES = ("XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X", "8X")
# Of treble, which no other move makes: so nothing but the name makes one.
DEFINITIONS = {"V-st": "(tr, ch 1, tr) in st or sp indicated", "shell": "5 tr in st or sp indicated"}


@dataclass(frozen=True)
class Move:
    """A few words of a row: what they take from the edge and what they make. `own`: named stitches of the pattern."""

    words: str
    takes: tuple[str, ...]
    makes: tuple[str, ...]
    own: tuple[str, ...] = ()


@dataclass(frozen=True)
class MadeRow:
    """A row and all that must come of it, per size. `faulty`: sizes in which it is wrong, `fault` by which name."""

    text: str
    shape: str
    sizes: tuple[str, ...]
    priors: tuple[str, ...]
    made: tuple[int, ...]
    taken: tuple[int, ...]
    after: tuple[tuple[str, ...], ...]
    own: tuple[dict[str, int], ...]
    definitions: dict[str, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    faulty: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()


def is_stitch(item: str) -> bool:
    """Whether a thing on an edge counts as a stitch."""
    return not item.endswith(" sp")


def stitches(items: Sequence[str]) -> int:
    """How many of these things are stitches."""
    return sum(is_stitch(item) for item in items)


def listed(values: Sequence[int], shape: str = "round") -> str:
    """A size list as printed: `84`, `84 (90, 96)`, `84 [90, 96]` or `84 (90, 96) (102, 108)`."""
    if len(values) == 1:
        return str(values[0])
    first, rest = values[0], values[1:]
    if shape == "square":
        return f"{first} [{', '.join(map(str, rest))}]"
    if shape == "grouped" and len(rest) > 3:
        return f"{first} ({', '.join(map(str, rest[:2]))}) ({', '.join(map(str, rest[2:]))})"
    return f"{first} ({', '.join(map(str, rest))})"


# -- moves -----------------------------------------------------------------------------------------------------------

PLAIN = st.sampled_from(["sc", "hdc", "dc"])


def called(name: str, number: int, by_name: bool) -> str:
    """`next 3 sts` or `next 3 dc`."""
    if by_name:
        return name
    return "st" if number == 1 else "sts"


@st.composite
def stitch_moves(draw: st.DrawFn, below: str, by_name: bool) -> Move:
    """A move that takes stitches named `below`."""
    stitch = draw(PLAIN)
    number = draw(st.integers(1, 6))
    thing, one = called(below, number, by_name), called(below, 1, by_name)
    kind = draw(st.sampled_from(["plain", "each of", "inc", "tog", "sk", "group", "post", "own", "tog3"]))
    if kind == "plain":
        words = f"{stitch} in next {thing}" if number == 1 else f"{stitch} in next {number} {thing}"
        return Move(words, (below,) * number, (stitch,) * number)
    if kind == "each of":
        return Move(
            f"{stitch} in each of next {number + 1} {called(below, 2, by_name)}",
            (below,) * (number + 1),
            (stitch,) * (number + 1),
        )
    if kind == "inc":
        many = draw(st.integers(2, 5))
        return Move(f"{many} {stitch} in next {one}", (below,), (stitch,) * many)
    if kind in ("tog", "tog3"):
        together = 2 if kind == "tog" else 3
        return Move(f"{stitch}{together}tog", (below,) * together, (f"{stitch}{together}tog",))
    if kind == "sk":
        return Move(f"sk next {number} {thing}" if number > 1 else f"sk next {thing}", (below,) * number, ())
    if kind == "post":
        side = draw(st.sampled_from(["FP", "BP"]))
        return Move(f"{side}dc around next {one}", (below,), (f"{side}dc",))
    if kind == "own":
        name = draw(st.sampled_from(sorted(DEFINITIONS)))
        makes = ("tr", "ch-1 sp", "tr") if name == "V-st" else ("tr",) * 5
        return Move(f"{name} in next {one}", (below,), makes, (name,))
    left, chain, right = draw(st.integers(1, 3)), draw(st.integers(1, 4)), draw(st.integers(1, 3))
    makes = ("dc",) * left + (f"ch-{chain} sp",) + ("dc",) * right
    side = [f"{n} dc" if n > 1 else "dc" for n in (left, right)]
    return Move(f"({side[0]}, ch {chain}, {side[1]}) in next {one}", (below,), makes)


@st.composite
def space_moves(draw: st.DrawFn, length: int) -> Move:
    """A move into one ch-`length` space."""
    stitch = draw(PLAIN)
    many = draw(st.integers(1, 6))
    sp = draw(st.sampled_from([f"ch-{length} sp", f"ch-{length} sp", "sp", f"ch-{length} loop"]))
    if draw(st.booleans()):
        words = f"{stitch} in next {sp}" if many == 1 else f"{many} {stitch} in next {sp}"
        return Move(words, (f"ch-{length} sp",), (stitch,) * many)
    chain = draw(st.integers(1, 3))
    return Move(
        f"({stitch}, ch {chain}, {stitch}) in next {sp}", (f"ch-{length} sp",), (stitch, f"ch-{chain} sp", stitch)
    )


@st.composite
def bodies(draw: st.DrawFn, below: str, length: int | None, by_name: bool) -> tuple[Move, ...]:
    """One to five moves that can stand in a repeat; chains lie between stitches, and something is taken."""
    moves: list[Move] = []
    for _ in range(draw(st.integers(1, 5))):
        into_space = length is not None and draw(st.booleans())
        moves.append(draw(space_moves(length) if into_space and length is not None else stitch_moves(below, by_name)))
        if draw(st.integers(0, 3)) == 0:
            chain = draw(st.integers(1, 6))
            moves.append(Move(f"ch {chain}", (), (f"ch-{chain} sp",)))
    if not any(move.makes and not move.words.startswith("ch ") for move in moves):
        moves.insert(0, Move(f"sc in next {called(below, 1, by_name)}", (below,), ("sc",)))
    return tuple(moves)


def words_of(moves: Sequence[Move]) -> str:
    return ", ".join(move.words for move in moves)


def taken_by(moves: Sequence[Move]) -> tuple[str, ...]:
    return tuple(item for move in moves for item in move.takes)


def made_by(moves: Sequence[Move]) -> tuple[str, ...]:
    return tuple(item for move in moves for item in move.makes)


def runs(groups: Sequence[tuple[int, Sequence[str]]]) -> str:
    """An edge in runs notation: `3 sc, 8 x (dc, ch-1 sp)`."""
    parts = []
    for times, items in groups:
        if not items or not times:
            continue
        inner = ", ".join(items)
        parts.append(inner if times == 1 else f"{times} x ({inner})")
    return ", ".join(parts)


# -- whole rows ------------------------------------------------------------------------------------------------------


@st.composite
def sizes_and_times(draw: st.DrawFn) -> tuple[tuple[str, ...], tuple[int, ...]]:
    """One to six sizes and how often the repeat runs in each (at least twice)."""
    many = draw(st.sampled_from([1, 1, 3, 4, 6]))
    first = draw(st.integers(2, 12))
    steps = draw(st.lists(st.integers(0, 4), min_size=many - 1, max_size=many - 1))
    times = [first]
    for step in steps:
        times.append(times[-1] + step)
    return SIZE_NAMES[:many], tuple(times)


@st.composite
def repeat_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 1, [start,] *body; rep from * around|to last n|n more times [, end]; join. (count)`."""
    sizes, times = draw(sizes_and_times())
    below = draw(PLAIN)
    length = draw(st.sampled_from([None, None, 1, 2, 3]))
    by_name = draw(st.booleans())
    body = draw(bodies(below, length, by_name))
    start = tuple(draw(st.lists(stitch_moves(below, by_name), max_size=2)))
    end = tuple(draw(st.lists(stitch_moves(below, by_name), max_size=2)))
    form = draw(st.sampled_from(["around", "to last", "more", "bracket"]))
    if form == "around":
        end = ()
    if form == "to last" and (not end or not ends_on_stitches(body, end)):
        form = "more"
    shape = draw(st.sampled_from(["flat", "joined rounds", "half-twist band"]))
    per_size = [(*start, *body * number, *end) for number in times]
    priors = [runs([(1, taken_by(start)), (number, taken_by(body)), (1, taken_by(end))]) for number in times]
    middle = repeat_words(form, body, end, times, shape)
    text = ", ".join(part for part in (words_of(start), middle, words_of(end)) if part)
    return finished(draw, f"Ch 1, {text}", shape, sizes, priors, per_size)


def ends_on_stitches(body: Sequence[Move], end: Sequence[Move]) -> bool:
    """Whether "to last n sts" says where the repeats stop: only stitches at the end, and no space just before it."""
    return all(is_stitch(item) for item in taken_by(end)) and bool(taken_by(body)) and is_stitch(taken_by(body)[-1])


def repeat_words(form: str, body: Sequence[Move], end: Sequence[Move], times: Sequence[int], shape: str) -> str:
    """The repeat as it is written."""
    inside, edge = words_of(body), "across" if shape == "flat" else "around"
    if form == "around":
        return f"*{inside}; rep from * {edge}"
    if form == "to last":
        last = len(taken_by(end))
        return f"*{inside}; rep from * {edge} to last {last} st{'s' if last > 1 else ''}"
    if form == "more":
        more = listed([number - 1 for number in times])
        return f"*{inside}; rep from * {more} more time{'' if more == '1' else 's'}"
    return f"({inside}) {listed(times)} times"


def finished(
    draw: st.DrawFn,
    text: str,
    shape: str,
    sizes: tuple[str, ...],
    priors: Sequence[str],
    per_size: Sequence[Sequence[Move]],
    first: tuple[str, ...] = (),
) -> MadeRow:
    """The row with its ending and its stated count; `first`: what a counting chain stands for."""
    after = tuple((*first, *made_by(moves)) for moves in per_size)
    made = tuple(stitches(items) for items in after)
    taken = tuple(stitches(taken_by(moves)) + (1 if first else 0) for moves in per_size)
    own = tuple({name: sum(name in move.own for move in moves) for name in DEFINITIONS} for moves in per_size)
    number = listed(made, draw(st.sampled_from(["round", "square", "grouped"])))
    count = draw(st.sampled_from([f"[{number}]", f"({number} sts)", f"[{number} sts]"]))
    ending = "turn" if shape == "flat" else "join"
    return MadeRow(
        text=f"{text}, {ending}. {count}",
        shape=shape,
        sizes=sizes,
        priors=tuple(priors),
        made=made,
        taken=taken,
        after=after,
        own=own,
        definitions=dict(DEFINITIONS),
        notes=("Ch 1 at beg does not count as a st.", "Ch 3 at beg counts as a dc."),
    )


@st.composite
def counting_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 3, dc in next st, *body; rep from * around`: the ch-3 stands on the first stitch."""
    sizes, times = draw(sizes_and_times())
    below = draw(PLAIN)
    by_name = draw(st.booleans())
    plain = draw(st.integers(0, 3))
    start = (
        (Move(f"dc in next {plain} {called(below, plain, by_name)}", (below,) * plain, ("dc",) * plain),)
        if plain
        else ()
    )
    body = draw(bodies(below, draw(st.sampled_from([None, 1, 2])), by_name))
    shape = draw(st.sampled_from(["flat", "joined rounds"]))
    per_size = [(*start, *body * number) for number in times]
    priors = [runs([(1, (below, *taken_by(start))), (number, taken_by(body))]) for number in times]
    middle = repeat_words("around", body, (), times, shape)
    text = ", ".join(part for part in ("Ch 3", words_of(start), middle) if part)
    return finished(draw, text, shape, sizes, priors, per_size, ("dc",))


@st.composite
def each_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 1, [start,] sc in each st [and 2 sc in each sp] around`, over a plain or a repeated edge."""
    sizes, times = draw(sizes_and_times())
    below, stitch = draw(PLAIN), draw(PLAIN)
    length = draw(st.sampled_from([None, 1, 2, 3]))
    unit: tuple[str, ...] = (below,) * draw(st.integers(1, 4)) + ((f"ch-{length} sp",) if length else ())
    many = draw(st.integers(1, 4))
    shape = draw(st.sampled_from(["flat", "joined rounds"]))
    edge = "across" if shape == "flat" else "around"
    into_sp = f" and {many} {stitch} in each ch-{length} sp" if many > 1 else f" and in each ch-{length} sp"
    text = f"{stitch} in each st{into_sp if length else ''} {edge}"
    moves = tuple(Move("", (item,), (stitch,) * (1 if is_stitch(item) else many)) for item in unit)
    per_size = [moves * number for number in times]
    priors = [runs([(number, unit)]) for number in times]
    return finished(draw, f"Ch 1, {text}", shape, sizes, priors, per_size)


@st.composite
def to_last_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn`: ends worked one way, the middle another."""
    sizes, times = draw(sizes_and_times())
    below, stitch = draw(PLAIN), draw(PLAIN)
    start = tuple(draw(st.lists(stitch_moves(below, by_name=False), min_size=1, max_size=2)))
    end = tuple(draw(st.lists(stitch_moves(below, by_name=False), min_size=1, max_size=2)))
    last = len(taken_by(end))
    middle = [Move("", (below,), (stitch,))]
    per_size = [(*start, *middle * number, *end) for number in times]
    priors = [f"{len(taken_by(moves))} {below}" for moves in per_size]
    to_last = f"{stitch} in each st to last {last} st{'s' if last > 1 else ''}"
    text = f"Ch 1, {words_of(start)}, {to_last}, {words_of(end)}"
    return finished(draw, text, "flat", sizes, priors, per_size)


right_rows = st.one_of(repeat_rows(), counting_rows(), each_rows(), to_last_rows())


# -- faulty ones -----------------------------------------------------------------------------------------------------

MISFITS = ("repeat-does-not-fit", "runs-short", "stitches-left-over", "stated-count-wrong")


@st.composite
def miscounted_rows(draw: st.DrawFn) -> MadeRow:
    """A right row whose stated count is off in exactly one size."""
    row = draw(right_rows)
    at = draw(st.integers(0, len(row.sizes) - 1))
    by = draw(st.sampled_from([1, 2, 7]))
    head, tail = row.text[: row.text.rindex(". ")], row.text[row.text.rindex(". ") :]
    numbers = list(re.finditer(r"\d+", tail))
    wrong = numbers[at]
    tail = tail[: wrong.start()] + str(int(wrong[0]) + by) + tail[wrong.end() :]
    faults = ("stated-count-wrong", "turning-chain-convention")[: 2 if row.text.startswith("Ch 3") else 1]
    return replace(row, text=head + tail, faulty=(row.sizes[at],), faults=faults)


@st.composite
def misfit_rows(draw: st.DrawFn) -> MadeRow:
    """A right row over an edge that has one or more stitches too many at its end in one size."""
    row = draw(st.one_of(repeat_rows(), counting_rows()).filter(asks_for_stitches))
    at = draw(st.integers(0, len(row.sizes) - 1))
    extra = draw(st.integers(1, 3))
    priors = list(row.priors)
    name = last_name(priors[at])
    priors[at] = f"{priors[at]}, {extra} {name}"
    return replace(row, priors=tuple(priors), faulty=(row.sizes[at],), faults=MISFITS)


def asks_for_stitches(row: MadeRow) -> bool:
    """Whether the row's own steps, not only its counting chain, go into stitches: then every stitch is owed."""
    chain = 1 if row.text.startswith("Ch 3") else 0
    return all(taken > chain for taken in row.taken)


def last_name(prior: str) -> str:
    """A stitch that an edge already has."""
    return next(name for name in ("sc", "hdc", "dc") if re.search(rf"\b{name}\b", prior))
