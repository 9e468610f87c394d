"""What the edges of pieces come to in one size: named edges, worked rows and stitches, counts, schedules, lengths."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Formula, Name, PerSize
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.schedule import Schedule
from gradegen.design.worked import WorkedRow
from gradegen.grade.body.bodies import folded
from gradegen.grade.body.sums import Refused, Value, names_in, reckon, value_of

OWN = ("rows", "start", "end")  # what every piece has: its rows, its first and its last stitches
_OF_SCHEDULE = ("start", "end", "rows", "leave")


class NotKnown(Exception):  # noqa: N818 - caught where seams are looked at
    """An edge that hangs on rows which could not be followed; `why` says which."""

    def __init__(self, why: str) -> None:
        super().__init__(why)
        self.why = why


@dataclass(frozen=True, slots=True)
class Sides:
    """What the names in seams mean in one size. `own`: the piece whose edge is being worked out."""

    checked: Checked
    size: GradedSize
    own: Piece | None = None

    def amount(self, formula: Formula) -> Value:
        """What a sum of edges comes to; raises Refused for names nobody knows, NotKnown for rows not followed."""
        return reckon(formula, self)

    def named(self, name: Name) -> Value:
        """An edge of a piece, a count, a part of a schedule, a measure, or a body column."""
        found = self._of_own_piece(name.name) or self._of_piece(name.name)
        if found is not None:
            return found
        numbers = {folded(key): number for key, number in self.size.numbers().items()}
        plain = folded(name.name)
        if plain in numbers:
            return Value(Fraction(numbers[plain]), None)
        scheduled = self._of_schedule(name.name)
        if scheduled is not None:
            return scheduled
        for key, measure in self.size.measures.items():
            if folded(key) == plain:
                return Value(measure.printed, "length")
        if plain in self.size.graded_body:
            return Value(self.size.graded_body[plain], "length")
        raise Refused(None)

    def entry(self, listed: PerSize) -> Value:
        """This size's entry of a list."""
        if self.size.index >= len(listed.each):
            raise Refused(None)
        return value_of(listed.each[self.size.index])

    def _of_own_piece(self, name: str) -> Value | None:
        return self._part(self.own, folded(name)) if self.own is not None else None

    def _of_piece(self, name: str) -> Value | None:
        """`front shoulder`: the piece with the longest fitting name, and the edge behind it."""
        plain = folded(name)
        for piece in sorted(self.checked.pattern.pieces, key=lambda one: -len(one.name.text)):
            title = folded(piece.name.text)
            if plain.startswith(title + " "):
                found = self._part(piece, plain[len(title) + 1 :])
                if found is not None:
                    return found
        return None

    def _part(self, piece: Piece, name: str) -> Value | None:
        for edge, formula in piece.edges.items():
            if folded(edge) == name:
                without = Piece(
                    piece.name, piece.shape, (), piece.rows, None, None, piece.place
                )  # no edge within itself
                return Sides(self.checked, self.size, without).amount(formula)
        return worked_part(self.checked, piece, self.size, name) if name in OWN else None

    def _of_schedule(self, name: str) -> Value | None:
        """`armhole end`: the stitches after a schedule; `armhole rows`: the rows there are for it."""
        words, _, part = folded(name).rpartition(" ")
        for key, scheduled in self.checked.pattern.scheduled.items():
            if folded(key) == words and part in _OF_SCHEDULE:
                one = scheduled.sizes[self.size.index]
                if one is None:
                    raise NotKnown(f"the schedule {key} could not be worked out")
                return Value(Fraction(_part_of(one, part)), None)
        return None


def _part_of(schedule: Schedule, part: str) -> int:
    return {"start": schedule.before, "end": schedule.to, "rows": schedule.rows, "leave": schedule.leave}[part]


def rows_of(checked: Checked, piece: Piece, size: GradedSize) -> list[WorkedRow]:
    """The rows of one piece that one size works, in working order."""
    places = {row.place for row in piece.rows}
    return [row for row in checked.worked.get(size.name, ()) if row.applies and row.row.place in places]


def worked_part(checked: Checked, piece: Piece, size: GradedSize, name: str) -> Value:
    """Rows worked, first stitches or last stitches of a piece; raises NotKnown where a row could not be followed."""
    rows = [row for row in rows_of(checked, piece, size) if not row.row.is_prose]
    if not rows:
        raise NotKnown(f"{piece.name.text} has no rows in size {size.name}")
    lost = next((row for row in rows if row.made is None), None)
    if name == "end" and rows[-1].made is not None:
        return Value(Fraction(rows[-1].made), None)
    if lost is not None:
        raise NotKnown(f"{lost.label or 'a row'} of {piece.name.text} could not be followed")
    if name == "rows":
        return Value(Fraction(sum(row.times for row in rows if row.made)), None)
    return Value(Fraction(next((row.made for row in rows if row.made), 0)), None)


def names_of_edges(checked: Checked) -> tuple[str, ...]:
    """Every name a seam can use, for the nearest one to a name nobody knows."""
    pattern = checked.pattern
    edges = [f"{folded(p.name.text)} {name}" for p in pattern.pieces for name in (*p.edges, *OWN)]
    parts = [f"{name} {part}" for name in pattern.scheduled for part in _OF_SCHEDULE]
    return (*edges, *pattern.counts, *pattern.measures, *parts)


def unit_of(checked: Checked, formula: Formula, size: GradedSize) -> str | None:
    """Whether a sum is of sts or of rows; None where its names are of both kinds, or of none."""
    found = {_unit_of_name(checked, name, size) for name in names_in(formula)} - {None}
    return found.pop() if len(found) == 1 else None


def _unit_of_name(checked: Checked, name: Name, size: GradedSize) -> str | None:
    words = name.name.lower().split()
    if words[-1] in ("rows", "rounds", "rnds"):
        return "rows"
    for key, count in size.counts.items():
        if key.lower() == name.name.lower():
            return "rows" if count.unit == "rows" else "sts"
    for piece in checked.pattern.pieces:
        for edge, formula in piece.edges.items():
            if name.name.lower() == f"{piece.name.text} {edge}".lower():
                return unit_of(checked, formula, size)
    return "sts" if words[-1] in ("start", "end", "leave") else None
