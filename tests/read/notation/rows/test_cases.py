"""Own rows beside their trees: cases/*.txt, one row a line, its tree indented below it.

Common practice, no source: the wordings are our own, the forms those of the trade (booklets and web).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

CASES = Path(__file__).parent / "cases"


def cases(*names: str) -> Iterator[pytest.ParameterSet]:
    for name in names:
        lines = (CASES / f"{name}.txt").read_text(encoding="utf-8").splitlines()
        sizes = int(lines[1].removeprefix("# sizes: "))
        rows = lines[3:]
        for text, expected in zip(rows[::2], rows[1::2], strict=True):
            yield pytest.param(text, sizes, expected.strip(), id=f"{name}: {text[:60]}")


TREES = ("places", "makes", "steps", "repeats", "counts", "references", "sizes", "prose", "web")


@pytest.mark.parametrize(("text", "sizes", "expected"), [*cases(*TREES)])
def test_a_row_reads_as_its_tree(text: str, sizes: int, expected: str, tree: Callable[..., str]) -> None:
    assert tree(text, sizes=sizes) == expected


@pytest.mark.parametrize(("text", "sizes", "expected"), [*cases("labels", "labels_by_size")])
def test_a_label_says_which_row(text: str, sizes: int, expected: str, labelled: Callable[..., str]) -> None:
    assert (labelled(text, sizes=sizes) or "-") == expected


def test_every_case_file_is_used() -> None:
    assert {path.stem for path in CASES.glob("*.txt")} == {*TREES, "labels", "labels_by_size"}


@pytest.mark.parametrize(("text", "sizes", "expected"), [*cases("labels", "labels_by_size")])
def test_a_label_given_apart_reads_alike(text: str, sizes: int, expected: str, read: Callable[..., object]) -> None:
    if expected == "-" or ":" not in text or text.startswith(("Sizes", "For size")):
        pytest.skip("no label of its own in front of a colon")
    label, _, rest = text.partition(":")
    together, apart = read(text, sizes=sizes), read(rest.strip(), sizes=sizes, label=label)
    assert together[0] == apart[0]  # type: ignore[index]


def test_a_label_may_list_its_numbers_with_colons(labelled: Callable[..., str]) -> None:
    assert labelled("Rows 4-8:8:9: sc across", sizes=3) == "row 4-8/8/9"
