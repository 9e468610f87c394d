"""The only writer to a terminal: lines and tables, with colour where a person looks."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any, TextIO

if TYPE_CHECKING:
    from rich.console import Console

    from gradegen.write.screen.findings import Line

PIPED_WIDTH = 200


def is_for_a_person(stream: TextIO) -> bool:
    """True where colour and a progress bar help: a terminal that wants them."""
    wants_plain = bool(os.environ.get("NO_COLOR")) or os.environ.get("TERM") == "dumb"
    return stream.isatty() and not wants_plain


def width_of(stream: TextIO) -> int:
    """Columns to write in: the terminal's own, or 200 where nobody looks."""
    if not stream.isatty():
        return PIPED_WIDTH
    try:
        return max(40, os.get_terminal_size(stream.fileno()).columns)
    except (OSError, ValueError):
        return 80


def console(stream: TextIO) -> Console:
    """A Rich console on this stream; plain text and a fixed width where nobody looks."""
    from rich.console import Console

    person = is_for_a_person(stream)
    width = None if stream.isatty() else PIPED_WIDTH
    return Console(
        file=stream, no_color=not person, highlight=False, width=width, soft_wrap=False, emoji=False, markup=False
    )


def show_lines(lines: Iterable[Line], stream: TextIO | None = None) -> None:
    """Writes lines, coloured for a person and plain for a program; plain lines never load Rich."""
    stream = stream or sys.stdout
    if not is_for_a_person(stream):
        for line in lines:
            print("".join(text for text, _ in line).rstrip(), file=stream)
        return
    from rich.text import Text

    screen = console(stream)
    for line in lines:
        screen.print(Text.assemble(*line), soft_wrap=True)


def show_rich(renderable: Any, stream: TextIO | None = None) -> None:
    """Writes a Rich table; without blanks at the ends of lines where nobody looks."""
    stream = stream or sys.stdout
    screen = console(stream)
    if is_for_a_person(stream):
        screen.print(renderable)
        return
    with screen.capture() as drawn:
        screen.print(renderable)
    print("\n".join(line.rstrip() for line in drawn.get().splitlines()), file=stream)


def show_text(text: str, stream: TextIO | None = None) -> None:
    """Writes one text as it is, with a line end."""
    print(text, file=stream or sys.stdout)


def show_prose(text: str, stream: TextIO | None = None) -> None:
    """Writes sentences and tables; on a terminal, sentences too long for it go on in the next line between words."""
    stream = stream or sys.stdout
    if stream.isatty():
        text = wrapped(text, width_of(stream))
    show_text(text, stream)


def wrapped(text: str, width: int) -> str:
    """The text with its long sentences in several lines; what stands in columns, two blanks apart, stays as it is."""
    from textwrap import fill

    lines = text.split("\n")
    return "\n".join(
        line
        if len(line) <= width or "  " in line.strip()
        else fill(line, width, break_long_words=False, break_on_hyphens=False)
        for line in lines
    )
