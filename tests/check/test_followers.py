"""A chain off its multiple is told once: what goes wrong after it follows."""

from __future__ import annotations

import shutil
from pathlib import Path

from gradegen.findings import Severity
from gradegen.pipeline import check_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"


def test_one_error_for_a_chain_off_its_multiple(tmp_path: Path) -> None:
    copy = tmp_path / "wrap.yaml"
    shutil.copy(PATTERNS / "skerrywick-wrap.yaml", copy)
    copy.write_text(copy.read_text("utf-8").replace("Foundation: Ch {band}.", "Foundation: Ch {band + 1}."), "utf-8")
    errors = [f for f in check_file(copy).findings if f.severity is Severity.ERROR]
    assert {f.rule for f in errors if not f.follows} == {"foundation-off-multiple"}
    assert {f.follows for f in errors if f.rule != "foundation-off-multiple"} == {"foundation-off-multiple"}
    assert len([f for f in errors if not f.follows]) == 9


def test_a_wrong_count_alone_follows_nothing(tmp_path: Path) -> None:
    copy = tmp_path / "wrap.yaml"
    shutil.copy(PATTERNS / "skerrywick-wrap.yaml", copy)
    copy.write_text(copy.read_text("utf-8").replace("({2 * band} hdc)", "({2 * band + 1} hdc)", 1), "utf-8")
    errors = [f for f in check_file(copy).findings if f.severity is Severity.ERROR]
    assert errors
    assert not any(f.follows for f in errors)
