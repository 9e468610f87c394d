"""A file that says another number than was worked is refused: each number of the rows of every demo is changed.

All of them with EVERY_EDITION=1, one in four without. The text read back from the real file is changed, one number at
a time, each time in another size, and compared; the page is changed as a slip in a template would, and then nothing is
written.
"""

import os
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.write import pattern as written
from gradegen.write.editions.edition import Edition
from gradegen.write.page import proof
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.page.read_back import ReadBack, read_back
from gradegen.write.page.typeset import plain_again
from gradegen.write.pattern import pattern_html, write_pattern

PATTERNS = Path(__file__).resolve().parents[3] / "shared" / "patterns"
DEMOS = [path.stem for path in sorted(PATTERNS.glob("*.yaml")) if "\npieces:" in path.read_text("utf-8")]
EDITION = Edition(Path("out"), style="low-ink")  # without pictures
Span = tuple[int, int]


@cache
def demo(name: str) -> Checked:
    checked = check_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    return checked


@cache
def file_of(name: str) -> bytes:
    checked = demo(name)
    data, findings = pdf_bytes(pattern_html(checked, EDITION), PageFiles(PATTERNS), checked.pattern.place)
    assert data is not None
    assert findings == ()
    return data


def numbers_in(text: str, expected: proof.Expected) -> Iterator[tuple[str, Span]]:
    """Every number that stands in a row of the text: in a list, another size's each time."""
    at, turn = 0, 0
    for sought in expected.rows:
        found = sought.search.pattern.search(text, at)
        assert found is not None, sought.name
        at = found.end()
        for group in range(1, len(found.groups()) + 1):
            start = found.start(group)
            numbers = list(re.finditer(r"\d+", found[group]))
            one = numbers[turn % len(numbers)]
            turn += 1
            yield sought.name, (start + one.start(), start + one.end())


@pytest.mark.parametrize("name", DEMOS)
def test_every_number_of_every_row(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    checked = demo(name)
    data = file_of(name)
    expected, honest = proof.expect_print(checked, EDITION), read_back(data)
    assert proof.compare_print(data, expected) == ()
    text = plain_again(honest.text)
    numbers = list(numbers_in(text, expected))
    assert len(numbers) > 2 * len(expected.rows) / 3
    said: list[str] = []
    monkeypatch.setattr(proof, "read_back", lambda _: ReadBack(said[0], honest.rows))
    monkeypatch.setattr(proof, "read_slowly", lambda _: said[0])
    for row, (start, end) in numbers[:: 1 if os.environ.get("EVERY_EDITION") else 4]:
        said[:] = [f"{text[:start]}{int(text[start:end]) + 1}{text[end:]}"]
        rules = {finding.rule for finding in proof.compare_print(data, expected)}
        assert rules == {"print-differs"}, (row, text[start - 20 : end + 20])


def bare(name: str) -> str:
    """A measure's name without the letter that it has on the drawing."""
    return re.sub(r"\s", "", re.sub(r"^[A-Z]\s", "", name)).casefold()


@pytest.mark.parametrize("name", DEMOS)
def test_every_measure_of_every_size(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    checked = demo(name)
    data = file_of(name)
    expected, honest = proof.expect_print(checked, EDITION), read_back(data)
    names = {bare(each) for each in checked.pattern.measures}
    rows = list(honest.rows)
    monkeypatch.setattr(proof, "read_back", lambda _: ReadBack(honest.text, tuple(rows)))
    changed = 0
    for at, row in enumerate(honest.rows):
        if bare(row[0]) not in names:
            continue
        place = 1 + changed % (len(row) - 1)
        rows[at] = (*row[:place], row[place] + "9", *row[place + 1 :])
        assert proof.compare_print(data, expected) != (), row
        rows[at] = row
        changed += 1
    assert changed >= len(checked.pattern.measures)


@pytest.mark.parametrize("name", DEMOS)
def test_a_changed_page_is_not_written(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a slip in a template would: the closing count of one row of one size's pages says one more."""
    checked = demo(name)
    count = re.compile(r'(<span class="count whole">\()(\d+)')
    changes = []

    def changed(*given: object) -> str:
        page, many = count.subn(lambda found: f"{found[1]}{int(found[2]) + 1}", pattern_html(*given), count=1)  # type: ignore[arg-type]
        changes.append(many)
        return page

    monkeypatch.setattr(written, "pattern_html", changed)
    paths, findings = write_pattern(checked, Edition(tmp_path, checked.sizes[-2].name))
    assert changes == [1]
    assert paths == ()
    assert {finding.rule for finding in findings} == {"print-differs"}
    assert list(tmp_path.iterdir()) == []
