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
from gradegen.reckon.amounts import SizeYarn, YarnAmount
from gradegen.reckon.census import Census, stitch_census
from gradegen.reckon.put_up import PutUp
from gradegen.reckon.testers.tested import YarnTested
from gradegen.reckon.yarn import yarn_per_size

Needs = Mapping[str, Mapping[str, SizeYarn]]


def yarns_tested(forms: Sequence[FilledForm], sizes: Sequence[str], checked: Checked | None) -> tuple[YarnTested, ...]:
    """Every yarn in every size; sizes nobody weighed are there where the pooled evidence tells what they take."""
    letters = dict.fromkeys(letter for form in forms for letter in form.asked.yarns)
    put_ups = {yarn.letter: PutUp.of(yarn) for yarn in checked.pattern.yarns} if checked else {}
    census = stitch_census(checked) if checked else None
    before: Needs = _needs(checked, census) if checked else {}
    after: Needs = _needs(_with_evidence(checked, forms), census) if checked else {}
    found = []
    for letter in letters:
        taken = list(_taken(forms, letter, put_ups.get(letter)))
        for size in sizes if taken else ():
            reckoned, pooled = before.get(letter, {}).get(size), after.get(letter, {}).get(size)
            each = tuple((form, amount) for form, amount in taken if form.asked.size == size)
            if not each and pooled is None:
                continue
            used = reckoned.used if reckoned is not None and reckoned.is_whole else None
            ratios = tuple((form, ratio) for form, amount in each if (ratio := _ratio(amount, used)) is not None)
            known = pooled if pooled is not None and pooled.is_whole else None
            found.append(
                YarnTested(
                    letter, size, used, each, ratios, known.used if known else None, known.wanted if known else None
                )
            )
    return tuple(found)


def _needs(checked: Checked, census: Census | None) -> Needs:
    needs, _ = yarn_per_size(checked, census)
    return {need.letter: {size.size: size for size in need.sizes} for need in needs}


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
    """What to paste under `testers:` of each yarn: one line a tester, without those that stand there already."""
    yarns = {yarn.letter: yarn for yarn in checked.pattern.yarns} if checked else {}
    lines: dict[str, tuple[str, ...]] = {}
    for letter in dict.fromkeys(letter for form in forms for letter in form.asked.yarns):
        new = _new(letter, yarns.get(letter), forms)
        said = ((form.asked.size, *_amount(taken)) for form, taken in new)
        found = tuple(f"- {{size: {size}, used: {decimal_text(number)} {unit}}}" for size, number, unit in said)
        if found:
            lines[letter] = found
    return lines
