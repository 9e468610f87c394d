"""Filled forms of a folder: each read as the form of one pattern, version and size, or a finding that says why not."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from pathlib import Path

from gradegen.design.testing import (
    ERROR_LINES,
    FIXED,
    FORM_VERSION,
    TICKS,
    WORDS,
    Asked,
    AskedGauge,
    AskedRow,
    FilledForm,
    GaugeMade,
    RowTold,
    YarnTaken,
    field_name,
)
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.read.forms import answers as read
from gradegen.read.forms.answers import Answers
from gradegen.read.forms.asked import read_asked
from gradegen.read.forms.fields import Written, read_fields

FORM_NOT_OURS = Rule("form-not-ours", Severity.WARNING, "file format", "A PDF in the folder is no tester's form.")
FORM_OF_LATER_KIND = Rule(
    "form-of-later-kind", Severity.ERROR, "file format", "A form was made by a later gradegen than this one."
)
FORM_BLANK = Rule("form-blank", Severity.WARNING, "house", "A form was sent back with nothing filled in.")
FOLDER_MISSING = Rule("forms-folder-missing", Severity.ERROR, "file format", "There is no folder of this name.")
NO_FORMS = Rule("no-forms-found", Severity.ERROR, "file format", "A folder holds no tester's form.")
_PREFILLED = ("over",)  # last words of fields that hold something to begin with
_RUN = re.compile(r"(\d+)(?:\s*[-–]\s*(\d+))?")

Findings = tuple[Finding, ...]


def read_forms(folder: str | Path) -> tuple[tuple[FilledForm, ...], Findings]:
    """Every form in a folder, in the order of file names; a single file may be named too."""
    place = Place(str(folder), 1, 1, 1, 1)
    root = Path(folder)
    try:
        paths = [root] if root.is_file() else sorted(one for one in root.iterdir() if one.suffix.lower() == ".pdf")
    except OSError as problem:
        message = f"The folder {folder} can't be read: {problem.strerror or problem}."
        return (), (FOLDER_MISSING.at(place, message, hint="Name the folder in which the filled forms lie."),)
    if not paths:
        return (), (NO_FORMS.at(place, f"{folder} holds no PDF.", hint="Put the filled forms into it."),)
    forms: list[FilledForm] = []
    findings: list[Finding] = []
    for path in paths:
        form, found = read_form(path)
        findings += found
        forms += [form] if form else []
    return tuple(forms), tuple(findings)


def read_form(path: Path) -> tuple[FilledForm | None, Findings]:
    """One filled form; None where it can't be read, is none of ours, or is blank."""
    fields, findings = read_fields(path)
    if fields is None:
        return None, findings
    start = Place(str(path), 1, 1, 1, 1)
    asked, problem = _asked(fields, start)
    if asked is None:
        return None, (*findings, problem) if problem else findings
    if _is_blank(fields):
        message = "Nothing is filled in. If the tester did fill it in, it was not saved, or was printed to a new file."
        return None, (FORM_BLANK.at(start, message, size=asked.size, hint="Ask for the form once more."),)
    answers = Answers(fields, asked.size)
    form = _filled(str(path), asked, answers, start)
    return form, (*findings, *answers.findings)


def _asked(fields: Mapping[str, Written], start: Place) -> tuple[Asked | None, Finding | None]:
    kind, pattern, version, size, said = (fields[name].text if name in fields else "" for name in FIXED)
    if not kind or not pattern or not size:
        why = "has no fields to fill in" if not fields else "holds other fields than a tester's form"
        message = f"This PDF {why}, so it is left aside."
        hint = "If it was a form, it was printed to a new file: ask the tester to save the form itself."
        return None, FORM_NOT_OURS.at(start, message, hint=hint)
    if kind != FORM_VERSION:
        message = "This form was made by a later version of gradegen than this one."
        return None, FORM_OF_LATER_KIND.at(start, message, hint="Install the newer gradegen.")
    asked = read_asked(pattern, version, size, said)
    if asked is None:
        message = "What this form carries with it about its pattern was changed and can't be read."
        return None, FORM_NOT_OURS.at(start, message, size=size, hint="Ask the tester to fill in a fresh form.")
    return asked, None


def _is_blank(fields: Mapping[str, Written]) -> bool:
    answers = (name for name in fields if name not in FIXED and name.rsplit(" ", 1)[-1] not in _PREFILLED)
    return not any(fields[name].text.strip(" -–") for name in answers)


def _filled(file: str, asked: Asked, answers: Answers, start: Place) -> FilledForm:
    return FilledForm(
        file,
        asked,
        " ".join(answers.text("tester name").split()),
        start,
        body=answers.either({unit: field_name("body", unit) for unit in ("in", "cm")}, read.BODIES),
        level=answers.text("tester level"),
        gauges=tuple(_gauge(gauge, answers) for gauge in asked.gauges),
        yarns=tuple(_yarn(letter, answers) for letter in asked.yarns),
        measures=dict(_measures(asked, answers)),
        minutes=answers.minutes("time"),
        told=tuple(_told(asked.rows, answers)),
        words={name: text for name in WORDS if (text := answers.text(field_name("words", name)))},
        ratings={piece: _rated(piece, answers) for piece in asked.pieces},
        ticks=frozenset(name for name in TICKS if answers.text(field_name("tick", name))),
        places={name: written.place for name, written in answers.fields.items()},
    )


def _gauge(gauge: AskedGauge, answers: Answers) -> GaugeMade:
    own = answers.length(field_name("gauge", gauge.name, "over"), "", read.OVERS)
    across = read.STITCHES if gauge.repeat_of is None else read.REPEATS

    def pair(state: str) -> tuple[Fraction | None, Fraction | None]:
        stitches, rows = (field_name("gauge", gauge.name, state, what) for what in ("stitches", "rows"))
        return (
            answers.count(stitches, gauge.counted, across, gauge.over, own),
            answers.count(rows, "rows", read.ROWS, gauge.over, own),
        )

    hook = answers.length(field_name("gauge", gauge.name, "hook"), "mm", read.HOOKS)
    return GaugeMade(gauge.name, hook, pair("before"), pair("after"))


def _yarn(letter: str, answers: Answers) -> YarnTaken:
    lengths = {unit: field_name("yarn", letter, name) for unit, name in (("yd", "yards"), ("m", "metres"))}
    return YarnTaken(
        letter,
        answers.either(lengths, read.YARNS),
        answers.grams(field_name("yarn", letter, "grams")),
        answers.count(field_name("yarn", letter, "skeins"), "skeins", read.SKEINS),
        answers.text(field_name("yarn", letter, "name")),
    )


def _measures(asked: Asked, answers: Answers) -> Iterator[tuple[str, Fraction]]:
    for name in asked.measures:
        length = answers.either({unit: field_name("measure", name, unit) for unit in ("in", "cm")}, read.MEASURES)
        if length is not None:
            yield name, length


def _rated(piece: str, answers: Answers) -> tuple[int | None, int | None]:
    marks = (answers.text(field_name("piece", piece, what)) for what in ("difficulty", "clarity"))
    first, second = (int(mark) if mark in ("1", "2", "3", "4", "5") else None for mark in marks)
    return first, second


def _told(rows: tuple[AskedRow, ...], answers: Answers) -> Iterator[RowTold]:
    for at in range(1, ERROR_LINES + 1):
        row, made, words = (answers.text(field_name("error", str(at), what)) for what in ("row", "made", "words"))
        if row or made or words:
            yield RowTold(row, row_meant(row, rows), made, words)


def row_meant(written: str, rows: tuple[AskedRow, ...]) -> tuple[int, int] | None:
    """Which row a tester means: as chosen, or as written where only one row can be meant; else None."""
    plain = _comparable(written)
    exact = [row.at for row in rows if plain in (_comparable(row.words), _comparable(row.label))]
    if len(exact) == 1:
        return exact[0]
    number = _RUN.search(plain)
    if number is None or number[2]:
        return None
    named = [row for row in rows if _comparable(row.piece) in plain] or list(rows)
    within = [row.at for row in named if _holds(row.label, int(number[1]))]
    return within[0] if len(within) == 1 else None


def _holds(label: str, number: int) -> bool:
    """True for `Rnds 4–19` and a number from 4 to 19."""
    run = _RUN.search(label)
    return run is not None and int(run[1]) <= number <= int(run[2] or run[1])


def _comparable(text: str) -> str:
    plain = text.casefold().replace("–", "-")
    return re.sub(r"\b(?:round|rnd|r)s?\b", "rnd", re.sub(r"\brows\b", "row", " ".join(plain.split())))
