"""The rules that compare things after grading and working: one rule a file, all in one tuple, in a fixed order."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol

from gradegen.check.rules import (
    arm_does_not_keep_up,
    arm_tighter_than_planned,
    back_width_does_not_add_up,
    blocking_not_stated,
    border_off_multiple,
    count_not_printed,
    cross_back_jumps,
    ease_not_steady,
    edges_differ,
    foundation_off_multiple,
    hook_not_listed,
    length_missing,
    low_share_proved,
    mobius_count_differs,
    multiple_stated_wrong,
    multiple_stricter_than_needed,
    neck_or_armhole_jumps,
    neck_too_small_for_head,
    ounces_and_grams_differ,
    part_not_graded,
    part_scaled_up,
    pick_up_unlikely,
    raglan_lines_differ,
    row_numbers_broken,
    row_or_round_mixed,
    seam_edge_unknown,
    seam_not_checked,
    shaping_rows_not_stated,
    shoulder_drops,
    shoulders_differ,
    side_differs_by_size,
    side_seams_differ,
    size_band_gap,
    size_claim_not_met,
    size_list_falls,
    skeins_differ,
    slack_too_small,
    sleeve_does_not_fit_armhole,
    spacing_not_given,
    terms_mixed,
    underarm_not_balanced,
    version_or_help_missing,
    yards_and_metres_differ,
    yarn_falls_with_size,
    yarn_growth_unlikely,
    zero_times_not_worded,
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
    arm_does_not_keep_up,
    arm_tighter_than_planned,
    back_width_does_not_add_up,
    blocking_not_stated,
    border_off_multiple,
    count_not_printed,
    cross_back_jumps,
    ease_not_steady,
    edges_differ,
    foundation_off_multiple,
    hook_not_listed,
    length_missing,
    low_share_proved,
    mobius_count_differs,
    multiple_stated_wrong,
    multiple_stricter_than_needed,
    neck_or_armhole_jumps,
    neck_too_small_for_head,
    ounces_and_grams_differ,
    part_not_graded,
    part_scaled_up,
    pick_up_unlikely,
    raglan_lines_differ,
    row_numbers_broken,
    row_or_round_mixed,
    seam_edge_unknown,
    seam_not_checked,
    shaping_rows_not_stated,
    shoulder_drops,
    shoulders_differ,
    side_differs_by_size,
    side_seams_differ,
    size_band_gap,
    size_claim_not_met,
    size_list_falls,
    skeins_differ,
    slack_too_small,
    sleeve_does_not_fit_armhole,
    spacing_not_given,
    terms_mixed,
    underarm_not_balanced,
    version_or_help_missing,
    yards_and_metres_differ,
    yarn_falls_with_size,
    yarn_growth_unlikely,
    zero_times_not_worded,
)
