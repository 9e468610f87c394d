"""What a form asks, as text inside the form, so that it can be merged without its pattern at hand; and read again."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from gradegen.design.testing import Asked, AskedGauge, AskedRow
from gradegen.read.forms.fields import CONTROL

_LONGEST = 200_000
_EXACT = re.compile(r"-?\d{1,15}(?:/\d{1,15})?")


def asked_text(asked: Asked) -> str:
    """What the form carries with it besides pattern, version and size, numbers as exact fractions."""
    gauges = [
        {
            "name": gauge.name,
            "stitches": _text(gauge.stitches),
            "rows": _text(gauge.rows),
            "over": _text(gauge.over),
            "hook": _text(gauge.hook),
            "repeat of": gauge.repeat_of,
            "blocked": gauge.blocked,
            "before": [_text(number) for number in gauge.before],
        }
        for gauge in asked.gauges
    ]
    said = {
        "body": asked.body,
        "gauges": gauges,
        "yarns": dict(asked.yarns),
        "measures": {name: _text(length) for name, length in asked.measures.items()},
        "pieces": list(asked.pieces),
        "rows": [[row.piece, row.label, *row.at] for row in asked.rows],
    }
    return json.dumps(said, ensure_ascii=True, separators=(",", ":"))


def read_asked(pattern: str, version: str, size: str, text: str) -> Asked | None:
    """The same again; None where the text is not what a form of ours carries.

    Whoever sends a form can change it, so nothing in it is taken on trust: no sign that moves a cursor comes through,
    and no number that takes long to work with.
    """
    if len(text) > _LONGEST:
        return None
    try:
        said = json.loads(text)
        return Asked(
            pattern,
            version,
            size,
            _word(said["body"]),
            tuple(_gauge(gauge) for gauge in said["gauges"]),
            {_word(letter): _word(words) for letter, words in said["yarns"].items()},
            {_word(name): _length(length) for name, length in said["measures"].items()},
            tuple(_word(piece) for piece in said["pieces"]),
            tuple(
                AskedRow(_word(piece), _word(label), (int(one), int(two))) for piece, label, one, two in said["rows"]
            ),
        )
    except (ValueError, KeyError, TypeError, AttributeError, ZeroDivisionError, RecursionError):
        return None


def _gauge(said: Mapping[str, Any]) -> AskedGauge:
    over = _length(said["over"])
    if over <= 0:
        raise ValueError("a gauge over nothing")
    before = said["before"]
    return AskedGauge(
        _word(said["name"]),
        _number(said["stitches"]),
        _number(said["rows"]),
        over,
        _number(said["hook"]),
        None if said["repeat of"] is None else int(said["repeat of"]),
        bool(said["blocked"]),
        (_number(before[0]), _number(before[1])),
    )


def _text(number: Fraction | None) -> str | None:
    return None if number is None else str(number)


def _number(text: str | None) -> Fraction | None:
    return None if text is None else _length(text)


def _length(text: str) -> Fraction:
    if not _EXACT.fullmatch(text):
        raise ValueError("no exact number")
    return Fraction(text)


def _word(text: str) -> str:
    if not isinstance(text, str) or CONTROL.search(text):
        raise ValueError("no plain words")
    return text
