"""The whole of a pattern after every stage: as written, graded, worked and judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern
from gradegen.design.sizes import SizeTable
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding


@dataclass(frozen=True, slots=True)
class Checked:
    """Everything the checks and the printers look at.

    `worked`: size name -> its rows in working order. `proved`, `wrong` and `not_checked` count row-size pairs that
    apply.
    """

    pattern: Pattern
    table: SizeTable
    sizes: tuple[GradedSize, ...]
    worked: Mapping[str, tuple[WorkedRow, ...]]
    findings: tuple[Finding, ...]
    proved: int
    wrong: int
    not_checked: int
