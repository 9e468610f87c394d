"""Which foundation chains a pattern's rows allow, in sentences and for a program."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence

from gradegen.reckon.multiples.chains_allowed import PieceChains
from gradegen.reckon.multiples.multiples import Derived


def multiples_text(found: Sequence[PieceChains]) -> str:
    """A paragraph for every piece that begins by itself."""
    return "\n\n".join("\n".join(_sentences(one)) for one in found)


def _sentences(one: PieceChains) -> Iterator[str]:
    first, *others = one.pieces
    name = f"{first}, with {_listed(others)} on it" if others else first
    if one.begins:
        yield f"{name}: {first} {one.begins}, so there is no foundation chain to choose and no multiple to derive."
        return
    yield f"{name}: {_held(one)}"
    if one.held is not None and one.held.proved:
        low, high = one.held.proved[0], one.held.proved[-1]
        yield f"Proved with the chains from {low} to {high}: what each of them comes to, longer ones come to again."
    if one.solved is not None:
        yield f"With all other counts worked out anew for each chain: {one.solved.words}."
    yield from (f"{stated.where[0].upper()}{stated.where[1:]} asks for {stated.words}." for stated in one.stated)


def _held(one: PieceChains) -> str:
    if one.held is None:
        return f"its rows name counts that hang on the chain, so those of size {one.size} can't be kept for another."
    return f"{_chains(one.held)}, with the other counts as in size {one.size}."


def _chains(held: Derived) -> str:
    if not held.multiple:
        if not held.also:
            return "no chain works"
        return f"only a chain of {_listed(list(map(str, held.also)))} works"
    if held.multiple == 1:
        return f"a chain of {held.words} works"
    return f"a chain works when it is {held.words}, from {held.smallest} on"


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def multiples_json(found: Sequence[PieceChains]) -> str:
    """The same for a program."""
    return json.dumps([_values(one) for one in found], indent=1)


def _values(one: PieceChains) -> dict[str, object]:
    held, solved = one.held, one.solved
    return {
        "pieces": list(one.pieces),
        "size": one.size,
        "begins": one.begins or "with a chain",
        "stated": [{"multiple": stated.step, "plus": stated.left} for stated in one.stated],
        "others_held": held
        and {"multiple": held.multiple, "plus": list(held.left), "from": held.smallest, "besides": list(held.also)},
        "others_solved": solved and {"chains": list(solved.allowed), "tried_to": solved.reach},
    }
