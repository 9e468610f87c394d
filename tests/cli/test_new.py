"""`gradegen new`: what it writes is commented, checks clean at once, and never overwrites."""

import json
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TABLES = [("half-twist", "women"), ("hat", "head"), ("raglan", "women"), ("round-yoke", "child"), ("mitts", "hand")]


@pytest.mark.parametrize(("kind", "table"), TABLES, ids=lambda value: value)
def test_it_checks_clean_and_everything_is_proved(gradegen, tmp_path: Path, kind: str, table: str) -> None:
    made = gradegen("new", "Harbour Piece", "--kind", kind, "--size-table", table, cwd=tmp_path)
    assert made.returncode == 0, made.stderr
    run = gradegen("check", "harbour-piece.yaml", "--json", cwd=tmp_path)
    answer = json.loads(run.stdout)
    assert [finding for finding in answer["findings"] if finding["severity"] != "note"] == []
    assert run.returncode == 0
    assert answer["proved"] > 0
    assert (answer["wrong"], answer["not_checked"]) == (0, 0)


def test_it_is_commented_and_carries_the_name(gradegen, tmp_path: Path) -> None:
    gradegen("new", 'Say "Ahoy": #1', cwd=tmp_path)
    text = (tmp_path / "say-ahoy-1.yaml").read_text("utf-8")
    assert 'title: "Say \\"Ahoy\\": #1"' in text
    assert text.count("\n#") >= 5
    assert "@" not in text.replace("you@example.org", "")
    assert gradegen("check", "say-ahoy-1.yaml", cwd=tmp_path).returncode == 0


def test_what_is_there_stays_as_it_is(gradegen, tmp_path: Path) -> None:
    gradegen("new", "Hat", cwd=tmp_path)
    (tmp_path / "hat.yaml").write_text("mine", encoding="utf-8")
    run = gradegen("new", "Hat", cwd=tmp_path)
    assert run.returncode == 2
    assert "file-exists" in run.stderr
    assert (tmp_path / "hat.yaml").read_text("utf-8") == "mine"


def test_a_table_of_ones_own_is_named_from_the_new_file(gradegen, tmp_path: Path) -> None:
    (tmp_path / "deep").mkdir()
    (tmp_path / "deep" / "mine.yaml").write_text((ROOT / "sizes" / "women.yaml").read_text("utf-8"), encoding="utf-8")
    made = gradegen("new", "Wrap", "--size-table", "deep/mine.yaml", "--out", "deep", cwd=tmp_path)
    assert made.returncode == 0, made.stderr
    assert "{table: " in (tmp_path / "deep" / "wrap.yaml").read_text("utf-8")
    assert gradegen("check", "deep/wrap.yaml", cwd=tmp_path).returncode == 0
