"""Every key of a size table file, for the reader and for editors' completion alike."""

from __future__ import annotations

from typing import Literal

from gradegen.findings import Finding
from gradegen.read.size_tables.bands import BAND, CELLS
from gradegen.read.yaml.fields import Field, Kind, Named, block_of, list_of, names_of
from gradegen.read.yaml.kinds import NUMBER_KIND, POSITIVE, TEXT, choice
from gradegen.read.yaml.nodes import Block, Node

Wearer = Literal["baby", "child", "adult"]

_ONE_WEARER: Kind[Wearer] = choice("baby", "child", "adult")
_WEARER_BY_SIZE = names_of(_ONE_WEARER, "a wearer for each size")


def _read_wearer(node: Node) -> tuple[Wearer | Named[Wearer] | None, tuple[Finding, ...]]:
    return _WEARER_BY_SIZE.read(node) if isinstance(node, Block) else _ONE_WEARER.read(node)


WEARER_KIND: Kind[Wearer | Named[Wearer]] = Kind(
    "baby, child or adult", _read_wearer, {"anyOf": [_ONE_WEARER.schema, _WEARER_BY_SIZE.schema]}
)

USE_IN = Field("in", BAND, "Inches to use instead.")
USE_CM = Field("cm", BAND, "Centimetres to use instead.")

IN = Field("in", CELLS, "Inches as published: per size a number, a band [lowest, highest], or null.")
CM = Field("cm", CELLS, "Centimetres as published, never worked out from the inches.")
TRUST = Field("trust", TEXT, "How far the values can be trusted.", example="published copy seen")
TRUST_CM = Field("trust cm", TEXT, "The same for the centimetres, where it differs.")
NOTE = Field("note", TEXT, "Anything a designer should know about this row.")
KNOWN_ERROR = Field("known error", TEXT, "What is wrong with this row as published.")
USE = Field(
    "use",
    names_of(block_of((USE_IN, USE_CM), "a value to use instead"), "values to use instead, by size"),
    "Values to use instead of the published ones, by size.",
)
COLUMN_FIELDS = (IN, CM, TRUST, TRUST_CM, NOTE, KNOWN_ERROR, USE)

FROM = Field("from", TEXT, "The column it is worked out from.", required=True, example="bust")
SLOPE = Field("slope", NUMBER_KIND, "y = slope * x + intercept.", required=True, example="0.87")
INTERCEPT = Field("intercept", NUMBER_KIND, "In centimetres.", required=True, example="25.6")
RESIDUAL_SD = Field("residual sd", POSITIVE, "How far single bodies lie from the line, centimetres (one sd).")
RANGE_CM = Field("range cm", BAND, "Smallest and largest x of the survey; beyond it the line is extrapolated.")
SOURCE = Field("source", TEXT, "Where the line comes from.")
DERIVED_FIELDS = (FROM, SLOPE, INTERCEPT, RESIDUAL_SD, RANGE_CM, SOURCE, NOTE, TRUST)

TITLE = Field("title", TEXT, "Name of the table as its publisher prints it.", required=True, example="Our own sizes")
PUBLISHER = Field("publisher", TEXT, "Who published it.")
YEAR = Field("year", TEXT, "When.")
ADDRESS = Field("address", TEXT, "Where to look it up.")
ALSO_IN = Field("also printed in", list_of(TEXT, "a list of sources"), "Other printings that were compared.")
WEARER = Field("wearer", WEARER_KIND, "Who wears it: one word, or one per size.", required=True, example="adult")
BY = Field("by", TEXT, "The column a body is looked up by.", required=True, example="bust")
SIZES = Field(
    "sizes", list_of(TEXT, "a list of sizes"), "Size names, smallest first.", required=True, example="[S, M, L]"
)
COLUMNS = Field(
    "columns",
    names_of(block_of(COLUMN_FIELDS, "a column"), "columns by name"),
    "Body measures by name; the names are used in a pattern's measures.",
    required=True,
    example="{bust: {in: [34, 38, 42]}}",
)
DERIVED = Field(
    "derived",
    names_of(block_of(DERIVED_FIELDS, "a derived column"), "derived columns by name"),
    "Body measures no table carries, worked out from another column by a survey's line.",
)
ODDITIES = Field("known oddities", list_of(TEXT, "a list of remarks"), "Published values that look odd, in words.")
SIZE_TABLE_FIELDS = (
    TITLE, PUBLISHER, YEAR, ADDRESS, ALSO_IN, WEARER, BY, SIZES, COLUMNS, DERIVED, ODDITIES,
)  # fmt: skip
