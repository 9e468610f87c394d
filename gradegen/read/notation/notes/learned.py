"""Stitches that a row explains in passing: `3 dc, ch 3, 3 dc (shell) in next sp`, `(cluster: 3 dc in same st, ...)`."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from gradegen.design.rows import Aside, Chain, Definition, Make, Number, Repeat, SizesOnly, Skip, Step, Work
from gradegen.findings import Written
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.notes.spelling import spelled
from gradegen.read.notation.places.things import SPACES
from gradegen.read.notation.words.row_names import RowNames, level
from gradegen.read.notation.words.word_lists import words
from gradegen.trade.stitches import stitches

_PLACES = SPACES | words("corner point block blocks bl bls inc dec picot row side")
_LONGEST_NAME = 4  # words before the colon


def learned(written: Written, steps: Sequence[Step], names: RowNames) -> dict[str, Definition]:
    """What the row teaches, by name; a stitch explained among the special stitches stays as it was explained there."""
    found: dict[str, Definition] = {}
    for definition in (*_explained(written, steps, names), *_called(steps), *_meshes(written, steps)):
        known = names.definitions.get(definition.name)
        if known is None or is_learned(known):
            found.setdefault(definition.name, definition)
    return found


def is_learned(definition: Definition) -> bool:
    """True for a stitch a row named in passing: another row may call something else by that name."""
    return definition.in_passing


def _called(steps: Sequence[Step]) -> Iterator[Definition]:
    """`(shell)`, `(rice st made)` behind stitches."""
    for i, step in enumerate(steps):
        if isinstance(step, (Repeat, SizesOnly)):
            yield from _called(step.body)
        elif isinstance(step, Work) and _is_stitch_name(step.called) and step.makes:
            makes = _with_those_before(steps, i)
            yield Definition(step.called, step.called, makes=makes, in_passing=True, place=step.place)


_MESH_MADE = re.compile(r"\((?:\d+ |an? )?(sp|mesh|space)(?: made)?\)", re.IGNORECASE)


def _meshes(written: Written, steps: Sequence[Step]) -> Iterator[Definition]:
    """`dc in 8th ch from hook (sp made), (ch 2, skip 2 ch, dc in next ch) 3 times`: what a space is made of."""
    named = _MESH_MADE.search(written.text)
    mesh = _first_mesh(steps)
    if named is not None and mesh:
        name = named.group(1).lower()
        yield Definition(name, named.group(), steps=mesh, in_passing=True, place=mesh[0].place)


def _first_mesh(steps: Sequence[Step]) -> tuple[Step, ...]:
    """The first chain, skip and stitch that follow each other."""
    for i, step in enumerate(steps):
        if isinstance(step, Repeat) and (inside := _first_mesh(step.body)):
            return inside
        three = tuple(steps[i : i + 3])
        match three:
            case (Chain(), Skip(), Work() as work) if len(work.makes) == 1 and work.makes[0].times is None:
                return three
    return ()


def _is_stitch_name(name: str) -> bool:
    """A name for stitches: not for a place, a half of something, nor one whose making is always the same."""
    if not name or name.startswith("half ") or name.split(" ")[-1] in _PLACES:
        return False
    bare = name.removesuffix(" st")
    known = stitches().get(bare)
    return known is None or known.varies


def _with_those_before(steps: Sequence[Step], i: int) -> tuple[Make, ...]:
    """`3 dc in next st, ch 2, 3 dc in next st (shell)`: both halves; `..., 3 dc in same st (shell)`: all there."""
    step = steps[i]
    assert isinstance(step, Work)
    begun = _begun(steps, i)
    if any(thing.name == "unworked" for thing in step.into.things) and i and isinstance(steps[i - 1], Work):
        begun = i - 1  # `skip 1 sc, dc in next sc, dc in skipped sc (crossed dc made)`
    if begun < i:
        return _with_first_chain(steps, begun, tuple(make for one in steps[begun : i + 1] for make in _makes_of(one)))
    if i < 2:
        return _with_first_chain(steps, i, step.makes)
    chain, half = steps[i - 1], steps[i - 2]
    if not isinstance(chain, Chain) or not isinstance(half, Work) or half.makes != step.makes or half.bare:
        return step.makes
    return (*half.makes, Make("ch", chain.number, place=chain.place), *step.makes)


def _begun(steps: Sequence[Step], i: int) -> int:
    """Where the work into one place begins that ends at `i`."""
    begun = i
    while begun and isinstance(step := steps[begun], Work) and step.into.which == "same":
        before = begun - 2 if isinstance(steps[begun - 1], Chain) else begun - 1
        if before < 0 or not isinstance(steps[before], Work):
            break
        begun = before
    return begun


def _makes_of(step: Step) -> tuple[Make, ...]:
    if isinstance(step, Chain):
        return (Make("ch", step.number, place=step.place),)
    return step.makes if isinstance(step, Work) else ()


def _with_first_chain(steps: Sequence[Step], begun: int, makes: tuple[Make, ...]) -> tuple[Make, ...]:
    """`Ch 3, 1 dc, ch 2, 2 dc in same sp (shell)`: with the dc that the row's first chain is, where one is missing."""
    chain, first = steps[begun - 1] if begun == 1 else None, makes[0]
    number = first.times.values if first.times is not None else (1,)
    lopsided = makes[-1].stitch == first.stitch and makes[-1].times != first.times
    if not isinstance(chain, Chain) or not lopsided or len(number) != 1 or number[0] is None:
        return makes
    known = stitches().get(first.stitch)
    if known is None or chain.counts is not None or chain.number.values != (known.height,):
        return makes
    place = chain.number.place
    more = Number((number[0] + 1,), place=place, places=(place,))
    return (replace(first, times=more), *makes[1:])


def _explained(written: Written, steps: Sequence[Step], names: RowNames) -> Iterator[Definition]:
    """`(cluster st: 3 dc in same space keeping last loop of each on hook, ...)`."""
    for step in steps:
        if isinstance(step, Repeat):
            yield from _explained(written, step.body, names)
        elif isinstance(step, Aside) and step.text[:1] in "([" and ":" in step.text:
            definition = _of_remark(written, step, names)
            if definition is not None:
                yield definition


def _of_remark(written: Written, aside: Aside, names: RowNames) -> Definition | None:
    at = written.text.find(aside.text)
    colon = aside.text.find(":")
    name = _name(aside.text[1:colon], names)
    if at < 0 or not name:
        return None
    definition, _ = read_definition(name, written.part(at + colon + 1, at + len(aside.text) - 1), names)
    if not (definition.makes or definition.steps or definition.one):
        return None
    return replace(definition, in_passing=True)


def _name(text: str, names: RowNames) -> str:
    """The name before the colon as rows will use it; "" for a note, and for a stitch that is always made alike."""
    tokens = spelled(text, names)
    if not 1 <= len(tokens) <= _LONGEST_NAME or any(token.kind not in ("word", "stitch") for token in tokens):
        return ""
    if tokens[0].kind == "stitch":
        name = str(tokens[0].value)
        known = stitches().get(name)
        return name if tokens[0].own or known is None or known.varies else ""
    return level(text) if tokens[-1].low in ("st", "sts", "stitch") and len(tokens) > 1 else ""
