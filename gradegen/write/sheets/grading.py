"""The grading as a workbook: body, measures, rules, counts, yarn and rows, linked by formulas from sheet to sheet."""

from __future__ import annotations

import datetime
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedCount, GradedMeasure, GradedSize
from gradegen.design.pattern import CountRule
from gradegen.grade.measure.snapped import grid_of
from gradegen.numbers.snap import Grid
from gradegen.write.sheets.formulas import NoFormula, column_letter, in_cells, sheet_formula, snapped_formula

_NO_CLOCK = datetime.datetime(2000, 1, 1)  # the same pattern gives the same bytes
_CM = Fraction(254, 100)


def grading_workbook(checked: Checked, sizes: Sequence[GradedSize]) -> bytes:
    """The workbook of these sizes."""
    import xlsxwriter

    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True})
    pattern = checked.pattern
    book.set_properties({"title": pattern.title.text, "author": _author(checked), "created": _NO_CLOCK})
    sheets = _Sheets(book, checked, tuple(sizes))
    sheets.write_all()
    book.close()
    return out.getvalue()


def _author(checked: Checked) -> str:
    return checked.pattern.designer.name.text if checked.pattern.designer else ""


@dataclass(slots=True)
class _Page:
    """One sheet while it is written."""

    sheet: Any
    name: str
    row: int = 0


@dataclass(slots=True)
class _Sheets:
    """Writes the sheets. `body`, `targets`, `counts`, `chains`: the row that holds a name, on its sheet."""

    book: Any
    checked: Checked
    sizes: tuple[GradedSize, ...]
    body: dict[str, int] = field(default_factory=dict)
    targets: dict[str, int] = field(default_factory=dict)
    rates: dict[str, int] = field(default_factory=dict)
    counts: dict[str, int] = field(default_factory=dict)
    chains: dict[str, int] = field(default_factory=dict)
    looks: dict[str, Any] = field(default_factory=dict)

    def write_all(self) -> None:
        """Every sheet, those that others refer to first."""
        self.looks = {
            "head": self.book.add_format({"bold": True, "bottom": 1}),
            "name": self.book.add_format({"bold": True}),
            "length": self.book.add_format({"num_format": "0.00"}),
            "whole": self.book.add_format({"num_format": "0"}),
            "note": self.book.add_format({"italic": True, "font_color": "#555555"}),
        }
        self._body()
        self._measures()
        self._rules()
        self._counts()
        self._finished()
        self._rows()

    def _page(self, name: str, about: str, *first: str) -> _Page:
        sheet = self.book.add_worksheet(name)
        sheet.write_string(0, 0, about, self.looks["note"])
        for at, head in enumerate((*first, *(size.name for size in self.sizes))):
            sheet.write_string(1, at, head, self.looks["head"])
        sheet.set_column(0, 0, 24)
        sheet.set_column(1, len(first) - 1, 12) if len(first) > 1 else None
        sheet.freeze_panes(2, len(first))
        return _Page(sheet, name, 2)

    def _line(self, page: _Page, names: Sequence[str], cells: Sequence[object], look: str) -> int:
        """One line: numbers as they are, texts that begin with = as formulas with their value."""
        for at, name in enumerate(names):
            page.sheet.write_string(page.row, at, name, self.looks["name"] if at == 0 else None)
        for at, cell in enumerate(cells, len(names)):
            if isinstance(cell, tuple):
                page.sheet.write_formula(page.row, at, f"={cell[0]}", self.looks[look], _number(cell[1]))
            elif isinstance(cell, Fraction) and not _is_short(cell):
                page.sheet.write_formula(page.row, at, f"={in_cells(cell)}", self.looks[look], _number(cell))
            elif isinstance(cell, Fraction | int):
                page.sheet.write_number(page.row, at, _number(cell), self.looks[look])
            elif cell is not None:
                page.sheet.write_string(page.row, at, str(cell))
        page.row += 1
        return page.row - 1

    # sheets ---------------------------------------------------------------------------------------------------------

    def _body(self) -> None:
        end = self.checked.pattern.sizes.take
        page = self._page("Body", f"Body measures in inches, the {end} of each published band.", "Body")
        names = list(dict.fromkeys(name for size in self.sizes for name in size.graded_body))
        for name in names:
            self.body[name] = self._line(page, [name], [size.graded_body.get(name) for size in self.sizes], "length")

    def _measures(self) -> None:
        page = self._page("Measures", "What the finished piece should measure, in inches, from the body.", "Measure")
        for name, measure in self.checked.pattern.measures.items():
            cells = []
            for at, size in enumerate(self.sizes):
                graded = size.measures.get(name)
                cells.append(None if graded is None else self._sum(measure.formula, size, at, graded.target))
            self.targets[name] = self._line(page, [name], cells, "length")

    def _rules(self) -> None:
        sheet = self.book.add_worksheet("Rules")
        sheet.write_string(0, 0, "How each count is found: inches to one stitch or row, and the counts its rows allow.",
                           self.looks["note"])  # fmt: skip
        heads = ("Count", "multiple", "plus", "parity", "least", "most", "a half goes", "first", "step", "last",
                 "inches to one")  # fmt: skip
        for at, head in enumerate(heads):
            sheet.write_string(1, at, head, self.looks["head"])
        sheet.set_column(0, 0, 24)
        sheet.freeze_panes(2, 1)
        for row, rule in enumerate(self.checked.pattern.counts.values(), 2):
            self.rates[rule.name] = row
            for at, cell in enumerate(self._rule_cells(rule)):
                if isinstance(cell, Fraction) and not _is_short(cell):
                    sheet.write_formula(row, at, f"={in_cells(cell)}", None, _number(cell))
                elif isinstance(cell, Fraction | int):
                    sheet.write_number(row, at, _number(cell))
                elif cell:
                    sheet.write_string(row, at, cell, self.looks["name"] if at == 0 else None)

    def _rule_cells(self, rule: CountRule) -> tuple[object, ...]:
        grid = grid_of(rule)
        first, step, last = (grid.first, grid.step, grid.last) if isinstance(grid, Grid) else (None, None, None)
        one = next((size.counts[rule.name] for size in self.sizes if rule.name in size.counts), None)
        inches = one.finished / one.n if one is not None and one.finished is not None and one.n else None
        return (rule.name, rule.multiple, rule.plus, rule.parity, rule.least, rule.most, rule.tie, first, step, last,
                inches)  # fmt: skip

    def _counts(self) -> None:
        page = self._page("Counts", "Every count: what the measure asks for, and the nearest count its rows allow.",
                          "Count", "", "how")  # fmt: skip
        page.sheet.set_column(2, 2, 40)
        for name, rule in self.checked.pattern.counts.items():
            made = [size.counts.get(name) for size in self.sizes]
            if not any(made):
                continue
            raw = self._raw(page, rule, made)
            cells = [self._count(rule, count, raw, at) for at, count in enumerate(made)]
            said = dict.fromkeys(count.rounded for count in made if count is not None and count.rounded)
            how = next(iter(said)) if len(said) == 1 else f"{len(said)} ways, see gradegen grade" if said else ""
            self.counts[name] = self._line(page, [name, "count", how], cells, "whole")
            if any(count is not None and count.chain != count.n for count in made):
                self._chain(page, rule, made)

    def _raw(self, page: _Page, rule: CountRule, made: Sequence[GradedCount | None]) -> int | None:
        """The line of unrounded counts; None for sums of others."""
        formula = rule.across or rule.along
        if formula is None:
            return None
        cells: list[object] = []
        for at, (size, count) in enumerate(zip(self.sizes, made, strict=True)):
            if count is None or count.raw is None or count.target is None:
                cells.append(None)
                continue
            whole = self._sum(formula, size, at, count.target)
            length = whole[0] if isinstance(whole, tuple) else in_cells(count.target)
            cells.append((f"{length}/Rules!$K${self.rates[rule.name] + 1}", count.raw))
        return self._line(page, ["", "asked for", ""], cells, "length")

    def _count(self, rule: CountRule, count: GradedCount | None, raw: int | None, at: int) -> object:
        if count is None:
            return None
        if count.together or count.pinned or rule.pins:
            return count.n
        column = column_letter(at + 3)
        if raw is not None:
            row = self.rates[rule.name] + 1
            last = f"Rules!$J${row}" if rule.most is not None else None
            snapped = snapped_formula(f"{column}{raw + 1}", f"Rules!$H${row}", f"Rules!$I${row}", last, rule.tie)
            return (snapped, Fraction(count.n))
        plain = rule.formula is not None and rule.multiple == 1 and rule.parity is None
        if not plain or rule.least is not None or rule.most is not None:
            return count.n
        assert rule.formula is not None
        return self._sum(rule.formula, self.sizes[at], at, Fraction(count.n))

    def _chain(self, page: _Page, rule: CountRule, made: Sequence[GradedCount | None]) -> None:
        cells: list[object] = []
        for at, count in enumerate(made):
            here = f"{column_letter(at + 3)}{self.counts[rule.name] + 1}"
            cells.append(None if count is None else (f"{here}+{rule.base_extra}", Fraction(count.chain)))
        self.chains[rule.name] = self._line(page, [f"{rule.name} chain", "to chain", ""], cells, "whole")

    def _finished(self) -> None:
        about = "What the counts measure: this is printed, not what was wanted."
        page = self._page("Finished", about, "Measure", "unit")
        for name in self.checked.pattern.measures:
            made = [size.measures.get(name) for size in self.sizes]
            row = self._line(page, [name, "in"], [self._measured(one, at) for at, one in enumerate(made)], "length")
            cm: list[object] = []
            off: list[object] = []
            for at, one in enumerate(made):
                here = f"{column_letter(at + 2)}{row + 1}"
                target = f"Measures!{column_letter(at + 1)}{self.targets[name] + 1}"
                cm.append(one and (f"{here}*127/50", one.printed * _CM))
                off.append(one and (f"{here}-{target}", one.drift))
            self._line(page, ["", "cm"], cm, "length")
            self._line(page, ["", "off, in"], off, "length")

    def _measured(self, measure: GradedMeasure | None, at: int) -> object:
        """The count times its inches, where a count makes the measure; else the measure as it was wanted."""
        if measure is None:
            return None
        for name in self.counts if measure.finished is not None else ():
            count = self.sizes[at].counts.get(name)
            if count is not None and (count.finished, count.target) == (measure.finished, measure.target):
                cell = f"Counts!{column_letter(at + 3)}{self.counts[name] + 1}"
                return (f"{cell}*Rules!$K${self.rates[name] + 1}", measure.printed)
        here = f"Measures!{column_letter(at + 1)}{self.targets[measure.name] + 1}"
        return measure.printed if measure.finished is not None else (here, measure.printed)

    def _rows(self) -> None:
        page = self._page("Rows", "Stitches after each row, as worked and proved; rows of ranges after the last.",
                          "Piece", "Row")  # fmt: skip
        for piece in self.checked.pattern.pieces:
            for row in piece.rows:
                made = [_made(self.checked, size, row.place) for size in self.sizes]
                if any(one is not None for one in made):
                    self._line(page, [piece.name.text, row.label.text], made, "whole")

    # sums -----------------------------------------------------------------------------------------------------------

    def _sum(self, formula: Any, size: GradedSize, at: int, value: Fraction) -> object:
        """A sum as a formula with its value; the value alone where a sheet cannot say it."""
        try:
            return (sheet_formula(formula, lambda name: self._cell(name, at), size.index), value)
        except NoFormula:
            return value

    def _cell(self, name: str, at: int) -> str | None:
        if name in self.targets:
            return f"Measures!{column_letter(at + 1)}{self.targets[name] + 1}"
        if name in self.counts:
            return f"Counts!{column_letter(at + 3)}{self.counts[name] + 1}"
        chain = name.removesuffix(" chain")
        if chain != name and chain in self.counts:
            return f"Counts!{column_letter(at + 3)}{self.chains.get(chain, self.counts[chain]) + 1}"
        if name in self.body:
            return f"Body!{column_letter(at + 1)}{self.body[name] + 1}"
        return None


def _made(checked: Checked, size: GradedSize, place: object) -> int | None:
    rows: Iterator[int | None] = (
        row.made for row in checked.worked.get(size.name, ()) if row.row.place == place and row.applies
    )
    return next(rows, None)


def _is_short(number: Fraction) -> bool:
    """True for a number that decimals can say exactly; others are written as a division."""
    return 10**9 % number.denominator == 0


def _number(number: Fraction | int) -> Any:
    """The number as a spreadsheet keeps it."""
    return number.numerator if number.denominator == 1 else number.numerator / number.denominator
