"""Ranges of growing rows, worked at once on counts that grow: the same as row after row, and never where rows part."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

from gradegen import check_row
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Shape
from gradegen.design.worked import WorkedRow
from gradegen.findings import Written
from gradegen.read.notation.rows import read_rows
from gradegen.read.notation.words.row_names import RowNames
from gradegen.work.edge.edges import read_runs
from gradegen.work.edge.lines import Unlike, line, total
from gradegen.work.order.growing import Growing
from gradegen.work.order.sequence import RowsInOrder
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing

# -- lines -----------------------------------------------------------------------------------------------------------


def test_a_line_is_reckoned_with_like_each_of_its_counts() -> None:
    counts = [7 + 4 * t for t in range(6)]
    asked = line(7, 4, 5)
    assert (asked > 6, asked >= 6, asked < 28, asked <= 28) == (True, True, True, True)
    assert (asked == 29, asked != 0, bool(asked), min(asked, 2), max(asked, 30)) == (False, True, True, 2, 30)
    for reckoned, each in (
        (3 * asked - 1, [3 * n - 1 for n in counts]),
        (50 - asked, [50 - n for n in counts]),
        (asked // 2, [n // 2 for n in counts]),
        (sum((asked, 2, asked)), [2 * n + 2 for n in counts]),
    ):
        assert [total(reckoned, rows) for rows in range(1, 7)] == [sum(each[:rows]) for rows in range(1, 7)]
    assert (asked % 4, asked - line(5, 4, 5), asked == line(7, 4, 5)) == (3, 2, True)


@pytest.mark.parametrize(
    "asking",
    [
        lambda n: n > 15,
        lambda n: n == 15,
        lambda n: n % 3,
        lambda n: n // 8,
        lambda n: n * n,
        lambda n: range(n),
        lambda n: bool(n - 11),
        lambda n: n < line(31, -4, 5),
        lambda n: n + line(1, 1, 9),
    ],
)
def test_a_line_answers_nothing_that_its_counts_answer_otherwise(asking: object) -> None:
    with pytest.raises(Unlike):
        asking(line(7, 4, 5))  # type: ignore[operator]


# -- ranges ----------------------------------------------------------------------------------------------------------


def worked(text: str, edges: list[str], shape: Shape) -> list[WorkedRow]:
    """The rows in order, each size on its own edge."""
    sizes = tuple(f"size {n}" for n in range(1, len(edges) + 1))
    standings = [Standing(read_runs(edge)) for edge in edges]
    piece = PieceWork(shape, sizes, {}, NoteFacts(), [{} for _ in sizes], standings=standings, edge_given=True)
    order = RowsInOrder(piece)
    return [one for row in read_rows(Written.plain(text), RowNames(sizes=sizes))[0] for one in order.work(row)]


def growing_rows(dice: random.Random) -> Iterator[tuple[str, list[str], Shape]]:
    """Ranges of rows that grow, shrink, come to an end, or go off their multiple."""
    while True:
        stitch = dice.choice(["sc", "hdc", "dc"])
        begins = [f"2 {stitch} in first st", f"{stitch} in first st", f"3 {stitch} in first st", f"{stitch}2tog"]
        middle = [
            f"{stitch} in next {dice.randint(1, 9)} sts",
            f"2 {stitch} in next st",
            f"{stitch}2tog",
            "sk 1 st",
            f"ch {dice.randint(1, 3)}, sk 1 st, {stitch} in next st",
            f"({stitch} in next {dice.randint(1, 4)} sts, 2 {stitch} in next st) {dice.randint(1, 4)} times",
        ]
        ends = [
            f"{stitch} in each st across",
            f"{stitch} in each st across, 2 {stitch} in last st",
            f"{stitch} in each st to last st, 2 {stitch} in last st",
            f"{stitch} in each st to last 2 sts, {stitch}2tog",
            f"*{stitch} in next 2 sts, 2 {stitch} in next st; rep from * across",
        ]
        shape: Shape = dice.choice(["flat", "joined rounds"])
        label, end = ("Row", "turn") if shape == "flat" else ("Rnd", "join")
        steps = ["Ch 1", dice.choice(begins), *dice.sample(middle, dice.randint(0, 2)), dice.choice(ends), end]
        text = f"{label}s 2-{dice.randint(9, 60)}: {', '.join(steps)}."
        if dice.random() < 0.4:
            text = f"{label} 1: {', '.join(steps)}.\n{label} 2: {label} 1.\n{label}s 3-50: Rep {label}s 1 and 2."
        edges = ["{} sc", "{} dc, ch-2 sp, 9 dc", "2 x ({} dc, ch-1 sp)"]
        yield text, [dice.choice(edges).format(dice.randint(12, 90)) for _ in range(dice.randint(1, 3))], shape


def test_ranges_come_to_what_row_after_row_comes_to(monkeypatch: pytest.MonkeyPatch) -> None:
    leaps = 0
    take = Growing._take

    def counted(*given: object) -> bool:
        nonlocal leaps
        done = take(*given)  # type: ignore[arg-type]
        leaps += done
        return done

    monkeypatch.setattr(Growing, "_take", counted)
    cases = growing_rows(random.Random(21))
    for _, case in zip(range(120), cases, strict=False):
        at_once = worked(*case)
        with monkeypatch.context() as patch:
            patch.setattr(PieceWork, "one_by_one", True)
            assert worked(*case) == at_once, case
    assert leaps > 25


def test_a_long_range_that_grows_is_worked_to_its_end() -> None:
    """30 stitches, two more in each of 412 rows: 854."""
    text = "Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn. ({} sc)"
    for count, status in ((854, "proved"), (852, "wrong")):
        result = check_row(text.format(count), prior=30, worked="flat", sizes=["one"], label="Rows 5-416")
        assert (result.status, result.made, result.times) == (status, (854,), (412,))


def test_a_range_that_shrinks_ends_where_the_edge_does() -> None:
    """60 stitches, two less in each row: 29 rows leave 2, and the 30th cannot be worked as the others."""
    text = "Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn."
    fits = check_row(text, prior=60, worked="flat", sizes=["one"], label="Rows 2-30")
    assert (fits.status, fits.made, fits.times) == ("proved", (2,), (29,))
    assert check_row(text, prior=60, worked="flat", sizes=["one"], label="Rows 2-31").status == "wrong"
