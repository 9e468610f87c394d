"""Yarn as printed: yards and metres, ounces and grams, skeins, evidence and spread, cost, per size."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern, Yarn
from gradegen.numbers.exact import decimal_text, mixed_text
from gradegen.numbers.rounding import nearest_whole
from gradegen.reckon import Sewing, SizeYarn, YarnAmount, YarnNeed
from gradegen.trade.yarn import find_yarn_weights
from gradegen.write.voice.lists import each_size
from gradegen.write.words.fold import folded


@dataclass(frozen=True, slots=True)
class YarnTable:
    """One yarn over all sizes, as strings: a line per size under the heads, and sentences below."""

    title: str
    heads: tuple[str, ...]
    lines: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]


def up(number: Fraction | None) -> str:
    """Rounded up to a whole number, as yarn is asked for; a dash where it is not known."""
    return "–" if number is None else str(-int(-number // 1))


def amount_text(amount: YarnAmount, metric: bool = False) -> str:
    """An amount in both units of length and of weight, rounded up: `315 yd (288 m), 158 g (5.6 oz)`."""
    lengths = []
    if amount.inches is not None:
        yards, metres = f"{up(amount.yards)} yd", f"{up(amount.metres)} m"
        lengths.append(f"{metres} ({yards})" if metric else f"{yards} ({metres})")
    if amount.grams is not None:
        lengths.append(f"{up(amount.grams)} g ({ounces_text(amount)} oz)")
    return ", ".join(lengths) or "not known"


def ounces_text(amount: YarnAmount) -> str:
    """Ounces to one decimal, rounded up so that they are never less than the grams beside them."""
    ounces = amount.ounces
    return "–" if ounces is None else decimal_text(Fraction(-int(-ounces * 10 // 1), 10), 1)


def yarn_table(need: YarnNeed, checked: Checked) -> YarnTable:
    """One yarn's amounts, skeins and slack in every size, with what they rest on."""
    has_cost = any(size.cost is not None for size in need.sizes)
    spread, metric = need.spread is not None, is_metric(checked.pattern)
    first, second = ("m", "yd") if metric else ("yd", "m")
    heads = ["size", f"used {first}", "used g", *(["from", "to"] if spread else [])]
    heads += [f"with margin {first}", second, "g", "oz", "skeins", "left over"]
    lines = [_line(size, spread, has_cost, metric) for size in need.sizes]
    heads += [f"cost{f' {need.currency}' if need.currency else ''}"] if has_cost else []
    yarn = next((one for one in checked.pattern.yarns if one.letter == need.letter), None)
    title = f"Yarn {need.letter}" + (f", {yarn.colour.text}" if yarn is not None and yarn.colour else "")
    return YarnTable(title, tuple(heads), tuple(lines), tuple(_notes(need, metric)))


def is_metric(pattern: Pattern) -> bool:
    """True where metres stand before yards."""
    return pattern.units == "centimetres first"


def lengths_of(amount: YarnAmount, metric: bool) -> tuple[Fraction | None, Fraction | None]:
    """Its length in the unit that stands first, and in the other."""
    return (amount.metres, amount.yards) if metric else (amount.yards, amount.metres)


def _line(size: SizeYarn, spread: bool, has_cost: bool, metric: bool) -> tuple[str, ...]:
    cells = [size.size, up(lengths_of(size.used, metric)[0]), up(size.used.grams)]
    if spread:
        cells += [_either(size.low, metric), _either(size.high, metric)]
    cells += [*map(up, lengths_of(size.wanted, metric)), up(size.wanted.grams), ounces_text(size.wanted)]
    cells += ["–" if size.skeins is None else str(size.skeins), percent(size.slack)]
    if has_cost:
        cells.append("–" if size.cost is None else money(size.cost))
    return tuple(cells)


def _either(amount: YarnAmount | None, metric: bool) -> str:
    if amount is None:
        return "–"
    if amount.inches is None:
        return f"{up(amount.grams)} g"
    return f"{up(lengths_of(amount, metric)[0])} {'m' if metric else 'yd'}"


def percent(share: Fraction | None) -> str:
    """A share in whole percent."""
    return "–" if share is None else f"{nearest_whole(share * 100)} %"


def money(amount: Fraction) -> str:
    """An amount of money with two decimals."""
    whole, rest = divmod(nearest_whole(amount * 100), 100)
    return f"{whole}.{rest:02d}"


def _notes(need: YarnNeed, metric: bool) -> Iterable[str]:
    yield f"Margin: {percent(need.margin)} ({need.margin_words})."
    yield f"Evidence: {'; '.join(evidence_lines(need))}."
    how = {
        "each stitch": "Yarn per stitch fitted to the evidence, then counted over every size's stitches.",
        "one factor": "Published proportions of stitches, fitted to the evidence with one factor, then counted over "
        "every size's stitches.",
        "measured lengths": "Yarn per stitch as unravelled, counted over every size's stitches.",
        "lengths and weights": "Yarn per stitch as unravelled, brought to what was weighed with one factor, then "
        "counted over every size's stitches.",
        "area": "By the area of the pieces alone: edgings and thick stitches are not in it.",
    }
    yield how[need.basis]
    if need.spread is None:
        yield "There is only one piece of evidence, so how far hands differ is not known."
    else:
        low, high = need.spread
        yield f"The evidence lies between {percent(low)} and {percent(high)} of what is fitted."
    if any(not size.is_whole for size in need.sizes):
        yield "Some rows could not be followed; their yarn is missing."
    if need.sewing is not None:
        yield _sewing(need, need.sewing, metric)
    parts = next((size for size in need.sizes if len(size.lines) > 1), None)
    if parts is not None:
        said = ", ".join(f"{line.what} {_either(line.amount, metric)}" for line in parts.lines)
        yield f"In size {parts.size}: {said}; each rounded up."


def _sewing(need: YarnNeed, sewing: Sewing, metric: bool) -> str:
    """What the seams take in every size, and how that was reckoned."""
    taken = [(one.size, line.amount) for one in need.sizes for line in one.lines if line.what == "seams"]
    said = ", ".join(f"{size} {_either(amount, metric)}" for size, amount in taken)
    whose = "as the pattern says" if sewing.is_stated else "common practice, no source"
    return f"Seams, {mixed_text(sewing.each)} lengths of yarn to one of seam ({whose}): {said}."


def evidence_lines(need: YarnNeed) -> list[str]:
    """Every piece of evidence with what the fit makes of it."""
    lines = []
    for one in need.evidence:
        off = nearest_whole((one.ratio - 1) * 100)
        lines.append(one.words + (f" ({'+' if off > 0 else ''}{off} %)" if off else ""))
    return lines or ["stitches unravelled"]


def needed_line(need: YarnNeed, sizes: Sequence[GradedSize], metric: bool = False, is_spoken: bool = False) -> str:
    """What the printed sizes need, with the margin: yards, metres and skeins; grams where lengths are not known.

    `metric`: metres stand before yards. `is_spoken`: all that one size needs is said before the next size comes.
    """
    wanted = [one for one in (need.of(size.name) for size in sizes) if one is not None and one.is_whole]
    if len(wanted) != len(sizes) or not wanted:
        return ""
    spare = f", with a margin of {percent(need.margin)}".replace(" %", "\N{NO-BREAK SPACE}%") if need.margin else ""
    if is_spoken and len(wanted) > 1:
        alone = [_needed((one,), metric) for one in wanted]
        return f"You need{spare}: {each_size([one.size for one in wanted], alone)}." if all(alone) else ""
    said = _needed(wanted, metric)
    return f"You need {said}{spare}." if said else ""


def _needed(wanted: Sequence[SizeYarn], metric: bool) -> str:
    """The lengths or the weights, and the skeins."""
    if all(one.wanted.inches is not None for one in wanted):
        said = _both_lengths(wanted, metric)
    elif all(one.wanted.grams is not None for one in wanted):
        said = f"{folded([up(one.wanted.grams) for one in wanted])} g"
    else:
        return ""
    skeins = [one.skeins for one in wanted]
    if None not in skeins:
        said += f", {folded([str(number) for number in skeins])} skein{'' if set(skeins) == {1} else 's'}"
    return said


def _both_lengths(wanted: Sequence[SizeYarn], metric: bool) -> str:
    """The lengths wanted in both units: `467 yd (427 m)`, size lists with a stroke between."""
    pairs = [lengths_of(one.wanted, metric) for one in wanted]
    units = ("m", "yd") if metric else ("yd", "m")
    first, second = (f"{folded([up(pair[at]) for pair in pairs])} {unit}" for at, unit in enumerate(units))
    return f"{first} / {second}" if "(" in first + second else f"{first} ({second})"


def substitution_line(checked: Checked, yarn: Yarn, need: YarnNeed | None) -> str:
    """What another yarn has to be: category, gauge, and the length that every size asks for."""
    known = find_yarn_weights(yarn.weight.text) if yarn.weight else ()
    what = f"of category {known[0].number} ({known[0].name.lower()})" if len(known) == 1 else "of the same weight"
    counted = [one for one in checked.pattern.gauges.values() if one.stitches is not None]
    gauge = ""
    if counted and counted[0].stitches is not None:
        over = counted[0].over
        gauge = f" that gives {decimal_text(counted[0].stitches)} sts in {decimal_text(over.number)} {over.unit}"
    if need is None or all(size.wanted.inches is None for size in need.sizes):
        return f"Another yarn {what}{gauge} will do."
    lengths = _both_lengths(need.sizes, is_metric(checked.pattern))
    return f"Another yarn {what}{gauge} will do: {lengths}, with the margin."


def aligned(heads: Sequence[str], lines: Sequence[Sequence[str]]) -> str:
    """Columns set under their heads, numbers to the right, for a screen or a mail."""
    table = [heads, *lines]
    widths = [max(len(line[at]) for line in table) for at in range(len(heads))]
    words = [any(cell[:1].isalpha() for cell in (line[at] for line in lines)) for at in range(len(heads))]

    def column(at: int, cell: str) -> str:
        return cell.ljust(widths[at]) if words[at] else cell.rjust(widths[at])

    return "\n".join("  ".join(column(at, cell) for at, cell in enumerate(line)).rstrip() for line in table)
