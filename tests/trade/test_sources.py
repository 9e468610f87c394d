"""Source blocks."""

from __future__ import annotations

from gradegen.trade.sources import TRUST_MARKS, source_of


def test_a_source_says_what_it_is() -> None:
    source = source_of({"title": "Sizes", "publisher": "A House", "year": 1999, "address": "p. 3"})
    assert str(source) == "Sizes (A House, 1999)"
    assert source.address == "p. 3"


def test_what_is_left_out_is_not_known() -> None:
    assert source_of({}).year == "not known"


def test_marks_go_from_the_surest_to_the_least_sure() -> None:
    assert TRUST_MARKS[0].startswith("several")
    assert TRUST_MARKS[-1].endswith("unchecked")
