"""Edges in words, and a row's steps beside what they take and make."""

from gradegen.design.edge import Run, Target
from gradegen.write.screen.explain import edge_in_words, target_in_words

DC, HDC, SPACE = Target("st", "dc"), Target("st", "hdc"), Target("sp", "sp", 2)


def test_an_edge_reads_as_the_trade_would_say_it() -> None:
    assert edge_in_words(()) == "nothing yet"
    assert edge_in_words((Run(44, (DC, SPACE)), HDC)) == "44 x (dc, ch-2 sp), hdc   = 45 stitches"
    assert edge_in_words((DC,)) == "dc   = 1 stitch"


def test_like_neighbours_are_counted_together() -> None:
    assert edge_in_words((DC, DC, Run(3, (DC,)), HDC)) == "5 dc, hdc   = 6 stitches"


def test_one_more_before_and_after_goes_into_the_repeat() -> None:
    assert edge_in_words((DC, SPACE, Run(51, (DC, SPACE)), DC, SPACE)) == "53 x (dc, ch-2 sp)   = 53 stitches"
    assert edge_in_words((SPACE, Run(2, (DC, SPACE)), DC)) == "ch-2 sp, 2 x (dc, ch-2 sp), dc   = 3 stitches"


def test_a_long_edge_is_cut_and_still_counted() -> None:
    text = edge_in_words(tuple(Target("st", name) for name in "abcdefghijklmnop"))
    assert text == "a, b, c, d, e, f, g, h, i, j, k, l, ...   = 16 stitches"


def test_other_places_have_names_too() -> None:
    assert target_in_words(Target("sp", "sp", 0)) == "sp"
    assert target_in_words(Target("free loop", "free loop")) == "free loop"
    assert target_in_words(Target("st", "dc", chain=True)) == "dc (starting chain)"
