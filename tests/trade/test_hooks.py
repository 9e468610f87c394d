"""Hook sizes: every entry, and the look-ups."""

from __future__ import annotations

from fractions import Fraction

from gradegen.trade.hooks import find_hooks, hook_words, hooks, hooks_of
from gradegen.trade.sources import TRUST_MARKS


def test_every_entry_is_whole() -> None:
    for hook in hooks():
        assert 0 < hook.mm <= 30
        assert hook.trust in TRUST_MARKS
        assert hook.trust_uk is None or hook.trust_uk in TRUST_MARKS
        assert (hook.trust_uk is None) == (hook.uk is None)
        assert hook.source.publisher != "not known"


def test_sizes_stand_in_order_and_once() -> None:
    regular = [hook.mm for hook in hooks() if hook.kind == "regular"]
    steel = [hook.mm for hook in hooks() if hook.kind == "steel"]
    assert regular == sorted(set(regular))
    assert steel == sorted(set(steel), reverse=True)


def test_every_name_finds_its_hook() -> None:
    for hook in hooks():
        if hook.us:
            assert hook in find_hooks(f"US {'steel ' if hook.kind == 'steel' else ''}{hook.us}")
        if hook.uk:
            assert hook in find_hooks(f"UK {hook.uk}")
        assert hook in hooks_of(hook.mm)


def test_what_is_printed_finds_the_hook_again() -> None:
    for hook in hooks():
        assert hook in find_hooks(hook_words(hook.mm, hook.kind))


def test_millimetres_decide_where_they_stand() -> None:
    assert {hook.mm for hook in find_hooks("US H-8 (5.5 mm)")} == {Fraction(11, 2)}
    assert {hook.mm for hook in find_hooks("4,5 mm")} == {Fraction(9, 2)}
