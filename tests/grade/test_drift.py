"""What snapping costs: whose doing it is, how grave it is, and that nothing harmless is called a fault."""

from fractions import Fraction

import pytest


def run(graded, size_table, multiple, step, stitches=4, **more):
    sizes = tuple("ABCDEFGH")
    body = [Fraction(str(16)) + Fraction(str(step)) * at for at in range(len(sizes))]
    table = size_table(sizes, "bust", {"bust": body})
    gauge = {"g": {"stitches": stitches, "rows": 4, "over": "1 in"}}
    return graded(
        {"around": "bust + 4 in"}, {"n": {"across": "around", "multiple": multiple, **more}}, gauge, table=table
    )


def test_up_to_a_quarter_inch_nothing_is_said(graded, size_table):
    assert run(graded, size_table, 2, 3.7).rules() == []


def test_a_repeat_much_narrower_than_the_step_is_never_above_a_note(graded, size_table):
    """Repeats of 1.5 in in steps of 4.1 in: up to 3/4 in off, at most a fifth of the step."""
    made = run(graded, size_table, 6, 4.1)
    assert made.grave() == []
    assert set(made.rules()) == {"snapping-moved-measure"}
    off = {
        finding.size: abs(size.measures["around"].drift)
        for size in made.sizes
        for finding in made.findings
        if finding.size == size.name
    }
    assert off
    assert all(drift > Fraction(1, 4) for drift in off.values())


def test_a_note_says_what_was_wanted_and_made(graded, size_table):
    made = run(graded, size_table, 6, 4.1)
    finding = made.findings[0]
    assert (finding.size, finding.expected, finding.found, finding.severity) == ("A", "20 in", "19.5 in", "note")
    assert finding.because == "nearest of 78 and 84; 2 sts down; one repeat makes 1.5 in"
    assert (finding.place.line, finding.place.column) == (40, 61)  # the multiple


def test_a_repeat_wider_than_the_step_is_advice_and_no_error(graded, size_table):
    """Repeats of 4 in in steps of 2 in: sizes fall together, and nobody can do better on that repeat."""
    made = run(graded, size_table, 16, 2.1)
    assert "repeat-too-wide-for-step" in made.grave()
    assert {finding.severity for finding in made.findings} <= {"note", "warning"}
    first = next(finding for finding in made.findings if finding.rule == "repeat-too-wide-for-step")
    assert "A repeat of 4 sts or fewer suits these sizes." in first.hint
    assert "one repeat makes 4 in, and the next size is 2.1 in away" in first.because
    alike = [finding for finding in made.findings if finding.rule == "sizes-come-out-alike"]
    assert alike
    assert all(finding.follows == "repeat-too-wide-for-step" for finding in alike)


def test_published_opinion_on_repeats_and_steps(graded, size_table):
    """K. Atherley on pattern repeats (guest columns).

    7 sts at 17 per 10 cm are 4 cm, fine against size steps of 5-8 cm; 12 sts at 16 per 10 cm are 7.5 cm, so sizes can
    only sit 3 in apart.
    """

    def grave(repeat, per_10_cm, step_cm):
        stitches = Fraction(per_10_cm) * Fraction(254, 1000)
        return run(graded, size_table, repeat, Fraction(step_cm) / Fraction(254, 100), stitches).grave()

    assert grave(7, 17, 5) == grave(7, 17, 8) == []
    assert "repeat-too-wide-for-step" in grave(12, 16, 5)


def test_a_repeat_over_half_a_step_comes_with_the_advice_in_its_note(graded, size_table):
    made = run(graded, size_table, 6, 2.6)
    assert made.grave() == []
    assert all(
        "narrower repeat" in finding.hint for finding in made.findings if finding.rule == "snapping-moved-measure"
    )


@pytest.mark.parametrize(
    ("least", "severity"),
    [(82, "note"), (84, "warning"), (87, "error")],  # 20 in is wanted: 20.5, 21 and 21.75 in; the step is 3 in
)
def test_a_limit_that_moves_a_measure_counts_in_full(graded, size_table, least, severity):
    made = run(graded, size_table, 1, 3, least=least)
    finding = made.only("snapping-moved-measure")
    assert (finding.severity, finding.size, finding.expected) == (severity, "A", "20 in")
    assert (finding.place.line, finding.place.column) == (40, 62)  # the limit


def test_the_largest_sizes_held_down(graded, size_table):
    made = run(graded, size_table, 1, 3, most=150)
    held = [finding for finding in made.findings if finding.rule == "snapping-moved-measure"]
    assert [(finding.size, finding.severity) for finding in held] == [("G", "note"), ("H", "error")]
    assert made.only("sizes-come-out-alike").follows == "snapping-moved-measure"


def test_lengths_may_share_a_count(graded):
    """Depths with small steps plateau, as they do in good patterns; no size is told it is like its neighbour."""
    made = graded(
        {"depth": "[11, 11.25, 11.5, 11.75, 12, 12.25, 12.5, 12.75, 13] in"},
        {"rounds": {"along": "depth", "both_sides": True, "multiple": 2, "plus": 1}},
        {"g": {"stitches": 13, "rows": 7}},
    )
    assert made.grave() == []
    assert len(set(made.counts("rounds"))) == 2


def test_a_length_far_off_is_a_warning(graded):
    made = graded({"depth": "4 in"}, {"rows": {"along": "depth", "multiple": 16}}, {"g": {"stitches": 1, "rows": 8}})
    assert set(made.grave()) == {"repeat-too-wide-for-step"}
    assert made.counts("rows")[0] == 16  # 8 rows are wanted, a tie between none and 16


def test_parity_counts_as_part_of_the_repeat(graded, size_table):
    """Every third stitch and odd: good counts are 6 apart, 1.5 in, and no limit is to blame."""
    made = run(graded, size_table, 3, 4.1, parity="odd")
    assert made.grave() == []
    assert "one repeat makes 1.5 in" in made.findings[0].because


def test_two_counts_of_one_measure(graded):
    made = graded(
        {"around": "bust + 3 in"},
        {"body": {"across": "around", "gauge": "a"}, "edge": {"across": "around", "gauge": "b", "multiple": 8}},
        {"a": {"stitches": 16, "rows": 8}, "b": {"stitches": 14, "rows": 8}},
    )
    notes = [finding for finding in made.findings if finding.rule == "measure-made-twice"]
    assert notes
    assert {(finding.place.line, finding.severity) for finding in notes} == {(41, "note")}
    assert all(size.measures["around"].finished == size.counts["body"].finished for size in made.sizes)
