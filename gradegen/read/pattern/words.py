"""Parts of a pattern made of words: rows, own stitches, notes; size lists and names in braces are found in them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from gradegen.design.pattern import Notion, Piece, Text
from gradegen.design.rows import Definition, Number
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.numbers.exact import read_number
from gradegen.read.notation.filled_rows import names_schedule
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.rows import read_rows
from gradegen.read.notation.sizes.braces import find_braces, told_once
from gradegen.read.notation.sizes.lists import find_lists
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.pattern import keys
from gradegen.read.pattern.begin_keys import WORKED_ON, unknown_piece
from gradegen.read.pattern.picture_keys import ALT, CAPTION, PICTURES
from gradegen.read.pattern.seam_keys import EDGES
from gradegen.read.yaml.fields import Given, nearest

UNKNOWN_MEASURE = Rule("unknown-measure", Severity.ERROR, "file format", "A measure that the pattern does not have.")
NUMBER_NEEDED = Rule("number-needed", Severity.ERROR, "file format", "How many there are is not given as a number.")

Findings = tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Words:
    """What the words of a pattern came to. `faults` are about the file's own keys, `findings` about the words."""

    definitions: tuple[Definition, ...]
    notions: tuple[Notion, ...]
    notes: tuple[Text, ...]
    pieces: tuple[Piece, ...]
    finishing: tuple[Text, ...]
    cautions: tuple[Text, ...]
    about: Text | None
    licence: Text | None
    pictures: tuple[tuple[Given, Text | None, Text | None], ...]  # block, caption, alt text
    faults: Findings
    findings: Findings


class WordReader:
    """Reads words of one pattern, gathering findings; `names` grows by each stitch the pattern defines."""

    def __init__(self, names: RowNames) -> None:
        self.names = names
        self.findings: list[Finding] = []
        self.faults: list[Finding] = []

    def read(self, given: Given) -> Words:
        """All words of the pattern, own stitches first since rows name them."""
        definitions = self._definitions(given)
        return Words(
            definitions=definitions,
            notions=self._notions(given),
            notes=self._texts(given.value(keys.NOTES)),
            pieces=self._pieces(given),
            finishing=self._texts(given.value(keys.FINISHING)),
            cautions=self._texts(given.value(keys.CAUTIONS)),
            about=self._optional(given.value(keys.ABOUT)),
            licence=self._optional(given.value(keys.LICENCE)),
            pictures=tuple(self._picture(part) for part in given.value(PICTURES) or ()),
            faults=tuple(self.faults),
            findings=told_once(self.findings),
        )

    def _definitions(self, given: Given) -> tuple[Definition, ...]:
        found: dict[str, Definition] = {}
        for key, written in given.value(keys.STITCHES) or ():
            if written is None:
                continue
            definition, findings = read_definition(key.text, written, self.names)
            self.findings += findings
            if definition is not None:
                found[key.text] = definition
                self.names = replace(self.names, definitions=dict(found))
        return tuple(found.values())

    def _text(self, written: Written) -> Text:
        known = self.names.counts | self.names.measures
        lists, findings = find_lists(written, self.names.sizes, known)
        self.findings += (*findings, *find_braces(written, self.names, known))
        return Text(written.text, written.place(), lists)

    def _texts(self, written: tuple[Written, ...] | None) -> tuple[Text, ...]:
        return tuple(self._text(part) for part in written or ())

    def _optional(self, written: Written | None) -> Text | None:
        return self._text(written) if written is not None else None

    def _picture(self, given: Given) -> tuple[Given, Text | None, Text | None]:
        return given, self._optional(given.value(CAPTION)), self._optional(given.value(ALT))

    def _notions(self, given: Given) -> tuple[Notion, ...]:
        notions: list[Notion] = []
        for notion in given.value(keys.NOTIONS) or ():
            if isinstance(notion, Text):
                notions.append(Notion(notion, None))
            elif what := notion.value(keys.WHAT):
                number = notion.value(keys.NUMBER)
                notions.append(Notion(what, self._number(number) if number else None))
        return tuple(notions)

    def _number(self, written: Written) -> Number | None:
        """`5`, one number per size, or a count in braces."""
        text, place = written.text.strip(), written.place()
        plain = read_number(text)
        if plain is not None and plain.denominator == 1 and plain >= 0:
            return Number((int(plain),), place=place, places=(place,))
        for found in self._text(written).lists:
            if written.text[found.start : found.end].strip() == text:
                values = tuple(int(value) if value.isdigit() else None for value in found.values)
                return Number(values, found.formula, place=place)
        hint = "Write a number, one per size as 5 (6, 6), or a count in braces as {buttons}."
        self.faults.append(NUMBER_NEEDED.at(place, f"“{text[:40]}” is no number.", hint=hint))
        return None

    def _pieces(self, given: Given) -> tuple[Piece, ...]:
        pieces: list[Piece] = []
        for part in given.value(keys.PIECES) or ():
            piece = self._piece(part)
            if piece is None:
                continue
            if piece.begin is not None:
                unknown = unknown_piece(piece.begin, tuple(one.name.text for one in pieces))
                self.faults += [unknown] if unknown else []
            pieces.append(piece)
        return tuple(pieces)

    def _piece(self, given: Given) -> Piece | None:
        name, shape, written = given.value(keys.PIECE_NAME), given.value(keys.SHAPE), given.value(keys.ROWS_FIELD)
        width, length = given.value(keys.WIDTH), given.value(keys.LENGTH)
        for measure in (width, length):
            if measure is not None and measure.text not in self.names.measures:
                self.faults.append(unknown_measure(measure, tuple(sorted(self.names.measures))))
        notes = self._texts(given.value(keys.PIECE_NOTES))
        rows, findings = read_rows(written, self.names) if written is not None else ((), ())
        waits = written is not None and names_schedule(written.text, self.names.schedules)
        self.findings += () if waits else findings  # these rows are read again with their shaping
        self.findings += self._braces(written) if written is not None else ()
        if name is None or shape is None:
            return None
        edges = {key.text: formula for key, formula in given.value(EDGES) or () if formula is not None}
        filled = written if waits else None
        begin = given.value(WORKED_ON)
        return Piece(name, shape, notes, tuple(rows), width, length, name.place, edges, filled, begin)

    def _braces(self, rows: Written) -> Findings:
        known = self.names.counts | self.names.measures | self.names.schedules
        return tuple(find_braces(rows, self.names, known))


def unknown_measure(name: Text, known: tuple[str, ...]) -> Finding:
    """The finding for a measure that is not among the pattern's."""
    guess = nearest(name.text, known)
    hint = f"Did you mean {guess}?" if guess else f"The measures are {', '.join(known)}." if known else None
    return UNKNOWN_MEASURE.at(name.place, f"There is no measure {name.text}.", hint=hint)
