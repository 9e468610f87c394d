"""Rows that stand under a line naming their sizes: `Sizes 8 and 10 only`, ... `All sizes`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.rows import Aside, Row, SizesOnly
from gradegen.read.notation.sizes.sizes_named import sizes_named
from gradegen.read.plain_text.headings import has_label
from gradegen.read.plain_text.lines import Line

_LONGEST = 60
_ALL = re.compile(r"\W*(?:continue\s+)?(?:(?:for|with|in)\s+)?(?:all|both)\s+(?:the\s+)?sizes\b", re.I)
_NAMED = re.compile(r"\bsizes?\b|\bonly\b|:\s*$", re.I)

Sizes = tuple[str, ...]


def sizes_of_lines(lines: Sequence[Line], sizes: Sizes) -> dict[int, Sizes]:
    """For the place in `lines` of each row that only some sizes work: those sizes."""
    found: dict[int, Sizes] = {}
    if len(sizes) < 2:
        return found
    for i, line in enumerate(lines):
        only = _only(line, sizes) if line.part == "rows" else None
        if only is not None:
            found.update(dict.fromkeys(range(i + 1, _end(lines, i, sizes)), only))
    return found


def rows_by_sizes(row: Row) -> list[Row]:
    """`For size M, rep Row 2 once more. For size L, twice more.`: a row for each; the others work none."""
    parts = [step for step in row.steps if not isinstance(step, Aside)]
    only = [step for step in parts if isinstance(step, SizesOnly) and step.sizes]
    if len(parts) < 2 or len(only) < len(parts) or row.stated or len({step.sizes for step in only}) < len(only):
        return [row]
    return [replace(row, steps=step.body, sizes=step.sizes) for step in only]


def _only(line: Line, sizes: Sizes) -> Sizes | None:
    """The sizes that a line names which says nothing else."""
    words = line.words.text.strip()
    if len(words) > _LONGEST or has_label(words) or not _NAMED.search(words):
        return None
    named = sizes_named(words, sizes)
    return named if named != sizes else None


def _end(lines: Sequence[Line], at: int, sizes: Sizes) -> int:
    """Where the rows under the sizes end: at the next line about sizes, else at a blank line, else after one row."""
    section = next(
        (i for i in range(at + 1, len(lines)) if (lines[i].part, lines[i].heading) != ("rows", lines[at].heading)),
        len(lines),
    )
    for i in range(at + 1, section):
        if _ALL.match(lines[i].words.text) or _only(lines[i], sizes) is not None:
            return i
    for i in range(at + 2, section):
        if _first_line(lines[i]) > _last_line(lines[i - 1]) + 1:
            return i
    return min(at + 2, section)


def _first_line(line: Line) -> int:
    return line.words.place().line


def _last_line(line: Line) -> int:
    return _first_line(line) + line.words.text.count("\n")
