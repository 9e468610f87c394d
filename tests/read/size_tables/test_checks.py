"""What is odd in a size table: gaps and which way they go, overlaps, steps, units that disagree, known errors."""

from pathlib import Path

import pytest

from gradegen.read.size_tables.checks import check_size_table
from gradegen.read.size_tables.ready import ready_tables
from gradegen.read.size_tables.table import read_size_table


def table_of(tmp_path, columns, sizes="[S, M, L, XL]", by="chest"):
    text = f"title: Own\nwearer: adult\nby: {by}\nsizes: {sizes}\ncolumns:\n{columns}"
    (tmp_path / "own.yaml").write_text(text, "utf-8")
    table, findings = read_size_table("own.yaml", tmp_path)
    assert findings == ()
    return table


def told(findings):
    return [
        (finding.rule, str(finding.severity), finding.size, finding.place.line, finding.place.column)
        for finding in findings
    ]


def chest(tmp_path, cells, unit="in"):
    return told(check_size_table(table_of(tmp_path, f"  chest:\n    {unit}: {cells}\n")))


def test_a_good_table_has_nothing(tmp_path):
    assert chest(tmp_path, "[34, 38, 42, 46]") == []
    assert chest(tmp_path, "[34, null, 42, 46]") == []


USUAL_GAP = ("size-band-gap", "note", None, 6, 3)
OVERLAP = ("size-band-overlap", "note", None, 6, 3)


@pytest.mark.parametrize(
    ("cells", "expected"),
    [
        ("[[34, 36], [38, 40], [42, 44], [46, 48]]", [USUAL_GAP]),
        ("[[34, 36], [37, 40], [44, 46], [47, 48]]", [USUAL_GAP, ("size-band-gap", "warning", None, 6, 3)]),
        ("[[34, 36], [36, 40], [40, 44], [44, 48]]", [OVERLAP]),
        ("[[34, 37], [36, 40], [42, 44], [46, 48]]", [USUAL_GAP, OVERLAP]),
        ("[34, 38, 38, 42]", [("size-step-flat", "warning", "L", 7, 18)]),
        ("[34, 38, 36, 42]", [("size-step-falls", "warning", "L", 7, 18)]),
        ("[[34, 36], [40, 38], [41, 42], [43, 44]]", [("band-ends-swapped", "error", "M", 7, 20)]),
        ("[34, 35, 36, 40]", [("size-step-jumps", "note", "XL", 7, 22)]),
    ],
)
def test_each_oddity_once(tmp_path, cells, expected):
    assert chest(tmp_path, cells) == expected


def test_centimetres_alone_are_looked_at_too(tmp_path):
    assert chest(tmp_path, "[[86, 91], [96, 101], [112, 117], [118, 122]]", "cm") == [
        ("size-band-gap", "note", None, 6, 3), ("size-band-gap", "warning", None, 6, 3),
    ]  # fmt: skip


def test_a_gap_says_which_body_goes_where(tmp_path):
    (finding,) = check_size_table(
        table_of(tmp_path, "  chest:\n    in: [[34, 36], [38, 40], [40.5, 44], [44.5, 48]]\n")
    )
    assert "36-38, 40-40.5, 44-44.5 in" in finding.message
    assert finding.because == "from 36-38 in: below 37 in takes S, 37 in and above takes M"


def test_an_inner_band_does_not_hide_a_gap(tmp_path):
    rules = [
        finding.rule
        for finding in check_size_table(
            table_of(tmp_path, "  chest:\n    in: [[30, 40], [31, 33], [35, 36], [41, 42]]\n")
        )
    ]
    assert rules.count("size-band-gap") == 1


@pytest.mark.parametrize(("cm", "fires"), [("[86.4]", False), ("[86.9]", False), ("[86.92]", True), ("[85.8]", True)])
def test_units_that_disagree(tmp_path, cm, fires):
    table = table_of(tmp_path, f"  chest:\n    in: [34]\n    cm: {cm}\n", sizes="[S]")  # 34 in = 86.36 cm
    assert told(check_size_table(table)) == ([("inch-and-cm-differ", "warning", "S", 7, 10)] if fires else [])


ARM = "  chest:\n    in: [34, 38, 42, 46]\n  arm:\n    in: [10, 9, 11, 12]\n"


def test_a_known_error_is_only_a_note(tmp_path):
    columns = ARM + "    cm: [25, 23, 28, 32]\n    known error: a slip\n"
    assert told(check_size_table(table_of(tmp_path, columns))) == [
        ("inch-and-cm-differ", "note", "XL", 9, 21),
        ("size-step-falls", "note", "M", 9, 14),
        ("published-error-known", "note", None, 8, 3),
    ]


def test_values_used_instead_are_named(tmp_path):
    columns = ARM + "    known error: a slip\n    use: {M: {in: 10.5}}\n"
    (finding,) = check_size_table(table_of(tmp_path, columns))
    assert finding.rule == "published-error-known"
    assert finding.because == "other values are used for M"


def test_only_the_columns_asked_for(tmp_path):
    table = table_of(tmp_path, ARM)
    assert check_size_table(table, {"chest"}) == ()
    assert [finding.rule for finding in check_size_table(table, {"arm"})] == ["size-step-falls"]


@pytest.mark.parametrize("name", ready_tables())
def test_ready_tables_have_notes_only(name):
    table, _ = read_size_table(name, Path())
    assert {str(finding.severity) for finding in check_size_table(table)} <= {"note"}


@pytest.mark.parametrize(
    ("name", "rule", "size"),
    [
        ("women", "size-band-gap", None),
        ("women", "inch-and-cm-differ", "XS"),
        ("women", "size-step-jumps", "5X"),
        ("women", "beyond-survey", None),
        ("women", "table-unchecked", None),
        ("women", "published-error-known", None),
        ("head", "size-band-gap", None),
        ("head", "size-band-overlap", None),
        ("baby", "size-step-jumps", "24mo"),
        ("baby", "size-step-flat", None),
        ("men", "published-error-known", None),
    ],
)
def test_what_the_published_tables_are_known_for(name, rule, size):
    table, _ = read_size_table(name, Path())
    assert (rule, size) in {(finding.rule, finding.size) for finding in check_size_table(table)}
