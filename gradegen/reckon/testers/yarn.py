"""Testers' yarn beside what the pattern reckons, and pooled with it: per size, and as lines for the pattern file."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount
from gradegen.design.pattern import Text, Weighed, Yarn
from gradegen.design.testing import FilledForm, YarnTaken
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import in_unit
from gradegen.reckon.census.census import Census, stitch_census
from gradegen.reckon.testers.spread import Spread, spread_of
from gradegen.reckon.testers.tested import YarnTested
from gradegen.reckon.yarn.amounts import SizeYarn, YarnAmount, YarnNeed
from gradegen.reckon.yarn.put_up import PutUp
from gradegen.reckon.yarn.yarn import yarn_per_size
from gradegen.trade.stitches import stitches

OUTLIER = Fraction(1, 5)  # house: reported above this, no source
LOOSE = Fraction(9, 10)  # house: of ten hands, nine come out
STEP = 25  # yards or grams; house, as amounts are usually printed

Needs = Mapping[str, Mapping[str, SizeYarn]]


def yarns_tested(forms: Sequence[FilledForm], sizes: Sequence[str], checked: Checked | None) -> tuple[YarnTested, ...]:
    """Every yarn in every size; sizes nobody weighed are there where the pooled evidence tells what they take."""
    letters = dict.fromkeys(letter for form in forms for letter in form.asked.yarns)
    put_ups = {yarn.letter: PutUp.of(yarn) for yarn in checked.pattern.yarns} if checked else {}
    census = stitch_census(checked) if checked else None
    needs = yarn_per_size(checked, census)[0] if checked else ()
    before, margins = _by_size(needs), {need.letter: need.margin for need in needs}
    after = _by_size(yarn_per_size(_with_evidence(checked, forms), census)[0]) if checked else {}
    found: list[YarnTested] = []
    for letter in letters:
        taken = list(_taken(forms, letter, put_ups.get(letter)))
        for size in sizes if taken else ():
            reckoned, pooled = before.get(letter, {}).get(size), after.get(letter, {}).get(size)
            each = tuple((form, amount) for form, amount in taken if form.asked.size == size)
            if not each and pooled is None:
                continue
            used = reckoned.used if reckoned is not None and reckoned.is_whole else None
            ratios = tuple((form, ratio) for form, amount in each if (ratio := _ratio(amount, used)) is not None)
            known = (pooled.used, pooled.wanted) if pooled is not None and pooled.is_whole else (None, None)
            found.append(YarnTested(letter, size, used, each, ratios, *known))
        found = _with_print(found, letter, margins.get(letter))
    return tuple(found)


def _by_size(needs: Iterable[YarnNeed]) -> Needs:
    return {need.letter: {size.size: size for size in need.sizes} for need in needs}


def _with_print(found: list[YarnTested], letter: str, margin: Fraction | None) -> list[YarnTested]:
    """The same with what can be printed: the ninth tenth of all testers' hands, or the most used in the size.

    Testers far off the others are left out of it.
    """
    spread = spread_of(ratio for one in found if one.letter == letter for _, ratio in one.ratios)
    if spread is None or margin is None:
        return found
    usual = spread_of(ratio for ratio in spread.values if not is_far_off(ratio, spread)) or spread
    loose = usual.share(LOOSE)

    def amount(one: YarnTested) -> YarnTested:
        if one.letter != letter or one.reckoned is None:
            return one
        most = max((loose, *(ratio for _, ratio in one.ratios if ratio in usual.values)))
        return replace(one, to_print=_in_steps(one.reckoned.times(most * (1 + margin))))

    return [amount(one) for one in found]


def is_far_off(ratio: Fraction, spread: Spread) -> bool:
    """True for a tester more than a fifth off the median of at least three."""
    return spread.many > 2 and abs(ratio / spread.median - 1) > OUTLIER


def _in_steps(amount: YarnAmount) -> YarnAmount:
    def up(number: Fraction | None) -> Fraction | None:
        return None if number is None else Fraction(-(-number // STEP) * STEP)

    yards = up(amount.yards)
    return YarnAmount(None if yards is None else yards * 36, up(amount.grams))


def _taken(forms: Iterable[FilledForm], letter: str, put_up: PutUp | None) -> Iterator[tuple[FilledForm, YarnAmount]]:
    """What each tester used, in both units where the pattern's put-up tells the other one."""
    for form in forms:
        for yarn in form.yarns:
            if yarn.letter == letter and (yarn.inches is not None or yarn.grams is not None):
                known = put_up.filled(yarn.inches, yarn.grams) if put_up else YarnAmount(yarn.inches, yarn.grams)
                yield form, known


def _ratio(used: YarnAmount, reckoned: YarnAmount | None) -> Fraction | None:
    if reckoned is None:
        return None
    if used.inches is not None and reckoned.inches:
        return used.inches / reckoned.inches
    return used.grams / reckoned.grams if used.grams is not None and reckoned.grams else None


def _with_evidence(checked: Checked, forms: Sequence[FilledForm]) -> Checked:
    """The pattern with the testers' pieces among what was weighed."""
    yarns = tuple(replace(yarn, weighed=(*yarn.weighed, *_weighed(yarn, forms))) for yarn in checked.pattern.yarns)
    return replace(checked, pattern=replace(checked.pattern, yarns=yarns))


def _weighed(yarn: Yarn, forms: Sequence[FilledForm]) -> Iterator[Weighed]:
    for form, taken in _new(yarn.letter, yarn, forms):
        number, unit = _amount(taken)
        place = form.place
        yield Weighed("tester", Amount(number, unit, place), Text(form.asked.size, place), place=place)


def _new(letter: str, yarn: Yarn | None, forms: Sequence[FilledForm]) -> Iterator[tuple[FilledForm, YarnTaken]]:
    """Forms whose weight does not stand in the pattern yet."""
    known = [
        (one.size.text, one.used.number, one.used.unit)
        for one in (yarn.weighed if yarn else ())
        if one.size is not None and one.what == "tester"
    ]
    for form in forms:
        for taken in form.yarns:
            if taken.letter == letter and (taken.inches is not None or taken.grams is not None):
                told = (form.asked.size, *_amount(taken))
                if told in known:
                    known.remove(told)
                else:
                    yield form, taken


def _amount(taken: YarnTaken) -> tuple[Fraction, str]:
    """Grams as weighed; the length where only that was measured, in yards to two decimals."""
    if taken.grams is not None:
        return Fraction(decimal_text(taken.grams, 1)), "g"
    return Fraction(decimal_text(in_unit(taken.inches or Fraction(0), "yd"), 1)), "yd"


def evidence_lines(forms: Sequence[FilledForm], checked: Checked | None) -> Mapping[str, tuple[str, ...]]:
    """What to paste under `testers:` of each yarn: one line a tester, without those that stand there already.

    The stitches of the size go along where the form is of the pattern's own version, so that later changes leave the
    evidence as it is.
    """
    yarns = {yarn.letter: yarn for yarn in checked.pattern.yarns} if checked else {}
    census = stitch_census(checked) if checked else None
    lines: dict[str, tuple[str, ...]] = {}
    for letter in dict.fromkeys(letter for form in forms for letter in form.asked.yarns):
        new = _new(letter, yarns.get(letter), forms)
        found = tuple(_line(form, taken, _stitches(form, letter, checked, census)) for form, taken in new)
        if found:
            lines[letter] = found
    return lines


def _line(form: FilledForm, taken: YarnTaken, counted: str) -> str:
    number, unit = _amount(taken)
    stitches_made = f", stitches: {{{counted}}}" if counted else ""
    return f"- {{size: {form.asked.size}, used: {decimal_text(number)} {unit}{stitches_made}}}"


def _stitches(form: FilledForm, letter: str, checked: Checked | None, census: Census | None) -> str:
    """The stitches of the form's size, in the pattern's own terms; "" where they can't be told."""
    size = form.asked.size
    if checked is None or census is None or census.missing.get(size):
        return ""
    version = checked.pattern.version.text if checked.pattern.version else ""
    if form.asked.version != version:
        return ""
    known = stitches()
    names = {kind: known[kind].abbreviation(checked.pattern.terms) for kind in census.of(size, letter) if kind in known}
    return ", ".join(f"{names.get(kind, kind)}: {number}" for kind, number in census.of(size, letter).items())
