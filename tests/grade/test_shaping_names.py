"""A misspelt name in a schedule is told at its place, also where every row but the shaped one still comes out."""

from pathlib import Path

import pytest

from gradegen.findings import Severity
from gradegen.pipeline import check_file, read_table
from gradegen.write.starters.file import starter_text


@pytest.mark.parametrize(
    ("right", "slip"),
    [
        ("ring 1: {from: neck,", "ring 1: {from: nekc,"),
        ("to: cuff, over: sleeve rounds - 3", "to: cuff, over: sleve rounds - 3"),
    ],
)
def test_a_misspelt_name_in_a_schedule_is_told_once(tmp_path: Path, right: str, slip: str) -> None:
    table, _ = read_table("child")
    assert table is not None
    text = starter_text("Some Yoke", "round-yoke", table, "child")
    assert right in text
    path = tmp_path / "yoke.yaml"
    path.write_text(text.replace(right, slip), encoding="utf-8")
    errors = [one for one in check_file(path).findings if one.severity is Severity.ERROR]
    assert [one.rule for one in errors] == ["unknown-name"]
    word = slip.split()[-1].rstrip(",") if "nekc" in slip else "sleve rounds"
    line, column = next(
        (n, row.index(word) + 1) for n, row in enumerate(path.read_text("utf-8").split("\n"), 1) if word in row
    )
    assert (errors[0].place.line, errors[0].place.column) == (line, column)


def test_a_seam_whose_counts_could_not_be_worked_out_is_not_told_to_name_what_it_names(tmp_path: Path) -> None:
    table, _ = read_table("child")
    assert table is not None
    text = starter_text("Some Yoke", "round-yoke", table, "child")
    path = tmp_path / "yoke.yaml"
    path.write_text(text.replace("2 * back + 2 * underarm", "2 * back + 2 * undearm"), encoding="utf-8")
    errors = [one.rule for one in check_file(path).findings if one.severity is Severity.ERROR]
    assert errors == ["unknown-name"]
