from dataclasses import replace
from pathlib import Path

import pytest

from gradegen.design.text import Text
from gradegen.read.pattern.pictures import read_pictures
from gradegen.read.yaml.fields import Given

LINES = 18  # of the small pattern


def block(with_: str = "cover", file: str = "mat.svg", alt: str = "A black mat on a deck", more: str = "") -> str:
    return f'pictures:\n  - {{file: "{file}", alt: "{alt}", with: "{with_}"{more}}}\n'


@pytest.mark.parametrize(
    ("words", "where"),
    [
        ("cover", ("cover", -1, 0)),
        ("Notes", ("notes", -1, 0)),
        ("finishing", ("finishing", -1, 0)),
        ("Mat", ("piece", 0, 0)),
        ("edging", ("piece", 1, 0)),
        ("Row 10", ("row", 0, 13)),
        ("row 10:", ("row", 0, 13)),
        ("Rows 2-9", ("row", 0, 12)),
        ("Row 5", ("row", 0, 12)),
        ("Mat, Row 1", ("row", 0, 11)),
        ("Edging, Row 1", ("row", 1, 17)),
        ("Row 12", ("row", 1, 18)),
    ],
)
def test_where_it_stands(read_with, words, where) -> None:
    pattern, findings = read_with(block(words))
    assert findings == []
    (picture,) = pattern.pictures
    assert (picture.stands, picture.piece, picture.line) == where


@pytest.mark.parametrize("words", ["Row 1", "Row 99", "Rnd 10", "Mat, Row 12", "Sleeve", "cover page", ""])
def test_a_place_that_is_not_there_or_not_the_only_one(read_with, words) -> None:
    pattern, (finding,) = read_with(block(words))
    assert (finding.rule, finding.place.line, finding.severity) == ("picture-stands-nowhere", LINES + 2, "error")
    assert finding.hint
    assert pattern.pictures[0].stands == "cover"  # the rest of the pattern is read and checked all the same


def test_a_piece_called_like_a_place(read_with) -> None:
    pattern, _ = read_with(block("Mat"))
    piece = replace(pattern.pieces[0], name=replace(pattern.pieces[0].name, text="Cover"))
    (given,) = [(picture.name, picture.alt) for picture in pattern.pictures]
    for words, where in (("Cover", "piece"), ("cover", "cover")):
        written = Given({"file": given[0], "with": Text(words, given[0].place)}, {}, given[0].place)
        (picture,), findings = read_pictures([(written, None, given[1])], [piece], Path(given[0].place.file).parent)
        assert (picture.stands, findings) == (where, ())


@pytest.mark.parametrize("alt", ["photo", "Photo.", "mat.svg", "Mat", "n/a"])
def test_alt_text_that_says_nothing(read_with, alt) -> None:
    """Alt text is asked for by WCAG 2.2 (W3C), success criterion 1.1.1; which words say nothing: common practice."""
    pattern, (finding,) = read_with(block(alt=alt))
    assert (finding.rule, finding.severity) == ("picture-alt-says-nothing", "warning")
    assert len(pattern.pictures) == 1


def test_alt_text_that_says_the_caption_again(read_with) -> None:
    _, (finding,) = read_with(block(more=', caption: "A black mat  on a deck."'))
    assert finding.rule == "picture-said-twice"


@pytest.mark.parametrize(
    ("block", "rule", "line"),
    [
        ("pictures:\n  - {file: mat.svg}\n", "missing-key", LINES + 2),
        ("pictures:\n  - {file: mat.svg, alt: }\n", "value-missing", LINES + 2),
        ("pictures:\n  - {alt: A mat on a deck}\n", "missing-key", LINES + 2),
        ("pictures:\n  - {file: mat.svg, alt: A mat, size: double page}\n", "unknown-choice", LINES + 2),
        ("pictures:\n  - {file: mat.svg, alt: A mat, legend: x}\n", "unknown-key", LINES + 2),
    ],
)
def test_what_a_picture_must_say(read_with, block, rule, line) -> None:
    pattern, (finding,) = read_with(block)
    assert (finding.rule, finding.place.line) == (rule, line)
    assert pattern is None


def test_a_size_list_in_a_caption_is_read(read_with) -> None:
    pattern, findings = read_with(block(more=', caption: "Row 10 has {wide} sc."'))
    assert findings == []
    assert [listed.formula is not None for listed in pattern.pictures[0].caption.lists] == [True]


@pytest.mark.parametrize(
    ("file", "rule"),
    [
        ("nowhere.svg", "picture-missing"),
        (".", "picture-missing"),
        ("../outside.svg", "picture-out-of-reach"),
        ("/etc/hostname", "picture-out-of-reach"),
        ("link.svg", "picture-out-of-reach"),
        ("mat.yaml", "picture-not-readable"),
    ],
)
def test_files_that_are_not_printed(read_with, folder: Path, file, rule) -> None:
    (folder / "link.svg").symlink_to(folder.parent / "outside.svg")
    pattern, (finding,) = read_with(block(file=file))
    assert (finding.rule, finding.place.line, finding.place.column) == (rule, LINES + 2, 13)
    assert finding.hint
    assert pattern.pictures[0].file is None


def test_a_slip_in_a_name_is_guessed(read_with) -> None:
    _, (finding,) = read_with(block(file="matt.svg"))
    assert "mat.svg" in finding.hint
