"""The any-size sheet as strings: a line per count that works, and the sum for a gauge of one's own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.numbers.exact import decimal_text, mixed_text
from gradegen.numbers.rounding import EXACT_INCH, nearest_whole
from gradegen.reckon.any_size import AnySize, AnySizeSheet
from gradegen.write.page.typeset import typeset
from gradegen.write.sheets.yarn_view import lengths_of, up
from gradegen.write.words.phrases import Phrase, plain
from gradegen.write.words.print_numbers import LengthStyle, length_style, lengths_text

BLANK = "______"


@dataclass(frozen=True, slots=True)
class AnySizeLine:
    """One count as printed; `is_named`: a size of the pattern has just this count."""

    cells: tuple[str, ...]
    is_named: bool


@dataclass(frozen=True, slots=True)
class AnySizeView:
    """Everything on the sheet, ready to be set."""

    title: str
    about: tuple[Phrase, ...]
    heads: tuple[str, ...]
    lines: tuple[AnySizeLine, ...]
    own_gauge: tuple[Phrase, ...]
    example: tuple[Phrase, ...]
    paper: str
    foot: str


def any_size_view(sheet: AnySizeSheet, checked: Checked, paper: str = "a4") -> AnySizeView:
    """The sheet's strings, in the pattern's own rounding and order of units."""
    style = length_style(checked.pattern)
    pattern = checked.pattern
    foot = " · ".join(part for part in (pattern.title.text, _version(checked)) if part)
    return AnySizeView(
        title=typeset(f"{pattern.title.text} in any size"),
        about=tuple(plain(line) for line in _about(sheet, checked, style)),
        heads=tuple(typeset(head) for head in heads_of(sheet, checked, style)),
        lines=tuple(AnySizeLine(cells_of(one, sheet, style), bool(one.named)) for one in sheet.sizes),
        own_gauge=tuple(plain(line) for line in own_gauge_lines(sheet, style)),
        example=tuple(plain(line) for line in example_lines(sheet, style)),
        paper=paper,
        foot=foot,
    )


def _version(checked: Checked) -> str:
    return f"Version {checked.pattern.version.text}" if checked.pattern.version else ""


def heads_of(sheet: AnySizeSheet, checked: Checked, style: LengthStyle) -> list[str]:
    """The heads of the columns."""
    first, (unit, other) = sheet.sizes[0], style.units
    letters = list(first.yarn)
    several = len(letters) > 1
    if first.chains is not None:
        heads = ["Chain", "Size", f"Sts after {_first_label(checked)}", "Repeats"]
    else:
        heads = ["Sts", "Size", "Repeats"]
    heads += [f"{_width_name(sheet)} {unit}", other]
    if first.rows is not None:
        heads.append(_rows_word(checked))
    if first.depth is not None:
        heads += [f"{_depth_name(checked)} {unit}", other]
    for letter in letters:
        more = f" {letter}" if several else ""
        lengths = ("yd", "m") if style.inches_first else ("m", "yd")
        heads += [*(f"{length}{more}" for length in lengths), f"Skeins{more}"]
    return heads


def _first_label(checked: Checked) -> str:
    rows = next(iter(checked.worked.values()), ())
    return next((row.label for row in rows if row.made), "row 1")


def _width_name(sheet: AnySizeSheet) -> str:
    formula = sheet.leading.rule.across
    name = getattr(formula, "name", None)
    return name.capitalize() if isinstance(name, str) else "Width"


def _depth_name(checked: Checked) -> str:
    name = next((piece.length.text for piece in checked.pattern.pieces if piece.length is not None), "depth")
    return name.capitalize()


def _rows_word(checked: Checked) -> str:
    return "Rows" if checked.pattern.pieces[0].shape == "flat" else "Rnds"


def cells_of(one: AnySize, sheet: AnySizeSheet, style: LengthStyle) -> tuple[str, ...]:
    """One line of the sheet."""
    cells = [str(one.count if one.chains is None else one.chains), ", ".join(one.named)]
    cells += [_number(one.first_made)] if one.chains is not None else []
    cells += [str(one.repeats), *style.both(one.width)]
    if sheet.sizes[0].rows is not None:
        cells.append(_number(one.rows))
    if sheet.sizes[0].depth is not None:
        cells += ["–", "–"] if one.depth is None else style.both(one.depth)
    for yarn in one.yarn.values():
        cells += [*map(up, lengths_of(yarn.wanted, not style.inches_first)), _number(yarn.skeins)]
    return tuple(cells)


def _number(number: int | None) -> str:
    return "–" if number is None else str(number)


def _about(sheet: AnySizeSheet, checked: Checked, style: LengthStyle) -> Iterator[str]:
    what = "chain" if sheet.sizes[0].chains is not None else "number of stitches"
    yield (
        f"Every {what} here was worked through the whole pattern, row by row, and comes out even; those between do "
        "not, or leave the multiple that the pattern asks for."
    )
    gauge = _gauge_words(checked, sheet)
    if gauge:
        yield f"At a gauge of {gauge}."
    if any(one.named for one in sheet.sizes):
        yield "Bold lines are the sizes of the pattern; the lines between take the depth of the nearest of them."
    if any(one.yarn for one in sheet.sizes):
        yield "Yarn is counted over the stitches of each line, as the evidence has it, with the margin on top."


def _gauge_words(checked: Checked, sheet: AnySizeSheet) -> str:
    rule = sheet.leading.rule
    gauges = checked.pattern.gauges
    gauge = gauges.get(rule.gauge.text) if rule.gauge is not None else next(iter(gauges.values()), None)
    if gauge is None or gauge.stitches is None:
        return ""
    rows = f" and {mixed_text(gauge.rows)} rows" if gauge.rows is not None else ""
    note = f" {gauge.note.text}" if gauge.note else ""
    return f"{mixed_text(gauge.stitches)} sts{rows} over {decimal_text(gauge.over.number)} {gauge.over.unit}{note}"


def formula_parts(sheet: AnySizeSheet) -> tuple[int, int, int] | None:
    """The step in stitches, what is over it, and the chains besides; None where sizes follow no one step."""
    step = sheet.step
    if step is None or sheet.leading.rule.pieces != 1:
        return None
    first = sheet.sizes[0]
    chains = first.chains if first.chains is not None else first.count
    return step, first.count % step, chains - first.count


def own_gauge_lines(sheet: AnySizeSheet, style: LengthStyle) -> Iterator[str]:
    """The sum with blanks to fill in; nothing where sizes follow no one step."""
    parts = formula_parts(sheet)
    if parts is None:
        return
    step, plus, extra = parts
    made = "chains" if sheet.sizes[0].chains is not None else "stitches"
    (over, unit), words = _over(style), "Inches" if style.inches_first else "Centimeters"
    yield f"Stitches in {over} {unit} of my own swatch: {BLANK} ÷ {over} = {BLANK} in 1 {unit}."
    yield f"{words} I want: {BLANK} × stitches in 1 {unit} {BLANK} = {BLANK} stitches."
    less = f"Less {plus}, and divided by {step}" if plus else f"Divided by {step}"
    yield f"{less}: {BLANK}, to the nearest whole number {BLANK} repeats."
    more = "".join(f" + {one}" for one in (plus, extra) if one)
    yield f"Repeats {BLANK} × {step}{more} = {BLANK} {made}."
    if sheet.left_out or all(one.named for one in sheet.sizes):
        least, most = sheet.sizes[0].repeats, sheet.sizes[-1].repeats
        yield f"The rows name the sizes they are for: stay between {least} and {most} repeats."


def _over(style: LengthStyle) -> tuple[int, str]:
    """The length a swatch is counted over."""
    return (4, "in") if style.inches_first else (10, "cm")


def example_lines(sheet: AnySizeSheet, style: LengthStyle) -> Iterator[str]:
    """The sum worked for a hand one stitch tighter than the pattern's, and the width in the middle of the sheet."""
    parts = formula_parts(sheet)
    if parts is None:
        return
    step, plus, extra = parts
    (over, unit), long = _over(style), Fraction(1) if style.inches_first else EXACT_INCH
    counted = Fraction(nearest_whole(over / (sheet.leading.inches * long)) + 1)
    width = Fraction(nearest_whole(sheet.sizes[len(sheet.sizes) // 2].width * long))
    stitches = width * counted / over
    repeats = max(1, nearest_whole((stitches - plus) / step))
    count = repeats * step + plus
    wanted, tight, want = (decimal_text(one) for one in (width, counted, stitches))
    less = f"({want} − {plus}) ÷ {step}" if plus else f"{want} ÷ {step}"
    made = "chains" if sheet.sizes[0].chains is not None else "stitches"
    more = "".join(f" + {one}" for one in (plus, extra) if one)
    yield (
        f"For {wanted} {unit} at {tight} sts in {over} {unit}: {tight} ÷ {over} × {wanted} = {want} stitches; {less} = "
        f"{decimal_text((stitches - plus) / step)}, so {repeats} repeats; {repeats} × {step}{more} = {count + extra} "
        f"{made}, which make {lengths_text([count * over / counted / long], style)}."
    )


def plain_cells(view: AnySizeView) -> Sequence[Sequence[str]]:
    """The cells of every line, for text and for spreadsheets."""
    return [line.cells for line in view.lines]
