"""One size's pages know nothing of the others: with every value of theirs changed, they stay letter for letter.

What is changed in a copy, for each size of each demo: every body measure and every wearer of the other sizes in the
size table, every value of theirs in a list of the pattern, and the numbers of the rows that only they work. What is
not: what was weighed (`sample`, `testers`, `swatches`), which is evidence on the yarn and no value of a size, and which
the yarn of all sizes rests on; and what all sizes share. Counts that relations tie together are graded over all sizes
at once, so that they grow evenly, and another body may rightly move them by a stitch: in the copy the size's own are
pinned to what they came to.
"""

import json
import re
import shutil
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.pipeline import check_file
from gradegen.write.editions.edition import Edition
from gradegen.write.pattern import pattern_html

ROOT = Path(__file__).resolve().parents[3]
PATTERNS = ROOT / "shared" / "patterns"
DEMOS = [path.stem for path in sorted(PATTERNS.glob("*.yaml")) if "\npieces:" in path.read_text("utf-8")]
BRACKETS = re.compile(r"\d[\d½¼¾⅓⅔⅛⅜⅝⅞.]* \((?:[\d½¼¾⅓⅔⅛⅜⅝⅞.–]+, )+")  # 84 (90, 96
CELLS = re.compile(r"(?m)^( +(?:in|cm): )(\[.*\])$")
LISTED = re.compile(r"\[(?:[\d.]+, )+[\d.]+\]")
COUNT = re.compile(r"(?m)^(  )([\w ]+)(: \{)((?!sum:).*)\}$")
ROW = re.compile(r"(?m)^( +Rnds? [\d-]+ \()([^()]+)( only\): )(.*)$")
TABLE = re.compile(r"table: ([\w.-]+)")


@cache
def demo(name: str) -> Checked:
    checked = check_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    return checked


EACH = [(name, size.name) for name in DEMOS for size in demo(name).sizes]


def other(value: object, at: int) -> object:
    """Another value of the same kind: some sizes grow, some shrink, and no two by the same."""
    if isinstance(value, list):
        return [other(each, at) for each in value]
    if not isinstance(value, int | float):
        return value
    by, more = ((1.04, 0.25), (0.95, -0.25), (1.08, 0.25), (0.92, -0.25))[at % 4]
    return round((value * by + more) * 4) / 4


def with_others_changed(values: Sequence[object], kept: int) -> str:
    changed = [value if at == kept else other(value, at) for at, value in enumerate(values)]
    assert all((a == b) == (at == kept or a is None) for at, (a, b) in enumerate(zip(values, changed, strict=True)))
    return json.dumps(changed)


def changed_lists(text: str, expression: re.Pattern[str], group: int, sizes: int, kept: int) -> str:
    """Every list of as many values as there are sizes, with the values of the others changed."""

    def change(found: re.Match[str]) -> str:
        values = json.loads(found[group])
        if len(values) != sizes:
            return found[0]
        return found[0].replace(found[group], with_others_changed(values, kept))

    return expression.sub(change, text)


def changed_wearers(text: str, kept: str) -> str:
    """The other sizes of a table that says it for each are worn by somebody else."""
    turned = {"baby": "adult", "child": "baby", "adult": "child"}
    one = re.compile(r"\b(\w+): (baby|child|adult)")

    def change(line: re.Match[str]) -> str:
        return one.sub(lambda each: each[0] if each[1] == kept else f"{each[1]}: {turned[each[2]]}", line[0])

    return re.sub(r"(?m)^wearer: \{.*\}$", change, text)


def changed_rows(text: str, kept: str) -> str:
    """Rows that the size doesn't work say other numbers."""

    def change(row: re.Match[str]) -> str:
        if kept in re.split(r", | and ", row[2]):
            return row[0]
        return row[1] + row[2] + row[3] + re.sub(r"\d+", lambda number: str(int(number[0]) + 2), row[4])

    return ROW.sub(change, text)


def pinned(text: str, size: GradedSize) -> str:
    """Every count that is not a sum of others is pinned to what it came to in this size."""
    head, counts, rest = re.split(r"(?m)^(counts:\n(?:  .*\n)+)", text, maxsplit=1)

    def pin(found: re.Match[str]) -> str:
        return f'{found[1]}{found[2]}{found[3]}{found[4]}, pin: {{"{size.name}": {size.counts[found[2]].n}}}}}'

    return head + COUNT.sub(pin, counts) + rest


def copied(name: str, size: str, folder: Path) -> Path:
    """The demo and its size table in a folder of their own, with everything of the other sizes changed."""
    shutil.copytree(PATTERNS, folder, dirs_exist_ok=True)
    sizes = [each.name for each in demo(name).sizes]
    kept = sizes.index(size)
    text = (PATTERNS / f"{name}.yaml").read_text("utf-8")
    table = TABLE.search(text)
    assert table is not None
    source = PATTERNS / table[1] if table[1].endswith(".yaml") else ROOT / "sizes" / f"{table[1]}.yaml"
    bodies = changed_lists(source.read_text("utf-8"), CELLS, 2, len(sizes), kept)
    (folder / "bodies.yaml").write_text(changed_wearers(bodies, size), "utf-8")
    text = TABLE.sub("table: bodies.yaml", text, count=1)
    text = changed_lists(text, LISTED, 0, len(sizes), kept)
    if "\nrelations:" in text:
        text = pinned(text, demo(name).sizes[kept])
    (folder / f"{name}.yaml").write_text(changed_rows(text, size), "utf-8")
    return folder / f"{name}.yaml"


def words_of(html: str) -> str:
    body = html[html.index("<body") :]
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", "", body)).replace("\N{NO-BREAK SPACE}", " ")


def counts_of(size: GradedSize) -> dict[str, int]:
    return {name: count.n for name, count in size.counts.items()}


@pytest.mark.parametrize(("name", "size"), EACH)
def test_the_page_stays_letter_for_letter(name: str, size: str, tmp_path: Path) -> None:
    copy = check_file(copied(name, size, tmp_path)).checked
    assert copy is not None
    for before, after in zip(demo(name).sizes, copy.sizes, strict=True):
        assert (counts_of(before) == counts_of(after)) == (before.name == size), before.name
    edition = Edition(Path("out"), size)
    page = pattern_html(demo(name), edition)
    assert pattern_html(copy, edition) == page
    assert not BRACKETS.search(words_of(page))
    names = "|".join(each.name for each in copy.sizes if each.name != size)
    assert not re.search(rf"\bonly[):]|\b[Ss]izes? (?:{names})\b|\b(?:{names}) only\b", words_of(page))
