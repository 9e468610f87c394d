"""Sums read into trees; what can't be read is told at the exact character."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.findings import Written
from gradegen.read.sums.formula import is_name, read_amount, read_formula


def read(text: str, file: str = "p.yaml", line: int = 1, column: int = 1) -> Formula:
    tree, findings = read_formula(Written.plain(text, file, line, column))
    assert tree is not None, findings
    assert findings == ()
    return tree


def in_brackets(tree: Formula) -> str:
    """A tree with all its brackets, to compare by eye."""
    match tree:
        case Amount():
            return f"{tree.number}{tree.unit or ''}"
        case PerSize():
            return f"[{' '.join(in_brackets(each) for each in tree.each)}]"
        case Name():
            return tree.name
        case Sum():
            return f"({in_brackets(tree.left)} {tree.sign} {in_brackets(tree.right)})"
        case Call():
            return f"{tree.function}<{' '.join(in_brackets(part) for part in tree.parts)}>"


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        ("bust + 3 in", "(bust + 3in)"), ("bust+3in", "(bust + 3in)"), ("bust-3 in", "(bust - 3in)"),
        ("6½ in", "13/2in"), ("6 1/2 inches", "13/2in"), ('3"', "3in"), ("3″", "3in"), ("5'", "5ft"),
        ("7.5 cm", "15/2cm"),
        ("1 + 2 * 3", "(1 + (2 * 3))"), ("(1 + 2) * 3", "((1 + 2) * 3)"), ("8 - 4 - 2", "((8 - 4) - 2)"),
        ("8 / 4 / 2", "((8 / 4) / 2)"), ("2/3", "2/3"), ("2 / 3", "(2 / 3)"), ("bust/2", "(bust / 2)"),
        ("max(bust, hip) / 2", "(max<bust hip> / 2)"), ("Round(bust, 1/4 in)", "round<bust 1/4in>"),
        ("up(7/2)", "up<7/2>"),
        ("min(1, 2, 3)", "min<1 2 3>"), ("upper arm + 1 in", "(upper arm + 1in)"), ("upper   arm", "upper arm"),
        ("shoulder_girth", "shoulder_girth"), ("cross-back - 1 in", "(cross-back - 1in)"),
        ("maker's own", "maker's own"),
        ("round yoke", "round yoke"), ("2 * rounds", "(2 * rounds)"), ("2 * band + 1", "((2 * band) + 1)"),
        ("-3 in + bust", "(-3in + bust)"), ("bust - -3 in", "(bust - -3in)"), ("-(bust)", "(-1 * bust)"),
        ("bust − 2 × hip ÷ 3", "(bust - ((2 * hip) / 3))"), ("40 sts", "40sts"), ("3 rnds", "3rows"), ("100 g", "100g"),
        ("[11, 11, 12½] in", "[11in 11in 25/2in]"), ("[11 in, 30 cm]", "[11in 30cm]"),
        ("[-1, 0, 1.5] cm", "[-1cm 0cm 3/2cm]"),
        ('[11, 12]"', "[11in 12in]"), ("bust + [1, 2] in", "(bust + [1in 2in])"), ("84 (90, 96)", "[84 90 96]"),
        ("1 (2, 3) (4, 5) in", "[1in 2in 3in 4in 5in]"), ("2 * (3)", "(2 * 3)"), ("ärmel + 1 cm", "(ärmel + 1cm)"),
        ("band chain", "band chain"), ("bust\n  + 3 in", "(bust + 3in)"), ("m2 + 1", "(m2 + 1)"),
        ("m + 1 m", "(m + 1m)"),
        ("9" * 20, "9" * 20), (".5 in", "1/2in"), ("((((1))))", "1"),
    ],
)  # fmt: skip
def test_sums(text, tree):

    assert in_brackets(read(text)) == tree


@pytest.mark.parametrize(
    ("text", "column", "end_column"),
    [
        ("", 1, 1), ("   ", 3, 4), ("bust +", 6, 7), ("+ bust", 1, 2), ("bust ++ 3", 7, 8), ("(bust", 1, 2),
        ("bust)", 5, 6),
        ("((bust)", 1, 2), ("[11, 12", 1, 2), ("11, 12]", 3, 4), ("[11, 12)", 8, 9), ("[]", 2, 3), ("[11,]", 5, 6),
        ("[11, bust]", 6, 10), ("[11 12]", 5, 7), ("3 bust", 3, 7), ("bust 3", 6, 7), ("3 inchs", 3, 8),
        ("7,5 cm", 2, 3),
        ("bust $ 3", 6, 7), ("bust + ½½", 9, 10), ("1/0 in", 1, 4), ("6 3/2 in", 1, 6), ("3.4.5", 1, 6),
        ("foo(3)", 1, 4),
        ("max", 1, 4), ("max + 1", 1, 4), ("max()", 5, 6), ("max(1,", 6, 7), ("up(1, 2, 3)", 1, 3),
        ("2(band + 1)", 2, 3),
        ("[11 cm, 12] in", 13, 15), ("bust = 3", 6, 7), ("{bust}", 1, 2), ("bust + 3 in;", 12, 13), ("1e5", 2, 4),
        ("20 %", 4, 5),
        ("bust + .", 8, 9), ("9" * 21, 1, 22), ("１２", 1, 2),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_told_at_its_character(text, column, end_column):
    tree, findings = read_formula(Written.plain(text, "p.yaml", 7, 1))
    assert tree is None
    assert [finding.rule for finding in findings] == ["sum-unreadable"]
    place = findings[0].place
    assert (place.line, place.column, place.end_column) == (7, column, end_column)


@pytest.mark.parametrize(
    "text",
    ["(" * 10_000, "-" * 10_000, "1+" * 400 + "1", "max(" * 240, "[" * 900, "(" * 400 + "1" + ")" * 400, "a" * 5000],
)
def test_no_text_exhausts_the_reader(text):
    tree, findings = read_formula(Written.plain(text))
    assert tree is None
    assert findings[0].rule in ("sum-too-long", "sum-unreadable")


@pytest.mark.parametrize(
    ("text", "hint"), [("3 bust", "3 * bust"), ("3 inchs", "3 in"), ("mx(bust, hip)", "max(...)"), ("7,5 cm", "7.5")]
)
def test_repairs(text, hint):
    assert read_formula(Written.plain(text))[1][0].hint == hint


def test_every_part_knows_its_place():
    tree = read("bust + max(6½ in, [1, 2] in)", line=4, column=11)
    assert isinstance(tree, Sum)
    assert isinstance(tree.right, Call)
    amount, listed = tree.right.parts
    assert isinstance(listed, PerSize)
    spots = [tree, tree.left, tree.right, amount, listed, listed.each[1]]
    columns = [(11, 39), (11, 15), (18, 39), (22, 27), (29, 38), (33, 34)]
    assert [(spot.place.column, spot.place.end_column) for spot in spots] == columns
    assert {spot.place.line for spot in spots} == {4}


def test_a_part_of_a_text():
    written = Written.plain("Ch {2 * band + 1}, turn.", line=3, column=9)
    tree, findings = read_formula(written, 4, 16)
    assert findings == ()
    assert tree is not None
    assert in_brackets(tree) == "((2 * band) + 1)"
    assert (tree.place.line, tree.place.column, tree.place.end_column) == (3, 13, 25)
    tree, findings = read_formula(written, 4, 14)
    assert (findings[0].place.column, findings[0].place.end_column) == (22, 23)


def test_one_amount():
    amount, findings = read_amount(Written.plain("10 cm"))
    assert (amount, findings) == (Amount(Fraction(10), "cm", amount.place), ())
    assert read_amount(Written.plain("10 cm + 1 in"))[1][0].rule == "sum-unreadable"
    assert read_amount(Written.plain("10 parsecs"))[0] is None


def test_names_a_sum_can_say():
    assert all(is_name(name) for name in ("bust", "upper arm", "shoulder_girth", "cross-back", "row 1a"[:3], "m2"))
    assert not any(is_name(name) for name in ("", "max", "2nd round", "a + b", "side (left)", "row 2", "a,b"))


trees = st.recursive(
    st.one_of(st.integers(0, 99).map(str), st.sampled_from(["bust", "upper arm", "3½ in", "[1, 2] in", "7.5 cm"])),
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from("+-*/"), inner).map(lambda parts: f"({parts[0]} {parts[1]} {parts[2]})"),
        st.tuples(inner, inner).map(lambda parts: f"max({parts[0]}, {parts[1]})"),
    ),
    max_leaves=12,
)


@settings(derandomize=True)
@given(trees)
def test_sums_right_by_construction_are_read(text):
    read(text)


@settings(derandomize=True, max_examples=300)
@given(trees, st.data())
def test_a_mangled_sum_is_a_finding_inside_the_text_or_still_a_sum(text, data):
    at = data.draw(st.integers(0, len(text)))
    cut = data.draw(st.integers(0, 3))
    put = data.draw(st.text("()[],+-*/ 0.½ab\"'$", max_size=3))
    mangled = text[:at] + put + text[at + cut :]
    tree, findings = read_formula(Written.plain(mangled))
    assert (tree is None) == (len(findings) == 1)
    for finding in findings:
        assert 1 <= finding.place.column <= finding.place.end_column <= len(mangled) + 1


@settings(derandomize=True, max_examples=200)
@given(st.text(max_size=40))
def test_any_text_at_all(text):
    tree, findings = read_formula(Written.plain(text))
    assert (tree is None) == (len(findings) == 1)
