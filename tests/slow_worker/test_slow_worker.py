"""The slow worker itself, against arithmetic that others printed, and rows expanded by hand."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from slow_worker.edges import expand, fold
from slow_worker.row import Result, work
from slow_worker.whole import rows_named, rows_of, work_pattern

NOTES = ["Ch 1 at beg does not count as a st.", "Ch 3 at beg counts as a dc."]


def one(text: str, edge: str | None = None, shape: str = "joined rounds", **more: object) -> Result:
    """One row of one size."""
    return work(text, prior=None if edge is None else expand(edge), sizes=["one"], shape=shape, notes=NOTES, **more)[0]


def test_it_shares_no_code_with_the_product() -> None:
    for path in Path(__file__).parent.glob("*.py"):
        if path.name.startswith("test_") or path.name == "conftest.py":
            continue
        tree = ast.parse(path.read_text(encoding="utf-8"))
        names = [name.name for node in ast.walk(tree) if isinstance(node, ast.Import) for name in node.names]
        names += [node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
        assert not [name for name in names if name.split(".")[0] == "gradegen"], path.name


# -- arithmetic that others printed ----------------------------------------------------------------------------------


@pytest.mark.parametrize("chain", [12, 29, 60])
@pytest.mark.parametrize(("stitch", "hook", "counts"), [("sc", 2, False), ("hdc", 3, False), ("dc", 4, True)])
def test_first_rows_of_foundation_chains(chain: int, stitch: str, hook: int, counts: bool) -> None:
    """First row = chain - s + 1 where the skipped chains don't count, chain - s + 2 where they do (common practice)."""
    nth = {2: "2nd", 3: "3rd", 4: "4th"}[hook]
    row = one(f"Ch {chain}. {stitch.title()} in {nth} ch from hook and in each ch across, turn.", shape="flat")
    assert (row.made, row.taken) == (chain - hook + (2 if counts else 1), chain)


@pytest.mark.parametrize("around", [60, 95, 188])
def test_half_twist_bands_meet_both_sides(around: int) -> None:
    """A round meets 2N stitches: tops, then free loops (Recrochetions, 2016; Fringe Crochet, 2010)."""
    round_one = "Ch 1, sc in each ch, then sc in the free loop of each ch along the other side, join."
    row = one(
        f"Ch {around}. Give one end a half turn and join with sl st in first ch. {round_one}", shape="half-twist band"
    )
    assert (row.made, row.taken, row.after) == (2 * around, 2 * around, ["sc"] * 2 * around)


@pytest.mark.parametrize("segments", [6, 8, 12])
def test_flat_circles_grow_by_their_segments(segments: int) -> None:
    """Round r of a flat circle has s * r stitches, written (r - 2 plain, inc) x s (geometry)."""
    rows = [f"Rnd 1: {segments} sc in magic ring.", "Rnd 2: inc in each st around."]
    rows += [f"Rnd {r}: (sc in next {r - 2} sts, inc) {segments} times." for r in range(3, 12)]
    made = [results[0].made for results in work_pattern("\n".join(rows), ["one"], "spiral")]
    assert made == [segments * r for r in range(1, 12)]


def test_granny_squares_have_twelve_stitches_more_a_round() -> None:
    """Round r: 12r dc in 4r groups with 4 corner spaces (arithmetic)."""
    corner = "(3 dc, ch 2, 3 dc) in next ch-2 sp"
    rows = [
        "Rnd 1: Ch 4, join to form ring. Ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join."
    ]
    for r in range(2, 7):
        side = f"(3 dc in next ch-1 sp, ch 1) {r - 2} times, " if r > 2 else ""
        start = "Sl st to next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1"
        rows.append(f"Rnd {r}: {start}, {side}*{corner}, ch 1, {side.rstrip(', ')}; rep from * around; join.")
    for number, (result,) in enumerate(work_pattern("\n".join(rows), ["one"], "joined rounds", notes=NOTES), start=1):
        assert (result.made, result.units["ch-2 sp"]) == (12 * number, 4)
        assert result.units.get("ch-1 sp", 0) == 4 * (number - 1)


# -- expanded by hand ------------------------------------------------------------------------------------------------


BY_HAND = [
    ("Ch 1, *sc in next 2 sts, 2 sc in next st; rep from * around; join.", "6 dc", "8 sc"),
    ("Ch 3, dc in next st, 2 dc in next st; join.", "3 sc", "4 dc"),
    ("Ch 4, sk next st, *dc in next st, ch 1, sk next st; rep from * around; join.", "6 sc", "3 x (dc, ch-1 sp)"),
    ("Ch 1, *sc in next dc, 2 sc in next ch-2 sp; rep from * around.", "2 x (dc, ch-2 sp)", "6 sc"),
    ("Ch 1, *sc in next dc; rep from * around.", "2 x (dc, ch-2 sp)", "2 sc"),
    ("Ch 1, *(dc, ch 1, dc) in next sp; rep from * around.", "2 x (dc, ch-2 sp)", "2 x (dc, ch-1 sp, dc)"),
    (
        "Sl st in next ch-2 sp, ch 3, dc in same sp, *2 dc in next ch-2 sp; rep from * around.",
        "3 x (dc, ch-2 sp)",
        "6 dc",
    ),
    (
        "Ch 1, sc in same st, *ch 5, sk 2 sts, sc in next st; rep from * around, "
        "ending with ch 2, sk 2 sts, dc in first sc.",
        "9 sc",
        "3 x (sc, ch-5 sp)",
    ),
    ("Ch 1, sc in 3rd dc of next 5-dc group, ch 4, sc in next sc.", "5 dc, sc", "sc, ch-4 sp, sc"),
    ("Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog.", "7 sc", "sc2tog, 3 sc, sc2tog"),
    (
        "Ch 1, *sc in next st**, ch 2, sk next st; rep from * around, ending last rep at **.",
        "5 sc",
        "sc, ch-2 sp, sc, ch-2 sp, sc",
    ),
    (
        "Ch 1, ** sc in next st, * ch 3, sk 1 st, sc in next st; rep from * twice; rep from ** once.",
        "14 sc",
        "2 x (sc, 3 x (ch-3 sp, sc))",
    ),
    ("Ch 1, sc in each st, increasing 2 sts evenly.", "6 sc", "8 sc"),
    ("In next st make dc, ch 2 and dc, sc in next st.", "2 sc", "dc, ch-2 sp, dc, sc"),
    ("dc2, (dc2/ch2/dc2 in next st) 2x, dc in last 2.", "6 sc", None),
]


@pytest.mark.parametrize(("text", "edge", "made"), BY_HAND)
def test_rows_expanded_by_hand(text: str, edge: str, made: str | None) -> None:
    row = one(text, edge)
    if made is None:
        assert row.error == "unread"  # "last 2" of what? It does not guess
    else:
        assert (row.error, row.after) == (None, expand(made)), row


@pytest.mark.parametrize(
    ("text", "edge", "error"),
    [
        ("Ch 1, *sc in next 2 sts, inc; rep from * around; join.", "7 sc", "repeat-does-not-fit"),
        ("Ch 1, (sc in next 2 sts, inc) 3 times; join.", "7 sc", "runs-short"),
        ("Ch 1, (sc in next 2 sts, inc) twice; join.", "7 sc", "stitches-left-over"),
        ("Ch 1, *sc in next st, 2 sc in next ch-2 sp; rep from * around; join.", "6 sc", "names-missing-target"),
        ("Ch 1, *wriggle in next st; rep from * around; join.", "6 sc", "undefined-stitch"),
        ("Ch 1, sc in each st around; join. (7)", "6 sc", "stated-count-wrong"),
        ("Ch 3, dc in first st, dc in each st around; join. (6 dc)", "6 sc", "turning-chain-convention"),
        ("Stuff the body firmly and admire it.", "6 sc", "unread"),
    ],
)
def test_faults_have_their_names(text: str, edge: str, error: str) -> None:
    assert one(text, edge).error == error


@pytest.mark.parametrize(
    "text",
    [
        "Ch 1, sc in next {band / 2} sts, sk {band / 2} sts. ({band / 2} sc)",
        "Sc in next 6 (9, 12) sts, sk 6 [9, 12] sts.",
        "Sc in next 6-9-12 sts, sk 6 (9:12) sts.",
    ],
)
def test_each_size_reads_its_own_numbers(text: str) -> None:
    band = [12, 18, 24]
    edges = [["st"] * number for number in band]
    rows = work(text, prior=None, priors=edges, sizes=["S", "M", "L"], shape="flat", counts={"band": band}, notes=NOTES)
    assert [(row.made, row.error) for row in rows] == [(6, None), (9, None), (12, None)]


def test_a_list_of_the_wrong_length_is_an_error_in_every_size() -> None:
    rows = work("Sc in next 6 (9) (12) (15) sts.", prior=["st"] * 6, sizes=["S", "M", "L"], shape="flat")
    assert {row.error for row in rows} == {"size-list-length"}


def test_whole_pieces_go_on_from_row_to_row() -> None:
    rows = """\
Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.
Rnd 1: Ch 1 (does not count as a st), sc in each ch, then sc in the free loop of each ch along the other side,
  join. ({2 * band} sc)
Rnd 2: Ch 4 (counts as dc and ch 1), sk next st, *dc in next st, ch 1, sk next st; rep from * around, join. ({band} dc)
Rnd 3: Ch 1 (does not count as a st), sc in each dc and in each ch-1 sp around, join. ({2 * band} sc)
Rnds 4-{rounds}: Rep Rnds 2 and 3. ({2 * band} sc)
"""
    worked = work_pattern(rows, ["S", "M"], "half-twist band", {"band": [30, 36], "rounds": [9, 11]})
    assert [[result.made for result in results] for results in worked] == [
        [0, 0],
        [60, 72],
        [30, 36],
        [60, 72],
        [60, 72],
    ]
    assert [result.times for result in worked[-1]] == [6, 8]
    assert not [result for results in worked for result in results if result.error]


def test_turned_rows_see_the_edge_from_the_other_end() -> None:
    first = "Row 1: Ch 8. Sc in 2nd ch from hook, dc in each ch across, turn."
    rows = f"{first}\nRow 2: Ch 1, sc in next 6 dc, dc in next sc, turn."
    assert [results[0].error for results in work_pattern(rows, ["one"], "flat", notes=NOTES)] == [None, None]


LABELS = [
    ("Rnds 4-13", 4, 10),
    ("Row 5 (RS)", 5, 1),
    ("4th to 9th Rows", 4, 6),
    ("Rows 4 and 5", 4, 2),
    ("Next 4 rows", None, 4),
    ("R7-R10", 7, 4),
    ("8-9.", 8, 2),
]


@pytest.mark.parametrize(("label", "first", "count"), LABELS)
def test_labels(label: str, first: int | None, count: int) -> None:
    rows = rows_of(label)
    assert (rows.first, rows.count) == (first, count)


def test_rows_that_point_to_others() -> None:
    assert rows_named("Rep Rows 3 and 4 six times. (20)") == ([3, 4], 6, False)
    assert rows_named("Repeat 2nd and 3rd rows 9 times.") == ([2, 3], 9, False)
    assert rows_named("Rep Rows 5-7.") == ([5, 6, 7], None, False)
    assert rows_named("Ch 1, sc in each st across.") is None


@pytest.mark.parametrize("runs", ["5 sc", "8 x (dc, ch-1 sp, dc), dc", "2 dc, 3 x (sc, ch-2 sp), sc"])
def test_runs_and_back(runs: str) -> None:
    assert fold(expand(runs)) == runs
