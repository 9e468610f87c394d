"""`gradegen new`: a pattern file to start from."""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path

from gradegen import pipeline
from gradegen.cli.answers import CLEAN, UNREADABLE
from gradegen.write.screen.findings import finding_lines
from gradegen.write.screen.terminal import show_lines, show_text, width_of
from gradegen.write.starters.file import write_starter
from gradegen.write.starters.kinds import KINDS


def new(options: argparse.Namespace) -> int:
    """Writes the file and says what to do next."""
    named = options.size_table or KINDS[options.kind].usual
    table, findings = pipeline.read_table(named)
    path = None
    if table is not None:
        folder = Path(options.out)
        path, findings = write_starter(options.title, options.kind, table, _seen_from(folder, named), folder)
    if path is None:
        show_lines(finding_lines(findings, (), width_of(sys.stderr)), sys.stderr)
        return UNREADABLE
    show_text(f"Written: {path}")
    show_text(f"Next: gradegen grade {path}, gradegen check {path}, gradegen print {path}")
    return CLEAN


def _seen_from(folder: Path, named: str) -> str:
    """A ready table by its name; a user's own by its path from the new pattern's folder."""
    if not Path(named).is_file():
        return named
    return Path(os.path.relpath(Path(named).resolve(), folder.resolve())).as_posix()
