"""Where a piece begins: by itself, on what the piece above left, or on what an earlier one was told to leave."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from gradegen.design.begin import Begin
from gradegen.design.pattern import Piece
from gradegen.design.rows import Mixed, Repeat, Row, Skip, Slip, Step, Work
from gradegen.findings import Finding, Rule, Severity
from gradegen.work.edge.edges import stitches
from gradegen.work.piece.left_behind import LeftBehind, beginnings, held_last, left_at_end, may_hold_more, named_in
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing

NOTHING_HELD = Rule(
    "nothing-held", Severity.ERROR, "arithmetic", "the earlier piece leaves nothing that this one could be worked on"
)
HELD_DIFFER = Rule(
    "held-stitches-differ", Severity.ERROR, "arithmetic", "stretches worked by the same rows have other numbers"
)
BEGINS_ANEW = Rule(
    "begins-anew", Severity.WARNING, "file format", "a piece said to be worked on another begins by itself"
)

Entries = tuple[tuple[Standing, ...], ...]  # each way to begin, in every size


@dataclass(frozen=True, slots=True)
class Entry:
    """Where a piece stands before its first row in every size; `others`: all the ways, where there are several."""

    standings: tuple[Standing, ...]
    others: Entries = ()
    findings: tuple[Finding, ...] = ()


def enter(piece: Piece, anew: bool, sizes: Sequence[str], before: Sequence[Standing]) -> Entry:
    """The standings a piece begins with, after the piece `before`; () there: it is the first."""
    name = piece.name.text
    past = [_past(one) for one in before] or [()] * len(sizes)
    fresh = tuple(Standing(piece=name, left=left) for left in past)
    if piece.begin is None:
        if anew or not before:
            return Entry(fresh)
        pairs = zip(before, past, strict=True)
        return Entry(tuple(_gone_on(one, name, left) for one, left in pairs))
    if anew:
        return Entry(fresh, (), (_unused(piece.begin),))
    return _said(piece.begin, sizes, _of_working_sizes(piece, sizes, fresh))


def _gone_on(standing: Standing, name: str, left: tuple[LeftBehind, ...]) -> Standing:
    return replace(standing, rows=0, side_rows=standing.rows, piece=name, left=left, on_held=False)


def _past(standing: Standing) -> tuple[LeftBehind, ...]:
    return left_at_end(standing.piece, standing.edge, standing.underside, standing.left)


def _unused(begin: Begin) -> Finding:
    message = f"This piece makes a chain of its own, so it is not worked on {begin.piece}."
    return BEGINS_ANEW.at(begin.place, message, hint="Leave the chain out, or this line.")


def _of_working_sizes(piece: Piece, sizes: Sequence[str], fresh: tuple[Standing, ...]) -> tuple[Standing, ...]:
    """The standings, those of sizes that work no row of the piece like the first that does: nobody begins there."""
    at_work = {size for row in piece.rows for size in (row.sizes if row.sizes is not None else sizes)}
    first = next((one for size, one in zip(sizes, fresh, strict=True) if size in at_work), None)
    return tuple(one if size in at_work or first is None else first for size, one in zip(sizes, fresh, strict=True))


def _said(begin: Begin, sizes: Sequence[str], fresh: tuple[Standing, ...]) -> Entry:
    """The beginnings that the file names."""
    named = [named_in(begin, one.left) for one in fresh]
    if any(one is None or len(one.stretches) < (begin.nth or 1) for one in named):
        unknown = tuple(replace(one, edge=None) for one in fresh)
        lost = any(may_hold_more(begin, one.left) for one in fresh)
        return Entry(unknown, (), () if lost else (_nothing(begin, fresh),))
    found = [one for one in named if one is not None]
    ways = _ways(fresh, found, begin)
    return Entry(ways[0], ways, tuple(_differing(begin, sizes, found)))


def _ways(
    fresh: Sequence[Standing], found: Sequence[LeftBehind], begin: Begin | None, assumed: bool = False
) -> Entries:
    """Every place to begin at; all sizes begin at the same."""
    nth = (begin.nth or 1) - 1 if begin else 0
    edges = [beginnings(one.stretches[nth], begin) for one in found]
    held = begin is None or begin.what == "held"
    return tuple(
        tuple(
            replace(one, edge=each[min(way, len(each) - 1)], underside=(), assumed=assumed, on_held=held)
            for one, each in zip(fresh, edges, strict=True)
        )
        for way in range(max(len(each) for each in edges))
    )


def _nothing(begin: Begin, fresh: Sequence[Standing]) -> Finding:
    held = dict.fromkeys(f"{one.label} of {one.piece}" for one in fresh[0].left if one.what == "held")
    message = {
        "held": f"{begin.piece} holds no stitches{f' at {begin.row}' if begin.row else ''}.",
        "end": f"The last row of {begin.piece} could not be followed.",
        "foundation": f"{begin.piece} has no foundation whose other side is free.",
    }[begin.what]
    return NOTHING_HELD.at(begin.place, message, hint=f"Stitches are held at {', '.join(held)}." if held else None)


def _differing(begin: Begin, sizes: Sequence[str], found: Sequence[LeftBehind]) -> Iterator[Finding]:
    """Stretches that one set of rows is worked on, and that are not alike."""
    for size, left in zip(sizes, found, strict=True):
        numbers = [stitches(one.edge) + one.chain for one in left.stretches]
        if begin.nth is None and len(set(numbers)) > 1:
            other = next(number for number in numbers if number != numbers[0])
            yield HELD_DIFFER.at(
                begin.place,
                f"The stretches that {left.label} of {left.piece} holds are not alike.",
                size=size,
                expected=f"{numbers[0]} sts",
                found=f"{other} sts",
                hint="Write the pieces apart: first held stitches, second held stitches.",
            )


# the trade's own words ------------------------------------------------------------------------------------------------


def on_held(row: Row, piece: PieceWork) -> Entries:
    """Where a row begins that names the unworked sts first; () where nothing was left, and for other rows."""
    if piece.edge_given or not _begins_on_unworked(row):
        return ()
    found = [held_last(one.left, piece.name) for one in piece.standings]
    if any(one is None for one in found):
        return ()
    return _ways(piece.standings, [one for one in found if one is not None], None, assumed=True)


def _begins_on_unworked(row: Row) -> bool:
    """True for `sk next 6 unworked sts, join, ...` and `join at the gap, sc in next 3 ch, sc in each unworked st`."""
    for step in _steps(row.steps):
        things = step.into.things
        if any(thing.name == "unworked" for thing in things):
            return True
        if not things or any(thing.name not in ("ch", "gap") for thing in things):
            return False
    return False


def _steps(steps: Sequence[Step]) -> Iterator[Work | Skip | Slip]:
    for step in steps:
        if isinstance(step, (Work, Skip, Slip)):
            yield step
        elif isinstance(step, Repeat):
            yield from _steps(step.body)
        elif isinstance(step, Mixed):
            yield from step.works
