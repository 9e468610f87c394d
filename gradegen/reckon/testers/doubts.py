"""Where the testers and the pattern do not agree, and what nobody tested."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.testing import FilledForm
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import in_unit
from gradegen.reckon.testers.spread import spread_of
from gradegen.reckon.testers.tested import GaugeTested, MeasureTested, Tested
from gradegen.reckon.testers.yarn import is_far_off

SIZE_UNTESTED = Rule("size-untested", Severity.WARNING, "common practice", "Nobody tested a size.")
GAUGE_OFF = Rule(
    "gauge-differs-from-testers", Severity.WARNING, "house", "The stated gauge is not what testers get on the median."
)
YARN_OFF = Rule("estimate-off", Severity.WARNING, "house", "Testers used another amount of yarn than is reckoned.")
YARN_OUTLIER = Rule("tester-far-off", Severity.NOTE, "house", "One tester used far more or less yarn than the others.")
MEASURE_OFF = Rule(
    "finished-measure-off", Severity.WARNING, "house", "Testers' pieces came out another size than the pattern says."
)
GAUGE_MOST = Fraction(3, 100)  # shares and lengths of this module: house rules, no source
YARN_MOST = Fraction(1, 10)
MEASURE_MOST = Fraction(1, 2)  # inches, as for a drift that is told


def doubts(tested: Tested, checked: Checked | None) -> Iterator[Finding]:
    """Every doubt, at its place in the pattern, or in the first form concerned where the pattern is not at hand."""
    yield from _untested(tested, checked)
    for gauge in tested.gauges:
        yield from _gauge(gauge, checked)
    yield from _yarn(tested, checked)
    for measure in tested.measures:
        yield from _measure(measure, checked)


def _untested(tested: Tested, checked: Checked | None) -> Iterator[Finding]:
    for size in tested.untested:
        if checked is not None:
            yield SIZE_UNTESTED.at(checked.pattern.sizes.place, "Nobody tested this size.", size=size)


def _gauge(gauge: GaugeTested, checked: Checked | None) -> Iterator[Finding]:
    off = gauge.off
    if off is None or gauge.stated is None or abs(off) <= GAUGE_MOST:
        return
    known = checked.pattern.gauges.get(gauge.gauge) if checked else None
    place = known.place if known else gauge.each[0][0].place
    if (gauge.after and known is not None) and known.places:
        place = known.places.get("rows" if gauge.counted == "rows" else gauge.counted, known.place)
    state = "after" if gauge.after else "before"
    what = f"{gauge.counted} of {gauge.gauge} {state} washing"
    yield GAUGE_OFF.at(
        place,
        f"The testers' median of {what} is {_beside(off, 'above', 'below')} what is stated.",
        expected=decimal_text(gauge.stated),
        found=f"{decimal_text(gauge.spread.median)} (from {decimal_text(gauge.spread.least)} to "
        f"{decimal_text(gauge.spread.most)}, {_testers(gauge.spread.many)})",
        hint="Name another hook, or state the gauge that testers get and grade anew.",
    )


def _yarn(tested: Tested, checked: Checked | None) -> Iterator[Finding]:
    for letter in dict.fromkeys(yarn.letter for yarn in tested.yarns):
        sizes = [yarn for yarn in tested.yarns if yarn.letter == letter]
        spread = spread_of(ratio for yarn in sizes for _, ratio in yarn.ratios)
        if spread is None:
            continue
        found = next((one for one in checked.pattern.yarns if one.letter == letter), None) if checked else None
        if found is not None and abs(spread.median - 1) > YARN_MOST:
            yield YARN_OFF.at(
                found.place,
                f"Testers used {_beside(spread.median - 1, 'more', 'less')} of yarn {letter} than is reckoned "
                f"({_testers(spread.many)}, on the median).",
                hint="Put their weights into the pattern: gradegen testers DIR --pattern FILE --evidence",
            )
        for yarn in sizes:
            for form, ratio in yarn.ratios:
                if is_far_off(ratio, spread):
                    yield _outlier(form, letter, ratio / spread.median - 1)


def _outlier(form: FilledForm, letter: str, off: Fraction) -> Finding:
    place: Place = form.places.get(f"yarn {letter} grams", form.place)
    message = f"{form.who} used {_beside(off, 'more', 'less')} of yarn {letter} than testers do on the median."
    return YARN_OUTLIER.at(place, message, size=form.asked.size, hint="Ask which yarn and which hook it was.")


def _measure(measure: MeasureTested, checked: Checked | None) -> Iterator[Finding]:
    if abs(measure.off) <= MEASURE_MOST:
        return
    known = checked.pattern.measures.get(measure.measure) if checked else None
    place = known.place if known else measure.each[0][0].place
    yield MEASURE_OFF.at(
        place,
        f"The testers' {measure.measure} came out otherwise.",
        size=measure.size,
        expected=_length(measure.expected),
        found=f"{_length(measure.spread.median)}, {_testers(measure.spread.many)}",
    )


def _length(inches: Fraction) -> str:
    return f"{decimal_text(inches)} in ({decimal_text(in_unit(inches, 'cm'), 1)} cm)"


def _testers(many: int) -> str:
    return f"{many} tester{'' if many == 1 else 's'}"


def _beside(share: Fraction, above: str, below: str) -> str:
    return f"{decimal_text(100 * abs(share), 1)} % {above if share > 0 else below}"
