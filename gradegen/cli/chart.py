"""`gradegen chart`: stitch charts as SVG files."""

from __future__ import annotations

import argparse
import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from gradegen import pipeline
from gradegen.cli.answers import CLEAN, ERRORS, exit_code, refuse, show_findings
from gradegen.write.screen.terminal import show_text

if TYPE_CHECKING:
    from gradegen.design.checked import Checked
    from gradegen.design.pattern import Piece
    from gradegen.write.words.phrases import Printing


def chart(options: argparse.Namespace) -> int:
    """Writes a chart for each piece that can be drawn, and says of the others why not."""
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    pieces = {piece.name.text.casefold(): piece for piece in checked.pattern.pieces}
    if options.piece is not None and options.piece.casefold() not in pieces:
        named = ", ".join(piece.name.text for piece in checked.pattern.pieces)
        return refuse(f"there is no piece {options.piece} in {options.file}; its pieces are {named}.")
    sizes = [size for size in checked.sizes if options.size in (None, size.name)]
    if not sizes:
        named = ", ".join(size.name for size in checked.sizes)
        return refuse(f"there is no size {options.size} in {options.file}; its sizes are {named}.")
    wanted = list(pieces.values()) if options.piece is None else [pieces[options.piece.casefold()]]
    from gradegen.write.words.phrases import Printing
    from gradegen.write.words.print_numbers import length_style

    printing = Printing(checked.sizes, tuple(sizes), length_style(checked.pattern))
    return _draw(checked, wanted, printing, options)


def _draw(checked: Checked, wanted: list[Piece], printing: Printing, options: argparse.Namespace) -> int:
    from gradegen.write.chart.draw import GREY, Inks
    from gradegen.write.chart.whole import Undrawn, file_svg, piece_chart

    drawn = 0
    for piece in wanted:
        made = piece_chart(checked, piece, printing, inks=GREY if options.low_ink else Inks())
        if isinstance(made, Undrawn):
            show_text(f"{made.name}: no chart, since {made.why}.", sys.stderr)
            continue
        drawn += 1
        path = Path(options.out) / _file_name(checked, piece, options)
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(file_svg(made, printing), encoding="utf-8")
        except OSError as fault:
            return refuse(f"{path} could not be written: {fault.strerror or fault}.")
        show_text(str(path))
    return CLEAN if drawn else ERRORS


def _file_name(checked: Checked, piece: Piece, options: argparse.Namespace) -> str:
    stem = Path(checked.pattern.file).stem
    parts = [stem, piece.name.text.casefold(), options.size or "", "chart"]
    return "-".join(re.sub(r"[^\w.]+", "-", part).strip("-") for part in parts if part) + ".svg"
