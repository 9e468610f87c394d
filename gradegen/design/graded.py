"""What grading gives: one GradedSize per size, exact, with how every count was rounded and what it costs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from gradegen.design.sizes import Cell
from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class GradedMeasure:
    """One finished measure in one size, in exact inches: what was wanted, and what the counts make of it.

    `finished` is the measure recomputed from the snapped count (None: no count is tied to it). What is printed is
    `finished` where there is one, else `target`; never the target of a snapped measure.
    """

    name: str
    target: Fraction
    finished: Fraction | None
    place: Place = field(compare=False)

    @property
    def printed(self) -> Fraction:
        """Exact inches to print."""
        return self.target if self.finished is None else self.finished

    @property
    def drift(self) -> Fraction:
        """Finished less target, inches; 0 where no count is tied to it."""
        return self.printed - self.target


@dataclass(frozen=True, slots=True)
class GradedCount:
    """One count in one size.

    `raw` is the unrounded count (None for sums of other counts), `n` the snapped one, `repeats` the k of n = k *
    multiple + plus, `chain` = n + base extra. `rounded` says in words how it was rounded. `below`/`above` are the
    nearest other good counts. `on_hook`: what the finished count measures before washing, where the gauge says.
    `together`: the counts it was solved together with, by their relations. `nearest`: the count it would have alone,
    where relations gave it another. `pinned`: the designer wrote this count.
    """

    name: str
    n: int
    chain: int
    raw: Fraction | None
    repeats: int | None
    target: Fraction | None
    finished: Fraction | None
    rounded: str
    below: int | None
    above: int | None
    unit: str  # "sts", "rows", or "number" for a share of a count
    place: Place = field(compare=False)
    on_hook: Fraction | None = None
    together: tuple[str, ...] = ()
    nearest: int | None = None
    pinned: bool = False

    @property
    def drift(self) -> Fraction | None:
        """Finished less target, inches."""
        return None if self.finished is None or self.target is None else self.finished - self.target


@dataclass(frozen=True, slots=True)
class KeyEase:
    """A finished measure beside the body column that it goes with; `ease`: what is printed less that body, inches."""

    measure: str
    body: str
    ease: Fraction


@dataclass(frozen=True, slots=True)
class GradedSize:
    """Everything known about one size: its body, the end of the band that was graded, measures and counts.

    `ease`: printed `ease_measure` less graded body column `ease_body`, inches; `fit` its published name, for bust and
    chest only. `key_eases`: the same for every measure made of one body column, that one first. `converted`: body
    columns whose inches come from published centimetres, none in inches being published.
    """

    name: str
    index: int
    wearer: str
    body: Mapping[str, Cell]
    graded_body: Mapping[str, Fraction]
    to_fit: Cell | None
    measures: Mapping[str, GradedMeasure]
    counts: Mapping[str, GradedCount]
    ease: Fraction | None = None
    fit: str | None = None
    ease_measure: str | None = None
    ease_body: str | None = None
    converted: frozenset[str] = frozenset()
    key_eases: tuple[KeyEase, ...] = ()

    def numbers(self) -> dict[str, int]:
        """Count names to whole numbers, as rows use them; `NAME chain` gives the chain to make."""
        plain = {name: count.n for name, count in self.counts.items()}
        return plain | {f"{name} chain": count.chain for name, count in self.counts.items()}
