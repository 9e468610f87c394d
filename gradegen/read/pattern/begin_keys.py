"""The key `worked on` of a piece: what an earlier piece left, in the trade's words."""

from __future__ import annotations

import re

from gradegen.design.begin import Begin, Left, Start
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.yaml.fields import Field, Kind, nearest, wrong_kind
from gradegen.read.yaml.nodes import Node, Scalar

BEGIN_UNREADABLE = Rule(
    "begin-unreadable", Severity.ERROR, "file format", "What this piece is worked on could not be read."
)
PIECE_UNKNOWN = Rule("piece-unknown", Severity.ERROR, "file format", "There is no earlier piece of this name.")
_EXAMPLE = "held stitches of Body"
_STS = r"(?:stitches|sts)"
_WHAT: dict[Left, str] = {
    "held": rf"{_STS}\s+(?:held|left|skipped|unworked|on\s+hold)|(?:held|unworked|skipped)\s+{_STS}",
    "end": r"(?:end|last\s+(?:row|rnd|round)|top)",
    "foundation": r"foundation(?:\s+(?:chain|ch))?|(?:other|opposite)\s+side(?:\s+of\s+the\s+(?:foundation|ch\w*))?",
}
_START: dict[Start, str] = {
    "middle": r"(?:middle|cent(?:er|re))\s+of\s+(?:the\s+)?underarm",
    "underarm": r"(?:beginning\s+of\s+)?(?:the\s+)?underarm",
    "stitches": rf"(?:the\s+)?(?:held\s+)?{_STS}",
}
_NTH = {"first": 1, "1st": 1, "second": 2, "2nd": 2, "third": 3, "3rd": 3, "fourth": 4, "4th": 4}
_BEGIN = re.compile(
    rf"(?:the\s+)?(?:(?P<nth>{'|'.join(_NTH)})\s+)?"
    + rf"(?:{'|'.join(f'(?P<{what}>{words})' for what, words in _WHAT.items())})"
    + r"(?:\s+(?:at|in)\s+(?P<row>[^,]+?))?\s+(?:of|in|from)\s+(?:the\s+)?(?P<piece>[^,]+?)"
    + rf"(?:,?\s+from\s+(?:the\s+)?(?:{'|'.join(f'(?P<at_{start}>{words})' for start, words in _START.items())}))?\s*",
    re.IGNORECASE,
)


def read_begin(written: Written) -> tuple[Begin | None, tuple[Finding, ...]]:
    """`held stitches of Body, from the middle of the underarm`, `end of Yoke`, `foundation of Yoke`."""
    found = _BEGIN.fullmatch(written.text.strip())
    if found is None:
        message = "A piece is worked on the held stitches, the end or the foundation of an earlier piece."
        return None, (BEGIN_UNREADABLE.at(written.place(), message, hint=_EXAMPLE),)
    what = next(one for one in _WHAT if found[one])
    start = next((one for one in _START if found[f"at_{one}"]), "")
    nth = _NTH[found["nth"].lower()] if found["nth"] else None
    return Begin(what, found["piece"], found["row"] or "", nth, start, place=written.place()), ()  # type: ignore[arg-type]


def _read(node: Node) -> tuple[Begin | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, f"words such as {_EXAMPLE}"),)
    return read_begin(node.trimmed)


BEGIN: Kind[Begin] = Kind(f"words such as {_EXAMPLE}", _read, {"type": "string", "examples": [_EXAMPLE]})
WORKED_ON = Field(
    "worked on",
    BEGIN,
    "What an earlier piece left: its held stitches, its end, or the other side of its foundation. Without it, a piece "
    "that makes no chain of its own goes on from the piece above.",
    example=_EXAMPLE,
)


def unknown_piece(begin: Begin, earlier: tuple[str, ...]) -> Finding | None:
    """The finding for a piece that is not among the earlier ones; None where it is."""
    if begin.piece.casefold() in {name.casefold() for name in earlier}:
        return None
    guess = nearest(begin.piece, earlier)
    hint = f"Did you mean {guess}?" if guess else f"Earlier pieces are {', '.join(earlier)}." if earlier else None
    return PIECE_UNKNOWN.at(begin.place, f"No piece named {begin.piece} is worked before this one.", hint=hint)
