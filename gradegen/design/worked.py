"""What working a row gives: edge before and after, what each step took and made, what is left."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

from gradegen.design.edge import Edge
from gradegen.design.rows import Row
from gradegen.design.schedule import TableRow
from gradegen.findings import Finding, Place

Status = Literal["proved", "wrong", "not-checked"]


@dataclass(frozen=True, slots=True)
class WorkedStep:
    """One step as worked in one size: how often it ran, what it took of the edge and made, in words and counts."""

    words: str
    times: int
    takes: int
    takes_words: str
    makes: int
    makes_words: str
    left: int
    place: Place
    depth: int = 0


class WorkedRow(NamedTuple):
    """One row (or range of rows) in one size.

    `made`: stitches of the last row worked. `units`: made by name ("dc", "ch-2 sp", "shell"). `taken`: stitches of the
    edge before that were used. `times`: rows worked under this label. `census`: everything made over all of them, by
    name, with chains ("ch"), slip stitches and joins ("sl st"). `reading`: choices made, in words. A row for
    other sizes only has status "not-checked" and `worked` False. `merged`: where shapings are worked at the same time,
    every row in which something happens.
    """

    row: Row
    label: str
    size: str
    status: Status
    before: Edge
    after: Edge
    made: int | None
    units: Mapping[str, int]
    taken: int | None
    times: int
    census: Mapping[str, int]
    reading: tuple[str, ...]
    steps: tuple[WorkedStep, ...]
    findings: tuple[Finding, ...]
    why_not: str = ""
    applies: bool = True
    merged: tuple[TableRow, ...] = ()


@dataclass(frozen=True, slots=True)
class RowResult:
    """One written row checked alone.

    `status`: wrong if any size is, not-checked if none is wrong and any is not checked. `made`, `taken`: one number per
    size (None: not known, or the size does not work it). `units`: per name, one number per size. `reading`: choices
    made.
    """

    status: Status
    status_by_size: Mapping[str, Status]
    made: tuple[int | None, ...]
    units: Mapping[str, tuple[int | None, ...]]
    taken: tuple[int | None, ...]
    reading: tuple[str, ...]
    findings: tuple[Finding, ...]
    times: tuple[int, ...] = ()
    after: tuple[Edge, ...] = ()
