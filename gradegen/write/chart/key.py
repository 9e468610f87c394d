"""The key of a chart: each mark it uses, drawn alone, with what it stands for; only what is drawn, and all of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from gradegen.design.pattern import Terms
from gradegen.trade.chart_glyphs import OWN, glyph_of, loop_mark
from gradegen.trade.stitches import stitches
from gradegen.write.chart.glyphs import Pen, draw_picot, draw_stitch
from gradegen.write.chart.rows import ChartRows, Thing, height_of
from gradegen.write.chart.words import full_name, short_name

CHAIN = 7.2
_WIDE = 22.0


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """One mark of the key: its fragments, drawn on the point 0 0 upwards, how high they are, and its words."""

    fragments: tuple[str, ...]
    high: float
    words: str


def own_letters(chart: ChartRows) -> tuple[str, ...]:
    """Stitches without a published glyph, in the order they come; each gets a letter."""
    names = [thing.name for row in chart.rows for thing in row.things if thing.what == "st"]
    return tuple(dict.fromkeys(name for name in names if glyph_of(name) is OWN))


def key_entries(chart: ChartRows, pen: Pen, terms: Terms) -> tuple[KeyEntry, ...]:
    """Every mark that the chart uses, in the order it first comes; marks for one loop at the end."""
    return (*_middle(chart, pen), *_stitches(chart, pen, terms), *_loops(chart, pen))


def _things(chart: ChartRows) -> Iterator[Thing]:
    for row in chart.rows:
        yield from row.things


def _middle(chart: ChartRows, pen: Pen) -> Iterator[KeyEntry]:
    if chart.middle == "ring":
        yield KeyEntry(('<circle cx="0" cy="-4" r="4" fill="none"/>',), 8, "magic ring")


def _stitches(chart: ChartRows, pen: Pen, terms: Terms) -> Iterator[KeyEntry]:
    seen: set[tuple[str, int]] = set()
    for thing in _things(chart):
        name = {"sp": "ch", "upright": "ch", "base": thing.name, "join": "sl st"}.get(thing.what, thing.name)
        name = "sl st" if thing.what == "slip" else name
        legs = len(thing.feet) if thing.what == "st" and len(thing.feet) > 1 else 1
        if thing.closed_by and (thing.closed_by, 1) not in seen:
            seen.add((thing.closed_by, 1))
            yield _stitch(thing.closed_by, 1, pen, terms)
        if thing.what == "base" and thing.name != "ch":
            continue
        if (name, legs) not in seen:
            seen.add((name, legs))
            yield _stitch(name, legs, pen, terms, thing)


def _stitch(name: str, legs: int, pen: Pen, terms: Terms, thing: Thing | None = None) -> KeyEntry:
    said = _named(name, terms)
    if name == "ch":
        return KeyEntry((pen.mark("oval", (0, -3)),), 6, said)
    if name == "sl st":
        return KeyEntry((pen.mark("dot", (0, -3)),), 6, said)
    if thing is not None and thing.what == "picot":
        return KeyEntry(tuple(draw_picot(pen, thing.length or 3, (0, 0), (0.0, -1.0))), 12, said)
    high = 9.8 if height_of(name) <= 1 else CHAIN * min(4, height_of(name))
    feet = [((at - (legs - 1) / 2) * 8.0, 0.0) for at in range(legs)]
    return KeyEntry(tuple(draw_stitch(pen, name, feet, (0.0, -high))), high, said)


def _named(name: str, terms: Terms) -> str:
    known = stitches().get(name)
    if known is None:
        return f"{name}, as explained under special stitches"
    short, full = short_name(name, terms), full_name(name, terms)
    return short if short == full else f"{short}: {full}"


def _loops(chart: ChartRows, pen: Pen) -> Iterator[KeyEntry]:
    said = {"back": "worked in the back loop only", "front": "worked in the front loop only"}
    for loop in dict.fromkeys(thing.loop for thing in _things(chart) if thing.loop is not None):
        yield KeyEntry((pen.mark(loop_mark(loop), (0, -3)),), 6, said[loop])


def key_fragments(
    entries: Sequence[KeyEntry], at: tuple[float, float], wide: float, ink: str
) -> tuple[list[str], float]:
    """The key set in columns from a point down, for a drawing that is a file of its own; and how high it is."""
    longest = max((len(entry.words) for entry in entries), default=0)
    columns = max(1, int(wide // (_WIDE + 4.0 * longest)))
    out, y = [], at[1]
    for start in range(0, len(entries), columns):
        line = entries[start : start + columns]
        y += max(entry.high for entry in line) + 7
        for place, entry in enumerate(line):
            x = at[0] + place * (wide / columns)
            out.append(f'<g class="key" transform="translate({x + 10:.1f} {y:.1f})" stroke="{ink}" fill="{ink}">')
            out += [*entry.fragments]
            out.append(f'<text x="{_WIDE - 4}" y="-1" font-size="7" stroke="none">{escape(entry.words)}</text></g>')
    return out, y - at[1] + 6
