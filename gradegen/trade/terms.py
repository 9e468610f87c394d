"""US and UK words: which belong to one vocabulary alone, and how a text reads in the other."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from gradegen.trade.sources import Source, source_of
from gradegen.trade.stitch_names import spelling
from gradegen.trade.stitches import Stitch, Terms, longest_stitch, stitches
from gradegen.trade.tables import read_table


@dataclass(frozen=True, slots=True)
class Term:
    """One thing with its words in both vocabularies, the printed one first."""

    us: tuple[str, ...]
    uk: tuple[str, ...]
    means: str
    source: Source
    trust: str

    def printed(self, terms: Terms) -> str:
        """The word to print."""
        return self.us[0] if terms == "US" else self.uk[0]

    def written(self, terms: Terms) -> tuple[str, ...]:
        """All words for it."""
        return self.us if terms == "US" else self.uk


@cache
def terms() -> tuple[Term, ...]:
    """The words, stitches apart, that differ or might; in the order of the file."""
    table = read_table("terms")
    sources = {name: source_of(written) for name, written in table["sources"].items()}
    words = tuple(
        Term(tuple(word["US"]), tuple(word["UK"]), word["means"], sources[word["source"]], word["trust"])
        for word in table["words"]
    )
    spelled = table["spelling"]
    return words + tuple(
        Term((word["US"],), (word["UK"],), "spelling", sources[spelled["source"]], spelled["trust"])
        for word in spelled["words"]
    )


@cache
def how_to_tell_them_apart() -> str:
    """One sentence on which names show which terms."""
    return str(read_table("terms")["telling them apart"]["says"])


@cache
def _keys_only_in() -> Mapping[str, Terms]:
    """Spellings of stitch names that one vocabulary has and the other has not."""
    keys: dict[Terms, set[str]] = {"US": set(), "UK": set()}
    for stitch in stitches().values():
        keys["US"].update(key for name in stitch.names["US"] + stitch.names["booklet"] for key in spelling(name)[:1])
        keys["UK"].update(key for name in stitch.names["UK"] for key in spelling(name)[:1])
    us_only: dict[str, Terms] = dict.fromkeys(keys["US"] - keys["UK"], "US")
    uk_only: dict[str, Terms] = dict.fromkeys(keys["UK"] - keys["US"], "UK")
    return us_only | uk_only


def terms_only_in(words: str) -> Terms | None:
    """The one vocabulary that has this stitch name; None when both have it, or neither: it proves nothing."""
    only = _keys_only_in()
    return next((only[key] for key in spelling(words) if key in only), None)


def word_in(word: str, wanted: Terms) -> str:
    """A trade word (gauge, skip, yo) as these terms write it, capital kept; unknown words come back as they are."""
    level = word.casefold()
    for term in terms():
        if level in term.us or level in term.uk:
            return word if level in term.written(wanted) else _like(word, term.printed(wanted))
    return word


_PIECE = re.compile(r"[A-Za-z0-9]+(?:[-'][A-Za-z0-9]+)*|\s+|.", re.DOTALL)


def text_in(text: str, written: Terms, wanted: Terms) -> str:
    """A text in the other terms, stitch names and trade words changed in one pass; the rest comes back untouched.

    One pass, since dc and tr stand in both vocabularies: a chain of replacements would change a word twice.
    """
    if written == wanted:
        return text
    pieces = _PIECE.findall(text)
    out: list[str] = []
    at = 0
    while at < len(pieces):
        changed, used = _changed(pieces, at, written, wanted)
        out.append(changed)
        at += used
    return "".join(out)


def _changed(pieces: list[str], at: int, written: Terms, wanted: Terms) -> tuple[str, int]:
    """The pieces at one spot in the wanted terms, and how many of them that covers."""
    words = [piece for piece in pieces[at : at + 16] if not piece.isspace()]
    found = longest_stitch(words, written) if pieces[at][0].isalnum() else None
    if found is not None:
        stitch, used = found
        covered = pieces_of(pieces, at, used)
        return _stitch_in("".join(pieces[at : at + covered]), stitch, wanted), covered
    for used in (3, 2, 1):
        covered = pieces_of(pieces, at, used)
        phrase = "".join(pieces[at : at + covered])
        changed = word_in(phrase, wanted)
        if changed != phrase:
            return changed, covered
    return pieces[at], 1


def pieces_of(pieces: list[str], at: int, words: int) -> int:
    """How many pieces, blanks between them included, make that many words."""
    covered = 0
    while words and at + covered < len(pieces):
        words -= not pieces[at + covered].isspace()
        covered += 1
    return covered


def _stitch_in(phrase: str, stitch: Stitch, wanted: Terms) -> str:
    """A stitch's name in the wanted terms: full words for full words, plural for plural."""
    other: Terms = "UK" if wanted == "US" else "US"
    if stitch.names[wanted] == stitch.names[other]:
        return phrase
    spelled_out = re.search(r"crochet|treble|stitch", phrase, re.IGNORECASE)
    name = stitch.full_name(wanted) if spelled_out else stitch.abbreviation(wanted)
    plural = phrase.casefold().endswith("s") and spelling(phrase)[0] != spelling(phrase)[-1] and phrase != "ss"
    return _like(phrase, name + "s" if plural and not name.endswith("s") else name)


def _like(model: str, word: str) -> str:
    """The word with a capital where the model starts with one; names that carry capitals (FPdc) keep theirs."""
    return word[:1].upper() + word[1:] if model[:1].isupper() and word[:1].islower() else word
