"""Forms as they come back: filled in sloppily, locked, damaged, empty, or no forms at all."""

import io
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import NameObject, TextStringObject

from gradegen.design.testing import AskedRow
from gradegen.pipeline import check_file
from gradegen.read.forms.filled import read_form, read_forms, row_meant
from gradegen.write.editions.edition import Edition
from gradegen.write.forms.form import form_bytes

PATTERN = Path(__file__).resolve().parents[3] / "shared" / "patterns" / "bollard-hat.yaml"
GAUGE = "gauge single crochet"


@pytest.fixture(scope="module")
def empty() -> bytes:
    checked = check_file(PATTERN).checked
    assert checked is not None
    data, findings = form_bytes(checked, Edition(Path("out"), "M", is_form=True))
    assert findings == ()
    assert data is not None
    return data


def saved(data: bytes, answers: Mapping[str, str], to: Path, password: str = "") -> Path:
    """The form with values put in as a careless program would: without redrawing anything."""
    writer = PdfWriter(clone_from=io.BytesIO(data))
    for page in writer.pages:
        for widget in page.get("/Annots", ()):
            field = widget.get_object()
            if field.get("/T") in answers:
                field[NameObject("/V")] = TextStringObject(answers[field["/T"]])
    if password:
        writer.encrypt(password, algorithm="RC4-128")
    writer.write(to)
    return to


def test_sloppy_numbers_are_located_by_file_page_and_field(empty: bytes, tmp_path: Path) -> None:
    answers = {
        "tester name": "  Ida \n Berg ",
        "time": "2.30",
        "yarn A grams": "lots",
        f"{GAUGE} after stitches": "16-17",
        f"{GAUGE} after rows": "17",
        f"{GAUGE} before rows": "?",
        "measure around in": "21",
        "measure around cm": "70",
        "measure brim cm": "6 cm",
    }
    path = saved(empty, answers, tmp_path / "ida.pdf")
    form, findings = read_form(path)
    assert form is not None
    assert form.tester == "Ida Berg"
    assert form.minutes is None
    assert form.gauges[0].after == (None, 17)
    assert form.measures == {"brim": Fraction(600, 254)}
    assert [(one.rule, one.row, one.size) for one in findings] == [
        ("form-number-unclear", "Gauge: stitches after blocking", "M"),
        ("form-number-unreadable", "Yarn: grams used", "M"),
        ("form-units-differ", "Around, in centimetres", "M"),
        ("form-number-unclear", "Hours of crochet, such as 12 h 30", "M"),
    ]
    order = [
        widget.get_object()["/T"]
        for page in PdfReader(path).pages
        for widget in page.get("/Annots", ())
        if widget.get_object().get("/Subtype") == "/Widget"
    ]
    for finding, name in zip(
        findings, (f"{GAUGE} after stitches", "yarn A grams", "measure around cm", "time"), strict=True
    ):
        assert finding.place.file == str(path)
        assert (finding.place.line, finding.place.column) == (1, order.index(name) + 1)


def test_gauge_is_brought_to_the_length_of_the_pattern(empty: bytes, tmp_path: Path) -> None:
    for over, told, stitches in (
        ("2 in", "8", Fraction(16)),
        ("10 cm", "16", Fraction(16)),  # to the trade 10 cm are 4 in
        ("4 in", "8 sts / 5 cm", Fraction(8) * 4 * 254 / 500),
        ("", "16", Fraction(16)),
    ):
        path = saved(empty, {f"{GAUGE} over": over, f"{GAUGE} after stitches": told}, tmp_path / "x.pdf")
        form, findings = read_form(path)
        assert findings == ()
        assert form is not None
        assert form.gauges[0].after[0] == stitches


def test_a_length_without_unit_is_asked_about(empty: bytes, tmp_path: Path) -> None:
    path = saved(empty, {f"{GAUGE} over": "10", "tester name": "Ida"}, tmp_path / "x.pdf")
    _, (finding,) = read_form(path)
    assert finding.rule == "form-number-unreadable"
    assert "unit" in finding.message


def test_blank_forms(empty: bytes, tmp_path: Path) -> None:
    (tmp_path / "blank.pdf").write_bytes(empty)
    form, (finding,) = read_form(tmp_path / "blank.pdf")
    assert form is None
    assert (finding.rule, finding.size) == ("form-blank", "M")


def test_locked_forms(empty: bytes, tmp_path: Path) -> None:
    form, (finding,) = read_form(saved(empty, {"tester name": "Ida"}, tmp_path / "locked.pdf", "secret"))
    assert form is None
    assert finding.rule == "form-encrypted"


def test_forms_locked_with_an_empty_password_are_read(empty: bytes, tmp_path: Path) -> None:
    writer = PdfWriter(clone_from=saved(empty, {"tester name": "Ida"}, tmp_path / "a.pdf"))
    writer.encrypt("", "owner", algorithm="RC4-128")
    writer.write(tmp_path / "b.pdf")
    form, findings = read_form(tmp_path / "b.pdf")
    assert findings == ()
    assert form is not None
    assert form.tester == "Ida"


def test_signs_that_move_a_cursor_are_taken_out(empty: bytes, tmp_path: Path) -> None:
    path = saved(empty, {"tester name": "I\x1b[31mda\x07", "words fit": "a\x1b]0;x\x07b\r\nc"}, tmp_path / "x.pdf")
    form, _ = read_form(path)
    assert form is not None
    assert form.tester == "I[31mda"
    assert form.words == {"fit": "a]0;xb\nc"}


@pytest.mark.parametrize("cut", [0, 1, 9, 100, 5_000, 40_000, -200, -20])
def test_damaged_files(empty: bytes, cut: int, tmp_path: Path) -> None:
    (tmp_path / "x.pdf").write_bytes(empty[:cut])
    form, (finding,) = read_form(tmp_path / "x.pdf")
    assert form is None
    assert finding.rule in ("form-damaged", "form-blank", "form-not-ours")


def test_bytes_changed_anywhere_never_break_the_reading(empty: bytes, tmp_path: Path) -> None:
    data = Path(saved(empty, {"tester name": "Ida", "time": "12 h"}, tmp_path / "whole.pdf")).read_bytes()
    for at in range(50, len(data), len(data) // 60):
        (tmp_path / "x.pdf").write_bytes(data[:at] + bytes([data[at] ^ 0x5A]) + data[at + 1 :])
        form, findings = read_form(tmp_path / "x.pdf")
        assert form is not None or findings


def test_other_pdfs_are_left_aside(tmp_path: Path) -> None:
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.write(tmp_path / "photo.pdf")
    form, (finding,) = read_form(tmp_path / "photo.pdf")
    assert form is None
    assert finding.rule == "form-not-ours"


@pytest.mark.parametrize(
    ("name", "value", "rule"),
    [
        ("fixed-asked", "{}", "form-not-ours"),
        ("fixed-asked", "[" * 5000, "form-not-ours"),
        (
            "fixed-asked",
            '{"body":"\\u001b[31m","gauges":[],"yarns":{},"measures":{},"pieces":[],"rows":[]}',
            "form-not-ours",
        ),
        (
            "fixed-asked",
            '{"body":"b","gauges":[],"yarns":{},"measures":{"a":"1e999999999"},"pieces":[],"rows":[]}',
            "form-not-ours",
        ),
        (
            "fixed-asked",
            '{"body":"b","gauges":[],"yarns":{},"measures":{"a":"1/0"},"pieces":[],"rows":[]}',
            "form-not-ours",
        ),
        ("fixed-form", "99", "form-of-later-kind"),
        ("fixed-pattern", "", "form-not-ours"),
    ],
)
def test_what_a_form_carries_may_be_spoiled(name: str, value: str, rule: str, empty: bytes, tmp_path: Path) -> None:
    form, (finding,) = read_form(saved(empty, {name: value, "tester name": "Ida"}, tmp_path / "x.pdf"))
    assert form is None
    assert finding.rule == rule


def test_folders(empty: bytes, tmp_path: Path) -> None:
    assert [one.rule for one in read_forms(tmp_path / "none")[1]] == ["forms-folder-missing"]
    assert [one.rule for one in read_forms(tmp_path)[1]] == ["no-forms-found"]
    (tmp_path / "notes.txt").write_text("no form")
    saved(empty, {"tester name": "Ida"}, tmp_path / "b.PDF")
    saved(empty, {"tester name": "Ada"}, tmp_path / "a.pdf")
    forms, findings = read_forms(tmp_path)
    assert findings == ()
    assert [form.tester for form in forms] == ["Ada", "Ida"]
    assert [form.tester for form in read_forms(tmp_path / "b.PDF")[0]] == ["Ida"]


ROWS = (
    AskedRow("Yoke", "Rnd 1", (0, 0)),
    AskedRow("Yoke", "Rnds 2–5", (0, 1)),
    AskedRow("Body", "Rnd 1", (1, 0)),
    AskedRow("Body", "Rnds 2–30", (1, 1)),
)


@pytest.mark.parametrize(
    ("written", "at"),
    [
        ("Yoke, Rnd 1", (0, 0)),
        ("yoke round 1", (0, 0)),
        ("Body, Rnds 2–30", (1, 1)),
        ("body, rnds 2-30", (1, 1)),
        ("Rnd 20", (1, 1)),
        ("Rnd 1", None),
        ("Yoke Rnd 4", (0, 1)),
        ("somewhere", None),
        ("Rnd 99", None),
        ("", None),
    ],
)
def test_which_row_is_meant(written: str, at: tuple[int, int] | None) -> None:
    assert row_meant(written, ROWS) == at
