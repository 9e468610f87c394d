"""The kinds of single values: texts, choices, numbers, lengths, sums."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache
from typing import Any, TypeVar

from gradegen.design.formula import Amount, Formula, PerSize
from gradegen.design.pattern import Text
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.numbers.exact import read_number
from gradegen.numbers.units import kind_of
from gradegen.read.sums.formula import read_amount, read_formula
from gradegen.read.yaml.fields import Kind, nearest, wrong_kind
from gradegen.read.yaml.nodes import Block, Listing, Node, Scalar

UNKNOWN_CHOICE = Rule("unknown-choice", Severity.ERROR, "file format", "A word that is none of those the key takes.")
NOT_A_NUMBER = Rule(
    "not-a-number", Severity.ERROR, "file format", "A number is needed and something else stands there."
)
NOT_A_MEASURE = Rule("not-a-measure", Severity.ERROR, "file format", "A number with its unit is needed.")
NUMBER_OUT_OF_RANGE = Rule("number-out-of-range", Severity.ERROR, "file format", "A number is too small or too large.")
UNIT_WRONG = Rule("unit-wrong", Severity.ERROR, "file format", "A measure has no unit, or one of another kind.")

C = TypeVar("C", bound=str)
_ANY_TEXT: Mapping[str, Any] = {"type": ["string", "number", "boolean"]}
_NUMBER_TEXT: Mapping[str, Any] = {"type": ["number", "string"]}
_LONGEST = 40  # signs of a number
_EACH = "Write one number with its unit for each size, such as 11 in."
_ABOVE_0 = "Write a number above 0."
_UNITS = {"length": "in, cm, mm, yd, m", "mass": "g, oz"}


def text_of(written: Written) -> Text:
    """The words with their place, no lists looked for."""
    return Text(written.text, written.place())


def _read_written(node: Node) -> tuple[Written | None, tuple[Finding, ...]]:
    if isinstance(node, Scalar):
        return node.trimmed, ()
    return None, (wrong_kind(node, "text"),)


def _read_text(node: Node) -> tuple[Text | None, tuple[Finding, ...]]:
    written, findings = _read_written(node)
    return (text_of(written) if written is not None else None), findings


TEXT: Kind[Text] = Kind("a few words", _read_text, _ANY_TEXT)
PROSE: Kind[Written] = Kind("a sentence or more", _read_written, _ANY_TEXT)


def _listed(options: tuple[str, ...]) -> str:
    """`US, UK`; in quotation marks where a comma belongs to one of them: `“1/4 in”, “1/4 in, 4 in = 10 cm”`."""
    return ", ".join(f"“{one}”" if any("," in option for option in options) else one for one in options)


def choice_text(options: tuple[str, ...]) -> Kind[Text]:
    """One of some words, with its place."""
    listed = _listed(options)

    def read(node: Node) -> tuple[Text | None, tuple[Finding, ...]]:
        if not isinstance(node, Scalar):
            return None, (wrong_kind(node, f"one of {listed}"),)
        word = " ".join(node.text.split())
        for option in options:
            if option.casefold() == word.casefold():
                return Text(option, node.place), ()
        guess = nearest(word, options)
        hint = f"Did you mean {guess}?" if guess else f"Write one of {listed}."
        return None, (UNKNOWN_CHOICE.at(node.place, f"“{_short(word)}” is none of {listed}.", hint=hint),)

    return Kind(f"one of {listed}", read, {"enum": list(options)})


def choice(*options: C) -> Kind[C]:
    """One of some words."""
    words = choice_text(options)
    by_word = {str(option): option for option in options}

    def read(node: Node) -> tuple[C | None, tuple[Finding, ...]]:
        chosen, findings = words.read(node)
        return (by_word[chosen.text] if chosen else None), findings

    return Kind(words.name, read, words.schema)


def whole(least: int, most: int = 100_000) -> Kind[int]:
    """A whole number within limits."""

    def read(node: Node) -> tuple[int | None, tuple[Finding, ...]]:
        number, findings = NUMBER_KIND.read(node)
        if number is None:
            return None, findings
        if number.denominator != 1:
            return None, (
                NOT_A_NUMBER.at(node.place, "A whole number is needed here.", hint="Leave the fraction out."),
            )
        if not least <= number <= most:
            hint = f"Write a whole number from {least} to {most}."
            return None, (NUMBER_OUT_OF_RANGE.at(node.place, "This number can't be meant here.", hint=hint),)
        return int(number), ()

    return Kind("a whole number", read, {"type": "integer", "minimum": least, "maximum": most})


_number = lru_cache(maxsize=4096)(read_number)  # a size table repeats its numbers


def _read_number(node: Node) -> tuple[Fraction | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, "a number"),)
    number = _number(node.text) if len(node.text) <= _LONGEST else None
    if number is not None:
        return number, ()
    hint = "Write it as 13, 13.5 or 13 1/2, with a point and no unit."
    return None, (NOT_A_NUMBER.at(node.place, f"“{_short(node.text)}” is no number.", hint=hint),)


NUMBER_KIND: Kind[Fraction] = Kind("a number", _read_number, _NUMBER_TEXT)


def _read_positive(node: Node) -> tuple[Fraction | None, tuple[Finding, ...]]:
    number, findings = _read_number(node)
    if number is not None and not 0 < number <= 100_000:
        return None, (NUMBER_OUT_OF_RANGE.at(node.place, "This number can't be meant here.", hint=_ABOVE_0),)
    return number, findings


POSITIVE: Kind[Fraction] = Kind("a number above 0", _read_positive, _NUMBER_TEXT)


def _short(text: str) -> str:
    return text if len(text) <= 30 else f"{text[:27]}..."


def _read_yes_no(node: Node) -> tuple[bool | None, tuple[Finding, ...]]:
    word = node.text.strip().casefold() if isinstance(node, Scalar) else ""
    if word in ("yes", "true", "on"):
        return True, ()
    if word in ("no", "false", "off"):
        return False, ()
    return None, (UNKNOWN_CHOICE.at(node.place, "Yes or no is needed here.", hint="Write true or false."),)


YES_NO: Kind[bool] = Kind("true or false", _read_yes_no, {"enum": [True, False, "yes", "no"]})


def read_measure(written: Written, kind: str, example: str) -> tuple[Amount | None, tuple[Finding, ...]]:
    """A number with its unit, such as `4 in` or `6 mm`; `kind` is "length" or "mass"."""
    found, _ = read_amount(written)
    if found is None:
        message = f"“{_short(written.text)}” is no {kind} with its unit."
        return None, (NOT_A_MEASURE.at(written.place(), message, hint=f"Write it like {example}."),)
    if kind_of(found.unit) != kind:
        message = f"This is no {kind}." if found.unit else "The unit is missing."
        return None, (UNIT_WRONG.at(written.place(), message, hint=f"Use one of {_UNITS[kind]}."),)
    if not 0 < found.number <= 100_000:
        return None, (NUMBER_OUT_OF_RANGE.at(written.place(), "This measure can't be meant here.", hint=_ABOVE_0),)
    return found, ()


def amount(kind: str, example: str) -> Kind[Amount]:
    """A length or a mass with its unit."""

    def read(node: Node) -> tuple[Amount | None, tuple[Finding, ...]]:
        if not isinstance(node, Scalar):
            return None, (wrong_kind(node, f"a {kind} such as {example}"),)
        return read_measure(node.trimmed, kind, example)

    return Kind(f"a {kind} such as {example}", read, {"type": "string", "examples": [example]})


def _read_sum(node: Node) -> tuple[Formula | None, tuple[Finding, ...]]:
    if isinstance(node, Scalar):
        return read_formula(node.trimmed)
    if isinstance(node, Block):
        return None, (wrong_kind(node, "a measure or a sum"),)
    return _read_list_of_amounts(node)


def _read_list_of_amounts(node: Listing) -> tuple[Formula | None, tuple[Finding, ...]]:
    """One measure per size, written as a YAML list."""
    each: list[Amount] = []
    findings: list[Finding] = []
    for item in node.items:
        value, found = _read_sum(item) if isinstance(item, Scalar) else (None, (wrong_kind(item, "a measure", _EACH),))
        findings += found
        if isinstance(value, Amount):
            each.append(value)
        elif value is not None:
            findings.append(wrong_kind(item, "one measure per size", _EACH))
    return (None, tuple(findings)) if findings or not each else (PerSize(tuple(each), node.place), ())


SUM: Kind[Formula] = Kind(
    "a measure or a sum such as bust + 3 in",
    _read_sum,
    {"anyOf": [{"type": ["string", "number"]}, {"type": "array", "items": {"type": ["string", "number"]}}]},
)
