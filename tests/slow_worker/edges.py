"""Edges in the runs notation of rows with answers: `8 x (dc, ch-1 sp), 2 sc` to a plain list and back."""

from __future__ import annotations

import re
from collections.abc import Sequence


def expand(runs: str | int) -> list[str]:
    """The edge as a plain list; a bare number is that many stitches of unknown name ("st")."""
    if isinstance(runs, int) or runs.strip().isdigit():
        return ["st"] * int(runs)
    items: list[str] = []
    for part in _parts(runs):
        if found := re.fullmatch(r"(?:(\d+) x )?\((.*)\)", part, re.DOTALL):
            items += expand(found[2]) * int(found[1] or 1)
        elif found := re.fullmatch(r"(\d+) (.+)", part):
            items += [_item(found[2])] * int(found[1])
        else:
            items.append(_item(part))
    return items


def _parts(runs: str) -> list[str]:
    """Split at commas outside brackets."""
    parts, depth, start = [], 0, 0
    for at, sign in enumerate(runs):
        depth += (sign == "(") - (sign == ")")
        if sign == "," and depth == 0:
            parts.append(runs[start:at].strip())
            start = at + 1
    parts.append(runs[start:].strip())
    return [part for part in parts if part]


def _item(name: str) -> str:
    return {"row ends": "row end"}.get(name, name)


def fold(edge: Sequence[str]) -> str:
    """The shortest simple runs of an edge: one level of repeats."""
    parts: list[str] = []
    at = 0
    while at < len(edge):
        best = (0, 1, 1)
        for period in range(1, min(40, len(edge) - at) + 1):
            times = 1
            while list(edge[at : at + period]) == list(edge[at + times * period : at + (times + 1) * period]):
                times += 1
            gain = period * (times - 1) - (0 if period == 1 else 1)
            if gain > best[0]:
                best = (gain, period, times)
        _, period, times = best
        unit = edge[at : at + period]
        if period == 1:
            parts.append(unit[0] if times == 1 else f"{times} {unit[0]}")
        else:
            parts.append(f"{times} x ({_flat(unit)})")
        at += period * times
    return ", ".join(parts)


def _flat(unit: Sequence[str]) -> str:
    """Items of one repeat, equal neighbours counted."""
    parts: list[tuple[int, str]] = []
    for item in unit:
        if parts and parts[-1][1] == item:
            parts[-1] = (parts[-1][0] + 1, item)
        else:
            parts.append((1, item))
    return ", ".join(item if times == 1 else f"{times} {item}" for times, item in parts)
