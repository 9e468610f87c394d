"""Shaping schedules worked out for every size, and their sentences put into the rows that name them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial

from gradegen.design.graded import GradedSize
from gradegen.design.passages import Shaping
from gradegen.design.pattern import Pattern, Piece
from gradegen.design.rows import Row
from gradegen.design.schedule import Schedule, Scheduled, ScheduleRule
from gradegen.findings import Finding
from gradegen.grade.measure.gauges import PerInch, gauge_of, gauges_per_inch
from gradegen.grade.shaping.faults import BOTH_WAYS
from gradegen.grade.shaping.one_size import (
    Impossible,
    InSize,
    as_bust_dart,
    begin_schedule,
    by_heights,
    common_rates,
    events_needed,
    in_one_row,
    in_short_rows,
    over_rows,
)
from gradegen.grade.shaping.sentence import joined_sentences, sentence
from gradegen.grade.shaping.table import find_flips, shaping_table
from gradegen.read.notation.filled_rows import Filling, names_schedule, read_filled_rows
from gradegen.read.notation.words.row_names import RowNames

__all__ = ["schedule_shaping", "sentence", "shape_rows", "shaping_table", "together_sentence"]

Findings = tuple[Finding, ...]


def shape_rows(pattern: Pattern, sizes: Sequence[GradedSize]) -> tuple[Pattern, Findings]:
    """The pattern with its shaping worked out, and every `{schedule}` in its rows replaced by the sentence it makes.

    The sentences are read, worked and proved like rows a designer wrote herself.
    """
    if not pattern.shaping or not sizes:
        return pattern, ()
    scheduled, findings = schedule_shaping(pattern, sizes)
    pieces = []
    for piece in pattern.pieces:
        filled, found = _fill(pattern, piece, scheduled, sizes)
        pieces.append(filled)
        findings += found
    return replace(pattern, pieces=tuple(pieces), scheduled=scheduled), findings


def schedule_shaping(pattern: Pattern, sizes: Sequence[GradedSize]) -> tuple[dict[str, Scheduled], Findings]:
    """Every schedule in every size; one that cannot be worked is told of at its place and None in that size."""
    usable, _ = gauges_per_inch(pattern.gauges)
    scheduled: dict[str, Scheduled] = {}
    findings: Findings = ()
    for name, rule in pattern.shaping.items():
        if rule.together:
            continue
        gauge, found = _gauge(rule, pattern, usable)
        schedules, more = _in_sizes(rule, sizes, gauge, _is_flat(pattern, name))
        scheduled[name] = Scheduled(rule, schedules)
        findings += (*found, *more)
    for name, rule in pattern.shaping.items():
        parts = [scheduled[text.text] for text in rule.together if text.text in scheduled]
        if len(parts) > 1 and not _is_printed(pattern, name):  # printed ones are looked at where they are worked
            findings += tuple(find_flips(name, parts, rule.place))
    return scheduled, findings


def _gauge(rule: ScheduleRule, pattern: Pattern, usable: Mapping[str, PerInch]) -> tuple[PerInch | None, Findings]:
    if rule.gauge is not None:
        return gauge_of(rule.gauge, rule.place, pattern, usable)
    return (next(iter(usable.values())) if len(usable) == 1 else None), ()


def _is_flat(pattern: Pattern, name: str) -> bool:
    """True unless the piece whose rows name the schedule is worked in rounds."""
    naming = [piece for piece in pattern.pieces if piece.written and names_schedule(piece.written.text, (name,))]
    return not naming or naming[0].shape == "flat"


def _is_printed(pattern: Pattern, name: str) -> bool:
    return any(piece.written and names_schedule(piece.written.text, (name,)) for piece in pattern.pieces)


def _in_sizes(
    rule: ScheduleRule, sizes: Sequence[GradedSize], gauge: PerInch | None, flat: bool
) -> tuple[tuple[Schedule | None, ...], Findings]:
    findings: list[Finding] = []
    begun = [_tried(begin_schedule, InSize(rule, size, gauge), findings) for size in sizes]
    leaves = any(one is not None and one.leave for one in begun)
    begun = [None if one is None else replace(one, leaves_first=leaves) for one in begun]
    rates = _rates(rule, begun)
    found = []
    for size, one in zip(sizes, begun, strict=True):
        place = partial(_placed, begun=one, rates=rates, flat=flat) if one is not None else None
        found.append(_tried(place, InSize(rule, size, gauge), findings) if place else None)
    turning = _turns_round(rule, found)
    return (None,) * len(found) if turning else tuple(found), tuple(dict.fromkeys([*findings, *turning]))


def _turns_round(rule: ScheduleRule, found: Sequence[Schedule | None]) -> tuple[Finding, ...]:
    """A finding where some sizes increase and others decrease: one sentence cannot say both."""
    known = [one for one in found if one is not None and one.to != one.before]
    more = [one.size for one in known if one.to > one.before]
    fewer = [one.size for one in known if one.to < one.before]
    if not more or not fewer:
        return ()
    few, sign = (more, "increase") if len(more) < len(fewer) else (fewer, "decrease")
    first = next(one for one in known if one.size == few[0])
    message = f"{rule.name} would {sign} in {', '.join(few)} and go the other way in the other sizes."
    return (
        BOTH_WAYS.at(
            rule.places.get("from", rule.place),
            message,
            because=f"in {first.size} it goes from {first.before} to {first.to} sts",
            hint="check the counts it goes from and to, or write these sizes apart",
        ),
    )


def _rates(rule: ScheduleRule, begun: Sequence[Schedule | None]) -> tuple[int, ...]:
    """The intervals that all sizes share, where the rule asks for some."""
    wanted = []
    for one in begun:
        if one is not None and rule.way == "rows" and one.by:
            change = abs(one.to - one.before) - one.leave * one.ends
            wanted.append((max(0, change) // (abs(one.by) * one.ends), one.rows))
    return common_rates(rule, wanted)


def _placed(at: InSize, begun: Schedule, rates: tuple[int, ...], flat: bool) -> Schedule:
    match at.rule.way:
        case "short rows":
            return in_short_rows(at, begun)
        case "bust":
            return as_bust_dart(at, begun)
        case "stitch heights":
            return by_heights(at, begun)
        case "one row":
            return in_one_row(at, begun, flat)
    return over_rows(at, begun, events_needed(at, begun), rates)


def _tried(work: Callable[[InSize], Schedule], at: InSize, findings: list[Finding]) -> Schedule | None:
    try:
        return work(at)
    except Impossible as impossible:
        if impossible.finding is not None:
            findings.append(impossible.finding)
        return None


# ---- rows ---------------------------------------------------------------------------------------------------------


def _fill(
    pattern: Pattern, piece: Piece, scheduled: Mapping[str, Scheduled], sizes: Sequence[GradedSize]
) -> tuple[Piece, Findings]:
    if piece.written is None:
        return piece, ()
    fillings = {}
    for name in pattern.shaping:
        filling = _filling(pattern, name, scheduled, sizes, piece.shape != "flat")
        if filling is not None:
            fillings[name] = filling
    rows, findings = read_filled_rows(piece.written, fillings, _names(pattern, sizes))
    missing = [name for name in pattern.shaping if name not in fillings]
    if names_schedule(piece.written.text, missing):
        findings = ()  # what could not be worked out has been told of
        rows = tuple(_not_worked_out(row, missing) for row in rows)
    return replace(piece, rows=rows), findings


def _not_worked_out(row: Row, missing: Sequence[str]) -> Row:
    """A row whose schedule could not be worked out: it leads to its printed count, and nothing else is claimed."""
    name = next((one for one in missing if names_schedule(row.text, (one,))), None)
    if name is None:
        return row
    return replace(row, steps=(Shaping(None, (), (name,), place=row.place),))


def _filling(
    pattern: Pattern, name: str, scheduled: Mapping[str, Scheduled], sizes: Sequence[GradedSize], rounds: bool
) -> Filling | None:
    rule = pattern.shaping[name]
    parts = [scheduled[text.text] for text in rule.together if text.text in scheduled] or (
        [scheduled[name]] if name in scheduled else []
    )
    if not parts or any(one is None for part in parts for one in part.sizes):
        return None
    every = together_sentence(parts, rounds=rounds)
    each = tuple(together_sentence(parts, size.name, rounds=rounds) for size in sizes)
    return Filling(name, every, each) if every else None


def together_sentence(parts: Sequence[Scheduled], size: str | None = None, *, rounds: bool = False) -> str:
    """The sentence of one schedule, or of several worked at the same time."""
    return joined_sentences(parts, size, rounds=rounds)


def _names(pattern: Pattern, sizes: Sequence[GradedSize]) -> RowNames:
    counts = [name for count in pattern.counts for name in (count, f"{count} chain")]
    return RowNames(
        pattern.terms,
        tuple(size.name for size in sizes),
        {definition.name: definition for definition in pattern.definitions},
        frozenset(counts),
        frozenset(pattern.measures),
        frozenset(pattern.shaping),
    )
