"""Pattern files: every key to its typed value, every slip one finding at its place, several slips several findings."""

import subprocess
import sys
import time
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gradegen.design.formula import Amount, Name, PerSize, Sum
from gradegen.read.pattern.file import read_pattern, read_pattern_and_table

WRAP = """\
title: Tide Wrap
version: "1.0"
about: One sentence.
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
level: easy
wearer: adult
units: inches first
rounding: 1/4 in
sizes: {table: women, for: [S, M, L], by: bust, take: middle}
yarn:
  A: {weight: medium, fibre: wool, colour: slate, skein: 200 yd / 100 g, sample: {size: M, used: 168 g}}
notions:
  - tapestry needle
  - {what: stitch marker, number: 1}
gauge:
  lattice: {stitches: 13, rows: 7, over: 4 in, hook: 6 mm, state: blocked, before: {stitches: 13.5}, note: lace}
measures:
  around: bust + 3 in
  depth: "[11, 12, 13] in"
counts:
  band: {across: around, gauge: lattice, multiple: 4, parity: even, least: 20, tie: down}
  rounds: {along: depth, both sides: true, multiple: 2, plus: 1}
  total: {sum: 2 * band}
stitches:
  little fan: "(dc, ch 1, dc) in st or sp indicated"
notes:
  - First note.
  - "Second note: with a colon."
pieces:
  - name: Band
    shape: half-twist band
    width: around
    length: depth
    notes: [A note.]
    rows: |
      Foundation: Ch {band} and join with sl st in first ch.
      Rnd 1: Ch 1 (does not count as a st), sc in each ch around, join. ({band} sc)
finishing: [Weave in ends.]
cautions: []
licence: Sell what you make.
"""


def read(tmp_path, text=WRAP, reader=read_pattern):
    (tmp_path / "wrap.yaml").write_text(text, "utf-8")
    return reader(tmp_path / "wrap.yaml")


def spots(findings, *severities):
    return sorted(
        (finding.rule, finding.place.line, finding.place.column)
        for finding in findings
        if not severities or str(finding.severity) in severities
    )


@pytest.fixture
def wrap(tmp_path):
    pattern, findings = read(tmp_path)
    assert spots(findings, "error", "warning") == []
    return pattern


def test_plain_values(wrap):
    assert (wrap.title.text, wrap.version.text, wrap.about.text) == ("Tide Wrap", "1.0", "One sentence.")
    assert (wrap.title.place.line, wrap.title.place.column, wrap.title.place.end_column) == (1, 8, 17)
    assert (wrap.designer.name.text, wrap.designer.help.text, wrap.designer.year) == (
        "Demo House",
        "help@example.org",
        2026,
    )
    assert (wrap.terms, wrap.level.text, wrap.wearer, wrap.units, wrap.rounding.text) == (
        "US", "easy", "adult", "inches first", "1/4 in",
    )  # fmt: skip
    assert [note.text for note in wrap.notes] == ["First note.", "Second note: with a colon."]
    assert ([text.text for text in wrap.finishing], wrap.cautions, wrap.licence.text) == (
        ["Weave in ends."], (), "Sell what you make.",
    )  # fmt: skip


def test_sizes_yarn_and_notions(wrap):
    assert (wrap.sizes.table.text, wrap.sizes.by.text, wrap.sizes.take) == ("women", "bust", "middle")
    assert [size.text for size in wrap.sizes.wanted] == ["S", "M", "L"]
    (yarn,) = wrap.yarns
    assert (yarn.letter, yarn.weight.text, yarn.fibre.text, yarn.colour.text) == ("A", "medium", "wool", "slate")
    assert (yarn.skein_length.number, yarn.skein_length.unit) == (200, "yd")
    assert (yarn.skein_mass.number, yarn.skein_mass.unit) == (100, "g")
    assert (yarn.sample_size.text, yarn.sample_used.number) == ("M", 168)
    assert [(notion.what.text, notion.number and notion.number.values) for notion in wrap.notions] == [
        ("tapestry needle", None), ("stitch marker", (1,)),
    ]  # fmt: skip


def test_gauge(wrap):
    gauge = wrap.gauges["lattice"]
    assert (gauge.stitches, gauge.rows, gauge.repeats) == (13, 7, None)
    assert (gauge.over.number, gauge.over.unit, gauge.hook.number, gauge.hook.unit) == (4, "in", 6, "mm")
    assert (gauge.state, gauge.before_stitches, gauge.before_rows) == ("blocked", Fraction("13.5"), None)
    assert gauge.note.text == "lace"
    assert (gauge.places["rows"].line, gauge.places["rows"].column) == spot_of(WRAP, "7, over")
    assert gauge.places["before stitches"].line == 17


def test_measures_and_counts(wrap):
    around = wrap.measures["around"].formula
    assert isinstance(around, Sum)
    assert isinstance(around.left, Name)
    assert (around.right.place.line, around.right.place.column) == spot_of(WRAP, "3 in")
    depth = wrap.measures["depth"].formula
    assert isinstance(depth, PerSize)
    assert [(one.number, one.unit) for one in depth.each] == [(11, "in"), (12, "in"), (13, "in")]
    band, rounds, total = (wrap.counts[name] for name in ("band", "rounds", "total"))
    assert (band.multiple, band.plus, band.parity, band.least, band.tie, band.both_sides) == (
        4,
        0,
        "even",
        20,
        "down",
        False,
    )
    assert (band.across.name, band.gauge.text, band.pieces, band.base_extra) == ("around", "lattice", 1, 0)
    assert (rounds.along.name, rounds.both_sides, rounds.multiple, rounds.plus, rounds.gauge) == (
        "depth",
        True,
        2,
        1,
        None,
    )
    assert (rounds.tie, rounds.most) == ("up", None)
    assert total.formula is not None
    assert total.across is None
    assert (band.places["multiple"].line, band.places["multiple"].column) == spot_of(WRAP, "4, parity")


def test_pieces_and_own_stitches(wrap):
    (piece,) = wrap.pieces
    assert (piece.name.text, piece.shape, piece.width.text, piece.length.text) == (
        "Band", "half-twist band", "around", "depth",
    )  # fmt: skip
    assert [note.text for note in piece.notes] == ["A note."]
    assert [definition.name for definition in wrap.definitions] == ["little fan"]
    assert wrap.definitions[0].place.line == 26


def test_rows_know_their_lines(wrap):
    rows = wrap.pieces[0].rows
    assert [(row.place.line, row.place.column) for row in rows] == [spot_of(WRAP, "Foundation"), spot_of(WRAP, "Rnd 1")]
    stated = rows[1].stated[0].number.place
    assert (stated.line, stated.column) == spot_of(WRAP, "{band} sc)")


def test_the_table_is_read_once_with_it(tmp_path, monkeypatch):
    opened = []
    from gradegen.read.size_tables import table as size_table

    real = size_table.open_text
    monkeypatch.setattr(size_table, "open_text", lambda *words: opened.append(words) or real(*words))
    (pattern, table), _ = read(tmp_path, reader=read_pattern_and_table)
    assert len(opened) == 1
    assert table.name == "women"
    assert set(pattern.sources) == {str(tmp_path / "wrap.yaml"), "sizes/women.yaml"}
    assert pattern.sources[pattern.file].text == WRAP


def test_a_table_of_ones_own_beside_the_pattern(tmp_path):
    own = "title: T\nwearer: child\nby: head\nsizes: [one, two, three]\ncolumns: {head: {cm: [40, 44, 48]}}\n"
    (tmp_path / "tables").mkdir()
    (tmp_path / "tables" / "own.yaml").write_text(own, "utf-8")
    text = WRAP.replace("{table: women, for: [S, M, L], by: bust, take: middle}", "{table: tables/own.yaml}")
    text = text.replace("size: M,", "size: two,").replace("bust + 3 in", "head + 3 in")
    pattern, findings = read(tmp_path, text)
    assert spots(findings, "error") == []
    assert pattern.sizes.wanted is None
    assert pattern.sizes.take == "middle"


def test_all_sizes_by_word(tmp_path):
    text = WRAP.replace("for: [S, M, L]", "for: all").replace("[11, 12, 13]", "[11, 11, 12, 12, 13, 13, 14, 14, 15]")
    assert read(tmp_path, text)[0].sizes.wanted is None


def test_a_list_of_measures_the_yaml_way(tmp_path):
    pattern, _ = read(tmp_path, WRAP.replace('"[11, 12, 13] in"', "[11 in, 12 in, 33 cm]"))
    assert [(one.number, one.unit) for one in pattern.measures["depth"].formula.each] == [
        (11, "in"),
        (12, "in"),
        (33, "cm"),
    ]


def test_a_gauge_by_repeats(tmp_path):
    pattern, findings = read(tmp_path, WRAP.replace("{stitches: 13, rows: 7,", "{repeats: 5, repeat of: 4, rows: 7,"))
    assert spots(findings, "error") == []
    gauge = pattern.gauges["lattice"]
    assert (gauge.stitches, gauge.repeats, gauge.repeat_of) == (None, 5, 4)


def test_one_unit_of_a_put_up_is_enough(tmp_path):
    (yarn,) = read(tmp_path, WRAP.replace("200 yd / 100 g", "50 g"))[0].yarns
    assert (yarn.skein_length, yarn.skein_mass) == (None, Amount(Fraction(50), "g", yarn.skein_mass.place))


def spot_of(text, words, inside=None):
    """Line and column of some words, looked for behind `inside` where they stand more than once."""
    at = text.index(words, text.index(inside) if inside else 0)
    return text.count("\n", 0, at) + 1, at - (text.rfind("\n", 0, at) + 1) + 1


@pytest.mark.parametrize(
    ("change", "rule", "at"),
    [
        # keys
        (("title: Tide Wrap\n", ""), "missing-key", "version"),
        (("title:", "titel:"), "unknown-key", "titel"),
        (("title: Tide Wrap", "title:"), "value-missing", "title"),
        (("terms: US\n", ""), "missing-key", "title"),
        (("multiple: 4", "multipel: 4"), "unknown-key", "multipel"),
        (("    shape: half-twist band\n", ""), "missing-key", "name: Band"),
        (("    width: around\n", "    breadth: around\n"), "unknown-key", "breadth"),
        (("licence:", "title:"), "key-repeated", "title: Sell"),
        (('version: "1.0"', "colour: blue"), "unknown-key", "colour: blue"),
        # kinds
        (("title: Tide Wrap", "title: [Tide, Wrap]"), "wrong-kind", "[Tide"),
        (("  - First note.", "  - First note: with a colon."), "wrong-kind", "First note"),
        (("terms: US", "terms: USA"), "unknown-choice", "USA"),
        (("level: easy", "level: esay"), "unknown-choice", "esay"),
        (("level: easy", "level: no"), "unknown-choice", "no\nwearer"),
        (("units: inches first", "units: inches"), "unknown-choice", "inches\n"),
        (("rounding: 1/4 in", "rounding: 1/3 in"), "unknown-choice", "1/3"),
        (("shape: half-twist band", "shape: moebius"), "unknown-choice", "moebius"),
        (("year: 2026", "year: 12:30"), "not-a-number", "12:30"),
        (("year: 2026", "year: 26"), "number-out-of-range", "26}"),
        (("year: 2026", "year: 2026.5"), "not-a-number", "2026.5"),
        (("multiple: 4", "multiple: four"), "not-a-number", "four"),
        (("multiple: 4", "multiple: 0"), "number-out-of-range", "0, parity"),
        (("multiple: 4", "multiple: " + "9" * 1_000_000), "not-a-number", "9999"),
        (("both sides: true", "both sides: maybe"), "unknown-choice", "maybe"),
        (("stitches: 13,", "stitches: thirteen,"), "not-a-number", "thirteen"),
        (("stitches: 13,", "stitches: -13,"), "number-out-of-range", "-13"),
        (("stitches: 13,", "stitches: 13,5,"), "unknown-key", "5, rows"),
        (("over: 4 in", "over: 4"), "unit-wrong", "4, hook"),
        (("over: 4 in", "over: 4 g"), "unit-wrong", "4 g"),
        (("over: 4 in, ", ""), "missing-key", "stitches: 13"),
        (("hook: 6 mm", "hook: J-10"), "not-a-measure", "J-10"),
        (("before: {stitches: 13.5}", "before: 13"), "wrong-kind", "13, note"),
        (("200 yd / 100 g", "200 yd / 100 yd"), "unit-wrong", "200 yd"),
        (("used: 168 g", "used: 168 in"), "unit-wrong", "168 in"),
        (("number: 1}", "number: some}"), "number-needed", "some"),
        (("gauge:\n  lattice: {", "gauge: 13\nother: {"), "wrong-kind", "13\nother"),
        (("bust + 3 in", "bust + + 3 in"), "sum-unreadable", "+ 3 in"),
        (('"[11, 12, 13] in"', "{a: 1}"), "wrong-kind", "a: 1"),
        (('"[11, 12, 13] in"', "[11 in, bust, 13 in]"), "wrong-kind", "bust, 13"),
        (("rows: |\n", "rows: >\n"), "rows-folded", "Foundation"),
        (("    rows: |\n", "    rows:\n    - |\n"), "wrong-kind", "Foundation"),
        # what one part says of another
        (("table: women", "table: woman"), "size-table-missing", "woman"),
        (("[S, M, L]", "[S, M, XXL]"), "unknown-size", "XXL"),
        (("[S, M, L]", "[S, M, L, M]"), "size-repeated", "M], by"),
        (("by: bust", "by: chest"), "unknown-column", "chest"),
        (("size: M,", "size: XL,"), "unknown-size", "XL, used"),
        (("gauge: lattice, multiple", "gauge: lettuce, multiple"), "unknown-gauge", "lettuce"),
        (("across: around, gauge", "across: around, along: depth, gauge"), "count-needs-one-measure", "band: {across"),
        (("across: around, gauge", "gauge"), "count-needs-one-measure", "band: {gauge"),
        (("least: 20", "least: 20, most: 10"), "limits-crossed", "20, most"),
        (("{stitches: 13, rows: 7, over", "{stitches: 13, over"), "gauge-incomplete", "lattice: {"),
        (("{stitches: 13, rows", "{repeats: 5, rows"), "gauge-incomplete", "5, rows"),
        (("{stitches: 13, rows", "{stitches: 13, repeats: 5, repeat of: 4, rows"), "gauge-given-twice", "5, repeat of"),
        (("width: around", "width: arround"), "unknown-measure", "arround"),
        (("  band: {across", "  2nd band: {across"), "name-unusable", "2nd band"),
    ],
)
def test_one_slip_is_found_at_its_place(tmp_path, change, rule, at):
    text = WRAP.replace(*change)
    assert text != WRAP
    pattern, findings = read(tmp_path, text)
    assert pattern is None
    found = spots(findings, "error")
    assert (rule, *spot_of(text, at)) in found
    assert len(found) <= 2
    assert all(finding.hint for finding in findings if finding.rule != "sum-unreadable")


def test_the_nearest_known_key_is_named(tmp_path):
    _, findings = read(tmp_path, WRAP.replace("multiple: 4", "multipel: 4"))
    assert ["multiple" in finding.hint for finding in findings if finding.rule == "unknown-key"] == [True]


def test_a_gauge_must_be_named_where_there_are_two(tmp_path):
    _, findings = read(tmp_path, WRAP.replace("gauge:\n", "gauge:\n  plain: {stitches: 14, rows: 7, over: 10 cm}\n"))
    assert spots(findings, "error") == [("unknown-gauge", 24, 3)]


def test_several_slips_are_all_told_in_one_go(tmp_path):
    text = (
        WRAP.replace("terms: US", "terms: US\nterms: UK")
        .replace("level: easy", "level: esay")
        .replace("multiple: 4", "multipel: 4")
    )
    text = text.replace("13.5", "many").replace("size: M,", "size: XL,").replace("over: 4 in", "over: 4")
    _, findings = read(tmp_path, text)
    assert [rule for rule, _, _ in spots(findings, "error")] == [
        "key-repeated", "not-a-number", "unit-wrong", "unknown-choice", "unknown-key", "unknown-size",
    ]  # fmt: skip


@pytest.mark.parametrize("keyless", ["terms: US\n", "sizes: {table: women, for: [S, M, L], by: bust, take: middle}\n"])
def test_what_can_not_be_read_without_it_is_left_alone(tmp_path, keyless):
    _, findings = read(tmp_path, WRAP.replace(keyless, ""))
    assert [rule for rule, _, _ in spots(findings)] == ["missing-key"]


def test_an_optional_key_left_empty_is_a_warning(tmp_path):
    pattern, findings = read(tmp_path, WRAP.replace("licence: Sell what you make.", "licence:"))
    assert pattern is not None
    assert spots(findings, "warning") == [("value-missing", *spot_of(WRAP, "licence"))]


def test_a_size_list_of_the_wrong_length_in_a_note(tmp_path):
    text = WRAP.replace("First note.", "Leave 5 (6, 7, 8) sts.")
    pattern, findings = read(tmp_path, text)
    assert ("size-list-length", *spot_of(text, "5 (6")) in spots(findings)
    assert pattern is not None


def test_names_and_lists_in_prose_are_found(tmp_path):
    pattern, _ = read(tmp_path, WRAP.replace("First note.", '"It is {around} round, with 5 (6, 7) buttons."'))
    text = pattern.notes[0]
    found = [text.text[listed.start : listed.end] for listed in text.lists]
    assert found == ["{around}", "5 (6, 7)"]
    assert text.lists[1].values == ("5", "6", "7")


@pytest.mark.parametrize(
    "text", ["", "# remark\n", "- a\n", "words\n", "a: [\n", "\x00", "title: x\n---\n", "[" * 5000]
)
def test_files_that_are_no_pattern_give_one_finding(tmp_path, text):
    pattern, findings = read(tmp_path, text)
    assert pattern is None
    assert len(findings) == 1


def test_a_missing_pattern(tmp_path):
    pattern, findings = read_pattern(tmp_path / "none.yaml")
    assert pattern is None
    assert [finding.rule for finding in findings] == ["file-missing"]


def test_reading_is_quick(tmp_path):
    """A pattern of 80 rows and its size table: the bound is ten times what it takes on a slow machine."""
    rows = "".join(f"      Rnd {at}: Ch 1, sc in each st around, join. ({{band}} sc)\n" for at in range(2, 80))
    text = WRAP.replace("finishing:", rows + "finishing:")
    read(tmp_path, text)
    begin = time.process_time()
    assert read(tmp_path, text)[0] is not None
    assert time.process_time() - begin < 0.5


HEAVY = {"numpy", "pint", "rich", "jinja2", "weasyprint", "pypdf", "jsonschema"}


def test_nothing_heavy_is_loaded():
    code = "import sys, gradegen.read.pattern.file, gradegen.read.schema; print(*sys.modules)"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "yaml" in run.stdout.split()
    assert HEAVY & set(run.stdout.split()) == set()


# ---- slips nobody thought of -----------------------------------------------------------------------------------------

SIGNS = ["", ":", "'", '"', "{", "[", "}", "]", " ", "\n", "#", "-", "x", "9", ",", "\t", "&", "*", "|", "é"]


def check_inside(text, file, findings):
    lines = text.split("\n")
    for finding in findings:
        place = finding.place
        assert finding.message
        assert place.file in (str(file), "sizes/women.yaml")
        if place.file == str(file):
            assert 1 <= place.line <= place.end_line <= len(lines)
            assert 1 <= place.column <= len(lines[place.line - 1]) + 1
            assert 1 <= place.end_column <= len(lines[place.end_line - 1]) + 1


@given(st.integers(0, len(WRAP) - 1), st.sampled_from(SIGNS), st.booleans())
@settings(
    max_examples=120, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_a_changed_sign_is_never_a_flood(tmp_path, at, sign, taken):
    text = WRAP[:at] + sign + WRAP[at + taken :]
    _, findings = read(tmp_path, text)
    check_inside(text, tmp_path / "wrap.yaml", findings)
    assert len(spots(findings, "error")) <= 2


@pytest.mark.parametrize("change", ["lost", "further in", "further out"])
@pytest.mark.parametrize("number", range(WRAP.count("\n")))
def test_a_lost_or_shifted_line_is_never_a_flood(tmp_path, number, change):
    lines = WRAP.split("\n")
    line = lines[number]
    lines[number : number + 1] = (
        [] if change == "lost" else [f"  {line}" if change == "further in" else line.removeprefix("  ")]
    )
    text = "\n".join(lines)
    _, findings = read(tmp_path, text)
    check_inside(text, tmp_path / "wrap.yaml", findings)
    assert len(spots(findings, "error")) <= 2
