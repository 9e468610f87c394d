"""What the work takes: stitches, yarn, skeins, time, and which counts it allows."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from gradegen.reckon.census.census import Census, Counted, stitch_census
    from gradegen.reckon.seams.sewn_seams import Sewing
    from gradegen.reckon.yarn.amounts import EvidenceUsed, SizeYarn, YarnAmount, YarnLine, YarnNeed
    from gradegen.reckon.yarn.yarn import yarn_per_size

__all__ = [
    "Census",
    "Counted",
    "EvidenceUsed",
    "Sewing",
    "SizeYarn",
    "YarnAmount",
    "YarnLine",
    "YarnNeed",
    "stitch_census",
    "yarn_per_size",
]
_WHERE = {
    "Census": "census.census",
    "Counted": "census.census",
    "Sewing": "seams.sewn_seams",
    "stitch_census": "census.census",
    "yarn_per_size": "yarn.yarn",
}


def __getattr__(name: str) -> Any:
    """Loaded when it is asked for: checking a pattern needs little of this room."""
    if name not in __all__:
        raise AttributeError(f"module 'gradegen.reckon' has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f"gradegen.reckon.{_WHERE.get(name, 'yarn.amounts')}"), name)
