"""Braces that were meant for a count or a measure and name none: `{haat}`, `{2 hat}`, `{hat. Join`."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from gradegen.design.formula import Call, Formula, Name, Sum
from gradegen.findings import Finding, Place, Rule, Severity, Written
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.sums.formula import read_formula
from gradegen.read.yaml.fields import nearest

NAME_IN_BRACES = Rule(
    "name-in-braces-unknown",
    Severity.ERROR,
    "file format",
    "Braces hold a name that is no count, measure or shaping of this pattern, and would be printed as they stand.",
)
BRACE_NOT_CLOSED = Rule(
    "brace-not-closed",
    Severity.ERROR,
    "file format",
    "A brace before a count or a measure is not closed, so that no number would be printed there.",
)
_OPENED = re.compile(r"\{(?P<inside>(?:[^{}\n]|\n[ \t])*)(?P<closed>\}?)")
_TRADE = re.compile(
    r"\b(?:in|into|next|each|to|of|over|around|across|from|and|or|as|sk|skip|turn|join|rep|repeat)\b", re.IGNORECASE
)


def find_braces(written: Written, names: RowNames, known: Collection[str]) -> Iterator[Finding]:
    """One finding for every brace that is neither one of the `known` names, or a sum of them, nor the trade's own."""
    for found in _OPENED.finditer(written.text):
        start, end = found.span("inside")
        if found["closed"]:
            yield from _closed(written, start, end, names, known)
        elif name := _begins_with(found["inside"], known):
            place = written.place(start - 1, start + len(name))
            yield BRACE_NOT_CLOSED.at(place, "This brace is not closed.", hint=f"{{{name}}}")


def _closed(written: Written, start: int, end: int, names: RowNames, known: Collection[str]) -> Iterator[Finding]:
    inside = written.text[start:end]
    if inside.strip() in known:
        return
    formula, misread = read_formula(written, start, end)
    if formula is None:
        if "," not in inside:
            yield from _misread(written.place(start, end), inside, known, misread)
        return
    for part in _names(formula):
        guess = nearest(part.name, tuple(known))
        if part.name not in known and (guess or not _is_trade(part.name, names)):
            hint = (
                f"Did you mean {guess}?" if guess else "Name a count or a measure; for plain brackets take ( ) or [ ]."
            )
            yield _unknown(part.place, part.name, hint)


def _misread(place: Place, inside: str, known: Collection[str], misread: Iterable[Finding]) -> Iterator[Finding]:
    """A name that no sum could hold and is nearly a known one (`{rnig 2}`), or a slip in a sum of known ones."""
    if any(re.search(rf"\b{re.escape(name)}\b", inside) for name in known):
        yield from misread
    elif guess := nearest(inside.strip(), tuple(known)):
        yield _unknown(place, inside.strip(), f"Did you mean {guess}?")


def _unknown(place: Place, name: str, hint: str) -> Finding:
    return NAME_IN_BRACES.at(place, f"The pattern has no count or measure named {name}.", hint=hint)


def told_once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings of one missing name made one, at its first place, with the others beside it; the rest as they are."""
    by_name: dict[object, list[Finding]] = {}
    for number, one in enumerate(findings):
        by_name.setdefault(one.message if one.rule == NAME_IN_BRACES.id else number, []).append(one)
    also = {key: tuple((one.place, "here too") for one in same[1:]) for key, same in by_name.items()}
    return tuple(replace(same[0], see_also=same[0].see_also + also[key]) for key, same in by_name.items())


def _names(formula: Formula) -> Iterator[Name]:
    match formula:
        case Name():
            yield formula
        case Sum(left=left, right=right):
            yield from _names(left)
            yield from _names(right)
        case Call(parts=parts):
            for part in parts:
                yield from _names(part)


def _is_trade(name: str, names: RowNames) -> bool:
    """True for words of a row, `{sc in next st}`, or of a sentence."""
    words = name.lower().split()
    return len(words) > 3 or names.begins_stitch(words[0]) or bool(_TRADE.search(name))


def _begins_with(inside: str, known: Collection[str]) -> str | None:
    """The longest known name that the text begins with."""
    fitting = (name for name in known if re.match(rf"{re.escape(name)}(?!\w)", inside))
    return max(fitting, key=len, default=None)
