"""Yarn, skeins and cost of every size in every colour, from the census and from what was weighed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.amounts import (
    NOTHING,
    Basis,
    EvidenceUsed,
    SizeYarn,
    YarnAmount,
    YarnLine,
    YarnNeed,
)
from gradegen.reckon.area import finished_areas
from gradegen.reckon.census import Census, stitch_census
from gradegen.reckon.evidence import Evidence, gather_evidence, unravelled_inches
from gradegen.reckon.per_stitch import PerStitch, Proportions, Weight, fit_stitches
from gradegen.reckon.put_up import PutUp, read_price
from gradegen.trade.yarn_use import use_disagreements

YARN_NOT_KNOWN = Rule(
    "yarn-not-known", Severity.NOTE, "house", "Nothing was weighed of a yarn, so what the sizes take can't be said."
)
YARN_IN_PROPORTION = Rule(
    "yarn-in-proportion", Severity.NOTE, "house", "Stitches are set against each other by published proportions."
)
ROWS_NOT_COUNTED = Rule(
    "rows-not-counted", Severity.WARNING, "arithmetic", "Rows could not be followed, so their yarn is missing."
)
USUAL_MARGIN = Fraction(1, 10)  # this and the next two: the house's choice among what designers do
MARGIN_OF_COLOURS = Fraction(3, 20)
MARGIN_TESTED = Fraction(1, 20)
TAIL = Fraction(6)  # inches of one end to weave in; common practice

Findings = tuple[Finding, ...]


def yarn_per_size(checked: Checked, census: Census | None = None) -> tuple[tuple[YarnNeed, ...], Findings]:
    """What every size takes of every yarn; a yarn of which nothing was weighed or measured is left out, with a note."""
    if not checked.worked:
        return (), ()
    counted = census or stitch_census(checked)
    needs: list[YarnNeed] = []
    findings: list[Finding] = list(_missing(checked, counted))
    for yarn in checked.pattern.yarns:
        need, found = _need(checked, counted, yarn)
        needs += [need] if need else []
        findings += found
    return tuple(needs), tuple(findings)


def _missing(checked: Checked, census: Census) -> list[Finding]:
    sizes = {size: labels for size, labels in census.missing.items() if labels}
    if not sizes or not checked.pattern.yarns:
        return []
    labels = ", ".join(dict.fromkeys(label or "a row" for labels in sizes.values() for label in labels))
    message = f"The yarn of these rows is not counted: {labels}."
    return [ROWS_NOT_COUNTED.at(checked.pattern.yarns[0].place, message, found=", ".join(sizes), expected="every row")]


def _need(checked: Checked, census: Census, yarn: Yarn) -> tuple[YarnNeed | None, Findings]:
    put_up = PutUp.of(yarn)
    evidence = gather_evidence(yarn, census, put_up)
    proportions = Proportions({one.name: one for one in checked.pattern.definitions})
    fitted = _fit(census, yarn, evidence, proportions)
    if fitted is None:
        by_area = _by_area(checked, yarn, put_up, evidence)
        return (by_area, ()) if by_area else (None, (_not_known(yarn),))
    each, in_inches = fitted
    counted = [one for one in evidence if one.stitches]
    used = tuple(_used(one, put_up, each.total(one.stitches), in_inches) for one in counted)
    lines = {
        size: [
            YarnLine(part.name, _amount(put_up, each.total(part.stitches), in_inches))
            for part in parts
            if part.colour == yarn.letter
        ]
        for size, parts in census.by_size.items()
    }
    need = _sized(checked, yarn, put_up, lines, used, each.basis, census)
    return need, tuple(_proportion(yarn, each, proportions, census))


def _fit(
    census: Census, yarn: Yarn, evidence: Sequence[Evidence], proportions: Proportions
) -> tuple[PerStitch, bool] | None:
    """Yarn per stitch, and whether it is in inches; in grams where the put-up gives no length."""
    counted = [one for one in evidence if one.stitches]
    measured = unravelled_inches(yarn)
    kinds = dict.fromkeys(name for size in census.by_size for name in census.of(size, yarn.letter))
    kinds |= dict.fromkeys(name for one in counted for name in one.stitches)
    in_inches = bool(measured) or any(one.used.inches is not None for one in counted)
    weights = [
        Weight(one.stitches, took)
        for one in counted
        if (took := one.used.inches if in_inches else one.used.grams) is not None
    ]
    fitted = fit_stitches(weights, measured, list(kinds), proportions) if weights or measured else None
    return (fitted, in_inches) if fitted else None


def _amount(put_up: PutUp, took: Fraction, in_inches: bool) -> YarnAmount:
    return put_up.filled(took, None) if in_inches else put_up.filled(None, took)


def _used(one: Evidence, put_up: PutUp, took: Fraction, in_inches: bool) -> EvidenceUsed:
    fitted = _amount(put_up, took, in_inches)
    real = one.used.inches if in_inches else one.used.grams
    return EvidenceUsed(one.words, one.used, fitted, real / took if real and took else Fraction(1), one.place)


def _by_area(checked: Checked, yarn: Yarn, put_up: PutUp, evidence: Sequence[Evidence]) -> YarnNeed | None:
    """By the area of the pieces, where only swatches without counted stitches were weighed."""
    swatches = [one for one in evidence if one.area]
    areas = finished_areas(checked)
    if not swatches or not areas or len(checked.pattern.yarns) > 1:
        return None
    whole = sum((one.area or Fraction(0) for one in swatches), Fraction(0))
    per_inch = NOTHING
    for one in swatches:
        per_inch = per_inch.plus(one.used)
    per_inch = per_inch.times(1 / whole)
    used = tuple(_area_used(one, per_inch) for one in swatches)
    lines = {
        size: [YarnLine(piece, per_inch.times(area)) for piece, area in pieces.items()]
        for size, pieces in areas.items()
    }
    return _sized(checked, yarn, put_up, lines, used, "area", Census({}, {}))


def _area_used(one: Evidence, per_inch: YarnAmount) -> EvidenceUsed:
    fitted = per_inch.times(one.area or Fraction(0))
    both = (one.used.inches, fitted.inches) if fitted.inches else (one.used.grams, fitted.grams)
    ratio = both[0] / both[1] if both[0] and both[1] else Fraction(1)
    return EvidenceUsed(one.words, one.used, fitted, ratio, one.place)


def _sized(
    checked: Checked,
    yarn: Yarn,
    put_up: PutUp,
    lines: Mapping[str, list[YarnLine]],
    evidence: tuple[EvidenceUsed, ...],
    basis: Basis,
    census: Census,
) -> YarnNeed:
    margin, why = margin_of(checked, yarn)
    ratios = [one.ratio for one in evidence]
    spread = (min(ratios), max(ratios)) if len(ratios) > 1 else None
    price = read_price(yarn.price.text) if yarn.price else None
    sizes = tuple(
        size_yarn(
            size.name,
            lines.get(size.name, []),
            yarn,
            put_up,
            margin,
            spread,
            price[0] if price else None,
            not census.missing.get(size.name),
        )
        for size in checked.sizes
    )
    return YarnNeed(yarn.letter, margin, why, basis, evidence, sizes, price[1] if price else "")


def margin_of(checked: Checked, yarn: Yarn) -> tuple[Fraction, str]:
    """The share on top of what is used, and why: as the pattern says, else by the house's habit."""
    if yarn.margin is not None:
        return yarn.margin / 100, "as the pattern says"
    testers = [one.size.text for one in yarn.weighed if one.what == "tester" and one.size is not None]
    if checked.sizes and all(testers.count(size.name) > 1 for size in checked.sizes):
        return MARGIN_TESTED, "usual where two testers made each size"
    if len(checked.pattern.yarns) > 1:
        return MARGIN_OF_COLOURS, "usual for several colours"
    return USUAL_MARGIN, "usual"


def size_yarn(
    size: str,
    lines: Sequence[YarnLine],
    yarn: Yarn,
    put_up: PutUp,
    margin: Fraction,
    spread: tuple[Fraction, Fraction] | None,
    price: Fraction | None,
    is_whole: bool = True,
) -> SizeYarn:
    """One size's yarn from what its parts take, with seams, tassels and tails on lines of their own."""
    used = NOTHING
    for line in lines:
        used = used.plus(line.amount)
    more = [YarnLine(name, put_up.measured(amount), False) for name, amount in yarn.besides.items()]
    net = used
    for line in more:
        net = net.plus(line.amount)
    if used.inches is not None:
        ends = _ends(yarn, len(lines), put_up.skeins(net.times(1 + margin)))
        tails = YarnLine("tails", put_up.filled(TAIL * ends, None), False)
        more.append(tails)
        net = net.plus(tails.amount)
    wanted = net.times(1 + margin)
    skeins = put_up.skeins(wanted)
    share = put_up.share(net)
    return SizeYarn(
        size=size,
        lines=(*lines, *more),
        used=used,
        low=used.times(spread[0]) if spread else None,
        high=used.times(spread[1]) if spread else None,
        wanted=wanted,
        skeins=skeins,
        slack=None if skeins is None or share is None else (skeins - share) / skeins,
        cost=skeins * price if skeins is not None and price is not None else None,
        is_whole=is_whole,
    )


def _ends(yarn: Yarn, parts: int, skeins: int | None) -> int:
    """Ends to weave in: as said, else two for each part and two for each new skein."""
    return yarn.tails if yarn.tails is not None else 2 * parts + 2 * max(0, (skeins or 1) - 1)


def _not_known(yarn: Yarn) -> Finding:
    message = f"Nothing was weighed of yarn {yarn.letter}, so what each size takes can't be worked out."
    return YARN_NOT_KNOWN.at(yarn.place, message, hint="sample: {size: M, used: 168 g}")


def _proportion(yarn: Yarn, each: PerStitch, proportions: Proportions, census: Census) -> list[Finding]:
    """That published proportions were used, and how they disagree."""
    guessed = sorted(each.guessed & {name for size in census.by_size for name in census.of(size, yarn.letter)})
    if not guessed:
        return []
    because = "; ".join(use_disagreements())
    names = ", ".join(guessed)
    message = f"What {names} take beside each other is a published rule of thumb, and published figures disagree."
    unknown = ", ".join(sorted(proportions.unknown))
    hint = "Unravel some: unravelled: {dc: 40 in / 20}, or weigh a swatch with its stitches."
    more = f" {unknown} is taken for a dc." if unknown else ""
    return [YARN_IN_PROPORTION.at(yarn.place, message + more, because=because, hint=hint)]
