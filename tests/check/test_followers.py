"""A chain off its multiple is told once: what goes wrong after it follows."""

from __future__ import annotations

import shutil
from pathlib import Path

from gradegen.findings import Severity
from gradegen.pipeline import check_file, read_table
from gradegen.write.starters.file import starter_text

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"


def copied(folder: Path) -> Path:
    """The demos with what lies beside them."""
    for file in PATTERNS.iterdir():
        shutil.copy(file, folder)
    return folder


def test_one_error_for_a_chain_off_its_multiple(tmp_path: Path) -> None:
    copy = copied(tmp_path) / "skerrywick-wrap.yaml"
    copy.write_text(copy.read_text("utf-8").replace("Foundation: Ch {band}.", "Foundation: Ch {band + 1}."), "utf-8")
    errors = [f for f in check_file(copy).findings if f.severity is Severity.ERROR]
    assert {f.rule for f in errors if not f.follows} == {"foundation-off-multiple"}
    assert {f.follows for f in errors if f.rule != "foundation-off-multiple"} == {"foundation-off-multiple"}
    assert len([f for f in errors if not f.follows]) == 9


def test_a_wrong_count_alone_follows_nothing(tmp_path: Path) -> None:
    copy = copied(tmp_path) / "skerrywick-wrap.yaml"
    copy.write_text(copy.read_text("utf-8").replace("({2 * band} hdc)", "({2 * band + 1} hdc)", 1), "utf-8")
    errors = [f for f in check_file(copy).findings if f.severity is Severity.ERROR]
    assert errors
    assert not any(f.follows for f in errors)


def test_relations_that_clash_are_told_and_not_every_row_after_them(tmp_path: Path) -> None:
    copy, second = copied(tmp_path) / "gunwale-pullover.yaml", "body = 2 * back + 2 * underarm"
    copy.write_text(copy.read_text("utf-8").replace(f"  - {second}\n", f"  - {second}\n  - {second} + 8\n"), "utf-8")
    errors = [f for f in check_file(copy).findings if f.severity is Severity.ERROR]
    assert {f.rule for f in errors if not f.follows} == {"relations-clash"}
    assert {f.follows for f in errors if f.rule != "relations-clash"} == {"relations-clash"}
    clash = next(f for f in errors if f.rule == "relations-clash")
    assert second in clash.message
    assert f"{second} + 8" in clash.message
    assert clash.hint  # what loosening one would buy
    assert len({place.line for place in (clash.place, *(spot for spot, _ in clash.see_also))}) == 2


def test_a_misspelt_name_in_braces_is_told_and_not_the_rows_that_lack_its_sentence(tmp_path: Path) -> None:
    table, _ = read_table("child")
    assert table is not None
    text = starter_text("Some Yoke", "round-yoke", table, "child")
    path = tmp_path / "yoke.yaml"
    path.write_text(text.replace("{ring 2}", "{rnig 2}", 1), "utf-8")
    errors = [f for f in check_file(path).findings if f.severity is Severity.ERROR]
    assert [f.rule for f in errors if not f.follows] == ["name-in-braces-unknown"]
    path.write_text(
        text.replace("({third ring} sc)", "({third ring + 1} sc)", 1).replace("{ring 4}", "{rnig 4}"), "utf-8"
    )
    told = [f for f in check_file(path).findings if f.severity is Severity.ERROR and not f.follows]
    assert {f.rule for f in told} == {"name-in-braces-unknown", "stated-count-wrong"}  # a row before it is told as ever
