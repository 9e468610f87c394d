"""The numbers of a size list, and lists with commas alone: `60, 66, 72 sts`."""

from __future__ import annotations

from dataclasses import dataclass

from gradegen.design.rows import Number
from gradegen.read.notation.words.tokens import Token
from gradegen.read.notation.words.word_lists import ROWS, words

UNITS = words(
    "st sts stitch stitches sp sps space spaces loop loops lp lps times time row rows rnd rnds round "
    "rounds rep reps repeats shells groups motifs blocks meshes corners more in inch inches cm mm"
)

BEFORE = words("next last first of over chain cast rem remaining all every each to")


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a list: its value (None: `-` or a measure), its words and offsets."""

    value: int | None
    start: int
    end: int
    whole: bool = True
    sum: Number | None = None


def entry_of(token: Token) -> Entry | None:
    """A number, a measure or `-` as an entry; None for anything else."""
    if token.kind == "number" and isinstance(token.value, int) and token.low[:1].isdigit():
        if len(token.low) > 1 and token.low[0] == "0":
            return None  # 2024-05-12 is a date
        return Entry(token.value, token.start, token.end)
    if token.kind == "measure":
        return Entry(None, token.start, token.end, whole=False)
    if token.kind == "-":
        return Entry(None, token.start, token.end)
    return None


def bare_list(tokens: list[Token], at: int, sizes: int, *, prose: bool) -> tuple[list[Entry], int] | None:
    """`60, 66, 72 sts`: three numbers and more with commas between, in no bracket; of other length with a unit."""
    if sizes < 2 or tokens[at].kind != "number" or (at and tokens[at - 1].kind in (",", "number")):
        return None
    if at and (tokens[at - 1].low in ROWS or tokens[at - 1].low in _NUMBERS_OF):
        return None  # `Rows 2, 4, 6`
    entries: list[Entry] = []
    i = at
    while (entry := entry_of(tokens[i]) if i < len(tokens) else None) is not None and tokens[i].kind == "number":
        entries.append(entry)
        i += 1
        if i + 1 >= len(tokens) or tokens[i].kind != "," or tokens[i + 1].kind != "number":
            break
        i += 1
    if len(entries) < 3 and not (len(entries) == sizes == 2 and _is_pair(tokens, at, i)):
        return None
    following = tokens[i] if i < len(tokens) else None
    counted = following is not None and (following.kind == "stitch" or following.low in UNITS)
    if following is not None and following.kind == "stitch" and tokens[i - 1].end == following.start:
        return None
    return (entries, i) if counted or (len(entries) == sizes and not prose) else None


def _is_pair(tokens: list[Token], at: int, after: int) -> bool:
    """`Ch 72, 80.`, `in next 5, 6 sts`: two numbers that can be nothing but one for each size."""
    before = tokens[at - 1] if at else None
    following = tokens[after] if after < len(tokens) else None
    if before is None or not (before.value == "ch" or before.low in BEFORE):
        return False
    return following is None or following.kind in (".", ";") or following.low in ("st", "sts", "stitches")


_NUMBERS_OF = words("page pages step steps and chart charts photo photos size sizes")
