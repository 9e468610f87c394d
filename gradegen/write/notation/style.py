"""The house style of written rows: order, words, repeats and counts, all from shared/house_style.yaml."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from gradegen.trade.stitches import Terms, stitches
from gradegen.trade.tables import read_table
from gradegen.write.notation.numbers import Figures

Words = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class NotationStyle:
    """The forms a row is written in; each part is a block of the data file."""

    row: Words
    label: Mapping[str, Any]
    counts: Words
    chain: Words
    places: Mapping[str, Any]
    things: Mapping[str, Any]
    bounds: Words
    repeats: Mapping[str, Any]
    steps: Mapping[str, Any]
    passages: Mapping[str, Any]


@cache
def notation_style() -> NotationStyle:
    """Our own house style."""
    table = read_table("house_style")
    return NotationStyle(**{part: table[part] for part in NotationStyle.__slots__})


@dataclass(frozen=True, slots=True)
class Notation:
    """What every word of a row is written with: style, terms, figures, and whether the label says Row or Rnd.

    `magic`: the ring of this row is a magic ring.
    """

    style: NotationStyle
    terms: Terms
    figures: Figures
    kind: str = ""
    magic: bool = False

    def stitch(self, name: str, number: str = "1") -> str:
        """The name of a stitch in these terms; names that are words take a plural s."""
        known = stitches().get(name)
        word = known.abbreviation(self.terms) if known else name
        return word if is_one(number) or not _is_word(name) else _plural(word)

    def kind_word(self, number: str) -> str:
        """`Row` or `Rnd`, plural when the number asks for it."""
        return str(self.style.label[self.kind or "row"]["one" if is_one(number) else "more"])

    def step(self, name: str) -> str:
        """The form of one kind of step."""
        return self._in_terms(self.style.steps[name])

    def place(self, name: str) -> str:
        """The form of one kind of place."""
        return self._in_terms(self.style.places[name])

    def _in_terms(self, form: str | Words) -> str:
        return form if isinstance(form, str) else form[self.terms]


def is_one(number: str) -> bool:
    """True for a number text that asks for the singular."""
    return number in ("", "1")


@cache
def _is_word(name: str) -> bool:
    """True for `shell`, `V-st`, `3-dc cluster` and own names; abbreviations such as sc or dc2tog take no plural."""
    known = stitches().get(name)
    return known is None or known.varies or name[:1].isdigit() or name in ("inc", "dec")


def _plural(word: str) -> str:
    """`V-sts`, `fans`, `crosses`, `meshes`."""
    return word + ("es" if word.endswith(("s", "x", "ch", "sh")) else "s")


def listing(words: Sequence[str], last: str, between: str = ", ") -> str:
    """`M, L and XL`."""
    return words[0] if len(words) == 1 else between.join(words[:-1]) + last + words[-1]
