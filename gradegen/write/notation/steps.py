"""One step of a row in house style."""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from gradegen.design.passages import EvenRows, Shaping
from gradegen.design.rows import (
    Aside,
    Chain,
    Change,
    Either,
    Elsewhere,
    Even,
    Join,
    Mixed,
    OtherSide,
    Repeat,
    RowsAgain,
    SizesOnly,
    Skip,
    Slip,
    Step,
    Times,
    Turn,
    Unread,
    Unworked,
    Work,
)
from gradegen.write.notation.chains import chain_words, change_words, join_words, skip_words, slip_words
from gradegen.write.notation.named_rows import rows_again_words, sizes_words
from gradegen.write.notation.passages import even_rows_words, shaping_words
from gradegen.write.notation.places import bound_words
from gradegen.write.notation.style import Notation, is_one
from gradegen.write.notation.works import where_words, work_words


def steps_words(steps: Sequence[Step], says: Notation) -> str:
    """Steps one after the other; those that the written size does not work are left out."""
    text, before = "", None
    for step in steps:
        words = step_words(step, says)
        if not words:
            continue
        joint = _joint(before, step, says) if text else ""
        text += joint + (capital(words, step) if joint.startswith(".") else words)
        before = step
    return text


def capital(words: str, first: Step) -> str:
    """The words with a capital at their start; a designer's own words stay as they stand."""
    return words if isinstance(first, (Aside, Unread, Elsewhere)) else words[:1].upper() + words[1:]


def _joint(before: Step | None, step: Step, says: Notation) -> str:
    row = says.style.row
    if says.figures.wanted is None and isinstance(step, SizesOnly):
        return row["before sizes"]
    if says.figures.wanted is None and isinstance(before, SizesOnly):
        return row["after sizes"]
    if isinstance(step, Join):
        return row["before join"]
    if isinstance(step, Turn):
        return row["before turn"]
    if isinstance(before, RowsAgain) and before.until:
        return row["after until"]
    if isinstance(step, Aside) and step.text[:1].isupper():
        return row["before sentence"]
    if isinstance(step, Aside) and not isinstance(before, Repeat) and _is_trailing(step, says):
        return " "
    return row["after repeat"] if isinstance(before, Repeat) else row["between steps"]


def _is_trailing(remark: Aside, says: Notation) -> bool:
    """True for remarks that follow a step without a comma: `for picot`, `just made`."""
    firsts = says.style.row["remarks without a comma begin with"].split()
    return remark.text.split(" ")[0].casefold() in firsts


def step_words(step: Step, says: Notation) -> str:
    """One step; "" when the written size does not work it."""
    match step:
        case Work():
            return work_words(step, says)
        case Mixed():
            works = str(says.style.things["join"]).join(work_words(work, says) for work in step.works)
            return works + (f" {bound_words(step.bound, says)}" if step.bound else "")
        case Chain():
            return chain_words(step, says)
        case Join():
            return join_words(step, says)
        case Slip():
            return slip_words(step, says)
        case Skip():
            return skip_words(step, says)
        case Repeat():
            return _repeat(step, says)
        case Change():
            return change_words(step, says)
        case Even():
            return says.step("even in").format(stitch=says.stitch(step.stitch)) if step.stitch else says.step("even")
        case Turn():
            return says.step("turn")
        case Unworked():
            return says.step("unworked")
        case OtherSide():
            return says.step("other side")
        case Aside() | Unread() | Elsewhere():
            return step.text
        case Either():
            return steps_words(step.readings[0], says)
        case SizesOnly():
            return _sizes_only(step, says)
        case EvenRows():
            return even_rows_words(step, says)
        case Shaping():
            return shaping_words(step, says)
        case RowsAgain():
            return rows_again_words(step, steps_words(step.except_, says), says)
        case _:
            assert_never(step)


# ---- repeats ------------------------------------------------------------------------------------------------------


def _repeat(repeat: Repeat, says: Notation) -> str:
    if says.figures.is_nothing(repeat.times.number) and repeat.times.how == "in all":
        return ""
    if repeat.times.how == "in all" and repeat.times.stop_at is None:
        return _bracketed(repeat, says)
    return _starred(repeat, says)


def _bracketed(repeat: Repeat, says: Notation) -> str:
    depth = _bracket_depth(repeat.body)
    brackets = says.style.repeats["brackets"]
    open_, close = brackets[min(depth, len(brackets) - 1)]
    body = steps_words(repeat.body, says)
    if not body:
        return ""
    number = says.figures.text(repeat.times.number)
    if len(repeat.body) == 1 and isinstance(repeat.body[0], Work) and not where_words(repeat.body[0], says):
        open_ = close = ""  # dc2tog 3 times
    return str(says.style.repeats["times"]).format(open=open_, body=body, close=close, n=number or "1")


def _bracket_depth(steps: Sequence[Step]) -> int:
    """How many brackets stand inside one another in these steps."""
    deepest = 0
    for step in steps:
        if isinstance(step, Repeat):
            deepest = max(deepest, _bracket_depth(step.body) + (step.times.how == "in all"))
        elif isinstance(step, Work) and len(step.makes) > 1:
            deepest = max(deepest, 1)
    return deepest


def _star_depth(steps: Sequence[Step]) -> int:
    """How many stars stand inside one another in these steps."""
    inner = [step for step in steps if isinstance(step, Repeat)]
    return max((_star_depth(step.body) + (step.times.how != "in all") for step in inner), default=0)


def _starred(repeat: Repeat, says: Notation) -> str:
    stars = says.style.repeats["stars"]
    depth = min(_star_depth(repeat.body), len(stars) - 1)
    star, stop = stars[depth], stars[min(depth + 1, len(stars) - 1)]
    body = _body(repeat, stop, says)
    if not body:
        return ""
    times = repeat.times
    form = str(says.style.repeats[_form_of(times, says)])
    words = form.format(
        star=star,
        body=f" {body}" if body.startswith("*") else body,
        n=says.figures.text(times.number) or "1",
        bound=bound_words(times.bound, says) if times.bound else "",
    )
    if times.corresponds:
        words += str(says.style.repeats["corresponds"])
    if times.but:
        words += f", {times.but}"
    if times.corresponds:
        return words
    return words + (str(says.style.repeats["stop"]).format(stop=stop) if times.stop_at is not None else "")


def _form_of(times: Times, says: Notation) -> str:
    if times.how == "more" and is_one(says.figures.text(times.number)):
        return "once more"
    return {"more": "more", "unsure": "unsure", "in all": "unsure", "bound": "bound"}[times.how]


def _body(repeat: Repeat, stop: str, says: Notation) -> str:
    at = repeat.times.stop_at
    if at is None:
        return steps_words(repeat.body, says)
    first, rest = steps_words(repeat.body[:at], says), steps_words(repeat.body[at:], says)
    return f"{first}{says.style.row['between steps']}{stop}{rest}"


# ---- the rest -----------------------------------------------------------------------------------------------------


def _sizes_only(step: SizesOnly, says: Notation) -> str:
    body = steps_words(step.body, says)
    wanted = says.figures.wanted
    if wanted is not None and step.sizes:
        return body if says.figures.sizes[wanted] in step.sizes else ""
    if not step.sizes:
        return says.step("other sizes").format(body=body)
    return says.step("sizes only").format(sizes=sizes_words(step.sizes, says), body=body)
