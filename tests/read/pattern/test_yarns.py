"""Yarns of a pattern file: put-ups in both units, evidence, amounts stated, times; and what goes wrong with them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.formula import Amount, PerSize
from gradegen.design.pattern import Pattern
from gradegen.read.pattern.file import read_pattern

HEAD = """title: Yarns
terms: {terms}
sizes: {{table: women, for: [S, M]}}
gauge:
  plain: {{stitches: 4, rows: 4, over: 4 in}}
pieces:
  - name: Square
    shape: flat
    rows: |
      Row 1: Ch 12. Sc in 2nd ch from hook, sc in each ch across.
"""


def read(tmp_path: Path, more: str, terms: str = "US") -> tuple[Pattern | None, list[str]]:
    path = tmp_path / "yarns.yaml"
    path.write_text(HEAD.format(terms=terms) + more, encoding="utf-8")
    pattern, findings = read_pattern(path)
    return pattern, [one.rule for one in findings]


def test_everything_a_yarn_can_say(tmp_path: Path) -> None:
    pattern, rules = read(
        tmp_path,
        """yarn:
  A:
    skein: 364 yd / 333 m / 7 oz / 198 g
    sample: {size: M, used: 168 g}
    testers: [{size: S, used: 150 g}, {size: M, used: 300 yd}]
    swatches:
      - {used: 9 g, stitches: {dc: 120, ch: 40}}
      - {used: 4 g, width: 6 in, height: 6 in}
    unravelled: {dc: 40 in / 20, sc: 5 cm}
    margin: 12.5
    price: 8.50 EUR
    besides: {seams: 3 yd, swatch: 12 g}
    tails: 6
    stated: {skeins: [2, 3], yards: [410, 700], metres: 400}
""",
    )
    assert rules == []
    assert pattern is not None
    (yarn,) = pattern.yarns
    assert (yarn.skein_length, yarn.length_also, yarn.skein_mass, yarn.mass_also) == tuple(
        Amount(Fraction(number), unit, yarn.place) for number, unit in ((364, "yd"), (333, "m"), (7, "oz"), (198, "g"))
    )
    assert [(one.what, one.size.text if one.size else None, one.used.unit) for one in yarn.weighed] == [
        ("tester", "S", "g"),
        ("tester", "M", "yd"),
        ("swatch", None, "g"),
        ("swatch", None, "g"),
    ]
    assert yarn.weighed[2].stitches == {"dc": 120, "ch": 40}
    assert set(yarn.unravelled) == {"dc", "sc"}
    assert yarn.margin == Fraction(25, 2)
    assert yarn.tails == 6
    assert yarn.stated is not None
    assert isinstance(yarn.stated.skeins, PerSize)
    assert isinstance(yarn.stated.metres, Amount)
    assert yarn.stated.grams is None


def test_the_stitches_of_a_whole_piece_may_be_written_down(tmp_path: Path) -> None:
    pattern, rules = read(
        tmp_path,
        """yarn:
  A:
    sample: {size: M, used: 168 g, stitches: {dc: 848, slip stitch: 12}}
    testers: [{size: S, used: 150 g, stitches: {dc: 700}}]
""",
    )
    assert rules == []
    assert pattern is not None
    (yarn,) = pattern.yarns
    assert yarn.sample_stitches == {"dc": 848, "sl st": 12}
    assert yarn.weighed[0].stitches == {"dc": 700}


def test_stitch_names_are_those_of_the_pattern_s_terms(tmp_path: Path) -> None:
    pattern, _ = read(tmp_path, "yarn:\n  A: {skein: 100 g, unravelled: {tr: 4 in, dc: 2 in}}\n", "UK")
    assert pattern is not None
    assert set(pattern.yarns[0].unravelled) == {"dc", "sc"}


def test_times(tmp_path: Path) -> None:
    pattern, rules = read(tmp_path, "timed: {size: M, hours: 9.5, per minute: {sc: 20}}\n")
    assert rules == []
    assert pattern is not None
    assert pattern.timed is not None
    assert (pattern.timed.hours, pattern.timed.per_minute) == (Fraction(19, 2), {"sc": 20})


@pytest.mark.parametrize(
    ("yarn", "rule"),
    [
        ("{skein: 100 g, stated: {skeins: [2, 3, 4]}}", "size-list-length"),
        ("{skein: 100 g, stated: {skeins: many}}", "wrong-kind"),
        ("{skein: 100 g, stated: {yards: [410, 3 in]}}", "wrong-kind"),
        ("{skein: 100 g, testers: [{size: Q, used: 150 g}]}", "unknown-size"),
        ("{skein: 100 g, swatches: [{used: 9 g}]}", "swatch-incomplete"),
        ("{skein: 100 g, swatches: [{used: 9 g, width: 6 in}]}", "swatch-incomplete"),
        ("{skein: 100 g, margin: 300}", "number-out-of-range"),
        ("{skein: 100 g, besides: {seams: 3}}", "unit-wrong"),
        ("{skein: 200 yd / 100 yd}", "unit-wrong"),
        ("{skein: 200 yd / 183 m / 90 ft / 100 g}", "unit-wrong"),
        ("{skein: 100 g, tails: -1}", "number-out-of-range"),
        ("{skein: 100 g, unravel: {dc: 3 in}}", "unknown-key"),
    ],
)
def test_what_goes_wrong(tmp_path: Path, yarn: str, rule: str) -> None:
    pattern, rules = read(tmp_path, f"yarn:\n  A: {yarn}\n")
    assert pattern is None
    assert rules == [rule]


def test_a_size_that_was_never_timed(tmp_path: Path) -> None:
    pattern, rules = read(tmp_path, "timed: {size: Q, hours: 9.5}\n")
    assert pattern is None
    assert rules == ["unknown-size"]
