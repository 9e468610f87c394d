"""Sentences of a pattern with their size lists and sums put in for the sizes that are printed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Text
from gradegen.design.rows import Listed
from gradegen.numbers.exact import mixed_text, with_minus
from gradegen.write.page.typeset import NARROW, hyphened_words, typeset
from gradegen.write.voice.lists import each_length, each_size
from gradegen.write.words.fold import fold
from gradegen.write.words.marks import marks_of
from gradegen.write.words.print_numbers import LengthStyle, lengths_text
from gradegen.write.words.sums import worth

Look = Literal["", "whole", "count", "count whole", "mark", "count mark", "blank"]


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a sentence; "whole" must not break over a line, "count" is the count a row ends with.

    "mark": the mark of a size before its value.
    """

    text: str
    look: Look = ""
    link: str = ""


Phrase = tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Printing:
    """What every sentence needs to know: all sizes of the pattern, those printed, and how lengths are shown.

    `columns`: the most sizes one table may show (None: all). `is_spoken`: size lists name the size of each value.
    """

    all_sizes: tuple[GradedSize, ...]
    sizes: tuple[GradedSize, ...]
    style: LengthStyle
    columns: int | None = None
    is_spoken: bool = False

    @property
    def is_one_size(self) -> bool:
        """True for the pages of one size, and for a pattern that has only one."""
        return len(self.sizes) == 1

    @property
    def is_some_sizes(self) -> bool:
        """True where several sizes are printed, but not all of the pattern."""
        return 1 < len(self.sizes) < len(self.all_sizes)

    def marks_of(self, sizes: Sequence[GradedSize]) -> tuple[str, ...]:
        """The marks of sizes in lists; () in large print and for a voice, which have none."""
        return () if self.columns is not None or self.is_spoken else marks_of(self.all_sizes, sizes)

    def tables(self) -> tuple[tuple[GradedSize, ...], ...]:
        """The printed sizes as they are shared out over tables."""
        many = self.columns or len(self.sizes)
        return tuple(self.sizes[at : at + many] for at in range(0, len(self.sizes), many))


def plain(text: str) -> Phrase:
    """A sentence without any size list."""
    return tuple(_plain_parts(typeset(text), counts=False))


def phrase(text: Text, printing: Printing) -> Phrase:
    """A stretch of prose with its lists and measures put in."""
    return sentence(text.text, text.lists, printing, printing.sizes)


def sentence(
    text: str, lists: Sequence[Listed], printing: Printing, sizes: Sequence[GradedSize], count_from: int | None = None
) -> Phrase:
    """Text with its lists put in for `sizes`; from `count_from` on it is the count of a row."""
    cuts = [listed for listed in sorted(lists, key=lambda each: each.start) if listed.end <= len(text)]
    parts: list[Part] = []
    at, last = 0, ""
    for listed in cuts:
        counts = count_from is not None and listed.start >= count_from
        here = list(_listed(text, listed, printing, sizes, counts))
        between = text[at : listed.start]
        if between in ("-", "–") and ("(" in last or len(here) > 1):
            parts.append(Part(" to ", _look(False, counts)))
        else:
            parts += _stretch(text, at, listed.start, count_from)
        parts += here
        at, last = listed.end, here[-1].text if here else ""
    parts += _stretch(text, at, len(text), count_from)
    return _joined(parts)


def _stretch(text: str, start: int, end: int, count_from: int | None) -> Iterator[Part]:
    split = end if count_from is None else min(max(count_from, start), end)
    yield from _plain_parts(text[start:split], counts=False)
    yield from _plain_parts(text[split:end], counts=True)


def _plain_parts(text: str, counts: bool) -> Iterator[Part]:
    at = 0
    for start, end in hyphened_words(text):
        yield Part(_one_blank(text[at:start]), _look(False, counts))
        yield Part(text[start:end], _look(True, counts))
        at = end
    yield Part(_one_blank(text[at:]), _look(False, counts))


def _one_blank(text: str) -> str:
    """Text whose lines were broken in the file, on one line."""
    return re.sub(r"[ \t\r\n]+", " ", text)


def _look(is_whole: bool, counts: bool) -> Look:
    if counts:
        return "count whole" if is_whole else "count"
    return "whole" if is_whole else ""


def _listed(text: str, listed: Listed, printing: Printing, sizes: Sequence[GradedSize], counts: bool) -> Iterator[Part]:
    values = values_of(listed, printing, sizes)
    if values is None:
        yield Part(text[listed.start : listed.end], _look(True, counts))
        return
    if printing.is_spoken:
        yield Part(spoken_list(listed, values, printing, sizes), _look(False, counts))
        return
    marks = printing.marks_of(sizes)
    if marks and not isinstance(values, str) and len(set(values)) > 1:
        yield from _marked(values, marks, counts)
        return
    pieces = (values,) if isinstance(values, str) else fold(values)
    for at, piece in enumerate(pieces):
        if at:
            yield Part(NARROW if at == 1 else " ", _look(False, counts))
        yield from _pieces(piece, counts)


def _marked(values: Sequence[str], marks: Sequence[str], counts: bool) -> Iterator[Part]:
    """The list with every size's mark before its value; a bracket group cannot break, for it has no plain blank."""
    at = 0
    for group, piece in enumerate(fold(values)):
        words = piece.split(", ")
        if group:
            yield Part(NARROW if group == 1 else " ", _look(False, counts))
        for place, word in enumerate(words):
            opens = "(" if word.startswith("(") else ""
            yield Part((f",{NARROW}" if place else "") + opens, _look(True, counts))
            yield Part(marks[at], "count mark" if counts else "mark")
            yield Part(word.removeprefix("("), _look(True, counts))
            at += 1


def _pieces(piece: str, counts: bool) -> Iterator[Part]:
    """A bracket group whole; lengths in both units split where they may break."""
    for at, words in enumerate(piece.split(" (")):
        if at:
            yield Part(" ", _look(False, counts))
        text = ("(" if at else "") + words
        yield Part(text, _look(" " in text or "(" in text, counts))


def spoken_list(listed: Listed, values: tuple[str, ...] | str, printing: Printing, sizes: Sequence[GradedSize]) -> str:
    """`size S: 18; size M: 20`, in brackets of its own."""
    names = [size.name for size in sizes]
    if isinstance(values, tuple):
        return each_size(names, values)
    worths = [worth(listed.formula, size) for size in sizes] if listed.formula else []
    return each_length(names, [each.number for each in worths if each is not None], printing.style)


def values_of(listed: Listed, printing: Printing, sizes: Sequence[GradedSize]) -> tuple[str, ...] | str | None:
    """One printed value per size, a ready text for a length, or None when nothing can be put in."""
    if listed.formula is None:
        return _literal(listed.values, printing.all_sizes, sizes)
    worths = [worth(listed.formula, size) for size in sizes]
    known = [each for each in worths if each is not None]
    if not known or len(known) != len(worths):
        return None
    if known[0].is_length:
        return lengths_text([each.number for each in known], printing.style)
    return tuple(with_minus(mixed_text(each.number)) for each in known)


def _literal(
    values: Sequence[str], all_sizes: Sequence[GradedSize], sizes: Sequence[GradedSize]
) -> tuple[str, ...] | None:
    if len(values) == len(all_sizes):
        return tuple(values[size.index] for size in sizes)
    return tuple(values) if len(values) == len(sizes) else None


def _joined(parts: Sequence[Part]) -> Phrase:
    """Neighbours of the same look made one, so that spacing and dashes are set across what was cut."""
    merged: list[Part] = []
    for part in parts:
        if not part.text:
            continue
        if merged and merged[-1].look == part.look and not part.look.endswith(("whole", "mark")):
            merged[-1] = Part(merged[-1].text + part.text, part.look)
        else:
            merged.append(part)
    return _set(merged)


def _set(parts: Sequence[Part]) -> Phrase:
    """The whole sentence typeset, then cut again at the same signs: the typesetter changes none of the lengths."""
    text = typeset("".join(part.text for part in parts))
    done, at = [], 0
    for part in parts:
        done.append(Part(text[at : at + len(part.text)], part.look))
        at += len(part.text)
    return tuple(done)
