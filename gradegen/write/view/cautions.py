"""The cautions of a document: the designer's own, then those that follow from who it is for and what it is."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from itertools import pairwise

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern
from gradegen.trade.cautions import cautions_for, cautions_rule
from gradegen.write.words.phrases import Phrase, Printing, phrase, plain


def caution_sentences(pattern: Pattern, printing: Printing, texts: Iterable[str]) -> tuple[Phrase, ...]:
    """The designer's cautions, then the usual ones for the printed sizes."""
    own = tuple(phrase(text, printing) for text in pattern.cautions)
    known = cautions_for(_wearers(pattern, printing.sizes), "\n".join(texts), _kinds(pattern))
    usual = tuple(plain(caution.text) for caution in known)
    return (*own, *usual)


def cautions_close() -> Phrase:
    """The sentence that hands the decision to local rules and qualified people."""
    return plain(cautions_rule())


def _wearers(pattern: Pattern, sizes: Sequence[GradedSize]) -> tuple[str, ...]:
    if pattern.wearer is not None:
        return (pattern.wearer,)
    return tuple(dict.fromkeys(size.wearer for size in sizes if size.wearer))


def _kinds(pattern: Pattern) -> tuple[str, ...]:
    """What the thing can be called: the words, and pairs of words, of its title and its pieces' names."""
    words: list[str] = []
    for name in (pattern.title.text, *(piece.name.text for piece in pattern.pieces)):
        single = re.findall(r"[a-z]+", name.casefold())
        pairs = [f"{left} {right}" for left, right in pairwise(single)]
        words += single + pairs
    return tuple(dict.fromkeys([*words, *(word.removesuffix("s") for word in words)]))
