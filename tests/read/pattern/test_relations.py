"""Relations as a designer states them: read, or refused at the exact sign with what to write instead."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.formula import Name, Sum
from gradegen.findings import Written
from gradegen.read.pattern.file import read_pattern
from gradegen.read.pattern.relations import counts_named, read_relation


def read(text):
    return read_relation(Written.plain(text, "p.yaml", 7, 5))


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("front = neck + 2 * shoulder", "="), ("front == neck", "="), ("sleeve >= cuff", ">="), ("sleeve ≥ cuff", ">="),
        ("cuff <= sleeve", "<="), ("cuff =< sleeve", "<="), ("cuff≤sleeve", "<="),
        ("cuff < sleeve", "<"), ("a > 2", ">"),
    ],
)  # fmt: skip
def test_signs(text, sign):
    relation, findings = read(text)
    assert relation is not None
    assert (relation.sign, relation.text, findings) == (sign, text, ())


def test_sides_are_sums_with_their_places():
    relation, _ = read("yoke  = body + 2 * upper sleeve - 4 * underarm")
    assert relation is not None
    assert isinstance(relation.left, Name)
    assert (relation.left.name, relation.left.place.column, relation.left.place.end_column) == ("yoke", 5, 9)
    assert isinstance(relation.right, Sum)
    assert relation.right.place.column == 13
    assert relation.text == "yoke = body + 2 * upper sleeve - 4 * underarm"
    assert list(counts_named(relation)) == ["yoke", "body", "upper sleeve", "underarm"]


@pytest.mark.parametrize(
    ("text", "rule", "column", "width"),
    [
        ("front neck", "relation-unreadable", 5, 10),
        ("a != b", "relation-unreadable", 7, 2),
        ("a <> b", "relation-unreadable", 7, 2),
        ("a = b = c", "relation-unreadable", 11, 1),
        ("= neck", "relation-unreadable", 5, 6),
        ("front =", "relation-unreadable", 5, 7),
        ("front = neck +", "sum-unreadable", 18, 1),
        ("front = 2 neck", "sum-unreadable", 15, 4),
        ("front = (neck", "sum-unreadable", 13, 1),
        ("fro?nt = neck", "sum-unreadable", 8, 1),
    ],
)
def test_what_is_wrong_and_where(text, rule, column, width):
    relation, findings = read(text)
    assert relation is None
    (finding,) = findings
    assert (finding.rule, finding.place.line, finding.place.column) == (rule, 7, column)
    assert finding.place.end_column == column + width


def test_a_chain_of_signs_is_taken_apart_in_the_hint():
    (finding,) = read("front = back = half")[1]
    assert finding.hint == "back = half"


@settings(derandomize=True, max_examples=300)
@given(st.text(alphabet="abc  12*+-/()[],=<>≥!?\n'\"½", max_size=40))
def test_any_text_is_read_or_told_about_inside_itself(text):
    written = Written.plain(text, "p.yaml", 7, 5)
    relation, findings = read_relation(written)
    assert (relation is None) == bool(findings)
    for finding in findings:
        assert written.place().line <= finding.place.line <= written.place().end_line


PATTERN = """\
title: T
version: "1.0"
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
sizes: {table: women, for: [S, M, L], by: bust}
gauge:
  plain: {stitches: 16, rows: 18, over: 4 in, hook: 5 mm, state: blocked}
measures:
  around: bust + 4 in
counts:
  body: {across: around, multiple: 4, centre: motif, steps: even, weight: 1/2, pin: {M: 164}}
  half: {least: 10}
relations:
  - body = 2 * half
  - half >= 20
pieces:
  - {name: Body, shape: flat, rows: "Row 1: Ch {body + 1}. Sc in 2nd ch from hook and in each ch across. ({body} sc)"}
"""


def reading(tmp_path, text):
    path = tmp_path / "p.yaml"
    path.write_text(text, encoding="utf-8")
    return read_pattern(path)


def test_the_keys_of_a_pattern_file(tmp_path):
    pattern, findings = reading(tmp_path, PATTERN)
    assert findings == ()
    body = pattern.counts["body"]
    assert (body.centre, body.even_steps, body.weight, body.pins) == ("motif", True, 1 / 2, {"M": 164})
    assert body.places["pin M"].line == 11
    assert [(one.text, one.place.line, one.place.column) for one in pattern.relations] == [
        ("body = 2 * half", 14, 5), ("half >= 20", 15, 5),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("change", "rule", "line"),
    [
        (("centre: motif", "centre: middle"), "unknown-choice", 11),
        (("steps: even", "steps: odd"), "unknown-choice", 11),
        (("weight: 1/2", "weight: 0"), "number-out-of-range", 11),
        (("{M: 164}", "{M: many}"), "not-a-number", 11),
        (("{M: 164}", "{M: 164.5}"), "not-a-number", 11),
        (("{M: 164}", "164"), "wrong-kind", 11),
        (("  - half >= 20", "  - {half: 20}"), "wrong-kind", 15),
        (("  - body = 2 * half\n  - half >= 20", "  - body = 2"), "count-needs-one-measure", 12),
        (("half: {least: 10}", "half: {least: 10, most: 5}"), "limits-crossed", 12),
    ],
)
def test_what_is_wrong_in_a_file(tmp_path, change, rule, line):
    assert change[0] in PATTERN
    pattern, findings = reading(tmp_path, PATTERN.replace(*change))
    assert pattern is None
    assert [(finding.rule, finding.place.line) for finding in findings] == [(rule, line)]
