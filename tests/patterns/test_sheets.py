"""README shows every demo on a small contact sheet; shared/sheets/draw.py makes them anew."""

import re
from pathlib import Path

from PIL import Image

ROOT = Path(__file__).resolve().parents[2]
SHEETS = ROOT / "shared" / "sheets"
PATTERNS = sorted((ROOT / "shared" / "patterns").glob("*.yaml"))
DEMOS = {path.stem for path in PATTERNS if "\npieces:" in path.read_text("utf-8")}
MOST_BYTES = 600_000


def test_a_sheet_for_every_demo_and_no_other() -> None:
    assert {path.stem for path in SHEETS.glob("*.webp")} == DEMOS
    assert sum(path.stat().st_size for path in SHEETS.iterdir() if path.is_file()) < MOST_BYTES


def test_sheets_are_pictures_of_several_pages() -> None:
    for path in SHEETS.glob("*.webp"):
        with Image.open(path) as sheet:
            assert sheet.width <= 1024
            assert sheet.height > sheet.width / 4


def test_readme_shows_them_with_words_beside() -> None:
    shown = dict(re.findall(r"!\[([^\]]+)\]\(shared/sheets/([\w-]+)\.webp\)", (ROOT / "README.md").read_text("utf-8")))
    assert set(shown.values()) == DEMOS
    assert all(len(words) > 30 for words in shown)
