"""From a pattern and a size table to every size: the stage that ends this room."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from gradegen.design.graded import GradedCount, GradedMeasure, GradedSize
from gradegen.design.pattern import Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding
from gradegen.grade.body.bodies import Body, choose_bodies, leading_column
from gradegen.grade.body.columns import find_column_notes, find_table_faults
from gradegen.grade.body.naming import Naming
from gradegen.grade.counts import grade_counts
from gradegen.grade.measure.drift import find_drift, series_of
from gradegen.grade.measure.ease import EaseOf, ease_in_size, find_ease, find_key_eases, key_eases_in_size
from gradegen.grade.measure.finish import find_made_twice, finished_measures, ties
from gradegen.grade.measure.lengths import Words
from gradegen.grade.measure.measures import target_measures
from gradegen.grade.measure.snapped import Scale
from gradegen.grade.shaping.names import find_shaping_names
from gradegen.grade.steps import find_falling, find_steps, sized_measures

TANGLED = ("relations-clash", "relations-not-solved")  # what the counts then come to is told of no more


def grade_sizes(pattern: Pattern, table: SizeTable) -> tuple[tuple[GradedSize, ...], tuple[Finding, ...]]:
    """Every size of the pattern: measures, counts, how each was rounded and what that costs.

    What can't be worked out is told about at its place and missing from the sizes; the rest is there.
    """
    bodies, findings = choose_bodies(pattern, table)
    by, found = leading_column(pattern, table)
    findings += found
    naming = Naming.of(pattern, table)
    targets, found = target_measures(pattern, table, bodies, naming)
    findings += found
    counted, scales, found = grade_counts(pattern, table, bodies, naming, targets)
    findings += found
    tied = ties(pattern, naming)
    finished = [finished_measures(pattern, *one, tied) for one in zip(targets, counted, strict=True)]
    ease = find_ease(pattern, naming, by)
    keys = find_key_eases(pattern, naming, ease)
    sizes = tuple(
        graded_size(body, measures, counts, by, ease, keys)
        for body, measures, counts in zip(bodies, finished, counted, strict=True)
    )
    clash = next((finding.rule for finding in findings if finding.rule in TANGLED), None)
    compared = _compared(pattern, bodies, by, naming, finished, counted, scales)
    findings += tuple(replace(one, follows=one.follows or clash) if clash else one for one in compared)
    findings += (*find_made_twice(pattern, bodies, counted, tied, Words(pattern.units)),)
    findings += (*find_shaping_names(pattern, naming),)
    findings += (*find_column_notes(pattern, table, bodies, naming), *find_table_faults(pattern, table, bodies, naming))
    return sizes, findings


def graded_size(
    body: Body,
    measures: dict[str, GradedMeasure],
    counts: dict[str, GradedCount],
    by: str | None,
    of: EaseOf | None,
    keys: tuple[EaseOf, ...] = (),
) -> GradedSize:
    """All that is known about one size."""
    ease, fit = ease_in_size(of, body, measures)
    return GradedSize(
        name=body.name,
        index=body.index,
        wearer=body.wearer,
        body=body.cells,
        graded_body=body.values,
        to_fit=body.cells.get(by) if by is not None else None,
        measures=measures,
        counts=counts,
        ease=ease,
        fit=fit,
        ease_measure=of.measure if of and ease is not None else None,
        ease_body=of.column if of and ease is not None else None,
        converted=body.converted,
        key_eases=key_eases_in_size(keys, body, measures),
    )


def _compared(
    pattern: Pattern,
    bodies: tuple[Body, ...],
    by: str | None,
    naming: Naming,
    finished: list[dict[str, GradedMeasure]],
    counted: list[dict[str, GradedCount]],
    scales: dict[str, Scale],
) -> Iterator[Finding]:
    """What only shows when sizes stand side by side: drift against the step, shrinking, sizes alike."""
    words = Words(pattern.units)
    for name, measure in pattern.measures.items():
        yield from find_steps(measure, sized_measures(name, bodies, finished), by, naming, words)
    for rule in pattern.counts.values():
        yield from find_falling(rule, bodies, counted)
    for name, scale in scales.items():
        yield from find_drift(series_of(pattern.counts[name], scale, bodies, counted, by), words)
