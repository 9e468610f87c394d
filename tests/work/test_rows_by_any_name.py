"""Rows repeated on stitches of another name than those they were first worked into (common practice, no source)."""

from gradegen import check_row
from gradegen.design.worked import RowResult

RIB = {
    "Row 2": "Ch 1, turn. Sc in first sc, *fpdc around next sc, sc in next sc; rep from * to end.",
    "Row 3": "Ch 1, turn. Sc in each st across.",
    "Row 4": "Ch 1, turn. 1 sc in each sc, 1 bpdc around each fpdc across.",
}


def again(text: str, label: str, number: int) -> RowResult:
    return check_row(text, label=label, prior=[number], worked="flat", sizes=("one",), earlier=RIB)


def test_a_row_repeated_on_other_stitches_goes_into_each_of_them() -> None:
    result = again("Repeat Row 2.", "Row 5", 61)
    assert (result.status, result.made) == ("proved", (61,))
    over_posts = check_row(
        "Repeat Rows 2 and 4. (61 sts)",
        label="Rows 5-10",
        prior=["sc, 30 x (BPdc, sc)"],
        worked="flat",
        sizes=("one",),
        earlier=RIB,
    )
    assert (over_posts.status, over_posts.made) == ("proved", (61,))


def test_a_row_that_does_not_fit_by_any_name_is_wrong() -> None:
    assert again("Repeat Row 2.", "Row 5", 60).status == "wrong"


def test_stitches_of_other_names_passed_over_in_silence_make_a_count_that_nobody_claims() -> None:
    edge = ["sc, 30 x (dc, sc)"]
    unsure = check_row("Ch 1, sc in each sc across, turn.", prior=edge, worked="flat", sizes=("one",))
    counted = check_row("Ch 1, sc in each sc across, turn. (31 sc)", prior=edge, worked="flat", sizes=("one",))
    assert unsure.status == "not-checked"
    assert (counted.status, counted.made) == ("proved", (31,))


def test_a_chain_may_be_said_to_equal_no_stitch() -> None:
    notes = ["Ch 2 = 1 hdc. Ch 1 = 0 sts."]
    result = check_row("Ch 1, sc in each st. (20 sc)", prior=[20], worked="flat", sizes=("one",), notes=notes)
    assert (result.status, result.made) == ("proved", (20,))


def test_a_name_of_the_patterns_own_may_begin_with_a_number() -> None:
    bobble = {"2dcbob": "2 dc worked together in same st"}
    row = "Ch 1, sc in next 3 sts, *2dcbob in next st, sc in next 3 sts; rep from * across. (5 bobbles)"
    result = check_row(row, prior=[23], worked="flat", sizes=("one",), definitions=bobble)
    assert (result.status, result.made) == ("proved", (23,))
