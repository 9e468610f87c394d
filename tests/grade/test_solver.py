"""The solver's answers are whole, checked again exactly, the same every time, and silent."""

import pytest

from gradegen.grade.related.solver import Column, Found, GaveUp, Row, solve

COLUMNS = (Column(0, 20), Column(0, 20))


def test_the_smallest_objective():
    rows = [Row({0: 3, 1: 5}, 41, 41)]
    assert solve(COLUMNS, rows, {0: 1, 1: 1}) == Found((2, 7), True)
    assert solve(COLUMNS, rows, {0: -1}) == Found((12, 1), True)


def test_no_solution_at_all():
    assert solve(COLUMNS, [Row({0: 2, 1: 4}, 5, 5)]) is None
    assert solve(COLUMNS, [Row({0: 1, 1: 1}, 41, None)]) is None
    assert solve((Column(1, 0),), []) is None
    assert solve(COLUMNS, [Row({}, 1, 2)]) is None


def test_limits_may_be_open():
    found = solve((Column(0, None),), [Row({0: 7}, 100, None)], {0: 1})
    assert found is not None
    assert found.values == (15,)


def test_a_start_is_kept_where_nothing_is_better():
    rows = [Row({0: 3, 1: 5}, 41, 41)]
    assert solve(COLUMNS, rows, {0: 1, 1: 1}, start=(12, 1)) == Found((2, 7), True)


def test_large_numbers_stay_whole():
    rows = [Row({0: 983, 1: -1003}, 0, 0)]
    assert solve((Column(1, 4000), Column(1, 4000)), rows, {0: 1}) == Found((1003, 983), True)


def test_rounding_that_breaks_a_row_is_refused(monkeypatch):
    import highspy

    class Wrong:
        """A solver that says it is done and gives numbers that are not."""

        def __getattr__(self, name):
            answers = {
                "getModelStatus": highspy.HighsModelStatus.kOptimal,
                "getSolution": type("S", (), {"col_value": [2.4, 7.0], "value_valid": True})(),
            }
            return lambda *_: answers.get(name)

    monkeypatch.setattr(highspy, "_Highs", Wrong)
    with pytest.raises(GaveUp):
        solve(COLUMNS, [Row({0: 5, 1: 0}, 12, 12)])


def test_it_says_nothing(capfd):
    solve(COLUMNS, [Row({0: 3, 1: 5}, 41, 41)], {0: 1})
    assert capfd.readouterr() == ("", "")
