"""Two hundred mangled copies of the demos: never a fault of ours, and always a place inside the file."""

import random
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.pipeline import check_file
from gradegen.write.screen_findings import finding_lines

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
COPIES = 200
Mangle = Callable[[str, random.Random], str]


def drop_a_bracket(text: str, luck: random.Random) -> str:
    return without(text, luck.choice([found.start() for found in re.finditer(r"[()\[\]{}*]", text)]))


def change_a_digit(text: str, luck: random.Random) -> str:
    at = luck.choice([found.start() for found in re.finditer(r"\d", text)])
    return text[:at] + luck.choice("0123456789") + text[at + 1 :]


def cut_a_line(text: str, luck: random.Random) -> str:
    lines = text.split("\n")
    at = luck.randrange(len(lines) - 1)
    lines[at] = lines[at][: luck.randrange(len(lines[at]) + 1)]
    return "\n".join(lines)


def lose_a_line(text: str, luck: random.Random) -> str:
    lines = text.split("\n")
    del lines[luck.randrange(len(lines) - 1)]
    return "\n".join(lines)


def swap_two_keys(text: str, luck: random.Random) -> str:
    first, second = luck.sample([*re.finditer(r"(?<=[\s{,])[a-z ]+(?=: )", text)], 2)
    first, second = sorted((first, second), key=lambda found: found.start())
    between = text[first.end() : second.start()]
    return text[: first.start()] + second[0] + between + first[0] + text[second.end() :]


def swap_two_words(text: str, luck: random.Random) -> str:
    words = text.split(" ")
    first, second = luck.sample(range(len(words)), 2)
    words[first], words[second] = words[second], words[first]
    return " ".join(words)


def double_a_sign(text: str, luck: random.Random) -> str:
    at = luck.randrange(len(text))
    return text[: at + 1] + text[at:]


def lose_a_sign(text: str, luck: random.Random) -> str:
    return without(text, luck.randrange(len(text)))


def without(text: str, at: int) -> str:
    return text[:at] + text[at + 1 :]


MANGLES: tuple[Mangle, ...] = (
    drop_a_bracket, change_a_digit, cut_a_line, lose_a_line, swap_two_keys, swap_two_words, double_a_sign, lose_a_sign,
)  # fmt: skip


@pytest.mark.parametrize("mangle", MANGLES, ids=lambda mangle: mangle.__name__)
@pytest.mark.parametrize("demo", ["skerrywick-wrap", "bollard-hat"])
def test_mangled_copies(demo: str, mangle: Mangle, tmp_path: Path) -> None:
    whole = (DEMOS / f"{demo}.yaml").read_text("utf-8")
    (tmp_path / "bollard-hat-heads.yaml").write_text((DEMOS / "bollard-hat-heads.yaml").read_text("utf-8"), "utf-8")
    path = tmp_path / "mangled.yaml"
    for number in range(-(-COPIES // (2 * len(MANGLES)))):
        text = mangle(whole, random.Random(f"{demo} {mangle.__name__} {number}"))
        path.write_text(text, encoding="utf-8")
        outcome = check_file(path)
        lines = text.split("\n")
        for finding in outcome.findings:
            assert finding.severity != "internal", finding.because
            if finding.place.file == str(path):
                assert 1 <= finding.place.line <= len(lines), finding
                assert 1 <= finding.place.column <= len(lines[finding.place.line - 1]) + 1, finding
            assert finding.message.strip()
        assert finding_lines(outcome.findings, ["S", "M"]) is not None
        assert outcome.checked is not None or outcome.findings
