"""The `pictures` block of a pattern: every file looked at, and every picture put where it stands."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from gradegen.design.number import Number
from gradegen.design.pattern import Piece, Text
from gradegen.design.pictures import Picture, PictureFile, PictureStand
from gradegen.design.rows import Row
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.pattern import picture_keys as keys
from gradegen.read.pictures.file import find_picture
from gradegen.read.yaml.fields import Given, nearest

STANDS_NOWHERE = Rule(
    "picture-stands-nowhere", Severity.ERROR, "file format", "A picture names a piece or row the pattern does not have."
)
SAYS_NOTHING = Rule(
    "picture-alt-says-nothing", Severity.WARNING, "common practice", "The alt text of a picture tells nothing of it."
)
SAID_TWICE = Rule(
    "picture-said-twice", Severity.WARNING, "common practice", "Alt text and caption of a picture are the same."
)
FEW_PIXELS = Rule("picture-coarse", Severity.WARNING, "common practice", "A photo has too few pixels to be printed.")

Findings = tuple[Finding, ...]
Written = tuple[Given, Text | None, Text | None]  # the block, its caption and its alt text
FEWEST_PIXELS = 600  # on the longer side: 4 in at 150 dots an inch
_PLACES: tuple[PictureStand, ...] = ("cover", "notes", "finishing")
_HOLLOW = ("alt", "photo", "photograph", "image", "picture", "drawing", "graphic", "tbd", "todo", "n/a", "")
_ROUNDS = re.compile(r"\brounds?\b|\brnds?\b|\brows?\b", re.IGNORECASE)


def read_pictures(
    given: Iterable[Written], pieces: Sequence[Piece], folder: Path
) -> tuple[tuple[Picture, ...], Findings]:
    """The pictures in order; what is wrong with a file or a place is a finding and leaves the rest as it is."""
    pictures: list[Picture] = []
    findings: list[Finding] = []
    for block, caption, alt in given:
        name, wanted = block.value(keys.PICTURE_FILE), block.value(keys.WITH)
        if name is None or alt is None:
            continue  # told of where the keys were read
        file, found = find_picture(name, folder)
        findings += [*found, *_alt_faults(alt, caption, name), *_coarse(file, name)]
        stand = _stand(wanted.text, pieces) if wanted is not None else ("cover", -1, 0)
        if stand is None and wanted is not None:
            findings.append(_nowhere(wanted, pieces))
        stands, piece, line = stand or ("cover", -1, 0)
        size = block.value(keys.PICTURE_SIZE) or "half page"
        pictures.append(Picture(name, alt, caption, stands, size, file, piece, line, place=block.place))
    return tuple(pictures), tuple(findings)


def _alt_faults(alt: Text, caption: Text | None, name: Text) -> Iterator[Finding]:
    said = _folded(alt.text)
    stem = Path(name.text).stem
    if said in (*_HOLLOW, _folded(stem), _folded(Path(name.text).name)):
        hint = "Write what a maker would look for in it, in one sentence."
        yield SAYS_NOTHING.at(alt.place, f"“{alt.text[:40]}” does not say what the picture shows.", hint=hint)
    elif caption is not None and said == _folded(caption.text):
        hint = "Let alt say what can be seen, and the caption why it is shown: a voice reads both."
        yield SAID_TWICE.at(alt.place, "A voice would say the same twice.", hint=hint)


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold().rstrip(".")


def _coarse(file: PictureFile | None, name: Text) -> Iterator[Finding]:
    if file is not None and not file.is_scalable and max(file.across, file.up) < FEWEST_PIXELS:
        message = f"The photo has only {file.across} × {file.up} pixels and will be printed small."
        hint = f"Use one with at least {FEWEST_PIXELS} pixels on its longer side; 2000 are plenty."
        yield FEW_PIXELS.at(name.place, message, hint=hint)


def _stand(wanted: str, pieces: Sequence[Piece]) -> tuple[PictureStand, int, int] | None:
    """Where `cover`, `Hat`, `Rnd 9` or `Hat, Rnd 9` is; None where there is no such thing or more than one."""
    for at, piece in enumerate(pieces):
        if piece.name.text == wanted:
            return "piece", at, 0
    folded = _folded(wanted)
    for place in _PLACES:
        if folded == place:
            return place, -1, 0
    for at, piece in enumerate(pieces):
        if folded == _folded(piece.name.text):
            return "piece", at, 0
    found = [(at, row) for at, piece in enumerate(pieces) for row in _rows_named(wanted, piece)]
    return ("row", found[0][0], found[0][1].place.line) if len(found) == 1 else None


def _rows_named(wanted: str, piece: Piece) -> list[Row]:
    """The rows of a piece that go by this label, alone or behind the piece's name; else the range it lies in."""
    name, comma, label = wanted.partition(",")
    if comma and _folded(name) != _folded(piece.name.text):
        return []
    label = _label(label if comma else wanted)
    exact = [row for row in piece.rows if row.label.text and _label(row.label.text) == label]
    number = re.fullmatch(r"(row|rnd)s? (\d+)", label)
    return exact or [row for row in piece.rows if number is not None and _lies_in(number[1], int(number[2]), row)]


def _label(text: str) -> str:
    """`Round 9` and `Rnd 9.` as one; rows and rounds stay apart from each other."""
    return _ROUNDS.sub(lambda found: "row" if "w" in found[0].lower() else "rnd", _folded(text)).strip(" :.")


def _lies_in(kind: str, number: int, row: Row) -> bool:
    if row.label.kind != {"row": "row", "rnd": "round"}[kind]:
        return False
    ends = [_value(end) for end in (row.label.first, row.label.last)]
    last = ends[1] if row.label.last is not None else ends[0]
    return ends[0] is not None and last is not None and ends[0] <= number <= last


def _value(number: Number | None) -> int | None:
    """The value of a number that is the same in every size."""
    return number.values[0] if number is not None and number.formula is None and len(number.values) == 1 else None


def _nowhere(wanted: Text, pieces: Sequence[Piece]) -> Finding:
    owners = [piece.name.text for piece in pieces if _rows_named(wanted.text, piece)]
    label = wanted.text[:40]
    if owners:
        hint = f"Write {owners[0]}, {label}, or another piece before the comma."
        return STANDS_NOWHERE.at(wanted.place, f"More than one row is called {label}.", hint=hint)
    names = [piece.name.text for piece in pieces]
    labels = [row.label.text for piece in pieces for row in piece.rows if row.label.text]
    guess = nearest(wanted.text, (*_PLACES, *names, *labels))
    known = f"Write cover, notes, finishing, the name of a piece ({', '.join(names[:4])}) or a row's label."
    hint = f"Did you mean {guess}? {known}" if guess else known
    return STANDS_NOWHERE.at(wanted.place, f"The pattern has no piece and no row {label}.", hint=hint)
