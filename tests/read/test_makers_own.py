"""What a maker says about herself, read exactly, or refused with a place."""

from fractions import Fraction

import pytest

from gradegen.read.makers_own import read_body, read_own_gauge


def test_body_measures_become_exact_inches() -> None:
    body, findings = read_body(["bust=41 in", "upper arm = 33 cm", "waist=36 1/2 in"])
    assert findings == ()
    # 1 in = 2.54 cm by definition
    assert body == {"bust": Fraction(41), "upper arm": Fraction(3300, 254), "waist": Fraction(73, 2)}


@pytest.mark.parametrize(
    "text", ["bust", "bust 41 in", "=41 in", "bust=", "bust=41", "bust=41 sts", "bust=-3 in", "bust=0 in"]
)
def test_what_is_no_body_measure_is_refused(text: str) -> None:
    body, findings = read_body([text])
    assert body == {}
    assert len(findings) == 1
    assert findings[0].place.file == "--body"


def test_a_measure_given_twice_is_refused() -> None:
    assert len(read_body(["bust=41 in", "bust=42 in"])[1]) == 1


@pytest.mark.parametrize(
    "text",
    [
        "13 sts 7 rows over 4 in",
        "13 sts, 7 rows per 4 in",
        "13 sts and 7 rows = 4 in",
        "13 sts x 7 rows to 4 in",
        "7 rows 13 sts over 4 in",
        '13 stitches 7 rounds over 4"',
    ],
)
def test_a_gauge_as_makers_write_it(text: str) -> None:
    gauge, findings = read_own_gauge(text)
    assert findings == ()
    assert gauge is not None
    assert (gauge.stitches, gauge.rows, gauge.over.number, gauge.over.unit) == (13, 7, 4, "in")


def test_rows_may_be_left_out_and_numbers_may_be_broken() -> None:
    gauge, _ = read_own_gauge("13.5 sts over 10 cm")
    assert gauge is not None
    assert (gauge.stitches, gauge.rows, gauge.over.unit) == (Fraction(27, 2), None, "cm")


NO_GAUGES = """
13|13 sts|7 rows over 4 in|13 over 4 in|13 sts over 0 in|13 sts over 4|0 sts over 4 in
13 sts 14 sts over 4 in|13 sts over 4 in over 2 in|a b over c
"""


@pytest.mark.parametrize("text", ["", *NO_GAUGES.strip().replace("\n", "|").split("|")])
def test_what_is_no_gauge_is_refused(text: str) -> None:
    gauge, findings = read_own_gauge(text)
    assert gauge is None
    assert [finding.rule for finding in findings] == ["own-gauge-unreadable"]
