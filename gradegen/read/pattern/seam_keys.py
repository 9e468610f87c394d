"""The keys of the `seams` block: edges that meet, stitches picked up, and how a yoke is divided."""

from __future__ import annotations

import re
from fractions import Fraction

from gradegen.design.formula import Formula
from gradegen.design.pattern import Text
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.sums.formula import read_formula
from gradegen.read.yaml.fields import Field, Given, Kind, block_of, list_of, names_of, wrong_kind
from gradegen.read.yaml.kinds import SUM, amount, text_of, whole
from gradegen.read.yaml.nodes import Block, Node, Scalar, head_of

SEAM_UNREADABLE = Rule("seam-unreadable", Severity.ERROR, "file format", "A seam does not name two edges that meet.")
RATIO_UNREADABLE = Rule(
    "ratio-unreadable", Severity.ERROR, "file format", "How many stitches are picked up for how many rows is not said."
)
_MEETS = re.compile(r"\s*=\s*|\s+to\s+")
_RATIO = re.compile(r"\s*(\d+)(?:\s*sts?)?\s+for(?:\s+every)?\s+(\d+)(?:\s*rows?)?\s*$", re.IGNORECASE)
_EXAMPLE = "front shoulder to back shoulder"

Meeting = tuple[Formula, Formula, Text]  # two edges, and the words


def read_meeting(written: Written) -> tuple[Meeting | None, tuple[Finding, ...]]:
    """Two sums that must agree, with = or `to` between them."""
    cut = _MEETS.search(written.text)
    if cut is None or _MEETS.search(written.text, cut.end()):
        message = "A seam joins two edges, with = or `to` between them."
        return None, (SEAM_UNREADABLE.at(written.place(), message, hint=_EXAMPLE),)
    left, findings = read_formula(written, 0, cut.start())
    right, more = read_formula(written, cut.end(), len(written.text))
    if left is None or right is None:
        return None, (*findings, *more)[:1]
    return (left, right, text_of(written)), ()


def _read_meeting(node: Node) -> tuple[Meeting | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, f"a seam such as {_EXAMPLE}"),)
    return read_meeting(node.trimmed)


MEETING: Kind[Meeting] = Kind(
    f"a seam such as {_EXAMPLE}", _read_meeting, {"type": "string", "examples": [_EXAMPLE, "front rows = back rows"]}
)


def _read_ratio(node: Node) -> tuple[Fraction | None, tuple[Finding, ...]]:
    found = _RATIO.match(node.text) if isinstance(node, Scalar) else None
    if found and int(found[1]) and int(found[2]):
        return Fraction(int(found[1]), int(found[2])), ()
    place = head_of(node)
    return None, (RATIO_UNREADABLE.at(place, "This is no ratio of stitches to rows.", hint="3 for 4"),)


RATIO: Kind[Fraction] = Kind("a ratio such as 3 for 4", _read_ratio, {"type": "string", "examples": ["3 for 4"]})

JOIN = Field("join", MEETING, "Two edges that meet.", example=_EXAMPLE)
WITHIN = Field("within", amount("length", "1/2 in"), "How far lengths may differ and be eased in.", example="1/2 in")
SEWN = Field(
    "sewn",
    whole(0, 1000),
    "How many seams of this length are sewn; 0 where rows join it, or where the line only compares.",
    example="2",
)
PICK_UP = Field("pick up", SUM, "Stitches picked up: a count or a sum.", example="neckband")
ALONG_ROWS = Field("along", SUM, "Rows they are picked up along.", example="2 * neck rows")
RATIO_OF = Field("ratio", RATIO, "Stitches for so many rows.", example="3 for 4")
BESIDES_STS = Field("besides", SUM, "Stitches picked up one for one besides.", example="back neck")
BORDER_MULTIPLE = Field("multiple", whole(1, 10_000), "The border's multiple.", example="4")
BORDER_PLUS = Field("plus", whole(-10_000, 10_000), "The border's stitches besides its repeats.", example="2")
DIVIDES = Field("of", SUM, "The stitches of the yoke before it is divided.", example="yoke")
BODY_PARTS = Field("body parts", list_of(SUM, "a list of parts"), "What goes into the body.", example="[front, back]")
SLEEVE_PART = Field("sleeve part", SUM, "What goes into one sleeve.", example="sleeve top")
UNDERARM = Field("underarm", SUM, "The chain at each underarm.", example="underarm")
BODY_ROUND = Field("body", SUM, "The body's first round.", example="body")
SLEEVE_ROUND = Field("sleeve", SUM, "The first round of one sleeve.", example="upper sleeve")
SEAM_FIELDS = (
    JOIN, WITHIN, PICK_UP, ALONG_ROWS, RATIO_OF, BESIDES_STS, BORDER_MULTIPLE, BORDER_PLUS, DIVIDES, BODY_PARTS,
    SLEEVE_PART, UNDERARM, BODY_ROUND, SLEEVE_ROUND, SEWN,
)  # fmt: skip
_BLOCK = block_of(SEAM_FIELDS, "a seam")
SeamGiven = tuple[Scalar | None, Meeting | Given]  # the seam's name, and what stands behind it


def _read_body(node: Node) -> tuple[Meeting | Given | None, tuple[Finding, ...]]:
    return MEETING.read(node) if isinstance(node, Scalar) else _BLOCK.read(node)


_BODY: Kind[Meeting | Given] = Kind(_BLOCK.name, _read_body, {"anyOf": [MEETING.schema, _BLOCK.schema]})
_NAMED = names_of(_BODY, "a seam by its name")


def _read_seam(node: Node) -> tuple[SeamGiven | None, tuple[Finding, ...]]:
    if isinstance(node, Scalar):
        meeting, findings = MEETING.read(node)
        return ((None, meeting) if meeting else None), findings
    if isinstance(node, Block) and len(node.entries) == 1:
        named, findings = _NAMED.read(node)
        (key, value), *_ = named or ((None, None),)
        return ((key, value) if value is not None else None), findings
    given, findings = _BLOCK.read(node)
    return ((None, given) if given is not None else None), findings


SEAM: Kind[SeamGiven] = Kind(
    f"a seam such as {_EXAMPLE}", _read_seam, {"anyOf": [MEETING.schema, _NAMED.schema, _BLOCK.schema]}
)
SEAMS = Field(
    "seams",
    list_of(SEAM, "a list of seams"),
    "Where pieces meet: edges that must agree, pick-ups and divisions, each with a name if wanted.",
    example="[front shoulder to back shoulder, {side: front rows = back rows}]",
)
EDGES = Field(
    "edges",
    names_of(SUM, "edges by name"),
    "Named edges of the piece: counts, or rows, start and end of it.",
    example="{shoulder: shoulder, side: rows}",
)
