"""The proof of a print: every count and measure is read back from the written file and compared with what was worked.

What is compared comes from the graded sizes and the worked rows; the text comes from the bytes of the PDF. Nothing of
what lies between (folding, view values, templates, typesetting) is asked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.rows import Row
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.write.drawing.outline import Schematics
from gradegen.write.drawing.schematic import find_schematics
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.editioned import editioned
from gradegen.write.page.proof_rows import Search, Wanted, row_search, stated_in_size, sums_left_in, wanted_numbers
from gradegen.write.page.read_back import ReadBack, read_back, read_slowly
from gradegen.write.page.typeset import plain_again
from gradegen.write.view.rows import row_sizes, rows_for
from gradegen.write.words.own_words import in_own_words
from gradegen.write.words.phrases import Printing
from gradegen.write.words.unfold import unfold

PRINT_DIFFERS = Rule(
    "print-differs", Severity.INTERNAL, "house", "the written file says something else than was worked"
)
_HINT = "Nothing was written. This is a fault in the program: please report it with the pattern."


@dataclass(frozen=True, slots=True)
class Sought:
    """One row that must stand in the file: its name for people, how it is looked for, and its numbers in every size."""

    row: Row
    name: str
    sizes: tuple[GradedSize, ...]
    search: Search
    wanted: tuple[Wanted, ...]
    worked: tuple[WorkedRow | None, ...]


@dataclass(frozen=True, slots=True)
class Expected:
    """All that a document must say; worked out without it, so that it can be done while the document is laid out."""

    checked: Checked
    printing: Printing
    rows: tuple[Sought, ...]


def prove_print(data: bytes, checked: Checked, edition: Edition) -> tuple[Finding, ...]:
    """A finding for everything that the file says differently; () when every number agrees."""
    return compare_print(data, expect_print(checked, edition))


def expect_print(checked: Checked, edition: Edition) -> Expected:
    """What the document of this edition must say."""
    said = editioned(checked, edition)
    checked, printing = said.checked, said.printing
    worked = {(size, row.row.place): row for size, rows in checked.worked.items() for row in rows if row.applies}
    rows = [
        _sought(row, piece, printing, worked)
        for piece in checked.pattern.pieces
        for row in rows_for(piece, printing.sizes)
    ]
    return Expected(checked, printing, tuple(rows))


def _sought(row: Row, piece: Piece, printing: Printing, worked: Mapping[tuple[str, Place], WorkedRow]) -> Sought:
    row = in_own_words(row, printing)
    sizes, search = row_sizes(row, printing.sizes), row_search(row, printing)
    return Sought(
        row,
        f"{row.label.text or 'A row'} of {piece.name.text}",
        sizes,
        search,
        wanted_numbers(search.listed, printing, sizes),
        tuple(worked.get((size.name, row.place)) for size in sizes),
    )


def compare_print(data: bytes, expected: Expected) -> tuple[Finding, ...]:
    """A finding for every difference between the file and what was expected of it."""
    printed = read_back(data)
    return (*_rows_differ(printed, data, expected), *_measures_differ(printed, expected))


def _rows_differ(printed: ReadBack, data: bytes, expected: Expected) -> Iterator[Finding]:
    text, slow, at = plain_again(printed.text), "", 0
    same: dict[str, int] = {}  # rows so far that read alike: each must stand in the file for itself
    for sought in expected.rows:
        for sum_ in sums_left_in(sought.row, sought.sizes):
            yield _differs(sought.row.place, f"{sought.name} would be printed with {sum_} as it stands.")
        found = sought.search.pattern.search(text, at)
        earlier = same.setdefault(sought.search.pattern.pattern, 0)
        same[sought.search.pattern.pattern] += 1
        if found is not None:
            at = found.end()
        else:
            slow = slow or plain_again(read_slowly(data))
            found = next(islice(sought.search.pattern.finditer(slow), earlier, None), None)
        if found is None:
            yield _differs(sought.row.place, f"{sought.name} does not stand in the file as it was written.")
            continue
        yield from _numbers_differ(sought, found.groups())
        yield from _counts_differ(sought, found.groups()[sought.search.count_from :])


def _numbers_differ(sought: Sought, printed: Sequence[str]) -> Iterator[Finding]:
    """Every number or list of the row against its graded value in every printed size."""
    for text, values in zip(printed, sought.wanted, strict=True):
        shown = unfold(text, len(sought.sizes))
        for at, size in enumerate(sought.sizes if values is not None else ()):
            here = shown[at] if shown else text
            if values is not None and here != values[at]:
                message = f"{sought.name} prints another number."
                yield _differs(sought.row.place, message, size.name, values[at], here)


def _counts_differ(sought: Sought, printed: Sequence[str]) -> Iterator[Finding]:
    """The counts that close the row against what working it made, in every size where it was proved."""
    if len(printed) != len(sought.row.stated):
        return
    for at, (size, worked) in enumerate(zip(sought.sizes, sought.worked, strict=True)):
        if worked is None or worked.status != "proved":
            continue
        for text, stated in zip(printed, sought.row.stated, strict=True):
            made = stated_in_size(stated, worked)
            shown = unfold(text, len(sought.sizes))
            here = shown[at] if shown else text
            if made is not None and here != str(made):
                yield _differs(sought.row.place, f"{sought.name} prints another count.", size.name, str(made), here)


def _measures_differ(printed: ReadBack, expected: Expected) -> Iterator[Finding]:
    """Every finished measure of every printed size in both units, by the tables of the file."""
    printing, style = expected.printing, expected.printing.style
    by_name: dict[str, list[tuple[str, ...]]] = {}
    for name, *cells in printed.rows:
        by_name.setdefault(_bare(name), []).append(tuple(cells))
    drawn = find_schematics(expected.checked, printing)
    for name, place, lengths in _lengths(expected, drawn):
        if len(lengths) != len(printing.sizes):
            continue
        columns = [tuple(style.both(length)[at] for length in lengths) for at in (0, 1)]
        wanted = [columns[0] + columns[1]] if printing.is_one_size else _shared_out(columns, printing)
        letter = drawn.letters.get(name, "")
        shown = [row for key in dict.fromkeys((_bare(letter + name), _bare(name))) for row in by_name.get(key, ())]
        for row in wanted:
            if row not in shown:
                other = next((each for each in shown if each not in wanted), ())
                yield _differs(
                    place,
                    f"The measure {name} is printed otherwise.",
                    None,
                    ", ".join(row),
                    ", ".join(other) or "nothing",
                )


def _lengths(expected: Expected, drawn: Schematics) -> Iterator[tuple[str, Place, list[Fraction]]]:
    """Every measure of the tables and what it comes to in each size: the pattern's own, and what only drawings have."""
    pattern, printing = expected.checked.pattern, expected.printing
    for name, measure in pattern.measures.items():
        yield name, measure.place, [size.measures[name].printed for size in printing.sizes if name in size.measures]
    for name, found in drawn.besides().items():
        yield name, pattern.place, [found[size.name] for size in printing.sizes if size.name in found]


def _shared_out(columns: Sequence[tuple[str, ...]], printing: Printing) -> list[tuple[str, ...]]:
    """The cells of one measure as the tables of the edition share them out."""
    rows = []
    for cells in columns:
        at = 0
        for sizes in printing.tables():
            rows.append(cells[at : at + len(sizes)])
            at += len(sizes)
    return rows


def _bare(name: str) -> str:
    """A measure's name without spaces: where its cell breaks a line, none is read back."""
    return "".join(name.split()).casefold()


def _differs(
    place: Place, message: str, size: str | None = None, expected: str | None = None, found: str | None = None
) -> Finding:
    return PRINT_DIFFERS.at(place, message, size=size, expected=expected, found=found, hint=_HINT)
