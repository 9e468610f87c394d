"""Every relation of the demo garments, and every count they tie, changed in a copy: a finding names what was broken.

Seams and shaping are broken in tests/check/test_seams_of_demos.py, stated counts in test_raised_counts.py.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from gradegen.findings import Finding, Severity
from gradegen.pipeline import check_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
GARMENTS = ("gunwale-pullover", "limpet-pullover", "slipway-cardigan")


def text_of(garment: str) -> str:
    return (PATTERNS / f"{garment}.yaml").read_text("utf-8")


def relations(garment: str) -> list[str]:
    block = re.search(r"^relations:\n((?:  - .*\n)+)", text_of(garment), re.MULTILINE)
    assert block is not None
    return [line.removeprefix("  - ") for line in block[1].splitlines()]


def broken(relation: str) -> str:
    """Twelve more on the right side; fewer where the right side is the larger one."""
    return f"{relation} - 12" if " <= " in relation else f"{relation} + 12"


def checked(garment: str, text: str, folder: Path) -> list[Finding]:
    for file in PATTERNS.iterdir():
        shutil.copy(file, folder)
    copy = folder / f"{garment}.yaml"
    copy.write_text(text, "utf-8")
    return [one for one in check_file(copy).findings if one.severity in (Severity.ERROR, Severity.INTERNAL)]


def words(finding: Finding, lines: list[str]) -> Iterator[str]:
    """All that a maker sees of a finding: its sentence, its working, and the row it points to."""
    yield from (finding.message, finding.because or "", finding.hint or "", finding.expected or "")
    at = finding.place.line - 1
    yield lines[at]
    yield from (line for line in lines[at + 1 : at + 4] if line.startswith("        "))


CASES = [(garment, relation) for garment in GARMENTS for relation in relations(garment)]


def test_garments_have_relations() -> None:
    assert len(CASES) >= 20


@pytest.mark.parametrize("garment", GARMENTS)
def test_nothing_is_wrong_before(garment: str, tmp_path: Path) -> None:
    assert checked(garment, text_of(garment), tmp_path) == []


@pytest.mark.parametrize(("garment", "relation"), CASES)
def test_a_broken_relation_is_named(garment: str, relation: str, tmp_path: Path) -> None:
    text = text_of(garment).replace(f"  - {relation}\n", f"  - {broken(relation)}\n")
    findings = checked(garment, text, tmp_path)
    assert findings
    assert all(one.severity is not Severity.INTERNAL for one in findings)
    counts = [name.strip() for name in re.split(r"[-+*=<>0-9]+", relation) if name.strip()]
    seen = [part for one in findings for part in words(one, text.splitlines())]
    assert any(re.search(rf"\b{name}\b", part) for name in counts for part in seen), (relation, seen)
