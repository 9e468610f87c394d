"""How much yarn one stitch takes: fitted to what was weighed, over the census of what was weighed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from gradegen.design.rows import Definition
from gradegen.reckon.yarn.amounts import Basis
from gradegen.reckon.yarn.least_squares import best_factor, best_parts
from gradegen.trade.yarn_use import relative_use

Stitches = Mapping[str, int]
USUAL = "dc"  # what a stitch nobody explains is taken for


@dataclass(frozen=True, slots=True)
class Proportions:
    """How stitches stand to each other in yarn, single crochet being 100, the pattern's own stitches by their parts."""

    own: Mapping[str, Definition]
    unknown: set[str] = field(default_factory=set)

    def of(self, name: str) -> Fraction:
        """One stitch; one that nobody explains counts as a dc and is noted in `unknown`."""
        use = self._own(name) or relative_use(name)
        if use is None:
            self.unknown.add(name)
            use = relative_use(USUAL)
        assert use is not None
        return use

    def total(self, stitches: Stitches) -> Fraction:
        """All of a census in hundredths of a single crochet."""
        return sum((self.of(name) * number for name, number in stitches.items()), Fraction(0))

    def _own(self, name: str) -> Fraction | None:
        definition = self.own.get(name)
        if definition is None or not definition.makes:
            return None
        uses = [self._made(make.stitch) for make in definition.makes]
        numbers = [make.times.values[0] if make.times and make.times.values else 1 for make in definition.makes]
        if None in uses or None in numbers:
            return None
        known = [(use, number) for use, number in zip(uses, numbers, strict=True) if use is not None and number]
        return sum((use * number for use, number in known), Fraction(0))

    def _made(self, stitch: str) -> Fraction | None:
        return relative_use(stitch) if stitch not in self.own else None


@dataclass(frozen=True, slots=True)
class Weight:
    """One thing weighed: its census and what it took, inches or grams."""

    stitches: Stitches
    took: Fraction


@dataclass(frozen=True, slots=True)
class PerStitch:
    """Yarn in one stitch by name, inches or grams as its evidence was; `guessed`: in published proportions only."""

    basis: Basis
    each: Mapping[str, Fraction]
    guessed: frozenset[str]

    def total(self, stitches: Stitches) -> Fraction:
        """The yarn in a census whose stitches are all known."""
        return sum((self.each[name] * number for name, number in stitches.items()), Fraction(0))

    def with_also(self, names: Iterable[str], proportions: Proportions) -> PerStitch:
        """Stitches the evidence never met as well, in published proportion to those it did."""
        others = [name for name in names if name not in self.each]
        factor = best_factor([proportions.of(name) for name in self.each], list(self.each.values()))
        if not others or factor is None:
            return self
        more = {name: factor * proportions.of(name) for name in others}
        basis: Basis = "one factor" if len(self.each) == 1 and self.basis == "each stitch" else self.basis
        return replace(self, basis=basis, each={**self.each, **more}, guessed=self.guessed | more.keys())


def fit_stitches(
    weights: Sequence[Weight], measured: Mapping[str, Fraction], proportions: Proportions
) -> PerStitch | None:
    """Yarn per stitch for all stitches of the evidence, fitted by least squares.

    Every stitch gets a fit of its own only where the weighed pieces settle all of them, and none strays from the
    usual proportions by more than twice: pieces much alike would give wild figures. Else one factor is fitted over the
    proportions, which are those measured, and the published ones for stitches that were not. None without any evidence.
    """
    names = dict.fromkeys((*measured, *(name for weight in weights for name in weight.stitches)))
    each = _usual(names, measured, proportions)
    tooks = [weight.took for weight in weights]
    if weights:
        factor = best_factor([_total(each, weight) for weight in weights], tooks)
        if factor is None or factor <= 0:
            return None
        each = {name: use * factor for name, use in each.items()}
        lines = [[Fraction(weight.stitches.get(name, 0)) for name in names] for weight in weights]
        own = dict(zip(names, best_parts(lines, tooks) or (), strict=False))
        if own and all(each[name] / 2 <= use <= each[name] * 2 for name, use in own.items()):
            return PerStitch("each stitch", own, frozenset())
    guessed = frozenset(each.keys() - measured.keys()) if len(each) > 1 else frozenset()
    basis: Basis = ("lengths and weights" if weights else "measured lengths") if measured else "one factor"
    return PerStitch(basis, each, guessed) if each else None


def _usual(names: Iterable[str], measured: Mapping[str, Fraction], proportions: Proportions) -> dict[str, Fraction]:
    """Every stitch as measured, the others in published proportion to those."""
    factor = best_factor([proportions.of(name) for name in measured], list(measured.values())) or Fraction(1)
    return {name: measured.get(name, factor * proportions.of(name)) for name in names}


def _total(each: Mapping[str, Fraction], weight: Weight) -> Fraction:
    return sum((each[name] * number for name, number in weight.stitches.items()), Fraction(0))
