"""Row numbers: how often a row is worked, and which rows a row points back to."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from gradegen.design.rows import Aside, Label, Row, RowsAgain
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import RANGE_DOES_NOT_DIVIDE, Fault, Unclear

_NUMBER_WORDS = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}


def times_worked(label: Label, site: Site) -> int:
    """How many rows this label stands for, in one size."""
    if label.rows is not None:
        return site.number(label.rows)
    if label.listed:
        return len(label.listed)
    if label.first is None or label.last is None:
        return 1
    first, last = site.number(label.first), site.number(label.last)
    return max(0, last - first + 1)


def is_single(label: Label) -> bool:
    """True for a label of one row, whatever its number is."""
    return label.rows is None and not label.listed and (label.first is None or label.last is None)


def is_alike(label: Label) -> bool:
    """True where the label names the same rows in every size."""
    numbers = [label.first, label.last, *label.listed]
    return all(number is None or (number.formula is None and len(number.values) == 1) for number in numbers)


def row_keys(row: Row, site: Site) -> list[str]:
    """The names under which other rows can point to this one, in one size."""
    label = row.label
    name = label.name.lower()
    numbers: list[int] = []
    if label.listed:
        numbers = [site.number(one) for one in label.listed]
    elif label.first is not None:
        first = site.number(label.first)
        last = site.number(label.last) if label.last is not None else first
        numbers = list(range(first, min(last, first + 500) + 1))
    keys = [f"{name} {number}".strip() for number in numbers]
    return keys or ([name] if name else [])


def in_this_size(again: RowsAgain, site: Site) -> RowsAgain:
    """The rows named, sums of graded counts as the numbers they come to in this size."""
    if not again.sums:
        return again
    numbers = {label: str(site.number(number)) for label, number in again.sums}
    return replace(again, labels=tuple(numbers.get(label, label) for label in again.labels), sums=())


def look_up(again: RowsAgain, known: Mapping[str, Row], row: Row) -> list[Row]:
    """The rows that a row points back to, in the order named."""
    found = []
    section = row.label.name.lower()
    for label in again.labels:
        if len(last := _last_rows(label, known)) > 1:
            found += last
            continue
        if label == "last" and _says_itself(row, again):
            found.append(row)
            continue
        found.append(_pointed(label, known, section, again))
    return found


def _says_itself(row: Row, again: RowsAgain) -> bool:
    """True for `Sc in each st. Repeat last round 3 times`: the row just told; Unclear where more work stands behind."""
    at = next((i for i, step in enumerate(row.steps) if step is again or step.place == again.place), 0)
    before, after = row.steps[:at], row.steps[at + 1 :]
    if all(isinstance(step, (Aside, RowsAgain)) for step in before):
        return False
    if any(not isinstance(step, (Aside, RowsAgain)) for step in after):
        raise Unclear("what of this row is repeated is not certain", again.place)
    return True


def _pointed(label: str, known: Mapping[str, Row], section: str, again: RowsAgain) -> Row:
    """The row of that number; where it only points on (`Rows 3 and 4: Rep Row 2`), the row it points to."""
    for _ in range(_FURTHEST):
        target = _find(label, known, section)
        if target is None:
            raise Unclear(f"row {label} is not known here", again.place)
        onward = _onward(target, label)
        if not onward:
            return target
        label = onward
    raise Unclear(f"row {label} points back to itself", again.place)


_FURTHEST = 6  # rows that point to rows that point


def _onward(row: Row, label: str) -> str:
    """The label of the one row that a row without work of its own stands for at this number; "" where it has work."""
    again = next((step for step in row.steps if isinstance(step, RowsAgain)), None)
    alone = again is not None and all(isinstance(step, (RowsAgain, Aside)) for step in row.steps)
    if again is None or not alone or again.times is not None or again.until is not None or again.except_:
        return ""
    if any(one.startswith("last") for one in again.labels):
        return ""
    if len(again.labels) == 1:
        return again.labels[0]
    first = row.label.first.values if row.label.first is not None else ()
    number = label.split()[-1] if label else ""
    if len(first) != 1 or first[0] is None or not number.isdigit() or int(number) < first[0]:
        return ""
    return again.labels[(int(number) - first[0]) % len(again.labels)]


def _last_rows(label: str, known: Mapping[str, Row]) -> list[Row]:
    """The rows of `last 2`, in the order they were worked; none for any other label, or where there are fewer.

    Each number of a range stands in `known` by itself, so that a row worked twice is two of them.
    """
    words = label.split()
    if len(words) != 2 or words[0] != "last" or not words[1].isdigit():
        return []
    rows = sorted((row for key, row in known.items() if key != "last"), key=lambda row: row.place.line)
    return rows[-int(words[1]) :] if len(rows) >= int(words[1]) else []


def _find(label: str, known: Mapping[str, Row], section: str) -> Row | None:
    key = label.lower().strip()
    key = _NUMBER_WORDS.get(key, key)
    if key == "last":
        return known.get("last")
    for candidate in (f"{section} {key}".strip(), key, key.split()[-1] if key else key):
        if candidate in known:
            return known[candidate]
    found = next((row for name, row in reversed(list(known.items())) if name.endswith(f" {key}")), None)
    return found or _by_remark(key, known)


def _by_remark(key: str, known: Mapping[str, Row]) -> Row | None:
    """The row that its label calls so in brackets: `Row 5 (dec row)`."""
    if key[:3] not in ("dec", "inc"):
        return None
    said = re.compile(rf"\b{key[:3]}\w*\W+(?:rows?|rnds?|rounds?)\b", re.IGNORECASE)
    return next((row for row in reversed(list(known.values())) if said.search(row.label.text)), None)


def rows_to_work(again: RowsAgain, row: Row, site: Site) -> int:
    """How many single rows `Rep Rows 3 and 4 ...` means in one size; a range they do not divide is a fault."""
    cycle = rows_named(again)
    has_range = row.label.last is not None or row.label.rows is not None or bool(row.label.listed)
    ranged = times_worked(row.label, site) if has_range else None
    if again.times is not None:
        wanted = cycle * site.number(again.times)
        if ranged is not None and ranged != wanted and not again.more:
            raise _does_not_divide(again, ranged, cycle, f"{wanted} rows for {site.number(again.times)} times")
        return wanted
    if again.until is not None and (ranged is None or again.more):
        raise Unclear("how many rows this takes is a measure, not a number", again.place)
    if ranged is None:
        return cycle
    _divides(again, ranged, cycle)
    return ranged


def rows_named(again: RowsAgain) -> int:
    """How many rows are worked again in turn: those listed, or the 2 of `last 2`."""
    return sum(int(label.split()[1]) if label.startswith("last ") else 1 for label in again.labels)


def _divides(again: RowsAgain, ranged: int, cycle: int) -> None:
    if again.ending is not None:
        last = again.labels[(ranged - 1) % len(again.labels)]
        if last.split()[-1] != again.ending.split()[-1]:
            raise _does_not_divide(again, ranged, cycle, f"end with row {again.ending}")
    elif ranged % cycle:
        raise _does_not_divide(again, ranged, cycle, f"a whole number of {cycle}-row repeats")


def _does_not_divide(again: RowsAgain, ranged: int, cycle: int, expected: str) -> Fault:
    return Fault(
        RANGE_DOES_NOT_DIVIDE,
        again.place,
        "The rows named do not fill this range of rows.",
        expected=expected,
        found=f"{ranged} rows",
        because=f"{ranged} rows in repeats of {cycle} leave {ranged % cycle}",
    )
