"""The arguments of `gradegen testers`."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import Any

Command = Callable[[Any, str, str, str, str], argparse.ArgumentParser]


def add_testers(commands: Any, command: Command) -> None:
    """Adds `testers`; `command` makes a parser with help and example."""
    example = (
        "gradegen print shared/patterns/skerrywick-wrap.yaml --form\n"
        "  gradegen testers returned --pattern shared/patterns/skerrywick-wrap.yaml"
    )
    does = "merge the forms that testers filled in: gauge, yarn, measures, time and errors by row"
    parser = command(commands, "testers", does, example, "gradegen.cli.testers.testers")
    parser.add_argument("folder", metavar="DIR", help="the folder with the filled forms (PDF)")
    parser.add_argument(
        "--pattern", metavar="FILE", help="the pattern they tested: for its yarn, rows and all its sizes"
    )
    form = parser.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="for a program")
    form.add_argument("--csv", action="store_true", help="for a spreadsheet")
    form.add_argument(
        "--evidence", action="store_true", help="the testers' weights alone, to paste into the pattern's yarn"
    )
