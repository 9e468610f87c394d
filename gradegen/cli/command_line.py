"""The command line: arguments to one pipeline call, findings to an exit code."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Sequence
from typing import TypeAlias

from gradegen.cli.print_options import add_edition_options
from gradegen.cli.reckon_options import add_left, add_reckoning
from gradegen.cli.sheet_options import add_also, add_sheets, add_source
from gradegen.cli.tester_options import add_testers
from gradegen.write.starters.kinds import KINDS

CLEAN, INTERNAL, STOPPED = 0, 3, 130

EXIT_CODES = """exit codes:
  0  no errors
  1  the pattern has errors
  2  the file can't be read, or the arguments are wrong
  3  a fault in gradegen itself"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and gives its exit code; never a traceback."""
    _make_output_safe()
    options = command_line().parse_args(arguments)
    run: Callable[[argparse.Namespace], int] = options.run
    try:
        code = run(options)
        sys.stdout.flush()
    except BrokenPipeError:
        sys.stderr.close()
        return CLEAN
    except KeyboardInterrupt:
        return STOPPED
    except Exception as fault:
        return _own_fault(fault)
    return code


def command_line() -> argparse.ArgumentParser:
    """The parser of all commands."""
    parser = argparse.ArgumentParser(
        prog="gradegen",
        description="A pattern designer's bench: grades crochet sizes, proves every row, prints the pattern.",
        epilog=EXIT_CODES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="show the version and stop")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for add in (_add_new, _add_grade, _add_check, _add_print, _add_fit, _add_explain, _add_schema):
        add(commands)
    add_reckoning(commands, _command)
    add_sheets(commands, _command)
    add_testers(commands, _command)
    return parser


Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"


def _command(commands: Commands, name: str, does: str, example: str, run: str) -> argparse.ArgumentParser:
    parser = commands.add_parser(
        name,
        help=does,
        description=does[0].upper() + does[1:] + ".",
        epilog=f"example:\n  {example}\n\n{EXIT_CODES}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.set_defaults(run=lambda options: _run(run, options))
    return parser


def _add_new(commands: Commands) -> None:
    example = 'gradegen new "Harbour Wrap" --size-table women --kind half-twist'
    parser = _command(commands, "new", "write a commented pattern file to start from", example, "gradegen.cli.new.new")
    parser.add_argument("title", metavar="NAME", help="what the pattern is called")
    parser.add_argument(
        "--kind",
        choices=tuple(KINDS),
        default="half-twist",
        metavar="KIND",
        help=f"what to start from: {', '.join(KINDS)} (default: %(default)s)",
    )
    parser.add_argument(
        "--size-table",
        metavar="TABLE",
        help="women, men, child, baby, head, hand, foot or blanket (default: as the kind needs)",
    )
    parser.add_argument("--out", metavar="DIR", default=".", help="folder to write into (default: here)")


def _add_grade(commands: Commands) -> None:
    example = "gradegen grade shared/patterns/bollard-hat.yaml\n  gradegen grade --table women"
    parser = _command(
        commands,
        "grade",
        "show every count and measure in every size, and how it was rounded",
        example,
        "gradegen.cli.commands.grade",
    )
    parser.add_argument("file", metavar="FILE", nargs="?", help="the pattern")
    parser.add_argument("--table", metavar="TABLE", help="show a body size table with its source instead")
    parser.add_argument(
        "--sensitivity", action="store_true", help="show what half a stitch of gauge does, and what would come nearer"
    )
    form = parser.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="for a program")
    form.add_argument("--csv", action="store_true", help="for a spreadsheet")


def _add_check(commands: Commands) -> None:
    example = "gradegen check shared/patterns/bollard-hat.yaml\n  gradegen check draft.txt --sizes 'S, M, L' --terms UK"
    parser = _command(
        commands,
        "check",
        "work every row in every size and report what contradicts what",
        example,
        "gradegen.cli.commands.check",
    )
    parser.add_argument("file", metavar="FILE", help="the pattern, or an ordinary text file (.txt)")
    parser.add_argument("--json", action="store_true", help="for a program")
    parser.add_argument("--sizes", metavar="SIZES", help='for a plain text file that names no sizes: "S, M, L"')
    parser.add_argument("--terms", choices=("US", "UK"), help="for a plain text file that does not say its terms")
    parser.add_argument("--timings", action="store_true", help="also say how long each part took")


def _add_print(commands: Commands) -> None:
    example = (
        "gradegen print shared/patterns/bollard-hat.yaml --size M --paper letter\n"
        "  gradegen print shared/patterns/bollard-hat.yaml --terms UK --units cm --style large-print"
    )
    parser = _command(
        commands,
        "print",
        "write the pattern as a PDF, all sizes or one",
        example,
        "gradegen.cli.printing.print_pattern",
    )
    parser.add_argument("file", metavar="FILE", help="the pattern")
    which = parser.add_mutually_exclusive_group()
    which.add_argument("--size", metavar="SIZE", help="this size's pages alone")
    which.add_argument("--sizes", metavar="SIZES", help='a chosen few: "S, M, L"')
    which.add_argument("--all-sizes", action="store_true", help="one PDF per size")
    add_edition_options(parser)
    add_also(parser)
    add_source(parser)
    parser.add_argument(
        "--draft", action="store_true", help="print in spite of errors, marked DRAFT, with the findings at the end"
    )
    parser.add_argument("--out", metavar="DIR", default="build", help="folder to write into (default: build)")
    parser.add_argument("--paper", choices=("a4", "letter"), help="paper size (default: that of the look, else a4)")
    parser.add_argument(
        "--jobs", metavar="N", type=_whole, help="sizes printed at the same time (default: one per processor)"
    )


def _add_fit(commands: Commands) -> None:
    example = 'gradegen fit shared/patterns/skerrywick-wrap.yaml --body "bust=41 in" --gauge "13 sts 7 rows over 4 in"'
    parser = _command(
        commands, "fit", "work out the counts for one body between the sizes", example, "gradegen.cli.fit.fit"
    )
    parser.add_argument("file", metavar="FILE", help="the pattern")
    parser.add_argument(
        "--body", metavar="WHAT=LENGTH", action="append", help='"bust=41 in"; may be given several times'
    )
    add_left(parser)
    parser.add_argument("--gauge", metavar="GAUGE", help='the maker\'s own gauge: "13 sts 7 rows over 4 in"')
    parser.add_argument("--json", action="store_true", help="for a program")


def _add_explain(commands: Commands) -> None:
    example = "gradegen explain shared/patterns/bollard-hat.yaml:60 --size M\n  gradegen explain row-numbers-broken"
    parser = _command(
        commands, "explain", "show a row step by step, or what a rule finds", example, "gradegen.cli.explain.explain"
    )
    parser.add_argument("what", metavar="FILE:LINE|RULE", help="a row by file and line, or a rule by its name")
    parser.add_argument("--size", metavar="SIZE", help="the size to work the row in (default: the first)")


def _add_schema(commands: Commands) -> None:
    example = "gradegen schema > pattern.schema.json"
    parser = _command(
        commands,
        "schema",
        "print the JSON Schema of pattern and size-table files, for an editor",
        example,
        "gradegen.cli.commands.schema",
    )
    parser.add_argument(
        "what", choices=("pattern", "size-table"), nargs="?", default="pattern", help="which file (default: pattern)"
    )


class _Version(argparse.Action):
    """Looks the version up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        from importlib.metadata import version

        print(f"gradegen {version('gradegen')}")
        parser.exit()


def _whole(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not 1 <= int(text) <= 64:
        raise argparse.ArgumentTypeError("give a whole number from 1 to 64")
    return int(text)


def _run(name: str, options: argparse.Namespace) -> int:
    from importlib import import_module

    module, _, function = name.rpartition(".")
    command: Callable[[argparse.Namespace], int] = getattr(import_module(module), function)
    return command(options)


def _make_output_safe() -> None:
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


def _own_fault(fault: Exception) -> int:
    import traceback

    frame = traceback.extract_tb(fault.__traceback__)[-1]
    where = f"{frame.filename.replace(chr(92), '/').rsplit('/', 1)[-1]}, line {frame.lineno}"
    print(f"gradegen: a fault in the program ({type(fault).__name__} in {where}): {fault}", file=sys.stderr)
    print("Please report it with the pattern and the command.", file=sys.stderr)
    return INTERNAL
