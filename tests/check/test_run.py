"""A rule that fails becomes one internal finding, and the others still run."""

from collections.abc import Callable, Iterator
from types import SimpleNamespace

from gradegen.check.run import check_pattern
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.pipeline import Outcome

SOUND = Rule("sound-rule", Severity.NOTE, "house", "Finds the title.")
FAULTY = Rule("faulty-rule", Severity.NOTE, "house", "Fails.")


def finds(checked: Checked) -> Iterator[Finding]:
    yield SOUND.at(checked.pattern.title.place, "Here.")


def fails(checked: Checked) -> Iterator[Finding]:
    yield FAULTY.at(checked.pattern.title.place, "So far, so good.")
    raise ZeroDivisionError("a fault of ours")


def test_one_faulty_rule_does_not_silence_the_others(checked_with: Callable[[str], Outcome]) -> None:
    checked = checked_with("").checked
    assert checked is not None
    rules = (SimpleNamespace(RULE=FAULTY, find=fails), SimpleNamespace(RULE=SOUND, find=finds))
    found = check_pattern(checked, rules)
    assert [(finding.rule, finding.severity) for finding in found] == [("internal", "internal"), ("sound-rule", "note")]
    assert "faulty-rule" in found[0].message
    assert found[0].because is not None
    assert "ZeroDivisionError in test_run.py" in found[0].because
    assert found[0].place.file == checked.pattern.file
