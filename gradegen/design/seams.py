"""Where pieces meet: edges that must agree, stitches picked up along rows, and the division of a yoke."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from gradegen.design.formula import Amount, Formula
from gradegen.findings import Place

SeamKind = Literal["side", "shoulder", "sleeve", "width", "raglan", "edges"]


@dataclass(frozen=True, slots=True)
class Join:
    """Two edges sewn or crocheted together: `front shoulder to back shoulder`, `side: front rows = back rows`.

    `kind` follows from the seam's name, or from its words. `within`: how far lengths may differ, eased in.
    `sewn`: how many seams of this length are sewn (None: as is usual for its kind; 0: it is worked, or only compared).
    """

    name: str
    kind: SeamKind
    left: Formula
    right: Formula
    text: str
    within: Amount | None = None
    sewn: int | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class PickUp:
    """Stitches picked up along row edges: `count` of them, `ratio` to a row of `along`, and `besides` one for one.

    `multiple`, `plus`: what the border worked on them needs (None: anything). `sewn`: borders made apart and sewn along
    those rows, where they are not picked up.
    """

    name: str
    count: Formula
    along: Formula | None
    ratio: Fraction
    besides: Formula | None
    multiple: int | None
    plus: int
    text: str
    sewn: int = 0
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Division:
    """A yoke parted into pieces: the parts make the whole, and each underarm chain is met from both sides.

    `body`: stitches of the body's first round, `sleeve`: of one sleeve's (None: not said). `fronts_and_back`: the parts
    that go into the body; `sleeves`: one sleeve's part, of which there are two.
    """

    name: str
    whole: Formula
    fronts_and_back: tuple[Formula, ...]
    sleeve_part: Formula
    chain: Formula
    body: Formula | None
    sleeve: Formula | None
    place: Place = field(compare=False, kw_only=True)


Seam = Join | PickUp | Division
