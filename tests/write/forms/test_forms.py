"""Testers' forms of the demos: made, checked, filled in, read back."""

import os
import shutil
import subprocess
import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import outloud
import pdfua
import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.design.testing import FIXED, field_name
from gradegen.numbers.exact import decimal_text
from gradegen.read.forms.asked import asked_text, read_asked
from gradegen.read.forms.filled import read_form
from gradegen.write.editions.edition import Edition
from gradegen.write.forms.asked import asked_of
from gradegen.write.forms.form import form_bytes, form_html
from gradegen.write.forms.proof import prove_form
from gradegen.write.forms.view import form_view
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

DEMOS = ["bollard-hat", "gunwale-pullover", "limpet-pullover", "skerrywick-wrap", "slipway-cardigan"]
CM = Fraction(254, 100)
FALSE_ALARMS = {
    "TBL-010",  # a table of one line has more heads than cells
    "TBL-012",  # cells that hold a field to fill in hold no words
}

Demo = Callable[[str], Checked]
Written = Callable[[str], Mapping[str, Path]]
Fill = Callable[[Path, Path, Mapping[str, str]], Path]


def fields_of(path: Path) -> dict[str, Any]:
    return {
        widget.get_object()["/T"]: widget.get_object()
        for page in PdfReader(path).pages
        for widget in page.get("/Annots", ())
        if widget.get_object().get("/Subtype") == "/Widget"
    }


def test_every_demo_is_here(demo: Demo) -> None:
    folder = Path(__file__).resolve().parents[3] / "shared" / "patterns"
    assert sorted(path.stem for path in folder.glob("*.yaml") if "\npieces:" in path.read_text("utf-8")) == DEMOS


@pytest.mark.parametrize("name", DEMOS)
def test_filled_in_and_read_back(name: str, demo: Demo, written: Written, fill: Fill, tmp_path: Path) -> None:
    checked = demo(name)
    for size in (size for size in checked.sizes if size.name in written(name)):
        answers = {
            "tester name": "Žofie Čermák",
            "time": "12 h 30",
            "error 2 row": "Rnd 999",
            "error 2 words": "½ a st?",
        }
        told = {}
        for at, (measure, known) in enumerate(size.measures.items()):
            unit, length = ("cm", known.printed * CM) if at % 2 else ("in", known.printed)
            written_so = decimal_text(length + Fraction(1, 4), 3)
            answers[field_name("measure", measure, unit)] = written_so.replace(".", ",") if at % 3 else written_so
            told[measure] = Fraction(written_so) / (CM if at % 2 else 1)
        for gauge in checked.pattern.gauges.values():
            answers[field_name("gauge", gauge.name, "after", "stitches")] = "13½"
            answers[field_name("gauge", gauge.name, "before", "rows")] = "7,5"
        answers |= {field_name("yarn", yarn.letter, "grams"): "168 g" for yarn in checked.pattern.yarns}
        answers |= {"tick photos": "/on", "tester level": "Easy"}
        sent = fill(written(name)[size.name], tmp_path / f"{size.index}.pdf", answers)
        form, findings = read_form(sent)
        assert findings == ()
        assert form is not None
        assert (form.asked.pattern, form.asked.size) == (checked.pattern.title.text, size.name)
        assert (form.tester, form.minutes, form.level) == ("Žofie Čermák", 750, "Easy")
        assert form.asked.measures == {one: measure.printed for one, measure in size.measures.items()}
        assert form.measures == told
        assert [gauge.after[0] for gauge in form.gauges] == [Fraction(27, 2)] * len(checked.pattern.gauges)
        assert [gauge.before[1] for gauge in form.gauges] == [Fraction(15, 2)] * len(checked.pattern.gauges)
        assert [yarn.grams for yarn in form.yarns] == [168] * len(checked.pattern.yarns)
        assert [(told.row, told.at, told.words) for told in form.told] == [("Rnd 999", None, "½ a st?")]
        assert form.ticks == {"photos"}


@pytest.mark.parametrize("name", DEMOS)
def test_every_field_has_a_name_for_a_voice_and_an_appearance(name: str, demo: Demo, written: Written) -> None:
    for path in written(name).values():
        reader = PdfReader(path)
        form: Any = reader.root_object["/AcroForm"]
        assert "/NeedAppearances" not in form
        assert "/Lang" in reader.root_object
        assert all(page["/Tabs"] == "/S" for page in reader.pages)
        fields = fields_of(path)
        assert len({field["/TU"] for field in fields.values()}) == len(fields)  # no two are called the same
        for field in fields.values():
            assert field["/AP"]["/N"] is not None
            assert int(field["/F"]) & 2 == (2 if field["/T"] in FIXED else 0)
            assert (int(field.get("/Ff", 0)) & 1) == (field["/T"] in FIXED)
        boxes = [field for field in fields.values() if field["/FT"] == "/Btn"]
        assert boxes
        assert all(set(box["/AP"]["/N"]) == {"/on", "/Off"} for box in boxes)


@pytest.mark.parametrize("name", DEMOS)
def test_the_rows_of_the_size_are_offered(name: str, demo: Demo, written: Written) -> None:
    checked = demo(name)
    for size, path in written(name).items():
        offered = [str(option) for option in fields_of(path)["error 1 row"]["/Opt"]]
        here = next(one for one in checked.sizes if one.name == size)
        printing = Printing(checked.sizes, (here,), length_style(checked.pattern))
        assert offered[1:] == list(dict.fromkeys(row.words for row in asked_of(checked, printing).rows))
        assert not [words for words in offered if "{" in words]
        worked = [row for row in checked.worked[size] if row.applies]
        named = {row.row.place for row in worked if row.row.label is not None}
        assert len(offered) - 1 >= len({(at.line, at.column) for at in named}) * 3 // 4


@pytest.mark.parametrize("name", DEMOS)
def test_nothing_of_other_sizes(name: str, demo: Demo) -> None:
    checked = demo(name)
    for size in checked.sizes:
        others = tuple(
            one
            if one is size
            else replace(
                one,
                measures={
                    key: replace(each, target=each.target + 7, finished=None) for key, each in one.measures.items()
                },
                counts={key: replace(each, n=each.n + 77) for key, each in one.counts.items()},
            )
            for one in checked.sizes
        )
        edition = Edition(Path("out"), size.name, is_form=True)
        changed = replace(checked, sizes=others, worked={size.name: checked.worked[size.name]})
        assert form_html(form_view(changed, edition)) == form_html(form_view(checked, edition))


@pytest.mark.parametrize("name", DEMOS)
def test_checkers_find_nothing_wrong(name: str, written: Written) -> None:
    # PDF/UA-1 is ISO 14289-1; the checkers cover a part of it
    first, *_, last = written(name).values()
    for path in (first, last):
        assert list(pdfua.validate(str(path)).findings) == []
        found = [(one.rule, one.message) for one in outloud.check(str(path)).findings]
        assert [one for one in found if one[0] not in FALSE_ALARMS] == []


@pytest.mark.skipif(shutil.which("qpdf") is None, reason="qpdf is not installed")
def test_qpdf_finds_empty_and_filled_forms_sound(written: Written, fill: Fill, tmp_path: Path) -> None:
    sent = fill(
        written("skerrywick-wrap")["XL"], tmp_path / "sent.pdf", {"tester name": "Čermák (½)", "tick named": "/on"}
    )
    for path in (*written("skerrywick-wrap").values(), sent):
        done = subprocess.run(["qpdf", "--check", str(path)], capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="poppler is not installed")
def test_another_reader_shows_what_was_filled_in(written: Written, fill: Fill, tmp_path: Path) -> None:
    answers = {"tester name": "Čermák", "yarn A name": "wool ½", "error 1 row": "Wrap, Rnd 2"}
    sent = fill(written("skerrywick-wrap")["XL"], tmp_path / "sent.pdf", answers)
    shown = subprocess.run(["pdftotext", str(sent), "-"], capture_output=True, text=True, check=True).stdout
    for words in answers.values():
        assert words in shown.replace("\n", " ")


def test_forms_filled_in_by_another_library_are_read(written: Written, tmp_path: Path) -> None:
    import pikepdf
    from pikepdf.form import Form

    with pikepdf.open(written("skerrywick-wrap")["XL"]) as pdf:
        fields: Any = Form(pdf)
        for name, value in {"tester name": "Čermák", "time": "9 h", "tester level": "Easy"}.items():
            fields[name].value = value
        fields["error 1 row"].value = "Wrap, Rnd 2"
        fields["tick photos"].checked = True
        pdf.save(tmp_path / "sent.pdf")
    form, findings = read_form(tmp_path / "sent.pdf")
    assert findings == ()
    assert form is not None
    assert (form.tester, form.minutes, form.level, form.ticks) == ("Čermák", 540, "Easy", {"photos"})
    assert [told.at for told in form.told] == [(0, 2)]


def test_what_a_form_carries_comes_back(demo: Demo) -> None:
    for name in DEMOS:
        checked = demo(name)
        for size in checked.sizes:
            asked = asked_of(checked, Printing(checked.sizes, (size,), length_style(checked.pattern)))
            assert read_asked(asked.pattern, asked.version, asked.size, asked_text(asked)) == asked
            assert read_asked(asked.pattern, asked.version, asked.size, asked_text(asked)[:-2]) is None


@pytest.mark.parametrize("style", ["print", "large-print", "low-ink"])
@pytest.mark.parametrize("units", ["in", "cm"])
def test_both_units_in_the_order_of_the_edition(style: Any, units: Any, demo: Demo, tmp_path: Path) -> None:
    edition = Edition(tmp_path, "M", "letter", style=style, units=units, is_form=True)
    data, findings = form_bytes(demo("bollard-hat"), edition)
    assert findings == ()
    assert data is not None
    view = form_view(demo("bollard-hat"), edition)
    (measures,) = (section for section in view.sections if section.heading == "Finished measures")
    assert [field.name.rsplit(" ", 1)[1] for field in measures.lines[0].fields] == sorted(
        ("in", "cm"), key=lambda unit: unit != units
    )
    path = tmp_path / "form.pdf"
    path.write_bytes(data)
    assert list(pdfua.validate(str(path)).findings) == []


def test_repeats_several_yarns_and_uk_terms(demo: Demo, fill: Fill, tmp_path: Path) -> None:
    checked = demo("skerrywick-wrap")
    (gauge,), (yarn,) = checked.pattern.gauges.values(), checked.pattern.yarns
    repeats = replace(gauge, stitches=None, repeats=Fraction(5, 2), repeat_of=6)
    pattern = replace(
        checked.pattern, gauges={gauge.name: repeats}, yarns=(yarn, replace(yarn, letter="B", colour=None))
    )
    edition = Edition(tmp_path, "M", terms="UK", units="cm", is_form=True)
    data, findings = form_bytes(replace(checked, pattern=pattern), edition)
    assert findings == ()
    assert data is not None
    (tmp_path / "form.pdf").write_bytes(data)
    fields = fields_of(tmp_path / "form.pdf")
    assert fields["gauge lamps after stitches"]["/TU"] == "Tension: repeats of 6 stitches after blocking"
    assert fields["gauge lamps over"]["/V"] == "10 cm"
    answers = {"gauge lamps after stitches": "2 1/2 repeats", "yarn B metres": "1,250", "yarn A grams": "4 kg"}
    form, findings = read_form(fill(tmp_path / "form.pdf", tmp_path / "sent.pdf", answers))
    assert findings == ()
    assert form is not None
    assert form.asked.gauges[0].counted == "repeats"
    assert form.gauges[0].after[0] == Fraction(5, 2)
    assert [(one.letter, one.grams, one.inches) for one in form.yarns] == [
        ("A", 4000, None),
        ("B", None, Fraction(125000 * 100, 254)),
    ]


def test_the_proof_sees_another_number(demo: Demo) -> None:
    edition = Edition(Path("out"), "M", is_form=True)
    data, _ = form_bytes(demo("bollard-hat"), edition)
    assert data is not None
    checked = demo("bollard-hat")
    sizes = tuple(
        replace(size, measures={name: replace(one, finished=one.printed + 1) for name, one in size.measures.items()})
        for size in checked.sizes
    )
    view = form_view(replace(checked, sizes=sizes), edition)
    found = prove_form(data, view, checked.pattern.place)
    assert {finding.rule for finding in found} == {"form-differs-from-pattern"}
    assert len(found) >= len(checked.pattern.measures)


def test_same_bytes_in_two_folders_and_time_zones(demo: Demo, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    made = []
    for zone, folder in (("Pacific/Kiritimati", "one"), ("America/Adak", "another place")):
        monkeypatch.setenv("TZ", zone)
        time.tzset()
        (tmp_path / folder).mkdir()
        moved = replace(
            demo("bollard-hat"), pattern=replace(demo("bollard-hat").pattern, file=str(tmp_path / folder / "hat.yaml"))
        )
        data, findings = form_bytes(moved, Edition(tmp_path, "S", is_form=True))
        assert findings == ()
        made.append(data)
        time.sleep(1.1)  # no clock with seconds may leave a trace
    monkeypatch.undo()
    time.tzset()
    assert made[0] == made[1]
    assert made[0] is not None
    assert os.fsencode(tmp_path) not in made[0]
