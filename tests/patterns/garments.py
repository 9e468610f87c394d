"""What the tests of the demo garments share: counts and shaping as the commands print them, worked as lists.

Nothing of gradegen is imported here; its numbers come from the command line, so that the sums are a second opinion.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from typing import Any

from patterns.by_hand import PATTERNS, Edge, label_of, read_yaml, rows_of, value_of


def _run(*words: str) -> str:
    command = [sys.executable, "-m", "gradegen", *words]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


@cache
def graded(name: str) -> dict[str, Any]:
    """Sizes, counts and measures, as `gradegen grade --json` prints them."""
    return json.loads(_run("grade", str(PATTERNS / f"{name}.yaml"), "--json"))


def numbers(name: str, size: str) -> dict[str, int]:
    """Every count of one size."""
    answer = graded(name)
    at = answer["sizes"].index(size)
    return {count: values[at]["count"] for count, values in answer["counts"].items()}


@cache
def passage(name: str, row: str) -> str:
    """A row with its shaping written out for all sizes, as `gradegen explain` prints it; `row`: how its line begins."""
    lines = (PATTERNS / f"{name}.yaml").read_text("utf-8").splitlines()
    (at,) = [i for i, line in enumerate(lines, 1) if line.strip().startswith(row)]
    text = _run("explain", f"{PATTERNS / name}.yaml:{at}", "--size", graded(name)["sizes"][0])
    return " ".join(text.split("\n\n")[0].split("\n", 1)[1].split())


def of_size(text: str, at: int, sizes: int) -> str:
    """`8th (7th, 6th) rnd 2 (3, 1) times` with the values of one size; remarks on sizes that skip it are dropped."""
    text = re.sub(r" \([^()]*: skip this part\)", "", text)

    def pick(found: re.Match[str]) -> str:
        values = [found[1], *re.split(r", ", found[2])]
        assert len(values) == sizes, found[0]
        return values[at]

    return re.sub(r"(\d+\w*) \((\d+\w*(?:, \d+\w*)+)\)", pick, text)


def shaped(text: str, edge: list[str], stitch: str) -> Iterator[list[str]]:
    """Every row of a passage of one size as a list of stitches.

    `leave 6 sts unworked at each end of next row, then dec 1 st at neck edge of every 4th row 3 times, then every other
    row twice, then work even for 2 rows`. A row at both ends changes both, a row at one edge that end alone.
    """
    sign, ends = -1, 2
    for part in re.sub(r"\. \(.*$", "", text).split(", then "):
        low = part.lower()
        if found := re.search(r"leave (\d+) sts? unworked at (each end|\w+ edge)", low):
            left = int(found[1])
            edge = edge[left:-left] if found[2] == "each end" else edge[left:]
            yield edge
            continue
        if found := re.search(r"work even for (\d+) (?:rows?|rnds?)", low):
            for _ in range(int(found[1])):
                yield edge
            continue
        if found := re.search(r"(dec|inc) 1 st at (each end|\w+ edge)", low):
            sign, ends = (-1 if found[1] == "dec" else 1), (2 if found[2] == "each end" else 1)
        elif "dec rnd" in low:
            sign, ends = -1, 2
        every, times = _rate(low)
        for _ in range(times):
            for _plain in range(every - 1):
                yield edge
            edge = _changed(edge, sign, ends, stitch)
            yield edge


def _rate(part: str) -> tuple[int, int]:
    """`every 4th row 6 times`, `every row 4 times`, `every other row once`."""
    found = re.search(r"every (?:(\d+)(?:st|nd|rd|th) |(other) )?(?:row|rnd) (?:(\d+) times|once)", part)
    assert found, part
    return int(found[1] or (2 if found[2] else 1)), int(found[3] or 1)


def _changed(edge: list[str], sign: int, ends: int, stitch: str) -> list[str]:
    """One stitch more or fewer at the beginning, and at the end too where both ends change."""
    if sign > 0:
        return [stitch, *edge, *([stitch] if ends == 2 else [])]
    assert len(edge) >= 2 * ends, "no stitches are left to work together"
    return edge[1:-1] if ends == 2 else edge[1:]


def even(edge: list[str], stitch: str) -> list[str]:
    """One stitch in each."""
    work = Edge(edge)
    while not work.is_done:
        work.work(work.places[work.at], stitch)
    return work.close()


def rows_by_piece(pattern: dict[str, Any]) -> dict[str, dict[str, str]]:
    """The rows of every piece by their labels; rows that share one are numbered on."""
    pieces: dict[str, dict[str, str]] = {}
    for piece in pattern["pieces"]:
        rows = pieces[piece["name"]] = {}
        for row in rows_of({"pieces": [piece]}):
            label, again = label_of(row), 2
            while label in rows:
                label, again = f"{label_of(row)} ({again})", again + 1
            rows[label] = row
    return pieces


def middle(cell: object) -> Fraction:
    """The middle of a band of a size table, or its one number."""
    ends = cell if isinstance(cell, list) else [cell, cell]
    return sum((Fraction(str(end)) for end in ends), Fraction(0)) / 2


def ribbed(before: list[str]) -> list[str]:
    """A front post and a back post dc by turns, around every stitch."""
    edge = Edge(before)
    while not edge.is_done:
        edge.work(edge.places[edge.at], "FPdc")
        edge.work(edge.places[edge.at], "BPdc")
    return edge.close()


def divided(before: list[str], n: dict[str, int], between: int = 0) -> list[str]:
    """Half the back, a chain over a sleeve, the front, a chain over a sleeve, half the back; `between`: spaces."""
    edge = Edge(before)
    for part in (n["back"] // 2, n["back"], n["back"] // 2):
        for _ in range(part):
            edge.work("sc", "sc")
        if not edge.is_done:
            edge.make(*["ch"] * n["underarm"])
            edge.take("ch-1", between)
            edge.take("sc", n["sleeve part"])
            edge.take("ch-1", between)
    return edge.close()


def sleeve_beginning(before: list[str], n: dict[str, int], between: int = 0) -> list[list[str]]:
    """What each sleeve meets: half an underarm chain, what the division left of the yoke, the other half."""
    edge, sleeves = Edge(before), []
    for part in (n["back"] // 2, n["back"]):
        edge.take("sc", part)
        start = edge.at
        for kind, times in (("ch-1", between), ("sc", n["sleeve part"]), ("ch-1", between)):
            edge.take(kind, times)
        half = ["ch"] * (n["underarm"] // 2)
        sleeves.append([*half, *edge.places[start : edge.at], *half])
    return sleeves


def relations_hold(name: str, size: str) -> list[str]:
    """The relations of a pattern that do not hold with the counts of one size."""
    counts, wrong = numbers(name, size), []
    for relation in read_yaml(f"{name}.yaml")["relations"]:
        left, sign, right = re.split(r" (<=|>=|=) ", relation)
        sides = value_of(left, counts), value_of(right, counts)
        holds = {"=": sides[0] == sides[1], "<=": sides[0] <= sides[1], ">=": sides[0] >= sides[1]}
        if not holds[sign]:
            wrong.append(relation)
    return wrong
