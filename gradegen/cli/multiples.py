"""`gradegen multiples`: which foundation chains the rows allow."""

from __future__ import annotations

import argparse
import sys

from gradegen import pipeline
from gradegen.cli.answers import UNREADABLE, exit_code, refuse, show_findings
from gradegen.write.screen.terminal import show_prose, show_text

MOST = 1_000


def multiples(options: argparse.Namespace) -> int:
    """Shows for every piece which chains come out in all its rows, or why there is none to choose."""
    if options.reach is not None and not 1 <= options.reach <= MOST:
        return refuse(f"--to takes a number of chains from 1 to {MOST}.")
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        show_findings(outcome, sys.stderr)
        return exit_code(outcome) or UNREADABLE
    names = [size.name for size in checked.sizes]
    if options.size is not None and options.size not in names:
        return refuse(f"there is no size {options.size} in {options.file}; its sizes are {', '.join(names)}.")
    from gradegen.reckon.multiples.chains_allowed import chains_allowed
    from gradegen.write.sheets.multiples_text import multiples_json, multiples_text

    slot = names.index(options.size) if options.size is not None else 0
    found = chains_allowed(checked, slot, options.reach)
    if options.json:
        show_text(multiples_json(found))
    else:
        show_prose(multiples_text(found))
    return exit_code(outcome)
