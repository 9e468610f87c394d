from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from gradegen.numbers.rounding import HOUSE_STYLES, house_style, nearest_whole, to_step

lengths = st.fractions(min_value=-300, max_value=300, max_denominator=128)


def test_house_styles():
    quarter, half, trade = (house_style(name) for name in ("1/4 in", "1/2  in", "1/4 in, 4 in = 10 cm"))
    length = Fraction(302, 7)  # 43.14 in
    assert (quarter.inches_text(length), half.inches_text(length)) == ("43¼", "43")
    assert (quarter.centimetres_text(length), trade.centimetres_text(length)) == ("109.5", "108")
    assert house_style(None) is house_style("1/4 in")
    assert house_style("1/3 in") is None


def test_four_inches_in_both_factors():
    """Frasier Knits, common conversion mistakes: 36 in are 91.4 cm or, by the trade, 90; 60 in 152.4 or 150."""
    exact, trade = HOUSE_STYLES["1/4 in"], HOUSE_STYLES["1/4 in, 4 in = 10 cm"]
    assert (exact.centimetres_text(Fraction(36)), trade.centimetres_text(Fraction(36))) == ("91.5", "90")
    assert (exact.centimetres_text(Fraction(60)), trade.centimetres_text(Fraction(60))) == ("152.5", "150")


def test_halves_go_up_and_not_to_even():
    assert [nearest_whole(Fraction(n, 2)) for n in (1, 5, 7, -1, -3)] == [1, 3, 4, 0, -1]
    assert [nearest_whole(Fraction(n, 2), "down") for n in (1, 5, -1, -3)] == [0, 2, -1, -2]
    assert (to_step(Fraction(1, 8), Fraction(1, 4)), to_step(Fraction(-1, 8), Fraction(1, 4))) == (
        Fraction(1, 4),
        Fraction(-1, 4),
    )


@given(lengths)
def test_printed_inches_are_within_half_a_step(length):
    for style in HOUSE_STYLES.values():
        shown = style.inches(length)
        assert shown % style.inch_step == 0
        assert abs(shown - length) <= style.inch_step / 2
        assert style.inches(shown) == shown
        assert abs(style.centimetres(length) - length * style.factor) <= style.cm_step / 2
