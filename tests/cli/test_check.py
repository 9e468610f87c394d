"""`gradegen check`: exit codes, places, one fault one finding, JSON as promised."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.pipeline import check_file

RATTLE = "*hdc in next tr, lamp in next cap; rep from * around, join with sl st in first hdc.\n        ({lamps} hdc"
STATED = "({2 * band} hdc)\n      Rnd 2"


@pytest.mark.parametrize("demo", ["wrap", "hat"])
def test_the_demos_are_clean_and_proved_in_every_size(gradegen, demo: str, request: pytest.FixtureRequest) -> None:
    run = gradegen("check", request.getfixturevalue(demo), "--json")
    answer = json.loads(run.stdout)
    assert run.returncode == 0
    assert [finding for finding in answer["findings"] if finding["severity"] != "note"] == []
    assert answer["proved"] > 80
    assert (answer["wrong"], answer["not_checked"]) == (0, 0)


def test_the_closing_line_says_what_was_proved(gradegen, wrap: Path) -> None:
    closing = gradegen("check", wrap).stdout.splitlines()[-1]
    assert "row-size pairs proved, 0 wrong, 0 not checked" in closing


def test_a_wrong_count_is_one_error_at_its_place_in_every_size(gradegen, wrap_with: Callable[[str, str], Path]) -> None:
    path = wrap_with(STATED, STATED.replace("{2 * band}", "{2 * band + 1}"))
    run = gradegen("check", path, "--json")
    answer = json.loads(run.stdout)
    errors = [finding for finding in answer["findings"] if finding["severity"] == "error"]
    assert run.returncode == 1
    assert {(error["rule"], error["row"]) for error in errors} == {("stated-count-wrong", "Rnd 1")}
    assert [error["size"] for error in errors] == ["XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"]
    line = next(n for n, text in enumerate(path.read_text("utf-8").splitlines(), 1) if "{2 * band + 1}" in text)
    places = {(error["place"]["line"], error["place"]["column"]) for error in errors}
    text = path.read_text("utf-8").splitlines()[line - 1]
    assert places == {(line, text.index("{2 * band + 1}") + 1)}


def test_on_screen_it_is_one_fault_with_its_line_and_marks(gradegen, wrap_with: Callable[[str, str], Path]) -> None:
    path = wrap_with(STATED, STATED.replace("{2 * band}", "{2 * band + 1}"))
    lines = gradegen("check", path).stdout.splitlines()
    heads = [line for line in lines if "  error  " in line]
    assert len(heads) == 1
    assert heads[0].endswith("Rnd 1, all sizes")
    at = lines.index(heads[0])
    assert "{2 * band + 1}" in lines[at + 2]
    assert lines[at + 3].index("^") == lines[at + 2].index("{2 * band + 1}")
    assert "explain stated-count-wrong" in "".join(lines)


def test_a_half_twist_chain_off_its_multiple_is_refused_with_the_nearest_good_chains(
    gradegen, wrap_with: Callable[[str, str], Path]
) -> None:
    path = wrap_with("Foundation: Ch {band}.", "Foundation: Ch {band + 1}.")
    answer = json.loads(gradegen("check", path, "--json").stdout)
    off = [finding for finding in answer["findings"] if finding["rule"] == "foundation-off-multiple"]
    assert len(off) == 9
    for finding in off:
        found = int(finding["found"])
        below, above = map(int, finding["expected"].split(" or "))
        assert (below, above) == (found - 1, found + 5)  # the band is a multiple of 6 + 3
        assert f"ch {below} (" in finding["hint"]
        assert f"ch {above} (" in finding["hint"]
        assert " cm)" in finding["hint"]


def test_a_file_that_cannot_be_read_is_two(gradegen, tmp_path: Path) -> None:
    run = gradegen("check", tmp_path / "none.yaml", "--json")
    answer = json.loads(run.stdout)
    assert run.returncode == 2
    assert [finding["rule"] for finding in answer["findings"]] == ["file-missing"]


def test_yaml_that_cannot_be_read_is_two_with_a_place(gradegen, tmp_path: Path) -> None:
    path = tmp_path / "broken.yaml"
    path.write_text('title: "Hat\nterms: US\n', encoding="utf-8")
    run = gradegen("check", path, "--json")
    places = [finding["place"]["line"] for finding in json.loads(run.stdout)["findings"]]
    assert run.returncode == 2
    assert places
    assert all(1 <= line <= 3 for line in places)


def test_timings_are_said_only_when_asked_for(gradegen, hat: Path) -> None:
    assert "timings" not in json.loads(gradegen("check", hat, "--json").stdout)
    timings = json.loads(gradegen("check", hat, "--json", "--timings").stdout)["timings"]
    assert list(timings) == ["read", "grade", "work", "check"]


def test_plain_output_holds_no_colour_codes(gradegen, wrap_with: Callable[[str, str], Path]) -> None:
    path = wrap_with(STATED, STATED.replace("{2 * band}", "{2 * band + 1}"))
    assert "\x1b" not in gradegen("check", path, FORCE_COLOR="1").stdout


def test_each_entry_of_a_size_list_raised_in_turn_is_one_error_there_in_its_size_alone(
    gradegen, wrap: Path, wrap_with: Callable[[str, str], Path]
) -> None:
    graded = json.loads(gradegen("grade", wrap, "--json").stdout)
    counts = [2 * entry["count"] for entry in graded["counts"]["band"]]
    for at, (size, count) in enumerate(zip(graded["sizes"], counts, strict=True)):
        raised = [*counts[:at], count + 1, *counts[at + 1 :]]
        listed = f"{raised[0]} ({', '.join(map(str, raised[1:5]))}) ({', '.join(map(str, raised[5:]))})"
        path = wrap_with(STATED, STATED.replace("{2 * band}", listed))
        outcome = check_file(path)
        errors = [finding for finding in outcome.findings if finding.severity == "error"]
        line = next(n for n, text in enumerate(path.read_text("utf-8").splitlines(), 1) if listed in text)
        column = path.read_text("utf-8").splitlines()[line - 1].index(str(count + 1)) + 1
        assert [(error.place.line, error.place.column, error.size) for error in errors] == [(line, column, size)]
