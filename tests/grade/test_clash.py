"""Conditions that can't all hold: the set told is one, none of it to spare, and what is bought by loosening is true."""

from __future__ import annotations

import pytest
from grade import joints

from gradegen.grade.related.best import best_counts
from gradegen.grade.related.clash import find_clashes

SIZES = ["S", "M", "L"]
GAUGES = {"plain": {"stitches": 16, "rows": 18}}
LENGTHS = {"front": "[20, 21, 22] in", "neck": "[7, 7.25, 7.5] in", "shoulder": "[6.5, 6.75, 7.25] in"}


@pytest.fixture
def clashing(graded):
    def make(*relations, **counts):
        every = {name: {"across": name} if name in LENGTHS else {} for name in (*LENGTHS, *counts)}
        every = {name: {**given, **counts.get(name, {})} for name, given in every.items()}
        return graded(LENGTHS, every, GAUGES, sizes=SIZES, relations=relations)

    return make


def clashes(made):
    return [finding for finding in made.findings if finding.rule == "relations-clash"]


def test_two_relations_that_contradict_each_other(clashing):
    made = clashing("front = neck + 2 * shoulder", "shoulder >= neck", "front <= 3 * neck")
    assert clashes(made) == []
    made = clashing("front = neck + 2 * shoulder", "shoulder >= neck", "front <= 2 * neck")
    told = clashes(made)
    assert [finding.size for finding in told] == SIZES
    for finding in told:
        assert (finding.place.line, finding.place.column, finding.severity) == (60, 20, "error")
        assert [(place.line, words) for place, words in finding.see_also] == [
            (61, "shoulder >= neck"), (62, "front <= 2 * neck"),
        ]  # fmt: skip
        assert "front = neck + 2 * shoulder; shoulder >= neck; front <= 2 * neck" in finding.message


def test_a_multiple_and_a_parity_that_no_size_of_number_can_join(clashing):
    made = clashing("front = neck + 2 * shoulder", front={"multiple": 4}, neck={"parity": "odd"})
    told = clashes(made)
    assert [finding.size for finding in told] == SIZES
    assert {words for _, words in told[0].see_also} == {"parity: odd of neck", "front = neck + 2 * shoulder"}
    assert told[0].place.line == 40
    assert "multiple: 4 of front" in told[0].message
    for words in ("multiple: 4 of front", "parity: odd of neck", "front = neck + 2 * shoulder"):
        assert f"without {words}" in told[0].because
    assert told[0].hint is not None


def test_only_the_size_that_clashes_is_told(clashing):
    made = clashing("front = neck + 2 * shoulder", "front = [81, 20, 89]", shoulder={"least": 20})
    (finding,) = clashes(made)
    assert finding.size == "M"
    assert "least: 20 of shoulder" in finding.message
    assert made.counts("front")[0] == 81
    assert made.counts("front")[2] == 89


def test_a_pin_against_a_relation(clashing):
    made = clashing("front = neck + 2 * shoulder", front={"pins": {"M": 84}}, neck={"parity": "odd"})
    (finding,) = clashes(made)
    assert (finding.size, finding.place.line) == ("M", 40)
    assert "pin: {M: 84} of front" in finding.message
    assert "without pin: {M: 84} of front: front is 8" in finding.because
    assert "parity: odd of neck" in finding.message


def test_even_steps_against_pins_name_the_sizes_that_clash_together(graded):
    body = {"across": "around", "even_steps": True, "pins": {"S": 150, "M": 154, "L": 180}}
    made = graded({"around": "bust + 4 in"}, {"body": body}, GAUGES)
    (finding,) = clashes(made)
    assert finding.size is None
    assert "in S, M, L together" in finding.message
    assert len(finding.see_also) == 3


def test_what_follows_from_a_clash_is_held_back(clashing):
    made = clashing("front = neck + 2 * shoulder", "front = 100", "neck = 10", "shoulder = 20")
    assert clashes(made)
    others = [finding for finding in made.findings if finding.rule != "relations-clash"]
    assert all(finding.follows == "relations-clash" for finding in others)


def test_two_clashes_of_one_group_are_both_told(clashing):
    made = clashing("front = 2 * front2", "front = 80", "front2 = 41", "neck = 2 * neck2", "neck = 29", "front >= neck",
                    front2={"least": 1}, neck2={"least": 1})  # fmt: skip
    told = [finding.message for finding in clashes(made) if finding.size == "S"]
    assert len(told) == 2
    assert any("front2 = 41" in message for message in told)
    assert any("neck = 29" in message for message in told)


@pytest.mark.parametrize("seed", range(300, 310))
def test_random_clashes_are_irreducible_by_trying_everything(seed):
    of = joints.random_joint(seed, sizes=2, counts=3, largest=6)
    extra = [("<=", {"c0": 1, "c1": -1}, 3), ("<=", {"c1": 1, "c2": -1}, 2), ("<=", {"c2": 1, "c0": -1}, 4)]
    of = joints.with_relations(of, extra[: 1 + seed % 3])
    best = best_counts(of, of.conditions)
    for block in best.unsolved:
        found, counts = find_clashes(of, block)
        clash = found[0]
        for size in clash.sizes:
            assert not joints.possible(of, clash.conditions, size, most=30)
            for one in clash.conditions:
                assert joints.possible(of, [other for other in clash.conditions if other != one], size, most=30)
        if len(found) == 1:
            kept = [one for one in of.conditions if one != clash.cheapest.condition]
            assert all(joints.holds_of(of, kept, counts, size) for size in block)
        for loosened in clash.loosened:
            kept = [one for one in of.conditions if one != loosened.condition]
            possible = all(joints.possible(of, kept, size, most=30) for size in block)
            assert possible == (loosened.bound is not None)


def test_most_of_these_groups_do_clash():
    extra = [("<=", {"c0": 1, "c1": -1}, 3), ("<=", {"c1": 1, "c2": -1}, 2), ("<=", {"c2": 1, "c0": -1}, 4)]
    drawn = [joints.random_joint(seed, sizes=2, counts=3, largest=6) for seed in range(300, 310)]
    groups = [joints.with_relations(of, extra[: 1 + seed % 3]) for seed, of in zip(range(300, 310), drawn, strict=True)]
    assert sum(bool(best_counts(of, of.conditions).unsolved) for of in groups) >= 4


def test_trying_everything_would_see_a_set_to_spare():
    """The check above is able to fail."""
    of = joints.with_relations(joints.random_joint(3, sizes=1, counts=3, largest=6), [("<=", {"c0": 1}, 0)])
    assert not joints.possible(of, of.conditions, 0, most=30)
    assert joints.possible(of, [], 0, most=30)
