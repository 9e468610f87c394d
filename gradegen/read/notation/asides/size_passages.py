"""`for size M only, ...`, `for the larger sizes, ...`: passages that only some sizes work."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from gradegen.design.rows import Aside, SizesOnly, Stated, Step
from gradegen.read.notation.sizes.sizes_named import sizes_named
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases

_OTHERS = phrases(
    "all other sizes|the other sizes|other sizes|the larger sizes|larger sizes|the smaller sizes|"
    "the remaining sizes|remaining sizes|all others|the others"
)

_MOST_WORDS = 30


def read_sizes_only(r: Reading, stop: int, read_steps: Callable[..., Any]) -> tuple[SizesOnly, list[Stated]] | None:
    """The passage here, its steps included, and the counts printed in it; None when no sizes are named."""
    mark = r.at
    sizes = _named(r, stop)
    if sizes is None:
        return None
    end = _passage_end(r, stop)
    body = read_steps(r, end, whole_row=True)
    r.at = max(r.at, end)
    return SizesOnly(sizes, tuple(body.steps), place=r.place(mark)), body.stated


def read_bracketed_sizes(
    r: Reading, close: int, stop: int, read_steps: Callable[..., Any]
) -> tuple[SizesOnly, list[Stated]] | None:
    """`(M only: sc in next 2 sts)`, `[M only] sc in next 2 sts`; None when the bracket names no sizes."""
    mark = r.at
    r.at += 1
    sizes = _named(r, close, said_only=True)
    if sizes is None:
        r.at = mark
        return None
    end, after = close, close + 1
    if r.at == close and after < stop:
        r.at = after
        r.accept(",", ":")
        end = after = _passage_end(r, stop)
    body = read_steps(r, end, whole_row=True)
    r.at = max(r.at, after)
    return SizesOnly(sizes, tuple(body.steps), place=r.place(mark)), body.stated


def read_sizes_headed(r: Reading, stop: int, read_steps: Callable[..., Any]) -> tuple[SizesOnly, list[Stated]] | None:
    """`Child: sc around. Woman and Man: inc around.`: sizes with a name of letters and a colon, no other word."""
    mark = r.at
    colon = next((i for i in range(mark, min(mark + _MOST_HEADED, stop)) if r.tokens[i].kind == ":"), mark)
    said = r.text(mark, colon) if colon > mark else ""
    sizes = sizes_named(said, r.names.sizes) if said[:1].isalpha() and len(r.names.sizes) > 1 else None
    if sizes is None:
        return None
    r.at = colon + 1
    end = _passage_end(r, stop)
    body = read_steps(r, end, whole_row=True)
    r.at = max(r.at, end)
    return SizesOnly(sizes, tuple(body.steps), place=r.place(mark)), body.stated


_MOST_HEADED = 10


def of_sizes_only(steps: list[Step]) -> tuple[list[Step], tuple[str, ...] | None]:
    """The steps of a row that is one passage of some sizes, and those sizes: the others do not work the row at all."""
    said = [step for step in steps if not isinstance(step, Aside)]
    only = said[0] if len(said) == 1 else None
    if not isinstance(only, SizesOnly) or not only.sizes:
        return steps, None
    if all(isinstance(step, Aside) for step in only.body):
        return [Aside(", ".join(only.sizes), place=only.place)], None
    at = next(i for i, step in enumerate(steps) if step is only)
    return [*steps[:at], *only.body, *steps[at + 1 :]], only.sizes


def ends_size_passage(r: Reading) -> bool:
    """Passes `all sizes:`."""
    return r.phrase(phrases("all sizes|for all sizes")) and (r.accept(",", ":") or True)


def _named(r: Reading, stop: int, *, said_only: bool = False) -> tuple[str, ...] | None:
    """The sizes named here, () for all the others, with the sign behind them passed."""
    mark = r.at
    said_for = r.accept("for")
    if r.phrase(_OTHERS):
        r.accept("only")
        if r.accept(",", ":"):
            return ()
        r.at = mark
        return None
    said_size = r.accept("size", "sizes")
    if not (said_for or said_size or said_only):
        r.at = mark
        return None
    start = r.at
    for _ in range(_MOST_WORDS):
        if r.at >= stop:
            break
        if r.here.kind in (",", ":") or r.low() == "only":
            found = sizes_named(r.text(start), r.names.sizes) if r.at > start else None
            only = r.low() == "only"
            if found is not None and (said_size or only):
                r.accept("only")
                r.accept(",", ":")
                return found
            if only:
                break
        r.at += 1
    r.at = mark
    return None


def _passage_end(r: Reading, stop: int) -> int:
    """Where the passage ends: at the next named sizes, or with its sentence; a star holds its sentences together."""
    mark = r.at
    end = stop
    star_open = False
    while r.at < stop:
        token = r.here
        partner = r.partner(r.at) if token.kind == "open" else None
        if partner is not None:
            r.at = partner + 1
            continue
        if token.low in ("for", "all", "size", "sizes") and r.at > mark and _names_sizes(r, stop):
            end = r.at
            break
        if token.kind == "star":
            star_open = r.tokens[r.at - 1].low not in ("from", "to", "at", "*")
        if token.kind in (".", ";") and not star_open:
            end = r.at
            break
        r.at += 1
    r.at = mark
    return end


def _names_sizes(r: Reading, stop: int) -> bool:
    here = r.at
    found = _named(r, stop) is not None or ends_size_passage(r)
    r.at = here
    return found
