"""The keys of the `look` block, here or in a file of its own."""

from __future__ import annotations

from gradegen.design.look import PaperName
from gradegen.design.pattern import Text
from gradegen.findings import Finding
from gradegen.read.yaml.fields import Field, Given, Kind, block_of
from gradegen.read.yaml.kinds import PROSE, TEXT, choice
from gradegen.read.yaml.nodes import Node, Scalar
from gradegen.trade.typefaces import TYPEFACES

LOGO_FILE = Field("file", TEXT, "The file, by its path from here.", required=True, example="logo.svg")
LOGO_ALT = Field("alt", PROSE, "What it shows, in words.", required=True, example="Demo House: a lamp over waves")
LOGO = Field("logo", block_of((LOGO_FILE, LOGO_ALT), "a logo"), "A small picture above the title, with alt text.")
ACCENT = Field("accent", TEXT, "Colour of headings and rules, as red, green, blue in hex.", example='"#2d5a57"')
HEADINGS = Field("headings", TEXT, f"Typeface of title and headings: {', '.join(TYPEFACES)}.", example="Source Serif 4")
TEXT_FACE = Field("text", TEXT, f"Typeface of everything else: {', '.join(TYPEFACES)}.", example="Inter")
PAPER: Field[PaperName] = Field(
    "paper", choice("A4", "Letter"), "Paper where print is not told another.", example="Letter"
)
LOOK_FIELDS = (ACCENT, HEADINGS, TEXT_FACE, PAPER, LOGO)
_LOOK_BLOCK = block_of(LOOK_FIELDS, "a look")


def _read_look(node: Node) -> tuple[Text | Given | None, tuple[Finding, ...]]:
    return TEXT.read(node) if isinstance(node, Scalar) else _LOOK_BLOCK.read(node)


LOOK: Field[Text | Given] = Field(
    "look",
    Kind("a look, or the name of a file with one", _read_look, {"anyOf": [{"type": "string"}, _LOOK_BLOCK.schema]}),
    "What the printed pages look like: here, or the name of a YAML file with the same keys.",
    example="our-look.yaml",
)
