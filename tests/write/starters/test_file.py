"""Every kind that can be begun, with every ready table that gives what it needs: clean at once, every row proved."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from gradegen.design.sizes import SizeTable
from gradegen.findings import Severity
from gradegen.pipeline import check_file, read_table
from gradegen.read.size_tables.ready import ready_tables
from gradegen.trade.folders import data_folder
from gradegen.write.starters.file import starter_text, write_starter
from gradegen.write.starters.kinds import KINDS


def table(name: str) -> SizeTable:
    found, findings = read_table(name)
    assert found is not None, findings
    return found


def fits(kind: str, name: str) -> bool:
    found = table(name)
    babies = "baby" in (found.wearer, *found.wearer_by_size)
    return set(KINDS[kind].needs) <= set(found.columns) and (KINDS[kind].for_babies or not babies)


PAIRS = [(kind, name) for kind in KINDS for name in ready_tables() if fits(kind, name)]


def test_every_kind_has_its_file_and_every_file_its_kind() -> None:
    files = {path.stem for path in (data_folder("templates") / "starters").glob("*.yaml")}
    assert files == set(KINDS)
    assert all((kind, about.usual) in PAIRS for kind, about in KINDS.items())


@pytest.mark.parametrize(("kind", "name"), PAIRS)
def test_it_checks_clean_and_every_row_is_proved(kind: str, name: str, tmp_path: Path) -> None:
    path, findings = write_starter("Try", kind, table(name), name, tmp_path)
    assert findings == ()
    assert path is not None
    outcome = check_file(path)
    assert [(one.rule, one.size) for one in outcome.findings if one.severity is not Severity.NOTE] == []
    assert "name-has-two-meanings" not in {one.rule for one in outcome.findings}
    assert outcome.proved.proved > 0
    assert (outcome.proved.wrong, outcome.proved.not_checked) == (0, 0)


@pytest.mark.parametrize(("kind", "name"), PAIRS)
def test_nothing_is_left_to_fill_in(kind: str, name: str) -> None:
    assert not re.search(r"@[a-z]+@|ABOUT|LEVEL", starter_text("Try", kind, table(name), name))


@pytest.mark.parametrize(("kind", "name", "rule"), [
    ("hat", "women", "column-needed"),
    ("socks", "women", "column-needed"),
    ("raglan", "head", "column-needed"),
    ("raglan", "baby", "not-for-babies"),
])  # fmt: skip
def test_a_table_that_does_not_do_is_refused_with_one_that_does(
    kind: str, name: str, rule: str, tmp_path: Path
) -> None:
    path, (finding,) = write_starter("Try", kind, table(name), name, tmp_path)
    assert path is None
    assert finding.rule == rule
    assert finding.hint
    assert list(tmp_path.iterdir()) == []


def test_sizes_without_a_body_are_left_out() -> None:
    """The men's table gives no upper arm above 2X."""
    text = starter_text("Try", "raglan", table("men"), "men")
    assert "for: [S, M, L, XL, 2X]" in text
    assert "for: all" in starter_text("Try", "raglan", table("women"), "women")


def test_bust_shaping_as_the_starter_offers_it(tmp_path: Path) -> None:
    """Tess Knits: 0.75 to 1 in more length for each cup size above B; the sides keep their rows, so the seams hold."""
    path, _ = write_starter("Try", "drop-shoulder", table("women"), "women", tmp_path)
    assert path is not None
    text = path.read_text("utf-8")
    row = re.search(r"#   (Bust: .*)\n", text)
    assert row is not None
    text = (
        text.replace("  # bust dart:", "  bust dart:")
        .replace("  - name: Panels", "  - name: Back")
        .replace("panels ", "back ")
    )
    start, end = text.index("  - name: Back"), text.index("  - name: Sleeves")
    back = text[start:end].replace("      - Make two, a front and a back.\n", "").replace("    notes:\n", "")
    plain = re.search(r"      Rows 2-\{side rows \+ armhole rows\}: (.*)\n", back)
    assert plain is not None
    parted = f"      Rows 2-{{side rows}}: {plain[1]}\n      {row[1]}\n      Next {{armhole rows}} rows: {plain[1]}\n"
    front = back.replace("name: Back", "name: Front").replace(plain[0], parted)
    seams = "seams:\n  - side: back side = front side\n  - shoulders: back end = front end\n"
    both = (back + front).replace("{armhole: armhole rows}", "{armhole: armhole rows, side: side rows}")
    path.write_text(text[:start] + both + text[end:].replace("seams:\n", seams), "utf-8")
    outcome = check_file(path)
    assert [(one.rule, one.size) for one in outcome.findings if one.severity is not Severity.NOTE] == []
    assert (outcome.proved.wrong, outcome.proved.not_checked) == (0, 0)
    assert outcome.checked is not None
    darts = [row for row in outcome.checked.worked["M"] if row.label == "Bust"]
    assert [one.times for one in darts] == [6]  # 1.5 in x 11 rows / 4 in / 2: two pairs, and two rows over all
