"""What a chain at the beginning of a row stands for: by the notes, else by the trade's habit."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from slow_worker.words import spell

ABOUT_BEGINNINGS = r"\b(?:beg|beginning|start|starting|turn|turning)\b|^\W*(?:ch[ -]\d|\d+[ -]ch\b)"
COUNTS_AS = r"(?:counts?|stands?)(?: as| for) (?:a |one |1 |the )?(?:first )?(sc|hdc|dc|tr|htr|dtr|st)\b"
LENGTHS = r"\bch[ -](\d+)|\b(\d+)[ -]ch\b"


def agreed_in(notes: Sequence[str], number: int) -> tuple[str, ...] | None:
    """What the notes say a beginning chain of `number` stands for: () for nothing, None when they are silent."""
    found: tuple[str, ...] | None = None
    for note in notes:
        for part in re.split(r"[.;]", spell(note, ())):
            before = re.split(r"\bcounts?\b|\bstands?\b", part)[0]
            lengths = [int(one or other) for one, other in re.findall(LENGTHS, before)]
            if number not in lengths or not re.search(ABOUT_BEGINNINGS, part):
                continue
            if re.search(r"not count|never count|not a st|never", part):
                found = ()
            elif says := re.search(COUNTS_AS, part):
                found = (says[1],)
    return found


def habit(number: int, first: str | None, heights: Mapping[str, int], foundation: bool) -> list[tuple[str, ...]]:
    """What a chain of `number` before the stitch `first` may stand for when nothing is said, likeliest first.

    Ch 3 before dc counts, ch 1 before sc does not; ch 2 before dc or hdc goes both ways. A longer chain is
    the stitch and a space; over a foundation the space also skips as many chains as it has. Common practice, no source.
    """
    height = heights.get(first or "", 0)
    if not first or height <= 1:
        return [()]
    if number == height:
        return [(first,), ()] if height >= 3 else [(), (first,)]
    if number == height - 1:
        return [(), (first,)]
    if number > height:
        chains = (number - height) // 2 if foundation else number - height
        return [(first, f"ch-{chains} sp")] if chains else [(first,)]
    return [()]
