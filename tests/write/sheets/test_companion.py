"""What goes with a filmed tutorial: cue sheet, description, practice version."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.findings import Severity, Written
from gradegen.pipeline import check_file, check_text
from gradegen.read.time_stamps import Stamp, read_stamps
from gradegen.reckon.any_size import AnySizeSheet, any_size_sheet, usual_span
from gradegen.reckon.practice import Practice, practice_piece
from gradegen.write.sheets.companion import write_companion
from gradegen.write.sheets.companion_cues import cues, words_of
from gradegen.write.sheets.companion_text import LONGEST, description_text, few_of, practice_text

DEMOS = Path(__file__).parents[3] / "shared" / "patterns"
All = tuple[Checked, AnySizeSheet, Practice]


def all_of(name: str) -> All:
    checked = check_file(DEMOS / name).checked
    assert checked is not None
    sheet, _ = any_size_sheet(checked, *usual_span(checked))
    practice = practice_piece(checked)
    assert sheet is not None
    assert practice is not None
    return checked, sheet, practice


@pytest.fixture(scope="module")
def wrap() -> All:
    return all_of("skerrywick-wrap.yaml")


@pytest.fixture(scope="module")
def hat() -> All:
    return all_of("bollard-hat.yaml")


@pytest.mark.parametrize("name", ["skerrywick-wrap.yaml", "bollard-hat.yaml"])
def test_the_practice_version_checks_clean_as_an_ordinary_pattern(name: str, tmp_path: Path) -> None:
    checked, _, practice = all_of(name)
    path = tmp_path / "practice.txt"
    path.write_text(practice_text(practice, checked), encoding="utf-8")
    outcome = check_text(path)
    assert [one for one in outcome.findings if one.severity != Severity.NOTE] == []
    assert (outcome.proved.wrong, outcome.proved.not_checked) == (0, 0)
    assert outcome.proved.proved == sum(1 for row in practice.rows if row.times)


def test_a_cue_for_every_row_with_its_count(wrap: All) -> None:
    checked, _, practice = wrap
    lines = cues(practice, checked)
    assert [line.row for line in lines] == [
        "Foundation", "Rnd 1", "Rnd 2", "Rnd 3", "Rnd 4", "Rnds 5–6", "Rnd 7", "Rnd 8", "Rnd 9",
    ]  # fmt: skip
    assert lines[0].count == "9 ch"
    assert lines[1].count == "18 hdc"


def test_twist_and_turn_are_warned_of(wrap: All) -> None:
    checked, _, practice = wrap
    lines = cues(practice, checked)
    assert "half turn" in words_of(lines[0].mind).lower()
    assert "other side" in words_of(lines[1].mind)
    assert "twice as many" in words_of(lines[1].mind)
    assert all("do not turn" in words_of(lines[at].mind).lower() for at in (2, 3, 4))


def test_a_stitch_is_new_once(wrap: All) -> None:
    checked, _, practice = wrap
    shown = [words_of(line.show) for line in cues(practice, checked)]
    assert [at for at, text in enumerate(shown) if "hdc" in text] == [1]
    assert [at for at, text in enumerate(shown) if "tip" in text] == [8]


def test_a_range_of_one_row_is_that_row(hat: All) -> None:
    checked, _, practice = hat
    assert "Rnd 10" in {line.row for line in cues(practice, checked)}


def test_time_stamps_stand_beside_their_rows(wrap: All) -> None:
    checked, _, practice = wrap
    lines = cues(practice, checked, (Stamp(0, "Materials"), Stamp(765, "Rnd 3")))
    assert [line.stamp for line in lines if line.stamp] == ["12:45"]


@pytest.mark.parametrize("name", ["skerrywick-wrap.yaml", "bollard-hat.yaml"])
def test_the_description_is_short_and_whole(name: str) -> None:
    checked, sheet, _ = all_of(name)
    text = description_text(checked, sheet, (Stamp(0, "Hello"), Stamp(83, "Rnd 1")))
    assert len(text) < 5000
    for part in ("MATERIALS", "GAUGE", "ANY SIZE", "TERMS", "CHAPTERS", "mm", "skein", "0:00 Hello", "1:23 Rnd 1"):
        assert part in text
    assert f"multiple of {sheet.step}" in text


def test_a_long_pattern_still_gives_a_short_description(wrap: All) -> None:
    checked, sheet, _ = wrap
    about = replace(checked.pattern.title, text="Lamps on a rope. " * 150)
    long = replace(checked, pattern=replace(checked.pattern, about=about))
    text = description_text(long, sheet, tuple(Stamp(60 * at, f"Chapter {at}") for at in range(60)))
    assert len(text) <= LONGEST < 5000
    assert text.startswith("Skerrywick Wrap")


def test_few_of_many(wrap: All) -> None:
    checked, _, _ = wrap
    sheet, _ = any_size_sheet(checked, Fraction(20), Fraction(80))
    assert sheet is not None
    assert [one.named for one in few_of(sheet.sizes, 14)] == [(size.name,) for size in checked.sizes]
    some = few_of(sheet.sizes, 5)
    assert len(some) == 5
    assert (some[0], some[-1]) == (sheet.sizes[0], sheet.sizes[-1])


def test_three_files(wrap: All, tmp_path: Path) -> None:
    checked, sheet, practice = wrap
    paths, findings = write_companion(checked, practice, sheet, tmp_path)
    assert findings == ()
    assert [path.name for path in paths] == [
        "skerrywick-wrap-cue-sheet.pdf", "skerrywick-wrap-description.txt", "skerrywick-wrap-practice.txt",
    ]  # fmt: skip
    assert len(PdfReader(paths[0]).pages) == 1


GARMENTS = ["gunwale-pullover", "limpet-pullover", "slipway-cardigan"]


@pytest.fixture(scope="module", params=GARMENTS)
def garment(request: pytest.FixtureRequest) -> tuple[Checked, Practice]:
    checked = check_file(DEMOS / f"{request.param}.yaml").checked
    assert checked is not None
    practice = practice_piece(checked)
    assert practice is not None
    return checked, practice


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_garment_s_cue_sheet_is_one_page_too(garment: tuple[Checked, Practice], paper: str, tmp_path: Path) -> None:
    checked, practice = garment
    stamps = (Stamp(0, "Hello"), Stamp(95, "Sleeves Row 1" if "Cardigan" in checked.pattern.title.text else "Rnd 3"))
    paths, findings = write_companion(
        checked, practice, None, tmp_path, stamps, "letter" if paper == "letter" else "a4"
    )
    assert findings == ()
    (page,) = PdfReader(paths[0]).pages
    text = page.extract_text()
    assert all(piece.name.text in text for piece in checked.pattern.pieces)
    description = paths[1].read_text("utf-8")
    assert len(description) < 5000
    assert "1:35" in description


def test_pieces_of_a_garment_are_named_and_stamps_given_out_once(garment: tuple[Checked, Practice]) -> None:
    checked, practice = garment
    first, second = checked.pattern.pieces[:2]
    label = "Row 1" if first.shape == "flat" else "Rnd 1"
    lines = cues(practice, checked, (Stamp(60, label), Stamp(90, f"{second.name.text} {label}")))
    assert [line.piece for line in lines if line.piece] == [piece.name.text for piece in checked.pattern.pieces]
    assert [line.stamp for line in lines if line.stamp] == ["1:00", "1:30"]
    assert any(words_of(line.show) == "A row that shapes, and a plain one" for line in lines)


def test_rows_that_go_on_are_said_as_a_maker_would(wrap: All) -> None:
    checked, _, practice = wrap
    shown = [words_of(line.show) for line in cues(practice, checked)]
    assert "As Rnds 3 and 4; no need to film all of it" in shown


def test_stitches_of_own_stitches_are_named_in_both_terms(wrap: All) -> None:
    """The lamp is made of dc, which no row names by itself: whoever reads UK terms needs it most."""
    checked, sheet, _ = wrap
    assert "dc is tr," in description_text(checked, sheet)


@pytest.mark.parametrize(
    ("text", "rules"),
    [
        ("0:00 Start\n1:02:03 End", []),
        ("12:45 Rnd 3\n\n13:00 - Rnd 4\n", []),
        ("Rnd 3 12:45", ["time-stamp-unreadable"]),
        ("2:00 B\n1:59 A", ["time-stamps-fall"]),
        ("1:75 A", ["time-stamp-unreadable"]),
    ],
)
def test_reading_time_stamps(text: str, rules: list[str]) -> None:
    stamps, findings = read_stamps(Written.plain(text, "stamps.txt"))
    assert [one.rule for one in findings] == rules
    assert all(1 <= one.place.line <= text.count("\n") + 1 for one in findings)
    if not rules:
        assert [stamp.text for stamp in stamps] == [line.split()[0] for line in text.splitlines() if line]
