"""The keys of the `shaping` block: schedules by name, each from one count to another over so many rows."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Literal

from gradegen.design.formula import Amount
from gradegen.design.schedule import Curve, Ends, Way
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.sums.formula import read_formula
from gradegen.read.yaml.fields import Field, Kind, block_of, list_of, names_of, wrong_kind
from gradegen.read.yaml.kinds import SUM, TEXT, choice, choice_text, whole
from gradegen.read.yaml.nodes import Node, Scalar

POINT_UNREADABLE = Rule(
    "point-unreadable", Severity.ERROR, "file format", "A point of a drawn slope is not two numbers with `by` between."
)
EDGES = ("neck edge", "armhole edge", "front edge", "side edge")
_BY = re.compile(r"\s+by\s+|\s*[x×]\s*", re.IGNORECASE)


def _read_point(node: Node) -> tuple[tuple[Fraction, Fraction] | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, "a point such as 1 in by 3 in"),)
    written = node.trimmed
    cut = _BY.search(written.text)
    ends = ((0, cut.start()), (cut.end(), len(written.text))) if cut else ()
    numbers = [found.number for start, end in ends if isinstance(found := read_formula(written, start, end)[0], Amount)]
    if len(numbers) == 2 and min(numbers) >= 0 and max(numbers) > 0:
        return (numbers[0], numbers[1]), ()
    hint = "Write how far across and how far up, such as 1 in by 3 in."
    return None, (POINT_UNREADABLE.at(node.place, "This is no point of a slope.", hint=hint),)


POINT: Kind[tuple[Fraction, Fraction]] = Kind(
    "a point such as 1 in by 3 in", _read_point, {"type": "string", "examples": ["1 in by 3 in"]}
)

FROM = Field("from", SUM, "The stitches before it: a count or a sum of counts.", example="back")
TO = Field("to", SUM, "The stitches after it.", example="cross back")
OVER = Field("over", SUM, "The rows there are for it: a count, or a length at the gauge.", example="armhole rows")
EACH: Field[Ends] = Field(
    "each", choice("both ends", "one end", "evenly"), "Where an event changes stitches.", example="both ends"
)
EDGE = Field("edge", choice_text(EDGES), "Which edge, where it is one end.", example="neck edge")
BY = Field("by", SUM, "Stitches one event changes at each end; 1 if not said.", example="1")
ROW = Field("row", TEXT, "The name of the row that is the event, in place of a loose change.", example="Dec Row")
WAY: Field[Way] = Field(
    "way",
    choice("rows", "short rows", "stitch heights", "one row", "bust"),
    "Over rows, in short rows, by heights of stitches, spread in one row, or as a bust dart in short rows.",
    example="rows",
)
ON: Field[Literal["any row", "RS rows"]] = Field(
    "on", choice("any row", "RS rows"), "On which rows events may fall.", example="RS rows"
)
ORDER: Field[Literal["block", "interleaved"]] = Field(
    "order", choice("block", "interleaved"), "One rate after the other, or mixed for a smooth line.", example="block"
)
TAIL: Field[Literal["none", "one interval"]] = Field(
    "tail", choice("none", "one interval"), "Rows left plain after the last event.", example="none"
)
FIRST: Field[Literal["next row", "in turn"]] = Field(
    "first", choice("next row", "in turn"), "Whether the first event falls on the next row.", example="next row"
)
LEAVE = Field("leave", SUM, "Stitches left unworked at the start, at each of the ends.", example="6")
RATES = Field(
    "rates", list_of(whole(1, 200), "a list of intervals"), "Two or three given intervals, in order.", example="[2, 4]"
)
CURVE: Field[Curve] = Field(
    "curve",
    choice("straight", "hollow", "round", "cap"),
    "The line it follows: hollow for armholes and necks, round for crowns, cap for sleeve caps.",
    example="hollow",
)
SLOPE = Field(
    "slope",
    list_of(POINT, "a list of points"),
    "A drawn line by its points, across by up; only the proportions count.",
    example='["1 in by 0.5 in", "1.5 in by 2 in", "1.75 in by 4 in"]',
)
STEPS = Field("steps", SUM, "How many steps short rows are worked in.", example="3")
DROP = Field("drop", SUM, "How much length short rows add, where the steps follow from it.", example="1 in")
INSET = Field("inset", SUM, "Bust darts: how far inside the side the first turns lie.", example="1 in")
HEIGHTS = Field(
    "heights", list_of(TEXT, "a list of stitches"), "Stitches from low to high.", example="[sl st, sc, hdc]"
)
STITCH = Field("stitch", TEXT, "The stitch between events of one row; sc if not said.", example="sc")
SHAPING_GAUGE = Field("gauge", TEXT, "The gauge for lengths, where there are several.", example="lattice")
AFTER = Field("after", SUM, "Rows, or a length, after which it begins when worked together.", example="2 in")
TOGETHER = Field(
    "together", list_of(TEXT, "a list of schedules"), "Schedules worked at the same time.", example="[armhole, neck]"
)
SHAPING_FIELDS = (
    FROM, TO, OVER, EACH, EDGE, BY, ROW, WAY, ON, ORDER, TAIL, FIRST, LEAVE, RATES, CURVE, SLOPE, STEPS, DROP, INSET,
    HEIGHTS, STITCH, SHAPING_GAUGE, AFTER, TOGETHER,
)  # fmt: skip
SHAPING = Field(
    "shaping",
    names_of(block_of(SHAPING_FIELDS, "a schedule"), "schedules by name"),
    "Increases and decreases over rows, worked out for every size; {name} in the rows prints the sentence.",
    example="{armhole: {from: back, to: cross back, over: armhole rows}}",
)
