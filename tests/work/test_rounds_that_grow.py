"""`Continue in this manner, working 1 more sc between increases each rnd`: the same change on every round."""

import pytest

from gradegen import check_row

GROWTH = "Continue in this manner, working 1 more sc between increases each rnd"
ROUND = "(sc 2, inc) x 6 (24)"


@pytest.mark.parametrize(
    ("above", "before", "text", "made"),
    [
        (ROUND, 24, f"{GROWTH}. (48)", 48),
        ("*sc in next 2 sts, 2 sc in next st; rep from * around (24)", 24, f"{GROWTH}. (48)", 48),
        ("sc 1, (inc, sc 2) x 5, inc, sc 1 (24)", 24, f"{GROWTH}.", 48),
        ("(sc 8, dec) x 6 (54)", 54, "Rep Rnd 4, working 1 less sc between decreases each rnd. (30)", 30),
    ],
)
def test_each_round_changes_the_count_as_the_one_before(above: str, before: int, text: str, made: int) -> None:
    found = check_row(text, label="Rnds 5-8", prior=before, worked="spiral", sizes=("one",), earlier={"Rnd 4": above})
    assert (found.status, found.made) == ("proved", (made,))


def test_a_wrong_total_is_found() -> None:
    found = check_row(
        f"{GROWTH}. (50)", label="Rnds 5-8", prior=24, worked="spiral", sizes=("one",), earlier={"Rnd 4": ROUND}
    )
    assert found.status == "wrong"
    assert found.made == (48,)


def test_a_round_that_changes_nothing_tells_nothing() -> None:
    found = check_row(
        GROWTH, label="Rnds 5-8", prior=24, worked="spiral", sizes=("one",), earlier={"Rnd 4": "sc around (24)"}
    )
    assert found.status == "not-checked"


@pytest.mark.parametrize(
    "text", ["Sc2tog around until 6 sts remain. (6 sts)", "(Sc, dec) around until 6 sts remain. (6)"]
)
def test_what_remains_of_a_round_is_not_what_is_left_unworked(text: str) -> None:
    assert check_row(text, prior=12, worked="spiral", sizes=("one",)).status == "not-checked"


@pytest.mark.parametrize("label", ["Fin 2, Row 2", "Leg 1 Row 3"])
def test_the_number_of_a_part_is_no_row(label: str) -> None:
    found = check_row("inc, 4 sc, inc (8)", label=label, prior=6, worked="flat", sizes=("one",))
    assert (found.status, found.made, found.times) == ("proved", (8,), (1,))
