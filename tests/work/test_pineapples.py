"""Rounds of shells and pineapples: the last shell of a round, and the loop beside a shell that nothing names."""

from gradegen import check_row

SHELL = {"shell": "2 dc, ch 2 and 2 dc in same sp"}


def test_the_last_shell_is_the_one_before_the_first() -> None:
    text = (
        "Sl st to first sp, ch 3, dc, ch 2 and 2 dc in same sp, * ch 3, 8 tr in sp of next shell, ch 3, shell in "
        "sp of next shell; repeat from * around, ending with ch 3, 8 tr in sp of last shell, ch 3. Join in top of ch-3."
    )
    prior = "6 x (2 dc, ch-2 sp, 2 dc, ch-2 sp)"
    result = check_row(text, prior=prior, worked="joined rounds", sizes=("one",), definitions=SHELL)
    assert (result.status, result.made) == ("proved", (36,))


def test_the_loop_beside_a_shell_is_passed_at_the_end_as_everywhere() -> None:
    prior = "5 x (2 dc, ch-2 sp, 2 dc, 7 x (ch-3 sp, sc), ch-3 sp)"
    loops = "ch 4, skip next ch-3, (sc in next ch-3 loop, ch 3) {} times, sc in next loop, ch 4"
    for times, status in ((5, "proved"), (4, "wrong")):
        text = (
            f"Sl st to sp, ch 3, dc, ch 2 and 2 dc in same sp, * {loops.format(times)}, shell over shell; repeat "
            f"from * around, ending with {loops.format(times)}. Join in top of ch-3. (50 sts)"
        )
        result = check_row(text, prior=prior, worked="joined rounds", sizes=("one",), definitions=SHELL)
        assert result.status == status
