"""Every demo with seams or shaping, each of its numbers there changed in turn: a finding names what was broken."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from gradegen.check.rules import RULES
from gradegen.check.run import check_pattern
from gradegen.design.checked import Checked
from gradegen.findings import Severity
from gradegen.grade import grade_sizes
from gradegen.grade.shaping import shape_rows
from gradegen.read.pattern.file import read_pattern_and_table
from gradegen.work.rows import work_rows

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
SEAM_RULES = {
    "side-seams-differ", "shoulders-differ", "sleeve-does-not-fit-armhole", "back-width-does-not-add-up",
    "edges-differ", "raglan-lines-differ", "underarm-not-balanced", "pick-up-unlikely", "border-off-multiple",
}  # fmt: skip
SHAPING_RULES = {"shaping-total-differs", "odd-change-at-both-ends", "edge-stitches-run-out", "times-or-more-times"}
ROW_RULES = SHAPING_RULES | {
    "shaping-rows-differ", "shaping-longer-than-section", "stated-count-wrong", "runs-short", "stitches-left-over",
}  # fmt: skip


def demos(key: str) -> list[str]:
    found = [
        path.name for path in sorted(DEMOS.glob("*.yaml")) if re.search(rf"^{key}:", path.read_text("utf-8"), re.M)
    ]
    return found or ["none"]


SEAMS = tuple(rule for rule in RULES if rule.RULE.id in SEAM_RULES)


def errors(tmp_path: Path, demo: str, text: str) -> set[str]:
    """What is wrong with a changed copy, as far as its rows and seams go."""
    for beside in DEMOS.glob("*.yaml"):
        if not (tmp_path / beside.name).exists():
            shutil.copy(beside, tmp_path / beside.name)
    (tmp_path / demo).write_text(text, encoding="utf-8")
    both, findings = read_pattern_and_table(tmp_path / demo)
    assert both is not None, findings
    pattern, table = both
    sizes, found = grade_sizes(pattern, table)
    pattern, more = shape_rows(pattern, sizes)
    worked, wrong = work_rows(pattern, sizes)
    seams = check_pattern(Checked(pattern, table, sizes, worked, (), 0, 0, 0), SEAMS)
    return {one.rule for one in (*found, *more, *wrong, *seams) if one.severity is Severity.ERROR}


def seam_changes(text: str) -> Iterator[tuple[str, str]]:
    """The text with one count or edge of one seam raised by 12, more than a pick-up may be off; and which."""
    start = text.index("\nseams:\n") + 8
    end = next((found.start() for found in re.finditer(r"^\S", text[start:], re.M)), len(text) - start) + start
    block = text[start:end]
    for found in re.finditer(r"(?:: |, |\[| = | to )([a-z][a-z ]*)(?=[,}\]]|$)", block, re.M):
        changed = f"{block[: found.end(1)].rstrip()} + 12{block[found.end(1) :]}"
        yield found[1], text[:start] + changed + text[end:]


@pytest.mark.parametrize("demo", demos("seams"))
def test_every_seam_broken_is_named(tmp_path: Path, demo: str) -> None:
    if demo == "none":
        pytest.skip("no demo has seams")
    text = (DEMOS / demo).read_text("utf-8")
    assert not errors(tmp_path, demo, text)
    tried = list(seam_changes(text))
    assert tried
    for part, changed in tried:
        assert errors(tmp_path, demo, changed) & SEAM_RULES, (demo, part)


@pytest.mark.parametrize("demo", demos("shaping"))
def test_every_schedule_broken_is_named(tmp_path: Path, demo: str) -> None:
    """Each number of times that a schedule prints, changed in the rows for every size at once."""
    if demo == "none":
        pytest.skip("no demo has shaping")
    both, _ = read_pattern_and_table(DEMOS / demo)
    assert both is not None
    pattern, _ = shape_rows(both[0], grade_sizes(*both)[0])
    text = (DEMOS / demo).read_text("utf-8")
    sentences = [
        (one.schedule, row.text[one.start : one.end]) for p in pattern.pieces for row in p.rows for one in row.sentences
    ]
    assert sentences
    for name, words in sentences:
        for found in re.finditer(r"(\d+)(?= ?(?:\([\d, ]+\))? ?(?:\([^)]*\) )?times)", words):
            raised = f"{words[: found.start()]}{int(found[0]) + 1}{words[found.end() :]}"
            changed = text.replace(f"{{{name}}}", raised)
            assert changed != text
            assert errors(tmp_path, demo, changed) & ROW_RULES, (demo, raised)
