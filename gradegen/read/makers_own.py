"""What a maker says about herself on the command line: `bust=41 in`, `13 sts 7 rows over 4 in`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from gradegen.design.formula import Amount
from gradegen.design.pattern import Gauge
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.numbers.units import inches_of
from gradegen.read.sums.formula import read_amount

BODY_UNREADABLE = Rule(
    "body-unreadable", Severity.ERROR, "file format", "A body measure is not written as NAME=LENGTH."
)
OWN_GAUGE_UNREADABLE = Rule(
    "own-gauge-unreadable", Severity.ERROR, "file format", "A gauge is not written as stitches and rows over a length."
)
OVER = re.compile(r"\s+(?:over|per|to)\s+|\s*=\s*")
BETWEEN_COUNTS = re.compile(r"\s*(?:,|&|\+|\band\b|\bby\b|\bx\b)\s*|(?<=[a-z])\s+(?=[\d½¼¾.])")
BODY_HINT = 'Write it as "bust=41 in".'
GAUGE_HINT = 'Write it as "13 sts 7 rows over 4 in".'

Findings = tuple[Finding, ...]


def read_body(texts: Sequence[str]) -> tuple[dict[str, Fraction], Findings]:
    """Body columns to exact inches; a text that can't be read is a finding."""
    body: dict[str, Fraction] = {}
    findings: list[Finding] = []
    for text in texts:
        written = Written.plain(text, "--body")
        name, sign, _ = text.partition("=")
        length, found = _length(written, len(name) + 1) if sign and name.strip() else (None, ())
        if length is None:
            findings += found or (BODY_UNREADABLE.at(written.place(), "This is no body measure.", hint=BODY_HINT),)
        elif name.strip() in body:
            findings.append(
                BODY_UNREADABLE.at(written.place(), f"{name.strip()} was given twice.", hint="Give it once.")
            )
        else:
            body[name.strip()] = length
    return body, tuple(findings)


def read_own_gauge(text: str) -> tuple[Gauge | None, Findings]:
    """The gauge of a maker's own swatch; rows may be left out."""
    written = Written.plain(text, "--gauge")
    unreadable = OWN_GAUGE_UNREADABLE.at(written.place(), "This is no gauge.", hint=GAUGE_HINT)
    parts = OVER.split(text)
    if len(parts) != 2:
        return None, (unreadable,)
    over, _ = read_amount(Written.plain(parts[1], "--gauge"))
    counted = [read_amount(Written.plain(part, "--gauge"))[0] for part in BETWEEN_COUNTS.split(parts[0].strip())]
    units = [amount.unit for amount in counted if amount is not None and amount.number > 0]
    length = None if over is None else inches_of(over)
    if (
        over is None
        or not length
        or length <= 0
        or units not in (["sts"], ["sts", "rows"], ["rows", "sts"])
        or None in counted
    ):
        return None, (unreadable,)
    numbers = {amount.unit: amount.number for amount in counted if amount is not None}
    return Gauge(
        name="your own", stitches=numbers["sts"], repeats=None, repeat_of=None, rows=numbers.get("rows"), over=over,
        hook=None, state=None, before_stitches=None, before_rows=None, note=None, place=written.place(),
    ), ()  # fmt: skip


def _length(written: Written, start: int) -> tuple[Fraction | None, Findings]:
    amount, findings = read_amount(written, start)
    if amount is None:
        return None, findings
    length = inches_of(amount)
    if length is None or length <= 0:
        return None, (BODY_UNREADABLE.at(amount.place, _no_length(amount), hint=BODY_HINT),)
    return length, ()


def _no_length(amount: Amount) -> str:
    return (
        "A body measure must be more than nothing." if amount.number <= 0 else "A body measure needs a unit of length."
    )
