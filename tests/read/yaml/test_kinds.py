"""The kinds of single values, each with what it takes and what it refuses."""

from fractions import Fraction

import pytest

from gradegen.design.formula import Amount, PerSize
from gradegen.read.files import written_lines
from gradegen.read.pattern.kinds import ROWS, SIZES_WANTED, SKEIN
from gradegen.read.size_tables.bands import BAND, CELLS
from gradegen.read.yaml.fields import list_of, names_of, nearest
from gradegen.read.yaml.kinds import NUMBER_KIND, POSITIVE, SUM, TEXT, YES_NO, amount, choice, choice_text, whole
from gradegen.read.yaml.places import read_yaml


def node(text):
    found, findings = read_yaml(written_lines(f"k: {text}\n", "t.yaml"))
    assert findings == ()
    return found.entries[0].value


def value(kind, text):
    found, findings = kind.read(node(text))
    assert findings == ()
    return found


def refusal(kind, text):
    found, (finding,) = kind.read(node(text))
    assert found is None
    assert finding.hint
    return finding.rule


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("13", 13),
        ("13.5", "27/2"),
        ("13 1/2", "27/2"),
        ("13½", "27/2"),
        ("1/4", "1/4"),
        (".5", "1/2"),
        ("010", 10),
        ("-2", -2),
    ],
)
def test_numbers_are_exact(text, number):
    assert value(NUMBER_KIND, text) == Fraction(number)


@pytest.mark.parametrize(
    "text", ["13,5", "thirteen", "1e3", "0x1F", "12:30", "13 in", "1/0", "no", "9" * 100, "'- 3 -'"]
)
def test_what_is_no_number(text):
    assert refusal(NUMBER_KIND, text) == "not-a-number"


@pytest.mark.parametrize(
    ("text", "rule"), [("0", "number-out-of-range"), ("-1", "number-out-of-range"), ("[1]", "wrong-kind")]
)
def test_numbers_above_nothing(text, rule):
    assert refusal(POSITIVE, text) == rule


@pytest.mark.parametrize(
    ("text", "rule"), [("0", "number-out-of-range"), ("11", "number-out-of-range"), ("2.5", "not-a-number")]
)
def test_whole_numbers_keep_their_limits(text, rule):
    assert refusal(whole(1, 10), text) == rule
    assert value(whole(1, 10), "10") == 10


@pytest.mark.parametrize(
    ("text", "truth"), [("true", True), ("yes", True), ("On", True), ("no", False), ("FALSE", False)]
)
def test_yes_and_no_in_every_spelling(text, truth):
    assert value(YES_NO, text) is truth


def test_choices_forgive_capitals_and_blanks_only():
    kind = choice("joined rounds", "flat")
    assert value(kind, "Joined  Rounds") == "joined rounds"
    assert refusal(kind, "round") == "unknown-choice"
    chosen = value(choice_text(("basic", "easy")), "Easy")
    assert (chosen.text, chosen.place.line, chosen.place.column) == ("easy", 1, 4)


@pytest.mark.parametrize(
    ("kind", "text", "number", "unit"),
    [
        ("length", "4 in", 4, "in"),
        ("length", '4"', 4, "in"),
        ("length", "10cm", 10, "cm"),
        ("length", "6.5 mm", "13/2", "mm"),
        ("length", "6½ inches", "13/2", "in"),
        ("mass", "168 g", 168, "g"),
        ("mass", "3.5 oz", "7/2", "oz"),
    ],
)
def test_amounts(kind, text, number, unit):
    found = value(amount(kind, "4 in"), text)
    assert (found.number, found.unit) == (Fraction(number), unit)


@pytest.mark.parametrize(
    ("text", "rule"),
    [("4", "unit-wrong"), ("4 g", "unit-wrong"), ("4 sts", "unit-wrong"), ("four in", "not-a-measure"),
     ("0 in", "number-out-of-range"),
     ("4 in + 1 in", "not-a-measure"), ("[4 in]", "wrong-kind"), ("-4 in", "number-out-of-range")],
)  # fmt: skip
def test_what_is_no_length(text, rule):
    assert refusal(amount("length", "4 in"), text) == rule


@pytest.mark.parametrize(
    ("text", "length", "mass"),
    [
        ("200 yd / 100 g", "yd", "g"),
        ("200yd/100g", "yd", "g"),
        ("100 g / 183 m", "m", "g"),
        ("50 g", None, "g"),
        ("183 m", "m", None),
    ],
)
def test_put_ups(text, length, mass):
    found = value(SKEIN, text)
    assert tuple(part.unit if part else None for part in found[:2]) == (length, mass)


@pytest.mark.parametrize("text", ["200", "200 / 100", "200 yd / 100 m", "200 yd + 100 g", "3 sts"])
def test_what_is_no_put_up(text):
    assert refusal(SKEIN, text) == "unit-wrong"


def test_a_list_of_measures_is_one_per_size():
    found = value(SUM, "[11 in, 12 in]")
    assert isinstance(found, PerSize)
    assert [one.number for one in found.each] == [11, 12]
    assert isinstance(value(SUM, "11 in"), Amount)
    assert refusal(SUM, "{a: 1}") == "wrong-kind"
    assert refusal(SUM, "[bust, 12 in]") == "wrong-kind"


def test_sizes_wanted():
    assert value(SIZES_WANTED, "All").sizes is None
    assert [size.text for size in value(SIZES_WANTED, "[S, 2X]").sizes] == ["S", "2X"]
    assert [size.text for size in value(SIZES_WANTED, "M").sizes] == ["M"]


@pytest.mark.parametrize("text", ["|\n  Row 1\n  Row 2", "|-\n  Row 1", "Row 1", "'Row 1: sc'"])
def test_rows_that_keep_their_lines(text):
    assert value(ROWS, text).text.startswith("Row 1")


@pytest.mark.parametrize("text", [">\n  Row 1\n  Row 2", "Row 1\n  Row 2", "'Row 1\n  Row 2'"])
def test_rows_that_run_together(text):
    assert refusal(ROWS, text) == "rows-folded"


@pytest.mark.parametrize(
    ("text", "ends"),
    [("34", (34, 34)), ("[34, 36]", (34, 36)), ("34-36", (34, 36)), ("34.5 – 36", ("69/2", 36)), ("36-34", (36, 34))],
)
def test_bands(text, ends):
    band, _ = value(BAND, text)
    assert (band.low, band.high) == tuple(Fraction(end) for end in ends)


@pytest.mark.parametrize("text", ["null", "~", "-", ""])
def test_cells_that_were_not_published(text):
    ((band, _), (other, _)) = value(CELLS, f"[{text or 'null'}, 3]")
    assert band is None
    assert other.low == 3


@pytest.mark.parametrize("text", ["[34]", "[34, 36, 38]", "{low: 34}"])
def test_what_is_no_band(text):
    assert refusal(BAND, text) == "wrong-kind"


def test_lists_take_one_alone_and_leave_out_what_they_can_not_read():
    kind = list_of(TEXT, "a list of notes")
    assert [text.text for text in value(kind, "one")] == ["one"]
    found, findings = kind.read(node("[one, {a: b}, three]"))
    assert [text.text for text in found] == ["one", "three"]
    assert [(finding.rule, finding.place.column) for finding in findings] == [("wrong-kind", 11)]


def test_names_stay_known_when_their_value_can_not_be_read():
    named, findings = names_of(POSITIVE, "numbers by name").read(node("{a: 1, b: x, c: 3}"))
    assert [(key.text, number) for key, number in named] == [("a", 1), ("b", None), ("c", 3)]
    assert [(finding.rule, finding.place.column) for finding in findings] == [("not-a-number", 14)]


@pytest.mark.parametrize(
    ("word", "near"),
    [("multipel", "multiple"), ("base_extra", "base extra"), ("Plus", "plus"), ("weather", None), ("", None)],
)
def test_the_nearest_name(word, near):
    assert nearest(word, ("multiple", "plus", "base extra", "least")) == near
