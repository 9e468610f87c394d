"""The any-size sheet as text, as a spreadsheet's lines, and as a page."""

from __future__ import annotations

import csv
import io
from fractions import Fraction
from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.rounding import EXACT_INCH
from gradegen.reckon.any_size import AnySizeSheet
from gradegen.write.editions.edition import Paper
from gradegen.write.page.html import laid_out
from gradegen.write.sheets.any_size_view import any_size_view
from gradegen.write.sheets.file import write_sheet
from gradegen.write.sheets.yarn_view import aligned
from gradegen.write.words.phrases import Phrase

Findings = tuple[Finding, ...]


def any_size_text(sheet: AnySizeSheet, checked: Checked) -> str:
    """The sheet for a screen or a mail."""
    view = any_size_view(sheet, checked)
    cells = [(line.cells[0], f"{line.cells[1]} *" if line.is_named else "", *line.cells[2:]) for line in view.lines]
    parts = [view.title, "\n".join(map(words_of, view.about)).replace("Bold lines", "Lines with *")]
    parts.append(aligned(view.heads, cells))
    if view.own_gauge:
        parts.append("\n".join(["Your own gauge", *map(words_of, view.own_gauge), *map(words_of, view.example)]))
    return _keyboard("\n\n".join(parts))


def words_of(phrase: Phrase) -> str:
    """A sentence as plain words."""
    return "".join(part.text for part in phrase)


def _keyboard(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def any_size_csv(sheet: AnySizeSheet, checked: Checked) -> str:
    """One line per size; lengths as decimals."""
    out = io.StringIO()
    lines = csv.writer(out, lineterminator="\n")
    letters = list(sheet.sizes[0].yarn)
    yarns = [f"{what} {letter}" for letter in letters for what in ("yards", "metres", "grams", "skeins")]
    lines.writerow(
        [
            "sizes",
            "chains",
            "stitches",
            "stitches after row 1",
            "repeats",
            "width in",
            "width cm",
            "rows",
            "depth in",
            "depth cm",
            "depth of size",
            *yarns,
        ]
    )
    for one in sheet.sizes:
        cells: list[object] = [" ".join(one.named), one.chains, one.count, one.first_made, one.repeats]
        cells += [_decimal(one.width), _decimal(one.width, cm=True), one.rows]
        cells += [_decimal(one.depth), _decimal(one.depth, cm=True), one.follows]
        for yarn in one.yarn.values():
            cells += [_up(yarn.wanted.yards), _up(yarn.wanted.metres), _up(yarn.wanted.grams), yarn.skeins]
        lines.writerow(["" if cell is None else cell for cell in cells])
    return out.getvalue().rstrip("\n")


def _decimal(inches: Fraction | None, cm: bool = False) -> str:
    return "" if inches is None else decimal_text(inches * EXACT_INCH if cm else inches, 2)


def _up(number: Fraction | None) -> int | None:
    return None if number is None else -int(-number // 1)


def any_size_html(sheet: AnySizeSheet, checked: Checked, paper: Paper = "a4") -> str:
    """The sheet as one HTML page."""
    return laid_out("any_size.html", view=any_size_view(sheet, checked, paper))


def write_any_size(
    sheet: AnySizeSheet, checked: Checked, folder: Path, paper: Paper = "a4"
) -> tuple[tuple[Path, ...], Findings]:
    """The sheet as a PDF in a folder, named after the pattern's file."""
    name = f"{Path(checked.pattern.file).stem}-any-size{'-letter' if paper == 'letter' else ''}.pdf"
    return write_sheet(any_size_html(sheet, checked, paper), folder / name, checked)
