"""YAML text to a tree that knows its places, built from the event stream alone: nothing is expanded or guessed.

Aliases, anchors, tags, deep nesting and huge files are refused at the first event that shows them, so a hostile file
costs no more than reading that far.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

import yaml

from gradegen.findings import Finding, Place, Rule, Severity, Written
from gradegen.read.files import FILE_EMPTY, FILE_TOO_LARGE
from gradegen.read.yaml.mistakes import DEEPEST, explain_yaml_error, find_odd_sign, nested_too_deeply
from gradegen.read.yaml.nodes import Block, Entry, Listing, Node, Scalar
from gradegen.read.yaml.scalars import STYLES, place_scalar

MOST_EVENTS = 50_000
LONGEST_TEXT = 100_000  # signs of a quoted or folded text; one after a | may be longer

TEXT_TOO_LONG = Rule("text-too-long", Severity.ERROR, "file format", "One text is longer than any pattern needs.")

KEY_REPEATED = Rule("key-repeated", Severity.ERROR, "file format", "One key stands twice in the same block.")
KEY_NOT_A_NAME = Rule("key-not-a-name", Severity.ERROR, "file format", "A key is a list or a block, not a name.")
YAML_SHORTHAND = Rule("yaml-shorthand", Severity.ERROR, "file format", "A YAML anchor, alias or tag is used.")
SECOND_DOCUMENT = Rule("second-document", Severity.ERROR, "file format", "The file holds several YAML documents.")


@dataclass(slots=True)
class _Open:
    """A block or listing whose end has not come yet."""

    start: Any
    is_block: bool
    items: list[Node] = field(default_factory=list)
    entries: list[Entry] = field(default_factory=list)
    seen: dict[str, Scalar] = field(default_factory=dict)
    key: Scalar | None = None
    key_is_bad: bool = False


def read_yaml(source: Written) -> tuple[Node | None, tuple[Finding, ...]]:
    """The one document of a file as a tree; None when the file can't be read to its end."""
    if odd := find_odd_sign(source):
        return None, (odd,)
    builder = _Builder(source)
    try:
        for event in yaml.parse(source.text, Loader=_loader()):
            if refused := builder.take(event):
                return None, (*builder.findings, refused)
    except yaml.YAMLError as problem:
        return None, (*builder.findings, explain_yaml_error(problem, source))
    if builder.root is None or (isinstance(builder.root, Scalar) and builder.root.is_empty):
        place = Place(source.file, 1, 1, 1, 1)
        return None, (FILE_EMPTY.at(place, "This file holds no keys.", hint="Start one with: gradegen new"),)
    return builder.root, tuple(builder.findings)


@lru_cache(maxsize=1)
def _loader() -> Any:
    return getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def _between(file: str, start: Any, end: Any) -> Place:
    """The place between two of YAML's marks, which count from 0."""
    return Place(file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)


class _Builder:
    """Takes events one by one; `root` is the tree when they are through."""

    def __init__(self, source: Written) -> None:
        self.source = source
        self.root: Node | None = None
        self.findings: list[Finding] = []
        self._open: list[_Open] = []
        self._events = 0

    def take(self, event: Any) -> Finding | None:
        """Builds on; a finding when the file must not be read further."""
        self._events += 1
        if refused := self._refuse(event):
            return refused
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.CollectionStartEvent):
            self._open.append(_Open(event.start_mark, isinstance(event, yaml.MappingStartEvent)))
        elif isinstance(event, yaml.CollectionEndEvent):
            self._close(event)
        return None

    def _refuse(self, event: Any) -> Finding | None:
        if self._events > MOST_EVENTS:
            return FILE_TOO_LARGE.at(self._place(event), "This file has more values than any pattern.")
        if isinstance(event, yaml.NodeEvent):
            if isinstance(event, yaml.CollectionStartEvent) and len(self._open) >= DEEPEST:
                return nested_too_deeply(self._place(event))
            if event.anchor or getattr(event, "tag", None):
                return self._refuse_shorthand(event)
            if isinstance(event, yaml.ScalarEvent) and event.style != "|":
                return self._refuse_length(event)
        elif isinstance(event, yaml.DocumentStartEvent) and self.root is not None:
            message = "A second document begins here; one file holds one."
            return SECOND_DOCUMENT.at(self._place(event), message, hint="Take the line --- out, or make two files.")
        return None

    def _refuse_shorthand(self, event: Any) -> Finding | None:
        start = event.start_mark.index
        quote = "If it belongs to the text, put the whole text in quotes."
        if isinstance(event, yaml.AliasEvent):
            return YAML_SHORTHAND.at(
                self._word(start), f"*{event.anchor} points at another value (a YAML alias); that is not used here.",
                hint=f"Write the value out again. {quote}",
            )  # fmt: skip
        if event.anchor:
            message = f"&{event.anchor} names a value (a YAML anchor); that is not used here."
            return YAML_SHORTHAND.at(self._word(start), message, hint=f"Take it out. {quote}")
        if self.source.text.startswith("!", start):
            message = "A word with ! in front (a YAML tag) is not used here."
            return YAML_SHORTHAND.at(self._word(start), message, hint=f"Take it out. {quote}")
        return None

    def _refuse_length(self, event: Any) -> Finding | None:
        first, last = event.start_mark, event.end_mark
        if last.index - first.index <= LONGEST_TEXT or (not event.style and first.line == last.line):
            return None
        message = "This text is longer than any pattern needs."
        return TEXT_TOO_LONG.at(
            self._place(event), message, hint="Look for a quote that is not closed where it should be."
        )

    def _scalar(self, event: Any) -> None:
        first, last, file = event.start_mark, event.end_mark, self.source.file
        style = STYLES[event.style]
        if style == "plain" and first.line == last.line:
            written = Written(event.value, file, ((0, first.line + 1, first.column + 1),))
        else:
            written = place_scalar(self.source, event.value, style, first.index, last.index)
        is_block = style in ("literal", "folded")
        self._add(Scalar(written, style, written.place() if is_block else _between(file, first, last)))

    def _close(self, event: Any) -> None:
        done = self._open.pop()
        last = done.entries[-1].value if done.entries else done.items[-1] if done.items else None
        is_flow = self.source.text[event.start_mark.index : event.end_mark.index] in ("]", "}")
        place = _between(self.source.file, done.start, event.end_mark if is_flow or last is None else done.start)
        if not is_flow and last is not None:
            place = Place(place.file, place.line, place.column, last.place.end_line, last.place.end_column)
        self._add(Block(tuple(done.entries), place) if done.is_block else Listing(tuple(done.items), place))

    def _add(self, node: Node) -> None:
        if not self._open:
            self.root = node
        elif not self._open[-1].is_block:
            self._open[-1].items.append(node)
        elif self._open[-1].key is None and not self._open[-1].key_is_bad:
            self._key(self._open[-1], node)
        else:
            self._value(self._open[-1], node)

    def _key(self, block: _Open, node: Node) -> None:
        if not isinstance(node, Scalar):
            block.key_is_bad = True
            message = "A list or block stands where a key should be."
            hint = "If the brackets belong to the text, put the whole text in quotes."
            self.findings.append(KEY_NOT_A_NAME.at(node.place, message, hint=hint))
            return
        block.key = node
        first = block.seen.setdefault(node.written.text, node)
        if first is not node:
            message = f"{node.written.text or 'This key'} stands here twice."
            hint = "Keep one of them; a piece of text with a colon in it needs quotes."
            self.findings.append(KEY_REPEATED.at(node.place, message, hint=hint, see_also=((first.place, "first"),)))

    def _value(self, block: _Open, node: Node) -> None:
        key, block.key, block.key_is_bad = block.key, None, False
        if key is not None and block.seen[key.written.text] is key:
            block.entries.append(Entry(key, node))

    def _place(self, event: Any) -> Place:
        return _between(self.source.file, event.start_mark, event.start_mark)

    def _word(self, start: int) -> Place:
        text = self.source.text
        end = start
        while end < len(text) and text[end] not in " \t\n,]}":
            end += 1
        return self.source.place(start, end)
