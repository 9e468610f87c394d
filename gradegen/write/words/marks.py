"""A mark for every size, so that an eye finds its own number in a long list: a shape, never a colour."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.graded import GradedSize

FEWEST = 5  # up to four values are told apart by their place alone
MARKS = "●△■◇▼○▲□◆▽★☆▶◁◀▷"  # neighbours differ in shape and in fill; the text font has all of them


def marks_of(all_sizes: Sequence[GradedSize], sizes: Sequence[GradedSize]) -> tuple[str, ...]:
    """The marks of these sizes, the same in every edition; () where the place in a list is enough, or marks run out."""
    if len(sizes) < FEWEST or len(all_sizes) > len(MARKS):
        return ()
    return tuple(MARKS[size.index] for size in sizes)


def without_marks(text: str) -> str:
    """The text as it would stand without the marks of sizes."""
    return text.translate(_NONE)


_NONE = {ord(mark): None for mark in MARKS}
