"""The stitch census: against the slow worker's hands, row for row, and against sums on paper."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest
from reckon.stitch_patterns import checked as checked_patterns
from reckon.stitch_patterns import flat
from slow_worker.whole import work_pattern

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon import stitch_census

DEMOS = Path(__file__).parents[2] / "shared" / "patterns"


def demo(name: str) -> Checked:
    found = check_file(DEMOS / name).checked
    assert found is not None
    return found


@pytest.fixture(scope="module")
def wrap() -> Checked:
    return demo("skerrywick-wrap.yaml")


@pytest.fixture(scope="module")
def hat() -> Checked:
    return demo("bollard-hat.yaml")


def test_the_hat_on_paper(hat: Checked) -> None:
    """6 sc more in every round of the crown, then straight, then 7/6 and 8/6 of it: plain sums."""
    census = stitch_census(hat)
    for size in hat.sizes:
        n = {name: count.n for name, count in size.counts.items()}
        crown = sum(6 * rnd for rnd in range(1, n["crown"] + 1))
        side = (n["last side"] - n["crown"]) * n["full"]
        brim = 7 * n["crown"] * 3 + 8 * n["crown"] * (n["last"] - n["last side"] - 3)
        assert census.of(size.name) == {"sc": crown + side + brim}, size.name


def test_the_wrap_by_hand(wrap: Checked) -> None:
    """Every round on the slow worker's plain list, one size: its stitches by name, without chains and slip stitches."""
    (piece,) = wrap.pattern.pieces
    size = wrap.sizes[2]
    counts = {name: [count.n] for name, count in size.counts.items()}
    stitches = {one.name: one.text for one in wrap.pattern.definitions}
    notes = [note.text for note in wrap.pattern.notes]
    rows = "\n".join(row.text for row in piece.rows)
    worked = work_pattern(rows, (size.name,), piece.shape, counts, notes, stitches)
    found: Counter[str] = Counter()
    for row, (result,) in zip(piece.rows, worked, strict=True):
        repeated = re.search(r"Rep Rnds 3 and 4", row.text)
        if repeated:
            pair = worked[3][0], worked[4][0]
            runs = (counts["rounds"][0] - 3 - 4) // 2
            for one in pair:
                found.update({name: number * runs for name, number in one.units.items()})
        else:
            found.update(result.units)
    mine = stitch_census(wrap).of(size.name)
    for name in ("hdc", "dc", "dc2tog", "sc", "picot"):
        assert mine[name] == found[name], name
    assert mine["tr"] + _counted_chains(counts["rounds"][0]) == found["tr"]  # ch 6 stands for the first tr of a round


def _counted_chains(rounds: int) -> int:
    return (rounds - 3) // 2


def test_chains_of_the_wrap_on_paper(wrap: Checked) -> None:
    """Foundation, ch 1 of a round of hdc or sc, two ch-1 in a lamp, ch 6 for the first rope, ch 2 twice a lamp."""
    census = stitch_census(wrap)
    for size in wrap.sizes:
        band, lamps, rounds = (size.counts[name].n for name in ("band", "lamps", "rounds"))
        openings = (rounds - 3) // 2  # rounds such as Rnd 3
        strings = 1 + (rounds - 5) // 2  # rounds such as Rnds 2 and 4
        plain = 3  # Rnd 1 and the last two
        ch = band + plain + strings * (1 + 2 * lamps) + openings * (6 + 2 * (2 * lamps - 1))
        assert census.of(size.name)["ch"] == ch
        assert census.of(size.name)["sl st"] == 1 + rounds


def test_parts_of_a_piece_are_counted_apart(tmp_path: Path) -> None:
    pattern = flat(
        "Square", (1, 0, 2), "Row 1: Ch {n}. Sc in 2nd ch from hook, sc in each ch across.",
        "Row 2: Ch 1, turn, sc in each st across.", "Edging Row 1: Ch 1, turn, sc in each st across.",
    )  # fmt: skip
    census = stitch_census(checked_patterns(tmp_path, (pattern,)))
    (size,) = census.by_size
    parts = {part.name: part.stitches for part in census.by_size[size]}
    n = 24  # 24 in at 4 sts in 4 in
    assert parts == {"Square": {"ch": n + 1, "sc": 2 * (n - 1)}, "Square, edging": {"ch": 1, "sc": n - 1}}


def test_rows_that_were_not_followed_are_named(tmp_path: Path) -> None:
    pattern = flat(
        "Square", (1, 0, 2), "Row 1: Ch {n}. Sc in 2nd ch from hook, sc in each ch across.",
        "Row 2: Ch 1, turn, grumble in every nook and cranny you can find.",
    )  # fmt: skip
    census = stitch_census(checked_patterns(tmp_path, (pattern,)))
    assert census.missing == {"M": ("Row 2",)}
