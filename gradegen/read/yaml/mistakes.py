"""What is wrong with a YAML file that can't be read, in plain words, at the sign to look at."""

from __future__ import annotations

import re
import unicodedata
from typing import Any

from gradegen.findings import Finding, Place, Rule, Severity, Written

YAML_SYNTAX = Rule("yaml-syntax", Severity.ERROR, "file format", "The layout of the file can't be read from here on.")
TAB_INDENTS = Rule("tab-indents", Severity.ERROR, "file format", "A tab stands where only spaces may indent.")
NESTED_TOO_DEEPLY = Rule("nested-too-deeply", Severity.ERROR, "file format", "Blocks lie deeper than a pattern needs.")
ODD_SIGN = Rule("odd-sign", Severity.ERROR, "file format", "An invisible control sign stands in the file.")

DEEPEST = 40  # blocks and brackets inside each other

_ODD = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_QUOTE = 'Put the whole text in quotes: "..." (or write it on its own lines after a |).'
_OPENERS = "*&!%@`|>{}[],?#-"

# a piece of the reader's own words -> what to say, what to do
_SAYINGS: tuple[tuple[str, str, str], ...] = (
    ("mapping keys are not allowed", "A question mark at the start means something else to YAML.", _QUOTE),
    ("block sequence entries are not allowed", "A list item can't start on the line of its key.",
     "Start the list on a new line below the key, one dash each; or put the text in quotes."),
    ("did not find expected ',' or ']'", "A list that was opened with [ is not closed.",
     "Close it with ]; items are parted by commas."),
    ("did not find expected ',' or '}'", "A block that was opened with { is not closed.",
     "Close it with }; entries are parted by commas. If the { belongs to the text, put the text in quotes."),
    ("found unknown escape character", "A backslash in double quotes needs a known letter after it.",
     "Use single quotes, or write the backslash twice."),
    ("did not find expected hexdecimal number", "A backslash code in double quotes is not complete.",
     "Use single quotes, or write the backslash twice."),
    ("did not find expected comment or line break", "Text stands on the same line as the | or >.",
     "Start the text on the next line, with two more spaces in front."),
    ("could not find expected ':'", "A key on this line has no colon.",
     "Write it as `key: value`, or put the text in quotes."),
    ("did not find expected '-' indicator", "This line is not an item of the list above.",
     "Give it a dash, or set it further left or right so that it belongs elsewhere."),
    ("did not find expected <document start>", "Nothing may follow the line of three dots.",
     "Take the line ... out."),
    ("found unexpected document indicator", "Three dashes or dots stand inside a text.", "Take them out."),
    ("incompatible YAML document", "The first line asks for another kind of YAML.", "Take the %YAML line out."),
    ("indentation indicator", "The sign after | or > is not understood.", "Write | alone."),
)  # fmt: skip


def find_odd_sign(source: Written) -> Finding | None:
    """The first control or line separator sign that no editor shows; None when all signs are plain."""
    match = _ODD.search(source.text)
    if match is None:
        return None
    code = f"U+{ord(match.group()):04X}"
    name = unicodedata.name(match.group(), "")
    message = f"An invisible sign ({code}{' ' + name.lower() if name else ''}) stands here."
    return ODD_SIGN.at(source.place(match.start(), match.end()), message, hint="Delete it and type the line again.")


def explain_yaml_error(problem: Any, source: Written) -> Finding:
    """One located sentence for the first thing YAML could not make sense of."""
    words = str(getattr(problem, "problem", "") or problem)
    mark = getattr(problem, "problem_mark", None)
    opened = getattr(problem, "context_mark", None)
    spot = min(mark.index, len(source.text)) if mark is not None else 0
    start = min(opened.index, len(source.text)) if opened is not None else spot
    if "nesting depth" in words:
        return nested_too_deeply(_sign(source, spot))
    if "end of stream" in words or "scanning a quoted scalar" in str(getattr(problem, "context", "")):
        return _unclosed_quote(source, start)
    if "tab character" in words or source.text[spot : spot + 1] == "\t":
        return _tab(source, spot)
    if "mapping values are not allowed" in words:
        return _second_colon(source, spot)
    for piece, saying, hint in _SAYINGS:
        if piece in words:
            return YAML_SYNTAX.at(_sign(source, start if "not closed" in saying else spot), saying, hint=hint)
    return _unexpected(source, spot)


def nested_too_deeply(place: Place) -> Finding:
    """The finding for brackets or blocks that go too deep."""
    message = f"Blocks and brackets lie more than {DEEPEST} deep here."
    return NESTED_TOO_DEEPLY.at(place, message, hint="Look for brackets that are never closed.")


def _sign(source: Written, spot: int) -> Place:
    """The sign at `spot`; the end of the last line that has any when the file stops there."""
    text = source.text
    if spot >= len(text) or text[spot] == "\n":
        end = len(text[:spot].rstrip())
        return source.place(max(end - 1, 0), end)
    return source.place(spot, spot + 1)


def _line(source: Written, spot: int) -> tuple[str, str]:
    """What stands on the line before and from `spot`."""
    text = source.text
    begin = text.rfind("\n", 0, spot) + 1
    end = text.find("\n", spot)
    return text[begin:spot], text[spot : len(text) if end < 0 else end]


def _unclosed_quote(source: Written, start: int) -> Finding:
    message = "The text that begins with this quote has no closing quote."
    return YAML_SYNTAX.at(_sign(source, start), message, hint="Close it with the same kind of quote.")


def _tab(source: Written, spot: int) -> Finding:
    text = source.text
    spot = spot if text[spot : spot + 1] == "\t" else text.find("\t", text.rfind("\n", 0, spot) + 1)
    place = source.place(spot, spot + 1) if spot >= 0 else source.place(0, 0)
    message = "A tab stands in front of this text; only spaces may indent."
    return TAB_INDENTS.at(
        place, message, hint="Replace it with two spaces a step; many editors can do so for the whole file."
    )


def _second_colon(source: Written, spot: int) -> Finding:
    before, _ = _line(source, spot)
    if ": " in before:
        return YAML_SYNTAX.at(_sign(source, spot), "A second colon on this line can't be told from a key.", hint=_QUOTE)
    message = "This key does not line up with what stands above it."
    hint = "Set it exactly under the keys of its block; a line with others under it ends with its colon."
    return YAML_SYNTAX.at(source.place(spot - len(before.lstrip()), spot), message, hint=hint)


def _unexpected(source: Written, spot: int) -> Finding:
    before, after = _line(source, spot)
    value = re.split(r"(?:: |- )", before)[-1].lstrip()
    if value[:1] in ("{", "[", "'", '"') and value:
        message = f"Text follows after the {value[0]} part has ended."
        return YAML_SYNTAX.at(_sign(source, spot), message, hint=_QUOTE)
    if after[:1] in tuple(_OPENERS) and value == "" and before.strip():
        message = f"A text can't begin with {after[0]} here."
        return YAML_SYNTAX.at(_sign(source, spot), message, hint=_QUOTE)
    message = "This line does not fit under what stands above it."
    hint = "Look at the spaces in front and at the line above: a key needs a colon, a text with a colon needs quotes."
    return YAML_SYNTAX.at(_sign(source, spot), message, hint=hint)
