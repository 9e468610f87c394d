"""Petals written without brackets: `1 sc, 1 hdc, 5 dc, 1 hdc, 1 sc over each loop` goes into every loop as a whole.

Only where each stitch has its number, and what stands last mirrors what stands first; even then the words may mean that
the last stitch alone goes into each loop, so both are kept, the likelier first.
"""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Either, Step, Work
from gradegen.read.notation.places.things import is_space
from gradegen.read.notation.stitches.groups import replace_place
from gradegen.read.notation.words.reading import Reading, plain

_FEWEST = 3  # kinds of stitch in a row that make a petal


def gathered_in_each(r: Reading, steps: list[Step], barrier: int) -> bool:
    """Joins bare stitches before the last step to it where they make a petal; False where they do not."""
    work = steps[-1] if steps else None
    if not isinstance(work, Work) or work.bare or not _is_each_space(work):
        return False
    begins = len(steps) - 1
    while begins > barrier and _is_part(steps[begins - 1]):
        begins -= 1
    before = [step for step in steps[begins:-1] if isinstance(step, Work)]
    sizes = [(one.makes[0].stitch, plain(one.into.number) or 1) for one in before]
    sizes.append((work.makes[0].stitch, plain(work.makes[0].times) or 1))
    if len(sizes) < _FEWEST or sizes != sizes[::-1] or not _are_numbered(r, [*before, work]):
        return False
    makes = tuple(replace(one.makes[0], times=one.into.number) for one in before) + work.makes
    group = replace(work, makes=makes, place=replace_place(before[0], work))
    why = ("all go into each place", "only the last goes into each, the others into the places before")
    steps[begins:] = [Either(((group,), (*before, work)), why, place=group.place)]
    return True


def _is_each_space(work: Work) -> bool:
    into = work.into
    whole = into.which == "each" and into.number is None and len(work.makes) == 1 and into.of is None
    return whole and len(into.things) == 1 and is_space(into.things[0])


def _is_part(step: Step) -> bool:
    return isinstance(step, Work) and step.bare and step.into.which == "next" and len(step.makes) == 1


def _are_numbered(r: Reading, works: list[Work]) -> bool:
    """True where a number is written before every stitch."""
    numbers = {r.written.place(t.start, t.end).column for t in r.tokens if t.kind in ("number", "count")}
    return all(one.place.column in numbers for one in works)
