"""A tester's form: what it asks of one size, and what was sent back in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from gradegen.findings import Place

WORDS = {
    "fit": "How it fits, and where it does not",
    "unclear": "Words or sentences that were not clear",
    "missing": "Abbreviations or stitches that were not explained",
    "changes": "What you did otherwise than written",
    "more": "Anything else",
}
TICKS = {
    "finished": "I made the whole piece.",
    "blocked": "I washed or blocked the piece before I measured it.",
    "photos": "My photos may be shown.",
    "named": "I may be thanked by this name.",
}
ERROR_LINES = 8  # rows of one form in which an error can be told
FIXED = ("fixed-form", "fixed-pattern", "fixed-version", "fixed-size", "fixed-asked")
FORM_VERSION = "1"


@dataclass(frozen=True, slots=True)
class AskedGauge:
    """One gauge as the pattern states it: stitches (or repeats of `repeat_of`) and rows over `over` inches.

    `blocked` False: the pattern counts before washing. `before`: stitches and rows before washing, where it says so.
    `hook` in inches.
    """

    name: str
    stitches: Fraction | None
    rows: Fraction | None
    over: Fraction
    hook: Fraction | None = None
    repeat_of: int | None = None
    blocked: bool = True
    before: tuple[Fraction | None, Fraction | None] = (None, None)

    @property
    def counted(self) -> str:
        """What is counted across."""
        return "stitches" if self.repeat_of is None else "repeats"


@dataclass(frozen=True, slots=True)
class AskedRow:
    """One row that an error can be told of: `at` is its piece and its place in it, from 0."""

    piece: str
    label: str
    at: tuple[int, int]

    @property
    def words(self) -> str:
        """`Yoke, Rnds 4–19`."""
        return f"{self.piece}, {self.label}"


@dataclass(frozen=True, slots=True)
class Asked:
    """All that one form asks: of which pattern, version and size, and what the pattern says there.

    `body`: the body measure that sizes are told apart by. `measures`: finished measures in exact inches. `yarns`:
    letter -> its colour or "".
    """

    pattern: str
    version: str
    size: str
    body: str
    gauges: tuple[AskedGauge, ...]
    yarns: Mapping[str, str]
    measures: Mapping[str, Fraction]
    pieces: tuple[str, ...]
    rows: tuple[AskedRow, ...] = ()


@dataclass(frozen=True, slots=True)
class GaugeMade:
    """A tester's own gauge, brought to the length the pattern counts over; `hook` in inches."""

    name: str
    hook: Fraction | None = None
    before: tuple[Fraction | None, Fraction | None] = (None, None)
    after: tuple[Fraction | None, Fraction | None] = (None, None)


@dataclass(frozen=True, slots=True)
class YarnTaken:
    """What a tester used of one yarn: exact inches and grams as far as given, skeins, and which yarn it was."""

    letter: str
    inches: Fraction | None = None
    grams: Fraction | None = None
    skeins: Fraction | None = None
    words: str = ""


@dataclass(frozen=True, slots=True)
class RowTold:
    """An error a tester tells of a row: as chosen or written, where it stands in the pattern, and what was met."""

    row: str
    at: tuple[int, int] | None
    made: str
    words: str


@dataclass(frozen=True, slots=True)
class FilledForm:
    """One form as sent back. `places`: field name -> its place; line is the page, column the field's number on it."""

    file: str
    asked: Asked
    tester: str
    place: Place = field(compare=False)
    body: Fraction | None = None
    level: str = ""
    gauges: tuple[GaugeMade, ...] = ()
    yarns: tuple[YarnTaken, ...] = ()
    measures: Mapping[str, Fraction] = field(default_factory=dict)
    minutes: Fraction | None = None
    told: tuple[RowTold, ...] = ()
    words: Mapping[str, str] = field(default_factory=dict)
    ratings: Mapping[str, tuple[int | None, int | None]] = field(default_factory=dict)
    ticks: frozenset[str] = frozenset()
    places: Mapping[str, Place] = field(default_factory=dict, compare=False)

    @property
    def who(self) -> str:
        """The tester's name, or the name of the file where none was given."""
        return self.tester or self.file.replace("\\", "/").rsplit("/", 1)[-1]


def field_name(*words: str) -> str:
    """The name of a field: no points, which part the names of nested fields (ISO 32000-1, 12.7.3.2)."""
    return " ".join(words).replace(".", "·")
