"""How stitch names are compared."""

from __future__ import annotations

import pytest

from gradegen.trade.stitch_names import spelling, spellings_of


@pytest.mark.parametrize(
    ("words", "keys"),
    [
        ("SC", ("sc",)),
        ("s.c.", ("sc",)),
        ("V - St", ("v st",)),
        ("dcs", ("dcs", "dc")),
        ("slip stitches", ("slip stitches", "slip stitch")),
        ("3-dc clusters", ("3-dc clusters", "3-dc cluster")),
        ("3 - dc cl", ("3-dc cl",)),
        ("ss", ("ss",)),
        ("", ()),
        (" . ", ()),
    ],
)
def test_keys_of_a_name(words: str, keys: tuple[str, ...]) -> None:
    assert spelling(words) == keys


def test_plain_stitches_also_answer_with_st() -> None:
    assert list(spellings_of(["sc"], plain=True)) == ["sc", "sc st", "sc stitch"]
    assert list(spellings_of(["sc"], plain=False)) == ["sc"]
