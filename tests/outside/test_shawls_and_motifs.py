"""Shawls, rounds and motifs against the outside: published counts, worked by the engine row by row."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen import check_row
from gradegen.design.edge import Edge, Run, Target
from gradegen.design.worked import WorkedRow
from gradegen.findings import Written
from gradegen.grade.body.sums import Value, reckon, value_of
from gradegen.pipeline import check_text
from gradegen.read.sums.formula import read_formula

ONE = ("one",)


def worked(tmp_path: Path, rows: str, shape: str) -> list[WorkedRow]:
    """Every row of a text pattern in one size; all are proved."""
    path = tmp_path / "piece.txt"
    head = f"A Piece\n\nSizes: one size\nTerms: US terms\n{shape}\n\nNotes\n- Ch 1 and ch 2 do not count as a st.\n"
    path.write_text(f"{head}\nInstructions\n{rows}", encoding="utf-8")
    checked = check_text(path).checked
    assert checked is not None
    found = list(checked.worked["one size"]) if "one size" in checked.worked else list(*checked.worked.values())
    assert [(row.label, row.status) for row in found if row.status != "proved"] == []
    return found


def amount(words: str) -> Value:
    class Nothing:
        def named(self, name: object) -> Value:
            raise AssertionError(name)

        def entry(self, listed: object) -> Value:
            return value_of(listed.each[0])  # type: ignore[attr-defined]

    tree, findings = read_formula(Written.plain(words))
    assert tree is not None, findings
    return reckon(tree, Nothing())  # type: ignore[arg-type]


# ---- shawls ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("first", "each", "more"), [(7, 1, 4), (9, 1, 6), (13, 2, 8)])
def test_shawls_that_grow_every_second_row(first: int, each: int, more: int) -> None:
    """H. Hayes, Shawl Geometry (2013): a triangle grows by 4 in 2 rows, wings by 6, a crescent of 8 wedges by 8.

    Triangle: one more at both edges and on both sides of the middle; wings: one more at both edges in every row too;
    crescent (from 13): two more at both edges and on both sides of the middle. n0 + more x j after 2j rows.
    """
    twice = 2 * each
    if more == 6:
        words = (
            "Inc 1 st at each end of every row 20 times, at the same time, inc 2 sts evenly every other row 10 times."
        )
    else:
        words = (
            f"Inc {each} st{'s' if each > 1 else ''} at each end of every other row 10 times, at the same time, "
            f"inc {twice} sts evenly every other row 10 times."
        )
    right = check_row(f"{words} ({first + 10 * more} sts)", prior=first, worked="flat", sizes=ONE)
    assert (right.status, right.made, right.times) == ("proved", (first + 10 * more,), (20,))
    wrong = check_row(f"{words} ({first + 10 * more + 2} sts)", prior=first, worked="flat", sizes=ONE)
    assert {one.rule for one in wrong.findings} == {"shaping-total-differs"}


def test_a_crescents_second_row() -> None:
    """H. Hayes (2013): 61 cast on; row 2 uses 61 and makes 53."""
    row = check_row("Ch 1, turn, sc in each st across, dec 8 sts evenly. (53 sc)", prior=61, worked="flat", sizes=ONE)
    assert (row.status, row.taken, row.made) == ("proved", (61,), (53,))


def test_a_round_that_grows_by_eight_in_every_second_round(tmp_path: Path) -> None:
    """Cromulent Knitter (2006): 16 rounds hold 576 sts; 160 after round 8, 288, half of all, after round 11."""
    rows = ["Rnd 1: 8 sc in magic ring, join. (8 sc)"]
    for at in range(2, 17):
        step = (at + 1) // 2
        grows = at % 2 == 1
        plain = f"sc in next {step - 2} sts, " if step > 2 else ""
        body = f"*{plain}2 sc in next st; rep from * around" if grows else "sc in each st around"
        rows.append(f"Rnd {at}: Ch 1, {body}, join. ({8 * step} sc)")
    made = [row.made or 0 for row in worked(tmp_path, "\n".join(rows) + "\n", "Worked in joined rounds.")]
    assert len(made) == 16
    assert (sum(made), sum(made[:8]), sum(made[:11])) == (576, 160, 288)


# ---- motifs ---------------------------------------------------------------------------------------------------------

GRANNY = """\
Rnd 1: (3 dc, ch 2) 4 times in magic ring, join. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st to next ch-2 sp, ch 2, (3 dc, ch 2, 3 dc, ch 1) in each ch-2 sp around, join. (24 dc, 4 ch-2 sps)
"""
MORE = (
    "Rnd {r}: Sl st to next ch-2 sp, ch 2, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, "
    "(3 dc, ch 1) in each ch-1 sp to next ch-2 sp; rep from * around, join. ({dc} dc, 4 ch-2 sps)\n"
)


def test_granny_rounds(tmp_path: Path) -> None:
    """Arithmetic: round r of a granny square has 12r dc in 4r clusters of 3, and 4 corner spaces."""
    rows = GRANNY + "".join(MORE.format(r=r, dc=12 * r) for r in range(3, 7))
    found = worked(tmp_path, rows, "Worked in joined rounds.")
    for r, row in enumerate(found, 1):
        assert (row.units["dc"], row.units["ch-2 sp"]) == (12 * r, 4)
        clusters = row.units["dc"] // 3
        assert clusters == 4 * r
        assert row.units["ch-2 sp"] + row.units.get("ch-1 sp", 0) == clusters  # a space after every cluster


def spread(edge: Edge) -> list[Target]:
    """Every place of an edge, one after the other."""
    return [one for item in edge for one in (spread(item.items) * item.times if isinstance(item, Run) else [item])]


def sides(edge: Edge) -> list[int]:
    """Stitches between the corner spaces of an edge, the beginning and the end of the round put together."""
    counts, run = [], 0
    for one in spread(edge):
        if one.kind == "sp":
            counts.append(run)
            run = 0
        else:
            run += 1
    return [counts[0] + run, *counts[1:]]


def test_the_side_of_a_solid_square(tmp_path: Path) -> None:
    """Octojelly (2021): a solid square of r rounds has 4r - 1 dc on a side, from corner space to corner space."""
    rows = "Rnd 1: (3 dc, ch 2) 4 times in magic ring, join. (12 dc, 4 ch-2 sps)\n"
    for r in range(2, 7):
        rows += (
            f"Rnd {r}: Ch 2, *dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; "
            f"rep from * 3 more times, dc in each st to end, join. ({4 * (4 * r - 1)} dc, 4 ch-2 sps)\n"
        )
    for r, row in enumerate(worked(tmp_path, rows, "Worked in joined rounds."), 1):
        assert sides(row.after) == [4 * r - 1] * 4


@pytest.mark.parametrize(("across", "down", "chain", "rounds"), [(9, 4, 19, 3), (6, 4, 7, 3)])
def test_a_granny_rectangle(across: int, down: int, chain: int, rounds: int) -> None:
    """Brightbag (2012): for x by y holes chain |4(x - y) - 1| and work y - 1 rounds."""
    words = f"4 * ({across} - {down}) - 1"
    assert amount(f"max({words}, 0 - ({words}))").number == chain
    assert amount(f"{down} - 1").number == rounds


def test_joins_widen_a_blanket() -> None:
    """Crafting With Style (2011): joins of 1/4 in add 4 to 5 in to a king size blanket of 4 in squares (76 in)."""
    columns = amount("up(76 in / 4 in)").number
    assert columns == 19
    assert 4 <= amount(f"({columns} - 1) * 1/4 in").number <= 5
