"""Size tables: both units as published, known errors kept beside their repair, derived columns exact, slips located."""

from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.pattern import Text
from gradegen.design.sizes import Band
from gradegen.findings import Place
from gradegen.read.size_tables.ready import ready_tables
from gradegen.read.size_tables.table import read_size_table, read_table_and_source

OWN = """\
title: Our own sizes
wearer: adult
by: chest
sizes: [S, M, L]
columns:
  chest:
    in: [[34, 36], 38-40, "42 - 44.5"]
    trust: measured by us
  arm:
    cm: [28, null, 31.5]
"""


def spots(findings):
    return [(finding.rule, finding.place.line, finding.place.column) for finding in findings]


def read(tmp_path, text, name="own.yaml"):
    (tmp_path / name).write_text(text, "utf-8")
    return read_size_table(Text(name, Place("p.yaml", 3, 9, 3, 17)), tmp_path)


def test_the_ready_tables():
    assert {"women", "men", "child", "baby", "head"} <= set(ready_tables())


@pytest.mark.parametrize("name", ready_tables())
def test_a_ready_table_says_where_it_comes_from(name):
    table, findings = read_size_table(name, Path())
    assert findings == ()
    assert table.file == f"sizes/{name}.yaml"
    assert table.title
    assert table.publisher
    assert table.year
    assert table.address
    assert table.oddities
    assert table.by in table.columns
    for column in table.columns.values():
        assert column.trust != "not said"
        assert len(column.cells) == len(table.sizes)
        assert column.place.file == table.file


@pytest.mark.parametrize(
    ("name", "wearer"), [("women", "adult"), ("men", "adult"), ("child", "child"), ("baby", "baby")]
)
def test_one_wearer(name, wearer):
    table, _ = read_size_table(name, Path())
    assert table.wearer == wearer
    assert table.wearer_by_size == ()


def test_a_table_for_several_wearers_counts_as_the_youngest_ones():
    table, _ = read_size_table("head", Path())
    assert table.wearer == "baby"
    assert dict(zip(table.sizes, table.wearer_by_size, strict=True)) == {
        "preemie": "baby", "baby": "baby", "toddler": "baby", "child": "child", "tween": "child",
        "adult woman": "adult", "adult man": "adult",
    }  # fmt: skip


def test_a_known_error_is_repaired_and_the_printed_value_kept():
    table, _ = read_size_table("women", Path())
    column = table.columns["upper arm"]
    assert column.known_error
    assert column.cells[-1].inches == Band(Fraction("19.5"), Fraction("19.5"))
    assert column.published[-1].inches == Band(Fraction("18.5"), Fraction("18.5"))
    assert column.published[:-1] == column.cells[:-1]
    assert table.columns["hip"].published == ()


def test_cells_with_one_unit_stay_so(tmp_path):
    table, findings = read(tmp_path, OWN)
    assert findings == ()
    assert [cell.inches for cell in table.columns["chest"].cells] == [
        Band(Fraction(34), Fraction(36)), Band(Fraction(38), Fraction(40)), Band(Fraction(42), Fraction("44.5")),
    ]  # fmt: skip
    assert [cell.cm for cell in table.columns["chest"].cells] == [None] * 3
    assert [cell and cell.cm for cell in table.columns["arm"].cells] == [
        Band(Fraction(28), Fraction(28)), None, Band(Fraction("31.5"), Fraction("31.5")),
    ]  # fmt: skip
    assert table.columns["arm"].trust == "not said"
    assert (table.columns["chest"].cells[1].place.line, table.columns["chest"].cells[1].place.column) == (7, 20)


def test_the_text_of_the_table_comes_along(tmp_path):
    (tmp_path / "own.yaml").write_text(OWN, "utf-8")
    table, source, _ = read_table_and_source("own.yaml", tmp_path)
    assert source.text == OWN
    assert source.file == table.file == str(tmp_path / "own.yaml")


def test_beside_may_be_the_pattern_itself(tmp_path):
    (tmp_path / "own.yaml").write_text(OWN, "utf-8")
    (tmp_path / "p.yaml").write_text("x", "utf-8")
    table, _ = read_size_table("own.yaml", tmp_path / "p.yaml")
    assert table.sizes == ("S", "M", "L")


@pytest.mark.parametrize("name", ["woman", "nothing", "women.yaml", "tables/mine.yaml", "x" * 5000, "a\0b", ""])
def test_a_missing_table_lists_the_ready_ones(tmp_path, name):
    table, findings = read_size_table(Text(name, Place("p.yaml", 3, 9, 3, 17)), tmp_path)
    assert table is None
    assert spots(findings) == [("size-table-missing", 3, 9)]
    assert "women" in findings[0].hint


@pytest.mark.parametrize("name", ["../own.yaml", "/etc/hostname", "deeper/../../own.yaml", "link.yaml"])
def test_a_pattern_opens_nothing_outside_its_folder(tmp_path, name):
    (tmp_path / "own.yaml").write_text(OWN, "utf-8")
    home = tmp_path / "home"
    (home / "deeper").mkdir(parents=True)
    (home / "link.yaml").symlink_to(tmp_path / "own.yaml")
    table, findings = read_size_table(Text(name, Place("p.yaml", 3, 9, 3, 17)), home)
    assert table is None
    assert spots(findings) == [("table-out-of-reach", 3, 9)]


def test_what_a_user_types_herself_may_lead_anywhere(tmp_path):
    (tmp_path / "own.yaml").write_text(OWN, "utf-8")
    (tmp_path / "home").mkdir()
    assert read_size_table("../own.yaml", tmp_path / "home")[0] is not None
    assert read_size_table(str(tmp_path / "own.yaml"), Path("/"))[0] is not None


@pytest.mark.parametrize(
    ("change", "rule", "line", "column"),
    [
        (("title: Our own sizes\n", ""), "missing-key", 1, 1),
        (("title:", "titel:"), "unknown-key", 1, 1),
        (("title: Our own sizes", "title:"), "value-missing", 1, 1),
        (("by: chest", "by: bust"), "unknown-column", 3, 5),
        (("by: chest", "by: chst"), "unknown-column", 3, 5),
        (("wearer: adult", "wearer: woman"), "unknown-choice", 2, 9),
        (("wearer: adult", "wearer: {S: adult, M: adult}"), "unknown-size", 2, 10),
        (("wearer: adult", "wearer: {S: adult, M: adult, XL: adult}"), "unknown-size", 2, 30),
        (("[S, M, L]", "[S, M, S]"), "size-repeated", 4, 15),
        (("[28, null, 31.5]", "[28, null]"), "table-row-length", 10, 9),
        (("[28, null, 31.5]", "[28, null, about 31]"), "not-a-number", 10, 20),
        (("[28, null, 31.5]", "[28, null, 31,5]"), "table-row-length", 10, 9),
        (("[28, null, 31.5]", "[28, null, [30, 31, 32]]"), "wrong-kind", 10, 20),
        (("[28, null, 31.5]", "[28, null, -3]"), "number-out-of-range", 10, 20),
        (("[28, null, 31.5]", "28"), "wrong-kind", 10, 9),
        (("cm: [28", "mm: [28"), "unknown-key", 10, 5),
        (("    cm: [28, null, 31.5]\n", "    trust: x\n"), "column-empty", 9, 3),
        (("    trust: measured by us\n", "    use: {XL: {in: 50}}\n"), "unknown-size", 8, 11),
        (("    trust: measured by us\n", "    trust: [a]\n"), "wrong-kind", 8, 12),
        (("columns:\n", "columns: chest\nothers:\n"), "wrong-kind", 5, 10),
    ],
)
def test_one_slip_one_finding(tmp_path, change, rule, line, column):
    table, findings = read(tmp_path, OWN.replace(*change))
    assert table is None
    assert spots(findings)[0] == (rule, line, column)
    assert len(findings) == (2 if "others:" in change[1] else 1)


def test_several_slips_are_all_told(tmp_path):
    text = OWN.replace("wearer: adult", "wearer: cat").replace("38-40", "x").replace("31.5", "[1]") + "extra: 1\n"
    _, findings = read(tmp_path, text)
    assert sorted(spots(findings)) == [
        ("not-a-number", 7, 20), ("unknown-choice", 2, 9), ("unknown-key", 11, 1), ("wrong-kind", 10, 20),
    ]  # fmt: skip


def test_another_kind_of_file_is_no_flood(tmp_path):
    _, findings = read(tmp_path, "".join(f"key{at}: {at}\n" for at in range(200)))
    assert len(findings) == 1


@pytest.mark.parametrize("text", ["- a\n- b\n", "just words\n"])
def test_a_file_that_is_no_block(tmp_path, text):
    _, findings = read(tmp_path, text)
    assert [finding.rule for finding in findings] == ["wrong-kind"]


# ---- derived columns -------------------------------------------------------------------------------------------------

DERIVED = """\
derived:
  round:
    from: chest
    slope: 0.5
    intercept: 12.7
    residual sd: 3.5
    range cm: [87, 110]
    source: our survey
"""


def test_a_derived_column_is_exact_in_both_units(tmp_path):
    table, findings = read(tmp_path, OWN + DERIVED)
    assert findings == ()
    column = table.columns["round"]
    assert [cell.inches for cell in column.cells] == [  # 12.7 cm is 5 in
        Band(Fraction(22), Fraction(23)), Band(Fraction(24), Fraction(25)), Band(Fraction(26), Fraction("27.25")),
    ]  # fmt: skip
    assert [cell.cm for cell in column.cells] == [None] * 3
    assert column.spread_cm == Fraction("3.5")
    assert "our survey" in column.derived


def test_cells_beyond_the_survey_are_marked(tmp_path):
    table, _ = read(tmp_path, OWN + DERIVED)  # 34 in = 86.36 cm, 44.5 in = 113.03 cm
    assert [cell.extrapolated for cell in table.columns["round"].cells] == [True, False, True]
    assert not any(cell.extrapolated for cell in table.columns["chest"].cells)


def test_a_falling_line_keeps_low_below_high(tmp_path):
    table, _ = read(tmp_path, OWN + DERIVED.replace("slope: 0.5", "slope: -0.5").replace("12.7", "127"))
    assert table.columns["round"].cells[0].inches == Band(Fraction(32), Fraction(33))


@pytest.mark.parametrize(
    ("change", "rule", "line", "column"),
    [
        (("from: chest", "from: hip"), "unknown-column", 13, 11),
        (("    slope: 0.5\n", ""), "missing-key", 13, 5),
        (("slope: 0.5", "slope: half"), "not-a-number", 14, 12),
        (("range cm: [87, 110]", "range cm: [87]"), "wrong-kind", 17, 15),
        (("residual sd", "residual_sd"), "unknown-key", 16, 5),
    ],
)
def test_slips_in_a_derived_column(tmp_path, change, rule, line, column):
    table, findings = read(tmp_path, OWN + DERIVED.replace(*change))
    assert table is None
    assert spots(findings) == [(rule, line, column)]
