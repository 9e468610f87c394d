"""What a form asks, as text inside the form, so that it can be merged without its pattern at hand; and read again."""

from __future__ import annotations

import json
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from gradegen.design.testing import Asked, AskedGauge, AskedRow

_LONGEST = 200_000


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
    """The same again; None where the text is not what a form of ours carries."""
    if len(text) > _LONGEST:
        return None
    try:
        said = json.loads(text)
        return Asked(
            pattern,
            version,
            size,
            str(said["body"]),
            tuple(_gauge(gauge) for gauge in said["gauges"]),
            {str(letter): str(words) for letter, words in said["yarns"].items()},
            {str(name): Fraction(length) for name, length in said["measures"].items()},
            tuple(str(piece) for piece in said["pieces"]),
            tuple(AskedRow(str(piece), str(label), (int(one), int(two))) for piece, label, one, two in said["rows"]),
        )
    except (ValueError, KeyError, TypeError, AttributeError, ZeroDivisionError, RecursionError):
        return None


def _gauge(said: Mapping[str, Any]) -> AskedGauge:
    over = Fraction(said["over"])
    if over <= 0:
        raise ValueError("a gauge over nothing")
    before = said["before"]
    return AskedGauge(
        str(said["name"]),
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
    return None if text is None else Fraction(text)
