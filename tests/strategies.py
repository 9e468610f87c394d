"""Hypothesis strategies: written rows that are right by construction, and the same rows with one number changed.

A row is built from moves. A move knows its words, the things of the edge it takes, in order, and what it makes of them;
the edge a row is worked into is simply everything its moves take, one after the other. So the right answer is known
before anybody reads a word.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from hypothesis import strategies as st
from slow_worker.moves import (
    DEFINITIONS,
    NOTES,
    PLAIN,
    SIZE_NAMES,
    MadeRow,
    Move,
    bodies,
    called,
    is_stitch,
    listed,
    made_by,
    runs,
    stitch_moves,
    stitches,
    taken_by,
    words_of,
)

# -- whole rows ------------------------------------------------------------------------------------------------------


@st.composite
def sizes_and_times(draw: st.DrawFn) -> tuple[tuple[str, ...], tuple[int, ...]]:
    """One to six sizes and how often the repeat runs in each (at least twice)."""
    many = draw(st.sampled_from([1, 1, 3, 4, 6]))
    first = draw(st.integers(2, 12))
    steps = draw(st.lists(st.integers(0, 4), min_size=many - 1, max_size=many - 1))
    times = [first]
    for step in steps:
        times.append(times[-1] + step)
    return SIZE_NAMES[:many], tuple(times)


@st.composite
def repeat_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 1, [start,] *body; rep from * around|to last n|n more times [, end]; join. (count)`."""
    sizes, times = draw(sizes_and_times())
    below = draw(PLAIN)
    length = draw(st.sampled_from([None, None, 1, 2, 3]))
    by_name = draw(st.booleans())
    body = draw(bodies(below, length, by_name))
    start = tuple(draw(st.lists(stitch_moves(below, by_name), max_size=2)))
    end = tuple(draw(st.lists(stitch_moves(below, by_name), max_size=2)))
    form = draw(st.sampled_from(["around", "to last", "more", "bracket"]))
    if form == "around":
        end = ()
    if form == "to last" and (not end or not ends_on_stitches(body, end)):
        form = "more"
    shape = draw(st.sampled_from(["flat", "joined rounds", "half-twist band"]))
    per_size = [(*start, *body * number, *end) for number in times]
    priors = [runs([(1, taken_by(start)), (number, taken_by(body)), (1, taken_by(end))]) for number in times]
    middle = repeat_words(form, body, end, times, shape)
    text = ", ".join(part for part in (words_of(start), middle, words_of(end)) if part)
    return finished(draw, f"Ch 1, {text}", shape, sizes, priors, per_size)


def ends_on_stitches(body: Sequence[Move], end: Sequence[Move]) -> bool:
    """Whether "to last n sts" says where the repeats stop: only stitches at the end, and no space just before it."""
    return all(is_stitch(item) for item in taken_by(end)) and bool(taken_by(body)) and is_stitch(taken_by(body)[-1])


def repeat_words(form: str, body: Sequence[Move], end: Sequence[Move], times: Sequence[int], shape: str) -> str:
    """The repeat as it is written."""
    inside, edge = words_of(body), "across" if shape == "flat" else "around"
    if form == "around":
        return f"*{inside}; rep from * {edge}"
    if form == "to last":
        last = len(taken_by(end))
        return f"*{inside}; rep from * {edge} to last {last} st{'s' if last > 1 else ''}"
    if form == "more":
        more = listed([number - 1 for number in times])
        return f"*{inside}; rep from * {more} more time{'' if more == '1' else 's'}"
    return f"({inside}) {listed(times)} times"


def finished(
    draw: st.DrawFn,
    text: str,
    shape: str,
    sizes: tuple[str, ...],
    priors: Sequence[str],
    per_size: Sequence[Sequence[Move]],
    first: tuple[str, ...] = (),
) -> MadeRow:
    """The row with its ending and its stated count; `first`: what a counting chain stands for."""
    after = tuple((*first, *made_by(moves)) for moves in per_size)
    made = tuple(stitches(items) for items in after)
    taken = tuple(stitches(taken_by(moves)) + (1 if first else 0) for moves in per_size)
    own = tuple({name: sum(name in move.own for move in moves) for name in DEFINITIONS} for moves in per_size)
    number = listed(made, draw(st.sampled_from(["round", "square", "grouped"])))
    count = draw(st.sampled_from([f"[{number}]", f"({number} sts)", f"[{number} sts]"]))
    ending = "turn" if shape == "flat" else "join"
    return MadeRow(
        text=f"{text}, {ending}. {count}",
        shape=shape,
        sizes=sizes,
        priors=tuple(priors),
        made=made,
        taken=taken,
        after=after,
        own=own,
        definitions=dict(DEFINITIONS),
        notes=NOTES,
    )


@st.composite
def counting_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 3, dc in next st, *body; rep from * around`: the ch-3 stands on the first stitch."""
    sizes, times = draw(sizes_and_times())
    below = draw(PLAIN)
    by_name = draw(st.booleans())
    plain = draw(st.integers(0, 3))
    start = (
        (Move(f"dc in next {plain} {called(below, plain, by_name)}", (below,) * plain, ("dc",) * plain),)
        if plain
        else ()
    )
    body = draw(bodies(below, draw(st.sampled_from([None, 1, 2])), by_name))
    shape = draw(st.sampled_from(["flat", "joined rounds"]))
    per_size = [(*start, *body * number) for number in times]
    priors = [runs([(1, (below, *taken_by(start))), (number, taken_by(body))]) for number in times]
    middle = repeat_words("around", body, (), times, shape)
    text = ", ".join(part for part in ("Ch 3", words_of(start), middle) if part)
    return finished(draw, text, shape, sizes, priors, per_size, ("dc",))


@st.composite
def each_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 1, [start,] sc in each st [and 2 sc in each sp] around`, over a plain or a repeated edge."""
    sizes, times = draw(sizes_and_times())
    below, stitch = draw(PLAIN), draw(PLAIN)
    length = draw(st.sampled_from([None, 1, 2, 3]))
    unit: tuple[str, ...] = (below,) * draw(st.integers(1, 4)) + ((f"ch-{length} sp",) if length else ())
    many = draw(st.integers(1, 4))
    shape = draw(st.sampled_from(["flat", "joined rounds"]))
    edge = "across" if shape == "flat" else "around"
    into_sp = f" and {many} {stitch} in each ch-{length} sp" if many > 1 else f" and in each ch-{length} sp"
    text = f"{stitch} in each st{into_sp if length else ''} {edge}"
    moves = tuple(Move("", (item,), (stitch,) * (1 if is_stitch(item) else many)) for item in unit)
    per_size = [moves * number for number in times]
    priors = [runs([(number, unit)]) for number in times]
    return finished(draw, f"Ch 1, {text}", shape, sizes, priors, per_size)


@st.composite
def to_last_rows(draw: st.DrawFn) -> MadeRow:
    """`Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn`: ends worked one way, the middle another."""
    sizes, times = draw(sizes_and_times())
    below, stitch = draw(PLAIN), draw(PLAIN)
    start = tuple(draw(st.lists(stitch_moves(below, by_name=False), min_size=1, max_size=2)))
    end = tuple(draw(st.lists(stitch_moves(below, by_name=False), min_size=1, max_size=2)))
    last = len(taken_by(end))
    middle = [Move("", (below,), (stitch,))]
    per_size = [(*start, *middle * number, *end) for number in times]
    priors = [f"{len(taken_by(moves))} {below}" for moves in per_size]
    to_last = f"{stitch} in each st to last {last} st{'s' if last > 1 else ''}"
    text = f"Ch 1, {words_of(start)}, {to_last}, {words_of(end)}"
    return finished(draw, text, "flat", sizes, priors, per_size)


@st.composite
def passing_rows(draw: st.DrawFn) -> MadeRow:
    """`*2 dc in next ch-2 sp; rep from * around`: spaces only, the stitches passed without a word; or the other way."""
    sizes, times = draw(sizes_and_times())
    below, stitch, many = draw(PLAIN), draw(PLAIN), draw(st.integers(2, 6))
    length, plain = draw(st.integers(1, 4)), draw(st.integers(1, 3))
    space = f"ch-{length} sp"
    unit = (below,) * plain + (space,)
    form = draw(st.sampled_from(["spaces", "stitches", "each space"]))
    shape = draw(st.sampled_from(["flat", "joined rounds"]))
    edge = "across" if shape == "flat" else "around"
    if form == "stitches":
        words = f"*{stitch} in next {plain} st{'s' if plain > 1 else ''}, ch 1; rep from * {edge}"
        made = (stitch,) * plain + ("ch-1 sp",)
    elif form == "spaces":
        words, made = f"*{many} {stitch} in next {space}; rep from * {edge}", (stitch,) * many
    else:
        words, made = f"{many} {stitch} in each {draw(st.sampled_from([space, 'sp']))} {edge}", (stitch,) * many
    per_size = [(Move(words, unit, made),) * number for number in times]
    return finished(draw, f"Ch 1, {words}", shape, sizes, [runs([(number, unit)]) for number in times], per_size)


@st.composite
def nested_rows(draw: st.DrawFn) -> MadeRow:
    """`*start, (inner) 3 times, end; rep from * around`: a repeat within a repeat."""
    sizes, times = draw(sizes_and_times())
    below, inside = draw(PLAIN), draw(st.integers(2, 5))
    length = draw(st.sampled_from([None, 1, 2]))
    start = tuple(draw(st.lists(stitch_moves(below, by_name=False), max_size=2)))
    inner = draw(bodies(below, length, by_name=False))
    end = tuple(draw(st.lists(stitch_moves(below, by_name=False), max_size=2)))
    often = {2: "twice"}.get(inside, f"{inside} times")
    parts = [words_of(start), f"({words_of(inner)}) {often}", words_of(end)]
    shape = draw(st.sampled_from(["flat", "joined rounds", "half-twist band"]))
    body = (*start, *inner * inside, *end)
    text = f"*{', '.join(part for part in parts if part)}; rep from * {'across' if shape == 'flat' else 'around'}"
    per_size = [body * number for number in times]
    priors = [runs([(number, taken_by(body))]) for number in times]
    return finished(draw, f"Ch 1, {text}", shape, sizes, priors, per_size)


@st.composite
def stopping_rows(draw: st.DrawFn) -> MadeRow:
    """`*first**, second; rep from * across, ending last rep at **`."""
    sizes, times = draw(sizes_and_times())
    below = draw(PLAIN)
    first = draw(bodies(below, None, by_name=False))
    second = draw(bodies(below, draw(st.sampled_from([None, 2])), by_name=False))
    shape = draw(st.sampled_from(["flat", "joined rounds"]))
    edge = "across" if shape == "flat" else "around"
    text = f"*{words_of(first)}**, {words_of(second)}; rep from * {edge}, ending last rep at **"
    per_size = [(*(*first, *second) * number, *first) for number in times]
    priors = [runs([(number, taken_by((*first, *second))), (1, taken_by(first))]) for number in times]
    return finished(draw, f"Ch 1, {text}", shape, sizes, priors, per_size)


@st.composite
def slipped_rows(draw: st.DrawFn) -> MadeRow:
    """`Sl st in next ch-2 sp, ch 3, 2 dc in same sp, *3 dc in next ch-2 sp; rep from * around`: begun in a space."""
    sizes, times = draw(sizes_and_times())
    below, many = draw(PLAIN), draw(st.integers(2, 6))
    length, plain, chain = draw(st.integers(1, 4)), draw(st.integers(1, 3)), draw(st.sampled_from([0, 1, 2]))
    space = f"ch-{length} sp"
    between = f", ch {chain}" if chain else ""
    same = f"{many - 1} dc in same sp" if many > 2 else "dc in same sp"
    text = f"Sl st in next {space}, ch 3, {same}{between}, *{many} dc in next {space}{between}; rep from * around"
    unit = (below,) * plain + (space,)
    made = ("dc",) * many + ((f"ch-{chain} sp",) if chain else ())
    per_size = [(Move("", unit, made),) * number for number in times]
    return finished(draw, text, "joined rounds", sizes, [runs([(number, unit)]) for number in times], per_size)


@st.composite
def beginning_rows(draw: st.DrawFn) -> MadeRow:
    """Rows that make their own beginning: a chain worked flat or joined, a ring, a half-twist band."""
    sizes, times = draw(sizes_and_times())
    form = draw(st.sampled_from(["sc", "hdc", "dc", "joined", "ring", "magic ring", "half twist"]))
    extra = {"sc": 1, "hdc": 2, "dc": 2}.get(form, 0)
    stitch = form if form in ("sc", "hdc", "dc") else draw(PLAIN)
    chains = [number + 5 + extra for number in times]
    shape = {
        "joined": "joined rounds",
        "ring": "joined rounds",
        "magic ring": "spiral",
        "half twist": "half-twist band",
    }
    made = [number + 5 for number in times]
    if form in ("sc", "hdc", "dc"):
        hook = {"sc": "2nd", "hdc": "3rd", "dc": "4th"}[form]
        text = f"Ch {listed(chains)}. {form.title()} in {hook} ch from hook and in each ch across"
    elif form == "joined":
        text = f"Ch {listed(chains)}, join with sl st in first ch. Ch 1, {stitch} in each ch around"
    elif form == "half twist":
        made = [2 * chain for chain in chains]
        sides = f"{stitch} in each ch, then {stitch} in the free loop of each ch along the other side"
        text = f"Ch {listed(chains)}. Give one end a half turn and join with sl st in first ch. Ch 1, {sides}"
    elif form == "ring":
        stitch, text = "dc", f"Ch 5, join to form ring. Ch 3, {listed([number - 1 for number in made])} dc in ring"
    else:
        text = f"{listed(made)} {stitch} in magic ring"
    taken = {"sc": 1, "hdc": 2, "dc": 2}
    per_size = [(Move("", ("st",) * (number + taken.get(form, 0)), (stitch,) * number),) for number in made]
    row = finished(draw, text, shape.get(form, "flat"), sizes, [""] * len(sizes), per_size)
    notes = (*NOTES, "Ch 2 at beg does not count as a st.")
    text = row.text.replace(", join.", ".") if form == "magic ring" else row.text
    return replace(row, text=text, notes=notes, taken=() if "ring" in form else row.taken)


right_rows = st.one_of(
    repeat_rows(),
    counting_rows(),
    each_rows(),
    to_last_rows(),
    passing_rows(),
    nested_rows(),
    stopping_rows(),
    slipped_rows(),
)


# -- faulty ones -----------------------------------------------------------------------------------------------------

MISFITS = ("repeat-does-not-fit", "runs-short", "stitches-left-over", "stated-count-wrong")


@st.composite
def miscounted_rows(draw: st.DrawFn) -> MadeRow:
    """A right row whose stated count is off in exactly one size, and by no spaces that somebody might count as well."""
    row = draw(right_rows.filter(names_all_it_passes))
    at = draw(st.integers(0, len(row.sizes) - 1))
    spaces = len(row.after[at]) - row.made[at]
    others = (spaces, row.made[at] + spaces)
    by = draw(st.sampled_from([1, 2, 7]).filter(lambda more: row.made[at] + more not in others))
    head, tail = row.text[: row.text.rindex(". ")], row.text[row.text.rindex(". ") :]
    numbers = list(re.finditer(r"\d+", tail))
    wrong = numbers[at]
    tail = tail[: wrong.start()] + str(int(wrong[0]) + by) + tail[wrong.end() :]
    faults = ("stated-count-wrong", "turning-chain-convention")  # one more than made may also be the chain, counted
    return replace(row, text=head + tail, faulty=(row.sizes[at],), faults=faults)


@st.composite
def misfit_rows(draw: st.DrawFn) -> MadeRow:
    """A right row over an edge that has one or more stitches too many at its end in one size."""
    row = draw(st.one_of(repeat_rows(), counting_rows()).filter(asks_for_stitches))
    at = draw(st.integers(0, len(row.sizes) - 1))
    extra = draw(st.integers(1, 3))
    priors = list(row.priors)
    name = last_name(priors[at])
    priors[at] = f"{priors[at]}, {extra} {name}"
    return replace(row, priors=tuple(priors), faulty=(row.sizes[at],), faults=MISFITS)


def names_all_it_passes(row: MadeRow) -> bool:
    """Whether no chain space is passed in silence: it might be meant as a stitch, and then other counts fit."""
    return " sp" not in row.priors[0] or bool(re.search(r"(?:sps?|loop)\b", row.text))


def asks_for_stitches(row: MadeRow) -> bool:
    """Whether the row's own steps, not only its counting chain, go into stitches: then every stitch is owed."""
    chain = 1 if row.text.startswith("Ch 3") else 0
    return all(taken > chain for taken in row.taken)


def last_name(prior: str) -> str:
    """A stitch that an edge already has."""
    return next(name for name in ("sc", "hdc", "dc") if re.search(rf"\b{name}\b", prior))
