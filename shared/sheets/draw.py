"""Draws README's contact sheets anew: every page of every demo in all sizes, small, one sheet a demo.

.venv/bin/python -m pip install pymupdf    # it draws the pages; nothing else needs it
.venv/bin/python shared/sheets/draw.py
"""

import io
import sys
import tempfile
from pathlib import Path

import pymupdf
from PIL import Image

from gradegen.pipeline import check_file, print_edition
from gradegen.write.editions.edition import Edition

HERE = Path(__file__).resolve().parent
PATTERNS = HERE.parent / "patterns"
MOST_BESIDE, WIDEST, GAP = 5, 1024, 8  # pages beside each other, pixels across the sheet, pixels between
TABLE = (214, 219, 218)
QUALITY = 62


def demos() -> list[Path]:
    """The pattern files; what lies beside them are size tables and pictures."""
    return [path for path in sorted(PATTERNS.glob("*.yaml")) if "\npieces:" in path.read_text("utf-8")]


def pages_of(pattern: Path, folder: Path) -> list[Image.Image]:
    """The printed pages as pictures."""
    checked = check_file(pattern).checked
    assert checked is not None
    (path,) = print_edition(checked, Edition(folder)).paths
    pages = list(pymupdf.open(path))
    wide = (WIDEST - GAP) // columns(len(pages)) - GAP
    return [small(page, wide) for page in pages]


def columns(pages: int) -> int:
    """How many stand beside each other, so that the rows are about equally long."""
    return -(-pages // -(-pages // MOST_BESIDE))


def small(page: pymupdf.Page, wide: int) -> Image.Image:
    """One page, drawn three times as large and taken down, so that its grey stays even."""
    zoom = 3 * wide / page.rect.width
    drawn = page.get_pixmap(matrix=pymupdf.Matrix(zoom, zoom))
    picture = Image.open(io.BytesIO(drawn.tobytes("png"))).convert("RGB")
    return picture.resize((wide, round(wide * picture.height / picture.width)), Image.Resampling.LANCZOS)


def sheet(pages: list[Image.Image]) -> Image.Image:
    """The pages in rows on one sheet."""
    beside = columns(len(pages))
    wide, high, rows = pages[0].width + GAP, pages[0].height + GAP, -(-len(pages) // beside)
    whole = Image.new("RGB", (beside * wide + GAP, rows * high + GAP), TABLE)
    for at, page in enumerate(pages):
        whole.paste(page, (GAP + at % beside * wide, GAP + at // beside * high))
    return whole


def main() -> None:
    """A sheet for every demo, written beside this file."""
    with tempfile.TemporaryDirectory() as folder:
        for pattern in demos():
            path = HERE / f"{pattern.stem}.webp"
            sheet(pages_of(pattern, Path(folder))).save(path, quality=QUALITY, method=6)
            sys.stdout.write(f"{path.name}: {path.stat().st_size // 1000} kB\n")


if __name__ == "__main__":
    main()
