"""What must hold between counts in every size, as the designer wrote it: `front = neck + 2 * shoulder`."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from gradegen.design.formula import Formula
from gradegen.findings import Place

RelationSign = Literal["=", "<=", ">=", "<", ">"]


@dataclass(frozen=True, slots=True)
class Relation:
    """Two sums of counts and the sign between them; `text` is the relation as written, on one line."""

    text: str
    left: Formula
    sign: RelationSign
    right: Formula
    place: Place = field(compare=False)
