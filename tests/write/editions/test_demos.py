"""Every demo in every edition: proved, readable by a machine, the same bytes, and nothing of other sizes."""

import os
import re
import subprocess
import time
from dataclasses import replace
from functools import cache
from pathlib import Path

import outloud
import pdfua
import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.design.rows import Unread
from gradegen.pipeline import check_file
from gradegen.trade.abbreviations import abbreviations
from gradegen.trade.stitches import Terms, stitches
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.editioned import editioned
from gradegen.write.editions.other_terms import in_terms
from gradegen.write.pattern import pattern_html, write_pattern

ROOT = Path(__file__).resolve().parents[3]
DEMOS = ["skerrywick-wrap", "bollard-hat"]
ALL = [*DEMOS, "gunwale-pullover", "limpet-pullover", "slipway-cardigan"]
OUT = Path("out")
TERMS: tuple[Terms, ...] = ("US", "UK")
FALSE_ALARMS = {
    "FIG-012": "a chart's alternative text names stitches by the abbreviations that the page explains",
    "TBL-010": "a large-print table of three sizes that goes on for one row on a new page has more heads than numbers",
}
WAYS = {
    "uk": Edition(OUT, terms="UK"),
    "cm": Edition(OUT, units="cm"),
    "low-ink": Edition(OUT, style="low-ink"),
    "large-print": Edition(OUT, style="large-print"),
}


@cache
def demo(name: str) -> Checked:
    checked = check_file(ROOT / "shared" / "patterns" / f"{name}.yaml").checked
    assert checked is not None
    return checked


def few(name: str) -> Edition:
    return Edition(OUT, chosen=tuple(size.name for size in demo(name).sizes[4:7]))


def written(name: str, edition: Edition, folder: Path) -> tuple[Path, ...]:
    paths, findings = write_pattern(demo(name), replace(edition, out=folder))
    assert findings == ()
    return paths


@pytest.mark.parametrize("way", [*WAYS, "few"])
@pytest.mark.parametrize("name", DEMOS)
def test_written_proved_and_tagged(name: str, way: str, tmp_path: Path) -> None:
    edition = few(name) if way == "few" else WAYS[way]
    path = written(name, edition, tmp_path)[0]
    report = pdfua.validate(str(path))
    assert [(found.rule_id, found.message) for found in report.findings] == []
    heard = {found.rule for found in outloud.check(str(path)).findings}
    assert heard <= FALSE_ALARMS.keys(), heard
    subprocess.run(["qpdf", "--check", str(path)], check=True, capture_output=True)
    fonts = {font["/BaseFont"] for page in PdfReader(path).pages for font in _fonts(page)}
    assert all("+Body" in font or "+Large" in font for font in fonts), fonts


def _fonts(page: object) -> list[dict[str, str]]:
    resources = page["/Resources"].get("/Font", {})  # type: ignore[index]
    return [font.get_object() for font in resources.values()]


@pytest.mark.parametrize("style", ["print", "large-print"])
def test_boxes_to_tick_leave_no_empty_tags(style: str, tmp_path: Path) -> None:
    edition = Edition(OUT, demo("bollard-hat").sizes[3].name, style=style)  # type: ignore[arg-type]
    path = written("bollard-hat", edition, tmp_path)[0]
    assert {found.rule for found in outloud.check(str(path)).findings} <= FALSE_ALARMS.keys()


@pytest.mark.parametrize("name", ALL)
def test_every_row_is_said_in_the_other_terms(name: str) -> None:
    checked, kept = in_terms(demo(name), "UK")
    assert kept == frozenset()
    ids = [[step for row in piece.rows for step in row.steps] for piece in checked.pattern.pieces]
    assert ids == [[step for row in piece.rows for step in row.steps] for piece in demo(name).pattern.pieces]
    assert not re.search(
        r"\b(sc|hdc|sl st|sk|gauge|skip)\b", words_of(pattern_html(demo(name), WAYS["uk"])).split("In US terms")[0]
    )


@pytest.mark.parametrize("name", ALL)
def test_every_drawing_is_the_same_in_the_other_terms(name: str) -> None:
    """Rows of a schedule were once drawn from words of the one vocabulary read in the other."""
    ours, others = (drawings_of(pattern_html(demo(name), Edition(OUT, terms=terms))) for terms in TERMS)
    assert ours == others
    assert len(ours) > 3


def drawings_of(html: str) -> list[str]:
    """Every drawing of a page without the words that describe it."""
    return [
        re.sub(r"<(title|desc)\b.*?</\1>", "", found, flags=re.DOTALL)
        for found in re.findall(r"<svg.*?</svg>", html, re.DOTALL)
    ]


@pytest.mark.parametrize("name", ["skerrywick-wrap", "limpet-pullover"])
def test_prose_is_spelled_as_its_terms_are(name: str) -> None:
    said = {terms: words_of(pattern_html(demo(name), Edition(OUT, terms=terms))) for terms in TERMS}
    assert "harbour" in said["UK"]
    assert not re.search(r"\b(harbor|center|color|fiber|gray)s?\b", said["UK"])
    assert "harbor" in said["US"]
    assert not re.search(r"\b(harbour|centre|grey)s?\b", said["US"])


def test_a_row_with_unread_words_keeps_its_terms() -> None:
    checked = demo("skerrywick-wrap")
    piece = checked.pattern.pieces[0]
    row = piece.rows[2]
    odd = replace(row, steps=(*row.steps, Unread("and so forth", place=row.place)))
    rows = tuple(odd if each is row else each for each in piece.rows)
    changed = replace(checked, pattern=replace(checked.pattern, pieces=(replace(piece, rows=rows),)))
    assert editioned(changed, WAYS["uk"]).kept == {row.place}
    html = pattern_html(changed, WAYS["uk"])
    assert html.count("This row keeps its US terms.") == 1
    assert "One row keeps its US terms" in html


@pytest.mark.parametrize("name", DEMOS)
def test_a_chosen_few_hold_no_other_size(name: str) -> None:
    edition = few(name)
    html = pattern_html(demo(name), edition)
    others = tuple(
        size
        if size.name in edition.chosen
        else replace(size, counts={key: replace(count, n=count.n + 77) for key, count in size.counts.items()})
        for size in demo(name).sizes
    )
    assert pattern_html(replace(demo(name), sizes=others), edition) == html
    rows = html[html.index('<p class="row') :]
    for size in demo(name).sizes:
        if size.name not in edition.chosen:
            assert f"{size.name} only" not in rows


def test_remarks_of_a_chosen_few() -> None:
    html = words_of(pattern_html(demo("bollard-hat"), Edition(OUT, chosen=("T", "S", "M"))))
    rows = html.replace("&nbsp;", "")
    assert "Rnd 13:*Sc in next 11 sts" in rows
    assert "Rnd 14:sizes S and M onlySc in next 6 sts" in rows
    assert "Rnd 15:size M only*Sc in next 13 sts" in rows
    assert "Sc in next 14 sts" not in rows


def words_of(html: str) -> str:
    body = html[html.index("<body") :]
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", "", body)).replace("\N{NO-BREAK SPACE}", " ")


def short_forms() -> set[str]:
    """Every abbreviation that a sentence might still hold, from the tables of the trade."""
    named = [(stitch, terms) for stitch in stitches().values() for terms in TERMS]
    full = {word for stitch, terms in named for word in stitch.full_name(terms).split()}
    known = {stitch.abbreviation(terms) for stitch, terms in named} | {
        word for word in abbreviations() if len(word) > 1
    }
    forms = {form for word in known if " " not in word for form in (word, word + "s")}
    forms |= {"ch", "chs", "yd", "cm", "mm", "oz"}
    return {word for word in forms if word not in full and word.removesuffix("s") not in full}


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("name", ALL)
def test_no_abbreviation_is_left_for_a_voice(name: str, terms: str, tmp_path: Path) -> None:
    edition = Edition(OUT, terms="UK" if terms == "UK" else "US", style="spoken")
    text, html = written(name, edition, tmp_path)
    left = set(re.findall(r"(?<!\w)[A-Za-z]+(?:-[A-Za-z]+)?\d?\w*", text.read_text("utf-8"))) & short_forms()
    assert left == set()
    assert not re.search(r"[*\[\]{}½¼¾]|\d \(\d", text.read_text("utf-8"))
    assert "<h1>" in html.read_text("utf-8")


def test_a_row_keeps_the_capital_behind_its_star() -> None:
    """Other rows of the piece begin with a capital in these terms too."""
    checked, kept = in_terms(demo("bollard-hat"), "UK")
    rows = [row.text for row in checked.pattern.pieces[0].rows]
    assert kept == frozenset()
    assert [row for row in rows if re.search(r":\s*\*[a-z]", row)] == []
    assert sum(bool(re.search(r":\s*\*Dc in", row)) for row in rows) > 5


@pytest.mark.parametrize("style", ["low-ink", "large-print", "spoken"])
def test_one_size_alone_in_every_style(style: str, tmp_path: Path) -> None:
    checked = demo("bollard-hat")
    size = checked.sizes[4].name
    others = tuple(
        each
        if each.name == size
        else replace(
            each, counts={key: replace(count, n=count.n + 77) for key, count in each.counts.items()}, fit="another fit"
        )
        for each in checked.sizes
    )
    changed = replace(
        checked,
        sizes=others,
        worked={
            name: rows if name in (size, "S") else () for name, rows in checked.worked.items()
        },  # the yarn rests on S
    )
    edition = Edition(tmp_path / "a", size, style=style)  # type: ignore[arg-type]
    mine, findings = write_pattern(checked, edition)
    other, _ = write_pattern(changed, replace(edition, out=tmp_path / "b"))
    assert findings == ()
    assert [path.read_bytes() for path in mine] == [path.read_bytes() for path in other]


def test_the_same_bytes_in_another_folder_and_time_zone(tmp_path: Path) -> None:
    edition = Edition(OUT, terms="UK", units="cm", style="large-print")
    one = written("bollard-hat", edition, tmp_path / "a")[0].read_bytes()
    before = os.environ.get("TZ")
    os.environ["TZ"] = "Pacific/Auckland"
    time.tzset()
    try:
        two = written("bollard-hat", edition, tmp_path / "b" / "c")[0].read_bytes()
    finally:
        os.environ.pop("TZ") if before is None else os.environ.update(TZ=before)
        time.tzset()
    assert one == two
