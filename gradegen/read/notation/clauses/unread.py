"""Whether words in a tree were left unread."""

from __future__ import annotations

from collections.abc import Iterable

from gradegen.design.rows import Either, Repeat, RowsAgain, SizesOnly, Step, Unread


def holds_unread(steps: Iterable[Step]) -> bool:
    """True when any step, however deep, is unread words."""
    for step in steps:
        match step:
            case Unread():
                return True
            case Repeat(body=body) | SizesOnly(body=body):
                if holds_unread(body):
                    return True
            case Either(readings=readings):
                if any(holds_unread(reading) for reading in readings):
                    return True
            case RowsAgain(except_=except_):
                if holds_unread(except_):
                    return True
    return False
