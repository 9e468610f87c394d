"""What it finds.

A foundation chain that is joined into a ring or a half-twist band and is not on the multiple that the pattern's own
`counts` ask for; or a flat one, where the count says how many base chains it needs besides its stitches.

Why it matters.

The repeat can't come out even, and a maker finds out a whole round later. The nearest good chains are named, with what
each would measure.

Example.

    counts:
      band: {across: around, gauge: mesh, multiple: 4}
    pieces:
      - name: Band
        shape: half-twist band
        width: around
        rows: |
          Foundation: Ch {band + 1}. Give one end a half turn and join with sl st in first ch.

Written right.

    counts:
      band: {across: around, gauge: mesh, multiple: 4}
    pieces:
      - name: Band
        shape: half-twist band
        width: around
        rows: |
          Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.

Whose rule.

Arithmetic: a chain is k times the multiple, plus the extra stitches, plus the base chains.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.at_hand import graded_count, number_in, place_in
from gradegen.design.checked import Checked
from gradegen.design.formula import Name
from gradegen.design.graded import GradedCount, GradedSize
from gradegen.design.pattern import CountRule, Piece
from gradegen.design.rows import Chain, Join, Row
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.sums import names_in
from gradegen.numbers.exact import decimal_text, mixed_text
from gradegen.work.step.beginnings import begins_anew

RULE = Rule("foundation-off-multiple", Severity.ERROR, "arithmetic", "A chain is not on the multiple of its count.")
CM = Fraction(254, 100)  # 1 in = 2.54 cm by definition


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per size whose chain is off."""
    for piece in checked.pattern.pieces:
        for row in piece.rows:
            chain = row.steps[0] if row.steps else None
            if isinstance(chain, Chain) and begins_anew(row):
                yield from _off(checked, piece, row, chain)
            if not row.is_prose:
                break  # later chains start a row; only the first row's is a foundation


def _off(checked: Checked, piece: Piece, row: Row, chain: Chain) -> Iterator[Finding]:
    rule = _count_for(checked, piece, chain)
    if rule is None or rule.multiple < 2 or not _must_be_exact(piece, row, rule):
        return
    for size in checked.sizes:
        number = number_in(chain.number, size, len(checked.sizes))
        count = size.counts.get(rule.name)
        if number is None or count is None or (row.sizes is not None and size.name not in row.sizes):
            continue
        if (number - rule.base_extra - rule.plus) % rule.multiple:
            yield _finding(checked, row, chain, rule, size, count, number)


def _count_for(checked: Checked, piece: Piece, chain: Chain) -> CountRule | None:
    """The count a chain stands for: the one its sum names, else the only one that makes the piece's width."""
    if chain.number.formula is not None:
        named = [graded_count(checked, name.name) for name in names_in(chain.number.formula)]
        return named[0] if len(named) == 1 else None
    width = piece.width.text if piece.width else None
    fitting = [
        rule
        for rule in checked.pattern.counts.values()
        if isinstance(rule.across, Name) and rule.across.name == width and rule.pieces == 1
    ]
    return fitting[0] if len(fitting) == 1 else None


def _must_be_exact(piece: Piece, row: Row, rule: CountRule) -> bool:
    joined = any(isinstance(step, Join) for step in row.steps)
    return piece.shape == "half-twist band" or joined or rule.base_extra > 0


def _finding(
    checked: Checked, row: Row, chain: Chain, rule: CountRule, size: GradedSize, count: GradedCount, number: int
) -> Finding:
    repeats, left = divmod(number - rule.base_extra - rule.plus, rule.multiple)
    below, above = number - left, number - left + rule.multiple
    good = [chains for chains in (below, above) if chains > rule.base_extra]
    extra = "".join(f" + {more}" for more in (rule.plus, rule.base_extra) if more)
    choices = " or ".join(f"ch {chains}{_measures(chains - rule.base_extra, count)}" for chains in good)
    return RULE.at(
        place_in(chain.number, size, len(checked.sizes)),
        "This chain is not on the multiple its count asks for.",
        size=size.name,
        row=row.label.text or None,
        expected=" or ".join(str(chains) for chains in good),
        found=str(number),
        because=f"{number} = {repeats} x {rule.multiple}{extra}, and {left} left over",
        hint=choices,
        see_also=((rule.place, f"the count {rule.name}"),),
    )


def _measures(stitches: int, count: GradedCount) -> str:
    if count.finished is None or not count.n:
        return ""
    width = count.finished * stitches / count.n
    rounded = Fraction(round(width * 4), 4)
    return f" ({mixed_text(rounded)} in, {decimal_text(width * CM, 1)} cm)"
