"""A pattern designer's bench: grade every size, prove every row in every size, print the pattern."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from gradegen.check.run import check_pattern
    from gradegen.findings import Finding
    from gradegen.grade import grade_sizes
    from gradegen.grade.shaping.schedules import shape_rows
    from gradegen.read.pattern.file import read_pattern
    from gradegen.work.one_row import check_row
    from gradegen.work.rows import work_rows
    from gradegen.write.pattern import write_pattern

__all__ = [
    "Finding",
    "check_pattern",
    "check_row",
    "grade_sizes",
    "read_pattern",
    "shape_rows",
    "work_rows",
    "write_pattern",
]

_ROOMS = {
    "Finding": "gradegen.findings",
    "check_pattern": "gradegen.check.run",
    "check_row": "gradegen.work.one_row",
    "grade_sizes": "gradegen.grade",
    "read_pattern": "gradegen.read.pattern.file",
    "shape_rows": "gradegen.grade.shaping.schedules",
    "work_rows": "gradegen.work.rows",
    "write_pattern": "gradegen.write.pattern",
}


def __getattr__(name: str) -> Any:
    """A public name, its room loaded only when it is asked for."""
    if name not in _ROOMS:
        raise AttributeError(f"module 'gradegen' has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(_ROOMS[name]), name)


def __dir__() -> list[str]:
    return sorted(__all__)
