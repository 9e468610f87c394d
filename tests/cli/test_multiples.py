"""`gradegen multiples`: what a piece's rows allow, on the screen and for a program."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from gradegen.cli.command_line import main

PATTERNS = Path(__file__).parents[2] / "shared" / "patterns"


def test_a_hat_says_that_it_has_no_chain(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["multiples", str(PATTERNS / "bollard-hat.yaml")]) == 0
    assert "begins in a ring, so there is no foundation chain" in capsys.readouterr().out


def test_the_wrap_for_a_program(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["multiples", str(PATTERNS / "skerrywick-wrap.yaml"), "--size", "L", "--json"]) == 0
    (answer,) = json.loads(capsys.readouterr().out)
    assert answer["size"] == "L"
    assert answer["stated"] == [{"multiple": 6, "plus": 3}]
    assert answer["others_held"] == {"multiple": 3, "plus": [0], "from": 6, "besides": []}


def test_related_counts_are_tried_as_far_as_asked(capsys: pytest.CaptureFixture[str]) -> None:
    path = str(PATTERNS / "limpet-pullover.yaml")
    assert main(["multiples", path, "--to", "50", "--json"]) == 0
    (answer,) = json.loads(capsys.readouterr().out)
    assert answer["pieces"] == ["Yoke", "Body", "Neckband", "Sleeves"]
    assert answer["others_solved"] == {"chains": [44, 48], "tried_to": 50}


@pytest.mark.parametrize("more", [["--size", "XXL"], ["--to", "0"], ["--to", "5000"]])
def test_what_can_t_be_is_refused(more: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["multiples", str(PATTERNS / "skerrywick-wrap.yaml"), *more]) == 2
    assert "Traceback" not in capsys.readouterr().err
