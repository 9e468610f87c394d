from dataclasses import replace
from pathlib import Path
from typing import Any

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.write.editions.edition import Edition
from gradegen.write.view.findings import draft_view
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

WRONG = Rule("stated-count-wrong", Severity.ERROR, "arithmetic", "a count that is not so")


def with_findings(checked: Checked, samples: Any, *sizes: str | None) -> Checked:
    place = samples["somewhere"]()
    findings: list[Finding] = [
        WRONG.at(place, "The count differs.", size=size, row="Rnd 3", expected="18", found="17", hint="write 18")
        for size in sizes
    ]
    return replace(checked, findings=tuple(findings))


def view(checked: Checked, size: str | None = None, *, draft: bool = True) -> Any:
    edition = Edition(Path("out"), size, draft=draft)
    return draft_view(checked, Printing(checked.sizes, edition.sizes(checked), length_style(checked.pattern)), edition)


def test_a_finished_document_has_none(wrap: Checked) -> None:
    assert view(wrap, draft=False) is None


def test_one_fault_in_two_sizes_is_shown_once(wrap: Checked, samples: Any) -> None:
    draft = view(with_findings(wrap, samples, "S", "M"))
    (finding,) = draft.findings
    assert finding.rule == "stated-count-wrong"
    assert finding.where.endswith("Rnd 3, sizes S M")
    assert [detail.name for detail in finding.details] == ["Expected", "Found", "Try"]
    assert "contradicts itself" in draft.says


def test_one_size_sees_its_own_only(wrap: Checked, samples: Any) -> None:
    checked = with_findings(wrap, samples, "S", "M", None)
    assert len(view(checked, "M").findings) == 2
    assert len(view(checked, "L").findings) == 1


def test_a_draft_without_findings(wrap: Checked) -> None:
    assert view(wrap).says == "This is a draft, not yet released."
