"""The real command line in a process of its own."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
DEMOS = ROOT / "shared" / "patterns"
Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture
def gradegen() -> Run:
    """Runs `python -m gradegen ARGUMENTS`; `cwd` defaults to the checkout."""

    def run(*arguments: object, cwd: Path = ROOT, **variables: str) -> "subprocess.CompletedProcess[str]":
        return subprocess.run(
            [sys.executable, "-m", "gradegen", *map(str, arguments)],
            cwd=cwd, capture_output=True, text=True, encoding="utf-8", timeout=120,
            env=os.environ | {"PYTHONIOENCODING": "utf-8", "PYTHONDONTWRITEBYTECODE": ""} | variables,
        )  # fmt: skip

    return run


@pytest.fixture
def wrap() -> Path:
    """The half-twist demo."""
    return DEMOS / "skerrywick-wrap.yaml"


@pytest.fixture
def hat() -> Path:
    """The hat demo."""
    return DEMOS / "bollard-hat.yaml"


@pytest.fixture
def wrap_with(wrap: Path, tmp_path: Path) -> Callable[[str, str], Path]:
    """A copy of the half-twist demo with one text put in place of another that stands there once."""

    def change(old: str, new: str) -> Path:
        text = wrap.read_text("utf-8")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in the demo"
        for picture in wrap.parent.glob("*.svg"):
            shutil.copy(picture, tmp_path)
        path = tmp_path / "changed.yaml"
        path.write_text(text.replace(old, new), encoding="utf-8")
        return path

    return change
