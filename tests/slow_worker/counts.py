"""The stated count of a row: where it stands, what it says, and whether the stitches made agree."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from slow_worker.stitches import Own, family, is_stitch

UNIT = r"(?:ch-\d+ (?:corner )?sp|corner sp|own_\w+|[a-z]+(?:\d?tog)?)"
ONE = rf"\d+(?: {UNIT})?"
SEVERAL = rf"{ONE}(?:(?: ?,? and | ?, ?| - | ?\+ ?){ONE})*"
REMARK = r"(?: ?(?:at (?:the )?end(?: of [^)\]]*)?|in all|total|made|; [^)\]]*))?"
TAIL = r"[ .;,]*(?:(?:ch \d+ ?,? ?)?turn|join[^()*]*|around)?[ .;,]*$"
BRACKET = re.compile(rf"[(\[{{] ?({SEVERAL}){REMARK} ?[)\]}}](?={TAIL})")
BARE = re.compile(rf"(?:=|: | - |\. |, ?turn\. |you now have |\.$)\s*({SEVERAL}){REMARK}(?={TAIL})")
GROUPS = ("group", "groups", "shell", "shells", "scallop", "scallops", "fan", "fans")
NOT_UNITS = ("times", "more", "in", "x")


def take_stated(plain: str) -> tuple[str, list[tuple[int, str]]]:
    """The row without its count, and the count as (number, unit) pairs; unit "" when only a number stands there."""
    found = next(reversed(list(BRACKET.finditer(plain))), None) or BARE.search(plain)
    if found is None:
        return plain, []
    stated = []
    for number, unit in re.findall(rf"(\d+)(?: ({UNIT}))?", found[1]):
        if unit in NOT_UNITS:
            return plain, []
        stated.append((int(number), "" if unit == "st" else unit))
    rest = plain[: found.start()] + " . " + plain[found.end() :]
    return rest, stated


def units_of(
    made: Sequence[str], groups: Sequence[tuple[int, tuple[str, ...]]], named: Mapping[str, int], own: Mapping[str, Own]
) -> dict[str, int]:
    """What was made, by name: stitches, spaces, and every own stitch that went into one place."""
    units: dict[str, int] = {}
    for name in made:
        units[name] = units.get(name, 0) + 1
    for stitch in own.values():
        if len(stitch.atoms) > 1:
            whole = sum(1 for spot, atoms in groups if spot >= 0 and atoms == stitch.atoms)
            if number := whole + named.get(stitch.name, 0):
                units[stitch.name] = number
    return units


def number_made(
    unit: str, units: Mapping[str, int], own: Mapping[str, Own], groups: Sequence[tuple[int, tuple[str, ...]]] = ()
) -> int:
    """How many of what a stated count calls `unit`."""
    groups_only = {stitch.name for stitch in own.values() if len(stitch.atoms) > 1}
    plain = {name: number for name, number in units.items() if name not in groups_only}
    if unit == "":
        return sum(number for name, number in plain.items() if is_stitch(name))
    if unit == "sp":
        return sum(number for name, number in plain.items() if name.endswith(" sp"))
    if found := re.fullmatch(r"ch-(\d+) (?:corner )?sp", unit):
        return units.get(f"ch-{found[1]} sp", 0)
    if unit in GROUPS and unit not in own:
        return sum(1 for spot, atoms in groups if spot >= 0 and len(atoms) > 1)
    if unit in own:
        return units.get(own[unit].name, 0)
    return sum(number for name, number in plain.items() if unit in (family(name), name.lower()))
