"""The keys of the `pictures` block: photos and drawings, each with what it shows in words."""

from __future__ import annotations

from gradegen.design.pictures import PictureSize
from gradegen.read.yaml.fields import Field, block_of, list_of
from gradegen.read.yaml.kinds import PROSE, TEXT, choice

PICTURE_FILE = Field("file", TEXT, "The file, by its path from the pattern.", required=True, example="crown.jpg")
ALT = Field(
    "alt",
    PROSE,
    "What it shows, for those who do not see it; not the caption again.",
    required=True,
    example="The hat from above: six wedges of stitches meet in the middle of the crown.",
)
CAPTION = Field("caption", PROSE, "What is printed below it.", example="The crown after Rnd 9.")
WITH = Field(
    "with",
    TEXT,
    "Where it stands: cover, notes, finishing, a piece by its name, or a row by its label; cover if not said.",
    example="Rnd 9",
)
PICTURE_SIZE: Field[PictureSize] = Field(
    "size",
    choice("quarter page", "half page", "whole page"),
    "The most room it may take; half a page if not said.",
    example="half page",
)
PICTURE_FIELDS = (PICTURE_FILE, ALT, CAPTION, WITH, PICTURE_SIZE)
PICTURES = Field(
    "pictures",
    list_of(block_of(PICTURE_FIELDS, "a picture"), "a list of pictures"),
    "Photos and drawings (JPEG, PNG, WebP, SVG), each with its file and alt text.",
    example="[{file: crown.jpg, alt: The crown from above with its six wedges., with: Rnd 9}]",
)
