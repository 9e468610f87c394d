"""What an earlier piece leaves for a later one to be worked on: held stitches, its last row, its foundation."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from gradegen.findings import Place

Left = Literal["held", "end", "foundation"]
Start = Literal["", "middle", "underarm", "stitches"]


@dataclass(frozen=True, slots=True)
class Begin:
    """`worked on: second held stitches of Body at Rnd 1, from the middle of the underarm`.

    `piece`: the earlier piece, as named there. `row`: the label of the row that holds them ("": the row that holds
    most). `nth`: which of its stretches, from 1 (None: all are alike). `start`: where the work begins ("": where the
    first row's words say).
    """

    what: Left
    piece: str
    row: str = ""
    nth: int | None = None
    start: Start = ""
    place: Place = field(compare=False, kw_only=True)
