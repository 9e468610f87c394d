"""Contrast against published values: WCAG 2.2 (W3C) and pairs whose ratios its Understanding documents give."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.trade.contrast import LINE_LEAST, TEXT_LEAST, darkened, hex_of, mixed, on_paper, rgb_of

WHITE, BLACK = (255, 255, 255), (0, 0, 0)
COLOURS = st.tuples(*(st.integers(0, 255),) * 3)


def test_black_and_white() -> None:
    # WCAG 2.2, "contrast ratio": ratios range from 1 to 21
    assert on_paper(BLACK) == pytest.approx(21)
    assert on_paper(WHITE) == pytest.approx(1)


def test_the_grey_on_the_edge() -> None:
    # Understanding SC 1.4.3: #777777 on white is 4.47:1 and fails, "not rounded up to 4.5"; #767676 passes (4.54:1)
    assert on_paper((0x77,) * 3) == pytest.approx(4.478, abs=0.001)
    assert on_paper((0x77,) * 3) < TEXT_LEAST <= on_paper((0x76,) * 3)
    # from memory: #949494 is the palest grey of at least 3:1 on white, #959595 is not
    assert on_paper((0x95,) * 3) < LINE_LEAST <= on_paper((0x94,) * 3)


def test_pure_red_green_blue() -> None:
    # the weights of relative luminance in WCAG 2.2: 0.2126, 0.7152, 0.0722
    for colour, weight in (((255, 0, 0), 0.2126), ((0, 255, 0), 0.7152), ((0, 0, 255), 0.0722)):
        assert on_paper(colour) == pytest.approx(1.05 / (weight + 0.05))


@settings(derandomize=True, max_examples=60)
@given(COLOURS, st.sampled_from([LINE_LEAST, TEXT_LEAST, Fraction(7)]))
def test_a_shade_is_dark_enough_and_no_darker_than_need_be(colour, least) -> None:
    shade = darkened(colour, least)
    assert on_paper(shade) >= least
    assert (shade == colour) == (on_paper(colour) >= least)
    assert all(dark <= bright for dark, bright in zip(shade, colour, strict=True))


@settings(derandomize=True, max_examples=30)
@given(COLOURS)
def test_hex_there_and_back(colour) -> None:
    assert rgb_of(hex_of(colour)) == colour
    assert mixed(colour, 0) == WHITE
    assert mixed(colour, 100) == colour


@pytest.mark.parametrize(("text", "colour"), [("#253", (0x22, 0x55, 0x33)), (" 2D5A57 ", (0x2D, 0x5A, 0x57))])
def test_short_and_bare(text, colour) -> None:
    assert rgb_of(text) == colour
