"""Sentences are broken between words where a terminal is narrower; columns, and what goes to a program, stay whole."""

from io import StringIO

import pytest

from gradegen.write.screen.terminal import show_prose, wrapped

TEXT = (
    "Every chain here was worked through the whole pattern, row by row.\n"
    "Chain  Size  Sts after Rnd 1\n"
    "  135  XS *              270"
)


@pytest.mark.parametrize("width", [20, 28, 40])
def test_sentences_are_wrapped_and_columns_are_not(width: int) -> None:
    lines = wrapped(TEXT, width).split("\n")
    assert lines[-2:] == TEXT.split("\n")[1:]
    assert max(map(len, lines[:-2])) <= width
    assert " ".join(lines[:-2]) == TEXT.split("\n")[0]


def test_what_goes_to_a_program_stays_as_it_is() -> None:
    stream = StringIO()
    show_prose(TEXT * 9, stream)
    assert stream.getvalue() == TEXT * 9 + "\n"
