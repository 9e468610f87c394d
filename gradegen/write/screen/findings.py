"""Findings as lines for the screen: place and rule first, the source line with its marks, then the why."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from gradegen.findings import Finding, Severity
from gradegen.write.screen.fold import Folded, fold, grouped, names_of, sizes_in_words
from gradegen.write.screen.source import marked, source_line

Line = tuple[tuple[str, str], ...]  # pieces of text with their style
MANY = 30  # above this many faults each gets one line
NUMBERS_WIDE = 100  # columns for numbers that differ from size to size
SIZES_SPELLED = 12  # texts that differ from size to size are listed for this many sizes
STYLES = {
    Severity.NOTE: "cyan",
    Severity.WARNING: "yellow",
    Severity.ERROR: "bold red",
    Severity.INTERNAL: "bold magenta",
}
PLURALS = {
    Severity.INTERNAL: ("internal fault", "internal faults"),
    Severity.ERROR: ("error", "errors"),
    Severity.WARNING: ("warning", "warnings"),
    Severity.NOTE: ("note", "notes"),
}


def finding_lines(findings: Iterable[Finding], sizes: Sequence[str], width: int = 200) -> list[Line]:
    """All findings folded over sizes: faults in full (in short above 30), then notes one line each."""
    shown = fold(findings)
    faults = [folded for folded in shown if folded.first.severity != Severity.NOTE and not folded.first.follows]
    followers = sum(1 for folded in shown if folded.first.follows and folded.first.severity != Severity.NOTE)
    notes = [folded for folded in shown if folded.first.severity == Severity.NOTE]
    lines: list[Line] = []
    for folded in faults:
        lines += [short_line(folded, sizes)] if len(faults) > MANY else [*full_lines(folded, sizes, width), ()]
    if followers:
        lines += [((f"{followers} more follow from these; put these right first.", "dim"),)]
    return lines + note_lines(notes, sizes)


def full_lines(folded: Folded, sizes: Sequence[str], width: int) -> list[Line]:
    """One fault with its source line, marks, numbers per size, why and hint."""
    first = folded.first
    lines = [_head(folded, sizes), ((f"  {first.message}", ""),), *_source(folded, width)]
    lines += [_labelled("", text) for text in _numbers(folded, sizes)]
    lines += [_labelled("why", text) for text in _once(folded, "because")]
    lines += [_labelled("try", text) for text in _once(folded, "hint")]
    lines += [_labelled("see", f"{place}  {words}") for place, words in first.see_also]
    return [*lines, ((f"  more: gradegen explain {first.rule}", "dim"),)]


def short_line(folded: Folded, sizes: Sequence[str]) -> Line:
    """One fault on one line."""
    return (*_head(folded, sizes), (f"  {folded.first.message}", ""))


def note_lines(notes: Sequence[Folded], sizes: Sequence[str]) -> list[Line]:
    """Notes, one line each; the same note at several places is said once, with its places."""
    alike: dict[tuple[str, str], list[Folded]] = {}
    for folded in notes:
        alike.setdefault((folded.first.rule, folded.first.message), []).append(folded)
    lines: list[Line] = []
    for group in alike.values():
        also = ", ".join(str(folded.place.line) for folded in group[1:9])
        more = f"  (also lines {also}{', ...' if len(group) > 9 else ''})" if also else ""
        lines.append((*_head(group[0], sizes), (f"  {group[0].first.message}{more}", "")))
    return lines


def tally(findings: Iterable[Finding]) -> str:
    """Folded findings by severity, "1 error, 2 notes", gravest first; "no findings" when there are none."""
    counted = Counter(folded.first.severity for folded in fold(findings) if not folded.first.follows)
    parts = [f"{counted[grade]} {PLURALS[grade][counted[grade] != 1]}" for grade in PLURALS if counted[grade]]
    return ", ".join(parts) or "no findings"


def _head(folded: Folded, sizes: Sequence[str]) -> Line:
    first = folded.first
    where = ", ".join(part for part in (first.row or "", sizes_in_words(folded, sizes)) if part)
    style = STYLES[first.severity]
    head = ((f"{folded.place}  ", "bold"), (f"{first.severity}  ", style), (first.rule, style))
    return (*head, (f"   {where}", "")) if where else head


def _source(folded: Folded, width: int) -> list[Line]:
    line = source_line(folded.place)
    if line is None:
        return []
    gutter = str(folded.place.line)
    here = [place for place in folded.places if place.line == folded.place.line]
    text, under = marked(line, here, max(40, width - len(gutter) - 6))
    style = STYLES[folded.first.severity]
    return [
        ((f"  {gutter} | ", "dim"), (text, "")),
        ((f"  {' ' * len(gutter)} | ", "dim"), (under, style)),
    ]


def _numbers(folded: Folded, sizes: Sequence[str]) -> list[str]:
    expected = grouped(folded, lambda finding: finding.expected)
    found = grouped(folded, lambda finding: finding.found)
    if len(expected) <= 1 and len(found) <= 1:
        return [f"expected {expected[0][0]}, found {found[0][0]}"] if expected and found else []
    if len(expected) == 1:
        return [f"expected {expected[0][0]}; found:", *_by_size(found), *_others(folded, sizes, len(found))]
    both = grouped(folded, lambda finding: finding.expected and f"expected {finding.expected}, found {finding.found}")
    return [*_by_size(both), *_others(folded, sizes, len(both))]


def _by_size(texts: Sequence[tuple[str, tuple[str, ...]]]) -> list[str]:
    """A text per size in columns, as many side by side as fit."""
    shown = [(names_of(named), text) for text, named in texts[:SIZES_SPELLED]]
    names = max(len(name) for name, _ in shown)
    cells = [f"{name:<{names}}  {text}" for name, text in shown]
    wide = max(map(len, cells)) + 4
    many = max(1, NUMBERS_WIDE // wide)
    return ["".join(f"{cell:<{wide}}" for cell in cells[at : at + many]).rstrip() for at in range(0, len(cells), many)]


def _others(folded: Folded, sizes: Sequence[str], told: int) -> list[str]:
    """Sizes that are not spelled out, and sizes that agree."""
    more = [f"and {told - SIZES_SPELLED} more"] if told > SIZES_SPELLED else []
    agreeing = [size for size in sizes if size not in folded.sizes] if folded.sizes else []
    if agreeing and len(agreeing) < len(sizes):
        more.append(f"({names_of(agreeing)} {'agrees' if len(agreeing) == 1 else 'agree'})")
    return more


def _once(folded: Folded, field: str) -> list[str]:
    texts = grouped(folded, lambda finding: getattr(finding, field))
    if len(texts) < 2:
        return [text for text, _ in texts]
    text, named = texts[0]
    return [f"in {named[0]}: {text}" if named else text]


def _labelled(label: str, text: str) -> Line:
    return ((f"  {label:<5}", "bold"), (text, ""))
