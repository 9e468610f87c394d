"""What merging gives: gauge, yarn, measures, time, errors and remarks of all testers, beside what the pattern says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.testing import FilledForm
from gradegen.reckon.testers.spread import Spread
from gradegen.reckon.yarn.amounts import YarnAmount


@dataclass(frozen=True, slots=True)
class GaugeTested:
    """One gauge in one direction: `counted` is stitches, repeats or rows over `over` inches, before or after washing.

    `stated`: what the pattern says (None: nothing). `each`: tester and number.
    """

    gauge: str
    counted: str
    after: bool
    over: Fraction
    stated: Fraction | None
    each: tuple[tuple[FilledForm, Fraction], ...]
    spread: Spread

    @property
    def off(self) -> Fraction | None:
        """How much more the testers' median is than what is stated, as a share of it."""
        return None if not self.stated else self.spread.median / self.stated - 1


@dataclass(frozen=True, slots=True)
class YarnTested:
    """One yarn in one size: what the pattern reckons (None: not known), and what each tester used.

    `ratios`: used over reckoned, one per tester, by length where that is known of both, else by weight.
    `pooled`: what the size takes with the testers' pieces among the evidence, `wanted` the same with the margin.
    `to_print`: an amount with which nine hands in ten come out, with the margin, in whole steps of 25 yards or grams.
    """

    letter: str
    size: str
    reckoned: YarnAmount | None
    each: tuple[tuple[FilledForm, YarnAmount], ...]
    ratios: tuple[tuple[FilledForm, Fraction], ...]
    pooled: YarnAmount | None = None
    wanted: YarnAmount | None = None
    to_print: YarnAmount | None = None


@dataclass(frozen=True, slots=True)
class MeasureTested:
    """One finished measure in one size: expected and made, exact inches."""

    measure: str
    size: str
    expected: Fraction
    each: tuple[tuple[FilledForm, Fraction], ...]
    spread: Spread

    @property
    def off(self) -> Fraction:
        """How much longer the testers' median is, inches."""
        return self.spread.median - self.expected


@dataclass(frozen=True, slots=True)
class TimeTested:
    """Minutes in one size: as testers took, and as the pattern reckons (None: nothing was timed)."""

    size: str
    reckoned: Fraction | None
    each: tuple[tuple[FilledForm, Fraction], ...]
    spread: Spread


@dataclass(frozen=True, slots=True)
class RowTested:
    """Everything told of one row. `line`: of the pattern file (None: not known, or no row of it).

    `each`: form, what the tester came to, what the pattern makes there in that size, and the tester's words.
    """

    name: str
    line: int | None
    each: tuple[tuple[FilledForm, str, str, str], ...]


@dataclass(frozen=True, slots=True)
class PieceTested:
    """How testers found one piece, 1 to 5 (None: nobody said)."""

    piece: str
    difficulty: Spread | None
    clarity: Spread | None


@dataclass(frozen=True, slots=True)
class Tested:
    """All forms of one pattern put together.

    `forms`: those that count. `sizes`: the pattern's sizes, or those of the forms where the pattern is not at hand.
    `untested`: sizes without a tester (() also where that is not known). `remarks`: kind -> form and words.
    `evidence`: yarn letter -> lines for the pattern's `testers:`.
    """

    pattern: str
    version: str
    has_pattern: bool
    forms: tuple[FilledForm, ...]
    sizes: tuple[str, ...]
    gauges: tuple[GaugeTested, ...]
    yarns: tuple[YarnTested, ...]
    measures: tuple[MeasureTested, ...]
    times: tuple[TimeTested, ...]
    rows: tuple[RowTested, ...]
    pieces: tuple[PieceTested, ...]
    remarks: Mapping[str, tuple[tuple[FilledForm, str], ...]]
    untested: tuple[str, ...]
    evidence: Mapping[str, tuple[str, ...]]
