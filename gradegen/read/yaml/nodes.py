"""A YAML file as a tree of what was written: every value is text and knows its place."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from gradegen.findings import Place, Written

Style = Literal["plain", "single", "double", "literal", "folded"]


@dataclass(frozen=True, slots=True)
class Scalar:
    """One text, as its reader sees it (`no`, `12:30` and `010` stay as written); `place` covers quotes too."""

    written: Written
    style: Style
    place: Place = field(compare=False)

    @property
    def text(self) -> str:
        """The text without the line end that a block of lines leaves behind."""
        return self.written.text.rstrip("\n")

    @property
    def trimmed(self) -> Written:
        """The text without that last line end, still knowing its places."""
        return self.written.part(0, len(self.text))

    @property
    def is_empty(self) -> bool:
        """True when nothing was written after the colon or dash."""
        return self.style == "plain" and not self.written.text


@dataclass(frozen=True, slots=True)
class Listing:
    """Items under dashes or between square brackets."""

    items: tuple[Node, ...]
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class Entry:
    """One `key: value`."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True)
class Block:
    """Keys with their values, in the order written; no key stands twice."""

    entries: tuple[Entry, ...]
    place: Place = field(compare=False)

    @property
    def head(self) -> Place:
        """The first key, to point at the block as a whole."""
        return self.entries[0].key.place if self.entries else self.place


Node = Scalar | Listing | Block


def head_of(node: Node) -> Place:
    """A short place that stands for the whole node."""
    if isinstance(node, Block):
        return node.head
    if isinstance(node, Listing) and node.items and node.place.line != node.place.end_line:
        return head_of(node.items[0])
    return node.place
