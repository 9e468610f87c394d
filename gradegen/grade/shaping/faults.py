"""What can be wrong with shaping over rows, by name."""

from __future__ import annotations

from gradegen.findings import Rule, Severity

TOTAL_DIFFERS = Rule(
    "shaping-total-differs", Severity.ERROR, "arithmetic", "the shaping ends on another count than it says"
)
TIMES_OR_MORE = Rule("times-or-more-times", Severity.ERROR, "arithmetic", "'times' and 'more times' give other totals")
LONGER_THAN_SECTION = Rule(
    "shaping-longer-than-section", Severity.ERROR, "arithmetic", "there are too few rows for the shaping"
)
TOO_DENSE = Rule("shaping-too-dense", Severity.ERROR, "arithmetic", "this many cannot be placed in one row")
ODD_AT_BOTH_ENDS = Rule(
    "odd-change-at-both-ends", Severity.ERROR, "arithmetic", "an odd change cannot be the same at both ends"
)
ROWS_DIFFER = Rule(
    "shaping-rows-differ", Severity.ERROR, "arithmetic", "the rows told one by one are fewer than the label's"
)
RUNS_OUT = Rule("edge-stitches-run-out", Severity.ERROR, "arithmetic", "no stitches are left for the edge")
ORDER_FLIPS = Rule(
    "shaping-order-flips", Severity.WARNING, "house", "shapings worked at the same time swap places in some sizes"
)
BOTH_WAYS = Rule(
    "shaping-goes-both-ways", Severity.ERROR, "arithmetic", "a shaping increases in some sizes and decreases in others"
)
SHORT_ROWS = Rule(
    "short-rows-do-not-add-up", Severity.ERROR, "arithmetic", "the steps of short rows do not make the slope"
)
