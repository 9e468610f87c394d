"""A checked pattern as one edition says it: in its terms, with its first unit, for its sizes."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from gradegen.design.checked import Checked
from gradegen.design.pattern import Pattern, Text
from gradegen.findings import Place
from gradegen.write.editions.edition import Edition
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

_LARGE_COLUMNS = 3  # sizes in one table of large print
_NUMBER = r"(?:\d+(?:\.\d+)?[½¼¾⅓⅔⅛⅜⅝⅞]?|[½¼¾⅓⅔⅛⅜⅝⅞])"
_BOTH = re.compile(rf"(?P<first>{_NUMBER})(?P<a>\s(?:in|cm))\s\((?P<second>{_NUMBER})(?P<b>\s(?:in|cm))\)")


@dataclass(frozen=True, slots=True)
class Editioned:
    """The pattern an edition prints; `kept`: rows that could not be said in its terms.

    `written`: the pattern as its designer wrote it. Charts are drawn from its rows, whatever an edition calls a stitch.
    """

    checked: Checked
    printing: Printing
    kept: frozenset[Place]
    written: Checked


def editioned(checked: Checked, edition: Edition) -> Editioned:
    """The pattern in the edition's words, and what its sentences need to know."""
    written, kept = checked, frozenset[Place]()
    if edition.terms is not None and edition.terms != written.pattern.terms:
        from gradegen.write.editions.other_terms import in_terms

        checked, kept = in_terms(checked, edition.terms)
    if edition.units is not None:
        checked = replace(checked, pattern=_with_units(checked.pattern, edition.units))
    printing = Printing(
        checked.sizes,
        edition.sizes(checked),
        length_style(checked.pattern),
        columns=_LARGE_COLUMNS if edition.style == "large-print" else None,
        is_spoken=edition.style == "spoken",
    )
    return Editioned(checked, printing, kept, written)


def _with_units(pattern: Pattern, first: str) -> Pattern:
    """The pattern with this unit first, also where its prose gives a length in both."""
    wanted = "inches first" if first == "in" else "centimetres first"
    if pattern.units == wanted:
        return pattern

    def turned(texts: tuple[Text, ...]) -> tuple[Text, ...]:
        return tuple(_turned(text, first) for text in texts)

    return replace(
        pattern,
        units="inches first" if first == "in" else "centimetres first",
        notes=turned(pattern.notes),
        finishing=turned(pattern.finishing),
        cautions=turned(pattern.cautions),
        pieces=tuple(replace(piece, notes=turned(piece.notes)) for piece in pattern.pieces),
    )


def _turned(text: Text, first: str) -> Text:
    """`2 in (5 cm)` as `5 cm (2 in)`; both are equally long, so that the size lists behind stay where they are."""
    return replace(text, text=_BOTH.sub(_other_way_round(first), text.text))


def _other_way_round(first: str) -> Callable[[re.Match[str]], str]:
    def turn(found: re.Match[str]) -> str:
        if found["a"].strip() == first or found["a"].strip() == found["b"].strip():
            return found[0]
        return f"{found['second']}{found['b']} ({found['first']}{found['a']})"

    return turn
