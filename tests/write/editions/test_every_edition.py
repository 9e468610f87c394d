"""Every edition of every demo: readable by a machine, sound as a file, and the same bytes wherever and whenever made.

Each demo is printed in all its editions by two processes of the command, in two folders, in two time zones and with
two seeds for the order of sets. That takes minutes, so without EVERY_EDITION=1 each demo has its share of the kinds:
    EVERY_EDITION=1 .venv/bin/python -m pytest tests/write/editions/test_every_edition.py
"Tagged to PDF/UA-1, checked with pdfua, outloud, qpdf and pypdf" is what this shows; none of them is a certificate.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import outloud
import pdfua
import pytest
from pypdf import PdfReader

ROOT = Path(__file__).resolve().parents[3]
PATTERNS = ROOT / "shared" / "patterns"
FALSE_ALARMS = {
    "FIG-012": "a chart's alternative text names stitches by the abbreviations that the page explains",
    "TBL-010": "a large-print table of three sizes that goes on for few rows on a new page has more heads than numbers",
    "TBL-012": "the table of a tester's form has cells to be filled in: each holds a field and no text yet",
    "PAG-001": "rows that read alike but for their numbers stand at the foot of several pages, as text",
}
OWN_FONTS = ("Body", "Large", "Display", "Serif", "Field")
EVERY = ["--editions", "all"]
SHARES = {
    "bollard-hat": ["--size", "B3", "--terms", "UK", "--style", "low-ink"],
    "gunwale-pullover": ["--sizes", "M, L", "--paper", "letter", "--units", "cm"],
    "limpet-pullover": ["--size", "8", "--style", "large-print"],
    "skerrywick-wrap": ["--size", "M", "--paper", "letter", "--with-source"],
    "slipway-cardigan": ["--style", "spoken", "--terms", "UK"],
}


def printed(name: str, folder: Path, zone: str, seed: str) -> dict[str, bytes]:
    """Every file that the command writes for a demo which lies in this folder."""
    shutil.copytree(PATTERNS, folder / "patterns")
    wanted = EVERY if os.environ.get("EVERY_EDITION") else SHARES[name]
    subprocess.run(
        [sys.executable, "-m", "gradegen", "print", f"patterns/{name}.yaml", *wanted, "--out", "printed"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "TZ": zone, "PYTHONHASHSEED": seed},
        check=True,
        stdout=subprocess.DEVNULL,
    )
    return {path.name: path.read_bytes() for path in sorted((folder / "printed").iterdir())}


def test_every_demo_has_its_share() -> None:
    demos = {path.stem for path in PATTERNS.glob("*.yaml") if "\npieces:" in path.read_text("utf-8")}
    assert demos == set(SHARES)


@pytest.mark.parametrize("name", SHARES)
def test_checked_and_the_same_again(name: str, tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "another folder, with a longer name").mkdir()
    files = printed(name, tmp_path / "a", "UTC", "1")
    again = printed(name, tmp_path / "another folder, with a longer name", "Pacific/Auckland", "2")
    assert files
    assert [each for each in files if files[each] != again[each]] == []
    assert files.keys() == again.keys()
    for path in sorted((tmp_path / "a" / "printed").glob("*.pdf")):
        is_sound(path)


def is_sound(path: Path) -> None:
    assert [(found.rule_id, found.message) for found in pdfua.validate(str(path)).findings] == [], path.name
    heard = outloud.check(str(path))
    assert heard.error is None
    assert {found.rule for found in heard.findings} <= FALSE_ALARMS.keys(), (path.name, heard.findings)
    subprocess.run(["qpdf", "--check", str(path)], check=True, capture_output=True)
    reader = PdfReader(path)
    assert all(page.extract_text().strip() for page in reader.pages), path.name
    fonts = {str(font["/BaseFont"]) for page in reader.pages for font in fonts_of(page)}
    assert all(font.partition("+")[2].startswith(OWN_FONTS) for font in fonts), fonts


def fonts_of(page: object) -> list[dict[str, object]]:
    resources = page["/Resources"].get("/Font", {})  # type: ignore[index]
    return [font.get_object() for font in resources.values()]
