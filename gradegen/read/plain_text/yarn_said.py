"""Yarn as an ordinary text states it: `Yarn A: 780 (905, 979) yd, 2 (2, 3) skeins`, in skeins of 481 yd."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from gradegen.design.formula import Amount, Formula, PerSize
from gradegen.design.pattern import Yarn, YarnStated
from gradegen.findings import Place, Written

_ONE = r"\d+(?:\.\d+)?"
_LIST = rf"{_ONE}(?:\s*[(\[]\s*{_ONE}(?:\s*[-,;:/–]\s*{_ONE})*\s*[)\]])*"
_UNITS = {
    "yards": r"yds?|yards?",
    "metres": r"m|mtrs?|met(?:er|re)s?",
    "grams": r"g|grams?",
    "ounces": r"oz|ounces?",
    "skeins": r"skeins?|balls?|hanks?",
}
_UNIT = "|".join(f"(?P<{name}>{words})" for name, words in _UNITS.items())
_AMOUNT = re.compile(rf"(?<![\w.(\[-])(?P<numbers>{_LIST})[ -]?(?:{_UNIT})\b", re.IGNORECASE)
_SKEIN = r"(?:skeins?|balls?|hanks?)"
_MEASURE = (
    rf"(?P<number>{_ONE})[ -]?(?P<unit>{_UNITS['yards']}|{_UNITS['metres']}|{_UNITS['grams']}|{_UNITS['ounces']})\b"
)
_PUT_UPS = tuple(
    re.compile(words, re.IGNORECASE)
    for words in (
        rf"(?P<all>{_MEASURE}[^.;:]{{0,30}}?)(?:\bper\b|/|\beach\b|\bto (?:the|a)\b)\s*{_SKEIN}",
        rf"\b(?:each|per|one)\s+{_SKEIN}\b[^.;\d]{{0,20}}(?P<all>{_MEASURE}[^.;:]{{0,30}})",
        rf"\b{_SKEIN}\s+(?:of|with|at)\s+(?P<all>{_MEASURE}[^.;:]{{0,30}})",
        rf"(?P<all>{_MEASURE}(?:\s*[(/,]\s*{_ONE}[ -]?\w+\)?)?)\s+{_SKEIN}\b",
    )
)
_ANY = re.compile(_MEASURE, re.IGNORECASE)
_NAMED = re.compile(
    r"(?i:yarn|colou?rs?|shade|contrast(?:ing)?(?: colou?r)?)\s+(?P<letter>[A-Z]{1,2}\d?|\d)\b"
    r"|^\W*(?P<alone>MC|CC\d?|[A-H])\b(?=\s*[:,(–-])"
)
_LABELLED = re.compile(r"(?i)\s*(?:next|rows?|rnds?|rounds?|foundation|r)\b[\s\d(:.]")
_LENGTH_UNITS = {"yards": "yd", "metres": "m", "grams": "g", "ounces": "oz"}


@dataclass(slots=True)
class _Said:
    """What lines about one yarn came to so far."""

    letter: str
    place: Place
    amounts: dict[str, Formula] = field(default_factory=dict)
    put_up: dict[str, Amount] = field(default_factory=dict)


def yarns_said(source: Written, working: frozenset[int], sizes: int) -> tuple[Yarn, ...]:
    """The yarns a text states amounts of, outside its rows (`working`: their lines); () where it states none.

    A put-up told once for all holds for every yarn without one of its own.
    """
    said: dict[str, _Said] = {}
    common: dict[str, Amount] = {}
    letter = "A"
    for line in _lines(source, working):
        named = _NAMED.search(line.text)
        letter = (named["letter"] or named["alone"]) if named else letter
        put_up, spans = _put_up(line)
        amounts = dict(_amounts(line, spans, sizes))
        if amounts:
            one = said.setdefault(letter, _Said(letter, line.place()))
            one.amounts |= {what: formula for what, formula in amounts.items() if what not in one.amounts}
        if put_up and (amounts or named):
            said.setdefault(letter, _Said(letter, line.place())).put_up |= put_up
        common = common or put_up
    return tuple(_yarn(one, one.put_up or common) for one in said.values() if one.amounts)


def _lines(source: Written, working: frozenset[int]) -> Iterator[Written]:
    start = 0
    for raw in source.text.split("\n"):
        line = source.part(start, start + len(raw))
        if raw.strip() and line.place().line not in working and not _LABELLED.match(raw):
            yield line
        start += len(raw) + 1


def _put_up(line: Written) -> tuple[dict[str, Amount], list[tuple[int, int]]]:
    """What one skein holds, by kind of measure, and where that stands."""
    for pattern in _PUT_UPS:
        for found in pattern.finditer(line.text):
            held: dict[str, Amount] = {}
            for one in _ANY.finditer(line.text, found.start("all"), found.end("all")):
                what = _kind(one["unit"])
                place = line.place(one.start(), one.end())
                held.setdefault(what, Amount(Fraction(one["number"]), _LENGTH_UNITS[what], place))
            return held, [found.span("all")]
    return {}, []


def _kind(unit: str) -> str:
    return next(name for name, words in _UNITS.items() if re.fullmatch(words, unit, re.IGNORECASE))


def _amounts(line: Written, taken: Sequence[tuple[int, int]], sizes: int) -> Iterator[tuple[str, Formula]]:
    """Amounts with a number for every size; one number for all where it counts skeins."""
    for found in _AMOUNT.finditer(line.text):
        if any(start <= found.start() < end for start, end in taken):
            continue
        what = next(name for name in _UNITS if found[name])
        numbers = list(re.finditer(_ONE, found["numbers"]))
        each = tuple(_amount(line, found.start("numbers"), one, what) for one in numbers)
        if len(each) == sizes > 1:
            yield what, PerSize(each, line.place(*found.span("numbers")))
        elif len(each) == 1 and (what == "skeins" or sizes == 1):
            yield what, each[0]


def _amount(line: Written, start: int, found: re.Match[str], what: str) -> Amount:
    place = line.place(start + found.start(), start + found.end())
    return Amount(Fraction(found[0]), _LENGTH_UNITS.get(what), place)


def _yarn(said: _Said, put_up: dict[str, Amount]) -> Yarn:
    length, mass = put_up.get("yards") or put_up.get("metres"), put_up.get("grams") or put_up.get("ounces")
    bare = Yarn(said.letter, None, None, None, length, mass, None, None, said.place)
    return replace(bare, stated=YarnStated(**said.amounts, place=said.place))
