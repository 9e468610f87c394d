"""Filled forms of one pattern merged; with the pattern at hand they are held against what it says now."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.testing import WORDS, AskedGauge, FilledForm, RowTold
from gradegen.findings import Finding
from gradegen.reckon.testers.doubts import doubts
from gradegen.reckon.testers.spread import spread_of
from gradegen.reckon.testers.tested import (
    GaugeTested,
    MeasureTested,
    PieceTested,
    RowTested,
    Tested,
    TimeTested,
)
from gradegen.reckon.testers.which import forms_that_count
from gradegen.reckon.testers.yarn import evidence_lines, yarns_tested
from gradegen.reckon.yarn.time import time_per_size

Findings = tuple[Finding, ...]
Row = tuple[int, int]


def merge_forms(forms: Sequence[FilledForm], checked: Checked | None = None) -> tuple[Tested | None, Findings]:
    """Everything the forms of one pattern say; None where none of them counts."""
    counted, findings = forms_that_count(forms, checked)
    if not counted:
        return None, findings
    sizes = _sizes(counted, checked)
    order = {size: at for at, size in enumerate(sizes)}
    counted = tuple(sorted(counted, key=lambda form: (order[form.asked.size], form.file)))
    tested = Tested(
        counted[0].asked.pattern,
        _version(counted, checked),
        checked is not None,
        counted,
        sizes,
        tuple(_gauges(counted)),
        yarns_tested(counted, sizes, checked),
        tuple(_measures(counted, checked)),
        tuple(_times(counted, sizes, checked)),
        _rows(counted, checked),
        tuple(_pieces(counted)),
        {kind: told for kind in WORDS if (told := tuple(_remarks(counted, kind)))},
        tuple(size for size in sizes if all(form.asked.size != size for form in counted)) if checked else (),
        evidence_lines(counted, checked),
    )
    return tested, (*findings, *doubts(tested, checked))


def _sizes(forms: Iterable[FilledForm], checked: Checked | None) -> tuple[str, ...]:
    if checked is not None:
        return tuple(size.name for size in checked.sizes)
    return tuple(dict.fromkeys(form.asked.size for form in forms))


def _version(forms: Sequence[FilledForm], checked: Checked | None) -> str:
    if checked is not None:
        return checked.pattern.version.text if checked.pattern.version else ""
    return ", ".join(dict.fromkeys(form.asked.version for form in forms if form.asked.version))


def _gauges(forms: Sequence[FilledForm]) -> Iterator[GaugeTested]:
    asked = {gauge.name: gauge for form in forms for gauge in form.asked.gauges}
    for gauge in asked.values():
        for after in (False, True):
            for at, counted in enumerate((gauge.counted, "rows")):
                each = tuple(_counted(forms, gauge.name, after, at))
                spread = spread_of(number for _, number in each)
                if spread is not None:
                    stated = _stated(gauge, after, at)
                    yield GaugeTested(gauge.name, counted, after, gauge.over, stated, each, spread)


def _stated(gauge: AskedGauge, after: bool, at: int) -> Fraction | None:
    """The pattern's own number: its gauge stands for the washed fabric, or for the unwashed where it says so."""
    if after == gauge.blocked:
        return (gauge.stitches, gauge.rows)[at]
    return None if after else gauge.before[at]


def _counted(forms: Iterable[FilledForm], name: str, after: bool, at: int) -> Iterator[tuple[FilledForm, Fraction]]:
    for form in forms:
        for gauge in form.gauges:
            number = (gauge.after if after else gauge.before)[at]
            if gauge.name == name and number is not None:
                yield form, number


def _measures(forms: Sequence[FilledForm], checked: Checked | None) -> Iterator[MeasureTested]:
    for name in dict.fromkeys(name for form in forms for name in form.asked.measures):
        for size in dict.fromkeys(form.asked.size for form in forms):
            here = [form for form in forms if form.asked.size == size and name in form.measures]
            each = tuple((form, form.measures[name]) for form in here)
            spread = spread_of(length for _, length in each)
            if spread is not None:
                yield MeasureTested(name, size, _expected(here[0], name, checked), each, spread)


def _expected(form: FilledForm, name: str, checked: Checked | None) -> Fraction:
    """As the pattern says now, or as the form says where the pattern has no such measure."""
    for size in checked.sizes if checked else ():
        if size.name == form.asked.size and name in size.measures:
            return size.measures[name].printed
    return form.asked.measures[name]


def _times(forms: Sequence[FilledForm], sizes: Sequence[str], checked: Checked | None) -> Iterator[TimeTested]:
    reckoned = {time.size: time.minutes for time in time_per_size(checked)[0]} if checked else {}
    for size in sizes:
        each = tuple((form, form.minutes) for form in forms if form.asked.size == size and form.minutes is not None)
        spread = spread_of(minutes for _, minutes in each)
        if spread is not None:
            yield TimeTested(size, reckoned.get(size), each, spread)


def _rows(forms: Sequence[FilledForm], checked: Checked | None) -> tuple[RowTested, ...]:
    """Errors by row, in the order of the pattern; what is told of no row known comes last."""
    gathered: dict[tuple[int, Row | str], list[tuple[FilledForm, RowTold]]] = {}
    for form in forms:
        for told in form.told:
            key: tuple[int, Row | str] = (1, " ".join(told.row.casefold().split()))
            if told.at is not None:
                key = (0 if told.at[0] >= 0 else 1, told.at)
            gathered.setdefault(key, []).append((form, told))
    ordered = sorted(gathered.items(), key=lambda item: (item[0][0], str(type(item[0][1])), item[0][1]))
    return tuple(_row(each, checked) for _, each in ordered)


def _row(each: Sequence[tuple[FilledForm, RowTold]], checked: Checked | None) -> RowTested:
    at = each[0][1].at
    line = None
    if checked is not None and at is not None and 0 <= at[0] < len(checked.pattern.pieces):
        rows = checked.pattern.pieces[at[0]].rows
        line = rows[at[1]].place.line if at[1] < len(rows) else None
    told = tuple((form, one.made, _made(form, at, checked), one.words) for form, one in each)
    names = dict.fromkeys(_named(form, one) for form, one in each)
    return RowTested(" / ".join(list(names)[:3]), line, told)


def _named(form: FilledForm, told: RowTold) -> str:
    return next((row.words for row in form.asked.rows if row.at == told.at), told.row or "no row named")


def _made(form: FilledForm, at: Row | None, checked: Checked | None) -> str:
    """What the row makes in the tester's size, as worked; "" where that is not known."""
    if checked is None or at is None or not 0 <= at[0] < len(checked.pattern.pieces):
        return ""
    rows = checked.pattern.pieces[at[0]].rows
    if at[1] >= len(rows):
        return ""
    for worked in checked.worked.get(form.asked.size, ()):
        if worked.row.place == rows[at[1]].place and worked.made is not None:
            return str(worked.made)
    return ""


def _pieces(forms: Sequence[FilledForm]) -> Iterator[PieceTested]:
    for piece in dict.fromkeys(piece for form in forms for piece in form.asked.pieces):
        marks = [form.ratings.get(piece, (None, None)) for form in forms]
        hard, clear = (spread_of(Fraction(mark[at] or 0) for mark in marks if mark[at]) for at in (0, 1))
        if hard or clear:
            yield PieceTested(piece, hard, clear)


def _remarks(forms: Sequence[FilledForm], kind: str) -> Iterator[tuple[FilledForm, str]]:
    for form in forms:
        if form.words.get(kind):
            yield form, form.words[kind]


def by_pattern(forms: Sequence[FilledForm]) -> tuple[tuple[FilledForm, ...], ...]:
    """The forms of every pattern by themselves, in the order in which patterns come up."""
    titles = dict.fromkeys(form.asked.pattern for form in forms)
    return tuple(tuple(form for form in forms if form.asked.pattern == title) for title in titles)
