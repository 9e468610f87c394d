"""The short forms a document really uses, what they mean, and which vocabulary it is written in."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from gradegen.design.pattern import Pattern
from gradegen.design.rows import Definition
from gradegen.trade.abbreviations import abbreviations
from gradegen.trade.stitches import Stitch, Terms, longest_stitch
from gradegen.write.view.whole import Abbreviation, Entry
from gradegen.write.words.phrases import Phrase, plain

_WORD = re.compile(r"(?<!\w)(?:[A-Za-z]+(?:-[A-Za-z]+)*\d?[A-Za-z]*|\d+-[A-Za-z]+)")
_APART = re.compile(r"[^\w\s-]|(?<!\S)\d+(?!\S)")
_LONGEST_NAME = 3  # words
_LONGEST_BESIDE = 14  # signs of a name that still fit beside its text
_CHAIN_MADE = "ch-"


def used_abbreviations(texts: Iterable[str], pattern: Pattern) -> tuple[Abbreviation, ...]:
    """Every abbreviation that stands in these texts, in alphabetical order; the pattern's own stitches are left out."""
    own = {word for each in pattern.definitions for word in (each.name.casefold(), each.name.casefold().split(" ")[-1])}
    found: dict[str, str] = {}
    for text in texts:
        for short, means in _in_text(text, pattern.terms):
            if short.casefold() not in own and short.casefold() != means.casefold():
                found.setdefault(short, means)
    ordered = sorted(found.items(), key=lambda pair: (pair[0].casefold(), pair[0]))
    return tuple(Abbreviation(short, means) for short, means in ordered)


def _in_text(text: str, terms: Terms) -> Iterator[tuple[str, str]]:
    for run in _APART.split(text):
        yield from _in_run([found.group() for found in _WORD.finditer(run)], terms)
    if re.search(r"\bch-\d", text):
        yield _CHAIN_MADE, abbreviations()[_CHAIN_MADE].means(terms)


def _in_run(words: Sequence[str], terms: Terms) -> Iterator[tuple[str, str]]:
    """Abbreviations among words that nothing stands between."""
    at = 0
    while at < len(words):
        named = longest_stitch(words[at : at + _LONGEST_NAME], terms)
        if named is not None:
            yield from _stitch(" ".join(words[at : at + named[1]]), named[0], terms)
            at += named[1]
            continue
        yield from _word(words[at], terms)
        at += 1


def _stitch(written: str, stitch: Stitch, terms: Terms) -> Iterator[tuple[str, str]]:
    """A stitch's abbreviation, unless its name was written in full."""
    short, full = stitch.abbreviation(terms), stitch.full_name(terms)
    in_full = any(part in full.split() for part in written.casefold().removesuffix("es").removesuffix("s").split())
    if not in_full or written.casefold() == short.casefold():
        yield short, full


def _word(word: str, terms: Terms) -> Iterator[tuple[str, str]]:
    for form in (word, word[:1].lower() + word[1:]):
        for short in (form.removesuffix("s"), form):
            known = abbreviations().get(short)
            if known is not None and len(short) > 1:
                yield known.short, known.means(terms)
                return


def terms_sentences(pattern: Pattern, used: Sequence[Abbreviation]) -> tuple[Phrase, ...]:
    """Which terms the document is in, and what its stitches are called in the other."""
    other: Terms = "UK" if pattern.terms == "US" else "US"
    pairs = _other_names(pattern.terms, other, used)
    said = [f"Written in {pattern.terms} crochet terms."]
    if pairs:
        listed = ", ".join(f"{here} is {there}" for here, there in pairs.items())
        said.append(f"In {other} terms, {listed}.")
    return (plain(" ".join(said)),)


def _other_names(terms: Terms, other: Terms, used: Sequence[Abbreviation]) -> Mapping[str, str]:
    pairs: dict[str, str] = {}
    for abbreviation in used:
        if abbreviation.short == _CHAIN_MADE:
            continue
        named = longest_stitch(abbreviation.short.split(), terms)
        known = abbreviations().get(abbreviation.short)
        there = named[0].abbreviation(other) if named else known.means(other) if known else abbreviation.means
        here = abbreviation.short if named else abbreviation.means
        if here != there:
            pairs[abbreviation.short if named else here] = there
    return pairs


def special_stitches(pattern: Pattern) -> tuple[Entry, ...]:
    """The stitches the pattern explains itself, as its designer explains them."""
    return tuple(_explained(definition) for definition in pattern.definitions)


def _explained(definition: Definition) -> Entry:
    name = definition.name[:1].upper() + definition.name[1:]
    return Entry(name, (plain(_as_sentence(definition.text)),), "beside" if len(name) <= _LONGEST_BESIDE else "above")


def _as_sentence(text: str) -> str:
    text = text.strip()
    return text if text.endswith((".", "!")) else text + "."
