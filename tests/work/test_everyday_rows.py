"""Rows of everyday patterns, toys above all, worked by hand: proved where sound, wrong where a count was changed.

Every row is our own wording; the answers are sums of a line each (common practice, no source).
"""

from pathlib import Path
from typing import cast

import pytest

from gradegen import check_row
from gradegen.design.pattern import Shape

LINES = (Path(__file__).parent / "everyday_rows.txt").read_text("utf-8").splitlines()
ROWS = [line.split(" | ", 3) for line in LINES if line and not line.startswith("#")]


@pytest.mark.parametrize(("edge", "worked", "made", "text"), ROWS, ids=[row[3][:50] for row in ROWS])
def test_everyday_rows(edge: str, worked: str, made: str, text: str) -> None:
    prior = None if edge == "-" else int(edge) if edge.isdigit() else edge
    result = check_row(text, prior=prior, worked=cast(Shape, worked), sizes=("one",))
    if made == "wrong":
        assert result.status == "wrong"
        assert result.findings
    else:
        assert (result.status, result.made) == ("proved", (int(made),))
