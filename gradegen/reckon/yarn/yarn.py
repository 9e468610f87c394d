"""Yarn, skeins and cost of every size in every colour, from the census and from what was weighed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text
from gradegen.reckon.census.census import Census, stitch_census
from gradegen.reckon.seams.sewn_seams import seams_not_known
from gradegen.reckon.yarn.amounts import YarnNeed
from gradegen.reckon.yarn.evidence import all_weighed
from gradegen.reckon.yarn.fitted_yarn import FittedYarn, fit_yarn
from gradegen.reckon.yarn.put_up import read_price
from gradegen.trade.yarn_use import use_disagreements

YARN_NOT_KNOWN = Rule(
    "yarn-not-known", Severity.NOTE, "house", "Nothing was weighed of a yarn, so what the sizes take can't be said."
)
YARN_IN_PROPORTION = Rule(
    "yarn-in-proportion", Severity.NOTE, "house", "Stitches are set against each other by published proportions."
)
YARN_BY_AREA = Rule(
    "yarn-by-area", Severity.NOTE, "common practice", "Yarn is worked out from area alone, which forgets edgings."
)
ROWS_NOT_COUNTED = Rule(
    "rows-not-counted", Severity.WARNING, "arithmetic", "Rows could not be followed, so their yarn is missing."
)
YARN_MAY_RUN_OUT = Rule(
    "yarn-may-run-out", Severity.WARNING, "house", "The skeins leave less than a twentieth over what the sample took."
)
PRICE_UNREADABLE = Rule("price-unreadable", Severity.WARNING, "file format", "A price is not written as a number.")
COLOURS_NOT_SPLIT = Rule(
    "colours-not-split", Severity.NOTE, "house", "A row changes colour in a way that could not be followed."
)
YARN_FALLS = Rule("larger-size-takes-less", Severity.WARNING, "common practice", "A larger size takes less yarn.")
STITCHES_CHANGED = Rule(
    "stitches-changed-since-weighing",
    Severity.NOTE,
    "house",
    "A size takes other stitches now than when it was weighed.",
)
SLACK = Fraction(1, 20)

Findings = tuple[Finding, ...]


def yarn_per_size(checked: Checked, census: Census | None = None) -> tuple[tuple[YarnNeed, ...], Findings]:
    """What every size takes of every yarn; a yarn of which nothing was weighed or measured is left out, with a note."""
    if not checked.worked:
        return (), ()
    counted = census or stitch_census(checked)
    needs: list[YarnNeed] = []
    findings: list[Finding] = [*_missing(checked, counted), *_unsplit(checked, counted)]
    for yarn in checked.pattern.yarns:
        fitted = fit_yarn(checked, counted, yarn)
        if fitted is None:
            findings.append(_not_known(yarn))
            continue
        need = fitted.need(checked, counted)
        needs.append(need)
        findings += (*_changed(yarn, counted), *_proportion(fitted, counted), *_short(yarn, need), *_price(yarn))
        findings += seams_not_known(checked, yarn, fitted.knows_lengths)
    return tuple(needs), tuple(findings)


def _missing(checked: Checked, census: Census) -> Iterator[Finding]:
    sizes = {size: labels for size, labels in census.missing.items() if labels}
    if sizes and checked.pattern.yarns:
        labels = ", ".join(dict.fromkeys(label or "a row" for labels in sizes.values() for label in labels))
        message = f"The yarn of these rows is not counted: {labels}."
        place = checked.pattern.yarns[0].place
        yield ROWS_NOT_COUNTED.at(place, message, because=f"in {', '.join(sizes)} they could not be followed")


def _changed(yarn: Yarn, census: Census) -> Iterator[Finding]:
    """Sizes whose rows take other stitches than those written down beside what was weighed."""
    for one in all_weighed(yarn):
        now = census.of(one.size.text, yarn.letter) if one.size is not None else None
        if one.size is None or not one.stitches or not now or census.missing.get(one.size.text):
            continue
        names = [name for name in dict.fromkeys((*one.stitches, *now)) if one.stitches.get(name, 0) != now[name]]
        if names:
            yield STITCHES_CHANGED.at(
                one.place,
                f"This size takes other stitches now than those written down for the {one.what}.",
                size=one.size.text,
                expected=", ".join(f"{now[name]} {name}" for name in names),
                found=", ".join(f"{one.stitches.get(name, 0)} {name}" for name in names),
                hint="The weight stays with the stitches written down. Write down the new ones if it was made anew.",
            )


def _price(yarn: Yarn) -> Iterator[Finding]:
    if yarn.price is not None and read_price(yarn.price.text) is None:
        hint = "Write a number with its currency, such as 8.50 EUR."
        yield PRICE_UNREADABLE.at(yarn.price.place, "This is no price of a skein.", hint=hint)


def _unsplit(checked: Checked, census: Census) -> Iterator[Finding]:
    if census.unsplit:
        message = f"The colours of these rows could not be told apart: {', '.join(census.unsplit[:6])}."
        hint = "Name the yarn before the stitches worked in it: with A, sc in next 3 sts, with B, ..."
        yield COLOURS_NOT_SPLIT.at(checked.pattern.yarns[0].place, message, hint=hint)


def _not_known(yarn: Yarn) -> Finding:
    message = f"Nothing was weighed of yarn {yarn.letter}, so what each size takes can't be worked out."
    return YARN_NOT_KNOWN.at(yarn.place, message, hint="sample: {size: M, used: 168 g}")


def _proportion(fitted: FittedYarn, census: Census) -> Iterator[Finding]:
    """That area or published proportions were used, and how the latter disagree."""
    yarn = fitted.yarn
    if fitted.each is None or fitted.proportions is None:
        message = f"Yarn {yarn.letter} is worked out from area alone; edgings and thick stitches are not in it."
        yield YARN_BY_AREA.at(yarn.place, message, hint="Count the swatch: stitches: {dc: 200, ch: 60}.")
        return
    guessed = sorted(fitted.each.guessed & {name for size in census.by_size for name in census.of(size, yarn.letter)})
    if not guessed:
        return
    names, unknown = ", ".join(guessed), ", ".join(sorted(fitted.proportions.unknown))
    message = f"What {names} take beside each other is a published rule of thumb, and published figures disagree."
    yield YARN_IN_PROPORTION.at(
        yarn.place,
        message + (f" {unknown} is taken for a dc." if unknown else ""),
        because="; ".join(use_disagreements()),
        hint="Unravel some: unravelled: {dc: 40 in / 20}, or weigh a swatch with its stitches.",
    )


def _short(yarn: Yarn, need: YarnNeed) -> Iterator[Finding]:
    """Sizes in which one loose hand is enough to run out, and sizes that take less than the one before."""
    for size in need.sizes:
        if size.slack is not None and size.slack < SLACK:
            yield YARN_MAY_RUN_OUT.at(
                yarn.place,
                "One loose hand and the yarn runs out.",
                size=size.size,
                expected="5 % of the skeins left over, or more",
                found=f"{decimal_text(100 * size.slack, 1)} %",
                hint=f"Raise the margin, or ask for {(size.skeins or 0) + 1} skeins.",
            )
    for smaller, larger in pairwise(need.sizes):
        one, other = smaller.used.inches or smaller.used.grams, larger.used.inches or larger.used.grams
        if one is not None and other is not None and other < one and smaller.is_whole and larger.is_whole:
            message = f"This size takes less of yarn {yarn.letter} than {smaller.size}."
            yield YARN_FALLS.at(yarn.place, message, size=larger.size, hint="Look at its counts and rows.")
