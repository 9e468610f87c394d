"""Passages over rows in house style: `dec 1 st at each end of next row, then every 4th row 6 (7, 8) times`."""

from __future__ import annotations

from gradegen.design.formula import Formula, PerSize
from gradegen.design.passages import EvenRows, Rate, Shaping, Until
from gradegen.design.rows import Change, Number, Thing
from gradegen.numbers.exact import decimal_text
from gradegen.write.notation.chains import change_words
from gradegen.write.notation.numbers import formula_text, ordinal_text
from gradegen.write.notation.places import thing_words
from gradegen.write.notation.style import Notation, is_one
from gradegen.write.words.fold import folded


def even_rows_words(step: EvenRows, says: Notation) -> str:
    """`work even in sc for 6 rows`, `work even until piece measures 9 in`; "" for no rows."""
    forms = says.style.passages
    stitch = says.stitch(step.stitch) if step.stitch else ""
    if step.over_all:
        return str(forms["even all"]).format(
            n=says.figures.text(step.rows), rows=_row(says, says.figures.text(step.rows))
        )
    if step.until is not None:
        form = forms["even in until" if stitch else "even until"]
        return str(form).format(stitch=stitch, until=until_words(step.until, says))
    if says.figures.is_nothing(step.rows):
        return ""
    number = says.figures.text(step.rows)
    form = forms["even in" if stitch else "even"]
    return str(form).format(stitch=stitch, n=number, rows=_row(says, number))


def until_words(until: Until, says: Notation) -> str:
    """`until piece measures 17 (18, 19) in from underarm, ending with a WS row`."""
    forms = says.style.passages
    return str(forms["measures"]).format(
        of=until.of or "piece",
        length=_length(until.measure, says),
        since=forms["since"].format(since=until.since) if until.since else "",
        ending=forms["ending"].format(side=until.side, row=_row(says)) if until.side else "",
    )


def _length(measure: Formula, says: Notation) -> str:
    if not isinstance(measure, PerSize):
        text = formula_text(measure)
        return text if text[:1].isdigit() else "{" + text + "}"
    wanted = says.figures.wanted
    each = measure.each if wanted is None else measure.each[wanted : wanted + 1]
    units = {amount.unit or "in" for amount in measure.each}
    return f"{folded([decimal_text(amount.number, 4) for amount in each])} {units.pop()}"


def shaping_words(shaping: Shaping, says: Notation) -> str:
    """The whole passage; "" where the written size works none of it."""
    forms = says.style.passages
    words = _one_shaping(shaping, says)
    for other in shaping.together:
        also = _one_shaping(other, says)
        if also and words:
            after = _after(other, says)
            words += str(forms["same time"]).format(after=after, shaping=also)
        words = words or also
    return words


def _one_shaping(shaping: Shaping, says: Notation) -> str:
    forms = says.style.passages
    rates: list[str] = []
    for rate in shaping.rates:
        words = _next_rows(rate, says) if not rates else ""
        rates += [words] if (words := words or _rate(rate, shaping.change, says)) else []
    if not rates:
        return ""
    joined = str(forms["then"]).join(rates)
    if shaping.change is None:
        form = forms["repeat row" if shaping.repeats else "work row"]
        return str(form).format(label=shaping.labels[0] if shaping.labels else "last", row=_row(says), rates=joined)
    change = _change(shaping.change, shaping.edge, says)
    if shaping.leaves and change:
        change = _left(shaping.change, change, says)
    return str(forms["events"][shaping.change.where]).format(change=change, rates=joined) if change else ""


def _change(change: Change, edge: str, says: Notation) -> str:
    """`dec 1 st at each end`, with the words of its edge where it has one."""
    words = change_words(change, says)
    if change.where != "one end" or not edge or not words:
        return words
    bare = words.removesuffix(says.step("one end").removeprefix("{change}"))
    return str(says.style.passages["at edge"]).format(change=bare, edge=edge)


def _left(change: Change, words: str, says: Notation) -> str:
    """`leave 7 sts unworked at end`, in place of `dec 7 sts at end`."""
    number = says.figures.text(change.number)
    sts = f"{number} {thing_words(Thing('st'), number, says)}"
    where = words.split(sts, 1)[-1].strip()
    return str(says.style.passages["left"]).format(n=sts, thing=where)


def _after(shaping: Shaping, says: Notation) -> str:
    if shaping.after is None or says.figures.is_nothing(shaping.after):
        return ""
    values = says.figures.values(shaping.after) or ()
    first = folded(["-" if value is None else str(value + 1) for value in values])
    return str(says.style.passages["after"]).format(row=_row(says), n=first)


def _rate(rate: Rate, change: Change | None, says: Notation) -> str:
    """`every 4th row 6 times`; "" where the written size does it no times."""
    forms, figures = says.style.passages, says.figures
    if figures.is_nothing(rate.times):
        return ""
    if _is_next(rate, says):
        return str(forms["next"]).format(row=_row(says))
    words = _how_often(rate, says)
    if rate.until is not None:
        number = figures.text(rate.until)
        form = forms["until"][change.sign if change else -1]
        return str(form).format(rate=words, n=number, sts=thing_words(Thing("st"), number, says))
    number = figures.text(rate.times)
    if not number:
        return words
    more = {"more": "more times", "in all": "in all"}.get(rate.how, "times")
    once = is_one(number) and more != "in all"
    form = forms[("once more" if rate.how == "more" else "once") if once else more]
    return str(form).format(rate=words, n=number)


def _next_rows(rate: Rate, says: Notation) -> str:
    """`next row`, `next 4 rows`: every row from the passage's first on; "" for any other rate."""
    if not _is_plain(rate) or not _all_one(rate.every, says) or says.figures.is_nothing(rate.times):
        return ""
    number = says.figures.text(rate.times)
    form = says.style.passages["next" if is_one(number) else "next rows"]
    return str(form).format(n=number, row=_row(says), rows=_row(says, number)) if number else ""


def _is_next(rate: Rate, says: Notation) -> bool:
    """True for one row, the next."""
    return _is_plain(rate) and rate.times is not None and _all_one(rate.every, says) and _all_one(rate.times, says)


def _is_plain(rate: Rate) -> bool:
    return rate.alternate is None and not rate.with_next and rate.side is None and rate.how == ""


def _all_one(number: Number, says: Notation) -> bool:
    return set(says.figures.values(number) or ()) == {1}


def _how_often(rate: Rate, says: Notation) -> str:
    """`every other row`, `every 4th (6th, 6th) row`, `next and every foll alt row`, `every RS row`."""
    forms, row = says.style.passages, _row(says)
    values = says.figures.values(rate.every) or ()
    nth = folded(["-" if value is None else ordinal_text(value) for value in values])
    if rate.alternate is not None:
        return str(forms["alternately"]).format(nth=nth, other=says.figures.ordinal(rate.alternate), row=row)
    if rate.side is not None:
        return str(forms["every side"]).format(side=rate.side, row=row)
    form = forms["next and" if rate.with_next else "every"]
    one = values[0] if len(set(values)) == 1 and values[0] in (1, 2) else "more"
    return str(form[one]).format(nth=nth, row=row)


def _row(says: Notation, number: str = "1") -> str:
    return says.kind_word(number).casefold()
