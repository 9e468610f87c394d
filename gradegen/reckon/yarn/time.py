"""How long every size takes, from a timed piece or from stitches a minute, as a range."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.census.census import Census, stitch_census
from gradegen.reckon.yarn.per_stitch import Proportions, Weight, fit_stitches

TIME_IN_PROPORTION = Rule(
    "time-in-proportion", Severity.NOTE, "house", "Stitches that were not timed are taken to last as their yarn does."
)
QUICK, SLOW = Fraction(4, 5), Fraction(5, 4)  # house: hands differ by a quarter or more; no source

Findings = tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class SizeTime:
    """Minutes of crochet for one size: as timed, by a quick and by a slow hand."""

    size: str
    minutes: Fraction
    quick: Fraction
    slow: Fraction


def time_per_size(checked: Checked, census: Census | None = None) -> tuple[tuple[SizeTime, ...], Findings]:
    """Every size's time; () where nothing was timed."""
    timed = checked.pattern.timed
    if timed is None or not checked.worked:
        return (), ()
    counted = census or stitch_census(checked)
    paces = {name: 1 / rate for name, rate in timed.per_minute.items() if rate > 0}
    weights = []
    if timed.size is not None and timed.hours is not None and counted.of(timed.size.text):
        weights.append(Weight(counted.of(timed.size.text), timed.hours * 60))
    kinds = list(dict.fromkeys(name for size in counted.by_size for name in counted.of(size)))
    proportions = Proportions({one.name: one for one in checked.pattern.definitions})
    fitted = fit_stitches(weights, paces, proportions)
    if fitted is None:
        return (), ()
    known = fitted.with_also(kinds, proportions)
    times = []
    for size in checked.sizes:
        minutes = known.total(counted.of(size.name))
        times.append(SizeTime(size.name, minutes, minutes * QUICK, minutes * SLOW))
    guessed = sorted(known.guessed & set(kinds))
    if not guessed:
        return tuple(times), ()
    message = f"{', '.join(guessed)} were not timed one by one; they are taken to last as long as their yarn does."
    return tuple(times), (TIME_IN_PROPORTION.at(timed.place, message, hint="per minute: {dc: 12}"),)
