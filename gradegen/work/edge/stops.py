"""Why the working of a row stops: a fault with its name, or something that cannot be placed."""

from __future__ import annotations

from gradegen.findings import Place, Rule, Severity

RUNS_SHORT = Rule("runs-short", Severity.ERROR, "arithmetic", "the row asks for more than it finds")
LEFT_OVER = Rule("stitches-left-over", Severity.ERROR, "arithmetic", "the row ends before its edge does")
DOES_NOT_FIT = Rule("repeat-does-not-fit", Severity.ERROR, "arithmetic", "the repeat does not come out even")
MISSING_TARGET = Rule("names-missing-target", Severity.ERROR, "arithmetic", "the row names something that is not there")
COUNT_WRONG = Rule("stated-count-wrong", Severity.ERROR, "arithmetic", "the row makes another count than it says")
LIST_LENGTH = Rule("size-list-length", Severity.ERROR, "arithmetic", "a size list has too few or too many numbers")
UNDEFINED = Rule("undefined-stitch", Severity.ERROR, "trade standard", "a stitch is nowhere explained")
CHAIN_CONVENTION = Rule(
    "turning-chain-convention", Severity.ERROR, "arithmetic", "the count is only right against the turning-chain note"
)
RANGE_DOES_NOT_DIVIDE = Rule(
    "row-range-does-not-divide", Severity.ERROR, "arithmetic", "the rows named are not whole repeats"
)
OFF_MULTIPLE = Rule("foundation-off-multiple", Severity.ERROR, "arithmetic", "the chain is not on the stated multiple")
NOT_WHOLE = Rule("count-not-whole", Severity.ERROR, "arithmetic", "a sum of counts is not a whole number")
NO_SUCH_COUNT = Rule("unknown-count", Severity.ERROR, "file format", "a sum names a count the pattern does not have")
NOT_COMPARED = Rule(
    "count-not-compared", Severity.NOTE, "arithmetic", "a printed count could not be held against the row"
)
TWO_READINGS = Rule("two-readings", Severity.WARNING, "arithmetic", "the words can be worked in two ways, and both fit")
READING_CHOSEN = Rule("reading-chosen", Severity.NOTE, "arithmetic", "the words can be read in two ways; only one fits")


class Fault(Exception):  # noqa: N818 - a fault in the pattern, not an error of the program
    """The row cannot be right as written, in the size being worked."""

    def __init__(
        self,
        rule: Rule,
        place: Place,
        message: str,
        *,
        expected: str | None = None,
        found: str | None = None,
        because: str | None = None,
        hint: str | None = None,
        complete: bool = False,
    ) -> None:
        super().__init__(message)
        self.rule, self.place, self.message = rule, place, message
        self.expected, self.found, self.because, self.hint = expected, found, because, hint
        self.complete = complete  # the row could be worked to its end all the same


class Unclear(Exception):  # noqa: N818
    """Words that cannot be placed on the edge; the row is not checked, which is not a fault."""

    def __init__(self, why: str, place: Place) -> None:
        super().__init__(why)
        self.why, self.place = why, place
