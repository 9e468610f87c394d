"""Two hundred mangled copies of the demos: never a traceback, always a place inside the file."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

import pytest

from gradegen.findings import Severity
from gradegen.pipeline import check_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
DEMOS = ("skerrywick-wrap", "bollard-hat")
COPIES = 100  # of each demo


def dropped_bracket(text: str, dice: random.Random) -> str:
    spots = [i for i, sign in enumerate(text) if sign in "()[]{}"]
    at = dice.choice(spots)
    return text[:at] + text[at + 1 :]


def changed_digit(text: str, dice: random.Random) -> str:
    at = dice.choice([i for i, sign in enumerate(text) if sign.isdigit()])
    return text[:at] + str((int(text[at]) + dice.randint(1, 9)) % 10) + text[at + 1 :]


def cut_line(text: str, dice: random.Random) -> str:
    lines = text.split("\n")
    at = dice.randrange(len(lines))
    lines[at] = lines[at][: dice.randint(0, len(lines[at]))]
    return "\n".join(lines)


def swapped_keys(text: str, dice: random.Random) -> str:
    lines = text.split("\n")
    keys = [i for i, line in enumerate(lines) if ":" in line and not line.lstrip().startswith(("#", "-"))]
    one, two = dice.sample(keys, 2)
    first, second = lines[one].split(":", 1), lines[two].split(":", 1)
    lines[one], lines[two] = f"{second[0]}:{first[1]}", f"{first[0]}:{second[1]}"
    return "\n".join(lines)


MANGLES = (dropped_bracket, changed_digit, cut_line, swapped_keys)


@pytest.mark.parametrize("demo", DEMOS)
def test_mangled_copies_get_located_findings(demo: str, tmp_path: Path) -> None:
    for file in PATTERNS.iterdir():
        shutil.copy(file, tmp_path)
    copy = tmp_path / f"{demo}.yaml"
    whole = copy.read_text("utf-8")
    dice = random.Random(demo)
    for i in range(COPIES):
        text = MANGLES[i % len(MANGLES)](whole, dice)
        copy.write_text(text, "utf-8")
        files = {copy.name: text.count("\n") + 1}
        for finding in check_file(copy).findings:
            assert finding.severity is not Severity.INTERNAL, (i, finding)
            name = Path(finding.place.file).name
            last = files.get(name) or (tmp_path / name).read_text("utf-8").count("\n") + 1
            assert 1 <= finding.place.line <= last, (i, finding)
            assert finding.place.column >= 1, (i, finding)
