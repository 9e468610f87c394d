"""What the abbreviations of a printed page mean, in US and in UK terms."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from gradegen.trade.sources import Source, source_of
from gradegen.trade.stitches import Terms, find_stitch
from gradegen.trade.tables import read_table


@dataclass(frozen=True, slots=True)
class Abbreviation:
    """One abbreviation, as printed, with its meaning in both vocabularies."""

    short: str
    us: str
    uk: str
    source: Source
    trust: str

    def means(self, terms: Terms) -> str:
        """Its meaning in these terms."""
        return self.us if terms == "US" else self.uk


@cache
def abbreviations() -> Mapping[str, Abbreviation]:
    """All abbreviations that are no stitches, by their printed form."""
    table = read_table("abbreviations")
    cyc, practice, seen = source_of(table["source"]), source_of(table["practice"]), table["published copy seen"]
    known = {
        short: _abbreviation(short, meaning, cyc, "published copy seen" if short in seen else "from memory, unchecked")
        for short, meaning in table["words"].items()
    }
    return known | {
        short: _abbreviation(short, meaning, practice, "common practice, no source")
        for short, meaning in table["common"].items()
    }


@cache
def marks() -> Mapping[str, Abbreviation]:
    """The stars and brackets of a row, with what they ask for."""
    table = read_table("abbreviations")
    source = source_of(table["source"])
    return {sign: _abbreviation(sign, says, source, "from memory, unchecked") for sign, says in table["marks"].items()}


@cache
def measurements() -> Mapping[str, Abbreviation]:
    """The units of a printed page."""
    table = read_table("abbreviations")
    source = source_of(table["source"])
    return {
        unit: _abbreviation(unit, name, source, "from memory, unchecked")
        for unit, name in table["measurements"].items()
    }


def _abbreviation(short: str, meaning: str | Mapping[str, Any], source: Source, trust: str) -> Abbreviation:
    if isinstance(meaning, str):
        return Abbreviation(short, meaning, meaning, source, trust)
    return Abbreviation(short, meaning["US"], meaning["UK"], source, trust)


@cache
def _by_small_letters() -> Mapping[str, Abbreviation]:
    known: dict[str, Abbreviation] = {}
    for short, abbreviation in abbreviations().items():
        known.setdefault(short.casefold(), abbreviation)
    return known


def meaning(abbreviation: str, terms: Terms) -> str | None:
    """What it means in these terms, stitches included; None when it is not known.

    Capitals as printed are tried first, then any; a plural s is no other abbreviation (`sts`, `rnds`, `ch-sps`).
    """
    for short in (abbreviation, abbreviation.removesuffix("s")):
        if short in abbreviations():
            return abbreviations()[short].means(terms)
    stitch = find_stitch(abbreviation, terms)
    if stitch is not None:
        return stitch.full_name(terms)
    level = abbreviation.casefold()
    found = _by_small_letters().get(level) or _by_small_letters().get(level.removesuffix("s"))
    return found.means(terms) if found else None
