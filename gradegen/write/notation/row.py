"""A row that was read, written back in house style: what the reader reads from it is the same row."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.rows import Definition, Label, Number, Row, Stated, Step, Turn
from gradegen.trade.stitches import Terms
from gradegen.write.notation.named_rows import sizes_words
from gradegen.write.notation.numbers import Figures, Worth
from gradegen.write.notation.places import thing_words
from gradegen.write.notation.steps import capital, steps_words
from gradegen.write.notation.style import Notation, NotationStyle, listing, notation_style
from gradegen.write.notation.works import makes_words

_MAGIC = re.compile(r"\bmagic\b|\bmr\b|\badj(?:ustable)?\b", re.IGNORECASE)


def write_row(
    row: Row,
    *,
    sizes: Sequence[str] = ("one",),
    size: str | None = None,
    terms: Terms = "US",
    worth: Worth | None = None,
    style: NotationStyle | None = None,
) -> str:
    """The row in house style, for all sizes (size lists) or for one (single numbers); "" where it is not worked.

    `worth`: what a sum in braces comes to in a size, by the size's index; without it sums stay sums. Words that could
    not be read are written as they stood.
    """
    if size is not None and row.sizes is not None and size not in row.sizes:
        return ""
    figures = Figures(tuple(sizes), list(sizes).index(size) if size is not None else None, worth)
    says = Notation(style or notation_style(), terms, figures, row.label.kind, _MAGIC.search(row.text) is not None)
    label = label_words(row.label, says)
    steps = steps_words(_with_turning_chain(row), says)
    return says.style.row["form" if label else "without label"].format(
        label=label,
        side=says.style.label["side"].format(side=row.side) if row.side and label else "",
        sizes=_only(row, says) if label else "",
        steps=capital(steps, row.steps[0]) if row.steps else "",
        end="" if steps.endswith(".") or not steps else says.style.row["end"],
        counts=counts_words(row.stated, says),
    )


def _with_turning_chain(row: Row) -> tuple[Step, ...]:
    """The steps with the chain made for the next row before the turn, where the older manner has it."""
    if row.turning_chain is None:
        return row.steps
    turns = [at for at, step in enumerate(row.steps) if isinstance(step, Turn)]
    at = turns[-1] if turns else len(row.steps)
    return (*row.steps[:at], row.turning_chain, *row.steps[at:])


def _only(row: Row, says: Notation) -> str:
    if row.sizes is None or says.figures.wanted is not None:
        return ""
    return str(says.style.label["sizes"]).format(sizes=sizes_words(row.sizes, says))


def label_words(label: Label, says: Notation) -> str:
    """`Row 5`, `Rnds 10-16 (17, 18)`, `Rows 4 and 5`, `Next 4 rows`, `Foundation`; "" when there is none."""
    forms = says.style.label
    if label.rows is not None:
        number = says.figures.text(label.rows)
        return str(forms["next"]).format(n=number, kind=says.kind_word(number))
    numbers = _label_numbers(label, says)
    if not (numbers or label.name) or _has_unread_sum(label):
        return label.text  # what was not read of it is kept as it stood
    if label.kind and (numbers or label.name):
        kind = says.kind_word("1" if label.last is None and not label.listed else "2")
        return " ".join(part for part in (label.name, kind, numbers) if part)
    return " ".join(part for part in (label.name, numbers) if part)


def _has_unread_sum(label: Label) -> bool:
    """True when a sum in braces stands in the label and its numbers hold none."""
    numbers = [number for number in (label.first, label.last, *label.listed, label.rows) if number is not None]
    return "{" in label.text and not any(number.formula for number in numbers)


def _label_numbers(label: Label, says: Notation) -> str:
    figures, forms = says.figures, says.style.label
    if label.listed:
        return listing([figures.text(number) for number in label.listed], forms["several"]["last"])
    first = figures.text(label.first)
    if label.last is None:
        return first
    last = figures.text(label.last)
    return first if first == last else str(forms["range"]).format(first=first, last=last)


def counts_words(stated: Sequence[Stated], says: Notation) -> str:
    """`(24 sc, 4 ch-2 sps)`; "" when the row states none, or none for the written size."""
    parts = [_count(one, says) for one in stated if not _unsaid(one.number, says)]
    form = says.style.counts
    return form["form"].format(counts=form["between"].join(parts)) if parts else ""


def _unsaid(number: Number, says: Notation) -> bool:
    values = says.figures.values(number)
    return values is not None and all(value is None for value in values)


def _count(one: Stated, says: Notation) -> str:
    number = says.figures.text(one.number)
    return f"{number} {thing_words(one.unit, number, says)}"


def write_definition(definition: Definition, *, terms: Terms = "US", sizes: Sequence[str] = ("one",)) -> str:
    """`little fan: (dc, ch 1, dc) in st or sp indicated`; one that could not be read keeps its own words."""
    says = Notation(notation_style(), terms, Figures(tuple(sizes)))
    if definition.makes and not definition.one:
        return f"{definition.name}: {makes_words(definition.makes, says)} in st or sp indicated"
    if definition.steps and not definition.one:
        return f"{definition.name}: {steps_words(definition.steps, says)}"
    return f"{definition.name}: {definition.text}"


def write_rows(
    rows: Sequence[Row], *, sizes: Sequence[str] = ("one",), size: str | None = None, terms: Terms = "US"
) -> tuple[str, ...]:
    """All rows in house style; turning chains made at a row's end move to the start of the next, where they belong."""
    moved = chains_at_start(rows)
    written = (write_row(row, sizes=sizes, size=size, terms=terms) for row in moved)
    return tuple(text for text in written if text)


def chains_at_start(rows: Sequence[Row]) -> tuple[Row, ...]:
    """The rows with every turning chain at the start of the row it stands in; the last one stays where it is."""
    out: list[Row] = []
    for row in rows:
        before = out[-1] if out else None
        if before is not None and before.turning_chain is not None:
            out[-1] = replace(before, turning_chain=None)
            row = replace(row, steps=(before.turning_chain, *row.steps))
        out.append(row)
    return tuple(out)
