"""How long a whole `gradegen print` takes beside a bare run of the typesetter on the same HTML.

.venv/bin/python -m pytest tests/bench/bench_print.py -s

The bare run reads the page and the fonts from real files and writes the same kind of tagged PDF; it neither reads the
pattern nor repairs tags nor proves the print. Both start with Python itself and run in turn; each pair is compared.
"""

import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest

from gradegen.pipeline import check_file
from gradegen.write.assets import OURS, fonts
from gradegen.write.edition import Edition
from gradegen.write.pattern import pattern_html

ROOT = Path(__file__).resolve().parents[2]
PATTERNS = [
    path for path in sorted((ROOT / "shared" / "patterns").glob("*.yaml")) if "\npieces:" in path.read_text("utf-8")
]
MOST = 1.25  # times the bare run
RUNS = 9
BARE = "import sys, weasyprint; weasyprint.HTML(sys.argv[1]).write_pdf(sys.argv[2], pdf_variant='pdf/ua-1')"


def seconds(*command: str) -> float:
    start = time.perf_counter()
    subprocess.run([sys.executable, *command], cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda path: path.stem)
def test_whole_process(pattern: Path, tmp_path: Path) -> None:
    checked = check_file(pattern).checked
    assert checked is not None
    html = pattern_html(checked, Edition(tmp_path))
    for name, path in fonts().items():
        html = html.replace(OURS + name, path.as_uri())
    (tmp_path / "page.html").write_text(html, encoding="utf-8")
    bare = ("-c", BARE, str(tmp_path / "page.html"), str(tmp_path / "bare.pdf"))
    ours = ("-m", "gradegen", "print", str(pattern), "--out", str(tmp_path))
    seconds(*bare), seconds(*ours)  # byte code and disk cache
    pairs = [(seconds(*bare), seconds(*ours)) for _ in range(RUNS)]
    ratio = statistics.median(ours / bare for bare, ours in pairs)
    middle = [statistics.median(each) for each in zip(*pairs, strict=True)]
    sys.stdout.write(f"\n{pattern.name}: bare {middle[0]:.2f} s, print {middle[1]:.2f} s, {ratio:.2f} times\n")
    assert ratio < MOST
