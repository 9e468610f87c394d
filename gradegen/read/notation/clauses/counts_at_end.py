"""Where a printed count may stand with no bracket and no sign before it: the row, or its sentence, has ended."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.rows import Aside, Join, Repeat, Step, Turn, Unread, Work
from gradegen.read.notation.places.bounds import count_is_behind_end
from gradegen.read.notation.words.reading import Reading


def counts_may_stand(r: Reading, steps: Sequence[Step], after_stop: bool) -> bool:
    """True behind a full stop, behind the turn or join that ends a row, and behind a step that reaches its end."""
    if not any(not isinstance(step, (Aside, Unread)) for step in steps):
        return False
    if after_stop or count_is_behind_end(r):
        return True
    last = r.tokens[r.next_break(r.at)].kind in ("end", ".")
    if isinstance(steps[-1], (Turn, Join)) and any(isinstance(step, (Work, Repeat)) for step in steps):
        return last
    return _reaches_end(steps[-1]) and r.tokens[r.at - 1].kind == "," and (last or _only_turns(r))


def _reaches_end(step: Step) -> bool:
    """`sc in each sc to end`, `2 sc in last sc`, `rep from * around`: nothing is left to work into."""
    if isinstance(step, Repeat):
        return step.times.how == "bound" and step.times.bound is not None and step.times.bound.to == "end"
    if not isinstance(step, Work):
        return False
    return step.into.which == "last" or (step.into.bound is not None and step.into.bound.to == "end")


def _only_turns(r: Reading) -> bool:
    """True where nothing stands behind this clause but the turn or the join of the row."""
    at = r.next_break(r.at) + 1
    return r.tokens[at].low in ("turn", "join") and r.tokens[r.next_break(at)].kind in ("end", ".")
