"""A small sound pattern to which blocks are added, in a folder of its own with a few pictures."""

from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.design.pattern import Pattern
from gradegen.findings import Finding
from gradegen.read.pattern.file import read_pattern

SMALL = """\
title: Gangway Mat
terms: US
sizes: {table: women, for: [S, M, L], by: bust}
gauge: {plain: {stitches: 16, rows: 20, over: 4 in, hook: 4 mm, state: blocked}}
measures: {across: bust / 2}
counts: {wide: {across: across, multiple: 2, plus: 1}}
pieces:
  - name: Mat
    shape: flat
    rows: |
      Row 1: Sc in 2nd ch from hook and in each ch across, turn. ({wide} sc)
      Rows 2-9: Ch 1, sc in each st across, turn. ({wide} sc)
      Row 10: Ch 1, sc in each st across. Fasten off. ({wide} sc)
  - name: Edging
    shape: flat
    rows: |
      Row 1: Ch 11, sc in 2nd ch from hook and in each ch across, turn. (10 sc)
      Row 12 (L only): Ch 1, sc in each st across, turn. (10 sc)
"""
SQUARE = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><rect width="40" height="30"/></svg>'
Read = Callable[[str], tuple[Pattern | None, list[Finding]]]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    inside = tmp_path / "designs"
    inside.mkdir()
    (inside / "mat.svg").write_text(SQUARE, encoding="utf-8")
    (tmp_path / "outside.svg").write_text(SQUARE, encoding="utf-8")
    return inside


@pytest.fixture
def read_with(folder: Path) -> Read:
    """Reads the small pattern with a block added; findings of other rules are left out."""

    def read(block: str) -> tuple[Pattern | None, list[Finding]]:
        path = folder / "mat.yaml"
        path.write_text(SMALL + block, encoding="utf-8")
        pattern, findings = read_pattern(path)
        wanted = ("picture", "look", "accent", "unknown", "missing", "value")
        return pattern, [finding for finding in findings if finding.rule.startswith(wanted)]

    return read
