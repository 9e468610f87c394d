"""How many places stand on an edge, whatever the size of the numbers."""

from gradegen.design.edge import Run, Target, stitches_in

DC, SPACE = Target("st", "dc"), Target("sp", "sp", 1)


def test_spaces_are_no_stitches() -> None:
    assert stitches_in((DC, SPACE, DC)) == 2


def test_repeats_nest_and_cost_nothing() -> None:
    lace = (Run(44, (DC, SPACE, Run(3, (DC,)))), Target("ch", "ch"))
    assert stitches_in(lace) == 44 * 4 + 1
    assert stitches_in((Run(10**12, lace),)) == 177 * 10**12
