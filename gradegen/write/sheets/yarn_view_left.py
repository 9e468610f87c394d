"""How far the yarn at hand goes, in sentences and for a program."""

from __future__ import annotations

import json
from collections.abc import Iterator

from gradegen.numbers.rounding import nearest_whole
from gradegen.reckon.yarn.amounts import YarnAmount
from gradegen.reckon.yarn.left import RepeatLeft, YarnLeft
from gradegen.write.sheets.yarn_view import lengths_of, percent


def left_text(left: YarnLeft, metric: bool = False) -> str:
    """What is used, what is needed, how far it goes, and the repeats it allows; `metric`: in metres, not yards."""
    return "\n".join(_sentences(left, metric))


def _sentences(left: YarnLeft, metric: bool) -> Iterator[str]:
    used, share = _about(left.used, metric), percent(left.share)
    yield f"After {left.at} in size {left.size}: about {used} used, {share} of the whole."
    yield f"The rest takes about {_about(left.needed, metric)}; you have {_about(left.left, metric)}."
    if left.is_enough:
        over = _less(left.left, left.needed)
        yield f"That is enough, with about {_about(over, metric)} to spare."
    else:
        short = _about(_less(left.needed, left.left), metric)
        yield f"That is not enough: it gives out after {left.reaches}, {short} short."
    if left.repeat is not None:
        yield from _repeat(left.repeat, metric)
    quarters = ", ".join(f"{percent(share)} by {row}" for share, row in left.quarters)
    yield f"The yarn goes like this: {quarters}."
    yield "Hands differ by 5 % and more: weigh again after the next repeat."


def _repeat(repeat: RepeatLeft, metric: bool) -> Iterator[str]:
    each, closing = _about(repeat.each, metric), _about(repeat.closing, metric)
    one = "Each of" if " to " in repeat.rows else "Each repeat of"
    up_to = "about" if repeat.is_even else "more than the one before, at last about"
    yield f"{one} {repeat.rows} takes {up_to} {each}; the rows after it {closing}."
    if repeat.last is None:
        yield "Not even the rows after the repeat can be worked with that."
        return
    again = f"{repeat.allowed} more time{'s' if repeat.allowed != 1 else ''}"
    planned = f" (the pattern asks for {repeat.planned})"
    yield f"It can be worked {again}{planned}; {repeat.last} is then its last row, and the piece can still be finished."
    if not repeat.is_even:
        yield "The rows grow, so repeats beyond the pattern's own are an estimate."


def _about(amount: YarnAmount, metric: bool) -> str:
    parts = []
    if amount.grams is not None:
        parts.append(f"{nearest_whole(amount.grams)} g")
    length = lengths_of(amount, metric)[0]
    if length is not None:
        parts.append(f"{nearest_whole(length)} {'m' if metric else 'yd'}")
    return f"{parts[0]} ({parts[1]})" if len(parts) > 1 else parts[0] if parts else "an unknown amount"


def _less(one: YarnAmount, other: YarnAmount) -> YarnAmount:
    inches = None if one.inches is None or other.inches is None else one.inches - other.inches
    grams = None if one.grams is None or other.grams is None else one.grams - other.grams
    return YarnAmount(inches, grams)


def left_json(left: YarnLeft) -> str:
    """The same for a program."""
    repeat = left.repeat
    answer = {
        "size": left.size,
        "at": left.at,
        "used_percent": int(left.share * 100),
        "enough": left.is_enough,
        "reaches": left.reaches,
        "needed_grams": None if left.needed.grams is None else nearest_whole(left.needed.grams),
        "repeat": repeat
        and {"planned": repeat.planned, "allowed": repeat.allowed, "last_row": repeat.last, "exact": repeat.is_even},
    }
    return json.dumps(answer, indent=1)
