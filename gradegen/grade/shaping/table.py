"""Shapings worked at the same time, row by row in one size, with the stitches after each row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from gradegen.design.schedule import Schedule, Scheduled, TableRow
from gradegen.findings import Finding, Place
from gradegen.grade.shaping.faults import ORDER_FLIPS


def shaping_table(together: Sequence[Schedule]) -> tuple[TableRow, ...]:
    """Every row in which something happens, from the first; the shapings begin with the same stitches."""
    happening: dict[int, list[tuple[str, int]]] = {}
    for schedule in together:
        for row, delta in schedule.events():
            happening.setdefault(row + schedule.after, []).append((schedule.name, delta))
    stitches = together[0].before if together else 0
    rows = []
    for row in sorted(happening):
        stitches += sum(delta for _, delta in happening[row])
        what = tuple(f"{name}: {abs(delta)} {'more' if delta > 0 else 'fewer'}" for name, delta in happening[row])
        rows.append(TableRow(row, what, stitches))
    return tuple(rows)


def find_flips(name: str, together: Sequence[Scheduled], place: Place) -> Iterator[Finding]:
    """One finding per size in which beginnings and ends of the shapings stand in another order than in most."""
    marks = [
        _marks([one for one in size if one is not None]) for size in zip(*(s.sizes for s in together), strict=True)
    ]
    names = [next((one.size for one in size if one), "") for size in zip(*(s.sizes for s in together), strict=True)]
    told: set[str] = set()
    for one, other in combinations(sorted({mark for found in marks for mark in found}), 2):
        signs = [
            _sign(found.get(one, 0) - found.get(other, 0)) if one in found and other in found else 0 for found in marks
        ]
        usual = 1 if signs.count(1) > signs.count(-1) else -1
        for size, sign in zip(names, signs, strict=True):
            if sign == -usual and usual in signs and size not in told:
                told.add(size)
                first, second = (other, one) if usual > 0 else (one, other)
                message = f"In this size {second} before {first}; in most sizes it is the other way round."
                yield ORDER_FLIPS.at(place, message, size=size, hint="move one of the two, or print this size apart")


def _marks(schedules: Sequence[Schedule]) -> dict[str, int]:
    found = {}
    for one in schedules:
        rows = [row + one.after for row, _ in one.events()]
        if rows:
            found[f"{one.name} begins"], found[f"{one.name} ends"] = rows[0], rows[-1]
    return found


def _sign(number: int) -> int:
    return (number > 0) - (number < 0)
