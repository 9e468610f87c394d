"""Filet counted off without a word of explanation: `ch 5, 3 sp, 4 d c, 25 sp` in the usual mesh of the trade."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from gradegen.design.rows import Chain, Definition, Skip, Work
from gradegen.findings import Written
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.words.reading import plain
from gradegen.read.notation.words.row_names import RowNames

_OPEN, _SOLID = "ch 2, skip 2, dc in next", "dc in each of 3"  # usual filet; common practice, no source
_WORDS: Mapping[str, str] = {
    "open sp": _OPEN, "open mesh": _OPEN, "sp": _OPEN, "space": _OPEN,
    "solid mesh": _SOLID, "solid sp": _SOLID, "bl": _SOLID, "block": _SOLID,
}  # fmt: skip
_COUNTED = re.compile(
    r"(?<![-\w])\d+ (?:more )?((?:open|solid) (?:sp|mesh|space)|sp|space|bl|block)(?:e?s)?\b"
    r"(?= *(?:[,.;)*]|$| \d|across|over|on\b))",
    re.IGNORECASE,
)
_FEWEST = 2  # counted meshes that make a row filet


def implied_meshes(written: Written, names: RowNames) -> dict[str, Definition]:
    """What the counted spaces and blocks of a filet row stand for, where the pattern does not say it."""
    used = [found.group(1).lower() for found in _COUNTED.finditer(written.text)]
    if len(used) < _FEWEST:
        return {}
    words = _as_known(names)
    unknown = [name for name in dict.fromkeys(used) if names.stitch(name) is None]
    return {name: _usual(name, words.get(name, words["sp"]), written) for name in unknown}


def _as_known(names: RowNames) -> Mapping[str, str]:
    """The usual mesh, or the one a row has shown: `ch 3, skip 3, tr in next` makes a block of 4 tr."""
    for definition in names.definitions.values():
        match definition.steps:
            case (Chain() as chain, Skip() as skip, Work() as work) if (n := plain(chain.number)) is not None:
                width, post = plain(skip.into.number) or 1, work.makes[0].stitch
                open_ = f"ch {n}, skip {width}, {post} in next"
                return {
                    name: open_ if old == _OPEN else f"{post} in each of {width + 1}" for name, old in _WORDS.items()
                }
    return _WORDS


def _usual(name: str, words: str, written: Written) -> Definition:
    definition, _ = read_definition(name, Written.plain(words), RowNames(terms="US"))
    return replace(definition, in_passing=True, place=written.place(0, 0))
