"""Names in shaping schedules that nothing answers to: a misspelt one would only leave its rows unworked."""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.formula import Formula
from gradegen.design.pattern import Pattern
from gradegen.design.schedule import ScheduleRule
from gradegen.findings import Finding
from gradegen.grade.body.naming import Naming
from gradegen.grade.body.sums import names_in


def find_shaping_names(pattern: Pattern, naming: Naming) -> Iterator[Finding]:
    """One finding for each name in a schedule's sums that is no count, measure or body column."""
    for rule in pattern.shaping.values():
        for formula in _sums(rule):
            yield from (naming.unknown(name) for name in names_in(formula) if naming.meaning(name) is None)


def _sums(rule: ScheduleRule) -> tuple[Formula, ...]:
    sums = (rule.before, rule.to, rule.over, rule.by, rule.leave, rule.steps, rule.drop, rule.inset, rule.after)
    return tuple(one for one in sums if one is not None)
