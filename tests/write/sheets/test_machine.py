"""What other programs read: shapes, numbers, and no lost field."""

import csv
import io
import json
from fractions import Fraction

from gradegen.design.graded import GradedCount, GradedMeasure, GradedSize
from gradegen.findings import Finding, Place, Severity
from gradegen.write.sheets.machine import findings_json, grading_csv, grading_json

PLACE = Place("p.yaml", 3, 5, 3, 9)


def graded(name: str, n: int) -> GradedSize:
    target = Fraction(151, 4)
    finished = Fraction(n) / Fraction(13, 4)
    count = GradedCount(
        "band", n, n + 1, target * Fraction(13, 4), n // 4, target, finished, "down", n - 4, n + 4, "sts", PLACE
    )
    measures = {
        "around": GradedMeasure("around", target, finished, PLACE),
        "depth": GradedMeasure("depth", Fraction(9), None, PLACE),
    }
    return GradedSize(name, 0, "adult", {}, {}, None, measures, {"band": count})


def test_the_shape_of_check_json() -> None:
    finding = Finding(
        "a-rule", Severity.ERROR, PLACE, "é", "M", "Row 2", "1", "2", "w", "h", ((PLACE, "there"),), "b-rule"
    )
    answer = json.loads(findings_json([finding], 7, 2, 1))
    assert list(answer) == ["version", "findings", "proved", "wrong", "not_checked"]
    assert (answer["version"], answer["proved"], answer["wrong"], answer["not_checked"]) == (1, 7, 2, 1)
    place = {"file": "p.yaml", "line": 3, "column": 5, "end_line": 3, "end_column": 9}
    assert answer["findings"] == [
        {
            "rule": "a-rule", "severity": "error", "place": place, "size": "M", "row": "Row 2", "message": "é",
            "expected": "1", "found": "2", "because": "w", "hint": "h",
            "see_also": [{"place": place, "words": "there"}], "follows": "b-rule",
        }
    ]  # fmt: skip


def test_grading_json_holds_one_entry_per_size() -> None:
    answer = json.loads(grading_json([graded("S", 120), graded("M", 124)]))
    assert list(answer) == ["sizes", "measures", "counts", "eases"]
    assert answer["sizes"] == ["S", "M"]
    assert [entry["count"] for entry in answer["counts"]["band"]] == [120, 124]
    first = answer["counts"]["band"][0]
    assert first["raw"] == 122.6875  # 37 3/4 in at 13 sts in 4 in: arithmetic
    assert first["finished_in"] == 36.9231  # 120 * 4 / 13
    assert answer["measures"]["around"][0]["drift_in"] == -0.8269
    assert answer["measures"]["depth"][0] == {
        "target_in": 9, "finished_in": None, "printed_in": 9, "printed_cm": 22.86, "drift_in": 0,
    }  # fmt: skip  # 9 in = 22.86 cm: 1 in = 25.4 mm by definition


def test_grading_csv_is_one_table() -> None:
    lines = list(csv.DictReader(io.StringIO(grading_csv([graded("S", 120), graded("M", 124)]))))
    assert [(line["kind"], line["name"], line["size"]) for line in lines] == [
        ("measure", "around", "S"), ("measure", "around", "M"), ("measure", "depth", "S"), ("measure", "depth", "M"),
        ("count", "band", "S"), ("count", "band", "M"),
    ]  # fmt: skip
    assert lines[4]["count"] == "120"
    assert lines[4]["chain"] == "121"
