"""How long a whole `gradegen print` takes beside a bare run of the typesetter on the same HTML.

.venv/bin/python -m pytest tests/bench/bench_print.py -s

The bare run reads the page and the fonts from real files and writes the same kind of tagged PDF; it neither reads the
pattern nor repairs tags nor proves the print. Both run in turn, in one run; the fastest of each are compared,
since other work on the machine only ever adds. Needs two processors: the typesetter loads beside the check.
"""

import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest

from gradegen.pipeline import check_file
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import OURS, fonts
from gradegen.write.pattern import page_files, pattern_html

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
    for name, (data, _) in page_files(checked, Edition(tmp_path))[0].pictures.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_bytes(data)
    bare = ("-c", BARE, str(tmp_path / "page.html"), str(tmp_path / "bare.pdf"))
    ours = ("-m", "gradegen", "print", str(pattern), "--out", str(tmp_path))
    seconds(*bare), seconds(*ours)  # byte code and disk cache
    pairs = [(seconds(*bare), seconds(*ours)) for _ in range(RUNS)]
    fastest = [min(each) for each in zip(*pairs, strict=True)]
    middle = [statistics.median(each) for each in zip(*pairs, strict=True)]
    for name, (one, other) in (("fastest", fastest), ("median", middle)):
        sys.stdout.write(f"\n{pattern.name}: {name} bare {one:.2f} s, print {other:.2f} s, {other / one:.2f} times")
    assert fastest[1] < MOST * fastest[0]
