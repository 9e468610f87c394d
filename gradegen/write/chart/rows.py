"""The rows of a chart: what each row makes, in order, each thing tied to the things of the row below it stands on.

Nothing here is read from the words of a row; it all comes from the edges as worked, so a wrong row cannot draw right.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from gradegen.design.rows import Row
from gradegen.findings import Place
from gradegen.trade.stitches import stitches
from gradegen.work.edge.placing import Laid, Spot
from gradegen.work.placed_rows import PlacedRow, met_places

Ref = tuple[int, int]  # a row of the chart, and a thing in it
Middle = Literal["", "ring", "chain ring"]


@dataclass(frozen=True, slots=True)
class Thing:
    """One thing to draw. `feet`: what it stands on.

    `what`: "base": a foundation chain (`again`: the same one met a second time, from its other side); "upright":
    chains that stand at the row's start, for a stitch or for none (`from_base`: of the foundation); else as worked.
    """

    what: Literal["base", "upright", "st", "sp", "picot", "slip", "join"]
    name: str
    length: int = 0
    feet: tuple[Ref, ...] = ()
    loop: Literal["front", "back"] | None = None
    again: bool = False
    from_base: bool = False
    closed_by: str = ""

    @property
    def has_room(self) -> bool:
        """True for what takes room along the row; the others hang beside or on top of something."""
        return self.what in ("base", "st", "sp", "picot") or (self.what == "upright" and bool(self.name))


@dataclass(frozen=True, slots=True)
class Repeated:
    """One run of a repeat: the first of its things and the one after its last, and how many stitches it goes over."""

    start: int
    end: int
    over: int


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One row of a chart. `label`: the written row whose label it bears; None for a foundation that bears none.

    `again`: written rows that only repeat this one, among others. `ahead`: +1 worked from left to right (or
    anticlockwise), -1 the other way. `places`: for each place it leaves, the thing that is there (None: the ring).
    """

    things: tuple[Thing, ...]
    places: tuple[int | None, ...]
    label: Row | None
    source: PlacedRow | None
    ahead: Literal[1, -1]
    side: Literal["RS", "WS"] | None = None
    runs: tuple[Repeated, ...] = ()
    again: tuple[Row, ...] = ()
    is_base: bool = False


@dataclass(frozen=True, slots=True)
class ChartRows:
    """All rows, the foundation first where there is one. `middle`: what the first round goes into.

    `is_oval`: the rounds go along both sides of the foundation, which lies in their middle.
    """

    rows: tuple[ChartRow, ...]
    middle: Middle
    middle_chains: int
    is_round: bool
    is_oval: bool = False


@dataclass(frozen=True, slots=True)
class Kept:
    """A row that is drawn, with the written rows that repeat it and are not drawn again."""

    row: PlacedRow
    again: tuple[Row, ...] = ()


def kept_rows(placed: Sequence[PlacedRow]) -> tuple[Kept, ...]:
    """The rows to draw: rows that only go through the same edges again are left out."""
    kept: list[Kept] = []
    for under, block in _blocks(placed):
        new = _shortened(block, kept[-1].row if kept else None)
        if new:
            kept += [Kept(row) for row in new]
        else:
            _mark_again(kept, under, block)
    return tuple(kept)


def _shortened(block: Sequence[PlacedRow], last: PlacedRow | None) -> list[PlacedRow]:
    """The rows under one label without those that come back to an edge again, but on the side where the last one ends.

    Rows that repeat others may all be left out; a row written here is drawn at least once.
    """
    kept: list[PlacedRow] = []
    cycle = 0
    for row in block:
        stood = [_state(last) if last is not None else None, *(_state(one) for one in kept)]
        least = 0 if row.row.place != row.under.place else 1
        at = next((at for at in range(least, len(stood)) if stood[at] == _state(row)), None)
        if at is None:
            kept.append(row)
            continue
        cycle = len(kept) + 1 - at
        del kept[at:]
    if block[0].turns and cycle % 2 and (block[-1].times - len(kept)) % 2:
        kept += block[len(block) - cycle :]
    return kept


def _blocks(placed: Sequence[PlacedRow]) -> list[tuple[Row, list[PlacedRow]]]:
    found: list[tuple[Row, list[PlacedRow]]] = []
    for row in placed:
        if found and found[-1][0].place == row.under.place:
            found[-1][1].append(row)
        else:
            found.append((row.under, [row]))
    return found


def _state(row: PlacedRow) -> object:
    return row.placed.after, row.turns, row.shape


def _mark_again(kept: list[Kept], under: Row, block: Sequence[PlacedRow]) -> None:
    places = {row.row.place for row in block}
    latest = {one.row.row.place: at for at, one in enumerate(kept)}
    for place in places & set(latest):
        at = latest[place]
        kept[at] = replace(kept[at], again=(*kept[at].again, under))


# building -----------------------------------------------------------------------------------------------------------


def chart_rows(placed: Sequence[PlacedRow], written: Sequence[Row] = ()) -> ChartRows:
    """The chart's rows from the rows as worked; they bear the labels of the rows as written for all sizes."""
    kept = kept_rows(placed)
    builder = _Builder({row.place: row for row in written})
    for at, one in enumerate(kept):
        met = one.row.met if at == 0 else met_places(kept[at - 1].row, one.row.placed)
        builder.add(one, met)
    if _goes_around(builder.rows):
        turned = tuple(replace(row, ahead=1 if row.ahead == -1 else -1) for row in builder.rows)
        return ChartRows(turned, "", 0, is_round=True, is_oval=True)
    return ChartRows(tuple(builder.rows), builder.middle, builder.middle_chains, bool(builder.middle))


def _goes_around(rows: Sequence[ChartRow]) -> bool:
    """True when the first round goes along both sides of the chain, and the piece has no twist."""
    sides = {thing.again for thing in rows[0].things} if rows and rows[0].is_base else set()
    source = rows[1].source if len(rows) > 1 else None
    return len(sides) == 2 and source is not None and source.shape in ("joined rounds", "spiral")


class _Builder:
    """The rows so far. A chain is only told apart as foundation or as ring once the first stitch is placed."""

    def __init__(self, written: Mapping[Place, Row]) -> None:
        self.written = written
        self.rows: list[ChartRow] = []
        self.middle: Middle = ""
        self.middle_chains = 0
        self.waiting: Kept | None = None
        self.chained = 0
        self.joined = False
        self.turned_in = 0  # chains at the end of an oval that are not met again from the other side
        self.skipped = 0  # foundation chains that stand upright beside the first row

    def add(self, kept: Kept, met: Sequence[int]) -> None:
        """One more row on top."""
        laid = kept.row.placed.laid
        if not self.rows and not any(one.leaves_place for one in laid):
            self.waiting = kept
            return
        if not self.rows:
            laid = self._begin(kept, laid)
        self._on_top(kept, laid, met)

    def _begin(self, kept: Kept, laid: tuple[Laid, ...]) -> tuple[Laid, ...]:
        """What the first row stands on; gives what is left of its record."""
        reached = [spot for one in laid if not one.chain for spot in one.into]
        if self.waiting is not None:
            self.chained = self.waiting.row.placed.laid[0].length
            self.joined = _is_ringed(self.waiting.row.placed.laid)
        elif _is_ringed(laid):
            self.chained, self.joined, laid = laid[0].length, True, laid[2:]
        elif any(spot.on == "chain" for spot in reached):
            self.chained, laid = laid[0].length, laid[1:]
        if not reached:
            self.middle = "chain ring" if self.chained else "ring"
            self.middle_chains = self.chained
        elif self.chained:
            self._on_chain(laid)
        elif any(spot.on == "other side" for spot in reached):
            self._on_the_other_side(kept, 1 + max(spot.at for spot in reached))
        else:
            self._on_what_was_there(kept)
        return laid

    def _on_chain(self, laid: Sequence[Laid]) -> None:
        beyond = [spot.at for one in laid for spot in one.into if spot.on == "other side"]
        both = bool(beyond)
        self.skipped = 0 if self.joined else _skipped(laid)
        number = self.chained - self.skipped
        self.turned_in = max(0, number - 1 - max(beyond)) if both else 0
        things = [Thing("base", "ch") for _ in range(number)]
        things += [Thing("base", "ch", again=True) for _ in range(number if both else 0)]
        source = self.waiting.row if self.waiting else None
        ringed = source is not None and bool(source.placed.after) and source.placed.after[0].kind == "ring"
        places: tuple[int | None, ...] = (*([None] if ringed else []), *range(number), *([None] * self.skipped))
        if both and source is not None and not self.joined:
            places = (*([None] * self.skipped), *reversed(range(number)))  # met from the hook on
        label = self._written(source.under) if source else None
        self.rows.append(ChartRow(tuple(things), places, label, source, -1 if self.joined else 1, is_base=True))

    def _on_the_other_side(self, kept: Kept, number: int) -> None:
        """The free loops of another piece's foundation."""
        things = tuple(Thing("base", "ch", again=True) for _ in range(number))
        ahead = self._ahead(kept.row)
        self.rows.append(ChartRow(things, tuple(range(number)), None, None, ahead, is_base=True))

    def _on_what_was_there(self, kept: Kept) -> None:
        """The edge of another piece, or stitches picked up: one place each, with no row of their own."""
        before = kept.row.placed.before
        things = tuple(Thing("base", "sp" if place.kind == "sp" else "st") for place in before)
        ahead = self._ahead(kept.row)
        self.rows.append(ChartRow(things, tuple(range(len(before))), None, None, ahead, is_base=True))

    def _on_top(self, kept: Kept, laid: Sequence[Laid], met: Sequence[int]) -> None:
        things: list[Thing] = []
        places: list[int | None] = []
        runs = _Runs()
        if len(self.rows) == 1 and self.rows[0].is_base and self.skipped and not _stands(laid):
            things.append(Thing("upright", "", self.skipped, from_base=True))
        for at, one in enumerate(laid):
            runs.note(one, len(things))
            things += self._things(one, laid[at - 1] if at else None, laid[at + 1 : at + 2], met)
            if one.leaves_place:
                places.append(len(things) - 1)
        over = max((fact.takes for fact in kept.row.facts), default=0)
        repeated = tuple(Repeated(start, end, over) for start, end in runs.found if end > start)
        ahead, side = self._ahead(kept.row), kept.row.row.side
        under, again = self._written(kept.row.under), tuple(self._written(row) for row in kept.again)
        self.rows.append(ChartRow(tuple(things), tuple(places), under, kept.row, ahead, side, repeated, again))

    def _written(self, row: Row) -> Row:
        return self.written.get(row.place, row)

    def _ahead(self, row: PlacedRow) -> Literal[1, -1]:
        """Rows on the right side go from right to left, rounds anticlockwise; what turns goes back."""
        last = next((one for one in reversed(self.rows) if not one.is_base), None)
        if row.row.side is not None and not self.middle and row.shape == "flat":
            return -1 if row.row.side == "RS" else 1
        if last is None or last.source is None:
            return 1 if self.middle else -1
        return (-1 if last.ahead == 1 else 1) if last.source.turns else last.ahead

    def _things(self, one: Laid, before: Laid | None, after: Sequence[Laid], met: Sequence[int]) -> list[Thing]:
        feet = tuple(ref for spot in one.into for ref in self._ref(spot, met))
        if one.what in ("run", "runs end"):
            return []
        if one.what == "chains":
            return [] if after and after[0].chain else [Thing("upright", "", one.length)]
        if one.chain:
            spaces = sum(space.length for space in after if space.what == "sp")
            if before is not None and before.what == "chains":
                return [Thing("upright", one.name, before.length - spaces, feet)]
            return [Thing("upright", one.name, max(1, self.skipped - spaces), from_base=True)]
        if one.what == "sp":
            from_base = bool(self.skipped) and len(self.rows) == 1 and before is not None and before.chain
            return [Thing("sp", "ch", one.length, feet, from_base=from_base, closed_by=one.closed_by)]
        return [Thing(_DRAWN[one.what], one.name, one.length, feet, one.loop)]

    def _ref(self, spot: Spot, met: Sequence[int]) -> list[Ref]:
        if not self.rows:
            return []
        base = self.rows[0]
        if spot.on == "edge":
            at = met[spot.at] if met else spot.at
            place = self.rows[-1].places[at]
            return [] if place is None else [(len(self.rows) - 1, place)]
        if spot.on == "chain":
            at = spot.at if self.joined else self.chained - 1 - spot.at
            return [(0, at)] if at < len(base.things) else []
        return [(0, self.chained - self.skipped + self.turned_in + spot.at)]


_DRAWN: dict[str, Literal["st", "picot", "slip", "join"]] = {
    "st": "st",
    "picot": "picot",
    "slip": "slip",
    "join": "join",
}


class _Runs:
    """The runs of the outermost repeats, as stretches of the row's things."""

    def __init__(self) -> None:
        self.found: list[tuple[int, int]] = []
        self.start: int | None = None

    def note(self, one: Laid, at: int) -> None:
        """A run begins, or all are over, at this thing."""
        if one.what not in ("run", "runs end") or one.length != 1:
            return
        if self.start is not None:
            self.found.append((self.start, at))
        self.start = at if one.what == "run" else None


def _is_ringed(laid: Sequence[Laid]) -> bool:
    return len(laid) > 1 and laid[0].what == "chains" and laid[1].what == "join"


def _stands(laid: Sequence[Laid]) -> bool:
    """True when the row begins with chains that stand for a stitch."""
    first = next((one for one in laid if one.what in ("st", "chains")), None)
    return first is not None and (first.chain or first.what == "chains")


def _skipped(laid: Sequence[Laid]) -> int:
    """Foundation chains that stand upright beside the first row: those skipped, but for those below its first space."""
    if not laid or laid[0].what == "chains":
        return 0
    first = next((one for one in laid if one.what == "st" and not one.chain and one.into), None)
    skipped = first.into[0].at if first is not None else 0
    if not laid[0].chain:
        return skipped
    space = laid[1].length if len(laid) > 1 and laid[1].what == "sp" else 0
    return min(skipped, height_of(laid[0].name) + space) if space else skipped


def height_of(name: str) -> int:
    """The height of a stitch in chains; 1 where nothing is known."""
    known = stitches().get(name)
    base = stitches().get(known.base) if known is not None and known.base else None
    return (known.height if known else None) or (base.height if base else None) or 1
