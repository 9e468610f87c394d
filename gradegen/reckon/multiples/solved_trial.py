"""A foundation worked with chains nobody wrote, all counts that hang on it worked out anew for each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedCount, GradedSize
from gradegen.design.pattern import Pattern
from gradegen.findings import Finding, Severity
from gradegen.grade.body.bodies import choose_bodies
from gradegen.grade.body.naming import Naming
from gradegen.grade.counts import grade_counts
from gradegen.grade.measure.measures import target_measures
from gradegen.grade.shaping.schedules import shape_rows
from gradegen.reckon.census.rows_of_size import for_one_size
from gradegen.reckon.multiples.foundation import Foundation
from gradegen.reckon.multiples.trial import Tried
from gradegen.work.rows import work_rows


@dataclass(frozen=True, slots=True)
class SolvedTrial:
    """One foundation of a pattern in one size: relations are solved and shaping is scheduled for every chain tried.

    The count of the chain keeps no multiple, parity or limit of its own: those are what is asked for.
    """

    checked: Checked
    slot: int
    foundation: Foundation

    def work(self, chains: int) -> Tried:
        """All pieces of the size, worked with so many chains and the counts that then fit it best."""
        counted = self._counted(chains)
        if isinstance(counted, str):
            return Tried(chains, (self.foundation.row.label.text, counted), ())
        pattern, counts = counted
        size = replace(self.checked.sizes[self.slot], counts=counts)
        sizes = (*self.checked.sizes[: self.slot], size, *self.checked.sizes[self.slot + 1 :])
        shaped, findings = shape_rows(pattern, sizes)
        if fault := _fault_in(findings, size):
            return Tried(chains, (fault.rule, fault.rule), ())
        return _worked(chains, shaped, size, sizes)

    def numbers(self, chains: int) -> Mapping[str, int] | None:
        """Every count of the size with so many chains; None where the relations can't hold with it."""
        counted = self._counted(chains)
        return None if isinstance(counted, str) else {name: count.n for name, count in counted[1].items()}

    def _counted(self, chains: int) -> tuple[Pattern, dict[str, GradedCount]] | str:
        """The pattern with this count set, and all counts; else the rule that stands against it."""
        checked, own = self.checked, self.checked.sizes[self.slot]
        name, n = self.foundation.count, self.foundation.count_for(chains)
        if name is None or n is None or n < 1:
            return "no count"
        rule = replace(
            checked.pattern.counts[name], multiple=1, plus=0, parity=None, least=None, most=None, centre=None,
            even_steps=False, pins={own.name: n},
        )  # fmt: skip
        pattern = replace(checked.pattern, counts={**checked.pattern.counts, name: rule})
        bodies = tuple(body for body in choose_bodies(pattern, checked.table)[0] if body.name == own.name)
        naming = Naming.of(pattern, checked.table)
        targets, _ = target_measures(pattern, checked.table, bodies, naming)
        (counts,), _, findings = grade_counts(pattern, checked.table, bodies, naming, targets)
        if fault := _fault_in(findings, own):
            return fault.rule
        missing = [other for other in own.counts if other not in counts]
        return f"{missing[0]} is not whole" if missing or counts[name].n != n else (pattern, counts)


def _fault_in(findings: tuple[Finding, ...], size: GradedSize) -> Finding | None:
    """The first error that is told of this size, or of all."""
    return next((one for one in findings if one.severity is Severity.ERROR and one.size in (None, size.name)), None)


def _worked(chains: int, pattern: Pattern, size: GradedSize, sizes: tuple[GradedSize, ...]) -> Tried:
    worked, findings = work_rows(for_one_size(pattern, size.name), sizes)
    rows = tuple(row for row in worked[size.name] if row.applies and row.why_not != "prose")
    stopped = next((row for row in rows if row.status != "proved"), None)
    if stopped is None:
        fault = _fault_in(findings, size)
        return Tried(chains, (fault.row or fault.rule, fault.rule) if fault else None, rows)
    why = stopped.findings[0].rule if stopped.findings else stopped.why_not
    return Tried(chains, (stopped.label, why), rows, bool(stopped.findings))
