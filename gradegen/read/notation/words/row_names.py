"""What a reader of rows must know beforehand: the terms, the sizes, own stitches and the names of graded counts."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import Literal

from gradegen.design.rows import Definition
from gradegen.trade.stitches import find_stitch, stitches

Terms = Literal["US", "UK"]


@dataclass(frozen=True)
class RowNames:
    """`counts`, `measures`: names that may stand in braces (`{2 * band}`); other braces are the trade's brackets.

    `schedules`: names of shapings, whose sentences are put in place of `{armhole}` once the sizes are graded.
    `only`: the sizes a row is for, where it is not for all; its lists may have a number for each of these.
    """

    terms: Terms = "US"
    sizes: tuple[str, ...] = ("one",)
    definitions: Mapping[str, Definition] = field(default_factory=dict)
    counts: frozenset[str] = frozenset()
    measures: frozenset[str] = frozenset()
    schedules: frozenset[str] = frozenset()
    only: tuple[str, ...] = ()

    @cached_property
    def own(self) -> dict[str, str]:
        """The name as given of each stitch the pattern defines, by its levelled spellings."""
        names = [name for name in self.definitions if not _SAYS_WHERE.match(name)]
        spellings = {spelling: name for name in names for spelling in spellings_of(name)}
        return {**spellings, **{level(name): name for name in names}}

    @cached_property
    def own_heads(self) -> frozenset[str]:
        """The first words of own stitch names."""
        heads: set[str] = set()
        for name in self.own:
            first, *rest = name.split(" ")
            hyphened = "-".join((first, *rest[:1]))  # `X-st` is one word in a row
            heads.update((first, first + "s", hyphened, hyphened + "s"))
        return frozenset(heads)

    def stitch(self, words: str) -> tuple[str, bool] | None:
        """The id of the stitch these words name, and whether the pattern defines it itself."""
        if self.own:
            key = level(words)
            own = self.own.get(key) or self.own.get(singular(key))
            if own is not None:
                return own, True
        known = _known(words, self.terms)
        return (known, False) if known else None

    def begins_stitch(self, word: str) -> bool:
        """True when a stitch name may begin with this word."""
        return word in self.own_heads or word in _heads()


_SAYS_WHERE = re.compile(r"(\S+) (?:over|in|into) \1s?$", re.IGNORECASE)  # `shell over shell` says what it is made of
_PARTED = re.compile(r"\s*[()\[\]]\s*|\s+or\s+|\s*/\s*", re.IGNORECASE)


def spellings_of(name: str) -> tuple[str, ...]:
    """The levelled names of `V-stitch (V-st)`, `puff stitch or puff`: each of them, `stitch` also as `st`."""
    found = dict.fromkeys(level(part) for part in _PARTED.split(name) if part.strip())
    short = [" ".join("st" if word == "stitch" else word for word in one.split(" ")) for one in found]
    return tuple(dict.fromkeys((*found, *short)))


def level(name: str) -> str:
    """A name without capitals, hyphens and full stops."""
    return " ".join(name.lower().replace(".", "").replace("-", " ").split())


def singular(key: str) -> str:
    """A levelled name without its plural ending."""
    if key.endswith(("shes", "ches", "sses")):
        return key[:-2]
    return key[:-1] if key.endswith("s") and not key.endswith("ss") else key


@lru_cache(maxsize=8192)
def _known(words: str, terms: Terms) -> str | None:
    found = find_stitch(words, terms)
    return found.id if found else None


@lru_cache(maxsize=1)
def _heads() -> frozenset[str]:
    """The first words of every stitch name of the trade, plural too."""
    heads: set[str] = set()
    for stitch in stitches().values():
        for names in stitch.names.values():
            for name in names:
                first = name.lower().replace(".", "").split(" ")[0]
                heads.update((first, first + "s", first.split("-")[0], first + "es"))
    return frozenset(heads)
