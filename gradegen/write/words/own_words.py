"""A row in the words of one size: what other sizes do is left out, and what only some do is said as if all did."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from gradegen.design.rows import Label, Listed, Row, SizesOnly
from gradegen.write.notation.style import listing
from gradegen.write.words.phrases import Printing

_REMARK = re.compile(
    r"(?:for\s+)?(?:the\s+)?(?:(?:all\s+)?other\s+|larger\s+|smaller\s+|remaining\s+)?sizes?\b", re.IGNORECASE
)
_AFTER = re.compile(r"\s*[;,.]?\s*")


@dataclass(frozen=True, slots=True)
class Change:
    """A stretch of the row's text and what stands there for one size."""

    start: int
    end: int
    words: str


def in_own_words(row: Row, printing: Printing) -> Row:
    """The row as its one size reads it, or as a chosen few do; for all sizes it stays as it was written."""
    if printing.is_some_sizes:
        return in_few_words(row, [size.name for size in printing.sizes], printing)
    if not printing.is_one_size:
        return in_spoken_words(row, printing) if printing.is_spoken else row
    size = printing.sizes[0]
    changes = [
        Change(sentence.start, sentence.end, sentence.each[size.index])
        for sentence in row.sentences
        if size.index < len(sentence.each)
    ]
    changes += _passages(row, size.name)
    return _changed(row, sorted(changes, key=lambda change: change.start)) if changes else row


def in_spoken_words(row: Row, printing: Printing) -> Row:
    """The row with what a shaping schedule says size by size: a voice cannot keep several lists apart."""
    changes = [
        Change(sentence.start, sentence.end, _each(sentence.each, printing))
        for sentence in row.sentences
        if len(sentence.each) == len(printing.all_sizes)
    ]
    return _changed(row, changes) if changes else row


def in_few_words(row: Row, names: Sequence[str], printing: Printing) -> Row:
    """The row without the sizes that are not printed: remarks for which sizes name only those that are."""
    changes = [
        Change(sentence.start, sentence.end, _each(sentence.each, printing))
        for sentence in row.sentences
        if len(sentence.each) == len(printing.all_sizes)
    ]
    changes += _few_passages(row, names)
    remark = size_remark(printing).match(row.text, 0) if row.sizes is not None else None
    if remark is not None:
        here = tuple(name for name in row.sizes or () if name in names)
        said = None if len(here) == len(names) else f"{_sizes(here)} only"
        change = Change(*remark.span("remark"), "") if said is None else Change(*remark.span("names"), said)
        changes.append(change)
        row = replace(row, sizes=None if said is None else here, label=_label_with(row, change))
    return _changed(row, sorted(changes, key=lambda each: each.start)) if changes else row


def _label_with(row: Row, change: Change) -> Label:
    """The row's label, with the change in it where it stands there."""
    text = row.label.text
    is_inside = row.text.startswith(text) and change.end <= len(text)
    return replace(row.label, text=text[: change.start] + change.words + text[change.end :]) if is_inside else row.label


def _each(each: Sequence[str], printing: Printing) -> str:
    """What a shaping schedule says in the printed sizes: once where they agree, else size by size."""
    said: dict[str, list[str]] = {}
    for size in printing.sizes:
        said.setdefault(each[size.index], []).append(size.name)
    if len(said) == 1:
        return next(iter(said))
    return "; ".join(f"{_sizes(names)}: {words[:1].lower()}{words[1:]}" for words, names in said.items())


def _sizes(names: Sequence[str]) -> str:
    return f"{'size' if len(names) == 1 else 'sizes'} {listing(names, ' and ')}"


def _few_passages(row: Row, names: Sequence[str]) -> Iterator[Change]:
    """Passages for some sizes: gone where no printed size works them, bare where all do, else with those that do."""
    passages = [step for step in row.steps if isinstance(step, SizesOnly)]
    named = {name for passage in passages for name in passage.sizes}
    for passage in passages:
        start, body, end = _passage_spans(row, passage)
        remark = _REMARK.match(row.text, start) if start is not None else None
        if start is None or end is None or remark is None:
            continue
        here = [name for name in names if name in (passage.sizes or set(names) - named)]
        if not here:
            yield Change(start, _after(row.text, end), "")
        elif body is not None and start < body <= end:
            only = row.text[start] == "F" or row.text[start] == "f"
            said = f"{'For ' if only else ''}{_sizes(here)} only, "
            yield Change(start, body, "" if len(here) == len(names) else said if only else said.capitalize())


def _passage_spans(row: Row, passage: SizesOnly) -> tuple[int | None, int | None, int | None]:
    """Where the passage starts in the row's text, where its instruction starts, and where it ends."""
    place, first = passage.place, passage.body[0].place if passage.body else None
    return (
        _offset(row, place.line, place.column),
        _offset(row, first.line, first.column) if first is not None else None,
        _offset(row, place.end_line, place.end_column),
    )


def size_remark(printing: Printing) -> re.Pattern[str]:
    """`(M, L only)`, `[sizes 2X and 3X only]`, `Sizes S and M only: ` in a label or at the start of a row."""
    name = "|".join(sorted((re.escape(size.name) for size in printing.all_sizes), key=len, reverse=True))
    joint = r"(?:\s*,\s*(?:and\s+)?|\s+and\s+|\s*&\s*|\s+to\s+|\s*[-–]\s*)"
    names = rf"(?P<names>(?:for\s+)?(?:sizes?\s+)?(?:{name})(?:{joint}(?:{name}))*\s+only)"
    return re.compile(rf".*?(?P<remark>\s*(?:[(\[]|\b){names}(?:[)\]]|\s*[:,.]\s*))", re.IGNORECASE | re.DOTALL)


def _passages(row: Row, size: str) -> Iterator[Change]:
    """What `for sizes M and L only, ...` becomes: nothing, or what follows the remark."""
    passages = [step for step in row.steps if isinstance(step, SizesOnly)]
    named = {name for passage in passages for name in passage.sizes}
    for passage in passages:
        start, body, end = _passage_spans(row, passage)
        if start is None or end is None or not _REMARK.match(row.text, start):
            continue
        if size in (passage.sizes or {size} - named):
            if body is not None and start < body <= end:
                yield Change(start, body, "")
        else:
            yield Change(start, _after(row.text, end), "")


def _after(text: str, end: int) -> int:
    """Past the sign and the blank that part a passage from what follows; the last full stop of the text stays."""
    found = _AFTER.match(text, end)
    return found.end() if found and found.end() < len(text) else end


def _offset(row: Row, line: int, column: int) -> int | None:
    """Where a place of the file stands in the row's text; None on a later line, where the text no longer shows it."""
    if line != row.place.line:
        return None
    offset = column - row.place.column
    return offset if 0 <= offset <= len(row.text.split("\n", 1)[0]) else None


def _changed(row: Row, changes: Sequence[Change]) -> Row:
    pieces: list[str] = []
    lists: list[Listed] = []
    at = moved = 0
    for change in [*changes, Change(len(row.text), len(row.text), "")]:
        if change.start < at:
            continue
        kept = [each for each in row.lists if at <= each.start and each.end <= change.start]
        lists += [replace(each, start=each.start + moved, end=each.end + moved) for each in kept]
        pieces += [row.text[at : change.start], change.words]
        moved += len(change.words) - (change.end - change.start)
        at = change.end
    return replace(row, text="".join(pieces), lists=tuple(lists), sentences=())
