"""Every key of a pattern file, for the reader and for editors' completion alike."""

from __future__ import annotations

from typing import Literal

from gradegen.design.pattern import Shape, Take, Terms, Text
from gradegen.findings import Finding
from gradegen.numbers.rounding import HOUSE_STYLES
from gradegen.read.pattern.begin_keys import WORKED_ON
from gradegen.read.pattern.kinds import (
    PERCENT,
    ROWS,
    SIZES_WANTED,
    SKEIN,
    YARN_BESIDES,
    YARN_USED,
    numbers_each,
)
from gradegen.read.pattern.look_keys import LOOK
from gradegen.read.pattern.picture_keys import PICTURES
from gradegen.read.pattern.relations import RELATION
from gradegen.read.pattern.seam_keys import EDGES, SEAMS
from gradegen.read.pattern.shaping_keys import SHAPING
from gradegen.read.yaml.fields import Field, Given, Kind, block_of, list_of, names_of
from gradegen.read.yaml.kinds import POSITIVE, PROSE, SUM, TEXT, YES_NO, amount, choice, choice_text, whole
from gradegen.read.yaml.nodes import Block, Node

_PARAGRAPHS = list_of(PROSE, "a list of sentences")

DESIGNER_NAME = Field("name", TEXT, "Who made the design.", required=True, example="Demo House")
DESIGNER_HELP = Field("help", TEXT, "Where a maker can ask for help.", example="help@example.org")
DESIGNER_YEAR = Field("year", whole(1000, 9999), "Year of the copyright line.", example="2026")
DESIGNER_ERRATA = Field(
    "errata",
    TEXT,
    "Address of the page with corrections; printed with a code for a telephone.",
    example="https://example.org/wrap-corrections",
)
DESIGNER_FIELDS = (DESIGNER_NAME, DESIGNER_HELP, DESIGNER_YEAR, DESIGNER_ERRATA)

TABLE = Field("table", TEXT, "A ready size table by name, or your own by its path.", required=True, example="women")
FOR = Field("for", SIZES_WANTED, "All sizes of the table, or a list of some.", example="all")
BY = Field("by", TEXT, "The body column a maker chooses her size by.", example="bust")
TAKE: Field[Take] = Field(
    "take", choice("low", "middle", "high"), "Which end of a to-fit band is graded.", example="middle"
)
SIZE_FIELDS = (TABLE, FOR, BY, TAKE)

SAMPLE_SIZE = Field("size", TEXT, "The size of the sample.", required=True, example="M")
SAMPLE_USED = Field("used", YARN_USED, "What the finished sample weighs, or its yarn.", required=True, example="168 g")
YARN_WEIGHT = Field("weight", TEXT, "Yarn weight category by name.", example="medium")
FIBRE = Field("fibre", TEXT, "What it is spun from.", example="wool")
COLOUR = Field("colour", TEXT, "Colour, as a maker would call it.", example="slate")
SKEIN_FIELD = Field("skein", SKEIN, "Length and mass of one skein.", example="200 yd / 100 g")
SAMPLE_STITCHES = Field(
    "stitches",
    names_of(whole(1), "stitches with their numbers"),
    "Its stitches as counted when it was made, so that later changes to its size leave the evidence as it is.",
    example="{dc: 848, ch: 1454}",
)
_MADE = (SAMPLE_SIZE, SAMPLE_USED, SAMPLE_STITCHES)
SAMPLE = Field("sample", block_of(_MADE, "a sample"), "A finished piece and the yarn it took, as evidence.")
TESTERS = Field(
    "testers",
    list_of(block_of(_MADE, "a tester's piece"), "a list of testers' pieces"),
    "What testers' pieces took, each {size: L, used: 190 g}.",
    example="[{size: L, used: 190 g}]",
)
SWATCH_STITCHES = Field("stitches", names_of(whole(1), "stitches with their numbers"), "What it is made of, counted.")
SWATCH_WIDTH = Field(
    "width", amount("length", "6 in"), "Its width, where the stitches were not counted.", example="6 in"
)
SWATCH_HEIGHT = Field("height", amount("length", "6 in"), "Its height.", example="6 in")
SWATCHES = Field(
    "swatches",
    list_of(block_of((SAMPLE_USED, SWATCH_STITCHES, SWATCH_WIDTH, SWATCH_HEIGHT), "a swatch"), "a list of swatches"),
    "Swatches weighed: with their stitches, or with width and height.",
    example="[{used: 9 g, stitches: {dc: 200, ch: 60}}]",
)
UNRAVELLED = Field(
    "unravelled",
    names_of(SUM, "yarn by stitch"),
    "Yarn in one stitch, measured by unravelling; 40 in / 20 where twenty were unravelled.",
    example="{dc: 40 in / 20}",
)
MARGIN = Field("margin", PERCENT, "Percent on top of what the piece uses.", example="10")
PRICE = Field("price", TEXT, "Price of one skein, in your currency.", example="8.50 EUR")
BESIDES = Field(
    "besides",
    names_of(YARN_BESIDES, "yarn by its use"),
    "Yarn for seams, tassels, the swatch.",
    example="{seams: 3 yd}",
)
SEWING = Field(
    "sewing",
    POSITIVE,
    "Lengths of this yarn to sew one length of seam; a line for seams under `besides` replaces it.",
    example="3",
)
TAILS = Field("tails", whole(0, 10_000), "Ends of yarn to weave in.", example="4")
STATED_FIELDS = tuple(
    Field(
        name, numbers_each(unit), f"{name.capitalize()} as printed: one number, or one per size.", example="[2, 2, 3]"
    )
    for name, unit in (("skeins", None), ("yards", "yd"), ("metres", "m"), ("grams", "g"), ("ounces", "oz"))
)
STATED = Field("stated", block_of(STATED_FIELDS, "the amounts stated"), "Amounts you print yourself; they are checked.")
YARN_FIELDS = (
    YARN_WEIGHT, FIBRE, COLOUR, SKEIN_FIELD, SAMPLE, TESTERS, SWATCHES, UNRAVELLED, MARGIN, PRICE, BESIDES, TAILS,
    STATED, SEWING,
)  # fmt: skip

WHAT = Field("what", TEXT, "What is needed.", required=True, example="stitch marker")
NUMBER = Field("number", PROSE, "How many: a number, one per size as 5 (6, 6), or a count in braces.", example="1")
NOTION_FIELDS = (WHAT, NUMBER)
_NOTION_BLOCK = block_of(NOTION_FIELDS, "a notion")


def _read_notion(node: Node) -> tuple[Text | Given | None, tuple[Finding, ...]]:
    return _NOTION_BLOCK.read(node) if isinstance(node, Block) else TEXT.read(node)


NOTION_KIND: Kind[Text | Given] = Kind("a few words", _read_notion, {"anyOf": [TEXT.schema, _NOTION_BLOCK.schema]})

BEFORE_STITCHES = Field("stitches", POSITIVE, "Stitches before washing.", example="13.5")
BEFORE_ROWS = Field("rows", POSITIVE, "Rows before washing.", example="7")
STITCHES_OVER = Field("stitches", POSITIVE, "Stitches over the length.", example="13")
REPEATS = Field("repeats", POSITIVE, "Pattern repeats over the length, in place of stitches.", example="5")
REPEAT_OF = Field("repeat of", whole(1, 1000), "Stitches in one repeat.", example="4")
ROWS_OVER = Field("rows", POSITIVE, "Rows over the length.", example="7")
OVER = Field("over", amount("length", "4 in"), "The length that was measured.", required=True, example="4 in")
HOOK = Field("hook", amount("length", "6 mm"), "The hook used for the swatch.", example="6 mm")
STATE: Field[Literal["blocked", "unblocked"]] = Field(
    "state", choice("blocked", "unblocked"), "How the swatch was measured.", example="blocked"
)
BEFORE = Field("before", block_of((BEFORE_STITCHES, BEFORE_ROWS), "the gauge before washing"), "Gauge before washing.")
GAUGE_NOTE = Field("note", PROSE, "What it was measured in.", example="in pattern")
GAUGE_FIELDS = (STITCHES_OVER, REPEATS, REPEAT_OF, ROWS_OVER, OVER, HOOK, STATE, BEFORE, GAUGE_NOTE)

ACROSS = Field("across", SUM, "The measure these stitches make.", example="around")
ALONG = Field("along", SUM, "The measure these rows make.", example="depth")
SUM_OF = Field("sum", SUM, "A sum of other counts, in place of a measure.", example="2 * band")
COUNT_GAUGE = Field("gauge", TEXT, "The gauge it is worked at; may be left out when there is one.", example="lattice")
MULTIPLE = Field("multiple", whole(1, 10_000), "Stitches (or rows) in one repeat.", example="4")
PLUS = Field("plus", whole(-10_000, 10_000), "Stitches besides the repeats.", example="1")
BASE_EXTRA = Field("base extra", whole(0, 1000), "Chains to make besides the stitches.", example="2")
PARITY: Field[Literal["even", "odd"]] = Field(
    "parity", choice("even", "odd"), "Whether the count must be even or odd.", example="even"
)
LEAST = Field("least", whole(0), "The smallest count allowed.", example="20")
MOST = Field("most", whole(1), "The largest count allowed.", example="400")
TIE: Field[Literal["up", "down"]] = Field(
    "tie", choice("up", "down"), "Which way an exact half between two counts goes.", example="up"
)
BOTH_SIDES = Field("both sides", YES_NO, "Each round adds its height twice (half-twist band).", example="true")
PIECES_SHARING = Field("pieces", whole(1, 100), "How many equal pieces share the measure.", example="1")
CENTRE: Field[Literal["motif", "gap", "same"]] = Field(
    "centre",
    choice("motif", "gap", "same"),
    "What lies in the middle in every size: a motif (odd repeats), a gap (even), or the same whichever it is.",
    example="motif",
)
STEPS: Field[Literal["even"]] = Field(
    "steps", choice("even"), "Even: from size to size it grows by one number of repeats, or that and one more.",
    example="even",
)  # fmt: skip
WEIGHT = Field(
    "weight", POSITIVE, "How much its drift weighs against those of related counts; 1 as a rule.", example="2"
)
PIN = Field("pin", names_of(whole(0), "counts by size"), "The count you want in a size.", example="{M: 84}")
COUNT_FIELDS = (
    ACROSS, ALONG, SUM_OF, COUNT_GAUGE, MULTIPLE, PLUS, BASE_EXTRA, PARITY, LEAST, MOST, TIE, BOTH_SIDES,
    PIECES_SHARING, CENTRE, STEPS, WEIGHT, PIN,
)  # fmt: skip

PIECE_NAME = Field("name", TEXT, "What this piece is called.", required=True, example="Band")
SHAPE: Field[Shape] = Field(
    "shape",
    choice("flat", "joined rounds", "spiral", "half-twist band"),
    "How it is worked.",
    required=True,
    example="flat",
)
WIDTH = Field("width", TEXT, "The measure drawn across the schematic.", example="around")
LENGTH = Field("length", TEXT, "The measure drawn along the schematic.", example="depth")
PIECE_NOTES = Field("notes", _PARAGRAPHS, "Notes for this piece.")
ROWS_FIELD = Field("rows", ROWS, "One row a line, as the trade writes them.", required=True, example="|")
PIECE_FIELDS = (PIECE_NAME, SHAPE, WORKED_ON, WIDTH, LENGTH, EDGES, PIECE_NOTES, ROWS_FIELD)

TITLE = Field("title", TEXT, "Name of the design.", required=True, example="Example Wrap")
VERSION = Field("version", TEXT, "Version of the pattern.", example='"1.0"')
ABOUT = Field("about", PROSE, "One or two sentences for the title page.")
DESIGNER = Field("designer", block_of(DESIGNER_FIELDS, "the designer"), "Who made it.")
TERMS: Field[Terms] = Field("terms", choice("US", "UK"), "US or UK stitch names.", required=True, example="US")
LEVEL = Field("level", choice_text(("basic", "easy", "intermediate", "complex")), "Project level.", example="easy")
WEARER: Field[Literal["baby", "child", "adult"]] = Field(
    "wearer", choice("baby", "child", "adult"), "Who wears it; else as the size table says.", example="adult"
)
UNITS: Field[Literal["inches first", "centimetres first"]] = Field(
    "units", choice("inches first", "centimetres first"), "Which unit is printed first.", example="inches first"
)
ROUNDING = Field("rounding", choice_text(tuple(HOUSE_STYLES)), "How measures are rounded for print.", example="1/4 in")
SIZES = Field(
    "sizes",
    block_of(SIZE_FIELDS, "sizes"),
    "Which sizes are graded.",
    required=True,
    example="{table: women, for: all}",
)
YARN = Field("yarn", names_of(block_of(YARN_FIELDS, "a yarn"), "yarns by letter"), "Yarns by letter, A first.")
NOTIONS = Field("notions", list_of(NOTION_KIND, "a list of notions"), "What else is needed.")
GAUGE = Field(
    "gauge",
    names_of(block_of(GAUGE_FIELDS, "a gauge"), "gauges by stitch pattern"),
    "Gauges by the name of their stitch pattern.",
    required=True,
    example="{lattice: {stitches: 13, rows: 7, over: 4 in}}",
)
MEASURES = Field("measures", names_of(SUM, "measures by name"), "What the finished piece should measure.")
COUNTS = Field("counts", names_of(block_of(COUNT_FIELDS, "a count"), "counts by name"), "How counts are found.")
RELATIONS = Field(
    "relations",
    list_of(RELATION, "a list of relations"),
    "What must hold between counts in every size, as sums of counts.",
    example="[front = neck + 2 * shoulder]",
)
STITCHES = Field("stitches", names_of(PROSE, "stitches by name"), "Stitches the pattern explains itself.")
NOTES = Field("notes", _PARAGRAPHS, "Notes before the instructions.")
PIECES = Field(
    "pieces",
    list_of(block_of(PIECE_FIELDS, "a piece"), "a list of pieces"),
    "The pieces, in working order.",
    required=True,
    example="[{name: Band, rows: ...}]",
)
FINISHING = Field("finishing", _PARAGRAPHS, "What is done at the end.")
CAUTIONS = Field("cautions", _PARAGRAPHS, "Cautions of your own, besides the usual ones.")
LICENCE = Field("licence", PROSE, "What makers may do with finished pieces.")
TIMED_SIZE = Field("size", TEXT, "The size that was timed.", example="M")
HOURS = Field("hours", POSITIVE, "Hours it took.", example="9.5")
PER_MINUTE = Field(
    "per minute", names_of(POSITIVE, "stitches a minute"), "Stitches a minute.", example="{sc: 20, dc: 12}"
)
TIMED = Field("timed", block_of((TIMED_SIZE, HOURS, PER_MINUTE), "a timed piece"), "How long it took you.")
PATTERN_FIELDS = (
    TITLE, VERSION, ABOUT, DESIGNER, TERMS, LEVEL, WEARER, UNITS, ROUNDING, SIZES, YARN, NOTIONS, GAUGE, MEASURES,
    COUNTS, RELATIONS, SHAPING, STITCHES, NOTES, PIECES, SEAMS, FINISHING, CAUTIONS, LICENCE, TIMED, PICTURES,
    LOOK,
)  # fmt: skip
