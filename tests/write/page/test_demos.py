"""The documents of the demo patterns: every size alone, and all of them together.

With EVERY_EDITION=1 each demo on both papers and one size of each alone; else Letter and one size of one demo:
`test_one_size.py` holds every size of every demo to its own values before it is typeset.
"""

import os
import re
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.pipeline import check_file
from gradegen.write.editions.edition import Edition
from gradegen.write.pattern import pattern_html, write_pattern

ROOT = Path(__file__).resolve().parents[3]
FILES = sorted((ROOT / "shared" / "patterns").glob("*.yaml"))
DEMOS = [path.stem for path in FILES if "\npieces:" in path.read_text("utf-8")]
TYPESET = DEMOS if os.environ.get("EVERY_EDITION") else ["skerrywick-wrap"]
PAPERS = [(name, "a4") for name in DEMOS] + [(name, "letter") for name in TYPESET]


@cache
def demo(name: str) -> Checked:
    checked = check_file(ROOT / "shared" / "patterns" / f"{name}.yaml").checked
    assert checked is not None
    return checked


def words_of(html: str) -> str:
    body = html[html.index("<body") :]
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", "", body)).replace("\N{NO-BREAK SPACE}", " ")


def other_body(size: GradedSize) -> GradedSize:
    """The same size with its values changed."""
    measures = {
        name: replace(measure, target=measure.target + 7, finished=measure.printed + 7)
        for name, measure in size.measures.items()
    }
    counts = {name: replace(count, n=count.n + 77, chain=count.chain + 77) for name, count in size.counts.items()}
    return replace(size, measures=measures, counts=counts, ease=(size.ease or 0) + 5, fit="another fit", wearer="baby")


def with_other_values(checked: Checked, kept: str) -> Checked:
    sizes = tuple(size if size.name == kept else other_body(size) for size in checked.sizes)
    weighed = {yarn.sample_size.text for yarn in checked.pattern.yarns if yarn.sample_size}  # yarn follows its stitches
    worked = {name: rows if name == kept or name in weighed else () for name, rows in checked.worked.items()}
    return replace(checked, sizes=sizes, worked=worked, proved=0)


@pytest.mark.parametrize("name", DEMOS)
def test_every_sum_is_put_in(name: str) -> None:
    assert "{" not in words_of(pattern_html(demo(name), Edition(Path("out"))))


@pytest.mark.parametrize(("name", "paper"), PAPERS)
def test_all_sizes_are_written_and_proved(name: str, paper: str, tmp_path: Path) -> None:
    paths, findings = write_pattern(demo(name), Edition(tmp_path, paper="letter" if paper == "letter" else "a4"))
    assert findings == ()
    texts = [page.extract_text() for page in PdfReader(paths[0]).pages]
    assert min(len(text) for text in texts) > 400  # no page is nearly empty


@pytest.mark.parametrize("name", TYPESET)
def test_one_size_is_written_and_proved(name: str, tmp_path: Path) -> None:
    size = demo(name).sizes[3].name
    mine, findings = write_pattern(demo(name), Edition(tmp_path / "a", size))
    assert findings == ()
    other, _ = write_pattern(with_other_values(demo(name), size), Edition(tmp_path / "b", size))
    assert mine[0].read_bytes() == other[0].read_bytes()
