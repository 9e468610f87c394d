"""`gradegen explain`: a row step by step, and what a rule finds."""

from pathlib import Path

import pytest

from gradegen.check.rules import RULES
from gradegen.cli.rules import ALIASES, all_rules, rule_docs


def line_of(path: Path, text: str) -> int:
    return next(number for number, line in enumerate(path.read_text("utf-8").splitlines(), 1) if text in line)


def test_a_row_shows_the_edge_before_every_step_and_the_edge_after(gradegen, wrap: Path) -> None:
    run = gradegen("explain", f"{wrap}:{line_of(wrap, 'Rnd 2:')}", "--size", "M")
    assert run.returncode == 0
    lines = run.stdout.splitlines()
    assert lines[0].startswith("Rnd 2, size M")
    assert [line.split()[0] for line in lines if line.startswith("  before") or line.startswith("  after")] == [
        "before",
        "after",
    ]
    assert any("takes" in line and "makes" in line for line in lines)
    assert "proved" in run.stdout


def test_a_later_line_of_the_same_row_and_a_column_are_taken_too(gradegen, wrap: Path) -> None:
    line = line_of(wrap, "Rnd 2:")
    first = gradegen("explain", f"{wrap}:{line}", "--size", "M").stdout
    assert gradegen("explain", f"{wrap}:{line + 1}:9", "--size", "M").stdout == first


def test_the_first_size_is_taken_when_none_is_named(gradegen, wrap: Path) -> None:
    assert "size XS" in gradegen("explain", f"{wrap}:{line_of(wrap, 'Rnd 2:')}").stdout


def test_a_size_that_does_not_work_the_row_is_told_so(gradegen, hat: Path) -> None:
    run = gradegen("explain", f"{hat}:{line_of(hat, 'Rnd 16 (L only)')}", "--size", "S")
    assert run.returncode == 0
    assert "does not work this row" in run.stdout


@pytest.mark.parametrize(("line", "size"), [("1", "M"), ("9999", "M"), (None, "XXL")])
def test_no_row_or_no_such_size_is_two(gradegen, wrap: Path, line: str | None, size: str) -> None:
    run = gradegen("explain", f"{wrap}:{line or line_of(wrap, 'Rnd 2:')}", "--size", size)
    assert run.returncode == 2
    assert run.stderr.startswith("gradegen: ")


def test_a_rule_is_explained(gradegen) -> None:
    text = gradegen("explain", "row-numbers-broken").stdout
    for words in ("row-numbers-broken", "warning:", "What it finds.", "Why it matters.", "Example.", "Written right."):
        assert words in text


def test_every_rule_of_every_room_can_be_explained() -> None:
    rules = all_rules()
    assert {rule.RULE.id for rule in RULES} <= set(rules)
    assert {"stated-count-wrong", "repeat-does-not-fit", "unknown-key", "internal"} <= set(rules)
    for name in rules:
        docs = rule_docs(name)
        assert docs is not None
        assert docs.startswith(name)


def test_other_names_lead_to_rules_that_exist() -> None:
    rules = all_rules()
    for other, name in ALIASES.items():
        assert name in rules
        assert other not in rules
        assert rule_docs(other) == rule_docs(name)


def test_an_unknown_rule_gets_the_nearest_names(gradegen) -> None:
    run = gradegen("explain", "row-number-broken")
    assert run.returncode == 2
    assert "row-numbers-broken" in run.stderr
