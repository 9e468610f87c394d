"""Yarn, hooks, notions and gauge as printed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount, Formula
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Gauge, Notion, Yarn, YarnStated
from gradegen.design.rows import Number
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.rounding import nearest_whole
from gradegen.numbers.units import grams_of, in_unit, inches_of
from gradegen.reckon import YarnNeed, yarn_per_size
from gradegen.trade.hooks import hook_words
from gradegen.trade.terms import word_in
from gradegen.trade.yarn import find_yarn_weights
from gradegen.write.sheets.yarn_view import needed_line
from gradegen.write.view.whole import Entry
from gradegen.write.words.fold import folded
from gradegen.write.words.phrases import Part, Phrase, Printing, phrase, plain
from gradegen.write.words.print_numbers import lengths_text, number_text
from gradegen.write.words.sums import worth


def material_entries(checked: Checked, printing: Printing) -> tuple[Entry, ...]:
    """Every yarn, the hooks and the notions."""
    yarns = checked.pattern.yarns
    needs = {need.letter: need for need in yarn_per_size(checked)[0]}
    entries = [_yarn(yarn, printing, needs.get(yarn.letter), is_only=len(yarns) == 1) for yarn in yarns]
    hooks = hook_sizes(checked.pattern.gauges.values())
    if hooks:
        gauge = word_in("gauge", checked.pattern.terms)
        line = plain(" and ".join(hooks) + f", or the size that gives you the {gauge}.")
        entries.append(Entry("Hook" if len(hooks) == 1 else "Hooks", (line,)))
    notions = tuple(_notion(notion, printing) for notion in checked.pattern.notions)
    if notions:
        entries.append(Entry("Notions", notions))
    return tuple(entries)


def hook_sizes(gauges: Iterable[Gauge]) -> tuple[str, ...]:
    """Every hook that a gauge names, once, the millimetres first."""
    named: dict[str, None] = {}
    for gauge in gauges:
        length = inches_of(gauge.hook) if gauge.hook else None
        if length is not None:
            named[hook_words(in_unit(length, "mm"))] = None
    return tuple(named)


def _yarn(yarn: Yarn, printing: Printing, need: YarnNeed | None, *, is_only: bool) -> Entry:
    metric = not printing.style.inches_first
    wanted = _needed(yarn.stated, printing)
    if not wanted and need is not None:
        wanted = needed_line(need, printing.sizes, metric, printing.is_spoken)
    lines = [_described(yarn), _put_up(yarn, metric), wanted, _sample(yarn, printing)]
    return Entry("Yarn" if is_only else f"Yarn {yarn.letter}", tuple(plain(line) for line in lines if line))


def _described(yarn: Yarn) -> str:
    said = [_weight(yarn), *(text.text for text in (yarn.fibre, yarn.colour) if text)]
    return ", ".join(part for part in said if part)


def _weight(yarn: Yarn) -> str:
    if yarn.weight is None:
        return ""
    known = find_yarn_weights(yarn.weight.text)
    number = f" ({known[0].number})" if len(known) == 1 else ""
    return f"{yarn.weight.text.capitalize()} weight{number}"


def _put_up(yarn: Yarn, metric: bool) -> str:
    parts = [_yards_and_metres(yarn.skein_length, metric), _grams_and_ounces(yarn.skein_mass)]
    said = ", ".join(part for part in parts if part)
    return f"Skeins of {said}" if said else ""


def _yards_and_metres(length: Amount | None, metric: bool) -> str:
    """Both, metres first where centimetres come first or the designer wrote metres."""
    inches = inches_of(length) if length else None
    if length is None or inches is None:
        return ""
    yards, metres = (f"{nearest_whole(in_unit(inches, unit))} {unit}" for unit in ("yd", "m"))
    return f"{metres} ({yards})" if metric or length.unit == "m" else f"{yards} ({metres})"


def _grams_and_ounces(mass: Amount | None) -> str:
    grams = grams_of(mass) if mass else None
    if mass is None or grams is None:
        return ""
    metric, ounces = f"{nearest_whole(grams)} g", f"{decimal_text(in_unit(grams, 'oz'), 1)} oz"
    return f"{ounces} ({metric})" if mass.unit == "oz" else f"{metric} ({ounces})"


def _needed(stated: YarnStated | None, printing: Printing) -> str:
    """The amounts as the designer states them, for the printed sizes."""
    if stated is None:
        return ""
    given = [
        (stated.skeins, "", "skeins"),
        (stated.yards, "yd", "yd"),
        (stated.metres, "m", "m"),
        (stated.grams, "g", "g"),
        (stated.ounces, "oz", "oz"),
    ]
    said = [_amounts(formula, unit, word, printing.sizes) for formula, unit, word in given if formula is not None]
    return f"You need {', '.join(text for text in said if text)}" if any(said) else ""


def _amounts(formula: Formula, unit: str, word: str, sizes: Sequence[GradedSize]) -> str:
    worths = [worth(formula, size) for size in sizes]
    numbers = [in_unit(each.number, unit) if each.is_length else each.number for each in worths if each is not None]
    if len(numbers) != len(sizes):
        return ""
    is_one = word == "skeins" and set(numbers) == {1}
    return f"{folded([number_text(number) for number in numbers])} {'skein' if is_one else word}"


def _sample(yarn: Yarn, printing: Printing) -> str:
    """What the sample used, on pages that its size belongs to."""
    name = yarn.sample_size.text if yarn.sample_size else ""
    grams = grams_of(yarn.sample_used) if yarn.sample_used else None
    if yarn.sample_used is None or all(size.name != name for size in printing.sizes):
        return ""
    if grams is None:
        used = _yards_and_metres(yarn.sample_used, not printing.style.inches_first)
        return f"The sample in size {name} used {used}." if used else ""
    lengths = _length_of(yarn, grams, not printing.style.inches_first)
    return f"The sample in size {name} used {_grams_and_ounces(yarn.sample_used)}" + (
        f", {lengths}." if lengths else "."
    )


def _length_of(yarn: Yarn, grams: Fraction, metric: bool) -> str:
    """How much yarn, in both units, that mass is by the skein's own put-up."""
    inches = inches_of(yarn.skein_length) if yarn.skein_length else None
    skein = grams_of(yarn.skein_mass) if yarn.skein_mass else None
    if inches is None or not skein or yarn.skein_length is None:
        return ""
    return "about " + _yards_and_metres(Amount(inches * grams / skein, "in", yarn.place), metric)


def _notion(notion: Notion, printing: Printing) -> Phrase:
    what = _capital(phrase(notion.what, printing))
    values = number_values(notion.number, printing.sizes) if notion.number else ()
    return (*what, *plain(f": {folded(values)}")) if values else what


def _capital(sentence: Phrase) -> Phrase:
    if not sentence:
        return sentence
    first = sentence[0]
    return (Part(first.text[:1].upper() + first.text[1:], first.look), *sentence[1:])


def number_values(number: Number, sizes: Sequence[GradedSize]) -> tuple[str, ...]:
    """A written number in each of these sizes; () where it can't be worked out."""
    if number.formula is not None:
        worths = [worth(number.formula, size) for size in sizes]
        return tuple(number_text(each.number) for each in worths if each) if None not in worths else ()
    if len(number.values) == 1:
        return tuple(_whole(number.values[0]) for _ in sizes)
    if any(size.index >= len(number.values) for size in sizes):
        return ()
    return tuple(_whole(number.values[size.index]) for size in sizes)


def _whole(value: int | None) -> str:
    return "–" if value is None else str(value)


def gauge_entries(checked: Checked, printing: Printing) -> tuple[Entry, ...]:
    """Every gauge block with its hook and what it was measured in."""
    gauges = checked.pattern.gauges.values()
    return tuple(_gauge(gauge, printing) for gauge in gauges)


def _gauge(gauge: Gauge, printing: Printing) -> Entry:
    over = inches_of(gauge.over)
    length = lengths_text([over], printing.style) if over is not None else ""
    first = f"{_counted(gauge)} = {length}"
    if gauge.note:
        first += f" {gauge.note.text}"
    if gauge.state:
        first += f", {gauge.state}"
    lines = [first + "."]
    before = [_of(gauge.before_stitches, "st"), _of(gauge.before_rows, "row")]
    if any(before):
        lines.append(f"Before {'blocking' if gauge.state == 'blocked' else 'washing'}: {_and(before)}.")
    return Entry(gauge.name.capitalize(), tuple(plain(line) for line in lines), "above")


def _counted(gauge: Gauge) -> str:
    if gauge.repeats is not None:
        across = _of(gauge.repeats, "repeat") + (f" of {gauge.repeat_of} sts" if gauge.repeat_of else "")
    else:
        across = _of(gauge.stitches, "st")
    return _and([across, _of(gauge.rows, "row")])


def _of(number: Fraction | None, unit: str) -> str:
    return "" if number is None else f"{number_text(number)} {unit}{'' if number == 1 else 's'}"


def _and(parts: Sequence[str]) -> str:
    return " and ".join(part for part in parts if part)
