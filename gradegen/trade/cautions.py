"""Cautions that follow from who a thing is for, what it is, and the words of its pattern. Pointers, not rulings."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from gradegen.trade.sources import Source, source_of
from gradegen.trade.tables import read_table


@dataclass(frozen=True, slots=True)
class Occasion:
    """One set of facts that brings a caution up; an empty part is no condition."""

    wearer: frozenset[str]
    kinds: frozenset[str]
    words: re.Pattern[str] | None
    and_words: re.Pattern[str] | None
    not_words: re.Pattern[str] | None

    def arises(self, wearers: frozenset[str], kinds: frozenset[str], text: str) -> bool:
        """True when all its parts hold."""
        if self.wearer and not self.wearer & wearers:
            return False
        if self.kinds and not self.kinds & kinds:
            return False
        text = self.not_words.sub(" ", text) if self.not_words else text
        return all(words is None or words.search(text) for words in (self.words, self.and_words))


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: the sentence to print, the rule or advice behind it, and how far that is sure.

    `from_memory`: the parts of it that the trust mark does not cover.
    """

    id: str
    title: str
    text: str
    rule: str
    covers: str
    source: Source
    trust: str
    from_memory: tuple[str, ...]
    occasions: tuple[Occasion, ...]


@cache
def cautions() -> tuple[Caution, ...]:
    """All cautions, in the order they are printed."""
    return tuple(_caution(entry) for entry in read_table("cautions")["entries"])


@cache
def cautions_rule() -> str:
    """What is printed above every list of cautions: local rules and qualified people decide."""
    return str(read_table("cautions")["general rule"]).strip()


def _caution(entry: Mapping[str, Any]) -> Caution:
    source = entry["source"]
    return Caution(
        id=entry["id"],
        title=entry["title"],
        text=entry["caution"],
        rule=entry["rule"],
        covers=entry["covers"],
        source=source_of(read_table("cautions")["sources"][source] if isinstance(source, str) else source),
        trust=entry["trust"],
        from_memory=tuple(entry["from memory"]),
        occasions=tuple(_occasion(when) for when in entry["when"]),
    )


def _occasion(when: Mapping[str, Any]) -> Occasion:
    words, and_words, not_words = (_any_of(when.get(key)) for key in ("words", "and words", "not words"))
    return Occasion(frozenset(when.get("wearer", ())), frozenset(when.get("kinds", ())), words, and_words, not_words)


def _any_of(words: str | list[str] | None) -> re.Pattern[str] | None:
    """A search for any of the words, or of a named group of words, whole, plural or not."""
    if words is None:
        return None
    listed = read_table("cautions")["groups of words"][words] if isinstance(words, str) else words
    either = "|".join(re.escape(word).replace(r"\ ", r"[\s-]+") for word in listed)
    return re.compile(rf"(?<![\w-])(?:{either})(?:s|es)?(?![\w-])", re.IGNORECASE)


def cautions_for(wearer: str | Iterable[str], words: str | Iterable[str], kinds: Iterable[str]) -> tuple[Caution, ...]:
    """The cautions that concern this thing, in the order they are printed.

    `wearer`: baby, child, adult, one or several. `words`: the texts of the pattern. `kinds`: what the thing is
    (toy, hat). A word can be harmless where it stands; a caution too many is better than one too few.
    """
    wearers = frozenset((wearer,) if isinstance(wearer, str) else wearer)
    text = words if isinstance(words, str) else "\n".join(words)
    things = frozenset(kind.casefold() for kind in kinds)
    return tuple(
        caution
        for caution in cautions()
        if any(occasion.arises(wearers, things, text) for occasion in caution.occasions)
    )
