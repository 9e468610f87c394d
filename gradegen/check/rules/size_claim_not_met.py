"""What it finds.

A garment for adults that calls itself size-inclusive, while its sizes fit no chest of 30 in, or none of 60 in.

Why it matters.

Makers outside the middle sizes buy by that word, and are let down at the size line. The least that counts is a range to
fit from 30 to 60 in; 28 to 66 in is asked for now. What is meant is the body to fit, never the finished piece.

Example.

    about: A size-inclusive pullover for everybody.

Written right.

    about: A pullover in five sizes.

Whose rule.

House: two writers on inclusive grading name 30 to 60 in as the least (K. McGrath, JP Knits Things); no standard does.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import garment_column, words_of
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Text
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("size-claim-not-met", Severity.WARNING, "house", "The range of sizes does not carry the claim.")
SMALL, LARGE = Fraction(30), Fraction(60)  # inches of bust or chest to fit
CLAIM = re.compile(
    r"\bsize[- ]?inclusiv\w*|\bsize inclusivity\b|"
    r"\binclusive(?:ly)?[- ](?:siz|grad|rang|fit|pattern|design|garment)\w*",
    re.IGNORECASE,
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding, at the first text that makes the claim."""
    claims = [text for text in _texts(checked) if CLAIM.search(text.text)]
    ends = _range(checked)
    if not claims or ends is None or (ends[0] <= SMALL and ends[1] >= LARGE):
        return
    words = words_of(checked)
    yield RULE.at(
        claims[0].place,
        "The sizes do not carry this claim.",
        expected=f"to fit {words.length(SMALL)} or less, and {words.length(LARGE)} or more",
        found=f"to fit {words.length(ends[0])} to {words.length(ends[1])}",
        hint="Add sizes, or name the range instead.",
    )


def _texts(checked: Checked) -> list[Text]:
    pattern = checked.pattern
    return [pattern.title, *([pattern.about] if pattern.about else []), *pattern.notes]


def _range(checked: Checked) -> tuple[Fraction, Fraction] | None:
    """The smallest and the largest body to fit, in inches; None unless all sizes are adults' by bust or chest."""
    if garment_column(checked) is None or any(size.wearer != "adult" for size in checked.sizes):
        return None
    bands = [_band(size) for size in checked.sizes]
    known = [band for band in bands if band is not None]
    return (min(low for low, _ in known), max(high for _, high in known)) if known else None


def _band(size: GradedSize) -> tuple[Fraction, Fraction] | None:
    if size.to_fit is None or (size.to_fit.inches is None and size.to_fit.cm is None):
        return None
    if size.to_fit.inches is not None:
        return size.to_fit.inches.low, size.to_fit.inches.high
    assert size.to_fit.cm is not None
    return size.to_fit.cm.low * Fraction(100, 254), size.to_fit.cm.high * Fraction(100, 254)
