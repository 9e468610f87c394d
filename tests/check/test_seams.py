"""Seams: every number of a small garment changed in turn, and the finding that names the seam it breaks."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen.findings import Finding, Severity
from gradegen.pipeline import Outcome, check_file

GARMENT = """
title: Seam Example
version: "1.0"
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
sizes: {table: women, for: [S, M, L], by: bust}
gauge:
  sc: {stitches: 16, rows: 20, over: 4 in, hook: 5 mm, state: blocked}
measures:
  half: "[18, 20, 22] in"
  cross: "[14, 15, 16] in"
  neck width: "[7, 7.5, 8] in"
  depth: "[7, 7.5, 8] in"
counts:
  width: {across: half, gauge: sc, parity: even}
  top width: {across: cross, gauge: sc, multiple: 4}
  neck sts: {across: neck width, gauge: sc, multiple: 4, plus: 2}
  shoulder: {sum: (top width - neck sts) / 2}
  armhole rows: {along: depth, gauge: sc, parity: even}
  top: {across: 2 * depth, gauge: sc, parity: even}
  band: {sum: neck sts + 66, multiple: 4, plus: 2}
shaping:
  armhole: {from: width, to: top width, over: armhole rows}
pieces:
  - name: Back
    shape: flat
    edges: {side: rows, shoulder: shoulder, neck: neck sts, across: end}
    rows: |
      Row 1: Ch {width + 1}. Sc in 2nd ch from hook, sc in each ch across. ({width} sc)
      Rows 2-51: Ch 1 (does not count as a st), turn, sc in each st across. ({width} sc)
      Rows 52-{51 + armhole rows}: {armhole}. ({top width} sc)
  - name: Front
    shape: flat
    edges: {side: rows, shoulder: shoulder, armhole: 2 * armhole rows}
    rows: |
      Row 1: Ch {width + 1}. Sc in 2nd ch from hook, sc in each ch across. ({width} sc)
      Rows 2-51: Ch 1 (does not count as a st), turn, sc in each st across. ({width} sc)
      Rows 52-{51 + armhole rows}: {armhole}. ({top width} sc)
  - name: Sleeve
    shape: flat
    edges: {top: end}
    rows: |
      Row 1: Ch {top + 1}. Sc in 2nd ch from hook, sc in each ch across. ({top} sc)
      Rows 2-40: Ch 1 (does not count as a st), turn, sc in each st across. ({top} sc)
  - name: Neckband
    shape: flat
    rows: |
      Row 1: Ch {band + 1}. Sc in 2nd ch from hook, sc in each ch across. ({band} sc)
seams:
  - front shoulder to back shoulder
  - side: front side = back side
  - sleeve top = front armhole
  - back width: back across = back neck + 2 * back shoulder
  - neck band: {pick up: neckband start, along: 88, ratio: 3 for 4, besides: neck sts, multiple: 4, plus: 2}
"""
YOKE = """
title: Yoke Example
version: "1.0"
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
sizes: {table: women, for: [S, M, L], by: bust}
gauge:
  sc: {stitches: 16, rows: 20, over: 4 in, hook: 5 mm, state: blocked}
counts:
  neck: {sum: "[60, 64, 68]"}
  rounds: {sum: "[12, 13, 14]"}
  yoke: {sum: neck + 8 * rounds}
  sleeve part: {sum: "[28, 30, 34]"}
  underarm: {sum: "[6, 8, 10]"}
  half: {sum: yoke / 2 - sleeve part}
  body: {sum: 2 * half + 2 * underarm}
  sleeve: {sum: sleeve part + underarm}
pieces:
  - name: Yoke
    shape: joined rounds
    rows: |
      Rnd 1: Ch {neck}, join to form ring, ch 1, sc in each ch around, join. ({neck} sc)
      Shaping: Inc 8 sts evenly every other rnd {rounds} times. ({yoke} sc)
  - name: Body
    shape: joined rounds
    rows: |
      Rnd 1: Ch {body}, join to form ring, ch 1, sc in each ch around, join. ({body} sc)
  - name: Sleeve
    shape: joined rounds
    rows: |
      Rnd 1: Ch {sleeve}, join to form ring, ch 1, sc in each ch around, join. ({sleeve} sc)
seams:
  - division: {of: yoke end, body parts: [half, half], sleeve part: sleeve part, underarm: underarm, body: body start,
      sleeve: sleeve start}
"""


def check(tmp_path: Path, text: str) -> Outcome:
    path = tmp_path / "garment.yaml"
    path.write_text(text, encoding="utf-8")
    return check_file(path)


def wrong(outcome: Outcome) -> set[tuple[str, str | None]]:
    return {(finding.rule, finding.size) for finding in outcome.findings if finding.severity is Severity.ERROR}


def changed(text: str, old: str, new: str) -> str:
    assert old in text
    return text.replace(old, new, 1)


@pytest.mark.parametrize("text", [GARMENT, YOKE], ids=["pieces", "yoke"])
def test_the_sound_garment_is_sound(tmp_path: Path, text: str) -> None:
    outcome = check(tmp_path, text)
    assert wrong(outcome) == set()
    assert not [finding for finding in outcome.findings if finding.rule == "seam-not-checked"]
    assert outcome.proved.proved > 0
    assert outcome.proved.wrong == outcome.proved.not_checked == 0


ALL = ("S", "M", "L")


@pytest.mark.parametrize(
    ("old", "new", "rule", "sizes"),
    [
        ("Front\n    shape: flat\n    edges: {side: rows", "Front\n    shape: flat\n    edges: {side: rows - 2",
         "side-seams-differ", ALL),
        ("armhole: 2 * armhole rows}", 'armhole: "[2, 2, 1] * armhole rows"}', "sleeve-does-not-fit-armhole", ("L",)),
        ("shoulder: shoulder, neck", "shoulder: shoulder - 1, neck", "shoulders-differ", ALL),
        ("neck: neck sts, across", 'neck: "neck sts + [0, 2, 0]", across', "back-width-does-not-add-up", ("M",)),
        ("along: 88", "along: 120", "pick-up-unlikely", ALL),
        ("neckband start, along", '"neckband start + [0, 0, 1]", along', "border-off-multiple", ("L",)),
    ],
)  # fmt: skip
def test_breaking_one_number_names_the_seam(
    tmp_path: Path, old: str, new: str, rule: str, sizes: tuple[str, ...]
) -> None:
    found = wrong(check(tmp_path, changed(GARMENT, old, new)))
    assert {(rule, size) for size in sizes} <= found
    assert {size for name, size in found if name == rule} == set(sizes)


def of_rule(outcome: Outcome, rule: str) -> list[Finding]:
    return [finding for finding in outcome.findings if finding.rule == rule]


def test_rows_worked_too_few_break_the_side_seam_with_both_numbers(tmp_path: Path) -> None:
    first, second = GARMENT.split("  - name: Front", 1)
    rows = second.replace("Rows 2-51", "Rows 2-49", 1).replace("Rows 52-{51 +", "Rows 50-{49 +", 1)
    (finding, *_) = of_rule(check(tmp_path, first + "  - name: Front" + rows), "side-seams-differ")
    assert (finding.size, finding.expected, finding.found) == ("S", "85 rows", "87 rows")
    assert (
        finding.place.line
        == (first + "  - name: Front" + rows).split("\n").index("  - side: front side = back side") + 1
    )


def test_stitches_meet_rows_by_their_length(tmp_path: Path) -> None:
    text = changed(GARMENT, "top: {across: 2 * depth", "top: {across: 2 * depth + 2 in")
    found = of_rule(check(tmp_path, text), "sleeve-does-not-fit-armhole")
    assert {finding.size for finding in found} == set(ALL)
    assert (found[0].expected, found[0].found) == ("16 in", "14.4 in")
    eased = changed(text, "sleeve top = front armhole", "sleeve: {join: sleeve top = front armhole, within: 2 in}")
    assert not of_rule(check(tmp_path, eased), "sleeve-does-not-fit-armhole")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("half: {sum: yoke / 2 - sleeve part}", "half: {sum: yoke / 2 - sleeve part - 1}"),
        ("body: {sum: 2 * half + 2 * underarm}", "body: {sum: 2 * half + underarm}"),
        ("sleeve: {sum: sleeve part + underarm}", "sleeve: {sum: sleeve part}"),
        ('underarm: {sum: "[6, 8, 10]"}', 'underarm: {sum: "[6, 8, 10]"}\n  extra: {sum: 2 * underarm}'),
    ],
)
def test_an_unbalanced_division(tmp_path: Path, old: str, new: str) -> None:
    text = changed(YOKE, old, new)
    if "extra" in new:
        text = changed(text, "underarm: underarm,", "underarm: extra,")
    assert {("underarm-not-balanced", size) for size in ALL} <= wrong(check(tmp_path, text))


def test_edges_nobody_knows_and_rows_nobody_could_follow(tmp_path: Path) -> None:
    unknown = check(tmp_path, changed(GARMENT, "front shoulder to", "front sholder to"))
    (finding,) = of_rule(unknown, "seam-edge-unknown")
    assert finding.hint == "Did you mean front shoulder?"
    lost = check(tmp_path, changed(GARMENT, "Rows 2-51: Ch 1 (does", "Rows 2-51: As shown in the photo, ch 1 (does"))
    assert {finding.rule for finding in of_rule(lost, "seam-not-checked")} == {"seam-not-checked"}
    assert ("side-seams-differ", "S") not in wrong(lost)


@pytest.mark.parametrize(
    ("seams", "rule"),
    [
        ("  - front shoulder and back shoulder\n", "seam-unreadable"),
        ("  - band: {pick up: neck sts, along: 88}\n", "seam-incomplete"),
        ("  - band: {pick up: neck sts, along: 88, ratio: some}\n", "ratio-unreadable"),
        ("  - yoke: {of: neck, body parts: [neck]}\n", "seam-incomplete"),
        ("  - side: {jion: front side = back side}\n", "unknown-key"),
    ],
)
def test_seams_that_cannot_be_read(tmp_path: Path, seams: str, rule: str) -> None:
    text = GARMENT[: GARMENT.index("seams:\n") + 7] + seams
    assert rule in {name for name, _ in wrong(check(tmp_path, text))}
