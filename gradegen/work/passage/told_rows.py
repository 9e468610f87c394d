"""The rows of a passage one by one, written out as a maker works them: for charts, which show every row.

A passage says how often its rows are shaped. Where it names a row for that (`rep Dec Row`), it is that row; where it
says `dec 1 st at each end`, the first two or last two stitches are worked together, and an increase is two stitches in
the first or last one; what is left unworked is slip-stitched over at the beginning and left at the end. Those ways are
the trade's usual ones (common practice, no source); the passage itself is proved without them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from gradegen.design.passages import Shaping
from gradegen.design.rows import Aside, Chain, Join, Label, Row, Step, Turn, Work
from gradegen.findings import Written
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.trade.stitches import stitches
from gradegen.work.passage.passages import Course
from gradegen.work.passage.shaping_plan import Event
from gradegen.work.piece.piece import PieceWork

_LEAD = (Chain, Turn, Join, Aside)


@dataclass(frozen=True, slots=True)
class Told:
    """One row of a passage. `leaves`: stitches are left at its end, which no later row meets."""

    row: Row
    leaves: bool = False


@dataclass(slots=True)
class _Followed(Course):
    """A passage followed as ever, with the row before which each shaping begins."""

    begins: list[int] = field(default_factory=list)

    def _shape(self, shaping: Shaping, room: int | None) -> None:
        known, start = len(self.shaped), self.rows
        Course._shape(self, shaping, room)
        self.begins += [start] * (len(self.shaped) - known)


Tracks = list[tuple[int, Shaping, tuple[Event, ...]]]


def rows_told(
    work: PieceWork,
    row: Row,
    size: int,
    known: Mapping[str, Row],
    above: Sequence[Row],
    elsewhere: Sequence[Row],
    edges: dict[str, int],
) -> tuple[Told, ...]:
    """Every row of a passage; () where one of them cannot be written out. The piece stands as it stood before.

    `above`: the piece's rows before it. `elsewhere`: rows of other pieces, which show how a plain row of this stitch
    begins where the piece has none yet. `edges`: for each edge named in words whether it lies at the beginning of odd
    or of even rows, filled as they come.
    """
    stood = [replace(one) for one in work.standings]
    course = _Followed(work, row, size, known)
    course.follow()
    work.standings[:] = stood
    plain = _plain_row(above, elsewhere)
    if plain is None:
        return ()
    tracks = [(begin, *track) for begin, track in zip(course.begins, course.shaped, strict=True)]
    found = [_told(tracks, at, plain, row, known, edges) for at in range(1, course.rows + 1)]
    return tuple(one for one in found if one is not None) if all(found) else ()


def _plain_row(above: Sequence[Row], elsewhere: Sequence[Row]) -> Row | None:
    """The last plain row of the piece, else one of another piece in the stitch of the row above."""
    own = next((one for one in reversed(above) if _plain_work(one) is not None), None)
    works = [step for step in (above[-1].steps if above else ()) if isinstance(step, Work)]
    if own is not None or not works:
        return own
    stitch = works[-1].makes[0].stitch
    plain = [(one, _plain_work(one)) for one in elsewhere]
    return next((one for one, work in plain if work is not None and work.makes[0].stitch == stitch), None)


def _told(
    tracks: Tracks, at: int, plain: Row, row: Row, known: Mapping[str, Row], edges: dict[str, int]
) -> Told | None:
    """One row: even, the row a shaping names, or shaped at its ends."""
    falling = [(shaping, event) for begin, shaping, events in tracks for event in events if begin + event.row == at]
    if not falling:
        return Told(replace(_even(plain), place=row.place, label=_bare(row.label)))
    named = next((shaping.labels[0] for shaping, _ in falling if shaping.labels), None)
    if named is not None:
        one = next((each for name, each in known.items() if name.lower() == named.lower()), None)
        return Told(replace(one, stated=())) if one is not None and len(falling) == 1 else None
    return _shaped(falling, at, plain, row, edges)


def _bare(label: Label) -> Label:
    return Label(label.text, label.kind, place=label.place)


def _even(plain: Row) -> Row:
    return replace(plain, stated=(), sentences=(), side=None)


def _plain_work(row: Row) -> Work | None:
    """The one stitch that a plain row has in each stitch."""
    works = [step for step in row.steps if not isinstance(step, _LEAD)]
    only = works[0] if len(works) == 1 and isinstance(works[0], Work) else None
    if only is None or only.into.which != "each" or len(only.makes) != 1 or only.makes[0].times is not None:
        return None
    return only if all(thing.name == "st" for thing in only.into.things) else None


@dataclass(slots=True)
class _Ends:
    """Stitches that are more (or fewer) at the beginning and at the end of a row, and those left there."""

    begin: int = 0
    end: int = 0
    left_first: int = 0
    left_last: int = 0


def _shaped(
    falling: Sequence[tuple[Shaping, Event]], at: int, plain: Row, row: Row, edges: dict[str, int]
) -> Told | None:
    ends = _Ends()
    for shaping, event in falling:
        change = shaping.change
        if change is None or change.where == "evenly":
            return None
        both = change.where == "each end"
        _add(ends, event.delta // 2 if both else event.delta, shaping, both, at, edges)
    steps = _steps(ends, plain)
    if steps is None:
        return None
    return Told(replace(_even(plain), steps=steps, place=row.place, label=_bare(row.label)), bool(ends.left_last))


def _add(ends: _Ends, delta: int, shaping: Shaping, both: bool, at: int, edges: dict[str, int]) -> None:
    first = both
    if not both:
        parity = edges.setdefault(shaping.edge, (1 - next(iter(edges.values()))) if edges else at % 2)
        first = at % 2 == parity
    if shaping.leaves:
        ends.left_first -= delta if first else 0
        ends.left_last -= delta if both or not first else 0
        return
    ends.begin += delta if first else 0
    ends.end += delta if both or not first else 0


def _steps(ends: _Ends, plain: Row) -> tuple[Step, ...] | None:
    """What the plain row's steps become; None where there is no such stitch for it."""
    work = _plain_work(plain)
    assert work is not None
    stitch = work.makes[0].stitch
    if (min(ends.begin, ends.end) < 0 and f"{stitch}2tog" not in stitches()) or stitch not in stitches():
        return None
    at = plain.steps.index(work)
    lead, trail = list(plain.steps[:at]), plain.steps[at + 1 :]
    read = _read(_words(ends, stitch), plain)
    if read is None:
        return None
    chain = next((step for step in lead if isinstance(step, Chain)), None)
    if ends.left_first and chain is not None:
        lead.remove(chain)
        return (*lead, read[0], chain, *read[1:], *trail)
    return (*lead, *read, *trail)


def _words(ends: _Ends, stitch: str) -> str:
    parts = [f"sl st in next {ends.left_first} sts"] if ends.left_first else []
    parts += _end_words(ends.begin, stitch, "next")
    kept = ends.left_last + (-2 * ends.end if ends.end < 0 else 1 if ends.end else 0)
    parts.append(f"{stitch} in each st to last {kept} sts" if kept else f"{stitch} in each st across")
    parts += _end_words(ends.end, stitch, "next" if ends.left_last else "last")
    return ", ".join(parts) + (", leave rem sts unworked" if ends.left_last else "") + "."


def _end_words(change: int, stitch: str, which: str) -> list[str]:
    if change < 0:
        return [f"{stitch}2tog over {'next' if at < -change - 1 else which} 2 sts" for at in range(-change)]
    return [f"{change + 1} {stitch} in {which} st"] if change else []


def _read(words: str, plain: Row) -> tuple[Step, ...] | None:
    written = Written.plain(f"Row 2: {words}", plain.place.file, plain.place.line, plain.place.column)
    row, findings = read_row(written, RowNames("US", ("",), {}))
    return None if findings or row.is_prose else row.steps
