"""The options of the commands that draw charts, make testers' forms and read them back."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import Any

Command = Callable[[Any, str, str, str, str], argparse.ArgumentParser]


ALSO = ("html", "text", "csv", "xlsx", "shop")


def add_also(parser: argparse.ArgumentParser) -> None:
    """Adds `--also` to printing."""
    parser.add_argument(
        "--also",
        metavar="KINDS",
        type=_kinds,
        default=(),
        help=f"write these besides: {', '.join(ALSO)} (the grading as a table, the text for a shop), with commas",
    )


def add_source(parser: argparse.ArgumentParser) -> None:
    """Adds `--with-source` to printing."""
    parser.add_argument("--with-source", action="store_true", help="put the pattern file itself inside the PDF")


def _kinds(text: str) -> tuple[str, ...]:
    kinds = tuple(dict.fromkeys(kind.strip() for kind in text.split(",") if kind.strip()))
    unknown = [kind for kind in kinds if kind not in ALSO]
    if unknown or not kinds:
        raise argparse.ArgumentTypeError(f"give one or more of {', '.join(ALSO)}, with commas")
    return kinds


def add_sheets(commands: Any, command: Command) -> None:
    """Adds `chart`."""
    _add_chart(commands, command)


def _add_chart(commands: Any, command: Command) -> None:
    example = "gradegen chart shared/patterns/skerrywick-wrap.yaml --piece Wrap --out build"
    parser = command(
        commands,
        "chart",
        "draw stitch charts from the rows as worked, as SVG files",
        example,
        "gradegen.cli.chart.chart",
    )
    parser.add_argument("file", metavar="FILE", help="the pattern")
    parser.add_argument("--piece", metavar="NAME", help="this piece alone (default: every piece that can be drawn)")
    parser.add_argument("--size", metavar="SIZE", help="with this size's row numbers")
    parser.add_argument("--out", metavar="DIR", default="build", help="folder to write into (default: build)")
    parser.add_argument("--low-ink", action="store_true", help="in greys, with nothing tinted")
