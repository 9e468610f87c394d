"""Which of a pattern's possible documents is wanted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal, get_args

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Terms

Paper = Literal["a4", "letter"]
Unit = Literal["in", "cm"]
Style = Literal["print", "low-ink", "large-print", "spoken"]


@dataclass(frozen=True, slots=True)
class Edition:
    """One document of a pattern: its folder, its paper, one size alone (None: all), and whether it is a draft.

    `chosen`: some sizes by name, where neither one nor all are wanted. `terms`, `units` (the unit that stands first):
    None is the pattern's own. "low-ink": no fills, no pictures. "large-print": at least 22 pt, one column. "spoken":
    plain text and HTML in which everything is written out for a voice. `with_source`: the pattern file goes along
    inside the PDF. `is_form`: the tester's form of its one size in place of the pattern.
    """

    out: Path
    size: str | None = None
    paper: Paper = "a4"
    draft: bool = False
    chosen: tuple[str, ...] = ()
    terms: Terms | None = None
    units: Unit | None = None
    style: Style = "print"
    with_source: bool = False
    is_form: bool = False

    def sizes(self, checked: Checked) -> tuple[GradedSize, ...]:
        """The sizes whose numbers may be printed; () when a size asked for is none of this pattern's."""
        wanted = (self.size,) if self.size is not None else self.chosen
        if not wanted:
            return checked.sizes
        known = {size.name for size in checked.sizes}
        return tuple(size for size in checked.sizes if size.name in wanted) if known.issuperset(wanted) else ()

    def unknown_sizes(self, checked: Checked) -> tuple[str, ...]:
        """The names asked for that no size of this pattern has."""
        known = {size.name for size in checked.sizes}
        wanted = (self.size,) if self.size is not None else self.chosen
        return tuple(name for name in wanted if name not in known)

    def for_each(self, names: Sequence[str]) -> list[Edition]:
        """This edition for every size alone."""
        return [replace(self, size=name, chosen=()) for name in names]


def all_editions(first: Edition, names: Sequence[str], own: tuple[Terms, Unit]) -> list[Edition]:
    """The set a shop would offer: both papers, both terms, each unit first, every style, every size alone, its form.

    The choices of `first` hold for all of them; `own`: the pattern's own terms and first unit.
    """
    both: list[Edition] = [first, replace(first, paper="letter" if first.paper == "a4" else "a4")]
    both += [replace(first, terms=terms) for terms in get_args(Terms) if terms != (first.terms or own[0])]
    both += [replace(first, units=unit) for unit in get_args(Unit) if unit != (first.units or own[1])]
    both += [replace(first, style=style) for style in get_args(Style) if style != first.style]
    forms = replace(first, is_form=True, style="print", with_source=False)
    if first.size is not None:
        return [*both, forms]
    return [*both, *first.for_each(first.chosen or names), *forms.for_each(first.chosen or names)]
