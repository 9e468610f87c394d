"""Stitch patterns of our own, worked flat, in the round and as half-twist bands, with the chains each should take.

`takes` is worked out on paper: (multiple, plus, fewest chains). Rows are ours; the patterns are in common use.
"""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file


@dataclass(frozen=True)
class StitchPattern:
    name: str
    shape: str
    rows: str
    takes: tuple[int, int, int]
    stitches: Mapping[str, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()


FLAT, ROUND, SPIRAL, BAND = "flat", "joined rounds", "spiral", "half-twist band"
RING = "Foundation: Ch {n}. Join with sl st in first ch."
TWIST = "Foundation: Ch {n}. Give one end a half turn and join with sl st in first ch."
SC_ROUND = "Rnd 1: Ch 1 (does not count as a st), sc in each ch around, join with sl st in first sc."
SC_BAND = (
    "Rnd 1: Ch 1 (does not count as a st), sc in each ch around, then sc in the free loop of each ch along the other side, "
    "join with sl st in first sc."
)
SC_FLAT = "Row 1: Ch {n}. Sc in 2nd ch from hook, sc in each ch across."
DC_FLAT = "Row 1: Ch {n}. Dc in 4th ch from hook (skipped chs count as dc), dc in each ch across."


CLUSTER = {
    "cluster": "3 dc in st indicated, keeping the last loop of each on the hook, yo and through all loops; counts as 1 st"
}


def flat(name: str, takes: tuple[int, int, int], *rows: str, **more) -> StitchPattern:
    return StitchPattern(name, FLAT, "\n".join(rows), takes, **more)


def ring(name: str, takes: tuple[int, int, int], *rows: str, **more) -> StitchPattern:
    return StitchPattern(name, ROUND, "\n".join((RING, SC_ROUND, *rows)), takes, **more)


def band(name: str, takes: tuple[int, int, int], *rows: str, **more) -> StitchPattern:
    return StitchPattern(name, BAND, "\n".join((TWIST, SC_BAND, *rows)), takes, **more)


PATTERNS = (
    flat("plain", (1, 0, 2), SC_FLAT, "Row 2: Ch 1, turn, sc in each st across."),
    flat("plain dc", (1, 0, 4), DC_FLAT, "Row 2: Ch 3 (counts as dc), turn, sk first st, dc in each st across."),
    flat(
        "low shells", (6, 2, 14),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *sk next 2 chs, 5 dc in next ch, sk next 2 chs, sc in next ch; rep from * across.",
        "Row 2: Ch 3 (counts as dc), turn, 2 dc in first st, *sk next 2 sts, sc in next st, sk next 2 sts, 5 dc in next st; "
        "rep from * to last 6 sts, sk next 2 sts, sc in next st, sk next 2 sts, 3 dc in last st.",
    ),
    flat(
        "small shells", (4, 2, 6),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *sk next ch, 3 dc in next ch, sk next ch, sc in next ch; rep from * across.",
        "Row 2: Ch 1, turn, sc in first st, *sc in next 3 sts, sc in next st; rep from * across.",
    ),
    flat(
        "wide fans", (10, 2, 12),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *sk next 4 chs, 9 dc in next ch, sk next 4 chs, sc in next ch; rep from * across.",
        "Row 2: Ch 1, turn, sc in first st, *sc in next 9 sts, sc in next st; rep from * across.",
    ),
    flat(
        "leaning shells", (4, 3, 11),
        "Row 1: Ch {n}. (Sc, ch 2, 3 dc) in 3rd ch from hook, *sk next 3 chs, (sc, ch 2, 3 dc) in next ch; rep from * to last 4 chs, "
        "sk next 3 chs, sc in last ch.",
    ),
    flat(
        "V stitches", (3, 2, 8),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *sk next ch, V-st in next ch, sk next ch; rep from * to last 3 chs, sk next 2 chs, sc in last ch.",
        stitches={"V-st": "(dc, ch 1, dc) in st or sp indicated"},
    ),
    flat(
        "V rows", (3, 2, 8), SC_FLAT,
        "Row 2: Ch 3 (counts as dc), turn, sk first 2 sts, *V-st in next st, sk next 2 sts; rep from * to last 2 sts, V-st in next st, dc in last st.",
        stitches={"V-st": "(dc, ch 1, dc) in st or sp indicated"},
    ),
    flat(
        "filet of ones", (2, 1, 7), DC_FLAT,
        "Row 2: Ch 4 (counts as dc and ch 1), turn, sk first 2 sts, dc in next st, *ch 1, sk next st, dc in next st; rep from * across.",
    ),
    flat(
        "filet of twos", (3, 0, 9), DC_FLAT,
        "Row 2: Ch 5 (counts as dc and ch 2), turn, sk first 3 sts, dc in next st, *ch 2, sk next 2 sts, dc in next st; rep from * across.",
        "Row 3: Ch 5 (counts as dc and ch 2), turn, sk first st, dc in next dc, *ch 2, dc in next dc; rep from * across.",
    ),
    flat(
        "filet blocks", (5, 1, 6), SC_FLAT.replace("sc in each ch across", "sc in each ch across"),
        "Row 2: Ch 1, turn, *sc in next 2 sts, ch 2, sk next 2 sts, sc in next st; rep from * across.",
    ),
    flat(
        "lattice", (4, 2, 10),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *ch 5, sk next 3 chs, sc in next ch; rep from * across.",
        "Row 2: Ch 5 (counts as dc and ch 2), turn, sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc.",
    ),
    flat(
        "lattice with picots", (6, 2, 8),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *ch 6, sk next 5 chs, sc in next ch; rep from * across.",
        "Row 2: Ch 1, turn, sc in first sc, *6 sc in next ch-6 sp, sc in next sc; rep from * across.",
    ),
    flat(
        "mesh", (2, 0, 4), SC_FLAT,
        "Row 2: Ch 1, turn, sc in first st, *ch 1, sk next st, sc in next st; rep from * across.",
        "Row 3: Ch 1, turn, sc in first sc, *ch 1, sc in next sc; rep from * across.",
    ),
    flat(
        "moss", (2, 0, 4), SC_FLAT,
        "Row 2: Ch 1, turn, sc in first st, *ch 1, sk next st, sc in next st; rep from * across.",
        "Row 3: Ch 1, turn, sc in first st, *sc in next ch-1 sp, sc in next sc; rep from * across.",
    ),
    flat(
        "ripple", (10, 2, 12),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *sc in next 3 chs, sc3tog over next 3 chs, sc in next 3 chs, 3 sc in next ch; rep from * across.",
    ),
    flat(
        "gentle ripple", (14, 1, 15), SC_FLAT,
        "Row 2: Ch 1, turn, *sc2tog, sc in next 4 sts, 2 sc in next 2 sts, sc in next 4 sts, sc2tog; rep from * across.",
        "Row 3: Ch 1, turn, *sc2tog, sc in next 4 sts, 2 sc in next 2 sts, sc in next 4 sts, sc2tog; rep from * across.",
    ),
    flat(
        "wave", (8, 1, 9), SC_FLAT,
        "Row 2: Ch 1, turn, *sc in next 4 sts, dc in next 4 sts; rep from * across.",
        "Row 3: Ch 1, turn, sc in each st across.",
    ),
    flat(
        "post rib by ones", (2, 0, 4), DC_FLAT,
        "Row 2: Ch 2 (does not count as a st), turn, *FPdc around next dc, BPdc around next dc; rep from * across.",
    ),
    flat(
        "post rib by twos", (4, 2, 6), DC_FLAT,
        "Row 2: Ch 2 (does not count as a st), turn, *FPdc around next 2 dc, BPdc around next 2 dc; rep from * across.",
    ),
    flat(
        "basket", (6, 2, 8), DC_FLAT,
        "Row 2: Ch 2 (does not count as a st), turn, *FPdc around next 3 dc, BPdc around next 3 dc; rep from * across.",
        "Row 3: Ch 2 (does not count as a st), turn, *FPdc around next 3 dc, BPdc around next 3 dc; rep from * across.",
    ),
    flat(
        "wide basket", (8, 2, 10), DC_FLAT,
        "Row 2: Ch 2 (does not count as a st), turn, *FPdc around next 4 sts, BPdc around next 4 sts; rep from * across.",
    ),
    flat(
        "clusters", (3, 1, 7), SC_FLAT,
        "Row 2: Ch 1, turn, sc in first st, *ch 2, sk next 2 sts, cluster in next st; rep from * to last 2 sts, sc in last 2 sts.",
        stitches=CLUSTER,
    ),
    flat(
        "clusters by twos", (2, 0, 6), SC_FLAT,
        "Row 2: Ch 3 (counts as dc), turn, sk first st, *dc2tog over next 2 sts, ch 1; rep from * to last 2 sts, dc in next st, dc in last st.",
    ),
    flat(
        "puffs", (2, 0, 4), SC_FLAT,
        "Row 2: Ch 1, turn, sc in first st, *puff in next st, sc in next st; rep from * across.",
        stitches={"puff": "3 hdc in st indicated, keeping the last loop of each on the hook, yo and through all loops; counts as 1 st"},
    ),
    flat(
        "bobbles", (4, 0, 8), SC_FLAT,
        "Row 2: Ch 1, turn, sc in first st, *sc in next st, bobble in next st, sc in next 2 sts; rep from * to last 2 sts, sc in last 2 sts.",
        stitches={"bobble": "5 dc in st indicated, keeping the last loop of each on the hook, yo and through all loops; counts as 1 st"},
    ),
    flat(
        "pairs", (2, 1, 5), SC_FLAT,
        "Row 2: Ch 3 (counts as dc), turn, sk first st, *2 dc in next st, sk next st; rep from * to last st, dc in last st.",
    ),
    flat(
        "pineapple base", (12, 2, 14),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *ch 3, sk next 5 chs, (dc, ch 3, dc) in next ch, ch 3, sk next 5 chs, sc in next ch; rep from * across.",
    ),
    flat(
        "two rows of shells", (12, 2, 14),
        "Row 1: Ch {n}. Sc in 2nd ch from hook, *sk next 2 chs, 5 dc in next ch, sk next 2 chs, sc in next ch; rep from * across.",
        "Row 2: Ch 1, turn, *sc in next 6 sts, dc in next 6 sts; rep from * to last st, sc in last st.",
    ),
    ring("plain in the round", (1, 0, 1), "Rnd 2: Ch 1, sc in each st around, join."),
    ring("shells in the round", (6, 0, 6), "Rnd 2: Ch 1, *sc in next st, sk next 2 sts, 5 dc in next st, sk next 2 sts; rep from * around, join."),
    ring(
        "lattice in the round", (4, 0, 4),
        "Rnd 2: Ch 1, *sc in next st, ch 5, sk next 3 sts; rep from * around, join with sl st in first sc.",
        "Rnd 3: Ch 1, *5 sc in next ch-5 sp; rep from * around, join with sl st in first sc.",
    ),
    ring("ribs in the round", (2, 0, 2), "Rnd 2: Ch 1, *FPdc around next st, BPdc around next st; rep from * around, join."),
    ring("filet in the round", (3, 0, 3), "Rnd 2: Ch 1, *dc in next st, ch 2, sk next 2 sts; rep from * around, join with sl st in first dc."),
    ring("clusters in the round", (3, 0, 3), "Rnd 2: Ch 1, *dc3tog over next 3 sts, ch 2; rep from * around, join."),
    ring("ripple in the round", (12, 0, 12), "Rnd 2: Ch 1, *sc in next 4 sts, sc2tog, sc2tog, sc in next 2 sts, 2 sc in next 2 sts; rep from * around, join."),
    ring(
        "fours then sixes", (12, 0, 12),
        "Rnd 2: Ch 1, *sc in next 3 sts, dc in next st; rep from * around, join.",
        "Rnd 3: Ch 1, *sc in next 5 sts, dc in next st; rep from * around, join.",
    ),
    ring(
        "decreasing", (8, 0, 8),
        "Rnd 2: Ch 1, *sc in next 6 sts, sc2tog; rep from * around, join.",
        "Rnd 3: Ch 1, *sc in next 5 sts, sc2tog; rep from * around, join.",
    ),
    ring("V stitches in the round", (3, 0, 3), "Rnd 2: Ch 1, *(dc, ch 1, dc) in next st, sk next 2 sts; rep from * around, join."),
    band("plain twist", (1, 0, 1), "Rnd 2: Ch 1, sc in each st around, join."),
    band("shells on a twist", (3, 0, 3), "Rnd 2: Ch 1, *sc in next st, sk next 2 sts, 5 dc in next st, sk next 2 sts; rep from * around, join."),
    band("threes on a twist", (3, 0, 3), "Rnd 2: Ch 1, *sc in next 2 sts, dc in next st; rep from * around, join."),
    band("fours on a twist", (2, 0, 2), "Rnd 2: Ch 1, *ch 3, sk next 3 sts, sc in next st; rep from * around, join."),
    band("fives on a twist", (5, 0, 5), "Rnd 2: Ch 1, *sc in next 3 sts, ch 2, sk next 2 sts; rep from * around, join."),
    band("ribs on a twist", (1, 0, 1), "Rnd 2: Ch 1, *FPdc around next st, BPdc around next st; rep from * around, join."),
    band("eights on a twist", (4, 0, 4), "Rnd 2: Ch 1, *sc in next 4 sts, dc in next 4 sts; rep from * around, join."),
    band(
        "lattice on a twist", (2, 0, 2),
        "Rnd 2: Ch 1, *sc in next st, ch 5, sk next 3 sts; rep from * around, join with sl st in first sc.",
        "Rnd 3: Ch 1, *sc in next sc, 3 sc in next ch-5 sp; rep from * around, join with sl st in first sc.",
    ),
    band(
        "sixes then eights on a twist", (12, 0, 12),
        "Rnd 2: Ch 1, *sc in next 5 sts, dc in next st; rep from * around, join.",
        "Rnd 3: Ch 1, *sc in next 7 sts, dc in next st; rep from * around, join.",
    ),
)  # fmt: skip

HEAD = """
title: Stitch patterns
terms: US
sizes: {table: women, for: [M]}
gauge:
  plain: {stitches: 4, rows: 4, over: 4 in}
measures:
  width: 24 in
counts:
  n: {across: width, gauge: plain}
"""


def written(patterns: tuple[StitchPattern, ...], head: str = HEAD) -> str:
    """A pattern file with every stitch pattern as a piece of its own."""
    stitches = {name: text for one in patterns for name, text in one.stitches.items()}
    lines = [head.strip(), *(["stitches:"] if stitches else [])]
    lines += [f'  {name}: "{text}"' for name, text in stitches.items()]
    lines.append("pieces:")
    for one in patterns:
        lines += [f"  - name: {one.name}", f"    shape: {one.shape}", "    rows: |"]
        lines += [f"      {row}" for row in one.rows.split("\n")]
    return "\n".join(lines) + "\n"


def checked(folder: Path, patterns: tuple[StitchPattern, ...] = PATTERNS, head: str = HEAD) -> Checked:
    """The patterns read, graded and worked as one file."""
    path = folder / "patterns.yaml"
    path.write_text(written(patterns, head), encoding="utf-8")
    found = check_file(path).checked
    assert found is not None
    return found
