"""Rows and sizes named in house style: `rep Rows 3-6 2 more times`, `sizes M and L`."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.rows import RowsAgain
from gradegen.write.notation.style import Notation, listing


def sizes_words(sizes: Sequence[str], says: Notation) -> str:
    """`size M`, `sizes M, L and XL`."""
    return ("size " if len(sizes) == 1 else "sizes ") + listing(sizes, says.style.label["several"]["last"])


def rows_again_words(again: RowsAgain, otherwise: str, says: Notation) -> str:
    """`rep Rows 3 and 4 5 more times`; `otherwise`: what is done differently, in words."""
    number = says.figures.text(again.times)
    form = "rows again" if again.times is None else "rows again more" if again.more else "rows again times"
    sums = {label: says.figures.text(each) for label, each in again.sums}
    labels = tuple(sums.get(label, label) for label in again.labels)
    words = says.step(form).format(rows=_row_names(labels, says), n=number)
    if again.until:
        words = says.step("rows again until").format(again=words, until=again.until)
    if otherwise:
        words = says.step("rows again except").format(again=words, body=otherwise)
    if again.ending:
        words = says.step("rows again ending").format(again=words, ending=_row_names((again.ending,), says))
    return words


def _row_names(labels: Sequence[str], says: Notation) -> str:
    """`Rows 3 and 4`, `Rows 3-6`, `Neck Rows 1 and 2`, `last 2 rows`."""
    if labels and labels[0].startswith("last"):
        number = labels[0].removeprefix("last").strip()
        return f"{labels[0]} {says.kind_word(number).casefold()}"
    name, numbers = _name_apart(labels)
    if not numbers:
        return f"{name} {says.kind_word('')}"
    several = says.style.label["several"]
    if len(numbers) > 2 and _runs_on(numbers):
        listed = str(says.style.label["range"]).format(first=numbers[0], last=numbers[-1])
    else:
        listed = listing(numbers, several["last"], several["between"])
    return f"{name} {says.kind_word('' if len(numbers) == 1 else '2')} {listed}".strip()


def _name_apart(labels: Sequence[str]) -> tuple[str, list[str]]:
    """The name that all labels share (`Neck`), and their numbers."""
    parts = [label.rpartition(" ") for label in labels]
    numbers = [number for _, _, number in parts if number.isdigit()]
    if len(numbers) == len(labels):
        return parts[0][0], numbers
    if any(label[:1] == "{" or label[:1].isdigit() for label in labels):  # sums, or lists by size
        return "", list(labels)
    return labels[0], []


def _runs_on(labels: Sequence[str]) -> bool:
    if not all(label.isdigit() for label in labels):
        return False
    first = int(labels[0])
    return [int(label) for label in labels] == list(range(first, first + len(labels)))
