"""Stated multiples against the rows: wrong ones, stricter ones, and those that are just right."""

from __future__ import annotations

from pathlib import Path

import pytest
from reckon.stitch_patterns import PATTERNS, StitchPattern, checked

from gradegen.pipeline import check_file
from gradegen.reckon.multiples.stated_multiple import StrictMultiple, WrongMultiple, compare_multiples

DEMOS = Path(__file__).parents[2] / "shared" / "patterns"
HEAD = """
title: Stitch patterns
terms: US
sizes: {table: women, for: [M]}
gauge:
  plain: {stitches: 4, rows: 4, over: 4 in}
measures:
  width: 48 in
counts:
  n: {across: width, gauge: plain, multiple: MULTIPLE, plus: PLUS}
"""


def compared(pattern: StitchPattern, folder: Path, multiple: int, plus: int) -> list[WrongMultiple | StrictMultiple]:
    head = HEAD.replace("MULTIPLE", str(multiple)).replace("PLUS", str(plus))
    return list(compare_multiples(checked(folder, (pattern,), head)))


NARROW = [one for one in PATTERNS if 1 < one.takes[0] <= 8]


@pytest.mark.parametrize("pattern", NARROW, ids=lambda one: one.name.replace(" ", "-"))
def test_the_right_multiple_gives_nothing(pattern: StitchPattern, tmp_path: Path) -> None:
    multiple, plus, _ = pattern.takes
    assert compared(pattern, tmp_path, multiple, plus) == []


@pytest.mark.parametrize("pattern", NARROW, ids=lambda one: one.name.replace(" ", "-"))
def test_twice_the_multiple_is_stricter_than_needed(pattern: StitchPattern, tmp_path: Path) -> None:
    multiple, plus, _ = pattern.takes
    (found,) = compared(pattern, tmp_path, 2 * multiple, plus)
    assert isinstance(found, StrictMultiple)
    assert found.step == multiple
    assert (found.chains - plus) % multiple == 0
    assert (found.chains - plus) % (2 * multiple) != 0


@pytest.mark.parametrize("pattern", NARROW, ids=lambda one: one.name.replace(" ", "-"))
def test_another_multiple_is_wrong(pattern: StitchPattern, tmp_path: Path) -> None:
    multiple, plus, _ = pattern.takes
    (found,) = compared(pattern, tmp_path, multiple + 1, plus)
    assert isinstance(found, WrongMultiple)
    assert (found.derived.multiple, found.derived.left) == (multiple, (plus,))
    assert not found.derived.allows(found.chains)
    assert found.stated.allows(found.chains)


def test_the_right_multiple_with_the_wrong_rest(tmp_path: Path) -> None:
    shells = next(one for one in PATTERNS if one.name == "low shells")
    (found,) = compared(shells, tmp_path, 6, 3)
    assert isinstance(found, WrongMultiple)
    assert found.derived.words == "a multiple of 6 plus 2"


def test_plain_rows_may_go_by_any_multiple(tmp_path: Path) -> None:
    plain = next(one for one in PATTERNS if one.name == "plain")
    assert compared(plain, tmp_path, 4, 1) == []


def test_the_wrap_states_a_stricter_one_on_purpose() -> None:
    demo = check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert demo is not None
    (found,) = compare_multiples(demo)
    assert isinstance(found, StrictMultiple)
    assert (found.stated.step, found.stated.left, found.step) == (6, 3, 3)


def test_a_multiple_that_only_the_notes_state(tmp_path: Path) -> None:
    path = tmp_path / "notes.yaml"
    path.write_text(
        "title: Noted\nterms: US\nsizes: {table: women, for: [M]}\n"
        "gauge:\n  plain: {stitches: 4, rows: 4, over: 4 in}\n"
        'notes:\n  - "Multiple of 4 + 1, plus 1 for the foundation ch."\n'
        "pieces:\n  - name: Strip\n    shape: flat\n    rows: |\n"
        "      Row 1: Ch 38. Sc in 2nd ch from hook, *sk next 2 chs, 5 dc in next ch, sk next 2 chs, sc in next ch; "
        "rep from * across.\n",
        encoding="utf-8",
    )
    demo = check_file(path).checked
    assert demo is not None
    (found,) = compare_multiples(demo)
    assert isinstance(found, WrongMultiple)
    assert found.stated.where == "the notes"
    assert found.derived.words == "a multiple of 6 plus 2"
