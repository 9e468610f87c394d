"""Passages over rows as they are read: rates, even rows, lengths, and written back in house style."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.formula import Amount, Name, PerSize
from gradegen.design.passages import EvenRows, Rate, Shaping
from gradegen.design.rows import Number, Row, RowsAgain, Unread
from gradegen.findings import Written
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.write.notation.row import write_row

SIZES = ("S", "M", "L")
NAMES = RowNames(sizes=SIZES, counts=frozenset({"band"}), measures=frozenset({"length"}))


def read(text: str) -> Row:
    row, _ = read_row(Written.plain(text), NAMES)
    return row


def shapings(text: str) -> list[Shaping]:
    row = read(text)
    assert not [step for step in row.steps if isinstance(step, Unread)], row.steps
    return [step for step in row.steps if isinstance(step, Shaping)]


def values(number: Number | None) -> tuple[int | None, ...] | None:
    return None if number is None else number.values


def rates(text: str) -> list[tuple[object, object]]:
    (one,) = shapings(text)
    return [(values(rate.every), values(rate.times)) for rate in one.rates]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Dec 1 st at each end of next row, then every 4th row 6 (7, 8) times", [((1,), (1,)), ((4,), (6, 7, 8))]),
        ("Inc 1 st at beg and end of every 10th row 5 times (all sizes)", [((10,), (5,))]),
        ("Dec 1 st each end every other row 3 (3, 4) times", [((2,), (3, 3, 4))]),
        ("Dec 1 st at both ends of every alt row twice", [((2,), (2,))]),
        ("Dec 1 st each side every row once, then every fourth row 9 times", [((1,), (1,)), ((4,), (9,))]),
        ("Bind off 5 (6, 7) sts at beg of next 2 rows", [((1,), (2,))]),
        ("Dec 1 st at each end of foll 4 alt rows", [((2,), (4,))]),
        ("Dec 1 st at each end of every 4th (6th, 6th) row 3 times", [((4, 6, 6), (3,))]),
        ("Dec 1 st at each end of every 4 (6, 6) rows 3 times", [((4, 6, 6), (3,))]),
        ("Inc 1 st at each end of next 3 rows, and every 6th row 2 times", [((1,), (3,)), ((6,), (2,))]),
        ("Every RS row, dec 1 st at each end 5 times", [((2,), (5,))]),
        ("Inc 8 sts evenly every other rnd 5 times", [((2,), (5,))]),
    ],
)
def test_rates(text: str, expected: list[tuple[object, object]]) -> None:
    assert rates(text) == expected


def test_where_and_how_much() -> None:
    (one,) = shapings("Dec 1 st at neck edge every row 4 times")
    assert one.change is not None
    assert (one.change.sign, one.change.where, one.edge) == (-1, "one end", "at neck edge")
    (late,) = shapings("Dec 1 st every row at neck edge")
    assert late.edge == "at neck edge"
    (both,) = shapings("Inc one sc at each end of every 3rd row 4 times")
    assert both.change is not None
    assert (both.change.sign, values(both.change.number), both.change.where) == (1, (1,), "each end")


def test_a_second_edge_or_number_begins_another_shaping() -> None:
    first, second = shapings("Bind off 5 sts at beg of next 2 rows, then 3 sts at beg of next 4 rows")
    assert [values(one.change.number) for one in (first, second) if one.change] == [(5,), (3,)]
    neck, arm = shapings("Dec 1 st at neck edge every row 4 times, then at armhole edge every other row twice")
    assert (neck.edge, arm.edge) == ("at neck edge", "at armhole edge")


def rate(text: str) -> Rate:
    (one,) = shapings(text)
    return one.rates[0]


def test_more_times_and_in_all() -> None:
    assert rate("Rep Dec Row every 4th row 6 more times").how == "more"
    assert rate("Dec 1 st at each end of every 4th row 6 times in all").how == "in all"
    assert rate("Dec 1 st at each end of every 4th row 6 times").how == ""


def test_until_a_count() -> None:
    one = rate("Dec 1 st at each end on next and every foll alt row until 40 (44, 48) sts rem")
    assert (one.with_next, values(one.every), values(one.until), one.times) == (True, (2,), (40, 44, 48), None)
    assert values(rate("Inc 1 st at each end of every 4th row to 60 sts").until) == (60,)
    assert values(rate("Inc 1 st each end every 4th row until there are 60 sts").until) == (60,)


def test_sides_and_alternation() -> None:
    assert rate("Dec 1 st at each end of every RS row 5 times").side == "RS"
    last = shapings("Inc 1 st each end every 4th row 20 times, then alternately every 2nd and 4th row 8 times")[
        0
    ].rates[-1]
    assert (values(last.every), values(last.alternate), values(last.times)) == ((2,), (4,), (8,))


def test_named_rows_are_events() -> None:
    (dec,) = shapings("Rep Dec Row every RS row 5 more times")
    assert (dec.change, dec.labels, dec.repeats) == (None, ("Dec",), True)
    (last,) = shapings("Rep last row every 4th row 5 times")
    assert last.labels == ("last",)
    (work,) = shapings("Work Dec Row on next row, then every 4th row 6 times")
    assert (work.labels, work.repeats) == (("Dec",), False)


def test_at_the_same_time() -> None:
    (arm,) = shapings(
        "Dec 1 st at armhole edge every other row 6 times, AT THE SAME TIME, beg with row 9 (11, 13) of these, "
        "dec 1 st at neck edge every row 4 times"
    )
    (neck,) = arm.together
    assert values(neck.after) == (8, 10, 12)
    assert neck.edge == "at neck edge"
    (other,) = shapings(
        "Dec 1 st at each end every other row 6 times, at the same time, beg on 9th row, "
        "dec 1 st at neck edge every row 4 times"
    )
    assert values(other.together[0].after) == (8,)


def even(text: str) -> EvenRows:
    (step,) = read(text).steps
    assert isinstance(step, EvenRows), step
    return step


@pytest.mark.parametrize(
    ("text", "stitch", "rows"),
    [
        ("Work even in sc for 6 rows", "sc", (6,)),
        ("Work 5 rows even", None, (5,)),
        ("Work plain for 4 (5, 6) rows", None, (4, 5, 6)),
        ("Sc even for 4 rnds", "sc", (4,)),
        ("Continue in pattern for 8 more rows", None, (8,)),
        ("Work 2 rounds in hdc", "hdc", (2,)),
    ],
)
def test_even_rows(text: str, stitch: str | None, rows: tuple[int, ...]) -> None:
    step = even(text)
    assert (step.stitch, values(step.rows), step.until) == (stitch, rows, None)


def test_even_rows_up_to_a_length() -> None:
    until = even("Work even until piece measures 17 (17½, 18) in (43 cm) from beg, ending with a WS row").until
    assert until is not None
    assert isinstance(until.measure, PerSize)
    assert [amount.number for amount in until.measure.each] == [17, 17.5, 18]
    assert (until.of, until.since, until.side) == ("piece", "", "WS")
    sleeve = even("Work even until sleeve measures 9 in / 23 cm from underarm").until
    assert sleeve is not None
    assert isinstance(sleeve.measure, Amount)
    assert (sleeve.of, sleeve.since) == ("sleeve", "underarm")


def test_rows_repeated_up_to_a_length() -> None:
    (again,) = read("Rep Rows 3 and 4 until piece measures {length}, ending with a WS row.").steps
    assert isinstance(again, RowsAgain)
    assert again.measure is not None
    assert isinstance(again.measure.measure, Name)
    assert again.measure.measure.name == "length"


@pytest.mark.parametrize(
    "text",
    [
        "Dec 6 sts evenly across",
        "Inc in every 4th sc",
        "Sc in each st across, turn",
        "Work even",
        "Increase in every 3rd st",
        "Work even until desired length",
    ],
)
def test_what_counts_no_rows_is_no_passage(text: str) -> None:
    assert not [step for step in read(text).steps if isinstance(step, (Shaping, EvenRows))]


def test_lists_of_ordinals_are_lists_for_printing() -> None:
    row = read("Dec 1 st at each end of every 4th [6th: 6th] row 3 times")
    assert ("4th", "6th", "6th") in [listed.values for listed in row.lists]


def test_a_size_that_skips_a_part_is_told_in_brackets() -> None:
    row = read("Dec 1 st at each end of every 4th row 0 (1, 2) times (S: skip this part), then every 6th row 3 times")
    (one,) = [step for step in row.steps if isinstance(step, Shaping)]
    assert len(row.steps) == 1
    assert [values(rate.times) for rate in one.rates] == [(0, 1, 2), (3,)]


# ---- written back in house style: reading gives the same tree -------------------------------------------------------

per_size = st.one_of(
    st.integers(1, 30).map(lambda n: str(n)),
    st.lists(st.integers(1, 30), min_size=3, max_size=3)
    .filter(lambda t: len(set(t)) > 1)
    .map(lambda t: f"{t[0]} ({t[1]}, {t[2]})"),
)
every = st.sampled_from(["every row", "every other row", "every 4th row", "every 6th (8th, 8th) row", "every RS row"])
one_rate = st.builds(lambda e, n: f"{e} {n} times", every, per_size)
places = st.sampled_from(["at each end", "at neck edge", "at armhole edge", "evenly"])


@st.composite
def passages(draw: st.DrawFn) -> str:
    verb, number = draw(st.sampled_from(["dec", "inc"])), draw(st.sampled_from(["1 st", "2 sts"]))
    listed = draw(st.lists(one_rate, min_size=1, max_size=3))
    first = draw(st.sampled_from(["", "next row, then "]))
    words = f"{verb} {number} {draw(places)} {first}{', then '.join(listed)}"
    if draw(st.booleans()):
        beg = f"beg with row {draw(st.integers(2, 30))} of these"
        words += f", at the same time, {beg}, dec 1 st at neck edge {draw(one_rate)}"
    if draw(st.booleans()):
        words += f". Work even for {draw(st.integers(2, 9))} rows"
    return words


@given(passages())
@settings(max_examples=150, derandomize=True, deadline=None)
def test_read_print_read_gives_the_same_steps(text: str) -> None:
    row = read(text)
    printed = write_row(row, sizes=SIZES)
    assert read(printed).steps == row.steps, printed


def test_one_size_alone_has_single_numbers_and_no_part_it_skips() -> None:
    row = read("Dec 1 st at each end of next row, then every 4th row 6 (0, 8) times, then every 6th row 3 (1, 4) times")
    assert write_row(row, sizes=SIZES, size="M") == "Dec 1 st at each end of next row, then every 6th row once."
