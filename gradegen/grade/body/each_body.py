"""One sum worked out for every body: what is wrong with the sum is said once, what is wrong with a size per size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from gradegen.design.formula import Formula, Name, PerSize
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import Body
from gradegen.grade.body.naming import Naming
from gradegen.grade.body.sums import Refused, Value, lists_in, reckon, value_of
from gradegen.read.notation.sizes.size_lists import SIZE_LIST_LENGTH

BODY_MEASURE_MISSING = Rule(
    "body-measure-missing", Severity.ERROR, "file format", "A sum needs a body measure its size table does not give."
)


@dataclass(frozen=True, slots=True)
class BodyScope:
    """What names mean for one body: its own columns, and the measures and counts worked out before."""

    body: Body
    naming: Naming
    table: SizeTable
    measures: Mapping[str, Fraction]
    counts: Mapping[str, tuple[int, int]]  # name -> (count, chain)
    own: str | None = None

    def named(self, name: Name) -> Value:
        """The value of a name; Refused without a finding where an earlier finding already said why there is none."""
        meaning = self.naming.meaning(name, self.own)
        if meaning is None:
            raise Refused(self.naming.unknown(name, self.own))
        if meaning.what == "body":
            return self._of_the_body(name, meaning.name)
        if meaning.what == "measure":
            if meaning.name not in self.measures:
                raise Refused(None, of_this_size=True)
            return Value(self.measures[meaning.name], "length")
        if meaning.name not in self.counts:
            raise Refused(None, of_this_size=True)
        n, chain = self.counts[meaning.name]
        return Value(Fraction(chain if meaning.what == "chain" else n), None)

    def _of_the_body(self, name: Name, column: str) -> Value:
        if column in self.body.values:
            return Value(self.body.values[column], "length")
        message = f"The size table gives no {column} for this size."
        seen = ((self.table.columns[column].place, "the column"),)
        finding = BODY_MEASURE_MISSING.at(name.place, message, size=self.body.name, see_also=seen)
        raise Refused(finding, of_this_size=True)

    def entry(self, listed: PerSize) -> Value:
        """The entry of a list; between two sizes, part of one and part of the other."""
        parts = [(value_of(listed.each[index]), share) for index, share in self.body.shares]
        return Value(sum((value.number * share for value, share in parts), Fraction(0)), parts[0][0].kind)


def check_lists(formula: Formula, sizes: int) -> tuple[Finding, ...]:
    """Findings for size lists with too few or too many entries."""
    hint = "Give one number per size, in the pattern's order of sizes."
    message = "This list does not have one number per size."
    return tuple(
        SIZE_LIST_LENGTH.at(listed.place, message, expected=str(sizes), found=str(len(listed.each)), hint=hint)
        for listed in lists_in(formula)
        if len(listed.each) != sizes
    )


def reckon_each(formula: Formula, scopes: list[BodyScope]) -> tuple[list[Value | None], tuple[Finding, ...]]:
    """The value per body (None: it can't be worked out), the same fault of all sizes said once."""
    values: list[Value | None] = []
    findings: list[Finding] = []
    for scope in scopes:
        try:
            values.append(reckon(formula, scope))
        except Refused as refused:
            if not refused.of_this_size:
                return [None] * len(scopes), (refused.finding,) if refused.finding else ()
            values.append(None)
            if refused.finding:
                findings.append(replace(refused.finding, size=scope.body.name))
    return values, tuple(findings)
