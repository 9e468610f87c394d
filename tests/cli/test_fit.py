"""`gradegen fit`: the maker between the sizes gets counts on the pattern's own multiple."""

import json
from pathlib import Path


def test_her_own_counts_lie_between_the_sizes_and_on_the_multiple(gradegen, wrap: Path) -> None:
    run = gradegen("fit", wrap, "--body", "bust=43 in", "--json")
    answer = json.loads(run.stdout)
    graded = json.loads(gradegen("grade", wrap, "--json").stdout)
    band = dict(zip(graded["sizes"], (entry["count"] for entry in graded["counts"]["band"]), strict=True))
    assert run.returncode == 0
    assert band["L"] <= answer["counts"]["band"]["count"] <= band["XL"]
    assert answer["counts"]["band"]["count"] % 6 == 3  # a multiple of 6 + 3, as the file says
    assert answer["nearest"]["size"] in ("L", "XL")  # to fit 40-42 and 44-46: 43 lies in the gap
    assert answer["nearest"]["why"]
    assert answer["body"]["bust"] == {"in": 43, "from": "given"}


def test_her_own_gauge_changes_the_counts_and_not_what_she_wants(gradegen, wrap: Path) -> None:
    plain = json.loads(gradegen("fit", wrap, "--body", "bust=41 in", "--json").stdout)
    tight = json.loads(
        gradegen("fit", wrap, "--body", "bust=41 in", "--gauge", "16 sts 8 rows over 4 in", "--json").stdout
    )
    assert tight["counts"]["band"]["count"] > plain["counts"]["band"]["count"]
    assert tight["measures"]["around"]["target_in"] == plain["measures"]["around"]["target_in"]
    band = tight["counts"]["band"]
    assert band["finished_in"] == band["count"] * 4 / 16


def test_on_screen_the_nearest_size_is_named_with_the_reason(gradegen, wrap: Path) -> None:
    text = gradegen("fit", wrap, "--body", "bust=41 in").stdout
    assert "nearest printed size: L (" in text  # L is to fit 40-42 in
    assert "printed L" in text


def test_centimetres_are_as_good_as_inches(gradegen, wrap: Path) -> None:
    inches = gradegen("fit", wrap, "--body", "bust=40 in", "--json").stdout
    assert gradegen("fit", wrap, "--body", "bust=101.6 cm", "--json").stdout == inches  # 1 in = 2.54 cm by definition


def test_what_cannot_be_read_is_two(gradegen, wrap: Path) -> None:
    for arguments in (["--body", "bust"], ["--body", "bust=41 in", "--gauge", "13"], ["--body", "waist=30 in"]):
        run = gradegen("fit", wrap, *arguments)
        assert run.returncode == 2, run.stdout + run.stderr
        assert "  error  " in run.stderr


def test_a_body_beyond_the_sizes_is_warned_about(gradegen, wrap: Path) -> None:
    run = gradegen("fit", wrap, "--body", "bust=80 in")
    assert run.returncode == 0
    assert "body-outside-sizes" in run.stdout
