"""The house style's data file, and names in it."""

from __future__ import annotations

import string
from collections.abc import Iterator
from typing import Any

import pytest

from gradegen.write.notation.numbers import Figures
from gradegen.write.notation.style import Notation, NotationStyle, listing, notation_style

KNOWN = """
label side sizes steps end counts n first last kind as thing whole nth after which nths bound of open close body star
stop st change stitch rows again until ending place row nth other rate sts sizes rates edge label
shaping since length times often
"""


def _forms(part: Any) -> Iterator[str]:
    if isinstance(part, str):
        yield part
    elif isinstance(part, dict):
        for value in part.values():
            yield from _forms(value)
    elif isinstance(part, list):
        for value in part:
            yield from _forms(value)


@pytest.mark.parametrize("part", NotationStyle.__slots__)
def test_every_form_uses_known_fields(part: str) -> None:
    forms = [form for form in _forms(getattr(notation_style(), part)) if form not in ("{}", "()", "[]")]
    assert forms
    for form in forms:
        assert {name for _, name, _, _ in string.Formatter().parse(form) if name} <= set(KNOWN.split()), form


def test_stitch_names_in_both_terms() -> None:
    us = Notation(notation_style(), "US", Figures(("one",)))
    uk = Notation(notation_style(), "UK", Figures(("one",)))
    assert (us.stitch("dc2tog"), uk.stitch("dc2tog")) == ("dc2tog", "tr2tog")
    assert (us.stitch("little fan", "3"), uk.stitch("little fan")) == ("little fans", "little fan")
    assert (us.step("skip"), uk.step("skip")) == ("sk {thing}", "miss {thing}")


def test_listing() -> None:
    assert listing(["S"], " and ") == "S"
    assert listing(["S", "M", "L"], " and ") == "S, M and L"
