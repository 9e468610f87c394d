"""The sizes and their finished measures as tables."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.sizes import Cell
from gradegen.write.drawing.outline import Schematics
from gradegen.write.page.typeset import NARROW
from gradegen.write.view.whole import MeasureRow, MeasureTable
from gradegen.write.words.fold import folded
from gradegen.write.words.phrases import Phrase, Printing, plain
from gradegen.write.words.print_numbers import band_text

_MANY, _VERY_MANY = 7, 10


def measure_tables(checked: Checked, printing: Printing, drawn: Schematics | None = None) -> tuple[MeasureTable, ...]:
    """Both units: a table each for many sizes, one with a column each for one size.

    `drawn`: whose letters stand beside the measures; what only the drawings show comes last.
    """
    drawn = drawn or Schematics((), {})
    units = [_unit_rows(checked, printing, unit, drawn) for unit in printing.style.units]
    if not units[0]:
        return ()
    if printing.is_one_size:
        first, second = units
        rows = tuple(replace(a, cells=a.cells + b.cells) for a, b in zip(first, second, strict=True))
        return (MeasureTable("", "Measure", tuple(_UNIT_NAMES[unit] for unit in printing.style.units), rows, "open"),)
    return tuple(
        _sizes_table(
            _UNIT_NAMES[unit], sizes, _unit_rows(checked, replace(printing, sizes=sizes), unit, drawn), printing
        )
        for unit in printing.style.units
        for sizes in printing.tables()
    )


def _sizes_table(
    unit: str, sizes: Sequence[GradedSize], rows: tuple[MeasureRow, ...], printing: Printing
) -> MeasureTable:
    """One unit for some sizes; the sizes stand in its caption where there are several such tables."""
    names = tuple(size.name for size in sizes)
    density = "tight" if len(names) > _VERY_MANY else "close" if len(names) > _MANY else "open"
    caption = unit if len(names) == len(printing.sizes) else f"{unit}, {_run(names)}"
    return MeasureTable(caption, _CORNERS[unit], names, rows, density, printing.marks_of(sizes))


def _run(names: Sequence[str]) -> str:
    return f"size {names[0]}" if len(names) == 1 else f"sizes {names[0]} to {names[-1]}"


_UNIT_NAMES = {"in": "Inches", "cm": "Centimetres"}
_CORNERS = {"Inches": "Size (in)", "Centimetres": "Size (cm)"}  # said again where a table goes on over a page


def _unit_rows(checked: Checked, printing: Printing, unit: str, drawn: Schematics) -> tuple[MeasureRow, ...]:
    """The measures in the pattern's order, each that goes with a body column between that body and the ease."""
    metric = unit == "cm"
    rounding = printing.style.rounding
    show = rounding.centimetres_text if metric else rounding.inches_text
    keys = dict.fromkeys(key.measure for size in printing.sizes for key in size.key_eases)
    by = graded_by(checked)
    has_by = any(key.body == by for size in printing.sizes for key in size.key_eases)
    rows = [] if has_by or not any(size.to_fit for size in printing.sizes) else [_to_fit(by, printing, metric)]
    for name in checked.pattern.measures:
        finished = _finished(name, drawn.letters, printing, show)
        rows += _fit_rows(name, finished, by, printing, metric, show) if name in keys else [finished]
    if not keys and any(size.ease is not None for size in printing.sizes):
        rows.append(MeasureRow("", "Ease", tuple(_ease(size.ease, show) for size in printing.sizes)))
    return (*rows, *_only_drawn(drawn, printing, show))


def _to_fit(by: str, printing: Printing, metric: bool) -> MeasureRow:
    return MeasureRow("", f"To fit {by}", tuple(_cell(size.to_fit, metric) for size in printing.sizes))


def _fit_rows(
    name: str, finished: MeasureRow, by: str, printing: Printing, metric: bool, show: Callable[[Fraction], str]
) -> list[MeasureRow]:
    """The body, the finished measure and the ease between them."""
    eases = [next((key for key in size.key_eases if key.measure == name), None) for size in printing.sizes]
    column = next(key.body for key in eases if key is not None)
    title = f"To fit {column}" if column == by else f"{column.replace('_', ' ').capitalize()}, body"
    body = tuple(_cell(size.body.get(column), metric) for size in printing.sizes)
    ease = tuple(_ease(key.ease if key else None, show) for key in eases)
    named = f"Ease, {name}" if printing.is_spoken else "Ease"  # a voice has no rows one below the other
    return [MeasureRow("", title, body, "body"), finished, MeasureRow("", named, ease, "ease")]


def _only_drawn(drawn: Schematics, printing: Printing, show: Callable[[Fraction], str]) -> Iterator[MeasureRow]:
    """Measures that have no name in the pattern, but stand on a drawing."""
    for name, lengths in drawn.besides().items():
        cells = tuple(show(lengths[size.name]) if size.name in lengths else "–" for size in printing.sizes)
        yield MeasureRow(drawn.letters.get(name, ""), name.capitalize(), cells)


def graded_by(checked: Checked) -> str:
    """The body column that sizes are told apart by."""
    by = checked.pattern.sizes.by
    return by.text if by else checked.table.by


def _cell(cell: Cell | None, metric: bool) -> str:
    return "–" if cell is None else band_text(cell.cm if metric else cell.inches, metric=metric)


def _finished(name: str, letters: Mapping[str, str], printing: Printing, show: Callable[[Fraction], str]) -> MeasureRow:
    cells = [show(size.measures[name].printed) if name in size.measures else "–" for size in printing.sizes]
    return MeasureRow(letters.get(name, ""), name.capitalize(), tuple(cells))


def _ease(ease: Fraction | None, show: Callable[[Fraction], str]) -> str:
    if ease is None:
        return "–"
    text = show(ease)
    return text if text.startswith("−") or text == "0" else "+" + text


def size_sentences(checked: Checked, printing: Printing) -> tuple[Phrase, ...]:
    """How the sizes are to be read: the end of the band that was graded, the fit, and the key of every list."""
    said = [_graded_end(checked, printing), _fit(printing.sizes)]
    if checked.table.title:
        said.append(f"Body measures: {checked.table.title} ({checked.table.publisher}).")
    if any(size.to_fit and size.to_fit.extrapolated for size in printing.sizes):
        said.append(_beyond_survey(printing))
    return tuple(plain(text) for text in said if text)


def _graded_end(checked: Checked, printing: Printing) -> str:
    """Which end of the to-fit band the measures are for; nothing where no size has a band."""
    bands = [size.to_fit.inches or size.to_fit.cm for size in printing.sizes if size.to_fit]
    if not any(band and band.low != band.high for band in bands):
        return ""
    end = {"low": "low end", "middle": "middle", "high": "high end"}[checked.pattern.sizes.take]
    return f"Finished measures are graded for the {end} of the {graded_by(checked)} given."


def _fit(sizes: Sequence[GradedSize]) -> str:
    fits = [size.fit for size in sizes if size.fit]
    if not fits:
        return ""
    if len(set(fits)) == 1:
        return f"Fit: {fits[0]}."
    runs: dict[str, list[str]] = {}
    for size in sizes:
        if size.fit:
            runs.setdefault(size.fit, []).append(size.name)
    return "Fit: " + "; ".join(f"{fit} in {', '.join(names)}" for fit, names in runs.items()) + "."


def _beyond_survey(printing: Printing) -> str:
    names = [size.name for size in printing.sizes if size.to_fit and size.to_fit.extrapolated]
    if printing.is_one_size:
        return "The body measure of this size lies beyond the survey it comes from and is extrapolated."
    return f"Extrapolated beyond the survey: {', '.join(names)}."


def size_key(printing: Printing) -> str:
    """The sizes in the shape every list has: `XS (S, M, L) (1X, 2X, 3X)`, with their marks."""
    names, marks = [size.name for size in printing.sizes], printing.marks_of(printing.sizes)
    return folded([f"{mark}{NARROW}{name}" for mark, name in zip(marks, names, strict=True)] if marks else names)
