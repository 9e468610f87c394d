"""How garments grow: published schematics and size tables pass, known failures are found.

Published: Brooklyn Tweed schematics Mesic and Alary; H. Fettig, Sandy; K. TenDyke, a top-down raglan; Morris & Sons,
Pope Knits Heaven Cardigan. Growth from the smallest to the largest size, as (chest, neck, armhole, length).
"""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.check.garment import part_of
from gradegen.check.rules import part_scaled_up
from gradegen.pipeline import Outcome, check_file

GROWTH = {
    "arm-does-not-keep-up", "arm-tighter-than-planned", "cross-back-jumps", "ease-not-steady", "neck-or-armhole-jumps",
    "neck-too-small-for-head", "part-not-graded", "part-scaled-up", "shoulder-drops",
}  # fmt: skip
PATTERN = """\
title: Growing Garment
version: "1.0"
designer: {{name: Demo House, help: help@example.org, year: 2026}}
terms: US
sizes: {{table: {table}, for: all, by: {by}}}
gauge:
  plain: {{stitches: 16, rows: 18, over: 4 in, hook: 5 mm, state: blocked}}
measures:
  around: {by} + 3 in
{measures}
counts:
  body: {{across: around}}
notes:
  - {note}
pieces:
  - name: Body
    shape: flat
    width: around
    rows: |
      Row 1 (RS): Ch {{body + 1}}. Sc in 2nd ch from hook and in each ch across, turn. ({{body}} sc)
"""
Garment = Callable[..., Outcome]


@pytest.fixture
def garment(tmp_path: Path) -> Garment:
    def make(table: str = "women", note: str = "Worked flat.", **measures: str) -> Outcome:
        path = tmp_path / "garment.yaml"
        lines = "\n".join(f'  {name.replace("_", " ")}: "{words}"' for name, words in measures.items())
        by = "bust" if table == "women" else "chest"
        path.write_text(PATTERN.format(table=table, by=by, measures=lines, note=note), encoding="utf-8")
        return check_file(path)

    return make


def growth(outcome: Outcome) -> list[tuple[str, str | None]]:
    return [(finding.rule, finding.size) for finding in outcome.findings if finding.rule in GROWTH]


PUBLISHED = [
    ("neck around", "36 76", "18 22.75"), ("neck around", "34.25 74.25", "18.25 25.25"),
    ("neck width", "37.75 60.75", "9.5 11"), ("armhole", "36 76", "10.5 13"), ("armhole", "34.25 74.25", "7.5 10.5"),
    ("armhole", "37.75 60.75", "10 13"), ("armhole", "85 163", "20 29"), ("length", "85 163", "31 39"),
    ("length", "100 211", "100 120"), ("length", "100 217", "100 122"), ("length", "100 161", "12.5 12.5"),
]  # fmt: skip


@pytest.mark.parametrize(("part", "chest", "own"), PUBLISHED)
def test_published_schematics_are_within_the_bands(part, chest, own):
    (small, large), (less, more) = ([Fraction(number) for number in ends.split()] for ends in (chest, own))
    assert more / less - 1 <= part_scaled_up.MOST[part] * (large / small - 1)


def test_a_neck_kept_at_four_tenths_of_the_chest_is_not():
    """76 in then gives 30 in around, where 22 3/4 was printed."""
    assert Fraction(76, 36) - 1 > part_scaled_up.MOST["neck around"] * (Fraction(76, 36) - 1)


@pytest.mark.parametrize("table", ["women", "men", "child", "baby"])
def test_the_size_tables_own_columns_grow_as_bodies_do(garment, table):
    length = "back hip length" if table == "men" else "back waist length"
    found = garment(
        table, upper_arm="body upper arm + 2 in", cross_back_width="cross back + 0.5 in",
        armhole_depth="body armhole depth + 0.5 in", body_length=length,
    )  # fmt: skip
    assert growth(found) == []


@pytest.mark.parametrize(
    ("name", "words", "rule", "sizes"),
    [
        ("neck width", "0.2 * around", "part-scaled-up", [None]),
        ("neck around", "0.4 * around", "part-scaled-up", [None]),
        ("neck width", "[6, 6.25, 6.5, 6.75, 7, 7.6, 7.6, 7.75, 8] in", "neck-or-armhole-jumps", ["2X"]),
        ("yoke depth", "[7, 7.5, 8, 8.5, 9, 9.5, 11, 11, 11.5] in", "neck-or-armhole-jumps", ["3X"]),
        ("armhole depth", "[6, 7, 8, 9, 10, 11, 12, 13, 14] in", "part-scaled-up", [None]),
        ("body length", "0.5 * bust", "part-scaled-up", [None]),
        ("cross back", "[14, 15, 16, 17, 18, 18, 19, 19, 19] in", "cross-back-jumps", ["3X"]),
        ("cross back", "0.38 * bust", "part-scaled-up", [None]),
        ("upper arm", "[11, 11.5, 12, 13, 14, 15, 15.5, 16, 16.5] in", "arm-does-not-keep-up", ["5X"]),
        ("biceps", "[11, 11.5, 12, 13, 14, 15, 16, 17, 18] in", "arm-tighter-than-planned", ["2X", "3X", "4X", "5X"]),
        ("neck around", "[16, 16, 17, 18, 18, 19, 19, 20, 20] in", "neck-too-small-for-head", ["XS", "S"]),
        ("pocket width", "5 in", "part-not-graded", [None]),
    ],
)
def test_known_failures(garment, name, words, rule, sizes):
    found = garment(**{name.replace(" ", "_"): words})
    assert [size for told, size in growth(found) if told == rule] == sizes
    finding = next(finding for finding in found.findings if finding.rule == rule)
    assert finding.severity == "warning"
    assert finding.place.line == 10


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("neck width", "[6.5, 6.5, 6.5, 7, 7, 7, 7.25, 7.25, 7.25] in"),
        ("yoke depth", "[7, 7, 7.5, 7.5, 8.5, 8.5, 9, 9, 9] in"),
        ("body length", "[22, 22, 22, 23, 23, 23, 24, 24, 24] in"),
        ("front neck depth", "0.2 * around"), ("sleeve length", "0.4 * around"), ("neck edge", "0.5 * around"),
    ],
)  # fmt: skip
def test_plateaus_and_other_parts_are_no_fault(garment, name, words):
    assert growth(garment(**{name.replace(" ", "_"): words})) == []


def test_half_the_chest_for_a_back_drops_the_shoulders_of_large_sizes_first(garment):
    """Bust 39, half 19.5, cross back 14.5: 5 in of excess (Interweave, Armholes)."""
    told = growth(garment(cross_back="bust / 2"))
    assert ("shoulder-drops", "5X") in told
    assert ("shoulder-drops", "XS") not in told
    assert "shoulder-drops" not in {
        rule for rule, _ in growth(garment(note="It has drop shoulders.", cross_back="bust / 2"))
    }


def test_a_neck_that_opens_may_be_small(garment):
    assert growth(garment(note="Sew six buttons to the left front.", neck_around="15 in")) == []


def test_children_may_grow_in_length_as_in_girth(garment):
    assert growth(garment("child", body_length="0.5 * chest")) == []


def test_a_childs_small_neck_is_told(garment):
    assert {rule for rule, _ in growth(garment("child", neck_around="13 in"))} == {"neck-too-small-for-head"}


def test_ease_that_dwindles(garment, tmp_path):
    """A free published sheet: from 3-5 in to -6-0 in over its sizes."""
    found = garment()
    path = tmp_path / "dwindles.yaml"
    text = (tmp_path / "garment.yaml").read_text("utf-8")
    path.write_text(text.replace("bust + 3 in", "bust + [5, 5, 4, 4, 3, 3, 1, -1, -3] in"), encoding="utf-8")
    assert growth(found) == []
    assert {size for rule, size in growth(check_file(path)) if rule == "ease-not-steady"} == {"4X", "5X"}


@pytest.mark.parametrize("words", ["0.12 * bust + bust", "bust + 10 in", "bust - 1 in"])
def test_steady_ease_in_inches_or_in_percent(garment, tmp_path, words):
    garment()
    path = tmp_path / "garment.yaml"
    path.write_text(path.read_text("utf-8").replace("bust + 3 in", words), encoding="utf-8")
    assert growth(check_file(path)) == []


@pytest.mark.parametrize(
    ("name", "words", "part"),
    [
        ("Neckline", "7 in", None), ("neckline around", "20 in", "neck around"),
        ("neck opening", "7 in", "neck width"), ("neck opening", "20 in", "neck around"),
        ("cap top", "upper arm / 3", None), ("half sleeve", "(upper arm + 2 in) / 2", None),
        ("hem", "2 * cross back", None),
        ("sleeve", "max(upper arm + 2 in, 12 in)", "upper arm"), ("sleeve", "max(upper arm, upper arm / 2)", None),
        ("sleeve", "2 * upper arm - upper arm", "upper arm"), ("cuff", "0.5 * upper arm", None),
        ("around the neck", "20 in", "neck around"), ("arm", "upper arm + 2 in", "upper arm"),
        ("sleeve top", "body upper arm + 2 in", "upper arm"), ("raglan depth", "9 in", "armhole"),
        ("shoulder to shoulder", "15 in", "cross back"), ("length to underarm", "14 in", "length"),
        ("odd", "upper arm + cross back", None), ("half", "around / 2", None),
    ],
)  # fmt: skip
def test_which_part_a_measure_is(garment, name, words, part):
    checked = garment(**{name.replace(" ", "_"): words}).checked
    assert checked is not None
    taken = part_of(checked, checked.pattern.measures[name])
    assert (taken.part if taken else None) == part


@pytest.mark.parametrize("words", ["upper arm / 3", "cross back / 2", "0.5 * upper arm", "armhole depth / 4"])
def test_a_share_of_a_body_measure_is_no_part_of_that_name(garment, words):
    """A third of the arm is a sleeve cap, not a sleeve that grips: geometry."""
    assert growth(garment(cap_top=words)) == []


def test_a_finding_says_why_it_looks_at_a_measure(garment):
    found = garment(sleeve="body upper arm - 0.5 in", neck_width="0.2 * around").findings
    because = {finding.rule: finding.because or "" for finding in found if finding.rule in GROWTH}
    assert "upper arm with ease" in because["arm-tighter-than-planned"]
    assert "for its name" in because["part-scaled-up"]
