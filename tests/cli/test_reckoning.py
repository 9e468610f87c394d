"""`gradegen yarn`, `any-size`, `companion`, and `fit --at --left` as commands."""

import json
from pathlib import Path


def test_yarn(gradegen, wrap: Path) -> None:
    run = gradegen("yarn", wrap)
    assert run.returncode == 0
    assert "sample in size M, 168 g" in run.stdout
    answer = json.loads(gradegen("yarn", wrap, "--json").stdout)
    skeins = [size["skeins"] for size in answer["yarn"]["A"]["sizes"].values()]
    assert skeins == sorted(skeins)
    assert "hdc" in gradegen("yarn", wrap, "--stitches").stdout


def test_any_size(gradegen, wrap: Path, tmp_path: Path) -> None:
    run = gradegen("any-size", wrap, "--from", "20 in", "--to", "80 in", "--csv", "--out", tmp_path)
    assert run.returncode == 0
    lines = run.stdout.strip().splitlines()
    assert [line.split(",")[1] for line in lines[1:]] == [str(chains) for chains in range(75, 280, 6)]
    assert (tmp_path / "skerrywick-wrap-any-size.pdf").read_bytes().startswith(b"%PDF")


def test_any_size_in_centimetres(gradegen, wrap: Path) -> None:
    inches = gradegen("any-size", wrap, "--from", "40 in", "--to", "50 in").stdout
    metric = gradegen("any-size", wrap, "--from", "101.6 cm", "--to", "127 cm").stdout
    assert inches == metric


def test_what_any_size_can_t_do(gradegen, wrap: Path) -> None:
    assert gradegen("any-size", wrap, "--from", "wide").returncode == 2
    assert gradegen("any-size", wrap, "--from", "80 in", "--to", "20 in").returncode == 2
    assert gradegen("any-size", wrap.with_name("none.yaml")).returncode == 2


def test_companion(gradegen, wrap: Path, tmp_path: Path) -> None:
    stamps = tmp_path / "stamps.txt"
    stamps.write_text("0:00 Materials\n4:30 Rnd 1\n", encoding="utf-8")
    run = gradegen("companion", wrap, "--out", tmp_path / "out", "--stamps", stamps)
    assert run.returncode == 0
    assert len(run.stdout.split()) == 3
    text = (tmp_path / "out" / "skerrywick-wrap-description.txt").read_text("utf-8")
    assert "4:30 Rnd 1" in text
    practice = gradegen("check", tmp_path / "out" / "skerrywick-wrap-practice.txt")
    assert practice.returncode == 0


def test_stamps_that_are_none(gradegen, wrap: Path, tmp_path: Path) -> None:
    stamps = tmp_path / "stamps.txt"
    stamps.write_text("Rnd 1 at half past\n", encoding="utf-8")
    run = gradegen("companion", wrap, "--out", tmp_path, "--stamps", stamps)
    assert run.returncode == 2
    assert "stamps.txt:1:1" in run.stderr
    assert gradegen("companion", wrap, "--stamps", tmp_path / "none.txt").returncode == 2


def test_yarn_left(gradegen, wrap: Path) -> None:
    run = gradegen("fit", wrap, "--at", "Rnd 6", "--left", "120 g", "--size", "M")
    assert run.returncode == 0
    assert "enough" in run.stdout
    answer = json.loads(gradegen("fit", wrap, "--at", "6", "--left", "38 g", "--size", "M", "--json").stdout)
    assert answer["enough"] is False
    assert answer["reaches"] == "Rnd 8"


def test_what_fit_needs(gradegen, wrap: Path) -> None:
    assert gradegen("fit", wrap).returncode == 2
    assert gradegen("fit", wrap, "--at", "Rnd 6").returncode == 2
    assert gradegen("fit", wrap, "--at", "Rnd 6", "--left", "much", "--size", "M").returncode == 2
    assert gradegen("fit", wrap, "--at", "Rnd 6", "--left", "38 g", "--size", "Q").returncode == 2
    assert gradegen("fit", wrap, "--at", "Rnd 66", "--left", "38 g", "--size", "M").returncode == 2
    assert gradegen("fit", wrap, "--body", "bust=41 in").returncode == 0
