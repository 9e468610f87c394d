"""Rows as the trade writes them, read into trees: `read_row` one, `read_rows` a block."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from gradegen.design.rows import (
    Aside,
    Chain,
    Change,
    Either,
    Even,
    Into,
    Join,
    Label,
    Mixed,
    Repeat,
    Row,
    RowsAgain,
    Slip,
    Step,
    Turn,
    Unread,
    Work,
)
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.notation.asides.size_passages import of_sizes_only
from gradegen.read.notation.clauses.rings import ring_closed, worked_into_ring
from gradegen.read.notation.clauses.steps import Steps, read_steps
from gradegen.read.notation.clauses.unread import holds_unread
from gradegen.read.notation.labels.labels import ReadLabel, interpret, read_label
from gradegen.read.notation.notes.filet import implied_meshes
from gradegen.read.notation.notes.learned import learned
from gradegen.read.notation.notes.spelling import spelled
from gradegen.read.notation.sizes.size_lists import join_lists
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import Token

__all__ = ["RowNames", "read_next", "read_row", "read_rows"]

UNDEFINED_STITCH = Rule(
    "undefined-stitch",
    Severity.ERROR,
    "trade standard",
    "A stitch is neither a usual abbreviation nor explained by the pattern.",
)
_LONGEST_ROW = 8_000  # characters; what stands behind them is kept unread
_MOST_FINDINGS = 5  # lists of a wrong length told of in one row


def read_row(written: Written, names: RowNames, label: str | None = None) -> tuple[Row, tuple[Finding, ...]]:
    """One row as a tree; `label` where it does not stand in the text. Words that fit no form stay in it as unread."""
    row, findings, _ = read_next(written, names, label)
    return row, findings


def read_rows(written: Written, names: RowNames) -> tuple[tuple[Row, ...], tuple[Finding, ...]]:
    """One row a line; a line that begins with white space goes on with the row above, blank lines are passed over.

    A stitch that one row explains in passing (`(2 dc, ch 2, 2 dc) (shell) in next sp`) is known to the rows behind it.
    """
    rows: list[Row] = []
    findings: list[Finding] = []
    for part in _row_texts(written):
        row, found, names = read_next(part, names)
        rows.append(row)
        findings += found
    return tuple(rows), tuple(findings)


def _row_texts(written: Written) -> list[Written]:
    """The stretches of the text that are one row each."""
    spans: list[tuple[int, int]] = []
    at = 0
    for line in written.text.split("\n"):
        start, end = at, at + len(line)
        at = end + 1
        if not line.strip():
            continue
        if spans and line[0] in " \t":
            spans[-1] = (spans[-1][0], end)
        else:
            spans.append((start, end))
    return [written.part(start, start + len(written.text[start:end].rstrip())) for start, end in spans]


def read_next(written: Written, names: RowNames, label: str | None = None) -> tuple[Row, tuple[Finding, ...], RowNames]:
    """One row, and what the rows behind it know besides: the stitches it explains in passing."""
    meshes = implied_meshes(written, names)
    if meshes:
        names = replace(names, definitions={**names.definitions, **meshes})
    row, findings = _read(written, names, label)
    taught = {**meshes, **learned(written, row.steps, names)}
    if not taught:
        return row, findings, names
    known = replace(names, definitions={**names.definitions, **taught})
    if any(names.stitch(name) is None for name in taught):
        row, findings = _read(written, known, label)
    return replace(row, defines=tuple(taught.values())), findings, known


def _read(written: Written, names: RowNames, label: str | None) -> tuple[Row, tuple[Finding, ...]]:
    head = _label(written, names, label)
    names = replace(names, only=head.sizes) if head.sizes else names
    text = written.text
    if len(text) > _LONGEST_ROW:
        text = text[:_LONGEST_ROW]
    tokens = [token for token in spelled(text, names) if token.start >= head.end]
    listing = join_lists(written, tokens, names)
    reading, level = _steps(written, names, listing.tokens)
    findings = [*head.findings, *listing.findings[:_MOST_FINDINGS], *reading.findings]
    steps = _number_alone(head.label, listing.tokens, names, written) or level.steps
    if len(text) < len(written.text):
        steps.append(Unread(written.text[len(text) :], place=written.place(len(text))))
    if reading.unknown and _may_be_prose(reading, steps):
        steps = [Unread(written.text[head.end :], place=written.place(head.end))]
    if not holds_unread(steps):
        findings += _undefined(reading)
    steps, only = (steps, names.only) if names.only else of_sizes_only(steps)
    steps, turning_chain = _turning_chain(_turned_first(_closed(worked_into_ring(ring_closed(steps)))))
    row = Row(
        head.label,
        tuple(_changed_even(_once_more(steps))),
        tuple(level.stated),
        head.side,
        only,
        turning_chain,
        written.text,
        (*(head.lists if label is None else ()), *listing.lists, *reading.lists),
        place=written.place(),
    )
    return row, tuple(findings)


def _number_alone(label: Label, tokens: list[Token], names: RowNames, written: Written) -> list[Step]:
    """`Foundation chain: 38.`: the label says what is counted; none where more, or no chain, is said."""
    kinds = [one.kind for one in tokens if one.kind not in (".", "end")]
    if not label.name.lower().endswith(" chain") or kinds not in (["number"], ["count"]):
        return []
    number = Reading(written, names, tokens).number()
    return [Chain(number, place=number.place)] if number is not None else []


def _label(written: Written, names: RowNames, label: str | None) -> ReadLabel:
    if label is None:
        return read_label(written, names)
    if not label.strip():
        return ReadLabel(Label("", place=written.place(0, 0)))
    place = written.place(0, 0)
    found = interpret(Written.plain(label, place.file, place.line, place.column), names)
    found.end = 0
    return found


def _steps(written: Written, names: RowNames, tokens: list[Token]) -> tuple[Reading, Steps]:
    """The steps; where `2sc` may be two stitches or two in one, both readings of the row."""
    reading, level = _read_once(written, names, tokens, in_one=False)
    if not reading.uses_tight:
        return reading, level
    _, other = _read_once(written, names, tokens, in_one=True)
    if other.steps == level.steps:
        return reading, level
    spaced = _counts_spaced(tokens)
    first, second = (other.steps, level.steps) if spaced else (level.steps, other.steps)
    why = ("so many stitches", "so many in one stitch")
    level.steps = _differing(first, second, why[::-1] if spaced else why, written)
    return reading, level


def _read_once(written: Written, names: RowNames, tokens: list[Token], *, in_one: bool) -> tuple[Reading, Steps]:
    reading = Reading(written, names, tokens, tight_in_one=in_one)
    return reading, read_steps(reading, len(tokens), whole_row=True)


def _counts_spaced(tokens: list[Token]) -> bool:
    """True when the row also writes `9 sc` with a blank: then `2sc` says something else."""
    return any(
        token.kind == "stitch"
        and before.kind in ("number", "count")
        and token.start > before.end
        and token.value != "ch"
        for before, token in pairwise(tokens)
    )


def _differing(first: list[Step], second: list[Step], why: tuple[str, ...], written: Written) -> list[Step]:
    """The steps both readings share, and an Either where they part."""
    start = 0
    while start < min(len(first), len(second)) and first[start] == second[start]:
        start += 1
    tail = 0
    while tail < min(len(first), len(second)) - start and first[-1 - tail] == second[-1 - tail]:
        tail += 1
    one, two = first[start : len(first) - tail], second[start : len(second) - tail]
    place = (one or two or first)[0].place
    either = Either((tuple(one), tuple(two)), why, place=place)
    return [*first[:start], either, *first[len(first) - tail :]]


def _turning_chain(steps: list[Step]) -> tuple[list[Step], Chain | None]:
    """The steps without a `Ch 3, turn` at their end, and that chain: it belongs to the next row."""
    last = len(steps) - 1
    while last > 0 and isinstance(steps[last], (Aside, RowsAgain)):
        last -= 1
    if last > 0 and isinstance(steps[last], Turn):
        chain = steps[last - 1]
        if isinstance(chain, Chain) and any(not isinstance(step, (Aside, Chain)) for step in steps[: last - 1]):
            return [*steps[: last - 1], *steps[last:]], chain
    return steps, None


def _closed(steps: list[Step]) -> list[Step]:
    """A slip stitch into the first stitch or the top of the chain, at the end of a row, is its join."""
    last = len(steps) - 1
    while last > 0 and isinstance(steps[last], (Aside, Turn, Chain)):
        last -= 1
    slip = steps[last] if last > 0 else None
    if not isinstance(slip, Slip) or slip.into.number is not None:
        return steps
    top = slip.into.which == "tch" or _is_nth_chain(slip.into)
    if not top and slip.into.which != "first":
        return steps
    if not any(isinstance(step, (Work, Repeat, Mixed)) for step in steps[:last]):
        return steps
    name = slip.into.things[0].name if slip.into.things and not top else ""
    join = Join("top of chain" if top else "first st", slip.into.nth if top else None, stitch=name, place=slip.place)
    return [*steps[:last], join, *steps[last + 1 :]]


def _is_nth_chain(into: Into) -> bool:
    """`ss to 3rd ch`, with the chain that begins the round left unsaid."""
    return into.which == "of" and into.of is None and into.nth is not None and [t.name for t in into.things] == ["ch"]


def _turned_first(steps: list[Step]) -> list[Step]:
    """`Ch 1, turn, sc in ...` at the start of a row: the turn comes before its chain."""
    begin = 0
    while begin < len(steps) and isinstance(steps[begin], Aside):
        begin += 1
    if begin + 2 < len(steps) and isinstance(steps[begin], Chain) and isinstance(steps[begin + 1], Turn):
        return [*steps[:begin], steps[begin + 1], steps[begin], *steps[begin + 2 :]]
    return steps


def _once_more(steps: list[Step]) -> list[Step]:
    """`Repeat 2nd and 3rd rows 9 times` behind other steps means 9 more."""
    worked = any(not isinstance(step, (Aside, RowsAgain)) for step in steps)
    if not worked:
        return steps
    return [
        replace(step, more=True) if isinstance(step, RowsAgain) and step.times is not None else step for step in steps
    ]


def _changed_even(steps: list[Step]) -> list[Step]:
    """`Ch 1, inc 6 sts evenly across` works all the other stitches even, though it doesn't say so."""
    change = next((i for i, step in enumerate(steps) if isinstance(step, Change)), None)
    if change is None or not all(isinstance(step, (Change, Chain, Aside, Turn, Join)) for step in steps):
        return steps
    return [*steps[:change], Even(place=steps[change].place), *steps[change:]]


def _undefined(r: Reading) -> list[Finding]:
    """A finding for each unexplained stitch, once a name."""
    found: dict[str, Finding] = {}
    for one in r.unknown:
        if one.name not in found:
            found[one.name] = UNDEFINED_STITCH.at(
                r.written.place(one.start, one.end),
                f"{one.name} is not a usual abbreviation, and the pattern does not explain it.",
                hint=f"explain {one.name} among the special stitches, or use a stitch's usual abbreviation",
            )
    return list(found.values())


def _may_be_prose(r: Reading, steps: list[Step]) -> bool:
    """True when nothing but bare unexplained stitches was read: `Finish with fancy st`."""
    names = {one.name for one in r.unknown}
    return all(one.bare for one in r.unknown) and all(_is_only_of(step, names) for step in steps)


def _is_only_of(step: Step, names: set[str]) -> bool:
    """True for a step that works no stitch but these."""
    if isinstance(step, Repeat):
        return all(_is_only_of(inner, names) for inner in step.body)
    if isinstance(step, Work):
        return all(make.stitch in names for make in step.makes)
    return not isinstance(step, Mixed)
