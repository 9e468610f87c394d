"""Counts that nobody can know from the words: the row is followed, and its number is not claimed.

A chain that begins a row stands for its stitch where it is as high as that stitch (`ch 3, dc`), where its rest is the
loop that the row goes on making (`ch 5, dc in next dc, * ch 2, dc in next dc`), or where the join, the notes or its own
words say so. `ch 7, 2 dtr with ch 9 between in same sp, * ch 7, ...` may be a stitch and a loop, or a loop alone. The
same holds for chains skipped at the start of a foundation row. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType

from gradegen.design.edge import Edge, Target
from gradegen.design.rows import Aside, Chain, Definition, Mixed, Repeat, Row, Skip, Step, Turn, Work
from gradegen.trade.stitches import stitches
from gradegen.work.edge.edges import tally
from gradegen.work.edge.site import Site

START_UNSURE = "whether the chain at the beginning counts as a stitch is not certain"
START_MISSING = "the row before is not written, and may have made this row's first chain"
NEVER_RUN = "a repeat to the end finds nothing to be worked into"
PASSED_OVER = "stitches of another name stand between, and are passed over without a word"
GROUPS_ALIKE = "which groups are meant is not certain: others on the edge look the same"
SKIPPED_UNSURE = "whether the skipped chains count as a stitch is not certain"
_ATTACHED = re.compile(r"\b(?:attach|join|with)", re.IGNORECASE)


def start_is_doubtful(steps: Sequence[Step], site: Site, number: int, following: str, before: Edge) -> bool:
    """True where a starting chain of this length may as well be a loop, or nothing, before this stitch."""
    height = _height(following)
    if number == 1 or number == height or height <= 1 or number in site.told_chains:
        return False
    if number < height:
        return number < height - 1 or (site.blind and number == 2)
    rest = number - height
    return rest not in set(_chains(steps, site)) and rest != _loop_at_end(before)


def start_is_missing(steps: Sequence[Step], site: Site) -> bool:
    """True for a row that begins with neither a chain nor new yarn: the row not written may have ended on its chain.

    Before nothing but single crochet a chain stands for no stitch.
    """
    works = [step for step in opened(steps, site.definitions) if isinstance(step, Work)]
    if works and all(_height(make.stitch) == 1 for work in works for make in work.makes):
        return False
    for step in steps:
        if isinstance(step, Chain) or (isinstance(step, Aside) and _ATTACHED.search(step.text)):
            return False
        if isinstance(step, (Work, Repeat, Mixed)):
            return True
    return False


def _loop_at_end(edge: Edge) -> int | None:
    """The chain space between the last two stitches of the row before: `ch 2, dc in last st, ch 5, turn` repeats it."""
    ends = [item for item in edge[:2] if isinstance(item, Target)]
    if len(ends) == 2 and ends[0].kind == "st" and not ends[0].group and ends[1].kind == "sp":
        return ends[1].length
    return None


def told_chains(rows: Sequence[Row]) -> frozenset[int]:
    """Lengths of starting chains that a later row works into as stitches: `dc in 3rd st of ch`, `dc in top of ch`."""
    found = set()
    for above, before, row in zip((None, *rows), rows, rows[1:], strict=False):
        into_chain = any(isinstance(step, Work) and step.into.which == "tch" for step in row.steps)
        chain = _starting_chain(above, before) if into_chain else None
        if chain is not None and len(chain.number.values) == 1 and chain.number.values[0] is not None:
            found.add(chain.number.values[0])
    return frozenset(found)


def _starting_chain(above: Row | None, row: Row) -> Chain | None:
    first = next((step for step in row.steps if not isinstance(step, (Aside, Turn))), None)
    if isinstance(first, Chain):
        return first
    return above.turning_chain if above is not None else None


def skipped_is_doubtful(steps: Sequence[Step], site: Site, skipped: int, name: str) -> bool:
    """True where the chains skipped at the start of a foundation row fit neither its first stitch nor its mesh."""
    height = _height(name)
    if height <= 1 or skipped <= height or skipped - height in site.told_skips:
        return False
    return skipped - height not in {gap for chain, skip in _meshes(steps, site) for gap in (chain, chain + skip)}


def _height(name: str) -> int:
    known = stitches().get(name)
    return (known.height or 0) if known else 0


def opened(steps: Sequence[Step], definitions: Mapping[str, Definition] = MappingProxyType({})) -> Iterator[Step]:
    """The steps in order, repeats and counted meshes opened."""
    for step in steps:
        if isinstance(step, Repeat):
            yield from opened(step.body, definitions)
        elif isinstance(step, Mixed):
            yield from step.works
        elif isinstance(step, Work):
            own = definitions.get(step.makes[0].stitch) if step.makes else None
            yield from own.steps if own is not None and own.steps else (step,)
        else:
            yield step


def _chains(steps: Sequence[Step], site: Site) -> Iterator[int]:
    """The lengths of the chains between stitches; those inside groups where the starting chain begins such a group."""
    works = []
    for step in opened(steps, site.definitions):
        if isinstance(step, Chain):
            yield site.number(step.number)
        elif isinstance(step, Work):
            works.append(step)
    if works and works[0].into.which in ("same", "first"):  # `ch 5, dc in same sp, * (dc, ch 2, dc) in next sp`
        yield from (site.number(make.times) for work in works for make in work.makes if make.stitch == "ch")


def _meshes(steps: Sequence[Step], site: Site) -> Iterator[tuple[int, int]]:
    """The chains between a foundation row's stitches, each with how many chains are skipped under it."""
    parts = [step for step in opened(steps, site.definitions) if isinstance(step, (Work, Chain, Skip))]
    for i, step in enumerate(parts[1:], 1):
        if isinstance(step, Chain):
            after = parts[i + 1] if i + 1 < len(parts) else None
            skipped = site.number(after.into.number) if isinstance(after, Skip) else 0
            yield site.number(step.number), skipped


def other_groups_alike(edge: Edge, definition: Definition) -> bool:
    """True where other groups look like the one named in passing: `(tr, ch 3, tr)` beside `(dc, ch 3, dc)`."""
    if not definition.in_passing:
        return False
    spaces = [one for one in tally(edge) if one.kind == "sp" and one.size == len(definition.makes)]
    named = [one for one in spaces if one.group == definition.name]
    others = {(one.nth, one.length) for one in spaces if one.group != definition.name}
    return any((own.nth, own.length) in others for own in named)
