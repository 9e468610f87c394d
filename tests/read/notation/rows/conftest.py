"""A row's tree in one line of text, so that a test can say what it expects.

`3 sc in next st` is `[3 sc > next st]`: makes > where; `*{ ... } end` a repeat; `~` a place without "next".
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from gradegen.design.rows import Bound, Definition, Into, Make, Number, Row, Step, Thing, Times
from gradegen.findings import Finding, Written
from gradegen.read.notation.rows import RowNames, read_row

SIZES = {1: ("one",), 2: ("S", "L"), 3: ("S", "M", "L"), 4: ("S", "M", "L", "XL"), 5: ("XS", "S", "M", "L", "XL")}


def number(value: Number | None) -> str:
    if value is None:
        return ""
    if value.formula is not None:
        return "{sum}"
    return "/".join("-" if one is None else str(one) for one in value.values)


def thing(one: Thing) -> str:
    return one.name + number(one.length) + (f"<{one.of}>" if one.of else "")


def bound(limit: Bound | None) -> str:
    if limit is None:
        return ""
    parts = ["to", limit.to, number(limit.number), thing(limit.thing) if limit.thing else ""]
    return " " + " ".join(part for part in parts if part)


def into(place: Into) -> str:
    nth = f"#{number(place.nth)}" if place.nth else ""
    things = "+".join(thing(one) for one in place.things)
    of = f"of ({into(place.of)})" if place.of else ""
    parts = [place.which + nth, number(place.number), things, of, place.loop or ""]
    return " ".join(part for part in parts if part) + ("~" if place.loosely else "") + bound(place.bound)


def make(one: Make) -> str:
    return f"{number(one.times)} {one.stitch}".strip()


def times(often: Times) -> str:
    parts = [often.how if often.how != "bound" else "", number(often.number), bound(often.bound).strip()]
    stop = f"stop@{often.stop_at}" if often.stop_at is not None else ""
    return " ".join(part for part in (*parts, stop) if part)


def step(one: Step) -> str:
    fields: Mapping[str, Callable[[Any], str]] = {
        "Work": lambda s: (
            f"[{' + '.join(make(m) for m in s.makes)}"
            + (
                ""
                if s.bare and s.into.which == "next" and not s.into.loop and not s.into.number
                else f" > {into(s.into)}"
            )
            + (" bare" if s.bare else "")
            + (f" called {s.called}" if s.called else "")
            + (f" skipped={','.join(s.skipped.as_)}" if s.skipped else "")
            + "]"
        ),
        "Mixed": lambda s: f"mixed({' | '.join(step(w) for w in s.works)}{bound(s.bound)})",
        "Chain": lambda s: (
            f"ch{number(s.number)}"
            + ("" if s.counts is None else f"={','.join(s.counts.as_) or 'none'}{'!' if s.counts.from_here_on else ''}")
        ),
        "Join": lambda s: (
            f"join {s.to}".strip() + (f"#{number(s.nth)}" if s.nth else "") + (" twisted" if s.half_twist else "")
        ),
        "Slip": lambda s: f"slip({into(s.into)}{' moves' if s.to else ''})",
        "Skip": lambda s: f"{'hold' if s.held else 'skip'}({into(s.into)})",
        "Repeat": lambda s: f"{s.mark}{{ {steps(s.body)} }} {times(s.times)}",
        "Change": lambda s: f"{'+' if s.sign > 0 else '-'}{number(s.number)} {s.where}",
        "Even": lambda s: f"even {s.stitch or ''}".strip(),
        "Turn": lambda s: "turn",
        "Unworked": lambda s: "unworked",
        "Elsewhere": lambda s: f"elsewhere:{s.text}",
        "OtherSide": lambda s: "other side",
        "Aside": lambda s: f"<{s.text}>",
        "Unread": lambda s: f"UNREAD<{s.text}>",
        "Either": lambda s: "either(" + " || ".join(steps(reading) for reading in s.readings) + ")",
        "SizesOnly": lambda s: f"only {','.join(s.sizes) or 'others'}( {steps(s.body)} )",
        "RowsAgain": lambda s: (
            f"again {','.join(s.labels)}"
            + (f" x{number(s.times)}" if s.times else "")
            + (" more" if s.more else "")
            + (f" ending {s.ending}" if s.ending else "")
            + (f" until <{s.until}>" if s.until else "")
            + (f" but {steps(s.except_)}" if s.except_ else "")
        ),
    }
    return fields[type(one).__name__](one)


def steps(many: tuple[Step, ...]) -> str:
    return ", ".join(step(one) for one in many)


def row_text(row: Row) -> str:
    text = steps(row.steps)
    if row.turning_chain:
        text += f" ; {step(row.turning_chain)} for the next row"
    if row.stated:
        text += " = " + ", ".join(f"{number(one.number)} {thing(one.unit)}" for one in row.stated)
    return text


def label_text(row: Row) -> str:
    label = row.label
    parts = [
        label.kind,
        label.name,
        number(label.first) + (f"-{number(label.last)}" if label.last else ""),
        "(" + " ".join(number(one) for one in label.listed) + ")" if label.listed else "",
        f"{number(label.rows)} rows" if label.rows else "",
        row.side or "",
        ",".join(row.sizes) + " only" if row.sizes else "",
    ]
    return " ".join(part for part in parts if part)


Read = Callable[..., tuple[Row, tuple[Finding, ...]]]


@pytest.fixture
def read() -> Read:
    """Reads one row: `read(text, sizes=3, label=None, terms="US", own={}, counts=())`."""

    def one(
        text: str,
        sizes: int = 1,
        label: str | None = None,
        terms: Any = "US",
        own: Mapping[str, Definition] | None = None,
        counts: tuple[str, ...] = (),
    ) -> tuple[Row, tuple[Finding, ...]]:
        names = RowNames(terms, SIZES[sizes], own or {}, frozenset(counts))
        return read_row(Written.plain(text), names, label)

    return one


@pytest.fixture
def tree(read: Read) -> Callable[..., str]:
    """The steps, turning chain and counts of a row in one line of text."""
    return lambda text, **how: row_text(read(text, **how)[0])


@pytest.fixture
def labelled(read: Read) -> Callable[..., str]:
    """What the label of a row says."""
    return lambda text, **how: label_text(read(text, **how)[0])
