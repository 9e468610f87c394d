"""Where every character of a YAML text stands in its file: plain, quoted, and blocks of lines."""

from __future__ import annotations

import re
from collections.abc import Iterator

from gradegen.findings import Written
from gradegen.read.yaml.nodes import Style

STYLES: dict[str | None, Style] = {
    None: "plain",
    "": "plain",
    "'": "single",
    '"': "double",
    "|": "literal",
    ">": "folded",
}

Stretch = tuple[str, int]  # a piece of the text, and the offset in the file of its first character

_BREAKS = re.compile(r"[ \t]*\n[ \t\n]*")
_ESCAPE = re.compile(r"\\(?:x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|\n[ \t]*|.)", re.DOTALL)
_NEXT = {
    "plain": re.compile(r"[^\n]*?(?=[ \t]*\n)|[^\n]+\Z"),
    "single": re.compile(r"[^'\n]*?(?=[ \t]*\n|')|[^'\n]+\Z"),
    "double": re.compile(r"[^\\\n]*?(?=[ \t]*\n|\\)|[^\\\n]+\Z"),
}
_ESCAPED = {
    "0": "\0", "a": "\a", "b": "\b", "t": "\t", "\t": "\t", "n": "\n", "v": "\v", "f": "\f", "r": "\r", "e": "\x1b",
    "N": "\x85", "_": "\xa0", "L": "\u2028", "P": "\u2029",
}  # fmt: skip


def place_scalar(source: Written, value: str, style: Style, start: int, end: int) -> Written:
    """`value` with a place for each character; `source.text[start:end]` is how the file writes it, quotes included."""
    raw = source.text[start:end]
    if style in ("single", "double"):
        stretches = list(_flow(raw[1:-1], start + 1, style))
    elif style == "plain":
        stretches = list(_flow(raw, start, style))
    elif style == "literal":
        stretches = list(_literal(raw, value, start))
    else:
        stretches = list(_folded(raw, value, start))
    if "".join(piece for piece, _ in stretches) != value:
        stretches = [(sign, start) for sign in value]
    return _joined(source, stretches, start)


def _joined(source: Written, stretches: list[Stretch], start: int) -> Written:
    anchors: list[tuple[int, int, int]] = []
    offset = 0
    for piece, spot in stretches:
        if piece:
            place = source.place(spot, spot)
            anchors.append((offset, place.line, place.column))
            offset += len(piece)
    if not anchors:
        place = source.place(start, start)
        anchors = [(0, place.line, place.column)]
    return Written("".join(piece for piece, _ in stretches), source.file, tuple(anchors))


def _flow(raw: str, base: int, style: str) -> Iterator[Stretch]:
    """Plain and quoted texts: one line end folds to a space, more of them to one fewer."""
    spot = 0
    while spot < len(raw):
        if breaks := _BREAKS.match(raw, spot):
            yield from _fold(breaks, base)
            spot = breaks.end()
        elif style == "single" and raw.startswith("''", spot):
            yield "'", base + spot
            spot += 2
        elif style == "double" and (escape := _ESCAPE.match(raw, spot)):
            yield _unescaped(escape.group()), base + spot
            spot = escape.end()
        else:
            words = _NEXT[style].match(raw, spot)
            stop = words.end() if words and words.end() > spot else spot + 1
            yield raw[spot:stop], base + spot
            spot = stop


def _fold(breaks: re.Match[str], base: int) -> Iterator[Stretch]:
    ends = [breaks.start() + at for at, sign in enumerate(breaks.group()) if sign == "\n"]
    if len(ends) == 1:
        yield " ", base + ends[0]
    for spot in ends[1:]:
        yield "\n", base + spot


def _unescaped(escape: str) -> str:
    sign = escape[1]
    if sign == "\n":
        return ""
    if sign in "xuU" and len(escape) > 2:
        code = int(escape[2:], 16)
        return chr(code) if code < 0x110000 else ""
    return _ESCAPED.get(sign, sign)


def _lines(raw: str, base: int) -> Iterator[Stretch]:
    """The lines below the `|` or `>` of a block, each with the offset it starts at."""
    spot = raw.find("\n") + 1
    while 0 < spot <= len(raw):
        stop = raw.find("\n", spot)
        yield raw[spot : len(raw) if stop < 0 else stop], base + spot
        spot = stop + 1


def _literal(raw: str, value: str, base: int) -> Iterator[Stretch]:
    """A `|` block: line k of the text is line k below the bar, less its indentation."""
    kept = value.split("\n")
    for number, (line, spot) in enumerate(_lines(raw, base)):
        if number >= len(kept) or not line.endswith(kept[number]):
            return
        inside = len(line) - len(kept[number])
        last = number == len(kept) - 1
        yield kept[number] + ("" if last else "\n"), spot + inside
        if last:
            return


def _folded(raw: str, value: str, base: int) -> Iterator[Stretch]:
    """A `>` block: each line's words are found again in the text, with the spaces or line ends that join them."""
    at = 0
    indent: int | None = None
    ends: list[int] = []
    for line, spot in _lines(raw, base):
        if indent is None and line.strip(" "):
            first = value.lstrip("\n")
            indent = len(line) - len(line.lstrip(" ")) - (len(first) - len(first.lstrip(" ")))
        words = line[indent or 0 :] if indent is not None else ""
        if words:
            for sign, end in _joints(value, at, ends, words):
                yield sign, end
                at += len(sign)
            yield words, spot + (indent or 0)
            at += len(words)
        ends.append(spot + len(line))
        if words:
            ends = ends[-1:]
    for number, sign in enumerate(value[at:]):
        yield sign, ends[min(number, len(ends) - 1)] if ends else base


def _joints(value: str, at: int, ends: list[int], words: str) -> Iterator[Stretch]:
    """The signs between the words before and these, each put on one of the line ends it came from."""
    gap = value.find(words, at) - at
    if value[at : at + max(gap, 0)].strip():
        return
    for number in range(max(gap, 0)):
        spare = len(ends) - gap
        yield value[at + number], ends[min(max(number + spare, 0), len(ends) - 1)]
