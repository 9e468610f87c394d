from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.numbers.exact import decimal_text
from gradegen.read.forms.amounts import Bounds, read_count, read_length, read_weight
from gradegen.read.forms.answers import GRAMS, MEASURES, STITCHES, YARNS

CM = Fraction(100, 254)  # 1 in = 2.54 cm: international yard and pound agreement, 1959
OUNCE = Fraction(28349523125, 1000000000)  # avoirdupois, same agreement


@pytest.mark.parametrize(
    ("text", "value", "over"),
    [
        ("13.5 sts", Fraction(27, 2), None),
        ("13,5", Fraction(27, 2), None),
        ("13½ stitches", Fraction(27, 2), None),
        ("about 13", Fraction(13), None),
        ("~13 st.", Fraction(13), None),
        ("13.125", Fraction(105, 8), None),  # more than 150 stitches in a swatch nobody counts
        ("13.5 sts / 4 in", Fraction(27, 2), Fraction(4)),
        ("14 sts over 10 cm", Fraction(14), 10 * CM),
        ("14 per 10cm", Fraction(14), 10 * CM),
        ('14 sts in 4"', Fraction(14), Fraction(4)),
        ("14 sts = 10 cm", Fraction(14), 10 * CM),
    ],
)
def test_counts(text: str, value: Fraction, over: Fraction | None) -> None:
    read = read_count(text, "stitches", STITCHES)
    assert (read.value, read.over) == (value, over)


@pytest.mark.parametrize("text", ["14 rows", "blue", "-3", "13 cm", "0", "1,5 m", "14 sts over blue", "14 sts over 4"])
def test_no_counts(text: str) -> None:
    read = read_count(text, "stitches", STITCHES)
    assert read.value is None
    assert read.why


@pytest.mark.parametrize("text", ["13-14", "13 – 14 sts", "13 to 14", "13 or 14 sts", "13-14 sts over 4 in"])
def test_two_ends_are_asked_about(text: str) -> None:
    read = read_count(text, "stitches", STITCHES)
    assert read.value is None
    assert [end.split()[0] for end in read.either] == ["13", "14"]


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("168g", Fraction(168)),
        ("168 grams", Fraction(168)),
        ("168", Fraction(168)),
        ("6 oz", 6 * OUNCE),
        ("1 lb 4 oz", 20 * OUNCE),
        ("0,5 kg", Fraction(500)),
        ("1,250", Fraction(1250)),
        ("168 g (5.9 oz)", Fraction(168)),
        ("168 g / 5.9 oz", Fraction(168)),
    ],
)
def test_weights(text: str, grams: Fraction) -> None:
    assert read_weight(text, "g", GRAMS).value == grams


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("350 yds", Fraction(350 * 36)),
        ("350", Fraction(350 * 36)),
        ("1,250 m", 125000 * CM),
        ("1.250 m", 125000 * CM),
        ("1 250 m", 125000 * CM),
        ("350 yd (320 m)", Fraction(350 * 36)),
        ("5 m", 500 * CM),
    ],
)
def test_lengths_of_yarn(text: str, inches: Fraction) -> None:
    assert read_length(text, "yd", YARNS).value == inches


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("36", Fraction(36)),
        ("91.5 cm", Fraction(183, 2) * CM),
        ('36 1/4"', Fraction(145, 4)),
        ("36 in / 91.5 cm", Fraction(36)),
        ("36in (91 cm)", Fraction(36)),
        ("5 ft 6 in", Fraction(66)),
        ("5'6\"", Fraction(66)),
        ("13.125", Fraction(105, 8)),
    ],
)
def test_measures(text: str, inches: Fraction) -> None:
    assert read_length(text, "in", MEASURES).value == inches


@pytest.mark.parametrize("text", ["36 in / 80 cm", "12 g", "36 furlongs", "36 in 36 in", "4000", "6 in 5 ft", "0.01"])
def test_no_measures(text: str) -> None:
    assert read_length(text, "in", MEASURES).value is None


def test_a_bare_number_without_a_unit_of_the_field_is_asked_for_one() -> None:
    assert read_length("10", "", MEASURES).why == "its unit is not said"


def test_two_likely_readings_are_asked_about() -> None:
    assert read_length("12,500 m", "yd", YARNS).either == ("12500 m", "12.5 m")


@settings(derandomize=True, max_examples=200)
@given(st.integers(1, 29999), st.sampled_from(["in", "cm"]), st.sampled_from(["", " "]))
def test_lengths_come_back(hundredths: int, unit: str, blank: str) -> None:
    bounds = Bounds(Fraction(0), Fraction(1000))
    number = Fraction(hundredths, 100)
    read = read_length(f"{decimal_text(number)}{blank}{unit}", "in", bounds)
    assert read.value == (number if unit == "in" else number * CM)


@settings(derandomize=True, max_examples=300)
@given(st.text(alphabet="0123456789.,½/- 'gmincydsto\"()=~", max_size=24))
def test_anything_is_read_without_a_fault(text: str) -> None:
    for read in (
        read_count(text, "stitches", STITCHES),
        read_length(text, "in", MEASURES),
        read_weight(text, "g", GRAMS),
    ):
        assert (read.value is not None) + bool(read.either) + bool(read.why) == 1
        assert read.value is None or read.value >= 0
