"""The findings of a draft as its appendix shows them."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Severity
from gradegen.write.editions.edition import Edition
from gradegen.write.screen.fold import Folded, fold, grouped, sizes_in_words
from gradegen.write.view.whole import Draft, Entry, FindingView
from gradegen.write.words.phrases import Printing, plain


def draft_view(checked: Checked, printing: Printing, edition: Edition) -> Draft | None:
    """The draft mark and the findings that concern the printed sizes; None for a document that is no draft."""
    if not edition.draft:
        return None
    names = tuple(size.name for size in printing.sizes)
    here = [finding for finding in checked.findings if finding.size is None or finding.size in names]
    views = tuple(_view(folded, names) for folded in fold(here))
    return Draft("DRAFT", _says(here, checked), views)


def _says(findings: Sequence[Finding], checked: Checked) -> str:
    errors = sum(1 for finding in findings if finding.severity in (Severity.ERROR, Severity.INTERNAL))
    if errors:
        return (
            "This is a draft. It contradicts itself in places; the findings at the end say where. Do not work from it."
        )
    if checked.not_checked:
        return "This is a draft. Not every row could be checked; the findings at the end say what is open."
    return "This is a draft, not yet released."


def _view(folded: Folded, names: Sequence[str]) -> FindingView:
    first = folded.first
    row = f", {first.row}" if first.row else ""
    sizes = sizes_in_words(folded, names)
    where = f"Line {first.place.line}, column {first.place.column}{row}{', ' + sizes if sizes else ''}"
    said = [
        ("Expected", _by_size(grouped(folded, lambda finding: finding.expected))),
        ("Found", _by_size(grouped(folded, lambda finding: finding.found))),
        ("Because", _first(grouped(folded, lambda finding: finding.because))),
        ("Try", first.hint or ""),
    ]
    details = [Entry(name, (plain(text),)) for name, text in said if text]
    return FindingView(first.severity.value, first.rule, where, first.message, tuple(details))


def _first(texts: Sequence[tuple[str, Sequence[str]]]) -> str:
    """The working of the first size alone, which shows it for all: `in S: row 5 leaves 33`."""
    if not texts:
        return ""
    text, sizes = texts[0]
    return f"in {sizes[0]}: {text}" if len(texts) > 1 and sizes else text


def _by_size(texts: Sequence[tuple[str, Sequence[str]]]) -> str:
    """Each text once, with its sizes before it where there are several texts: `S: 18; M, L: 24`."""
    if len(texts) == 1:
        return texts[0][0]
    return "; ".join(f"{', '.join(sizes)}: {text}" if sizes else text for text, sizes in texts)
