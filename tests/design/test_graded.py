"""What is printed of a graded measure, and the numbers rows may use."""

from fractions import Fraction

from gradegen.design.graded import GradedCount, GradedMeasure, GradedSize
from gradegen.findings import Place

PLACE = Place("f", 1, 1, 1, 2)


def test_the_finished_measure_is_printed_and_never_the_target() -> None:
    snapped = GradedMeasure("around", Fraction(36), Fraction(145, 4), PLACE)
    assert (snapped.printed, snapped.drift) == (Fraction(145, 4), Fraction(1, 4))


def test_without_a_count_the_target_is_printed() -> None:
    plain = GradedMeasure("strap", Fraction(20), None, PLACE)
    assert (plain.printed, plain.drift) == (20, 0)


def test_rows_may_name_the_count_and_its_chain() -> None:
    count = GradedCount("body", 40, 42, None, None, None, None, "as written", None, None, "sts", PLACE)
    size = GradedSize("M", 0, "adult", {}, {}, None, {}, {"body": count})
    assert size.numbers() == {"body": 40, "body chain": 42}
    assert count.drift is None
