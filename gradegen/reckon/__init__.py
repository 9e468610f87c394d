"""What the work takes: stitches, yarn, skeins, time, and which counts it allows."""

from __future__ import annotations

from gradegen.reckon.amounts import EvidenceUsed, SizeYarn, YarnAmount, YarnLine, YarnNeed
from gradegen.reckon.census import Census, Counted, stitch_census
from gradegen.reckon.yarn import yarn_per_size

__all__ = [
    "Census",
    "Counted",
    "EvidenceUsed",
    "SizeYarn",
    "YarnAmount",
    "YarnLine",
    "YarnNeed",
    "stitch_census",
    "yarn_per_size",
]
