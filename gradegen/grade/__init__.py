"""From measures and a gauge to counts: every size graded, and the maker between the sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from gradegen.grade.grading import grade_sizes

if TYPE_CHECKING:
    from gradegen.grade.ask.between import Fitted, fit_body

__all__ = ["Fitted", "fit_body", "grade_sizes"]


def __getattr__(name: str) -> Any:
    """What only `fit` needs is loaded when it is asked for."""
    if name not in ("Fitted", "fit_body"):
        raise AttributeError(f"module 'gradegen.grade' has no attribute {name!r}")
    from gradegen.grade.ask import between

    return getattr(between, name)
