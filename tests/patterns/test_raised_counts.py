"""Every stated count of both demos, raised by one in a copy: one error, there, in exactly the sizes that change."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from gradegen.design.rows import Number, Row
from gradegen.findings import Place, Severity
from gradegen.pipeline import check_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
DEMOS = ("skerrywick-wrap", "bollard-hat")


def raised(text: str) -> str:
    """`{band}` to `{band + 1}`, `96` to `97`."""
    return text[:-1] + " + 1}" if text.endswith("}") else str(int(text) + 1)


def changes(row: Row, number: Number, sizes: tuple[str, ...]) -> Iterator[tuple[Place, frozenset[str]]]:
    """Each entry of a stated number, and the sizes that it counts for."""
    working = frozenset(row.sizes or sizes)
    if len(number.places) <= 1:
        yield number.place, working
        return
    for place, size in zip(number.places, sizes, strict=True):
        yield place, working & {size}


def stated(demo: str) -> list[tuple[Place, frozenset[str]]]:
    """Every stated count of a demo."""
    checked = check_file(PATTERNS / f"{demo}.yaml").checked
    assert checked is not None
    sizes = tuple(size.name for size in checked.sizes)
    rows = [row for piece in checked.pattern.pieces for row in piece.rows]
    return [change for row in rows for one in row.stated for change in changes(row, one.number, sizes)]


CASES = [pytest.param(demo, i, id=f"{demo}-{i}") for demo in DEMOS for i in range(len(stated(demo)))]


def test_the_demos_state_their_counts() -> None:
    assert len(stated("skerrywick-wrap")) >= 15
    assert len(stated("bollard-hat")) >= 20


@pytest.mark.parametrize(("demo", "i"), CASES)
def test_a_raised_count_is_the_one_error(demo: str, i: int, tmp_path: Path) -> None:
    place, sizes = stated(demo)[i]
    for file in PATTERNS.iterdir():
        shutil.copy(file, tmp_path)
    copy = tmp_path / f"{demo}.yaml"
    lines = copy.read_text("utf-8").split("\n")
    line = lines[place.line - 1]
    was = line[place.column - 1 : place.end_column - 1]
    lines[place.line - 1] = line[: place.column - 1] + raised(was) + line[place.end_column - 1 :]
    copy.write_text("\n".join(lines), "utf-8")
    errors = [f for f in check_file(copy).findings if f.severity in (Severity.ERROR, Severity.INTERNAL)]
    assert {(f.rule, f.place.line, f.place.column) for f in errors} == {
        ("stated-count-wrong", place.line, place.column)
    }
    assert {f.size for f in errors} == sizes
    assert len(errors) == len(sizes)
