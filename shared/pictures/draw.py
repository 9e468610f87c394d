"""Draws README's pictures anew from the demo: a printed page, and a finding as the terminal shows it.

.venv/bin/python shared/pictures/draw.py
"""

import html
import subprocess
import sys
import tempfile
from pathlib import Path

import pymupdf
from weasyprint import HTML

HERE = Path(__file__).resolve().parent
DEMO = HERE.parent / "patterns" / "skerrywick-wrap.yaml"
WRONG = ("({2 * band} hdc)\n      Rnd 2", "({2 * band + 1} hdc)\n      Rnd 2")
SHEET = """
@page {{ size: {width}pt {height}pt; margin: 0 }}
body {{ margin: 0; padding: 14pt 16pt; background: #f6f8fa; font: 9.5pt/1.45 monospace; color: #1f2328 }}
pre {{ margin: 0; white-space: pre; font-family: monospace }}
.error {{ color: #b3261e; font-weight: bold }} .dim {{ color: #6a737d }} .bold {{ font-weight: bold }}
"""


def gradegen(*arguments: object, cwd: Path) -> str:
    """What the command line prints."""
    command = [sys.executable, "-m", "gradegen", *map(str, arguments)]
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, encoding="utf-8").stdout


def draw_page(folder: Path) -> None:
    """The first page of the demo, on paper with an edge."""
    gradegen("print", DEMO, "--out", folder, cwd=folder)
    page = pymupdf.open(folder / f"{DEMO.stem}.pdf")[0]
    page.draw_rect(page.rect, color=(0.7, 0.7, 0.7), width=1)
    save(page, HERE / "page.png", 110)


def draw_finding(folder: Path) -> None:
    """One wrong count in a copy of the demo, as `gradegen check` shows it."""
    text = DEMO.read_text("utf-8")
    assert text.count(WRONG[0]) == 1
    copy = folder / DEMO.name
    copy.write_text(text.replace(*WRONG), encoding="utf-8")
    lines = gradegen("check", copy.name, cwd=folder).splitlines()
    at = next(number for number, line in enumerate(lines) if "  error  " in line)
    shown = ["$ gradegen check " + copy.name, *lines[at : lines.index("", at)], "", lines[-1]]
    wide = max(map(len, shown))
    sheet = SHEET.format(width=wide * 5.75 + 34, height=len(shown) * 13.8 + 30)
    body = "\n".join(coloured(line) for line in shown)
    pdf = HTML(string=f"<style>{sheet}</style><pre>{body}</pre>").write_pdf()
    save(pymupdf.open(stream=pdf)[0], HERE / "finding.png", 130)


def coloured(line: str) -> str:
    """One line as HTML, in the colours of the terminal."""
    marked = html.escape(line)
    if "  error  " in line:
        place, rest = marked.split("  error  ")
        rule, _, where = rest.partition("   ")
        return f'<span class="bold">{place}</span>  <span class="error">error  {rule}</span>   {where}'
    if set(line) <= set(" |^") and "^" in line:
        return marked.replace("^" * line.count("^"), f'<span class="error">{"^" * line.count("^")}</span>')
    if line.startswith("$") or line.lstrip().startswith("more:"):
        return f'<span class="dim">{marked}</span>'
    return marked


def save(page: "pymupdf.Page", path: Path, dpi: int) -> None:
    """A page as a small PNG."""
    page.get_pixmap(dpi=dpi, alpha=False).save(path)


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as made:
        draw_page(Path(made))
        draw_finding(Path(made))
