"""One row worked in several sizes at once, where all of them go the same way and differ in their counts alone."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from gradegen.design.edge import Edge
from gradegen.design.rows import Number, Row
from gradegen.findings import Place
from gradegen.work.along.repeat_facts import RepeatFact
from gradegen.work.along.walk import Stretch
from gradegen.work.edge.each_size import each_size, edge_of_all, edges_in, in_sizes
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
        return _outcomes_in(found, befores)
    except (Unlike, TypeError):  # sizes that part, and sums that such counts do not know
        return None


def _outcomes_in(found: Outcome, befores: Sequence[Edge]) -> list[Outcome]:
    """What the sizes worked as one came to, told for each of them."""
    number = len(befores)
    edges = zip(*(edges_in(edge, number) for edge in (found.after, found.underside, found.rest)), strict=True)
    counts = zip(*(_counts_in(count, number) for count in (found.made, found.taken)), strict=True)
    names = zip(*(_named_in(counts, number) for counts in (found.units, found.census)), strict=True)
    facts, stretches = _facts_in(found.facts, number), _stretches_in(found.kept_aside, number)
    stood = _counts_in(found.stood[0] if found.stood else None, number)
    outcomes = []
    for i, before in enumerate(befores):
        (after, underside, rest), (made, taken), (units, census) = next(edges), next(counts), next(names)
        chain = stood[i]
        outcomes.append(
            Outcome(
                before,
                after,
                underside,
                rest,
                made=made,
                units=units,
                taken=taken,
                census=census,
                unclear=found.unclear,
                open_counts=found.open_counts,
                facts=facts[i],
                stood=(chain, found.stood[1]) if found.stood and chain is not None else None,
                placeless=found.placeless,
                unsure=found.unsure,
                kept_aside=stretches[i],
                longer=found.longer,
            )
        )
    return outcomes


def _counts_in(count: int | None, sizes: int) -> Sequence[int | None]:
    return (None,) * sizes if count is None else in_sizes(count, sizes)


def _named_in(counts: Mapping[str, int], sizes: int) -> Sequence[dict[str, int]]:
    """Counts by name in each size; every size has its own to add to."""
    each = [in_sizes(count, sizes) for count in counts.values()]
    return [dict(zip(counts, [column[i] for column in each], strict=True)) for i in range(sizes)]


def _facts_in(facts: Sequence[RepeatFact], sizes: int) -> Sequence[tuple[RepeatFact, ...]]:
    if not facts:
        return ((),) * sizes
    return list(zip(*(_fact_in(fact, sizes) for fact in facts), strict=True))


def _fact_in(fact: RepeatFact, sizes: int) -> list[RepeatFact]:
    numbers = (in_sizes(number, sizes) for number in (fact.took, fact.took_spaces))
    edges = (edges_in(edge, sizes) for edge in (fact.before, fact.after))
    told = zip(*numbers, *edges, in_sizes(fact.times, sizes), strict=True)
    return [RepeatFact(fact.place, *one) for one in told]


def _stretches_in(stretches: Sequence[Stretch], sizes: int) -> Sequence[tuple[Stretch, ...]]:
    if not stretches:
        return ((),) * sizes
    each = [zip(edges_in(one.edge, sizes), in_sizes(one.chain, sizes), strict=True) for one in stretches]
    return [tuple([Stretch(*one) for one in told]) for told in zip(*each, strict=True)]
