"""One yarn with its evidence fitted: from the stitches of any size to length, weight, skeins and cost."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.reckon.census.census import Census, Counted
from gradegen.reckon.seams.sewn_seams import Sewing, sewing_yarn
from gradegen.reckon.yarn.amounts import NOTHING, Basis, EvidenceUsed, SizeYarn, YarnAmount, YarnLine, YarnNeed
from gradegen.reckon.yarn.area import finished_areas
from gradegen.reckon.yarn.evidence import Evidence, gather_evidence, unravelled_evidence, unravelled_inches
from gradegen.reckon.yarn.per_stitch import PerStitch, Proportions, Weight, fit_stitches
from gradegen.reckon.yarn.put_up import PutUp, read_price

USUAL_MARGIN = Fraction(1, 10)  # this and the next two: the house's choice among what designers do
MARGIN_OF_COLOURS = Fraction(3, 20)
MARGIN_TESTED = Fraction(1, 20)
SEAMS = "seams"
TAIL = Fraction(6)  # inches of one end to weave in; common practice


@dataclass(frozen=True, slots=True)
class FittedYarn:
    """A yarn and what its evidence makes of it.

    `each`: yarn per stitch, in inches or (`in_inches` False) in grams. Where only swatches without counted stitches
    were weighed, `each` is None and `per_square_inch` holds what they took.
    """

    yarn: Yarn
    put_up: PutUp
    evidence: tuple[EvidenceUsed, ...]
    margin: Fraction
    margin_words: str
    each: PerStitch | None
    in_inches: bool = True
    per_square_inch: YarnAmount | None = None
    proportions: Proportions | None = None

    @property
    def knows_lengths(self) -> bool:
        """True where the evidence, or with it the put-up, gives lengths and not weights alone."""
        if self.per_square_inch is not None:
            return self.per_square_inch.inches is not None
        return self.in_inches or self.put_up.filled(None, Fraction(1)).inches is not None

    @property
    def basis(self) -> Basis:
        """How the evidence is brought to every size."""
        return self.each.basis if self.each is not None else "area"

    def takes(self, stitches: Mapping[str, int]) -> YarnAmount:
        """The yarn in a census; stitches the evidence never met stand in published proportion."""
        if self.each is None or self.proportions is None:
            return YarnAmount(None, None)
        took = self.each.with_also(stitches, self.proportions).total(stitches)
        return self.put_up.filled(took, None) if self.in_inches else self.put_up.filled(None, took)

    def lines(self, parts: Sequence[Counted], areas: Mapping[str, Fraction]) -> list[YarnLine]:
        """What the parts of one size take, those in this yarn alone."""
        if self.per_square_inch is not None:
            return [YarnLine(piece, self.per_square_inch.times(area)) for piece, area in areas.items()]
        mine = [part for part in parts if part.colour == self.yarn.letter]
        return [YarnLine(part.name, self.takes(part.stitches)) for part in mine]

    @property
    def spread(self) -> tuple[Fraction, Fraction] | None:
        """The lowest and the highest ratio of evidence to fit; None for a single piece of evidence."""
        ratios = [one.ratio for one in self.evidence]
        return (min(ratios), max(ratios)) if len(ratios) > 1 else None

    def size(
        self, name: str, lines: Sequence[YarnLine], sewn: Fraction = Fraction(0), is_whole: bool = True
    ) -> SizeYarn:
        """One size's yarn from what its parts take, with seams, tassels and tails on lines of their own.

        `sewn`: inches of yarn for its seams.
        """
        used = _sum(lines)
        more = [YarnLine(SEAMS, self.put_up.filled(sewn, None), False)] if sewn else []
        more += [YarnLine(what, self.put_up.measured(amount), False) for what, amount in self.yarn.besides.items()]
        net = used.plus(_sum(more))
        if used.inches is not None:
            ends = self._ends(len(lines), self.put_up.skeins(net.times(1 + self.margin)))
            more.append(YarnLine("tails", self.put_up.filled(TAIL * ends, None), False))
            net = used.plus(_sum(more))
        wanted = net.times(1 + self.margin)
        skeins, share = self.put_up.skeins(wanted), self.put_up.share(net)
        price, spread = read_price(self.yarn.price.text) if self.yarn.price else None, self.spread
        return SizeYarn(
            size=name,
            lines=(*lines, *more),
            used=used,
            low=used.times(spread[0]) if spread else None,
            high=used.times(spread[1]) if spread else None,
            wanted=wanted,
            skeins=skeins,
            slack=None if skeins is None or share is None else (skeins - share) / skeins,
            cost=skeins * price[0] if skeins is not None and price is not None else None,
            is_whole=is_whole,
        )

    def of_trial(self, trial: Checked, name: str, parts: Sequence[Counted]) -> SizeYarn:
        """One size of a pattern worked with another count, by its own stitches and its own seams."""
        sewing = self._sewing(trial)
        return self.size(name, self.lines(parts, {}), sewing.inches[name] if sewing is not None else Fraction(0))

    def need(self, checked: Checked, census: Census) -> YarnNeed:
        """This yarn over all sizes."""
        sewing = self._sewing(checked)
        sewn = sewing.inches if sewing is not None else {}
        areas = finished_areas(checked) if self.per_square_inch is not None else {}
        sizes = tuple(
            self.size(
                size.name,
                self.lines(census.by_size.get(size.name, ()), areas.get(size.name, {})),
                sewn.get(size.name, Fraction(0)),
                self.per_square_inch is not None or not census.missing.get(size.name),
            )
            for size in checked.sizes
        )
        price = read_price(self.yarn.price.text) if self.yarn.price else None
        currency = price[1] if price else ""
        return YarnNeed(
            self.yarn.letter, self.margin, self.margin_words, self.basis, self.evidence, sizes, currency, sewing
        )

    def _sewing(self, checked: Checked) -> Sewing | None:
        """The yarn for seams; None where no length of this yarn is known."""
        return sewing_yarn(checked, self.yarn) if self.knows_lengths else None

    def _ends(self, parts: int, skeins: int | None) -> int:
        """Ends to weave in: as said, else two for each part and two for each new skein."""
        return self.yarn.tails if self.yarn.tails is not None else 2 * parts + 2 * max(0, (skeins or 1) - 1)


def _sum(lines: Sequence[YarnLine]) -> YarnAmount:
    total = NOTHING
    for line in lines:
        total = total.plus(line.amount)
    return total


def fit_yarn(checked: Checked, census: Census, yarn: Yarn) -> FittedYarn | None:
    """One yarn fitted to all that was weighed and unravelled of it; None where nothing was."""
    put_up = PutUp.of(yarn)
    evidence = gather_evidence(yarn, census, put_up)
    measured = unravelled_inches(yarn)
    in_inches = bool(measured) or any(one.stitches and one.used.inches is not None for one in evidence)
    counted = [one for one in evidence if one.stitches and _took(one, in_inches) is not None]
    counted += unravelled_evidence(yarn, measured, put_up)
    proportions = Proportions({one.name: one for one in checked.pattern.definitions})
    each = fit_stitches(list(_weights(counted, in_inches)), measured, proportions)
    if each is None:
        return _by_area(checked, yarn, put_up, evidence)
    used = tuple(_used(one, put_up, each.total(one.stitches), in_inches) for one in counted)
    kinds = dict.fromkeys(name for size in census.by_size for name in census.of(size, yarn.letter))
    each = each.with_also(kinds, proportions)
    return FittedYarn(yarn, put_up, used, *margin_of(checked, yarn), each, in_inches, None, proportions)


def _took(one: Evidence, in_inches: bool) -> Fraction | None:
    return one.used.inches if in_inches else one.used.grams


def _weights(counted: Sequence[Evidence], in_inches: bool) -> Iterator[Weight]:
    for one in counted:
        took = _took(one, in_inches)
        if took is not None and one.is_weighed:
            yield Weight(one.stitches, took)


def _used(one: Evidence, put_up: PutUp, took: Fraction, in_inches: bool) -> EvidenceUsed:
    fitted = put_up.filled(took, None) if in_inches else put_up.filled(None, took)
    real = _took(one, in_inches)
    return EvidenceUsed(one.words, one.used, fitted, real / took if real and took else Fraction(1), one.place)


def _by_area(checked: Checked, yarn: Yarn, put_up: PutUp, evidence: Sequence[Evidence]) -> FittedYarn | None:
    """By the area of the pieces, where only swatches without counted stitches were weighed."""
    swatches = [(one, one.area) for one in evidence if one.area]
    if not swatches or len(checked.pattern.yarns) > 1 or not finished_areas(checked):
        return None
    per_inch = NOTHING
    for one, _ in swatches:
        per_inch = per_inch.plus(one.used)
    per_inch = per_inch.times(1 / sum((area for _, area in swatches), Fraction(0)))
    used = tuple(_area_used(one, per_inch.times(area)) for one, area in swatches)
    return FittedYarn(yarn, put_up, used, *margin_of(checked, yarn), None, True, per_inch)


def _area_used(one: Evidence, fitted: YarnAmount) -> EvidenceUsed:
    in_inches = fitted.inches is not None
    real, took = (one.used.inches, fitted.inches) if in_inches else (one.used.grams, fitted.grams)
    return EvidenceUsed(one.words, one.used, fitted, real / took if real and took else Fraction(1), one.place)


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
