"""`gradegen print`: what is written, what is refused, one size alone, and several at a time."""

import os
import pty
import subprocess
import sys
from pathlib import Path

import pypdf
import pytest

A4, LETTER = (595, 842), (612, 792)  # points; ISO 216 and ANSI/ASME Y14.1, rounded


@pytest.fixture
def small(gradegen, tmp_path: Path) -> Path:
    """A starter in three sizes."""
    gradegen("new", "Small Wrap", "--out", tmp_path)
    path = tmp_path / "small-wrap.yaml"
    path.write_text(path.read_text("utf-8").replace("for: all", "for: [S, M, L]"), encoding="utf-8")
    return path


def text_of(path: Path) -> str:
    """The words of all pages without blanks, since wide-set letters read back with blanks between them."""
    return "".join("".join(page.extract_text().split()) for page in pypdf.PdfReader(path).pages)


def size_of_page(path: Path) -> tuple[int, int]:
    box = pypdf.PdfReader(path).pages[0].mediabox
    return round(box.width), round(box.height)


def test_it_writes_into_build_and_names_the_file(gradegen, small: Path) -> None:
    run = gradegen("print", small.name, cwd=small.parent)
    assert run.returncode == 0, run.stderr
    written = small.parent / run.stdout.strip()
    assert written.parent == small.parent / "build"
    assert size_of_page(written) == A4
    assert "SmallWrap" in text_of(written)


def test_one_size_on_letter_in_a_folder_of_ones_own(gradegen, small: Path) -> None:
    run = gradegen("print", small, "--size", "M", "--paper", "letter", "--out", "pages", cwd=small.parent)
    assert run.returncode == 0, run.stderr
    written = small.parent / run.stdout.strip()
    assert written.parent == small.parent / "pages"
    assert size_of_page(written) == LETTER
    text = text_of(written)
    numbers = {size: f"Ch{count}." for size, count in zip("SML", _chains(gradegen, small), strict=True)}
    assert numbers["M"] in text
    assert numbers["S"] not in text
    assert numbers["L"] not in text


def _chains(gradegen, pattern: Path) -> list[int]:
    import json

    return [entry["count"] for entry in json.loads(gradegen("grade", pattern, "--json").stdout)["counts"]["band"]]


def test_all_sizes_gives_one_file_each_in_the_order_of_the_sizes(gradegen, small: Path) -> None:
    run = gradegen("print", small, "--all-sizes", "--jobs", "2", cwd=small.parent)
    assert run.returncode == 0, run.stderr
    names = [Path(line).stem for line in run.stdout.splitlines()]
    assert names == ["small-wrap-S", "small-wrap-M", "small-wrap-L"]
    assert all((small.parent / line).read_bytes().startswith(b"%PDF-") for line in run.stdout.splitlines())
    alone = gradegen("print", small, "--size", "M", "--out", "alone", cwd=small.parent).stdout.strip()
    together = small.parent / "build" / "small-wrap-M.pdf"
    assert text_of(small.parent / alone) == text_of(together)


def test_a_pattern_with_errors_is_refused_but_as_a_draft(gradegen, small: Path) -> None:
    text = small.read_text("utf-8").replace(
        "first sc. ({2 * band} sc)\n      Rnd 2", "first sc. ({2 * band + 1} sc)\n      Rnd 2"
    )
    small.write_text(text, encoding="utf-8")
    refused = gradegen("print", small, cwd=small.parent)
    assert refused.returncode == 1
    assert "stated-count-wrong" in refused.stderr
    assert "--draft" in refused.stderr
    assert not (small.parent / "build").exists()
    draft = gradegen("print", small, "--draft", cwd=small.parent)
    assert draft.returncode == 0, draft.stderr
    text = text_of(small.parent / draft.stdout.strip())
    assert "DRAFT" in text
    assert "stated-count-wrong" in text


def test_a_size_that_is_not_there_is_two_and_the_sizes_are_named(gradegen, small: Path) -> None:
    run = gradegen("print", small, "--size", "XXL", cwd=small.parent)
    assert run.returncode == 2
    assert "S, M, L" in run.stderr


def test_a_folder_that_cannot_be_written_is_told(gradegen, small: Path) -> None:
    (small.parent / "taken").write_text("a file", encoding="utf-8")
    run = gradegen("print", small, "--out", "taken", cwd=small.parent)
    assert run.returncode == 1
    assert "print-not-written" in run.stderr


def on_a_terminal(*arguments: object, cwd: Path, **variables: str) -> str:
    """What a terminal of its own receives."""
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-m", "gradegen", *map(str, arguments)], cwd=cwd, stdin=theirs, stdout=theirs, stderr=theirs,
        env=os.environ | {"TERM": "xterm-256color", "NO_COLOR": ""} | variables,
    )  # fmt: skip
    os.close(theirs)
    received = b""
    while True:
        try:
            piece = os.read(ours, 65536)
        except OSError:
            break
        if not piece:
            break
        received += piece
    process.wait(60)
    os.close(ours)
    return received.decode("utf-8", "replace")


def test_a_terminal_gets_a_bar_and_a_pipe_does_not(gradegen, small: Path) -> None:
    shown = on_a_terminal("print", small, "--all-sizes", "--jobs", "2", cwd=small.parent)
    assert "printing" in shown
    assert "3/3" in shown


def test_a_terminal_gets_colour_unless_it_says_no(gradegen, small: Path) -> None:
    small.write_text(small.read_text("utf-8").replace("multiple: 2}", "multipel: 2}"), encoding="utf-8")
    assert "\x1b[" in on_a_terminal("check", small, cwd=small.parent)
    assert "\x1b[" not in on_a_terminal("check", small, cwd=small.parent, NO_COLOR="1")
