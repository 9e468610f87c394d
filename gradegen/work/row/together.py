"""One row worked in several sizes at once, where all of them go the same way and differ in their counts alone."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from gradegen.design.edge import Edge
from gradegen.design.rows import Number, Row
from gradegen.findings import Place
from gradegen.work.along.repeat_facts import RepeatFact
from gradegen.work.along.walk import Stretch
from gradegen.work.edge.each_size import each_size, edge_in, edge_of_all, in_size
from gradegen.work.edge.lines import Unlike
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import Fault, Unclear
from gradegen.work.row.row import Outcome, work_once


@dataclass(slots=True)
class SiteOfAll(Site):
    """The site of all these sizes; what only one of them could say raises Unlike. `alone`: the site of each."""

    wanted: Sequence[int] = ()
    alone: Callable[[int], Site] = field(kw_only=True)

    @property
    def size_name(self) -> str:
        """No one size is worked."""
        raise Unlike

    def number(self, number: Number | None, otherwise: int = 1) -> int:
        """The number in every size."""
        if number is None:
            return otherwise
        if number.formula is None:
            values = number.values
            if len(values) == 1 and values[0] is not None:
                return values[0]
            if len(values) == len(self.sizes):
                found = [value for i in self.wanted if (value := values[i]) is not None]
                if len(found) == len(self.wanted):
                    return each_size(found)
        try:
            return each_size([self.alone(i).number(number) for i in self.wanted])
        except (Fault, Unclear) as stop:
            raise Unlike from stop

    def has_none(self, number: Number) -> bool:
        """Whether every size has a `-` here."""
        if len(number.values) == 1 or len(number.values) != len(self.sizes):
            return False
        missing = {number.values[i] is None for i in self.wanted}
        if len(missing) > 1:
            raise Unlike
        return missing.pop()

    def place_of(self, number: Number) -> Place:
        """The place of a number for all sizes."""
        if len(number.places) == len(self.sizes) > 1:
            raise Unlike
        return number.places[0] if len(number.places) == 1 else number.place


def work_together(
    row: Row, site: SiteOfAll, befores: Sequence[Edge], undersides: Sequence[Edge], *, leaves: bool
) -> list[Outcome] | None:
    """What the row comes to in each of the site's sizes; None where they part, or something is wrong in any of them."""
    try:
        found = work_once(row, site, edge_of_all(befores), edge_of_all(undersides), leaves=leaves)
        if found.fault is not None or found.mismatches:
            return None
        return [_outcome_in(found, i, before) for i, before in enumerate(befores)]
    except (Unlike, TypeError):  # sizes that part, and sums that such counts do not know
        return None


def _outcome_in(found: Outcome, i: int, before: Edge) -> Outcome:
    return Outcome(
        before=before,
        after=edge_in(found.after, i),
        underside=edge_in(found.underside, i),
        rest=edge_in(found.rest, i),
        made=None if found.made is None else in_size(found.made, i),
        units=_numbers_in(found.units, i),
        taken=None if found.taken is None else in_size(found.taken, i),
        census=_numbers_in(found.census, i),
        unclear=found.unclear,
        facts=tuple([_fact_in(fact, i) for fact in found.facts]),
        stood=None if found.stood is None else (in_size(found.stood[0], i), found.stood[1]),
        placeless=found.placeless,
        unsure=found.unsure,
        kept_aside=tuple([Stretch(edge_in(one.edge, i), in_size(one.chain, i)) for one in found.kept_aside]),
        longer=found.longer,
    )


def _numbers_in(numbers: Mapping[str, int], i: int) -> dict[str, int]:
    return {name: in_size(number, i) for name, number in numbers.items()}


def _fact_in(fact: RepeatFact, i: int) -> RepeatFact:
    return RepeatFact(
        fact.place,
        in_size(fact.took, i),
        in_size(fact.took_spaces, i),
        edge_in(fact.before, i),
        edge_in(fact.after, i),
        in_size(fact.times, i),
    )
