"""Findings that follow from another one: they stay in the data, but one slip is told once."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from gradegen.design.pattern import Pattern
from gradegen.findings import Finding

CAUSE = "foundation-off-multiple"
BRACES = frozenset({"name-in-braces-unknown", "brace-not-closed"})  # what stands there is no instruction
CLASHES = ("relations-clash", "relations-not-solved")
_ROW_FAULTS = frozenset(
    {
        "stated-count-wrong",
        "repeat-does-not-fit",
        "runs-short",
        "stitches-left-over",
        "mobius-count-differs",
        "turning-chain-convention",
    }
)
_OF_COUNTS = _ROW_FAULTS | {
    "count-not-whole", "names-missing-target", "row-range-does-not-divide", "shaping-total-differs",
    "odd-change-at-both-ends", "edge-stitches-run-out", "times-or-more-times", "shaping-longer-than-section",
    "shaping-rows-differ", "shaping-too-dense", "shaping-goes-both-ways", "short-rows-do-not-add-up",
    "held-stitches-differ", "nothing-held", "edges-differ", "side-seams-differ", "shoulders-differ",
    "back-width-does-not-add-up", "sleeve-does-not-fit-armhole", "raglan-lines-differ", "underarm-not-balanced",
    "pick-up-unlikely", "border-off-multiple",
}  # fmt: skip
_MULTIPLE_FAULTS = frozenset({"multiple-stated-wrong", "multiple-stricter-than-needed", "low-share-proved"})


def hold_back(pattern: Pattern, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings, those that follow from a chain off its multiple or from clashing relations marked as followers."""
    all_ = _after_braces(_after_clashes(tuple(findings)))
    causes = [finding for finding in all_ if finding.rule == CAUSE]
    if not causes:
        return all_
    return tuple(replace(f, follows=CAUSE) if _follows(f, causes, pattern) else f for f in all_)


def _after_clashes(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Rows and seams worked with counts that could not be found together are wrong for that reason."""
    clashes = {finding.size: finding.rule for finding in findings if finding.rule in CLASHES}
    if not clashes:
        return findings
    return tuple(
        replace(one, follows=clashes.get(one.size) or clashes[None])
        if one.rule in _OF_COUNTS and not one.follows and (one.size in clashes or None in clashes)
        else one
        for one in findings
    )


def _after_braces(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """What does not come out in the row of a misspelt name, or after it, follows from that name."""
    causes = [finding for finding in findings if finding.rule in BRACES]
    if not causes:
        return findings
    return tuple(
        replace(one, follows=causes[0].rule)
        if one.rule in _ROW_FAULTS and not one.follows and any(_stands_later(one, cause) for cause in causes)
        else one
        for one in findings
    )


def _stands_later(finding: Finding, cause: Finding) -> bool:
    """True from the line of the cause on: later pieces go on from what its row leaves."""
    return finding.place.file == cause.place.file and finding.place.line >= cause.place.line


def _follows(finding: Finding, causes: Sequence[Finding], pattern: Pattern) -> bool:
    if finding.rule in _MULTIPLE_FAULTS:
        return True
    return finding.rule in _ROW_FAULTS and any(_comes_after(finding, cause, pattern) for cause in causes)


def _comes_after(finding: Finding, cause: Finding, pattern: Pattern) -> bool:
    """True for a later row of the same piece, in the same size."""
    if finding.place.file != cause.place.file or (
        None not in (finding.size, cause.size) and finding.size != cause.size
    ):
        return False
    for piece in pattern.pieces:
        lines = [line for row in piece.rows for line in (row.place.line, row.place.end_line)]
        if lines and min(lines) <= cause.place.line <= max(lines):
            return cause.place.line < finding.place.line <= max(lines)
    return False
