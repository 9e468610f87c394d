"""A tester's form of one size as plain strings: sections, fields with names and tooltips, and what is expected."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from gradegen.design.checked import Checked
from gradegen.design.testing import (
    ERROR_LINES,
    FIXED,
    FORM_VERSION,
    TICKS,
    WORDS,
    Asked,
    AskedGauge,
    field_name,
)
from gradegen.numbers.units import in_unit
from gradegen.read.forms.asked import asked_text
from gradegen.trade.hooks import hook_words
from gradegen.trade.levels import project_levels
from gradegen.trade.terms import word_in
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.editioned import editioned
from gradegen.write.forms.asked import asked_of
from gradegen.write.page.fields import OPEN, VALUE
from gradegen.write.view.measures import graded_by
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import band_text, lengths_text, number_text

_UNITS = {"in": "inches", "cm": "centimetres"}
_YARN_UNITS = {"in": ("yards", "metres"), "cm": ("metres", "yards")}
_MARKS = ("", *"12345")


@dataclass(frozen=True, slots=True)
class FieldView:
    """One field: its name in the file, its words on the page, its whole name for a voice, and how it is filled in."""

    name: str
    words: str
    tip: str
    kind: Literal["text", "area", "choice", "box"] = "text"
    value: str = ""
    options: tuple[str, ...] = ()
    looks: str = ""

    @property
    def held(self) -> str:
        """What it holds to begin with, as the template hands it on beside the tooltip."""
        return VALUE + self.value if self.value else ""


@dataclass(frozen=True, slots=True)
class LineView:
    """One line of a table: what it is about, what the pattern says, and the fields beside it."""

    name: str
    said: tuple[str, ...]
    fields: tuple[FieldView, ...]
    heading: str = ""

    @property
    def alone(self) -> str:
        """What the line is called where it stands by itself."""
        return self.heading or self.name


@dataclass(frozen=True, slots=True)
class SectionView:
    """A part of the form: its heading, a sentence, single fields, then a table with its heads."""

    heading: str
    says: str = ""
    fields: tuple[FieldView, ...] = ()
    heads: tuple[str, ...] = ()
    lines: tuple[LineView, ...] = ()
    looks: str = ""


@dataclass(frozen=True, slots=True)
class FormView:
    """The whole form; `fixed` are the hidden fields that tell it apart from others."""

    language: str
    paper: str
    style: str
    title: str
    file_title: str
    author: str
    about: str
    version: str
    size: str
    foot: str
    send: str
    help: str
    link: str
    how: str
    sections: tuple[SectionView, ...]
    fixed: tuple[FieldView, ...]
    mark: str = ""

    def fields(self) -> Iterator[FieldView]:
        """Every field, in the order in which they are filled in."""
        yield from self.fixed
        for section in self.sections:
            yield from section.fields
            for line in section.lines:
                yield from line.fields


def form_view(checked: Checked, edition: Edition) -> FormView:
    """The form of the edition's one size, in its units and terms."""
    said = editioned(checked, edition)
    checked, printing = said.checked, said.printing
    asked = asked_of(checked, printing)
    pattern, designer = checked.pattern, checked.pattern.designer
    version = pattern.version.text if pattern.version else ""
    help_words = designer.help.text if designer and designer.help else ""
    return FormView(
        language="en-GB" if pattern.terms == "UK" else "en-US",
        paper={"a4": "A4", "letter": "letter"}[edition.paper],
        style=edition.style,
        title=pattern.title.text,
        file_title=f"{pattern.title.text}, size {asked.size}: tester’s form",
        author=designer.name.text if designer else "",
        about=f"Size {asked.size}",
        version=version,
        size=asked.size,
        foot=" · ".join(part for part in (f"Version {version}" if version else "", "Tester’s form") if part),
        send="Save the form and send it" if help_words else "Save the form and send it back",
        help=help_words,
        link=_link(help_words),
        how="Fill in what you know and leave the rest empty. Write numbers as you like: 13½, 13.5 or 13 1/2; "
        "where you measure in another unit, write the unit too.",
        sections=tuple(_sections(asked, checked, printing)),
        fixed=_fixed(asked),
        mark="DRAFT" if edition.draft else "",
    )


def _link(address: str) -> str:
    if "://" in address:
        return address
    return f"mailto:{address}" if "@" in address and " " not in address else ""


def _fixed(asked: Asked) -> tuple[FieldView, ...]:
    values = (FORM_VERSION, asked.pattern, asked.version, asked.size, asked_text(asked))
    tips = ("Form", "Pattern", "Version", "Size", "What the form asks")
    return tuple(FieldView(name, "", tip, value=value) for name, tip, value in zip(FIXED, tips, values, strict=True))


def _sections(asked: Asked, checked: Checked, printing: Printing) -> Iterator[SectionView]:
    yield _about_you(asked, checked, printing)
    yield from _yarns(asked, printing)
    for gauge in asked.gauges:
        yield _gauge(gauge, asked, checked.pattern.terms, printing)
    if asked.measures:
        yield _measures(asked, printing)
    yield _errors(asked)
    yield _pieces(asked)
    yield SectionView("In your own words", fields=tuple(_area("words", name, words) for name, words in WORDS.items()))
    yield SectionView("Before you send it", fields=tuple(_box(name, words) for name, words in TICKS.items()))


def _about_you(asked: Asked, checked: Checked, printing: Printing) -> SectionView:
    levels = tuple(level.name for level in project_levels())
    to_fit, body = _to_fit(checked, printing), graded_by(checked)
    units = printing.style.units
    fields = [
        FieldView("tester name", "Your name", "Your name, or the one to thank you by"),
        FieldView("tester level", "Your level", "The level you feel at home in", "choice", options=("", *levels)),
        *(
            FieldView(field_name("body", unit), f"Your {body}, {unit}", f"Your {body}, in {_UNITS[unit]}")
            for unit in units
        ),
        FieldView("time", "Hours of crochet", "Hours of crochet, such as 12 h 30"),
    ]
    says = f"This size is meant for {_article(body)}{body} of {to_fit}." if to_fit else ""
    return SectionView("You and your piece", says, tuple(fields), looks="few")


def _article(body: str) -> str:
    return "an " if body[:1] in "aeiou" else "a "


def _to_fit(checked: Checked, printing: Printing) -> str:
    cell = printing.sizes[0].to_fit
    if cell is None:
        return ""
    bands = {"in": band_text(cell.inches, metric=False), "cm": band_text(cell.cm, metric=True)}
    first, second = printing.style.units
    return f"{bands[first]} {first} ({bands[second]} {second})"


def _yarns(asked: Asked, printing: Printing) -> Iterator[SectionView]:
    for letter, colour in asked.yarns.items():
        called = "Yarn" if len(asked.yarns) == 1 else f"Yarn {letter}"
        about = f"{called}, {colour}" if colour else called
        first, second = _YARN_UNITS[printing.style.units[0]]
        fields = [
            FieldView(field_name("yarn", letter, "name"), "Name, fibre, colour", f"{called}: name, fibre and colour"),
            FieldView(field_name("yarn", letter, "grams"), "Grams used", f"{called}: grams used"),
            *(
                FieldView(field_name("yarn", letter, unit), f"{unit.capitalize()} used", f"{called}: {unit} used")
                for unit in (first, second)
            ),
            FieldView(field_name("yarn", letter, "skeins"), "Skeins opened", f"{called}: skeins opened"),
        ]
        says = "Weigh the yarn before you begin and what is left at the end; the difference is what you used."
        yield SectionView(about, says, tuple(fields), looks="few")


def _gauge(gauge: AskedGauge, asked: Asked, terms: Literal["US", "UK"], printing: Printing) -> SectionView:
    word = word_in("Gauge", terms)
    heading = word if len(asked.gauges) == 1 else f"{word}: {gauge.name}"
    over = lengths_text([gauge.over], printing.style)
    wash = "blocking" if gauge.blocked else "washing"
    hook = f" with a {hook_words(in_unit(gauge.hook, 'mm'))} hook" if gauge.hook else ""
    across = "Stitches" if gauge.repeat_of is None else f"Repeats of {gauge.repeat_of} stitches"
    stated = {"stitches": gauge.stitches, "rows": gauge.rows}
    lines = tuple(
        LineView(
            across if what == "stitches" else "Rows",
            (_or_dash(gauge.before[at]), _or_dash(stated[what])),
            tuple(
                FieldView(
                    field_name("gauge", gauge.name, state, what),
                    "",
                    f"{heading}: {(across if what == 'stitches' else 'rows').lower()} {state} {wash}",
                )
                for state in ("before", "after")
            ),
        )
        for at, what in enumerate(("stitches", "rows"))
    )
    shown = f"{printing.style.both(gauge.over)[0]} {printing.style.units[0]}"
    fields = (
        FieldView(field_name("gauge", gauge.name, "hook"), "Your hook, mm", f"{heading}: your hook in millimetres"),
        FieldView(
            field_name("gauge", gauge.name, "over"),
            "Counted over",
            f"{heading}: the length you counted over, with its unit",
            value=shown,
        ),
    )
    heads = (
        "Counted",
        *(f"{whose}, {state} {wash}" for whose in ("Pattern", "Yours") for state in ("before", "after")),
    )
    return SectionView(heading, f"The pattern counts over {over}{hook}.", fields, heads, lines, "few")


def _or_dash(number: Fraction | None) -> str:
    return "–" if number is None else number_text(number)


def _measures(asked: Asked, printing: Printing) -> SectionView:
    units = printing.style.units
    lines = tuple(
        LineView(
            name.capitalize(),
            printing.style.both(length),
            tuple(
                FieldView(field_name("measure", name, unit), "", f"{name.capitalize()}, in {_UNITS[unit]}")
                for unit in units
            ),
        )
        for name, length in asked.measures.items()
    )
    heads = ("Measure", *(f"Pattern, {unit}" for unit in units), *(f"Yours, {unit}" for unit in units))
    says = "Lay the finished piece flat; what goes around a body or a limb is twice its flat width. One unit is enough."
    return SectionView("Finished measures", says, heads=heads, lines=lines)


def _errors(asked: Asked) -> SectionView:
    rows = ("", *dict.fromkeys(row.words for row in asked.rows))
    lines = tuple(
        LineView(
            str(at),
            (),
            (
                FieldView(field_name("error", str(at), "row"), "", f"Error {at}: row{OPEN}", "choice", options=rows),
                FieldView(field_name("error", str(at), "made"), "", f"Error {at}: stitches you came to"),
                FieldView(field_name("error", str(at), "words"), "", f"Error {at}: what is wrong"),
            ),
            f"Error {at}",
        )
        for at in range(1, ERROR_LINES + 1)
    )
    heads = ("No.", "Row (choose or write)", "You came to", "What is wrong")
    says = "A row that cannot be worked as written, a count that does not come out, a number you doubt."
    return SectionView("Errors by row", says, heads=heads, lines=lines, looks="errors")


def _pieces(asked: Asked) -> SectionView:
    marks = (("difficulty", "Difficulty"), ("clarity", "Clarity"))
    lines = tuple(
        LineView(
            piece,
            (),
            tuple(
                FieldView(field_name("piece", piece, what), "", f"{piece}: {what}, 1 to 5", "choice", options=_MARKS)
                for what, _ in marks
            ),
        )
        for piece in asked.pieces
    )
    says = "1 is very easy, or not clear at all; 5 is very hard, or perfectly clear."
    return SectionView("The pattern, piece by piece", says, heads=("Piece", *(name for _, name in marks)), lines=lines)


def _area(group: str, name: str, words: str) -> FieldView:
    return FieldView(field_name(group, name), words, words, "area")


def _box(name: str, words: str) -> FieldView:
    return FieldView(field_name("tick", name), words, words, "box")
