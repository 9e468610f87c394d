"""The proof of a print: every count and measure is read back from the written file and compared with what was worked.

What is compared comes from the graded sizes and the worked rows; the text comes from the bytes of the PDF. Nothing of
what lies between (folding, view values, templates, typesetting) is asked.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.rows import Row
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.write.edition import Edition
from gradegen.write.phrases import Printing
from gradegen.write.print_numbers import length_style
from gradegen.write.proof_rows import Wanted, row_search, stated_in_size, sums_left_in, wanted_numbers
from gradegen.write.read_back import ReadBack, read_back, read_slowly
from gradegen.write.typeset import plain_again
from gradegen.write.unfold import unfold
from gradegen.write.view_rows import row_sizes, rows_for

PRINT_DIFFERS = Rule(
    "print-differs", Severity.INTERNAL, "house", "the written file says something else than was worked"
)
_HINT = "Nothing was written. This is a fault in the program: please report it with the pattern."


def prove_print(data: bytes, checked: Checked, edition: Edition) -> tuple[Finding, ...]:
    """A finding for everything that the file says differently; () when every number agrees."""
    printing = Printing(checked.sizes, edition.sizes(checked), length_style(checked.pattern))
    printed = read_back(data)
    return (*_rows_differ(printed, data, checked, printing), *_measures_differ(printed, checked, printing))


def _rows_differ(printed: ReadBack, data: bytes, checked: Checked, printing: Printing) -> Iterator[Finding]:
    text, slow = plain_again(printed.text), ""
    at = 0
    for piece in checked.pattern.pieces:
        for row in rows_for(piece, printing.sizes):
            for sum_ in sums_left_in(row, printing.sizes):
                yield _differs(row.place, f"{_named(row, piece)} would be printed with {sum_} as it stands.")
            search = row_search(row, printing)
            found = search.pattern.search(text, at)
            if found is None:
                slow = slow or plain_again(read_slowly(data))
                found = search.pattern.search(slow)
                if found is None:
                    yield _differs(row.place, f"{_named(row, piece)} does not stand in the file as it was written.")
                    continue
            else:
                at = found.end()
            sizes = row_sizes(row, printing.sizes)
            yield from _numbers_differ(
                row, piece, found.groups(), wanted_numbers(search.listed, printing, sizes), sizes
            )
            yield from _counts_differ(row, piece, found.groups()[search.count_from :], checked, sizes)


def _numbers_differ(
    row: Row, piece: Piece, printed: Sequence[str], wanted: Sequence[Wanted], sizes: Sequence[GradedSize]
) -> Iterator[Finding]:
    """Every number or list of the row against its graded value in every printed size."""
    for text, values in zip(printed, wanted, strict=True):
        if values is None:
            continue
        shown = unfold(text, len(sizes))
        for at, size in enumerate(sizes):
            here = shown[at] if shown else text
            if here != values[at]:
                yield _differs(row.place, f"{_named(row, piece)} prints another number.", size.name, values[at], here)


def _counts_differ(
    row: Row, piece: Piece, printed: Sequence[str], checked: Checked, sizes: Sequence[GradedSize]
) -> Iterator[Finding]:
    """The counts that close the row against what working it made, in every size where it was proved."""
    if len(printed) != len(row.stated):
        return
    for at, size in enumerate(sizes):
        worked = _worked(row, checked.worked.get(size.name, ()))
        if worked is None or worked.status != "proved":
            continue
        for text, stated in zip(printed, row.stated, strict=True):
            made = stated_in_size(stated, worked)
            shown = unfold(text, len(sizes))
            here = shown[at] if shown else text
            if made is not None and here != str(made):
                yield _differs(row.place, f"{_named(row, piece)} prints another count.", size.name, str(made), here)


def _worked(row: Row, rows: Sequence[WorkedRow]) -> WorkedRow | None:
    return next((worked for worked in rows if worked.row.place == row.place and worked.applies), None)


def _named(row: Row, piece: Piece) -> str:
    return f"{row.label.text or 'A row'} of {piece.name.text}"


def _measures_differ(printed: ReadBack, checked: Checked, printing: Printing) -> Iterator[Finding]:
    """Every finished measure of every printed size in both units, by the tables of the file."""
    style = printing.style
    by_name: dict[str, list[tuple[str, ...]]] = {}
    for name, *cells in printed.rows:
        by_name.setdefault(_bare(name), []).append(tuple(cells))
    for name, measure in checked.pattern.measures.items():
        lengths = [size.measures[name].printed for size in printing.sizes if name in size.measures]
        if len(lengths) != len(printing.sizes):
            continue
        columns = [tuple(style.both(length)[at] for length in lengths) for at in (0, 1)]
        wanted = [columns[0] + columns[1]] if printing.is_one_size else columns
        shown = by_name.get(_bare(name), [])
        for row in wanted:
            if row not in shown:
                other = next((each for each in shown if each not in wanted), ())
                yield _differs(
                    measure.place,
                    f"The measure {name} is printed otherwise.",
                    None,
                    ", ".join(row),
                    ", ".join(other) or "nothing",
                )


def _bare(name: str) -> str:
    """A measure's name as it stands in its table, without the letter that points to the drawing."""
    words = name.split()
    if len(words) > 1 and len(words[0]) == 1 and words[0].isupper():
        words = words[1:]
    return "".join(words).casefold()


def _differs(
    place: Place, message: str, size: str | None = None, expected: str | None = None, found: str | None = None
) -> Finding:
    return PRINT_DIFFERS.at(place, message, size=size, expected=expected, found=found, hint=_HINT)
