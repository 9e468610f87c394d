"""The row that words such as `Dec Row`, `last row` or `Row 5` mean, among those worked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from gradegen.design.passages import EvenRows, Shaping
from gradegen.design.rows import Label, Row

_ALIKE = {"decrease": "dec", "increase": "inc"}


def named_row(known: Mapping[str, Row], label: str, section: str) -> Row | None:
    """One row to work again, whatever its own label's range or passages; None when no row of that name was worked."""
    found = _named(known, label, section)
    if found is None:
        return None
    steps = tuple(step for step in found.steps if not isinstance(step, (Shaping, EvenRows)))
    label_ = Label(found.label.text, found.label.kind, place=found.label.place)
    return replace(found, steps=steps, stated=(), label=label_)


def _named(known: Mapping[str, Row], label: str, section: str) -> Row | None:
    wanted = _levelled(label)
    if wanted in ("last", "this", "previous", "preceding"):
        return known.get("last")
    direct = known.get(f"{section.lower()} {wanted}".strip()) or known.get(wanted)
    if direct is not None:
        return direct
    names = reversed(list(known.items()))
    return next((row for name, row in names if _levelled(name).split(" ")[-1:] == [wanted]), None)


def _levelled(label: str) -> str:
    words = (_ALIKE.get(word, word) for word in label.lower().split())
    return " ".join(word for word in words if word not in ("row", "rnd", "round"))
