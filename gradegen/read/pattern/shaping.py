"""The `shaping` block of a pattern, each schedule with what it needs."""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.pattern import Text
from gradegen.design.schedule import ScheduleRule
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.pattern import shaping_keys as keys
from gradegen.read.yaml.fields import Given, Named, nearest
from gradegen.read.yaml.nodes import Scalar

SCHEDULE_INCOMPLETE = Rule(
    "schedule-incomplete", Severity.ERROR, "file format", "A shaping schedule lacks a part it needs."
)
UNKNOWN_SCHEDULE = Rule("unknown-schedule", Severity.ERROR, "file format", "A schedule that is not among the shaping.")
NAME_TAKEN = Rule("name-taken", Severity.ERROR, "file format", "A schedule has the name of a count or a measure.")

Findings = tuple[Finding, ...]
_NEEDS = {
    "rows": ("from", "to", "over"),
    "short rows": ("from", "to"),
    "bust": ("from", "to", "drop"),
    "stitch heights": ("from", "heights"),
    "one row": ("from", "to"),
}


def read_shaping(named: Named[Given], taken: frozenset[str]) -> tuple[dict[str, ScheduleRule], Findings]:
    """The schedules by name; `taken`: names of counts and measures, which braces in rows already mean."""
    rules: dict[str, ScheduleRule] = {}
    findings: list[Finding] = []
    for key, given in named:
        if key.text in taken:
            message = f"{key.text} is a count or a measure already, so that {{{key.text}}} would mean two things."
            findings.append(NAME_TAKEN.at(key.place, message, hint=f"{key.text} shaping"))
        elif given is not None:
            rules[key.text] = _rule(key, given)
            if not given.has_unknown:
                findings += _faults(rules[key.text], given)
    known = tuple(name for name, rule in rules.items() if not rule.together)
    for rule in rules.values():
        findings += [_leaves_beside(rules[name.text]) for name in rule.together[1:] if _leaves(rules.get(name.text))]
        findings += [_unknown(name, known) for name in rule.together if name.text not in known]
    return rules, tuple(findings)


def _rule(key: Scalar, given: Given) -> ScheduleRule:
    edge, stitch = given.value(keys.EDGE), given.value(keys.STITCH)
    return ScheduleRule(
        name=key.text,
        before=given.value(keys.FROM),
        to=given.value(keys.TO),
        over=given.value(keys.OVER),
        each=given.value(keys.EACH) or ("one end" if edge else "both ends"),
        edge=edge.text if edge else "",
        by=given.value(keys.BY),
        row=given.value(keys.ROW),
        way=given.value(keys.WAY) or "rows",
        right_side_only=given.value(keys.ON) == "RS rows",
        order=given.value(keys.ORDER) or "block",
        tail=given.value(keys.TAIL) or "none",
        first_is_next=given.value(keys.FIRST) == "next row",
        leave=given.value(keys.LEAVE),
        rates=given.value(keys.RATES) or (),
        curve=given.value(keys.CURVE) or "straight",
        slope=given.value(keys.SLOPE) or (),
        steps=given.value(keys.STEPS),
        drop=given.value(keys.DROP),
        inset=given.value(keys.INSET),
        heights=tuple(text.text for text in given.value(keys.HEIGHTS) or ()),
        stitch=stitch.text if stitch else "sc",
        gauge=given.value(keys.SHAPING_GAUGE),
        after=given.value(keys.AFTER),
        together=given.value(keys.TOGETHER) or (),
        place=key.place,
        places=given.places,
    )


def _faults(rule: ScheduleRule, given: Given) -> Iterator[Finding]:
    if rule.together:
        return
    missing = [key for key in _NEEDS[rule.way] if key not in given.places]
    if rule.way == "short rows" and rule.steps is None and rule.drop is None:
        missing.append("steps")
    if missing:
        message = f"The schedule {rule.name} does not say {' and '.join(missing)}."
        hint = f"Add {missing[0]}: ..." if missing[0] != "steps" else "Add steps: 3, or drop: 1 in."
        yield SCHEDULE_INCOMPLETE.at(rule.place, message, hint=hint)
    if len(rule.rates) > 3:
        place = rule.places["rates"]
        yield SCHEDULE_INCOMPLETE.at(place, "A schedule has three rates at most.", hint="rates: [1, 2, 4]")


def _leaves(rule: ScheduleRule | None) -> bool:
    return rule is not None and (rule.leave is not None or rule.way != "rows")


def _leaves_beside(rule: ScheduleRule) -> Finding:
    message = f"{rule.name} is worked at the same time as another, so it can only be shaped over rows, none left first."
    return SCHEDULE_INCOMPLETE.at(rule.place, message, hint="Name it first in together:, or give it a row of its own.")


def _unknown(name: Text, known: tuple[str, ...]) -> Finding:
    guess = nearest(name.text, known)
    hint = f"Did you mean {guess}?" if guess else f"The schedules are {', '.join(known)}." if known else None
    return UNKNOWN_SCHEDULE.at(name.place, f"There is no schedule {name.text} to work together.", hint=hint)
