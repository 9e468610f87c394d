"""The workbook's formulas reckoned again by a little reckoner of our own: they come to the graded numbers, exactly."""

from __future__ import annotations

import io
import re
import zipfile
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree

import openpyxl
import pytest

from gradegen import pipeline
from gradegen.design.checked import Checked
from gradegen.write.sheets.formulas import column_letter, snapped_formula
from gradegen.write.sheets.grading import grading_workbook

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
NAMES = ("skerrywick-wrap", "bollard-hat", "gunwale-pullover", "limpet-pullover", "slipway-cardigan")
MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
Cells = dict[tuple[str, str], tuple[str | None, str | None]]  # (sheet, cell) -> (formula, value)


def checked(name: str) -> Checked:
    found = pipeline.check_file(DEMOS / f"{name}.yaml").checked
    assert found is not None
    return found


def cells_of(data: bytes) -> Cells:
    """Office Open XML (ISO/IEC 29500): sheets, their cells, formulas and kept values."""
    book = zipfile.ZipFile(io.BytesIO(data))
    strings = [
        "".join(t.text or "" for t in item.iter(f"{MAIN}t"))
        for item in ElementTree.fromstring(book.read("xl/sharedStrings.xml"))
    ]
    names = [one.get("name") or "" for one in ElementTree.fromstring(book.read("xl/workbook.xml")).iter(f"{MAIN}sheet")]
    found: Cells = {}
    for at, name in enumerate(names, 1):
        for cell in ElementTree.fromstring(book.read(f"xl/worksheets/sheet{at}.xml")).iter(f"{MAIN}c"):
            formula, value = cell.find(f"{MAIN}f"), cell.find(f"{MAIN}v")
            text = value.text if value is not None else None
            if cell.get("t") == "s" and text is not None:
                text = strings[int(text)]
            found[name, cell.get("r") or ""] = (formula.text if formula is not None else None, text)
    return found


class Reckoner:
    """Works formulas out exactly: + - * /, INT, MIN, MAX, and cells of any sheet."""

    def __init__(self, cells: Cells) -> None:
        self.cells = cells
        self.known: dict[tuple[str, str], Fraction] = {}

    def value(self, sheet: str, cell: str) -> Fraction:
        key = (sheet, cell)
        if key not in self.known:
            formula, kept = self.cells[key]
            self.known[key] = self.formula(sheet, formula) if formula is not None else Fraction(str(kept))
        return self.known[key]

    def formula(self, sheet: str, text: str) -> Fraction:
        def cell(found: re.Match[str]) -> str:
            return f"cell({found['sheet'] or sheet!r}, {found['cell'].replace('$', '')!r})".replace("!'", "'")

        text = re.sub(r"(?:(?P<sheet>[A-Za-z]+)!)?(?P<cell>\$?[A-Z]{1,2}\$?\d+)", lambda m: (
            f"cell('{m['sheet'] or sheet}', '{m['cell'].replace('$', '')}')"), text)  # fmt: skip
        text = re.sub(r"(?<![\w'])(\d+)(?![\w'])", r"Fraction(\1)", text)
        names = {
            "cell": self.value, "Fraction": Fraction, "MIN": min, "MAX": max, "INT": lambda n: Fraction(n // 1),
        }  # fmt: skip
        return Fraction(eval(text, {"__builtins__": {}}, names))


@pytest.mark.parametrize("name", NAMES)
def test_formulas_come_to_the_graded_numbers(name: str) -> None:
    found = checked(name)
    cells = cells_of(grading_workbook(found, found.sizes))
    reckoner = Reckoner(cells)
    counts = {text: cell[1:] for (sheet, cell), (_, text) in cells.items() if sheet == "Counts" and cell[0] == "A"}
    for count in found.pattern.counts:
        for at, size in enumerate(found.sizes):
            graded = size.counts.get(count)
            if graded is not None:
                assert reckoner.value("Counts", f"{column_letter(at + 3)}{counts[count]}") == graded.n, (
                    count,
                    size.name,
                )
    rows = {text: int(cell[1:]) for (sheet, cell), (_, text) in cells.items() if sheet == "Finished" and cell[0] == "A"}
    for measure in found.pattern.measures:
        for at, size in enumerate(found.sizes):
            here = column_letter(at + 2)
            assert reckoner.value("Finished", f"{here}{rows[measure]}") == size.measures[measure].printed
            assert reckoner.value("Finished", f"{here}{rows[measure] + 1}") == size.measures[
                measure
            ].printed * Fraction(254, 100)
            assert reckoner.value("Finished", f"{here}{rows[measure] + 2}") == size.measures[measure].drift


def test_a_wider_body_makes_more_stitches() -> None:
    """The formulas are live: one body measure changed, and counts of that size follow, as grading itself would."""
    found = checked("skerrywick-wrap")
    cells = cells_of(grading_workbook(found, found.sizes))
    (girth,) = (cell for (sheet, cell), (_, text) in cells.items() if sheet == "Body" and text == "shoulder girth")
    (band,) = (cell for (sheet, cell), (_, text) in cells.items() if sheet == "Counts" and text == "band")
    before = Reckoner(cells).value("Counts", f"D{band[1:]}")
    cells["Body", f"B{girth[1:]}"] = (None, str(float(cells["Body", f"B{girth[1:]}"][1] or 0) + 12))
    after = Reckoner(cells).value("Counts", f"D{band[1:]}")
    assert after == before + 42  # 12 in more at 14 sts to 4 in; both are on the multiple of 6 plus 3
    assert (after - 3) % 6 == 0


@pytest.mark.parametrize(
    ("raw", "tie", "count"), [("13", "up", 16), ("13", "down", 10), ("1", "up", 4), ("99", "up", 40)]
)
def test_a_half_goes_as_its_rule_says(raw: str, tie: str, count: int) -> None:
    """4, 10, 16 ... 40: thirteen lies half-way between ten and sixteen."""
    text = snapped_formula(raw, "4", "6", "40", tie)
    assert Reckoner({}).formula("x", text) == count


def test_rows_hold_what_was_worked() -> None:
    found = checked("bollard-hat")
    cells = cells_of(grading_workbook(found, found.sizes))
    rows = {text: cell[1:] for (sheet, cell), (_, text) in cells.items() if sheet == "Rows" and cell[0] == "B"}
    assert cells["Rows", f"C{rows['Rnd 8']}"][1] == "48"


def test_the_same_pattern_gives_the_same_bytes() -> None:
    found = checked("bollard-hat")
    assert grading_workbook(found, found.sizes) == grading_workbook(found, found.sizes)


@pytest.mark.parametrize("name", NAMES)
def test_another_library_opens_it_and_finds_the_same_counts(name: str) -> None:
    """Read by openpyxl: every sheet, no cell in error, and the values kept beside the formulas are the graded ones."""
    found = checked(name)
    data = grading_workbook(found, found.sizes)
    kept = openpyxl.load_workbook(io.BytesIO(data), data_only=True)
    live = openpyxl.load_workbook(io.BytesIO(data))
    for sheet in kept:
        assert not [cell.coordinate for row in sheet for cell in row if str(cell.value).startswith("#")]
    rows = {row[0].value: row for row in kept["Counts"]}
    for count in found.pattern.counts:
        shown = [cell.value for cell in rows[count][3 : 3 + len(found.sizes)]]
        assert shown == [size.counts[count].n for size in found.sizes], count
    assert any(cell.data_type == "f" for row in live["Counts"] for cell in row)
