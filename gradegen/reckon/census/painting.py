"""Which yarn a row is worked in: the letters it names before its first stitch, between stitches, and at its end."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache

from gradegen.design.pattern import Pattern
from gradegen.design.rows import Aside, Definition, Either, Make, Mixed, Repeat, Row, Step, Work
from gradegen.findings import Place
from gradegen.trade.stitches import stitches

MARK = "\N{INVISIBLE SEPARATOR}"  # between a stitch's name and the letter of its yarn, while a row is counted by colour
UNMARKED = {"ch", "sl st", "inc", "dec", "invisible dec"}  # what has no name of its own in a row, or none that counts
STARTING = 6  # chains and slip stitches a row may begin and end with
Palette = Mapping[str, str]  # what rows call a yarn -> its letter


def palette_of(pattern: Pattern) -> Palette:
    """The names rows may use for every yarn: its letter, and its colour as the materials have it."""
    found: dict[str, str] = {}
    for yarn in pattern.yarns:
        found[yarn.letter] = yarn.letter
        if yarn.colour is not None:
            found[yarn.colour.text.casefold()] = yarn.letter
    return found


@cache
def _taking_up(names: tuple[str, ...]) -> re.Pattern[str]:
    listed = "|".join(sorted(map(re.escape, names), key=len, reverse=True))
    verb = r"(?:with|using|in|chang(?:e|ing)\s+to|switch(?:ing)?\s+to|join(?:ing)?|attach(?:ing)?|pick(?:ing)?\s+up)"
    return re.compile(rf"\b(?i:{verb})\s+(?:the\s+)?(?i:yarn\s+|colou?r\s+)?(?P<name>{listed})(?![\w-])")


def taken_up(text: str, palette: Palette) -> list[tuple[int, str]]:
    """Where in a text a yarn is taken up, and which."""
    letters = tuple(name for name in palette if palette[name] == name)
    colours = tuple(name for name in palette if palette[name] != name)
    found = [(one.start(), palette[one["name"]]) for one in _taking_up(letters).finditer(text)]
    if colours:
        found += [(one.start(), palette[one["name"]]) for one in _taking_up(colours).finditer(text.casefold())]
    return sorted(set(found))


@dataclass(frozen=True, slots=True)
class Painted:
    """The yarns of one row: `first` taken up before its first stitch, `last` in hand at its end.

    `inside`: the yarn changes between stitches.
    """

    first: str | None
    last: str | None
    inside: bool


def painted(row: Row, palette: Palette) -> Painted:
    """How one row is coloured, by its words."""
    taken = taken_up(row.text, palette)
    if not taken:
        return Painted(None, None, False)
    works = [found.start() for found in _stitch_words(tuple(sorted(set(_made(row.steps))))).finditer(row.text)]
    start, end = (works[0], works[-1]) if works else (len(row.text), 0)
    before = [letter for at, letter in taken if at < start]
    inside = any(start < at < end for at, _ in taken)
    return Painted(before[-1] if before else None, taken[-1][1], inside)


@cache
def _stitch_words(names: tuple[str, ...]) -> re.Pattern[str]:
    words = {word for name in names for word in (name, *_printed(name))} or {"st"}
    listed = "|".join(sorted(map(re.escape, words), key=len, reverse=True))
    return re.compile(rf"(?i)(?<![\w-])(?:{listed})s?(?![\w-])")


def _printed(name: str) -> tuple[str, ...]:
    known = stitches().get(name)
    return (*known.names["US"], *known.names["UK"]) if known is not None else ()


def _made(steps: Iterable[Step]) -> Iterator[str]:
    for step in steps:
        match step:
            case Work():
                yield from (make.stitch for make in step.makes)
            case Repeat():
                yield from _made(step.body)
            case Mixed():
                yield from _made(step.works)
            case Either():
                yield from _made(step.readings[0])
            case _:
                pass


@dataclass(slots=True)
class Painter:
    """Goes through a row's steps with a yarn in hand, and marks every stitch with its letter."""

    palette: Palette
    own: Mapping[str, Definition]
    letter: str
    marked: dict[str, Definition] = field(default_factory=dict)
    changes: int = 0

    def row(self, row: Row) -> Row:
        """The row with its stitches marked; `marked` then explains them."""
        return replace(row, steps=tuple(self._steps(row.steps)), stated=())

    def _steps(self, steps: Iterable[Step]) -> Iterator[Step]:
        for step in steps:
            match step:
                case Aside():
                    for _, letter in taken_up(step.text, self.palette):
                        self.letter, self.changes = letter, self.changes + 1
                    yield step
                case Work():
                    yield self._work(step)
                case Repeat():
                    yield replace(step, body=tuple(self._steps(step.body)))
                case Mixed():
                    yield replace(step, works=tuple(self._work(work) for work in step.works))
                case _:
                    yield step

    def _work(self, work: Work) -> Work:
        return replace(work, makes=tuple(self._make(make) for make in work.makes))

    def _make(self, make: Make) -> Make:
        if make.stitch in UNMARKED:
            return make
        return replace(make, stitch=self._marked(make.stitch, make.place))

    def _marked(self, name: str, place: Place) -> str:
        """The stitch's marked name, explained: own stitches by their parts, a shell by its usual ones, else as one."""
        marked = f"{name}{MARK}{self.letter}"
        own, known = self.own.get(name), stitches().get(name)
        if own is not None:
            parts = tuple(self._make(one) for one in own.makes)
            self.marked[marked] = replace(own, name=marked, makes=parts)
        elif known is not None and known.makes not in ((name,), ()):
            parts = tuple(self._make(Make(one, place=place)) for one in known.makes)
            self.marked[marked] = Definition(marked, name, makes=parts, takes=known.takes, place=place)
        else:
            takes = known.takes if known is not None else 1
            self.marked[marked] = Definition(marked, name, one=True, takes=takes, place=place)
        return marked


def by_colour(census: Mapping[str, int], first: str) -> dict[str, dict[str, int]]:
    """A marked census by letter.

    What carries no mark goes with the yarn the row begins with where it is no more than a starting chain and a join,
    else with the yarn most used.
    """
    found: dict[str, dict[str, int]] = {}
    for name, number in census.items():
        plain, mark, letter = name.partition(MARK)
        if mark:
            mine = found.setdefault(letter, {})
            mine[plain] = mine.get(plain, 0) + number
    unmarked = {name: number for name, number in census.items() if MARK not in name and number}
    most = max(found, key=lambda letter: sum(found[letter].values()), default=first)
    letter = first if sum(unmarked.values()) <= STARTING else most
    for name, number in unmarked.items():
        mine = found.setdefault(letter, {})
        mine[name] = mine.get(name, 0) + number
    return found
