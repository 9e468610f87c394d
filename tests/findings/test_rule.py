"""Findings are made by their rule and carry its name."""

from gradegen.findings import Place, Rule, Severity

RULE = Rule("a-rule", Severity.WARNING, "house", "About it.")
PLACE = Place("f", 1, 2, 1, 3)


def test_a_finding_carries_name_and_severity_of_its_rule() -> None:
    finding = RULE.at(PLACE, "So.", size="M", expected="1", found="2")
    assert (finding.rule, finding.severity, finding.place, finding.size) == ("a-rule", Severity.WARNING, PLACE, "M")


def test_one_finding_may_be_graver_than_its_rule() -> None:
    assert RULE.at(PLACE, "So.", severity=Severity.ERROR).severity == Severity.ERROR
