"""A row in the words of one size: what other sizes do is left out, and what only some do is said as if all did."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from gradegen.design.rows import Listed, Row, SizesOnly
from gradegen.write.phrases import Printing

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
    """The row as its one size reads it; among many sizes it stays as it was written."""
    if not printing.is_one_size:
        return row
    size = printing.sizes[0]
    changes = [
        Change(sentence.start, sentence.end, sentence.each[size.index])
        for sentence in row.sentences
        if size.index < len(sentence.each)
    ]
    changes += _passages(row, size.name)
    return _changed(row, sorted(changes, key=lambda change: change.start)) if changes else row


def _passages(row: Row, size: str) -> Iterator[Change]:
    """What `for sizes M and L only, ...` becomes: nothing, or what follows the remark."""
    passages = [step for step in row.steps if isinstance(step, SizesOnly)]
    named = {name for passage in passages for name in passage.sizes}
    for passage in passages:
        start, end = (
            _offset(row, passage.place.line, passage.place.column),
            _offset(row, passage.place.end_line, passage.place.end_column),
        )
        if start is None or end is None or not _REMARK.match(row.text, start):
            continue
        if size in (passage.sizes or {size} - named):
            body = _offset(row, passage.body[0].place.line, passage.body[0].place.column) if passage.body else None
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
