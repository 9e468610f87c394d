"""Drawings and tables read back from what the templates make of them: outlines in inches, cells in both units."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from html import unescape
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

from jinja2 import Environment, FileSystemLoader

from gradegen.design.checked import Checked
from gradegen.write.drawing.schematic import find_schematics, piece_drawings
from gradegen.write.view.measures import measure_tables
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

SVG = "{http://www.w3.org/2000/svg}"
TEMPLATES = Path(__file__).resolve().parents[3] / "templates"
Point = tuple[float, float]
_ENV = Environment(loader=FileSystemLoader(TEMPLATES), autoescape=True, trim_blocks=True, lstrip_blocks=True)
_PAGE = _ENV.from_string(
    '{% from "parts.html" import drawing, measure_table with context %}'
    "{% for each in drawings %}{{ drawing(each) }}{% endfor %}"
    "{% for each in tables %}{{ measure_table(each) }}{% endfor %}"
)


@dataclass(frozen=True)
class Drawn:
    """One drawing as read: its title, its caption, outlines by size and dimension lines by letter, in inches."""

    title: str
    caption: str
    outlines: dict[str, list[Point]]
    lines: dict[str, list[list[Point]]]
    words: list[str]


def printing_of(checked: Checked, *names: str) -> Printing:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


def page(checked: Checked, printing: Printing) -> str:
    schematics = find_schematics(checked, printing)
    return _PAGE.render(
        drawings=piece_drawings(schematics, printing), tables=measure_tables(checked, printing, schematics)
    )


def read_drawings(html: str) -> list[Drawn]:
    return [_read(figure) for figure in re.findall(r"<figure.*?</figure>", html, re.S)]


def _read(figure: str) -> Drawn:
    root = ElementTree.fromstring(figure)
    svg = root.find(f"{SVG}svg")
    assert svg is not None
    paths = [(path.get("data-of", ""), points(path.get("d", ""))) for path in svg.iter(f"{SVG}path")]
    (name, bar) = next((of, line) for of, line in paths if re.fullmatch(r"scale \d+ in", of))
    scale = math.dist(bar[1], bar[2]) / int(name.split()[1])
    metric, line = next((of, line) for of, line in paths if re.fullmatch(r"scale \d+ cm", of))
    assert abs(math.dist(line[1], line[2]) / scale * 2.54 - int(metric.split()[1])) < 0.03  # both bars say the same
    inches = [(of, [(x / scale, y / scale) for x, y in line]) for of, line in paths]
    lines: dict[str, list[list[Point]]] = {}
    for of, line in inches:
        if of.startswith("measure "):
            lines.setdefault(of.removeprefix("measure "), []).append(line)
    title, caption = svg.find(f"{SVG}title"), root.find("figcaption")
    assert title is not None
    assert caption is not None
    outlines = {of.removeprefix("size "): line for of, line in inches if of.startswith("size ")}
    words = [word.text or "" for word in svg.iter(f"{SVG}text")]
    return Drawn(title.text or "", caption.text or "", outlines, lines, words)


def points(path: str) -> list[Point]:
    steps = re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", path)
    return [(float(x), float(y)) for x, y in steps]


def read_tables(html: str) -> list[tuple[list[str], list[tuple[str, str, list[str]]]]]:
    """For each table its heads, and its rows: letter, name, cells."""
    found = []
    for table in re.findall(r"<table.*?</table>", html, re.S):
        heads = [_text(each) for each in re.findall(r'<th scope="col">(.*?)</th>', table, re.S)]
        rows = []
        for row in re.findall(r"<tr.*?</tr>", table.split("<tbody>")[1], re.S):
            head = re.search(r'<th scope="row">(?:<b>(\w)</b> )?(.*?)</th>', row, re.S)
            assert head is not None
            cells = [_text(each) for each in re.findall(r"<td>(.*?)</td>", row, re.S)]
            rows.append((head[1] or "", _text(head[2]), cells))
        found.append((heads, rows))
    return found


def _text(html: str) -> str:
    plain = unescape(re.sub(r"<span class=\"mark\">.*?</span>", "", html))
    return re.sub(r"<.*?>", "", plain).replace("\N{NO-BREAK SPACE}", " ").strip()


# measuring an outline, by its corners alone ------------------------------------------------------------------------


def bottom(line: Sequence[Point]) -> float:
    return _edge(line, max(y for _, y in line))


def top(line: Sequence[Point]) -> float:
    return _edge(line, min(y for _, y in line))


def _edge(line: Sequence[Point], level: float) -> float:
    xs = [x for x, y in line if abs(y - level) < 0.02]
    return max(xs) - min(xs)


def height(line: Sequence[Point]) -> float:
    ys = [y for _, y in line]
    return max(ys) - min(ys)


def widest(line: Sequence[Point]) -> float:
    xs = [x for x, _ in line]
    return max(xs) - min(xs)


def left_step(line: Sequence[Point]) -> tuple[Point, Point]:
    """The level piece of the outline that begins at its left end, where stitches are left unworked: both its ends."""
    left, low, high = min(x for x, _ in line), max(y for _, y in line), min(y for _, y in line)
    for start, end in zip(line, [*line[1:], line[0]], strict=True):
        level = abs(start[1] - end[1]) < 0.02 and low - 0.1 > start[1] > high + 0.1
        ends = sorted((start, end))
        if level and abs(ends[0][0] - left) < 0.02:
            return ends[0], ends[1]
    raise AssertionError("no step")


def length(line: Sequence[Point]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(line))
