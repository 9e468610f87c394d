"""Every number and name in the seams and the shaping of the demo garments, and every number a schedule prints, changed.

Each change is made alone, in a copy: a finding must name what was broken, by its row, its seam or its schedule, and in
the size it was broken in. Relations are broken in test_broken_relations.py, stated counts in test_raised_counts.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pytest

from gradegen.check.rules import RULES
from gradegen.check.run import check_pattern
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern, Piece
from gradegen.design.rows import Row
from gradegen.findings import Finding, Severity
from gradegen.grade import grade_sizes
from gradegen.grade.shaping.schedules import shape_rows
from gradegen.read.notation.rows import read_rows
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.pattern.file import read_pattern_and_table
from gradegen.work.piece.standing import Standing
from gradegen.work.rows import rows_in_order, work_rows

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
GARMENTS = ("gunwale-pullover", "limpet-pullover", "slipway-cardigan")
SEAM_RULES = {
    "side-seams-differ", "shoulders-differ", "sleeve-does-not-fit-armhole", "back-width-does-not-add-up",
    "edges-differ", "raglan-lines-differ", "underarm-not-balanced", "pick-up-unlikely", "border-off-multiple",
}  # fmt: skip
SEAMS = tuple(rule for rule in RULES if rule.RULE.id in SEAM_RULES)


@dataclass(frozen=True)
class Demo:
    """A garment as it is, with where every piece begins."""

    text: str
    pattern: Pattern
    shaped: Pattern
    sizes: tuple[GradedSize, ...]
    checked: Checked
    begun: dict[str, list[Standing]]


@cache
def demo(name: str) -> Demo:
    path = PATTERNS / f"{name}.yaml"
    both, _ = read_pattern_and_table(path)
    assert both is not None
    pattern, table = both
    sizes, _ = grade_sizes(pattern, table)
    shaped, _ = shape_rows(pattern, sizes)
    worked, found = work_rows(shaped, sizes)
    assert not [one for one in found if one.severity is Severity.ERROR]
    checked = Checked(shaped, table, sizes, worked, (), 0, 0, 0)
    begun, standings = {}, []
    for piece in shaped.pieces:
        begun[piece.name.text] = list(standings)
        order = rows_in_order(shaped, piece, sizes, standings)
        for row in piece.rows:
            order.work(row)
        standings = order.piece.standings
    return Demo(path.read_text("utf-8"), pattern, shaped, sizes, checked, begun)


def faults_of_piece(name: str, pattern: Pattern, piece: Piece) -> list[Finding]:
    """What is wrong with one piece, worked on what those before it leave."""
    whole = demo(name)
    order = rows_in_order(pattern, piece, whole.sizes, whole.begun[piece.name.text])
    found = [one for row in piece.rows for worked in order.work(row) for one in worked.findings]
    return [one for one in (*found, *order.findings) if one.severity is Severity.ERROR]


# ---- printed schedules ----------------------------------------------------------------------------------------------

NUMBERS = re.compile(r"\d+(?:st|nd|rd|th)?\b")
LIST = re.compile(r"\d+(?:st|nd|rd|th)? \([\d, stndrh]+\)|\d+(?:st|nd|rd|th)?\b")
RATE = re.compile(rf"every ({LIST.pattern}) (?:row|rnd) ({LIST.pattern}) times")


def one_more(number: str) -> str:
    """`12` to `13`, `2nd` to `3rd`."""
    value = int(re.sub(r"\D", "", number)) + 1
    if number.isdigit():
        return str(value)
    last = "th" if value % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(value % 10, "th")
    return f"{value}{last}"


def values(listed: str) -> list[str]:
    return NUMBERS.findall(listed)


def printed(row: Row) -> list[tuple[int, int | None]]:
    """Where each number of a schedule's words stands, and whose size it is; intervals that nobody works are out."""
    found = []
    for sentence in row.sentences:
        words = row.text[sentence.start : sentence.end]
        idle = set()
        for rate in RATE.finditer(words):
            every, times = values(rate[1]), values(rate[2])
            for at, spot in enumerate(NUMBERS.finditer(words, rate.start(1), rate.end(1))):
                if len(every) == len(times) and times[at] == "0":
                    idle.add(spot.start())
        for listed in LIST.finditer(words):
            inside = list(NUMBERS.finditer(words, listed.start(), listed.end()))
            for at, spot in enumerate(inside):
                if spot.start() not in idle:
                    found.append((sentence.start + spot.start(), at if len(inside) > 1 else None))
    return found


def with_words(name: str, piece: Piece, row: Row, at: int) -> Piece:
    """The piece with one number of one row's words raised, read again from its text."""
    number = NUMBERS.match(row.text, at)
    assert number is not None
    changed = row.text[:at] + one_more(number[0]) + row.text[number.end() :]
    whole = demo(name)
    counts = frozenset(count for one in whole.pattern.counts for count in (one, f"{one} chain"))
    names = RowNames("US", tuple(size.name for size in whole.sizes), {}, counts, frozenset(whole.pattern.measures))
    text = replace(piece.written, text=changed, anchors=((0, row.place.line, row.place.column),))
    (again,), findings = read_rows(text, names)
    assert not findings
    return replace(piece, rows=tuple(again if one is row else one for one in piece.rows))


SCHEDULED = [
    (name, at, where)
    for name in GARMENTS
    for at, piece in enumerate(demo(name).shaped.pieces)
    for where, row in enumerate(piece.rows)
    if row.sentences
]


@pytest.mark.parametrize(("name", "at", "where"), SCHEDULED)
def test_every_number_that_a_schedule_prints(name: str, at: int, where: int) -> None:
    piece = demo(name).shaped.pieces[at]
    row, sizes = piece.rows[where], demo(name).sizes
    spots = printed(row)
    assert len(spots) >= len(sizes)
    for spot, size in spots:
        faults = faults_of_piece(name, demo(name).shaped, with_words(name, piece, row, spot))
        here = [one for one in faults if one.place.line <= row.place.end_line and one.place.line >= row.place.line]
        words = row.text[max(0, spot - 20) : spot + 12]
        assert here, (name, words)
        assert size is None or {one.size for one in here} == {sizes[size].name}, (name, words, size)


def test_no_number_is_forgotten() -> None:
    """Five schedules of the cardigan, one of the raglan, two of the yoke; several numbers in every size."""
    assert [name for name, _, _ in SCHEDULED] == [GARMENTS[0], *[GARMENTS[1]] * 2, *[GARMENTS[2]] * 5]
    assert sum(len(printed(demo(name).shaped.pieces[at].rows[where])) for name, at, where in SCHEDULED) > 250


# ---- the file's own numbers and names -------------------------------------------------------------------------------

TOKEN = re.compile(r"(?<![\w-])(?:\d+|[a-z][a-z ]*[a-z])(?![\w -]*:)")
KEYS = {"one end", "both ends", "one interval", "one row", "armhole edge", "neck edge", "to", "for"}
OF_MINE = re.compile(r"[:\[=+\-*/(,] *$|\bfor $|\bto $")  # what stands before a number or a name of a sum


def block(name: str, key: str) -> tuple[int, int]:
    text = demo(name).text
    start = text.index(f"\n{key}:\n") + len(key) + 3
    end = next((found.start() for found in re.finditer(r"^\S", text[start:], re.MULTILINE)), len(text) - start)
    return start, start + end


def changes(name: str, key: str) -> Iterator[tuple[int, str, str]]:
    """(line, what is changed, the whole text with it): a name with 12 more, a number with one more.

    Given rates are left alone: another rate is another design, and the words that are printed change with it. So is how
    many seams are sewn, which only changes the yarn.
    """
    text = demo(name).text
    start, end = block(name, key)
    for found in TOKEN.finditer(text, start, end):
        line = text.rfind("\n", 0, found.start()) + 1
        if found[0] in KEYS or text[line : found.start()].lstrip().startswith("#"):
            continue
        if not OF_MINE.search(text[line : found.start()]) or re.search(
            r"(row: |rates: \[|sewn: )$", text[line : found.start()]
        ):
            continue
        more = one_more(found[0]) if found[0].isdigit() else f"({found[0]} + 12)"
        yield text.count("\n", 0, found.start()) + 1, found[0], text[: found.start()] + more + text[found.end() :]


def read_again(folder: Path, name: str, text: str) -> Pattern | None:
    for beside in PATTERNS.glob("*-sizes.yaml"):
        (folder / beside.name).write_text(beside.read_text("utf-8"), "utf-8")
    (folder / f"{name}.yaml").write_text(re.sub(r"(?ms)^pictures:\n(?:[ #].*?\n|\n)*", "", text), "utf-8")
    both, _ = read_pattern_and_table(folder / f"{name}.yaml")
    return both[0] if both else None


@pytest.mark.parametrize("name", GARMENTS)
def test_every_number_and_name_of_the_seams(name: str, tmp_path: Path) -> None:
    tried = list(changes(name, "seams"))
    assert len(tried) >= (30 if name == "slipway-cardigan" else 6)
    for line, what, text in tried:
        pattern = read_again(tmp_path, name, text)
        assert pattern is not None, (line, what)
        copy = replace(demo(name).checked, pattern=replace(demo(name).shaped, seams=pattern.seams))
        found = [one for one in check_pattern(copy, SEAMS) if one.severity is Severity.ERROR]
        assert line in {one.place.line for one in found}, (name, line, what)


@pytest.mark.parametrize("name", GARMENTS)
def test_every_number_and_name_of_the_shaping(name: str, tmp_path: Path) -> None:
    tried = list(changes(name, "shaping"))
    assert len(tried) >= 5
    for line, what, text in tried:
        pattern = read_again(tmp_path, name, text)
        assert pattern is not None, (line, what)
        shaped, found = shape_rows(pattern, demo(name).sizes)
        schedule = next(key for key, rule in pattern.shaping.items() if rule.place.line == line)
        errors = [one for one in found if one.severity is Severity.ERROR and one.place.line == line]
        for before, piece in zip(demo(name).pattern.pieces, shaped.pieces, strict=True):
            if before.written is not None and f"{{{schedule}}}" in before.written.text:
                rows = {row.place.line for row in piece.rows if any(s.schedule == schedule for s in row.sentences)}
                errors += [one for one in faults_of_piece(name, shaped, piece) if one.place.line in rows]
        seams = check_pattern(replace(demo(name).checked, pattern=shaped), SEAMS)
        lines = text.splitlines()
        errors += [one for one in seams if schedule in lines[one.place.line - 1]]
        assert errors, (name, line, what)
