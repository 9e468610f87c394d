"""What a chart is called, what it shows and how it is read, in words: for its legend, its key and for ears."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Terms
from gradegen.design.rows import Row, Work
from gradegen.findings import Place
from gradegen.grade.body.sums import names_in
from gradegen.trade.stitches import stitches
from gradegen.work.passage.passages import is_passage
from gradegen.write.chart.counts import SmallPiece
from gradegen.write.chart.draw import AgainMark, RowMark
from gradegen.write.chart.rows import ChartRow, ChartRows
from gradegen.write.view.materials import number_values
from gradegen.write.view.rows import row_view
from gradegen.write.words.phrases import Phrase, Printing, plain

_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_NBSP = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Legend:
    """What stands beside each row; rows that are worked again; and what each letter among these stands for."""

    marks: tuple[RowMark, ...]
    again: tuple[AgainMark, ...]
    letters: tuple[tuple[str, Phrase], ...]


def legend_of(chart: ChartRows, printing: Printing) -> Legend:
    """Numbers where a row has the same in all printed sizes; else letters, explained below the chart."""
    found: list[RowMark] = []
    letters: list[tuple[str, Phrase]] = []
    for row in chart.rows:
        if row.label is None or row.is_base:
            found.append(RowMark("", ""))
            continue
        label = row_view(row.label, {}, printing).label
        number = row_number(row.label, printing.sizes)
        if not number or (chart.is_round and not number.isdigit()):
            alike = next((letter for letter, other in letters if other == label), None)
            number = alike or _letter(letters)
            letters += [] if alike else [(number, label)]
        found.append(RowMark(number, words(label)))
    again = []
    for written, drawn in _again(chart).values():
        label = row_view(written, {}, printing).label
        names = [found[at].title for at in drawn]
        letters.append((_letter(letters), (*label, *plain(f": {_listed(names)} again"))))
        again.append(AgainMark(letters[-1][0], min(drawn), max(drawn)))
    return Legend(tuple(found), tuple(again), tuple(letters))


def _letter(letters: Sequence[object]) -> str:
    return _LETTERS[len(letters) % len(_LETTERS)]


def _again(chart: ChartRows) -> dict[Place, tuple[Row, list[int]]]:
    """Written rows that only repeat rows drawn already, with those."""
    rows: dict[Place, tuple[Row, list[int]]] = {}
    for at, row in enumerate(chart.rows):
        for again in row.again:
            rows.setdefault(again.place, (again, []))[1].append(at)
    return rows


def row_number(row: Row, sizes: Sequence[GradedSize]) -> str:
    """`5`, `10–14`, as the label has it where it is the same in all these sizes; else ""."""
    label = row.label
    if label.first is None or label.name or label.listed or label.rows is not None:
        return ""
    ends = [label.first] if label.last is None else [label.first, label.last]
    values = [number_values(end, sizes) for end in ends]
    if any(len(set(each)) != 1 for each in values):
        return ""
    shown = list(dict.fromkeys(each[0] for each in values))
    return "–".join(shown)


def how_to_read(chart: ChartRows, repeat: str) -> str:
    """Where a chart begins and which way it goes; `repeat`: the sentence on how one repeat is marked."""
    drawn = [row for row in chart.rows if not row.is_base]
    ahead = {row.ahead for row in drawn}
    if chart.is_round:
        way = (
            "against the clock"
            if ahead == {1}
            else "each round as its number of turns asks, the first against the clock"
        )
        start = "chain in the middle" if chart.is_oval else "middle"
        said = f"Read from the {start} outwards, {way}; each round begins at its number."
    elif len(ahead) == 1:
        way = "right to left" if ahead == {-1} else "left to right"
        what = "round" if any(row.label is not None and row.label.label.kind == "round" for row in drawn) else "row"
        said = f"Read from the bottom up, every {what} from {way}, as the arrows show."
    else:
        said = "Read from the bottom up, each row from its number on, as the arrows show."
    again = [thing.again for row in chart.rows for thing in row.things if thing.what == "base"]
    if again and all(again):
        said += " The dashed chains are the other side of an earlier piece's foundation."
    elif any(again) and not chart.is_oval:
        said += " The dashed chains are the same foundation met again, from its other side."
    if chart.rows[0].is_base and any(thing.name == "st" for thing in chart.rows[0].things):
        said += " The short lines below are the stitches that an earlier piece has left."
    return f"{said} {repeat}".strip()


def drawn_small(small: SmallPiece, printing: Printing) -> str:
    """Which piece is drawn: smaller than any size, or one size as it is."""
    own = small.size.numbers()
    used = {name.name for row in small.piece.rows for listed in row.lists if listed.formula
            for name in names_in(listed.formula)}  # fmt: skip
    alike = not used and not any(row.sizes or any(listed.values for listed in row.lists) for row in small.piece.rows)
    if any(is_passage(row) for row in small.piece.rows):
        said = "It shows how the shaping is worked, on fewer stitches and rows than a size has; the rows say how many."
        return said + _at_edges(small)
    if alike and small.chain is None:
        said = ""
    elif any(own.get(name) != small.numbers.get(name) for name in used) or small.chain is not None:
        which = "this size" if printing.is_one_size else "any size"
        said = f"It is drawn smaller than {which}, with the same stitches in each repeat."
    else:
        said = "" if printing.is_one_size else f"It is drawn in size {small.size.name}."
    if any(row.sizes and small.size.name not in row.sizes for row in small.piece.rows) and not printing.is_one_size:
        said += " Rows that only larger sizes work are not drawn."
    return said


def _at_edges(small: SmallPiece) -> str:
    """How shaping is drawn whose place is only said to be an edge."""
    rows = [row.row for row in small.placed.rows if is_passage(row.under) and row.row.place == row.under.place]
    makes = {make.stitch for row in rows for step in row.steps if isinstance(step, Work) for make in step.makes}
    if any(name.endswith("2tog") for name in makes):
        return " Decreases are drawn as the first or last two stitches worked together."
    more = any(make.times for row in rows for step in row.steps if isinstance(step, Work) for make in step.makes)
    return " Increases are drawn as two stitches in the first or last one." if more else ""


def small_printing(small: SmallPiece, printing: Printing) -> Printing:
    """For sentences with the numbers of the piece as it is drawn."""
    counts = {
        name: replace(count, n=small.numbers.get(name, count.n), chain=small.numbers.get(f"{name} chain", count.chain))
        for name, count in small.size.counts.items()
    }
    return Printing(printing.all_sizes, (replace(small.size, counts=counts),), printing.style)


def spoken_rows(chart: ChartRows, marks: Sequence[RowMark], terms: Terms) -> Iterator[str]:
    """Each row by what it makes (`Rnd 2, from right to left: 3 hdc, 9 dc, 7 chains`)."""
    for row, mark in zip(chart.rows, marks, strict=True):
        if row.is_base or row.label is None:
            continue
        way = _WAYS[chart.is_round, row.ahead]
        made = ", ".join(counted(row, terms))
        yield f"{mark.title or 'Row'}, {way}: {made}."


_WAYS: Mapping[tuple[bool, int], str] = {
    (False, 1): "from left to right",
    (False, -1): "from right to left",
    (True, 1): "against the clock",
    (True, -1): "with the clock",
}


def counted(row: ChartRow, terms: Terms) -> Iterator[str]:
    """`3 hdc`, `9 dc`, `7 chains`: what a row is drawn with, in the order it first comes."""
    found: dict[str, int] = {}
    for thing in row.things:
        if thing.what in ("sp", "upright"):
            found["chain"] = found.get("chain", 0) + thing.length
        elif thing.what in ("slip", "join"):
            found["sl st"] = found.get("sl st", 0) + 1
        else:
            found[thing.name] = found.get(thing.name, 0) + 1
    for name, number in found.items():
        if name == "chain":
            yield f"{number} {'chain' if number == 1 else 'chains'}"
        else:
            yield f"{number}{_NBSP}{short_name(name, terms)}"


def short_name(stitch: str, terms: Terms) -> str:
    """What is printed for a stitch; the pattern's own name for its own stitch."""
    known = stitches().get(stitch)
    return known.abbreviation(terms) if known is not None else stitch


def full_name(stitch: str, terms: Terms) -> str:
    """Its name in full words."""
    known = stitches().get(stitch)
    return known.full_name(terms) if known is not None else stitch


def words(sentence: Phrase) -> str:
    """A sentence as plain text, with ordinary spaces."""
    return "".join(part.text for part in sentence).replace(_NBSP, " ")


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
