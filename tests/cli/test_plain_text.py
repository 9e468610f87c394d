"""`gradegen check draft.txt`: an ordinary text file, not written for us."""

import json
from pathlib import Path

import pytest

DISC = """Little Disc

Worked in a spiral without joining.

Instructions
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (19)
"""


@pytest.fixture
def disc(tmp_path: Path) -> Path:
    path = tmp_path / "disc.txt"
    path.write_text(DISC, encoding="utf-8")
    return path


def test_the_wrong_count_is_found_at_its_place(gradegen, disc: Path) -> None:
    run = gradegen("check", disc, "--json")
    errors = [finding for finding in json.loads(run.stdout)["findings"] if finding["severity"] == "error"]
    assert run.returncode == 1
    assert [(error["rule"], error["place"]["line"], error["place"]["column"]) for error in errors] == [
        ("stated-count-wrong", 8, 61)
    ]


@pytest.mark.parametrize("sizes", ["S, M, L", "S (M, L)", "S M L"])
def test_sizes_the_text_does_not_name(gradegen, disc: Path, sizes: str) -> None:
    answer = json.loads(gradegen("check", disc, "--json", "--sizes", sizes).stdout)
    assert (answer["proved"], answer["wrong"]) == (6, 3)
    assert [finding["size"] for finding in answer["findings"] if finding["severity"] == "error"] == ["S", "M", "L"]


def test_terms_the_text_does_not_name(gradegen, disc: Path) -> None:
    rules = [finding["rule"] for finding in json.loads(gradegen("check", disc, "--json").stdout)["findings"]]
    named = [
        finding["rule"] for finding in json.loads(gradegen("check", disc, "--json", "--terms", "US").stdout)["findings"]
    ]
    assert "terms-assumed" in rules
    assert "terms-assumed" not in named


def test_a_row_is_explained(gradegen, disc: Path) -> None:
    text = gradegen("explain", f"{disc}:8").stdout
    assert "before  12 sc   = 12 stitches" in text
    assert "after   18 sc   = 18 stitches" in text
    assert "takes 1 st; makes " in text


def test_what_only_a_pattern_file_can_do_is_refused_with_a_reason(gradegen, disc: Path, hat: Path) -> None:
    for arguments in (["grade", disc], ["check", hat, "--terms", "US"], ["check", hat, "--sizes", "S"]):
        run = gradegen(*arguments)
        assert run.returncode == 2
        assert "plain text" in run.stderr
