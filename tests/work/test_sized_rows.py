"""Rows of several sizes, worked by hand: proved in every size, or blamed in exactly the sizes that are named."""

from pathlib import Path
from typing import cast

import pytest

from gradegen import check_row
from gradegen.design.pattern import Shape

LINES = (Path(__file__).parent / "sized_rows.txt").read_text("utf-8").splitlines()
ROWS = [line.split(" | ", 3) for line in LINES if line and not line.startswith("#")]


@pytest.mark.parametrize(("made", "edges", "worked", "text"), ROWS, ids=[row[3][:50] for row in ROWS])
def test_sized_rows(made: str, edges: str, worked: str, text: str) -> None:
    sizes = ("S", "M", "L")
    prior = [int(edge) if edge.isdigit() else edge for edge in edges.split(" / ")]
    result = check_row(text, prior=prior, worked=cast(Shape, worked), sizes=sizes)
    if made.startswith("wrong"):
        assert result.status == "wrong"
        blamed = {finding.size for finding in result.findings}
        assert (set(sizes) if None in blamed else blamed) == set(made.split(" ")[1:])
    else:
        assert (result.status, result.made) == ("proved", tuple(int(number) for number in made.split(" ")))
