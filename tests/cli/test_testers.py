"""`gradegen print --form` and `gradegen testers`, from the empty form to the lines for the pattern file."""

import csv
import io
import json
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
import yaml
from pypdf import PdfReader, PdfWriter

Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture(scope="module")
def returned(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with what two testers of the hat sent back, and a photo that came with it."""
    from gradegen.cli import main

    folder = tmp_path_factory.mktemp("returned")
    hat = Path(__file__).resolve().parents[2] / "shared" / "patterns" / "bollard-hat.yaml"
    assert main(["print", str(hat), "--form", "--sizes", "S, M", "--out", str(folder / "empty")]) == 0
    assert sorted(path.name for path in (folder / "empty").iterdir()) == [
        "bollard-hat-M-form.pdf",
        "bollard-hat-S-form.pdf",
    ]
    answers = {
        "S": {
            "tester name": "Ida",
            "yarn A grams": "71 g",
            "gauge single crochet after stitches": "16,5",
            "time": "6 h 30",
        },
        "M": {"tester name": "Ada", "yarn A grams": "2.5 oz", "error 1 row": "Hat, Rnd 2", "error 1 made": "13"},
    }
    for size, told in answers.items():
        writer = PdfWriter(clone_from=folder / "empty" / f"bollard-hat-{size}-form.pdf")
        for page in writer.pages:
            writer.update_page_form_field_values(page, told, auto_regenerate=False)
        writer.write(folder / f"{size}.pdf")
    return folder


def test_forms_are_merged(returned: Path, gradegen: Run, hat: Path) -> None:
    done = gradegen("testers", returned, "--pattern", hat)
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    lines = done.stdout.splitlines()
    assert lines[0].startswith("Bollard Hat 1.0: 2 forms; 2 of 9 sizes tested; nobody tested NB,")
    for words in ("size-untested", "Hat, Rnd 2", "came to 13, the pattern makes 12", "used: 70.9 g", "6 h 30"):
        assert words in done.stdout
    assert lines[-1].startswith("2 forms merged; ")


def test_for_programs(returned: Path, gradegen: Run, hat: Path) -> None:
    done = gradegen("testers", returned, "--pattern", hat, "--json")
    answer = json.loads(done.stdout)
    assert done.returncode == 0
    (pattern,) = answer["patterns"]
    assert (answer["version"], pattern["pattern"]) == (1, "Bollard Hat")
    assert pattern["sizes_untested"] == ["NB", "B1", "B3", "Y1", "Y2", "T", "L"]
    (gauge,) = pattern["gauge"]
    assert (gauge["stated"], gauge["median"], gauge["off_percent"]) == (16, 16.5, 3.125)
    assert {finding["rule"] for finding in answer["findings"]} >= {"size-untested"}
    rows = list(csv.DictReader(io.StringIO(gradegen("testers", returned, "--pattern", hat, "--csv").stdout)))
    assert [(row["tester"], row["found"]) for row in rows if row["about"] == "yarn" and row["unit"] == "g"] == [
        ("Ida", "71"),
        ("Ada", "70.8738"),
    ]


def test_the_weights_can_be_pasted(returned: Path, gradegen: Run, hat: Path) -> None:
    done = gradegen("testers", returned, "--pattern", hat, "--evidence")
    told = yaml.safe_load(done.stdout)
    pieces = told["yarn"]["A"]["testers"]
    assert [(piece["size"], piece["used"]) for piece in pieces] == [("S", "71 g"), ("M", "70.9 g")]
    assert all(piece["stitches"]["sc"] > 1000 for piece in pieces)
    assert gradegen("testers", returned, "--evidence").returncode == 2


def test_without_the_pattern(returned: Path, gradegen: Run) -> None:
    done = gradegen("testers", returned)
    assert done.returncode == 0
    assert "--pattern" in done.stdout.splitlines()[0]


def test_exit_codes(returned: Path, gradegen: Run, hat: Path, tmp_path: Path) -> None:
    assert gradegen("testers", tmp_path / "none").returncode == 2
    assert gradegen("testers", tmp_path).returncode == 2
    assert gradegen("testers", returned, "--pattern", tmp_path / "none.yaml").returncode == 2
    shutil.copy(returned / "M.pdf", tmp_path / "M.pdf")
    (tmp_path / "broken.pdf").write_bytes((returned / "M.pdf").read_bytes()[:3000])
    done = gradegen("testers", tmp_path, "--pattern", hat)
    assert done.returncode == 1
    assert "form-damaged" in done.stdout
    assert "Traceback" not in done.stdout + done.stderr


def test_one_form_in_the_units_and_on_the_paper_asked_for(gradegen: Run, hat: Path, tmp_path: Path) -> None:
    asked = ("--form", "--size", "M", "--units", "cm", "--paper", "letter", "--out", tmp_path)
    done = gradegen("print", hat, *asked)
    assert done.returncode == 0, done.stderr
    (path,) = tmp_path.iterdir()
    assert done.stdout.split() == [str(path)]
    assert path.name == "bollard-hat-M-cm-letter-form.pdf"
    page = PdfReader(path).pages[0]
    assert (page.mediabox.width, page.mediabox.height) == (612, 792)  # ANSI/ASME Y14.1
