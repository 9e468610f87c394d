"""The `look` of a pattern, from its own file or from one it names: every choice checked, none refused for a slip."""

from __future__ import annotations

from pathlib import Path

from gradegen.design.look import Accent, Logo, Look
from gradegen.design.pattern import Text
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.files import open_text
from gradegen.read.pattern import look_keys as keys
from gradegen.read.pictures.file import find_picture
from gradegen.read.yaml.fields import Field, Given, nearest, read_fields
from gradegen.read.yaml.places import read_yaml
from gradegen.trade.contrast import LINE_LEAST, TEXT_LEAST, darkened, hex_of, on_paper, rgb_of
from gradegen.trade.typefaces import TYPEFACES

LOOK_MISSING = Rule(
    "look-missing", Severity.ERROR, "file format", "The file that a pattern's look stands in is missing."
)
NO_COLOUR = Rule("accent-unreadable", Severity.ERROR, "file format", "An accent that is no colour.")
TOO_PALE = Rule("accent-too-pale", Severity.WARNING, "trade standard", "An accent that is hard to read on paper.")
UNKNOWN_TYPEFACE = Rule("unknown-typeface", Severity.ERROR, "file format", "A typeface that pages can't be set in.")

Findings = tuple[Finding, ...]


def read_look(given: Text | Given | None, folder: Path) -> tuple[Look | None, Written | None, Findings]:
    """The look, the text of its own file where it has one, and what is wrong with it; None: the house's own."""
    if given is None or isinstance(given, Given):
        look, findings = (None, ()) if given is None else _look(given, folder)
        return look, None, findings
    path = folder / given.text
    try:
        within = path.resolve().is_relative_to(folder.resolve())
        there = path.is_file()
    except (OSError, ValueError):
        within = there = False
    if not within or not there:
        message = f"There is no file “{given.text[:60]}” in the pattern's folder or below it."
        hint = 'Write accent, headings, text, paper and logo into it, such as accent: "#2d5a57".'
        return None, None, (LOOK_MISSING.at(given.place, message, hint=hint),)
    source, findings = open_text(path)
    node, more = read_yaml(source) if source is not None else (None, ())
    block, found = read_fields(node, keys.LOOK_FIELDS, "a look") if node is not None else (None, ())
    look, faults = _look(block, path.parent) if block is not None else (None, ())
    return look, source, (*findings, *more, *found, *faults)


def _look(given: Given, folder: Path) -> tuple[Look, Findings]:
    accent, findings = _accent(given.value(keys.ACCENT))
    headings, found = _typeface(given, keys.HEADINGS)
    text, more = _typeface(given, keys.TEXT_FACE)
    logo, faults = _logo(given.value(keys.LOGO), folder)
    look = Look(accent, headings, text, given.value(keys.PAPER), logo, place=given.place)
    return look, (*findings, *found, *more, *faults)


def _accent(written: Text | None) -> tuple[Accent | None, Findings]:
    """The colour for lines and the one for words: darker shades of it where it would be too pale on paper."""
    if written is None:
        return None, ()
    colour = rgb_of(written.text)
    if colour is None:
        hint = 'Write red, green and blue in hex and in quotes, such as "#2d5a57"; # without quotes begins a remark.'
        return None, (NO_COLOUR.at(written.place, f"“{written.text[:30]}” is no colour.", hint=hint),)
    lines, words = darkened(colour, LINE_LEAST), darkened(colour, TEXT_LEAST)
    if words == colour:
        return Accent(hex_of(lines), hex_of(words)), ()
    used = "words are" if lines == colour else "words and lines are"
    finding = TOO_PALE.at(
        written.place,
        f"This accent is too pale on paper, so {used} printed in a darker shade, {hex_of(words)}.",
        expected="a contrast of 4.5:1 for words, 3:1 for lines (WCAG 2.2, 1.4.3 and 1.4.11)",
        found=f"{_down(on_paper(colour))}:1",
        hint=f'accent: "{hex_of(words)}"',
    )
    return Accent(hex_of(lines), hex_of(words)), (finding,)


def _down(ratio: float) -> str:
    """The ratio to one place, never rounded up to a limit it does not reach."""
    tenths = int(ratio * 10)
    return f"{tenths // 10}.{tenths % 10}"


def _typeface(given: Given, field: Field[Text]) -> tuple[str | None, Findings]:
    name = given.value(field)
    if name is None:
        return None, ()
    known = tuple(TYPEFACES)
    for each in known:
        if each.casefold() == " ".join(name.text.split()).casefold():
            return each, ()
    guess = nearest(name.text, known)
    hint = f"{f'Did you mean {guess}? ' if guess else ''}There are {', '.join(known)}."
    return None, (UNKNOWN_TYPEFACE.at(name.place, f"Pages can't be set in {name.text[:40]}.", hint=hint),)


def _logo(given: Given | None, folder: Path) -> tuple[Logo | None, Findings]:
    name, alt = (given.value(keys.LOGO_FILE), given.value(keys.LOGO_ALT)) if given is not None else (None, None)
    if name is None or alt is None:
        return None, ()
    file, findings = find_picture(name, folder)
    return Logo(Text(alt.text, alt.place()), file), findings
