"""The steps of a row, one clause after the other; what no form fits is kept as unread words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from gradegen.design.rows import (
    Aside,
    Chain,
    Even,
    OtherSide,
    Repeat,
    Skip,
    Stated,
    Step,
    Thing,
    Turn,
    Unread,
    Work,
)
from gradegen.read.notation.asides.asides import read_aside, read_heading, read_rows_said, read_trailing
from gradegen.read.notation.asides.holding import read_hold
from gradegen.read.notation.asides.materials import read_material
from gradegen.read.notation.asides.size_passages import ends_size_passage, read_sizes_headed, read_sizes_only
from gradegen.read.notation.asides.stated import read_open_count
from gradegen.read.notation.asides.unknown import read_unknown_stitch
from gradegen.read.notation.clauses.counts_at_end import counts_may_stand
from gradegen.read.notation.clauses.unread_words import is_known, unread_words
from gradegen.read.notation.passages.changes import counts_even, evened_count, read_change, read_even
from gradegen.read.notation.passages.evenly import read_along_ends, read_beside, read_evenly, read_work_to_last
from gradegen.read.notation.passages.every_so_many import read_every_so_many
from gradegen.read.notation.passages.passages import read_passage
from gradegen.read.notation.passages.row_references import read_rows_again
from gradegen.read.notation.places.bounds import count_is_behind_end
from gradegen.read.notation.places.in_words import read_elsewhere
from gradegen.read.notation.places.loops_named import read_loop_for_all
from gradegen.read.notation.places.place_words import read_loop
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.repeats.bindings import with_whole_row
from gradegen.read.notation.repeats.brackets import read_bracket, read_times_before
from gradegen.read.notation.repeats.cut_endings import with_cut_endings
from gradegen.read.notation.repeats.repeats import Star
from gradegen.read.notation.repeats.stars import close_at_end, close_open_star, read_star, read_star_repeat
from gradegen.read.notation.stitches.attached import read_attach
from gradegen.read.notation.stitches.chains import (
    read_chain,
    read_half_turn,
    read_join,
    read_other_side,
    read_slip,
    read_turn,
)
from gradegen.read.notation.stitches.clusters import read_decrease_over, read_held_first, read_off_as_one
from gradegen.read.notation.stitches.dropped_loops import with_dropped_loop
from gradegen.read.notation.stitches.each_side import read_each_side
from gradegen.read.notation.stitches.first_chain import read_first_chain
from gradegen.read.notation.stitches.going_on import going_on, joined_on, with_chains_between, with_exception
from gradegen.read.notation.stitches.groups import gathered
from gradegen.read.notation.stitches.petal_rounds import gathered_in_each
from gradegen.read.notation.stitches.place_first import read_place_first
from gradegen.read.notation.stitches.skips import read_skip
from gradegen.read.notation.stitches.spaced_lists import read_spaced_list
from gradegen.read.notation.stitches.spelled_out import read_spelled_out
from gradegen.read.notation.stitches.works import read_work
from gradegen.read.notation.words.reading import DEEPEST, SEPARATORS, Reading
from gradegen.read.notation.words.word_lists import ROWS, phrases, words

_VERBS = words("work make begin start with do crochet put end ending finish by to")


@dataclass(slots=True)
class Steps:
    """The steps of one level (the row, or one bracket), its open stars, and the counts printed among them."""

    steps: list[Step] = field(default_factory=list)
    stars: list[Star] = field(default_factory=list)
    stated: list[Stated] = field(default_factory=list)
    barrier: int = 0
    after_stop: bool = False
    unread: tuple[int, int] = (-1, 0)


def read_steps(r: Reading, stop: int, *, whole_row: bool = False) -> Steps:
    """The steps from here to the token at `stop`."""
    level = Steps()
    if r.depth > DEEPEST:
        level.steps.append(unread_words(r, r.at, stop))
        r.at = stop
        return level
    r.depth += 1
    while r.at < stop:
        before = r.at
        if not _separator(r, level):
            _one(r, level, stop, whole_row)
        if r.at == before:  # never to stand still
            r.at += 1
    close_at_end(r, level.steps, level.stars)
    level.steps = with_cut_endings(joined_on(r, level.steps))
    level.steps = with_whole_row(r, level.steps) if whole_row else level.steps
    r.depth -= 1
    return level


def _separator(r: Reading, level: Steps) -> bool:
    token = r.here
    opens = bool(level.steps) and isinstance(level.steps[-1], (OtherSide, Aside))
    if token.kind == ":" and r.peek().kind in ("number", "count") and not opens:
        return False
    if token.kind == "-" and r.low(1) in ("rep", "repeat"):
        r.at += 1
        return True
    if token.kind in SEPARATORS:
        r.at += 1
        if token.kind == ".":
            level.after_stop = True
            level.barrier = len(level.steps)
        return True
    if (
        token.kind == "word"
        and token.low in ("and", "then", "now", "next")
        and (token.low != "next" or r.peek().kind == ",")
    ):
        r.at += 1
        return True
    return False


def _one(r: Reading, level: Steps, stop: int, whole_row: bool) -> None:
    token = r.here
    if token.kind == "star" and (told := read_spelled_out(r)) is not None:
        _keep(r, level, [told])
        return
    if token.kind == "star":
        read_star(r, level.steps, level.stars)
        level.barrier = len(level.steps)
        return
    if token.low in ("rep", "repeat", "repeating") and read_star_repeat(r, level.steps, level.stars):
        level.barrier, level.after_stop = len(level.steps), False
        return
    if token.kind == "open":
        read_bracket(r, level.steps, level.stated, stop, read_steps)
        if level.steps and not isinstance(level.steps[-1], Aside):
            gathered(r, level.steps, level.barrier)
        return
    if token.kind in ("number", "count") and read_times_before(r, level.steps, stop, read_steps):
        return
    if token.kind == "close":
        r.at += 1
        return
    if (
        whole_row
        and token.kind == "count"
        and r.written.text[token.start] in "([{"
        and r.peek().kind in (".", "end", ",", ";")
    ):
        number = r.number()  # `(90, 95, 100)`: a list with no number before its bracket
        if number is not None:
            level.stated.append(Stated(number, Thing("st"), place=number.place))
        return
    counts = read_open_count(r, at_sentence=counts_may_stand(r, level.steps, level.after_stop)) if whole_row else None
    if counts is not None:
        level.stated += counts
        return
    if level.stars and _tail_without_repeat(r, level):
        return
    _clause(r, level, stop)


def _tail_without_repeat(r: Reading, level: Steps) -> bool:
    """`*Sc 3, sc2tog; around`: the word that says how far, with the star still open."""
    return r.low() in ("around", "across", "to", "round") and close_open_star(r, level.steps, level.stars)


Form = Callable[[Reading], "Step | list[Step] | None"]
_FORMS: tuple[Form, ...] = (
    read_material,
    read_every_so_many,
    read_passage,
    read_rows_again,
    read_even,
    read_change,
    read_held_first,
    read_spelled_out,
    read_each_side,
    read_spaced_list,
    read_along_ends,
    read_work,
    read_chain,
    read_slip,
    read_skip,
    read_first_chain,
    read_hold,
    read_half_turn,
    read_join,
    read_attach,
    read_turn,
    read_other_side,
    read_elsewhere,
    read_off_as_one,
    read_decrease_over,
    read_place_first,
    read_evenly,
    read_beside,
    read_work_to_last,
    read_aside,
)


def _clause(r: Reading, level: Steps, stop: int) -> None:
    """One clause as steps, or its words unread."""
    mark = r.at
    if read_loop_for_all(r, level.steps) or _loop_for_one(r, level, stop) or ends_size_passage(r):
        return
    if r.low() in ("for", "size", "sizes"):
        only = read_sizes_only(r, stop, read_steps)
        if only is not None:
            level.steps.append(only[0])
            level.stated += only[1]
            return
    if (headed := read_sizes_headed(r, stop, read_steps)) is not None:
        level.steps.append(headed[0])
        level.stated += headed[1]
        return
    found = (
        with_exception(r, level.steps)
        or with_dropped_loop(r, level.steps)
        or with_chains_between(r, level.steps)
        or _fitting(r, stop)
        or _late_place(r, level)
        or going_on(r, level.steps)
    )
    if found is None and r.low() in _VERBS:
        r.at += 1
        r.accept("each", "every", "the")
        r.phrase(phrases("last repeat|last rep|row|rnd|round"))
        while r.low() in ("with", "by", "off", "now", "a", "an") or (
            r.low() == "in" and r.peek().kind in ("stitch", "number")
        ):
            r.at += 1
        found = [] if r.here.kind in ("open", "star") else _fitting(r, stop)
        if found is None:
            r.accept("a", "an")
            found = read_unknown_stitch(r)
    if found is None:
        r.at = mark
        found = read_unknown_stitch(r)
    if found is None and (said := read_rows_said(r) or read_heading(r, mark)) is not None:
        found = [said]
    if found is None:
        r.at = min(max(r.next_break(mark), mark + 1), stop)
        _keep_unread(r, level, mark)
        return
    _keep(r, level, found)


def _fitting(r: Reading, stop: int) -> list[Step] | None:
    """What the first form that fits the whole clause gives."""
    mark = r.at
    for form in _FORMS:
        found = form(r)
        if found is None:
            r.at = mark
            continue
        steps: list[Step] = list(found) if isinstance(found, list) else [found]
        if r.at <= stop:
            if r.at_break() or _runs_on(r, steps):
                return _explained(r, mark, steps)
            trailing = read_trailing(r) or _for_rows(r, steps)
            if trailing is not None:
                return [*steps, trailing]
            if isinstance(steps[0], Work) and (side := read_other_side(r)) is not None and r.at_break():
                return [side, *steps]  # `sc in next 4 ch on opposite side`
        r.at = mark
    return None


def _for_rows(r: Reading, steps: list[Step]) -> Aside | None:
    """`sc in each st for 5 rounds`: where every round is alike."""
    mark = r.at
    work = steps[-1]
    alike = isinstance(work, Work) and work.into.which == "each" and [make.times for make in work.makes] == [None]
    if alike and r.accept("for") and r.number() is not None and r.accept(*ROWS):
        return Aside(r.text(mark), place=r.place(mark))
    r.at = mark
    return None


def _runs_on(r: Reading, steps: list[Step]) -> bool:
    """True where only a comma is missing: `Ch 4 (counts as tr) tr in ...`, `With Red ch 72`."""
    follows = r.here.kind in ("number", "count", "stitch")
    if isinstance(steps[-1], (Work, Repeat)) and count_is_behind_end(r):
        return True
    if isinstance(steps[-1], Turn) and (follows or r.low() in ("leave", "leaving")):
        return True
    if isinstance(steps[-1], Even) and (r.low() in ("on", "over") or counts_even(r)):
        return True
    if isinstance(steps[-1], Skip) and r.here.kind == "number" and r.peek().kind == "stitch":
        return True
    if isinstance(steps[-1], Chain) and r.here.kind == "stitch" and r.here.value != "ch":
        return True
    if _is_mesh(r, steps[-1]) and r.here.kind == "number" and r.peek().kind == "stitch":
        return True
    before = r.tokens[r.at - 1]
    remark = isinstance(steps[-1], Aside) and (before.kind == "word" or before.value == "magic ring")
    if remark and r.low() in ("make", "work") and r.peek().kind in ("number", "count", "stitch"):
        return True  # `With 4 mm hook make 59 ch`
    return follows and (before.kind == "close" or remark)


def _is_mesh(r: Reading, step: Step) -> bool:
    """True for counted spaces and blocks: `2 sp 4 dc`."""
    if not isinstance(step, Work) or not step.bare or len(step.makes) != 1:
        return False
    mesh = r.names.definitions.get(step.makes[0].stitch)
    return mesh is not None and any(isinstance(one, (Chain, Skip)) for one in mesh.steps)


def _late_place(r: Reading, level: Steps) -> list[Step] | None:
    """`1 dc, in each st`: the place of the stitch before a comma too many."""
    mark = r.at
    last = level.steps[-1] if level.steps else None
    if r.low() != "in" or not isinstance(last, Work) or not last.bare or r.tokens[mark - 1].kind != ",":
        return None
    into = read_place(r)
    if into is None or not r.at_break():
        r.at = mark
        return None
    level.steps.pop()
    makes = tuple(replace(make, times=last.into.number) if last.into.number else make for make in last.makes)
    return [Work(makes, into, place=last.place)]


def _explained(r: Reading, mark: int, steps: list[Step]) -> list[Step]:
    """`work even: ch 3, dc in each dc` only announces the steps behind it."""
    if r.here.kind == ":" and r.peek().kind not in ("number", "count", "end") and isinstance(steps[0], Even):
        return [Aside(r.text(mark), place=r.place(mark))]
    return steps


def _loop_for_one(r: Reading, level: Steps, stop: int) -> bool:
    """`BLO sc in each st across`: for this stitch alone."""
    mark, before = r.at, r.loop
    loop = read_loop(r)
    if loop is None or r.here.kind not in ("stitch", "number", "count"):
        r.at = mark
        return False
    r.loop = loop
    found = _fitting(r, stop)
    r.loop = before
    if found is None:
        r.at = mark
        return False
    _keep(r, level, found)
    return True


def _keep(r: Reading, level: Steps, found: Sequence[Step]) -> None:
    for step in found:
        level.steps.append(step)
    level.after_stop = False
    even = evened_count(r)
    if even is not None:
        level.stated.append(Stated(even[0], Thing(even[1]), place=even[0].place))
    if not gathered_in_each(r, level.steps, level.barrier):
        gathered(r, level.steps, level.barrier)


def _keep_unread(r: Reading, level: Steps, mark: int) -> None:
    """The words since `mark`, joined to unread words just before them."""
    level.after_stop = False
    last = level.steps[-1] if level.steps else None
    index, begun = level.unread
    goes_on = isinstance(last, Unread) and index == len(level.steps) - 1 >= level.barrier
    if goes_on and isinstance(last, Unread) and last.known == is_known(r, mark, r.at):
        level.steps[-1] = unread_words(r, begun, r.at)
        return
    level.unread = (len(level.steps), mark)
    level.steps.append(unread_words(r, mark, r.at))
