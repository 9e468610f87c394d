"""The rules that compare things after grading and working: one rule a file, all in one tuple, in a fixed order."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol

from gradegen.check.rules import (
    blocking_not_stated,
    count_not_printed,
    foundation_off_multiple,
    hook_not_listed,
    length_missing,
    low_share_proved,
    mobius_count_differs,
    multiple_stated_wrong,
    multiple_stricter_than_needed,
    ounces_and_grams_differ,
    row_numbers_broken,
    row_or_round_mixed,
    size_list_falls,
    skeins_differ,
    slack_too_small,
    terms_mixed,
    version_or_help_missing,
    yards_and_metres_differ,
    yarn_falls_with_size,
    yarn_growth_unlikely,
)
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule


class CheckingRule(Protocol):
    """A rule file: its `RULE`, and `find`, which gives what the rule finds."""

    RULE: Rule

    def find(self, checked: Checked) -> Iterator[Finding]:
        """What this rule finds in one pattern."""
        ...


RULES: tuple[CheckingRule, ...] = (
    blocking_not_stated,
    count_not_printed,
    foundation_off_multiple,
    hook_not_listed,
    length_missing,
    low_share_proved,
    mobius_count_differs,
    multiple_stated_wrong,
    multiple_stricter_than_needed,
    ounces_and_grams_differ,
    row_numbers_broken,
    row_or_round_mixed,
    size_list_falls,
    skeins_differ,
    slack_too_small,
    terms_mixed,
    version_or_help_missing,
    yards_and_metres_differ,
    yarn_falls_with_size,
    yarn_growth_unlikely,
)
