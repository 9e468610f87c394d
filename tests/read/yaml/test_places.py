"""YAML as written: every character knows its place, and nothing is expanded, guessed or dropped in silence."""

import time

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.read.files import written_lines
from gradegen.read.yaml.nodes import Block, Listing, Scalar
from gradegen.read.yaml.places import read_yaml


def read(text):
    return read_yaml(written_lines(text, "t.yaml"))


def scalars(node):
    if isinstance(node, Scalar):
        yield node
    for item in node.items if isinstance(node, Listing) else ():
        yield from scalars(item)
    for entry in node.entries if isinstance(node, Block) else ():
        yield entry.key
        yield from scalars(entry.value)


def plain(node):
    if isinstance(node, Scalar):
        return node.written.text
    if isinstance(node, Listing):
        return [plain(item) for item in node.items]
    return {entry.key.written.text: plain(entry.value) for entry in node.entries}


def sign_at(text, place):
    line = [*text.split("\n"), ""][place.line - 1] + "\n"
    return line[place.column - 1]


def value(text):
    node, findings = read(text)
    assert findings == ()
    return node.entries[0].value


def test_words_that_yaml_would_turn_into_something_else():
    text = "a: no\nb: 12:30\nc: 010\nd: 1.50\ne: null\nf: ~\ng: 1e3\nh: 2026-01-02\ni: 0x1F\nj: YES\nk:\n"
    node, findings = read(text)
    assert findings == ()
    assert list(plain(node).values()) == [
        "no",
        "12:30",
        "010",
        "1.50",
        "null",
        "~",
        "1e3",
        "2026-01-02",
        "0x1F",
        "YES",
        "",
    ]
    assert [entry.value.is_empty for entry in node.entries] == [False] * 10 + [True]


def test_a_million_digits_are_text():
    begin = time.process_time()
    node, findings = read("a: " + "1" * 1_000_000)
    assert findings == ()
    assert len(node.entries[0].value.text) == 1_000_000
    assert time.process_time() - begin < 0.5


def test_rows_in_a_block_keep_their_lines_and_indentation():
    found = value("rows: |\n    Row 1: sc.\n      continued\n\n    Row 2: dc.\nnext: x\n")
    assert found.text == "Row 1: sc.\n  continued\n\nRow 2: dc."
    spots = {words: found.written.place(found.text.index(words)) for words in ("Row 1", "continued", "Row 2", "dc")}
    assert {words: (place.line, place.column) for words, place in spots.items()} == {
        "Row 1": (2, 5), "continued": (3, 7), "Row 2": (5, 5), "dc": (5, 12),
    }  # fmt: skip


@pytest.mark.parametrize(
    ("text", "words", "line", "column"),
    [
        ("a: 'it''s one'\n", "s one", 1, 9),
        ("a: 'one\n  two\n\n  three'\n", "three", 4, 3),
        ('a: "one\\ttwo"\n', "two", 1, 10),
        ('a: "\\u00bd x"\n', "x", 1, 12),
        ('a: "one \\\n    two"\n', "two", 2, 5),
        ("a: one\n  two # three\n", "two", 2, 3),
        ("a: one\n  two\n\n  three\n", "three", 4, 3),
        ("a: >\n  one\n  two\n\n  three\n", "three", 5, 3),
        ("a: >-\n  one\n   * two\n  three\n", "* two", 3, 4),
        ("a: >-\n  one\n   * two\n  three\n", "three", 4, 3),
        ("a: |2\n    one\n  two\n", "one", 2, 5),
        ("a: |+\n  one\n\n\nb: 2\n", "one", 2, 3),
        ("- [x, 'yy', {k: zz}]\n", "zz", 1, 17),
        ("a: ½ 𝕏 end\n", "end", 1, 8),
    ],
)
def test_places_of_words(text, words, line, column):
    node, findings = read(text)
    assert findings == ()
    found = next(scalar for scalar in scalars(node) if words in scalar.text)
    place = found.written.place(found.text.index(words))
    assert (place.line, place.column) == (line, column)


@pytest.mark.parametrize(
    ("text", "rule", "line", "column"),
    [
        ("M: 1\nL: 2\nM: 3\n", "key-repeated", 3, 1),
        ("a: {x: 1, x: 2}\n", "key-repeated", 1, 11),
        ("a: 1\n'a': 2\n", "key-repeated", 2, 1),
        ("a: *sc in next st\n", "yaml-shorthand", 1, 4),
        ("a: &x 1\n", "yaml-shorthand", 1, 4),
        ("a: !!python/object/apply:os.system [id]\n", "yaml-shorthand", 1, 4),
        ("a: !x y\n", "yaml-shorthand", 1, 4),
        ("? [a, b]\n: 1\n", "key-not-a-name", 1, 3),
        ("a: {{band}: 1}\n", "key-not-a-name", 1, 5),
        ("a: 1\n---\nb: 2\n", "second-document", 2, 1),
        ("# only a remark\n", "file-empty", 1, 1),
        ("---\n", "file-empty", 1, 1),
        ("a:\n  b: 1\n\tc: 2\n", "tab-indents", 3, 1),
        ("\ta: 1\n", "tab-indents", 1, 1),
        ("rows: |\n\tRow 1: sc\n", "tab-indents", 2, 1),
        ("a: x\x07y\n", "odd-sign", 1, 5),
        ("a: x\u2028y\n", "odd-sign", 1, 5),
        ("a: x\x85y\n", "odd-sign", 1, 5),
        ("a: one: two\n", "yaml-syntax", 1, 7),
        ("a: 1\n b: 2\n", "yaml-syntax", 2, 2),
        ("a: one\nb: 'two\nc: three\n", "yaml-syntax", 2, 4),
        ('a: "one\nb: two\n', "yaml-syntax", 1, 4),
        ("a: [1, 2\n", "yaml-syntax", 1, 4),
        ("a: {x: 1\nb: 2\n", "yaml-syntax", 1, 4),
        ("a: {band} sts\n", "yaml-syntax", 1, 11),
        ("a: @home\n", "yaml-syntax", 1, 4),
        ("a: `x`\n", "yaml-syntax", 1, 4),
        ("a:\n  - x\n - y\n", "yaml-syntax", 3, 2),
        ("a: | Row 1\n", "yaml-syntax", 1, 6),
        ('a: "1\\q"\n', "yaml-syntax", 1, 6),
        ("a: - b\n", "yaml-syntax", 1, 4),
        ("a: 1\nb\n", "yaml-syntax", 2, 1),
        ("%YAML 9.0\n---\na: 1\n", "yaml-syntax", 1, 1),
        ("a: 1\n...\nb: 1\n", "yaml-syntax", 3, 1),
    ],
)
def test_one_slip_one_finding_at_its_place(text, rule, line, column):
    _, findings = read(text)
    assert [(finding.rule, finding.place.line, finding.place.column) for finding in findings] == [(rule, line, column)]
    assert findings[0].hint


def test_a_repeated_key_keeps_the_first_and_points_at_both():
    node, (finding,) = read("a: 1\nb: 2\na: 3\n")
    assert plain(node) == {"a": "1", "b": "2"}
    assert [(place.line, word) for place, word in finding.see_also] == [(1, "first")]


def test_several_repeated_keys_are_several_findings():
    _, findings = read("a: 1\na: 2\nb: {c: 1, c: 2}\nb: 1\n")
    assert [(finding.place.line, finding.place.column) for finding in findings] == [(2, 1), (3, 11), (4, 1)]


def test_an_alias_bomb_costs_nothing():
    bomb = "a: &a [x,x,x,x,x,x,x,x,x]\n" + "".join(
        f"{chr(98 + at)}: &{chr(98 + at)} [{','.join(['*' + chr(97 + at)] * 9)}]\n" for at in range(8)
    )
    begin = time.process_time()
    node, findings = read(bomb)
    assert node is None
    assert [(finding.rule, finding.place.line, finding.place.column) for finding in findings] == [
        ("yaml-shorthand", 1, 4)
    ]
    assert time.process_time() - begin < 0.1


@pytest.mark.parametrize(
    "text", ["[" * 5000 + "]" * 5000, "{a: " * 5000, "".join(" " * at + "a:\n" for at in range(5000))]
)
def test_depth_is_refused_not_followed(text):
    begin = time.process_time()
    node, findings = read(text)
    assert node is None
    assert [finding.rule for finding in findings] == ["nested-too-deeply"]
    assert time.process_time() - begin < 1


@pytest.mark.parametrize(
    "text", ["a: '" + "''" * 100_000 + "'", 'a: "' + "\\t" * 100_000 + '"', "a: >\n" + "  x\n" * 50_000]
)
def test_a_text_without_end_is_refused(text):
    node, findings = read(text)
    assert node is None
    assert [(finding.rule, finding.place.line, finding.place.column) for finding in findings] == [
        ("text-too-long", 1, 4)
    ]


def test_too_many_values_are_refused():
    node, findings = read("[" + "x," * 60_000 + "]")
    assert node is None
    assert [finding.rule for finding in findings] == ["file-too-large"]


@pytest.mark.parametrize(
    "text", ["a: 'it''s\n  two'\nb: |\n  Row 1\n\n  Row 2\nc: [x, {y: z}]\n", "a: 1\na: 2\n", "a: b: c\n", "a: *x\n"]
)
def test_without_the_fast_reader_the_same_comes_out(monkeypatch, text):
    fast = read(text)
    monkeypatch.setattr("gradegen.read.yaml.places._loader", lambda: yaml.SafeLoader)
    slow = read(text)
    assert slow == fast
    assert [scalar.written.anchors for node in (slow[0],) if node for scalar in scalars(node)] == [
        scalar.written.anchors for node in (fast[0],) if node for scalar in scalars(node)
    ]


# ---- properties ----------------------------------------------------------------------------------------------------

WORDS = st.text(
    st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp"), exclude_characters="\ufeff\ufffe\uffff"), max_size=30
)
LINES = st.lists(WORDS, max_size=5).map("\n".join)
TREES = st.recursive(
    LINES, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(WORDS, inner, max_size=4), max_leaves=12
)
STYLES = st.sampled_from([None, "'", '"', "|", ">"])


@given(TREES, STYLES, st.booleans(), st.sampled_from([20, 80]), st.integers(2, 5), st.booleans())
@settings(max_examples=400, deadline=None, derandomize=True)
def test_every_character_stands_where_it_says(tree, style, flow, width, indent, unicode):
    text = yaml.dump(
        tree,
        default_style=style,
        default_flow_style=flow,
        width=width,
        indent=indent,
        allow_unicode=unicode,
        sort_keys=False,
    )
    node, findings = read(text)
    if findings:
        assert {finding.rule for finding in findings} <= {"file-empty", "odd-sign"}
        return
    assert plain(node) == tree
    for scalar in scalars(node):
        check_signs(text, scalar)


def check_signs(text, scalar):
    for at, sign in enumerate(scalar.written.text):
        found = sign_at(text, scalar.written.place(at, at + 1))
        folded = sign == " " and found == "\n"
        escaped = scalar.style == "double" and found == "\\"
        assert found == sign or folded or escaped, (text, scalar.written.text, at)


FOLDED = st.lists(st.tuples(st.sampled_from(["", "", "", " ", "  ", "\t"]), st.text("ab *:#", max_size=6)), max_size=6)


@given(FOLDED, st.sampled_from(["|", ">"]), st.sampled_from(["", "-", "+"]), st.integers(1, 4), st.booleans())
@settings(max_examples=400, deadline=None, derandomize=True)
def test_blocks_as_people_type_them(lines, bar, chomping, indent, followed):
    body = "".join(
        f"{' ' * indent}{more}{words}\n" if words.strip() else " " * (indent - 1) + "\n" for more, words in lines
    )
    text = (
        f"k:\n  a: {bar}{chomping}\n"
        + "".join(f"  {line}\n" for line in body.split("\n")[:-1])
        + ("b: x\n" if followed else "")
    )
    node, findings = read(text)
    if findings:  # leading blanks deeper than the first line, a tab as the first sign: YAML itself refuses these
        assert {finding.rule for finding in findings} <= {"yaml-syntax", "tab-indents"}
        return
    found = yaml.safe_load(text)
    assert plain(node.entries[0].value)["a"] == found["k"]["a"]
    for scalar in scalars(node):
        check_signs(text, scalar)


@given(st.text("ab:-[]{}\"'|>#&*!%@`\t \n,?\\", max_size=40))
@settings(max_examples=600, deadline=None, derandomize=True)
def test_noise_never_raises_and_stays_inside_the_file(text):
    node, findings = read(text)
    assert node is not None or len(findings) >= 1
    lines = [*text.split("\n"), ""]
    for finding in findings:
        assert 1 <= finding.place.line <= len(lines)
        assert 1 <= finding.place.column <= len(lines[finding.place.line - 1]) + 1
