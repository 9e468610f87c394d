"""Whole patterns as people type them: headings, sizes, terms and shapes are found, and sound rows are proved.

The texts are our own; every count in them was worked by hand.
"""

from pathlib import Path

import pytest

from gradegen.findings import Severity, Written
from gradegen.pipeline import Outcome, check_text
from gradegen.read.plain_text.file import read_text_pattern
from gradegen.read.plain_text.headings import begins_rows, has_label, heading_of
from gradegen.read.plain_text.lines import text_lines
from gradegen.read.plain_text.sizes_said import sizes_of, split_sizes

TEXTS = Path(__file__).parent / "texts"


def checked(name: str) -> Outcome:
    return check_text(TEXTS / f"{name}.txt")


@pytest.mark.parametrize(
    ("name", "sizes", "sound"),
    [
        ("granny", 1, 4),
        ("bear", 1, 18),
        ("raglan", 4, 20),
        ("hat", 3, 21),
        ("amigu", 1, 14),
        ("vest", 5, 30),
        ("shawl", 1, 5),
        ("blanket", 3, 9),
        ("mitts", 3, 36),
        ("lace", 1, 5),
        ("sock", 3, 24),
        ("pillow", 1, 6),
        ("oval", 1, 3),
        ("c2c", 1, 3),
        ("ripple", 2, 2),
        ("cable", 1, 4),
        ("dash", 5, 25),
        ("colour", 1, 6),
        ("motif", 1, 4),
        ("mesh", 1, 10),
        ("wrap", 3, 9),
        ("yoke", 5, 45),
        ("skirt", 2, 16),
        ("filet", 1, 4),
        ("slipper", 3, 18),
        ("ear", 1, 13),
        ("cardi", 5, 60),
        ("mand", 1, 6),
        ("bag", 1, 8),
        ("yoke_dress", 4, 16),
        ("box", 1, 6),
        ("cush", 1, 4),
        ("hatband", 3, 33),
        ("lantern", 1, 15),
        ("cockle_cloth", 1, 5),
        ("toe_up_slipper", 4, 36),
        ("post_beret", 2, 28),
        ("seabird", 1, 25),
        ("wrack_bag", 1, 14),
        ("hurdle_vest", 5, 20),
        ("point_shawl", 1, 7),
        ("mooring_mitts", 3, 39),
        ("puffin", 1, 27),
        ("net_bag", 3, 39),
        ("raglan_cardigan", 5, 35),
        ("path_socks", 3, 27),
        ("harbour_granny", 1, 5),
        ("lichen_vest", 4, 32),
        ("bowl_cosy", 1, 8),
        ("grown_unsure", 1, 4),
        ("reed_scarf", 1, 6),
        ("bootees_uk", 3, 30),
        ("poncho", 4, 28),
        ("pineapple", 1, 7),
        ("mosaic", 1, 7),
        ("tapestry", 1, 14),
        ("post_hat", 3, 24),
        ("toe_up_sock", 3, 47),
        ("octagon", 1, 4),
        ("afghan", 1, 6),
        ("mittens", 3, 36),
        ("oval_bag", 1, 12),
        ("doll", 1, 20),
        ("spike", 1, 8),
        ("tunisian", 1, 1),
        ("bobble", 1, 7),
        ("waffle", 1, 6),
        ("cardigan", 4, 72),
        ("mandala", 1, 7),
        ("whale", 1, 22),
        ("runner", 1, 4),
        ("headband", 2, 12),
        ("house_sock", 3, 39),
        ("hexagon", 1, 4),
        ("centre_shawl", 1, 4),
        ("straps", 5, 50),
        ("triangle", 1, 3),
        ("basketweave", 1, 8),
        ("beanie", 1, 10),
        ("mesh_top", 4, 20),
        ("belt", 1, 6),
        ("slashes", 3, 27),
        ("snowflake", 1, 3),
        ("child_hat", 4, 43),
        ("fox", 1, 39),
        ("jacket", 3, 57),
        ("pullover", 5, 75),
        ("square_cushion", 1, 7),
        ("scarf", 1, 8),
        ("basket", 1, 11),
        ("bed_sock", 3, 51),
        ("hearth_slipper", 2, 19),
        ("linen_blanket", 3, 21),
        ("market_bag", 1, 11),
        ("uk_bear", 1, 22),
        ("tee", 3, 44),
        ("throw", 1, 6),
        ("frost_mitten", 3, 45),
        ("booties", 3, 27),
        ("owl", 1, 26),
        ("washcloth", 1, 15),
        ("yoke_cardigan", 4, 40),
        ("legwarmer", 2, 16),
        ("fan_scarf", 2, 12),
        ("vee_shawl", 1, 8),
    ],
)
def test_sound_texts_are_proved_and_none_is_called_wrong(name: str, sizes: int, sound: int) -> None:
    outcome = checked(name)
    assert outcome.checked is not None
    assert len(outcome.checked.sizes) == sizes
    assert outcome.proved.wrong == 0
    assert outcome.proved.proved >= sound
    assert {finding.severity for finding in outcome.findings} <= {Severity.NOTE}


@pytest.mark.parametrize(
    ("name", "count", "slip"),
    [
        ("granny", "(56 sc)", "(57 sc)"),
        ("bear", "[32]", "[33]"),
        ("amigu", "(30)", "(31)"),
        ("pineapple", "(6 shells, 42 sc)", "(6 shells, 43 sc)"),
        ("mosaic", "(30 sts)", "(31 sts)"),
        ("toe_up_sock", "(24)", "(25)"),
        ("oval_bag", "dc in dc. [14 loops]", "dc in dc. [15 loops]"),
        ("triangle", "(10 dc)", "(11 dc)"),
        ("whale", "12 sc. [36 sts]", "12 sc. [37 sts]"),
        ("mandala", "(36tr)", "(37tr)"),
        ("child_hat", "(66)", "(65)"),
        ("fox", "x 3 (9)", "x 3 (10)"),
        ("jacket", "27, 29) s d c", "27, 28) s d c"),
        ("bed_sock", "turn. 9 sc", "turn. 10 sc"),
        ("booties", "34) sts", "35) sts"),
        ("washcloth", "across, turn. (27 sc)\nFasten", "across, turn. (28 sc)\nFasten"),
        ("uk_bear", "second leg. (24)", "second leg. (25)"),
        ("linen_blanket", "702] dc", "700] dc"),
        ("hearth_slipper", "join. 30 (35) sc", "join. 31 (35) sc"),
        ("vee_shawl", "(34 V)", "(35 V)"),
        ("fan_scarf", "again. (15 (21) sts)", "again. (27 (37) sts)"),
    ],
)
def test_a_slip_in_such_a_text_is_found_where_it_stands(name: str, count: str, slip: str, tmp_path: Path) -> None:
    text = (TEXTS / f"{name}.txt").read_text("utf-8")
    at = text.index(count)
    copy = tmp_path / f"{name}.txt"
    copy.write_text(text[:at] + slip + text[at + len(count) :], "utf-8")
    errors = [f for f in check_text(copy).findings if f.severity == Severity.ERROR]
    assert errors
    assert min(f.place.line for f in errors) == text[:at].count("\n") + 1
    assert errors[0].rule == "stated-count-wrong"


def test_each_piece_is_worked_in_its_own_way() -> None:
    found, _ = read_text_pattern(TEXTS / "vest.txt")
    assert found is not None
    shapes = {piece.name.text: piece.shape for piece in found[0].pieces}
    assert shapes["BACK"] == "flat"
    assert shapes["Armhole edging"] == "joined rounds"


def test_a_swatch_in_the_gauge_is_no_row_of_the_pattern() -> None:
    lines = text_lines(Written.plain((TEXTS / "vest.txt").read_text("utf-8")))
    assert [line.heading for line in lines if line.part == "rows" and "swatch" in line.words.text] == []


@pytest.mark.parametrize(
    ("line", "following", "heading"),
    [
        ("EAR (make 2)", "R1: 5 sc in MR (5)", "EAR"),
        ("WINGS (black yarn, make 2)", "R1: ch 7", "WINGS"),
        ("Left Front:", "Work as for right front, reversing shaping.", "Left Front"),
        ("Sleeves - make 2", "Ch 30.", "Sleeves"),
        ("Body", "Ch 56 (60, 64), join.", "Body"),
    ],
)
def test_a_heading_names_its_piece(line: str, following: str, heading: str) -> None:
    assert heading_of(line, following, "head") == ("rows", heading)


@pytest.mark.parametrize("line", ["US terms", "Easy level", "By the Lantern House", "Abbreviations in US terms"])
def test_what_the_head_says_is_no_heading(line: str) -> None:
    assert heading_of(line, "Ch 3 counts as dc.", "head") is None


@pytest.mark.parametrize(
    "line", ["R1. mr 6 sc (6)", "Rnd 1: sc", "Foundation: Ch 44.", "With A, ch 20.", "Ch 56 (60)."]
)
def test_rows_begin_without_a_heading(line: str) -> None:
    assert begins_rows(line)


@pytest.mark.parametrize("line", ["Ch 3 counts as dc throughout.", "Ch 17 for a swatch.", "Chart 2 shows it.", "Hook"])
def test_what_only_looks_like_a_row_begins_none(line: str) -> None:
    assert not begins_rows(line)
    assert not has_label("Stitches used: ch, sl st, dc")


@pytest.mark.parametrize(
    ("words", "sizes"),
    [
        ("S (M, L)", ("S", "M", "L")),
        ("2 (4, 6, 8) years", ("2", "4", "6", "8")),
        ("XS (S, M) (L, XL)", ("XS", "S", "M", "L", "XL")),
        ("34-38-42", ("34", "38", "42")),
        ("Small (6-7), Medium (8-9), Large (10-11)", ("Small", "Medium", "Large")),
        ("one size", ("one",)),
        ("One size fits most.", ("one",)),
        ("4 (6: 8: 10) years", ("4", "6", "8", "10")),
        ("Small [Medium: Large]", ("Small", "Medium", "Large")),
        ("S (M-L-XL)", ("S", "M", "L", "XL")),
        ("To fit bust 81 [86: 91] cm", ("81", "86", "91")),
        ("40 cm square", ("one",)),
        ("approx. 12 cm / 4.75 in", ("one",)),
        ("12 cm (4.75 in)", ("one",)),
        ("25 cm across and 15 cm high.", ("one",)),
    ],
)
def test_sizes_are_split_as_the_trade_prints_them(words: str, sizes: tuple[str, ...]) -> None:
    assert split_sizes(words) == sizes


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("X\nInstructions are for size small, with changes for medium and large in parentheses.", "small medium large"),
        ("X\nSIZES\nXS (S, M)\n", "XS S M"),
    ],
)
def test_sizes_are_found_where_people_say_them(text: str, sizes: str) -> None:
    assert sizes_of(text_lines(Written.plain(text))) == tuple(sizes.split())


def test_rows_under_a_line_of_sizes_are_worked_in_those_sizes(tmp_path: Path) -> None:
    text = (
        "X\nSizes: S (M, L)\nUS terms. Worked flat.\n"
        "Row 1: Ch 11, sc in 2nd ch from hook and in each ch across. 10 sc\n"
        "Sizes M (L) only:\nRow 2: Ch 1, turn, sc in next 9 (9) sts, 2 (3) sc in last st. 11 (12) sc\n\n"
        "All sizes\nRow 3: Ch 1, turn, sc across. 10 (11, 12) sc\n"
    )
    path = tmp_path / "x.txt"
    path.write_text(text, "utf-8")
    outcome = check_text(path)
    assert outcome.proved.wrong == 0
    assert outcome.proved.proved == 8


def test_an_unread_row_that_may_leave_spaces_makes_no_later_row_wrong(tmp_path: Path) -> None:
    text = (TEXTS / "mand.txt").read_text("utf-8")
    copy = tmp_path / "mand.txt"
    copy.write_text(text.replace("Rnd 4: ", "Rnd 4: Wibble the wobble, "), "utf-8")
    outcome = check_text(copy)
    assert outcome.proved.wrong == 0
    assert not [f for f in outcome.findings if f.severity == Severity.ERROR]


def test_behind_a_row_of_the_piece_that_nobody_could_read_nothing_is_called_wrong(tmp_path: Path) -> None:
    text = (
        "X\nUS terms. Worked flat.\nRow 1: Ch 11, sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
        "Rows 2-9: Wibble the wobble as you like.\nRow 10: Ch 1, sc in each st across, turn. (18 sc)\n"
    )
    path = tmp_path / "x.txt"
    path.write_text(text, "utf-8")
    outcome = check_text(path)
    assert outcome.proved.wrong == 0
