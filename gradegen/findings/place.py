"""Where something stands in a file; counting from 1 is decided here and nowhere else."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A stretch of one file: lines and columns count from 1, in characters; the end column is the one after."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Written:
    """A text as its reader sees it, and for every character of it the place in the file it came from.

    `anchors` holds (offset in text, line, column) for the start of every stretch that runs on one file line,
    in rising order, beginning at offset 0.
    """

    text: str
    file: str
    anchors: tuple[tuple[int, int, int], ...]

    @classmethod
    def plain(cls, text: str, file: str = "<row>", line: int = 1, column: int = 1) -> Written:
        """A text that stands in its file as it is: its first line at `line`, `column`, later lines at column 1."""
        anchors = [(0, line, column)]
        for offset, sign in enumerate(text):
            if sign == "\n":
                anchors.append((offset + 1, anchors[-1][1] + 1, 1))
        return cls(text, file, tuple(anchors))

    def _spot(self, offset: int) -> tuple[int, int]:
        start, line, column = self.anchors[bisect_right(self.anchors, (offset, 1 << 30, 0)) - 1]
        return line, column + offset - start

    def place(self, start: int = 0, end: int | None = None) -> Place:
        """The place of text[start:end]."""
        end = len(self.text) if end is None else end
        line, column = self._spot(start)
        end_line, end_column = self._spot(max(start, end - 1))
        return Place(self.file, line, column, end_line, end_column + (1 if end > start else 0))

    def part(self, start: int, end: int) -> Written:
        """text[start:end], every character still knowing its place."""
        line, column = self._spot(start)
        inside = [(offset - start, at, sign) for offset, at, sign in self.anchors if start < offset < end]
        return Written(self.text[start:end], self.file, ((0, line, column), *inside))
