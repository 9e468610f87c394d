"""What testers sent back, as tables and sentences for the screen."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

from gradegen.design.testing import TICKS, WORDS, FilledForm
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import in_unit
from gradegen.reckon.testers.spread import Spread
from gradegen.reckon.testers.tested import RowTested, Tested, YarnTested
from gradegen.reckon.yarn.amounts import YarnAmount
from gradegen.trade.hooks import hook_words
from gradegen.write.screen.findings import Line
from gradegen.write.sheets.yarn_view import amount_text

if TYPE_CHECKING:
    from rich.table import Table

NONE = "–"
_SAID = {
    "fit": "how it fits",
    "unclear": "not clear",
    "missing": "not explained",
    "changes": "done otherwise",
    "more": "anything else",
}


def head_line(tested: Tested) -> str:
    """`Estuary Wrap 1.0: 4 forms; 3 of 9 sizes tested, none in XS, S`."""
    forms = len(tested.forms)
    title = f"{tested.pattern} {tested.version}".strip()
    said = f"{title}: {forms} form{'' if forms == 1 else 's'}"
    if not tested.has_pattern:
        return said + ", held against what the forms say; name the pattern with --pattern for yarn and untested sizes"
    done = len(tested.sizes) - len(tested.untested)
    without = f"; nobody tested {', '.join(tested.untested)}" if tested.untested else ""
    return f"{said}; {done} of {len(tested.sizes)} sizes tested{without}"


def tester_tables(tested: Tested, *, inches_first: bool) -> Iterator[Table]:
    """Testers, gauge, yarn, measures, time and marks, each where anything is known of it; a line for every answer."""
    yield _testers(tested, inches_first)
    if tested.gauges:
        yield _gauges(tested, inches_first)
    for letter in dict.fromkeys(yarn.letter for yarn in tested.yarns):
        sizes = [yarn for yarn in tested.yarns if yarn.letter == letter]
        yield _yarn(letter, sizes, inches_first)
        if any(one.wanted for one in sizes):
            yield _pooled(letter, sizes, inches_first)
    if tested.measures:
        yield _measures(tested, inches_first)
    if tested.times:
        yield _times(tested)
    if tested.pieces:
        yield _pieces(tested)


def _table(title: str, folding: Sequence[str], left: Sequence[str], right: Sequence[str]) -> Table:
    """Columns of words that may go on in a second line, then short words, then numbers."""
    from rich import box
    from rich.table import Table

    drawn = Table(title=title, title_justify="left", title_style="bold", box=box.SIMPLE_HEAD, pad_edge=False)
    for head in folding:
        drawn.add_column(head, overflow="fold")
    for head in left:
        drawn.add_column(head, no_wrap=True)
    for head in right:
        drawn.add_column(head, justify="right", no_wrap=True)
    return drawn


def _testers(tested: Tested, inches_first: bool) -> Table:
    body = tested.forms[0].asked.body
    drawn = _table("testers", ("tester", "size", body, "level", "hook", "ticked", "file"), (), ())
    for form in tested.forms:
        hooks = dict.fromkeys(hook_words(in_unit(gauge.hook, "mm")) for gauge in form.gauges if gauge.hook)
        ticked = ", ".join(name for name in TICKS if name in form.ticks)
        version = f", version {form.asked.version}" if form.asked.version != tested.version else ""
        own = NONE if form.body is None else _length(form.body, inches_first)
        row = (form.tester or NONE, form.asked.size + version, own, form.level or NONE, ", ".join(hooks) or NONE)
        drawn.add_row(*row, ticked or NONE, Path(form.file).name)
    return drawn


def _gauges(tested: Tested, inches_first: bool) -> Table:
    drawn = _table("gauge", ("counted",), ("washed",), ("pattern", "testers", "least", "median", "most", "off"))
    for one in tested.gauges:
        over = _length(one.over, inches_first)
        stated = NONE if one.stated is None else decimal_text(one.stated)
        numbers = [decimal_text(number) for number in (one.spread.least, one.spread.median, one.spread.most)]
        off = NONE if one.off is None else _percent(one.off)
        washed = "after" if one.after else "before"
        counted = f"{one.gauge}: {one.counted} over {over}"
        drawn.add_row(counted, washed, stated, str(one.spread.many), *numbers, off)
    return drawn


def _yarn(letter: str, sizes: Sequence[YarnTested], inches_first: bool) -> Table:
    drawn = _table(f"yarn {letter}", ("size", "reckoned", "tester", "used"), (), ("off",))
    for one in sizes:
        ratios = {form.file: ratio for form, ratio in one.ratios}
        size, reckoned = one.size, _amount(one.reckoned, inches_first)
        for form, used in one.each:
            off = _percent(ratios[form.file] - 1) if form.file in ratios else NONE
            drawn.add_row(size, reckoned, form.who, _used(form, letter, used, inches_first), off)
            size = reckoned = ""
    return drawn


def _used(form: FilledForm, letter: str, used: YarnAmount, inches_first: bool) -> str:
    """`352 yd (322 m), 176 g; 2 skeins; own wool`."""
    taken = next((yarn for yarn in form.yarns if yarn.letter == letter), None)
    skeins = taken.skeins if taken else None
    opened = "" if skeins is None else f"{decimal_text(skeins)} skein{'' if skeins == 1 else 's'}"
    said = (_amount(used, inches_first), opened, _one_line(taken.words) if taken else "")
    return "; ".join(part for part in said if part)


def _pooled(letter: str, sizes: Sequence[YarnTested], inches_first: bool) -> Table:
    heads = ("size", "takes", "with the margin", "to print *")
    drawn = _table(f"yarn {letter} with the testers’ pieces as evidence", heads, (), ())
    for one in sizes:
        amounts = (one.pooled, one.wanted, one.to_print)
        drawn.add_row(one.size, *(_amount(amount, inches_first) for amount in amounts))
    drawn.caption = "* nine hands in ten come out with it, margin and all, in steps of 25; testers far off are left out"
    drawn.caption_justify = "left"
    return drawn


def _amount(amount: YarnAmount | None, inches_first: bool) -> str:
    """`423 yd (387 m), 212 g`."""
    return NONE if amount is None else re.sub(r" \([\d.–]+ oz\)", "", amount_text(amount, not inches_first))


def _measures(tested: Tested, inches_first: bool) -> Table:
    drawn = _table("finished measures", ("measure", "size", "pattern", "tester", "made"), (), ("off",))
    unit = "in" if inches_first else "cm"
    for one in tested.measures:
        head = (one.measure, one.size, _both(one.expected, inches_first))
        for form, length in one.each:
            off = length - one.expected
            shown = f"{_signed(off if inches_first else in_unit(off, 'cm'))} {unit}"
            drawn.add_row(*head, form.who, _both(length, inches_first), shown)
            head = ("", "", "")
    return drawn


def _times(tested: Tested) -> Table:
    drawn = _table("time", ("size", "tester"), (), ("reckoned", "took"))
    for one in tested.times:
        size, reckoned = one.size, NONE if one.reckoned is None else hours(one.reckoned)
        for form, minutes in one.each:
            drawn.add_row(size, form.who, reckoned, hours(minutes))
            size = reckoned = ""
    return drawn


def _pieces(tested: Tested) -> Table:
    drawn = _table("pieces, 1 to 5", ("piece",), (), ("difficulty", "from", "to", "clarity", "from", "to"))
    for one in tested.pieces:
        drawn.add_row(one.piece, *_marks(one.difficulty), *_marks(one.clarity))
    return drawn


def _marks(spread: Spread | None) -> list[str]:
    if spread is None:
        return [NONE] * 3
    return [decimal_text(number, 1) for number in (spread.median, spread.least, spread.most)]


def told_lines(tested: Tested) -> Iterator[Line]:
    """Errors by row, remarks by kind, and the lines to paste into the pattern."""
    if tested.rows:
        yield (("errors by row", "bold"),)
        for row in tested.rows:
            yield from _row(row)
    for kind, remarks in tested.remarks.items():
        yield ()
        yield ((_SAID.get(kind, WORDS[kind]), "bold"),)
        for form, words in remarks:
            yield ((f"  {_by(form)}: ", "dim"), (_one_line(words), ""))
    if tested.evidence:
        yield ()
        yield (("for the pattern file, under testers: of each yarn", "bold"),)
        yield from (((line, ""),) for line in evidence_text(tested).splitlines())


def evidence_text(tested: Tested) -> str:
    """The testers' weights as they stand in a pattern file, to paste."""
    lines = ["yarn:"]
    for letter, found in tested.evidence.items():
        lines += [f"  {letter}:", "    testers:", *(f"      {line}" for line in found)]
    return "\n".join(lines) if tested.evidence else ""


def _row(row: RowTested) -> Iterator[Line]:
    where = f"  line {row.line}" if row.line is not None else ""
    many = len({form.file for form, *_ in row.each})
    yield ((f"  {row.name}", "bold"), (f"{where}  {many} tester{'' if many == 1 else 's'}", "dim"))
    for form, made, expected, words in row.each:
        counts = f"came to {_one_line(made)}" if made else ""
        counts += f"{', ' if counts else ''}the pattern makes {expected}" if expected else ""
        said = "; ".join(part for part in (counts, _one_line(words)) if part)
        yield ((f"    {_by(form)}: ", "dim"), (said or "no words", ""))


def _by(form: FilledForm) -> str:
    return f"{form.who}, {form.asked.size}"


def _one_line(words: str) -> str:
    return " ".join(words.split())


def hours(minutes: Fraction) -> str:
    """`12 h 30`, `45 min`."""
    whole, rest = divmod(int(minutes + Fraction(1, 2)), 60)
    return f"{whole} h {rest:02d}" if whole else f"{rest} min"


def _both(inches: Fraction, inches_first: bool) -> str:
    first, second = f"{decimal_text(inches)} in", f"{decimal_text(in_unit(inches, 'cm'), 1)} cm"
    return f"{first} ({second})" if inches_first else f"{second} ({first})"


def _length(inches: Fraction, inches_first: bool) -> str:
    return f"{decimal_text(inches)} in" if inches_first else f"{decimal_text(in_unit(inches, 'cm'), 1)} cm"


def _percent(share: Fraction) -> str:
    return _signed(100 * share) + " %"


def _signed(number: Fraction) -> str:
    text = decimal_text(abs(number), 1)
    return text if text == "0" else ("+" if number > 0 else "−") + text
