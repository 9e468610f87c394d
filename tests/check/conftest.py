"""A sound pattern, and fragments of patterns put in its place key by key."""

import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest

from gradegen.pipeline import Outcome, check_file

BASE = Path(__file__).with_name("base.yaml").read_text("utf-8")
A_KEY = re.compile(r"^(\w+):", re.MULTILINE)


def by_key(text: str) -> dict[str, str]:
    starts = [found.start() for found in A_KEY.finditer(text)]
    blocks = [text[start:end] for start, end in pairwise([*starts, len(text)])]
    return {block.split(":", 1)[0]: block.rstrip("\n") + "\n" for block in blocks}


def with_changes(fragment: str) -> str:
    """The sound pattern with every top-level key of the fragment put in place of its own."""
    return "".join((by_key(BASE) | by_key(fragment)).values())


@pytest.fixture
def checked_with(tmp_path: Path) -> Callable[[str], Outcome]:
    def check(fragment: str) -> Outcome:
        path = tmp_path / "pattern.yaml"
        path.write_text(with_changes(fragment), encoding="utf-8")
        return check_file(path)

    return check
