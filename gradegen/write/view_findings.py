"""The findings of a draft as its appendix shows them."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Severity
from gradegen.write.edition import Edition
from gradegen.write.phrases import Printing, plain
from gradegen.write.screen_fold import Folded, fold, grouped, sizes_in_words
from gradegen.write.view import Draft, Entry, FindingView


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
    pairs = [
        ("Expected", grouped(folded, lambda finding: finding.expected)),
        ("Found", grouped(folded, lambda finding: finding.found)),
        ("Because", grouped(folded, lambda finding: finding.because)),
    ]
    details = [Entry(name, tuple(plain(_with_sizes(*each)) for each in texts)) for name, texts in pairs if texts]
    if first.hint:
        details.append(Entry("Try", (plain(first.hint),)))
    return FindingView(first.severity.value, first.rule, where, first.message, tuple(details))


def _with_sizes(text: str, sizes: Sequence[str]) -> str:
    return f"{', '.join(sizes)}: {text}" if sizes else text
