"""The arguments of the commands that reckon what the work takes."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import Any

Command = Callable[[Any, str, str, str, str], argparse.ArgumentParser]

WRAP = "shared/patterns/skerrywick-wrap.yaml"


def add_reckoning(commands: Any, command: Command) -> None:
    """Adds `yarn`, `multiples`, `any-size` and `companion`; `command` makes a parser with help and example."""
    _add_yarn(
        command(
            commands,
            "yarn",
            "work out yarn, skeins, cost and time per size",
            f"gradegen yarn {WRAP}",
            "gradegen.cli.reckon.yarn",
        )
    )
    does = "derive from the rows which foundation chains work, and compare with the multiple stated"
    _add_multiples(
        command(commands, "multiples", does, f"gradegen multiples {WRAP}", "gradegen.cli.multiples.multiples")
    )
    example = f'gradegen any-size {WRAP} --from "20 in" --to "80 in" --out build'
    does = "list every count that the whole pattern allows between two widths"
    _add_any_size(command(commands, "any-size", does, example, "gradegen.cli.reckon.any_size"))
    example = f"gradegen companion {WRAP} --stamps stamps.txt"
    does = "write a cue sheet, a description and a practice version for a filmed tutorial"
    _add_companion(command(commands, "companion", does, example, "gradegen.cli.reckon.companion"))


def _add_yarn(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the pattern")
    form = parser.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="for a program")
    form.add_argument("--stitches", action="store_true", help="show how many of each stitch every size takes instead")
    _add_units(parser)


def _add_multiples(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the pattern")
    parser.add_argument("--size", metavar="SIZE", help="the size whose other counts are kept (default: the first)")
    parser.add_argument(
        "--to", dest="reach", type=int, metavar="CHAINS", help="try so many where counts depend on each other"
    )
    parser.add_argument("--json", action="store_true", help="for a program")


def _add_any_size(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the pattern")
    parser.add_argument(
        "--from", dest="low", metavar="WIDTH", help='the narrowest, such as "20 in" (default: the smallest size)'
    )
    parser.add_argument(
        "--to", dest="high", metavar="WIDTH", help='the widest, such as "80 in" (default: the largest size)'
    )
    parser.add_argument("--csv", action="store_true", help="for a spreadsheet")
    _add_units(parser)
    _add_page(parser, "also write it as a PDF page into this folder")


def _add_companion(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the pattern")
    parser.add_argument("--stamps", metavar="FILE", help="time stamps of the film, one a line: 12:45 Rnd 3")
    _add_page(parser, "folder to write into (default: build)", "build")


def _add_units(parser: argparse.ArgumentParser) -> None:
    about = "which unit stands first: inches and yards, or centimetres and metres (default: as the pattern says)"
    parser.add_argument("--units", choices=("in", "cm"), help=about)


def _add_page(parser: argparse.ArgumentParser, about: str, otherwise: str | None = None) -> None:
    parser.add_argument("--out", metavar="DIR", default=otherwise, help=about)
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4", help="paper size (default: a4)")


def add_left(parser: argparse.ArgumentParser) -> None:
    """Adds what `fit` needs to say how far the yarn at hand goes."""
    parser.add_argument(
        "--at", metavar="ROW", help='the row just finished: "Rnd 14"; then --left and --size are needed too'
    )
    parser.add_argument("--left", metavar="AMOUNT", help='the yarn left after it: "38 g" or "70 yd"')
    parser.add_argument("--size", metavar="SIZE", help="the size that is being made")
    parser.add_argument("--yarn", metavar="LETTER", help="which yarn, where there are several (default: the first)")
