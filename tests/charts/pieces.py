"""Small invented pieces whose charts are drawn: one per way of going, from the handbook's common stitch patterns."""

# ruff: noqa: E501 - rows as a designer writes them
from __future__ import annotations

from pathlib import Path

from gradegen.pipeline import Outcome, check_file

HEAD = """\
title: {name}
version: "1.0"
designer: {{name: Demo House, help: help@example.org, year: 2026}}
terms: {terms}
level: easy
wearer: adult
units: inches first
rounding: 1/4 in
sizes: {{table: women, for: [S, M], by: bust, take: middle}}
yarn:
  A: {{weight: medium, fibre: wool, colour: slate, skein: 200 yd / 100 g}}
gauge:
  main: {{stitches: 14, rows: 8, over: 4 in, hook: 5 mm, state: blocked}}
measures:
  wide: bust / 2
counts:
  wide: {{across: wide, gauge: main, multiple: {multiple}, plus: {plus}, tie: up}}
{more}pieces:
  - name: {name}
    shape: {shape}
    rows: |
"""

SHELLS = """\
Foundation: Ch {wide + 1}.
Row 1 (RS): Sc in 2nd ch from hook, *sk next 2 ch, 5 dc in next ch, sk next 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, *sk next 2 sts, sc in next st, sk next 2 sts, 5 dc in next st; rep from * to last 6 sts, sk next 2 sts, sc in next st, sk next 2 sts, 3 dc in last st, turn.
Row 3: Ch 1 (does not count as a st), sc in first st, *sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st; rep from * across, turn.
"""
MESH = """\
Foundation: Ch {wide + 3}.
Row 1: Dc in 6th ch from hook, *ch 1, sk next ch, dc in next ch; rep from * across, turn.
Row 2: Ch 4 (counts as dc and ch 1), sk first dc and next ch-1 sp, *dc in next dc, ch 1; rep from * across, dc in last st, turn.
"""
SQUARE = """\
Rnd 1: Ch 4, join with sl st in first ch to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Sl st to next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, join with sl st in top of beg ch-3. (24 dc)
Rnd 3: Sl st to next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * 2 more times, join with sl st in top of beg ch-3. (36 dc)
"""
POSTS = """\
Foundation: Ch {wide + 2}.
Row 1: Dc in 4th ch from hook (the skipped 3 ch count as dc), dc in each ch across, turn.
Row 2: Ch 2 (counts as dc), *FPdc around each of next 2 sts, BPdc around each of next 2 sts; rep from * across to last st, dc in last st, turn.
"""
DISC = """\
Rnd 1: 8 sc in magic ring, join with sl st in first sc. (8 sc)
Rnd 2: Ch 5 (counts as dc and ch 2), *dc in next st, ch 2; rep from * around, join with sl st in 3rd ch of beg ch-5. (8 dc, 8 ch-2 sps)
Rnd 3: Ch 1, *sc in next dc, 5 dc in next ch-2 sp; rep from * around, join with sl st in first sc. (8 sc, 40 dc)
Rnd 4: Ch 1, *sc in next sc, ch 3, sk next 2 dc, sc in next dc, ch 3, sk next 2 dc; rep from * around, join with sl st in first sc. (16 sc, 16 ch-3 sps)
Rnd 5: Ch 1, *sc in next sc, 3-dc cluster in next ch-3 sp, ch 5, 3-dc cluster in same sp; rep from * around, join with sl st in first sc. (16 sc)
"""
TRELLIS = """\
Foundation: Ch {wide}.
Row 1: Sc in 2nd ch from hook, *ch 5, sk next 3 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc, turn.
"""
BOBBLES = """\
Foundation: Ch {wide + 1}.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across, turn. ({wide} sc)
Row 2: Ch 1, sc in next 3 sts, *5-dc bobble in next st, sc in next 3 sts; rep from * across, turn.
Row 3: Ch 1, sc in back loop only of each st across, turn.
Row 4: Ch 3 (counts as dc), sk first st, *dc2tog over next 2 sts, ch 1; rep from * to last 2 sts, dc in next 2 sts, turn.
"""
EVEN = """\
Foundation: Ch {wide + 1}.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across, turn. ({wide} sc)
Rows 2-20: Ch 1, sc in each st across, turn. ({wide} sc)
"""
PICOTS = """\
Foundation: Ch {wide + 1}.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across, turn. ({wide} sc)
Row 2: Ch 1, sc in first st, *ch 3, sl st in 3rd ch from hook, sc in next 2 sts; rep from * across, turn.
"""
LITERAL = """\
Foundation: Ch 62 (74).
Row 1 (RS): Sc in 2nd ch from hook, *sk next 2 ch, 5 dc in next ch, sk next 2 ch, sc in next ch; rep from * across, turn. (61 (73) sts)
"""
OVAL = """\
Rnd 1: Ch 10, sc in 2nd ch from hook, sc in next 7 ch, 3 sc in last ch, working along other side of ch, sc in next 7 ch, 2 sc in last ch, join with sl st in first sc. (20 sc)
Rnd 2: Ch 1, 2 sc in first st, sc in next 7 sts, 2 sc in each of next 3 sts, sc in next 7 sts, 2 sc in each of last 2 sts, join with sl st in first sc. (26 sc)
Rnd 3: Ch 2 (does not count as a st), hdc in first st, 2 hdc in next st, hdc in next 7 sts, (hdc in next st, 2 hdc in next st) 3 times, hdc in next 7 sts, (hdc in next st, 2 hdc in next st) twice, join with sl st in first hdc. (32 hdc)
"""
SOLE = """\
Foundation: Ch 12.
Rnd 1: Dc in 4th ch from hook (the skipped 3 ch count as dc), dc in next 7 ch, 6 dc in last ch, working along other side of ch, dc in next 7 ch, 4 dc in last ch, join with sl st in top of beg ch. (26 dc)
"""
HEXAGON = """\
Rnd 1: 12 dc in magic ring, join with sl st in first dc. (12 dc)
Rnd 2: Ch 2 (does not count as a st), *2 dc in next st, 2 dc in next st, ch 2; rep from * around, join with sl st in first dc. (24 dc, 6 ch-2 sps)
Rnd 3: Ch 2 (does not count as a st), *dc in next 4 dc, (dc, ch 2, dc) in next ch-2 sp; rep from * around, join with sl st in first dc. (36 dc, 6 ch-2 sps)
Rnd 4: Ch 1, *sc in next 5 dc, 2 sc in next ch-2 sp, sc in next dc; rep from * around, join with sl st in first sc. (48 sc)
"""
YOKE_TOP = """\
Row 1: Ch {wide + 1}. Hdc in 2nd ch from hook, hdc in each ch across. ({wide} hdc)
Rows 2-9: Ch 1 (does not count as a st), turn, hdc in each st across. ({wide} hdc)
Next 14 rows: Leave 3 sts unworked at each end of next row, then dec 1 st at each end of every 2nd row 4 times, then work even. ({wide - 14} hdc)
"""
WEDGE = """\
Row 1: Ch {wide + 1}. Sc in 2nd ch from hook, sc in each ch across. ({wide} sc)
Row 2: Ch 1 (does not count as a st), turn, sc in each st across. ({wide} sc)
Next 12 rows: Inc 1 st at each end of every 3rd row 4 times. ({wide + 8} sc)
Next 6 rows: Dec 1 st at neck edge of every row 3 times, then work even. ({wide + 5} sc)
"""

PIECES = {  # name -> shape, multiple, plus, rows
    "shells": ("flat", 6, 1, SHELLS),
    "mesh": ("flat", 2, 1, MESH),
    "square": ("joined rounds", 2, 1, SQUARE),
    "posts": ("flat", 4, 2, POSTS),
    "disc": ("joined rounds", 2, 1, DISC),
    "trellis": ("flat", 4, 2, TRELLIS),
    "bobbles": ("flat", 4, 3, BOBBLES),
    "even": ("flat", 1, 0, EVEN),
    "picots": ("flat", 2, 1, PICOTS),
    "literal": ("flat", 2, 1, LITERAL),
    "oval": ("joined rounds", 2, 1, OVAL),
    "sole": ("joined rounds", 2, 1, SOLE),
    "hexagon": ("joined rounds", 2, 1, HEXAGON),
    "yoke top": ("flat", 2, 0, YOKE_TOP),
    "wedge": ("flat", 2, 0, WEDGE),
}


def written(folder: Path, name: str, *, terms: str = "US", rows: str | None = None, more: str = "") -> Path:
    """The file of one of the pieces, or of other rows of its shape."""
    shape, multiple, plus, own = PIECES[name]
    head = HEAD.format(name=name.capitalize(), shape=shape, multiple=multiple, plus=plus, terms=terms, more=more)
    body = "".join(f"      {line}\n" for line in (rows or own).splitlines())
    path = folder / f"{name.replace(' ', '-')}.yaml"
    path.write_text(head + body, encoding="utf-8")
    return path


def worked(folder: Path, name: str, **more: str) -> Outcome:
    """The piece read, graded, worked and checked."""
    return check_file(written(folder, name, **more))
