"""Rules have docs under five headings, and both examples run: the first gives exactly this rule, the second nothing."""

import inspect
import re
import textwrap
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from gradegen.check import rules
from gradegen.check.rules import RULES, CheckingRule
from gradegen.check.run import check_pattern
from gradegen.findings import Severity
from gradegen.pipeline import Outcome

HEADINGS = ("What it finds.", "Why it matters.", "Example.", "Written right.", "Whose rule.")


def docs_of(rule: CheckingRule) -> dict[str, str]:
    text = inspect.getdoc(rule) or ""
    parts = re.split(rf"^({'|'.join(map(re.escape, HEADINGS))})$", text, flags=re.MULTILINE)
    return {head: textwrap.dedent(body.strip("\n")) for head, body in zip(parts[1::2], parts[2::2], strict=True)}


def rule_id(rule: CheckingRule) -> str:
    return rule.RULE.id


def test_every_rule_file_is_in_the_tuple_in_the_order_of_the_alphabet() -> None:
    files = sorted(path.stem for path in Path(rules.__path__[0]).glob("*.py") if path.stem != "__init__")
    assert [rule.RULE.id.replace("-", "_") for rule in RULES] == files


@pytest.mark.parametrize("rule", RULES, ids=rule_id)
def test_docs_stand_under_the_five_headings(rule: CheckingRule) -> None:
    docs = docs_of(rule)
    assert tuple(docs) == HEADINGS
    assert all(docs.values())
    whose = docs["Whose rule."].split(":")[0].split(".")[0].strip().lower()
    assert whose == rule.RULE.whose


@pytest.mark.parametrize("rule", RULES, ids=rule_id)
def test_the_example_gives_exactly_this_rule(rule: CheckingRule, checked_with: Callable[[str], Outcome]) -> None:
    checked = checked_with(docs_of(rule)["Example."]).checked
    assert checked is not None
    found = check_pattern(replace(checked, findings=()))
    assert {finding.rule for finding in found} == {rule.RULE.id}
    assert all(finding.place.file == checked.pattern.file for finding in found)


@pytest.mark.parametrize("rule", RULES, ids=rule_id)
def test_the_example_written_right_is_clean(rule: CheckingRule, checked_with: Callable[[str], Outcome]) -> None:
    outcome = checked_with(docs_of(rule)["Written right."])
    assert outcome.checked is not None
    assert check_pattern(replace(outcome.checked, findings=())) == ()
    assert [finding for finding in outcome.findings if finding.severity != Severity.NOTE] == []


def test_the_sound_pattern_is_sound(checked_with: Callable[[str], Outcome]) -> None:
    outcome = checked_with("")
    assert {finding.severity for finding in outcome.findings} <= {Severity.NOTE}
    assert outcome.proved.proved > 0
    assert outcome.proved.wrong == outcome.proved.not_checked == 0
