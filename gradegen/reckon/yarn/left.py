"""Yarn left now: what the rest of a piece takes, how far a ball goes, and how often a repeat can still be worked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount
from gradegen.design.passages import Change, EvenRows, Shaping
from gradegen.design.rows import RowsAgain
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.reckon.census.census import stitch_census
from gradegen.reckon.census.row_by_row import SingleRow, all_rows, find_rows
from gradegen.reckon.yarn.amounts import NOTHING, YarnAmount
from gradegen.reckon.yarn.fitted_yarn import fit_yarn
from gradegen.reckon.yarn.yarn import YARN_NOT_KNOWN

ROW_NOT_FOUND = Rule("row-not-found", Severity.ERROR, "file format", "The row named is none of this size's rows.")
LEFT_NOT_COMPARABLE = Rule(
    "left-not-comparable", Severity.ERROR, "file format", "The yarn left is in another unit than the evidence."
)

Findings = tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class RepeatLeft:
    """The repeat that comes next or is under way: how often it is planned from here, and how often the yarn allows.

    `rows`: its rows as the label says. `each`: what one repeat takes. `closing`: the rows after it. `last`: the row
    the last whole repeat ends on, None where not even one can be worked and finished. `is_even` False: rows grow, so
    repeats beyond the pattern's own are an estimate.
    """

    rows: str
    each: YarnAmount
    planned: int
    allowed: int
    closing: YarnAmount
    last: str | None
    is_even: bool


@dataclass(frozen=True, slots=True)
class YarnLeft:
    """Where a maker stands after one row, in the yarn of her size.

    `share`: of the whole yarn used by now. `reaches`: the last row that the yarn left is enough for.
    """

    size: str
    at: str
    used: YarnAmount
    share: Fraction
    needed: YarnAmount
    left: YarnAmount
    is_enough: bool
    reaches: str
    repeat: RepeatLeft | None
    quarters: tuple[tuple[Fraction, str], ...]


def yarn_left(
    checked: Checked, size: str, at: str, left: Amount, letter: str | None = None
) -> tuple[YarnLeft | None, Findings]:
    """How far `left` goes after row `at` in one size, in the pattern's first yarn or the one named."""
    yarn = next((one for one in checked.pattern.yarns if letter in (None, one.letter)), None)
    fitted = fit_yarn(checked, stitch_census(checked), yarn) if yarn is not None else None
    if yarn is None or fitted is None or fitted.each is None:
        place = yarn.place if yarn is not None else checked.pattern.place
        message = "What the rows take can't be worked out: nothing was weighed of this yarn."
        return None, (
            YARN_NOT_KNOWN.at(place, message, severity=Severity.ERROR, hint="sample: {size: M, used: 168 g}"),
        )
    rows = all_rows(checked, size)
    spots = find_rows(rows, at)
    if len(spots) != 1:
        return None, (_not_one(rows, spots, at, size),)
    spot = spots[0]
    there = fitted.put_up.measured(left)
    takes = [fitted.takes(row.by_colour.get(yarn.letter, {})) for row in rows]
    if _number(there, takes) is None:
        message = f"The pattern gives no put-up to hold {left.unit} against."
        return None, (LEFT_NOT_COMPARABLE.at(left.place, message, hint="skein: 200 yd / 100 g"),)
    return _standing(size, rows, takes, spot, there), ()


def _not_one(rows: Sequence[SingleRow], spots: Sequence[int], at: str, size: str) -> Finding:
    """The finding for a row that is not there, or that stands in several pieces."""
    place = Place("--at", 1, 1, 1, 1 + len(at))
    if spots:
        named = ", ".join(f"{rows[spot].piece} {rows[spot].name}" for spot in spots[:4])
        message = f"There are {len(spots)} rows “{at}” in size {size}."
        return ROW_NOT_FOUND.at(place, message, hint=f"Name the piece as well: {named}.")
    named = f"{rows[0].name} to {rows[-1].name}" if rows else "none"
    return ROW_NOT_FOUND.at(place, f"There is no row “{at}” in size {size}.", hint=f"Its rows: {named}.")


def _number(amount: YarnAmount, like: Sequence[YarnAmount]) -> Fraction | None:
    """The amount as a plain number, inches where all are known in inches, else grams."""
    if amount.inches is not None and all(one.inches is not None for one in like):
        return amount.inches
    if amount.grams is not None and all(one.grams is not None for one in like):
        return amount.grams
    return None


def _total(amounts: Sequence[YarnAmount]) -> YarnAmount:
    total = NOTHING
    for amount in amounts:
        total = total.plus(amount)
    return total


def _standing(
    size: str, rows: Sequence[SingleRow], takes: Sequence[YarnAmount], spot: int, left: YarnAmount
) -> YarnLeft:
    numbers = [_number(one, takes) or Fraction(0) for one in takes]
    there, whole = _number(left, takes) or Fraction(0), sum(numbers, Fraction(0))
    reach = spot
    spent = Fraction(0)
    while reach + 1 < len(rows) and spent + numbers[reach + 1] <= there:
        reach += 1
        spent += numbers[reach]
    done = sum(numbers[: spot + 1], Fraction(0))
    return YarnLeft(
        size=size,
        at=_said(rows, spot),
        used=_total(takes[: spot + 1]),
        share=done / whole if whole else Fraction(0),
        needed=_total(takes[spot + 1 :]),
        left=left,
        is_enough=whole - done <= there,
        reaches=_said(rows, reach),
        repeat=_repeat(rows, takes, numbers, spot, there),
        quarters=tuple((Fraction(part, 4), _row_at(rows, numbers, whole * part / 4)) for part in (1, 2, 3)),
    )


def _row_at(rows: Sequence[SingleRow], numbers: Sequence[Fraction], wanted: Fraction) -> str:
    """The first row by whose end so much is used."""
    so_far = Fraction(0)
    for at, number in enumerate(numbers):
        so_far += number
        if so_far >= wanted:
            return _said(rows, at)
    return _said(rows, -1)


def _said(rows: Sequence[SingleRow], at: int) -> str:
    """A row's name, with its piece where there are several."""
    row = rows[at]
    return row.name if all(one.piece == row.piece for one in rows) else f"{row.piece} {row.name}"


def _may_be_repeated(row: SingleRow) -> bool:
    """True for numbered rows that do not shape the piece: those can be worked more often than planned."""
    return row.number is not None and not any(isinstance(step, Shaping | EvenRows | Change) for step in row.row.steps)


def _repeat(
    rows: Sequence[SingleRow],
    takes: Sequence[YarnAmount],
    numbers: Sequence[Fraction],
    spot: int,
    there: Fraction,
) -> RepeatLeft | None:
    """The repeat under way or the next one that comes; None where only single rows are left."""
    ends = [at for at, row in enumerate(rows) if row.turn == row.of - 1 and row.of > 1 and at > spot]
    ends = [at for at in ends if _may_be_repeated(rows[at]) and rows[at].piece == rows[spot].piece]
    if not ends:
        return None
    end = ends[0]
    cycle = rows[end].cycle
    start = end - rows[end].of + 1
    behind = max(spot + 1, start)
    whole = start + -(-(behind - start) // cycle) * cycle  # the next whole repeat begins here
    planned = (end + 1 - whole) // cycle
    spare = there - sum(numbers[spot + 1 : whole], Fraction(0)) - sum(numbers[end + 1 :], Fraction(0))
    allowed, is_even = _allowed(numbers, whole, end, cycle, spare)
    last = None
    if allowed >= 0 and spare >= 0:
        number = rows[whole - 1].number
        last = (
            f"{rows[end].name.rsplit(' ', 1)[0]} {number + allowed * cycle}" if number is not None else rows[end].name
        )
    return RepeatLeft(
        rows=_named(rows, start, end),
        each=_total(takes[end + 1 - cycle : end + 1]),
        planned=planned,
        allowed=max(0, allowed),
        closing=_total(takes[end + 1 :]),
        last=last,
        is_even=is_even,
    )


def _allowed(numbers: Sequence[Fraction], whole: int, end: int, cycle: int, spare: Fraction) -> tuple[int, bool]:
    """How many whole repeats the spare yarn allows, and whether all of them take the same."""
    each = [sum(numbers[at : at + cycle], Fraction(0)) for at in range(whole, end + 1, cycle)]
    first = sum(numbers[max(0, end + 1 - cycle) : end + 1], Fraction(0))
    is_even = all(one == first for one in each)
    growth = each[-1] - each[-2] if len(each) > 1 else Fraction(0)
    done, last = 0, each[-1] if each else first
    while spare >= 0 and done < 10_000:
        takes = each[done] if done < len(each) else last + growth * (done - len(each) + 1)
        if takes <= 0 or takes > spare:
            break
        spare -= takes
        done += 1
    return done, is_even


def _listed(labels: Sequence[str]) -> str:
    """`3 and 4`, `2, 3, 4 and 5`."""
    return " and ".join([", ".join(labels[:-1]), labels[-1]] if len(labels) > 1 else labels)


def _named(rows: Sequence[SingleRow], start: int, end: int) -> str:
    """What is repeated, as a maker would say it: `Rnds 3 and 4`, or the range itself, `Rnds 5 to 12`."""
    kind = rows[end].name.rsplit(" ", 1)[0]
    again = next((step for step in rows[end].row.steps if isinstance(step, RowsAgain)), None)
    if again is not None:
        return f"{kind}{'s' if len(again.labels) > 1 else ''} {_listed(again.labels)}"
    first, last = rows[start].number, rows[end].number
    return f"{kind}s {first} to {last}" if first is not None else rows[end].row.label.text
