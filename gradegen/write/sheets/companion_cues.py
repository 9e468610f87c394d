"""The cue sheet of a filmed tutorial: what each row shows for the first time, and what a watcher must not miss."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from gradegen.design.checked import Checked
from gradegen.design.passages import Shaping
from gradegen.design.pattern import Piece
from gradegen.design.rows import (
    Chain,
    Either,
    Join,
    Mixed,
    OtherSide,
    Repeat,
    Row,
    RowsAgain,
    Slip,
    Step,
    Turn,
    Work,
)
from gradegen.read.time_stamps import Stamp
from gradegen.reckon.practice import Practice
from gradegen.trade.stitches import Terms, stitches
from gradegen.write.view.rows import row_view, rows_for
from gradegen.write.words.phrases import Phrase, Printing, plain
from gradegen.write.words.print_numbers import length_style

_ONE_ROW = re.compile(r"\b(Rnd|Row|Round)s (\d+) ?[-–] ?\2\b")
_QUIET = {"ch", "sl st"}


@dataclass(frozen=True, slots=True)
class Cue:
    """One row of the sheet, as strings; `stamp` is "" where it is still to be filled in.

    `piece`: the piece that begins with this row, where the pattern has several ("": it goes on, or is the only one).
    """

    row: str
    count: str
    show: Phrase
    mind: Phrase
    stamp: str
    piece: str = ""


def cues(practice: Practice, checked: Checked, stamps: Sequence[Stamp] = ()) -> tuple[Cue, ...]:
    """A line per row of the practice piece, in working order."""
    return tuple(_cues(practice, checked, stamps))


def _cues(practice: Practice, checked: Checked, stamps: Sequence[Stamp]) -> Iterator[Cue]:
    seen: set[str] = set()
    terms, waiting = checked.pattern.terms, list(stamps)
    pieces = practice.pattern.pieces
    for piece in pieces:
        first, heading = True, piece.name.text if len(pieces) > 1 else ""
        for row, label, count in numbered_rows(practice, checked, piece):
            new = [name for name in names_in(row.steps) if name not in seen and name not in _QUIET]
            new = list(dict.fromkeys(new))
            seen.update(new)
            show, mind = _show(row, new, terms), list(_mind(row, piece, first))
            first = False if row.steps and not row.is_prose else first
            stamp = _stamp_for((label, f"{piece.name.text} {label}"), waiting)
            yield Cue(label, count, plain(show), plain(_sentence(mind)), stamp, heading)
            heading = ""


def numbered_rows(practice: Practice, checked: Checked, piece: Piece) -> Iterator[tuple[Row, str, str]]:
    """The rows of a piece that the practice size works, with label and closing count as printed for it."""
    printing = printing_of(practice, checked)
    made = {row.row.place: row for row in practice.rows}
    for row in rows_for(piece, printing.sizes):
        worked = made.get(row.place)
        if worked is None or not worked.times:
            continue
        view = row_view(row, {practice.size.name: worked}, printing)
        chain = f"{practice.chains} ch" if practice.chains and worked.census.get("ch", 0) == practice.chains else ""
        count = words_of(view.count) or (f"{worked.made} sts" if worked.made else chain)
        yield row, plain_label(words_of(view.label)), count.strip("()[]. ")


def printing_of(practice: Practice, checked: Checked) -> Printing:
    """How the practice piece's sentences are printed."""
    return Printing(checked.sizes, (practice.size,), length_style(checked.pattern))


def words_of(phrase: Phrase) -> str:
    """A sentence as plain words."""
    return "".join(part.text for part in phrase).replace("\N{NO-BREAK SPACE}", " ").strip()


def plain_label(label: str) -> str:
    """A label as it is said: a range of one row is that row (`Rnds 10-10`)."""
    return _ONE_ROW.sub(r"\1 \2", label)


def names_in(steps: Iterable[Step]) -> Iterator[str]:
    """Every stitch that steps make, in the order they name them."""
    for step in steps:
        match step:
            case Work():
                yield from (make.stitch for make in step.makes)
            case Repeat():
                yield from names_in(step.body)
            case Mixed():
                yield from names_in(step.works)
            case Either():
                yield from names_in(step.readings[0])
            case _:
                pass


def _show(row: Row, new: Sequence[str], terms: Terms) -> str:
    again = next((step for step in row.steps if isinstance(step, RowsAgain)), None)
    if again is not None:
        return f"As {_rows_again(row, again)}; no need to film all of it"
    if any(isinstance(step, Shaping) for step in row.steps):
        return "A row that shapes, and a plain one"
    said = []
    if new:
        said.append(f"new: {', '.join(_printed(name, terms) for name in new)}, slowly and close")
    if any(isinstance(step, Repeat) for step in row.steps):
        said.append("one whole repeat, then the last one")
    if not said and any(isinstance(step, Chain) for step in row.steps) and not list(names_in(row.steps)):
        said.append("how loosely to chain")
    return _sentence(said or ["the first stitches and the last"])


def _rows_again(row: Row, again: RowsAgain) -> str:
    """`Rnds 3 and 4`, `the last 2 rnds`."""
    rnd = "rnd" if row.label.text.lower().lstrip().startswith(("rnd", "round")) else "row"
    if again.labels[0].startswith("last"):
        number = again.labels[0].removeprefix("last").strip()
        return f"the last {number} {rnd}s" if number else f"the last {rnd}"
    return f"{rnd.capitalize()}{'s' if len(again.labels) > 1 else ''} {' and '.join(again.labels)}"


def _sentence(parts: Sequence[str]) -> str:
    words = "; ".join(parts)
    return words[:1].upper() + words[1:]


def _printed(name: str, terms: Terms) -> str:
    known = stitches().get(name)
    return known.abbreviation(terms) if known else name


def _mind(row: Row, piece: Piece, is_first: bool) -> Iterator[str]:
    """Twists, turns, chains that count or don't, loops: what goes wrong first."""
    steps = list(_all(row.steps))
    if any(isinstance(step, Join) and step.half_twist for step in steps):
        yield "one half turn, and only one, before the join"
    if any(isinstance(step, OtherSide) for step in steps) or "other side" in row.text or "free loop" in row.text:
        both = ", so it has twice as many stitches as the chain" if piece.shape == "half-twist band" else ""
        yield f"goes on along the other side of the chain{both}"
    if any(isinstance(step, Turn) for step in steps):
        yield "turn"
    elif piece.shape in ("joined rounds", "half-twist band") and any(isinstance(step, Join) for step in steps):
        if not any(isinstance(step, Join) and step.half_twist for step in steps):
            yield "join, do not turn"
    elif piece.shape == "spiral" and is_first:
        yield "no joining; move the marker up in every round"
    yield from _chain_warnings(steps)
    if any(isinstance(step, Work) and step.into.loop is not None for step in steps):
        yield "one loop of each stitch only"
    if any(isinstance(step, Slip) and not step.to for step in steps):
        yield "slip stitches are not counted"


def _chain_warnings(steps: Sequence[Step]) -> Iterator[str]:
    for step in steps:
        if isinstance(step, Chain) and step.counts is not None:
            length = step.number.values[0] if step.number.values else ""
            yield (
                f"ch {length} counts as {' and '.join(step.counts.as_)}"
                if step.counts.as_
                else f"ch {length} does not count"
            )
        if isinstance(step, Work) and step.into.which == "from hook" and step.into.nth is not None:
            nth = step.into.nth.values[0] if step.into.nth.values else None
            if nth:
                yield f"{nth - 1} ch skipped before the first stitch"


def _all(steps: Iterable[Step]) -> Iterator[Step]:
    for step in steps:
        yield step
        if isinstance(step, Repeat):
            yield from _all(step.body)
        elif isinstance(step, Mixed):
            yield from step.works
        elif isinstance(step, Either):
            yield from _all(step.readings[0])


def _stamp_for(labels: Sequence[str], waiting: list[Stamp]) -> str:
    """The first stamp for a row by any of its names; every stamp is given out once, in working order."""
    wanted = {label.casefold().rstrip(": ") for label in labels}
    found = next((stamp for stamp in waiting if stamp.words.casefold().rstrip(": ") in wanted), None)
    if found is None:
        return ""
    waiting.remove(found)
    return found.text
