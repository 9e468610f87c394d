"""A printed sentence as a voice should read it: abbreviations in full, signs and brackets in words."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from functools import cache

from gradegen.trade.abbreviations import abbreviations
from gradegen.trade.stitches import Terms, longest_stitch
from gradegen.trade.terms import pieces_of
from gradegen.write.voice.lists import each_size, in_unit, number_aloud

_SIGN = "½¼¾⅓⅔⅛⅜⅝⅞"
_NUMBER = rf"(?:\d+(?:\.\d+)?[{_SIGN}]?|[{_SIGN}])"
_RANGE = rf"{_NUMBER}(?:[–-]{_NUMBER})?"
_WHERE = (
    "next|each|the|same|first|last|any|every|a|an|this|that|ring|ch|sp|st|corner|top|back|front|both|all|these|those|it"
)
_INCHES = re.compile(rf"(?<![\w.])({_RANGE}) in\b(?! (?:{_WHERE}|\d))")
_MEASURE = re.compile(rf"(?<![\w.])({_RANGE}) (cm|mm|yd|m|g|oz)\b(?! \d)")
_SLASHED = re.compile(r"(?<![\d/])(?:1/2|[13]/4|[1357]/8)(?= in\b)")
_FRACTION = re.compile(rf"\d*[{_SIGN}]")
_COUNTS_AS = re.compile(r"[(\[]((?:counts?|does not|do not|doesn't|don’t|not counted)\b[^()\[\]]*)[)\]]", re.IGNORECASE)
_PIECE = re.compile(r"[A-Za-z0-9]+(?:[-'’][A-Za-z0-9]+)*|\s+|.", re.DOTALL)
_LIST = re.compile(rf"{_NUMBER}(?:[ \N{{NO-BREAK SPACE}}]\((?:{_NUMBER}|–)(?:,\s(?:{_NUMBER}|–))*\))+(?! ?%)")
_LONGEST = 16  # pieces that a stitch's name can take
_SIGN_OF = {"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞"}
_WORDS = {"approx": "approximately", "incl": "including", "dec": "decrease", "inc": "increase", "US": "US", "UK": "UK"}


def aloud(text: str, terms: Terms, *, is_row: bool = False) -> str:
    """The sentence with everything written out; `is_row`: its brackets hold stitches and its stars mark repeats."""
    text = " ".join(text.replace("\N{NO-BREAK SPACE}", " ").split())
    text = _SLASHED.sub(lambda found: _SIGN_OF[found[0]], text)
    text = _INCHES.sub(lambda found: _length(found[1], "in"), text)
    text = _MEASURE.sub(lambda found: _length(found[1], found[2]), text)
    text = re.sub(r"(?<=\d)[–-](?=\d)", " to ", text)
    text = " ".join(_stars(_brackets(text) if is_row else text).split())
    text = _written_out(text, terms)
    text = _FRACTION.sub(lambda found: number_aloud(found[0]), text)
    return _tidy(text)


def lists_aloud(text: str, names: Sequence[str]) -> str:
    """A sentence whose printed size lists name the size of each value."""

    def written_out(found: re.Match[str]) -> str:
        values = re.findall(rf"{_NUMBER}|–", found[0])
        return each_size(names, values) if len(values) == len(names) else found[0]

    return _LIST.sub(written_out, text) if len(names) > 1 else text


def _length(number: str, unit: str) -> str:
    low, dash, high = number.replace("-", "–").partition("–")
    return f"{number_aloud(low)} to {in_unit(high, unit)}" if dash else in_unit(number, unit)


def _brackets(text: str) -> str:
    """Remarks between commas; groups of stitches with a word where they begin and end."""
    text = _COUNTS_AS.sub(r", \1,", text)
    text = re.sub(r"[(\[{](?=[^()\[\]{}:]*(?:,|\d)[^()\[\]{}:]*[)\]}])", " begin group: ", text)
    text = re.sub(r"(?<=[^\s(\[{])[)\]}]", ", end group,", text) if "begin group" in text else text
    return re.sub(r"[()\[\]{}]", " ", text)


def _stars(text: str) -> str:
    """`*` at the start of a repeat and the place a row goes back to."""
    for sign, name in (("***", "triple star"), ("**", "double star"), ("*", "star")):
        text = re.sub(rf" ?(?<!\*){re.escape(sign)}(?!\*)", f" {name}§ ", text)
    text = re.sub(r"\b(from|to|between|and|at) ((?:first |second |last )?(?:\w+ )?star)§", r"\1 the \2 ", text)
    text = re.sub(r"§", ":", text)
    return re.sub(r"\bstar:\s*(?=[,.;])", "star", text)


def _written_out(text: str, terms: Terms) -> str:
    """Every stitch and abbreviation in full, in one pass."""
    pieces = _PIECE.findall(text)
    out: list[str] = []
    at = 0
    while at < len(pieces):
        said, used = _said(pieces, at, terms)
        out.append(said)
        at += used
    return "".join(out)


def _said(pieces: list[str], at: int, terms: Terms) -> tuple[str, int]:
    word = pieces[at]
    if not word[0].isalnum():
        return word, 1
    words = [piece for piece in pieces[at : at + _LONGEST] if not piece.isspace()]
    named = longest_stitch(words, terms)
    if named is not None:
        stitch, many = named
        used = pieces_of(pieces, at, many)
        written = "".join(pieces[at : at + used])
        return _like(written, _stitch(written, stitch.full_name(terms), stitch.abbreviation(terms))), used
    return _like(word, _word(word, terms)), 1


def _stitch(written: str, full: str, short: str) -> str:
    """The full name, in the plural where the written one is."""
    level = written.casefold()
    if full.casefold() in (level, level.removesuffix("s"), level.removesuffix("es")):
        return written
    is_plural = level.endswith("s") and not short.casefold().endswith("s") and level != short.casefold()
    return _plural(full) if is_plural else full


def _word(word: str, terms: Terms) -> str:
    known = _meanings(terms)
    for form in (word, word[:1].lower() + word[1:]):
        if form in known:
            return known[form]
        if form.endswith("s") and form[:-1] in known:
            return _plural(known[form[:-1]])
    return _hyphened(word, terms) if "-" in word else word


def _hyphened(word: str, terms: Terms) -> str:
    """`ch-2` as `chain-2`, `3-dc` as `3-double-crochet`, `V-st` as `V-stitch`."""
    parts = []
    for part in word.split("-"):
        named = longest_stitch([part], terms) if part.isalpha() else None
        said = named[0].full_name(terms) if named else _word(part, terms) if part.isalpha() else part
        parts.append(said.replace(" ", "-") if said != part else part)
    return "-".join(parts)


@cache
def _meanings(terms: Terms) -> Mapping[str, str]:
    known = {
        short: each.means(terms).replace("begin or ", "")
        for short, each in abbreviations().items()
        if len(short) > 1 and not short.endswith("-")
    }
    return known | {**_WORDS, "ch": "chain", "tch": "turning chain", "t-ch": "turning chain"}


def _plural(words: str) -> str:
    return words + ("es" if words.endswith(("s", "x", "ch", "sh")) else "s")


def _like(model: str, words: str) -> str:
    is_capital = model[:1].isupper() and not model[1:2].isupper()  # a word at the start of a sentence, no FPdc
    return words[:1].upper() + words[1:] if is_capital and words[:1].islower() else words


_TIDY: tuple[tuple[str, str | Callable[[re.Match[str]], str]], ...] = (
    (r"\s+", " "),
    (r"\s+([,.;:])", r"\1"),
    (r"([,;:])(?:\s*,)+", r"\1"),
    (r",\s*;", ";"),
    (r"([,;:])\s*\.", "."),
    (r": ,", ":"),
    (r"\s=\s", " equal "),
    (r"(?<=\w) / (?=\w)", " or "),
    (r"(?<=\d)\s*%", " percent"),
    (r"(?<=\w) \+ (?=\w)", " plus "),
)


def _tidy(text: str) -> str:
    for found, instead in _TIDY:
        text = re.sub(found, instead, text)
    return text.strip(" ,")
