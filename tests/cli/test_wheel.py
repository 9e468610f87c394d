"""The main job from a built wheel, outside the checkout, with nothing but what the wheel carries."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


def run(*arguments: object, cwd: Path, **variables: str) -> str:
    done = subprocess.run(
        [sys.executable, *map(str, arguments)], cwd=cwd, capture_output=True, text=True, encoding="utf-8", timeout=300,
        env=os.environ | variables,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr + done.stdout
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("wheel")
    run("-m", "build", "--wheel", "--no-isolation", "--outdir", out, ROOT, cwd=out)
    return next(out.glob("*.whl"))


def test_it_carries_the_data_and_the_licences_and_no_pictures(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    for there in (
        "sizes/women.yaml",
        "shared/stitches.yaml",
        "shared/patterns/",
        "shared/patterns/bollard-hat-crown.svg",
        "templates/starters/hat.yaml",
        "shared/licences/MIT.txt",
    ):
        assert [name for name in names if name.startswith(f"gradegen/_data/{there}")], there
    assert [name for name in names if "licenses/" in name and name.endswith("MIT.txt")]
    assert [name for name in names if "shared/pictures" in name or name.startswith("tests/")] == []


def test_it_prints_a_demo_outside_the_checkout(wheel: Path, tmp_path: Path) -> None:
    site = tmp_path / "site"
    run("-m", "pip", "install", "--quiet", "--no-deps", "--no-index", "--target", site, wheel, cwd=tmp_path)
    outside = {"PYTHONPATH": str(site)}
    where = run("-c", "import gradegen; print(gradegen.__file__)", cwd=tmp_path, **outside).strip()
    assert Path(where).is_relative_to(site)
    demo = site / "gradegen" / "_data" / "shared" / "patterns" / "skerrywick-wrap.yaml"
    assert " 0 wrong, 0 not checked" in run("-m", "gradegen", "check", demo, cwd=tmp_path, **outside)
    printed = run("-m", "gradegen", "print", demo, "--size", "M", "--out", "pages", cwd=tmp_path, **outside).split()
    assert (tmp_path / printed[-1]).read_bytes().startswith(b"%PDF-")
