"""Every rule over the whole pattern; a rule that fails becomes one finding, and the others still run."""

from __future__ import annotations

from gradegen.check.rules import RULES, CheckingRule
from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.findings.internal import fault_finding


def check_pattern(checked: Checked, rules: tuple[CheckingRule, ...] = RULES) -> tuple[Finding, ...]:
    """What the rules find in a graded and worked pattern, in the order of the rules."""
    findings: list[Finding] = []
    for rule in rules:
        findings.extend(_found_by(rule, checked))
    return tuple(findings)


def check_rows_and_yarns(checked: Checked) -> tuple[Finding, ...]:
    """What the rules on row numbers and stated yarn find, where nothing but rows and yarn is known of a pattern."""
    from gradegen.check.rules import (
        ounces_and_grams_differ,
        row_numbers_broken,
        skeins_differ,
        yards_and_metres_differ,
        yarn_falls_with_size,
    )

    of_yarn = (skeins_differ, yards_and_metres_differ, ounces_and_grams_differ, yarn_falls_with_size)
    return check_pattern(checked, (row_numbers_broken, *of_yarn) if checked.pattern.yarns else (row_numbers_broken,))


def _found_by(rule: CheckingRule, checked: Checked) -> list[Finding]:
    try:
        return list(rule.find(checked))
    except Exception as fault:
        return [fault_finding(f"The rule {rule.RULE.id}", fault, checked.pattern.place)]
