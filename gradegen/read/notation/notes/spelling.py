"""Stitch names found among the words of a row: `s c`, `half double crochet`, `dc2tog`, the pattern's own."""

from __future__ import annotations

import re

from gradegen.read.notation.places.things import SPACES
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import Token, row_word_parted, scan, split_tight
from gradegen.trade.stitches import stitches

_LONGEST = 5  # words in one stitch name
_BEFORE_RING = ("a", "an", "into", "make")  # `into a MC` is a magic circle, `in MC` the main colour
_COUNTED_KINDS = {"cluster": "cluster", "cl": "cluster", "bobble": "bobble", "popcorn": "popcorn", "puff": "puff"}
_COUNTING = frozenset({"make", "work", "total", "more", "with"})  # `make 4 sps`
_SEPARATES = frozenset({",", ";", ".", ":", "open", "star", "end", "-", "=", "number"})
_AFTER_IN = frozenset({",", ";", ".", "close", "star", "x", "end", "open", "=", "number"})


def spelled(text: str, names: RowNames) -> list[Token]:
    """The tokens of a row with its stitch names joined to one token each, and `dc2` parted into name and number."""
    found = _joined(_tight_spaces(_starred_times(_without_manner(scan(text)))), text, names)
    return _without_aliases(_counted(_times_before(found)))


def _times_before(tokens: list[Token]) -> list[Token]:
    """`6 x sc` is `6 sc`."""
    return [
        token
        for i, token in enumerate(tokens)
        if not (token.kind == "x" and _is_number(tokens, i - 1) and i + 1 < len(tokens) and _is_worked(tokens, i))
    ]


def _is_worked(tokens: list[Token], at: int) -> bool:
    """True where a stitch stands behind the x, and no other x before its number: `inc x 6 x ...`."""
    return tokens[at + 1].kind == "stitch" and (at < 2 or tokens[at - 2].kind not in ("x", "close", "stitch"))


def _without_manner(tokens: list[Token]) -> list[Token]:
    """Without `loosely` and the like before other words, and behind a chain: they say how tight it is and no more."""
    return [token for i, token in enumerate(tokens) if token.low not in _MANNER or not _is_manner(tokens, i)]


def _is_manner(tokens: list[Token], i: int) -> bool:
    if i + 1 < len(tokens) and tokens[i + 1].kind == "word":
        return True
    return i > 0 and tokens[i - 1].low in ("ch", "chain", "chains")


_MANNER = frozenset({"loosely", "tightly", "firmly", "snugly", "gently", "neatly", "carefully"})


def _joined(tokens: list[Token], text: str, names: RowNames) -> list[Token]:
    together = any(token.kind == "word" and token.low.startswith("tog") for token in tokens)
    out: list[Token] = []
    at, size = 0, len(tokens)
    while at < size:
        token = tokens[at]
        if token.kind == "word":
            if token.low == "in":
                out.append(_in_as_increase(tokens, at, out, names))
                at += 1
                continue
            stitch = _longest(tokens, at, names) if names.begins_stitch(token.low) else None
            if stitch is None and token.low == "mc" and out and out[-1].low in _BEFORE_RING:
                stitch = token._replace(kind="stitch", value="magic ring"), at + 1
            if stitch is not None and stitch[0].own and token.low in SPACES and not _stands_alone(out):
                stitch = None
            if stitch is None and (looped := _looped(token, names)):
                out.extend(looped)
                at += 1
                continue
            if stitch is None and token.low[-1].isdigit():
                out.extend(_parted(token, names))
                at += 1
                continue
        elif token.kind == "number" and (together or _is_tight_cluster(tokens, at)):
            stitch = _numbered(tokens, at, text, names)
        elif token.kind == "number":
            stitch = _own_numbered(tokens, at, text, names)
        else:
            stitch = None
        if stitch is None:
            out.append(token)
            at += 1
        else:
            out.append(stitch[0])
            at = stitch[1]
    return out


def _starred_times(tokens: list[Token]) -> list[Token]:
    """`(sc 6, dec) * 4`: a star between a bracket and a number, the only one of its row, says how often."""
    stars = [i for i, token in enumerate(tokens) if token.kind == "star"]
    return [
        token._replace(kind="x", low="x")
        if stars == [i] and token.low == "*" and i and tokens[i - 1].kind == "close" and _is_number(tokens, i + 1)
        else token
        for i, token in enumerate(tokens)
    ]


def _tight_spaces(tokens: list[Token]) -> list[Token]:
    """`2ch-sp` as the chain and the space it is."""
    out: list[Token] = []
    for token in tokens:
        last = out[-1] if out else None
        tight = last is not None and last.kind == "number" and last.end == token.start
        if tight and last is not None and token.kind == "word" and (space := _TIGHT_SPACE.fullmatch(token.low)):
            cut = token.start + len("ch")
            out[-1] = Token("chain", f"{last.low}ch", last.start, cut, last.value)
            out.append(Token("word", space.group(1), cut + 1, token.end))
        else:
            out.append(token)
    return out


_TIGHT_SPACE = re.compile(r"ch[-‑](sps?|spaces?|loops?|lps?)")


def _is_number(tokens: list[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind == "number"


def _stands_alone(out: list[Token]) -> bool:
    """True where `sp` as an own stitch may stand: `2 sps`, not `in next sp`, `ch-2 sp`."""
    i = len(out) - 1
    if i >= 0 and out[i].kind == "number":
        i -= 1
    if i >= 0 and out[i].low in _COUNTING:
        return True
    return i < 0 or (out[i].kind in _SEPARATES and out[i].kind != "number")


def _longest(tokens: list[Token], at: int, names: RowNames) -> tuple[Token, int] | None:
    words = [tokens[at].low]
    for token in tokens[at + 1 : at + _LONGEST]:
        if token.kind not in ("word", "number") or (token.kind == "word" and token.low == "in"):
            break
        words.append(token.low)
    for count in range(len(words), 0, -1):
        if tokens[at + count - 1].kind == "number":
            continue
        stitch = names.stitch(" ".join(words[:count]))
        if stitch is not None:
            low = " ".join(words[:count])
            return Token("stitch", low, tokens[at].start, tokens[at + count - 1].end, *stitch), at + count
    return None


def _is_tight_cluster(tokens: list[Token], at: int) -> bool:
    """`3dccl`, `2trtog`."""
    return (
        at + 1 < len(tokens) and tokens[at + 1].start == tokens[at].end and tokens[at + 1].low.endswith(("cl", "tog"))
    )


def _numbered(tokens: list[Token], at: int, text: str, names: RowNames) -> tuple[Token, int] | None:
    """`2 sc tog`, `3dccl`: names that begin with a number."""
    for count in range(min(4, len(tokens) - at), 1, -1):
        last = tokens[at + count - 1]
        if last.kind == "word" and (last.low.startswith("tog") or count == 2):
            if any(token.kind not in ("word", "number") for token in tokens[at : at + count]):
                continue
            words = text[tokens[at].start : last.end].lower()
            stitch = names.stitch(words) if last.low.startswith("tog") or last.low.endswith("cl") else None
            if stitch is None and count == 2 and last.low.endswith("tog") and last.start == tokens[at].end:
                stitch = names.stitch(f"{last.low[:-3]}{tokens[at].low}tog")  # `2trtog`
            if stitch is not None:
                return Token("stitch", words, tokens[at].start, last.end, *stitch), at + count
    return None


def _own_numbered(tokens: list[Token], at: int, text: str, names: RowNames) -> tuple[Token, int] | None:
    """`2dcbob`, a name of the pattern's own that begins with a number."""
    after = tokens[at + 1] if at + 1 < len(tokens) else tokens[at]
    words = text[tokens[at].start : after.end].lower()
    if after.start != tokens[at].end or after.kind != "word" or words not in names.definitions:
        return None
    stitch = names.stitch(words)
    return None if stitch is None else (Token("stitch", words, tokens[at].start, after.end, *stitch), at + 2)


_LOOPED = re.compile(r"(blo|flo|bl|fl)-?([a-z]{2,4})|([a-z]{2,4})-?(blo|flo|tbl|tfl)")


def _looped(token: Token, names: RowNames) -> list[Token]:
    """`BLsc`, `sc-blo` as loop and stitch; none for another word, or one the pattern explains."""
    found = _LOOPED.fullmatch(token.low)
    if found is None or names.stitch(token.low) is not None:
        return []
    first, second = (1, 2) if found[1] else (3, 4)
    stitch = names.stitch(found[2] or found[3])
    if stitch is None:
        return []
    middle = token.start + len(found[first])
    spans = ((token.start, middle), (token.end - len(found[second]), token.end))
    return [
        Token("stitch", words, *span, *stitch)
        if words == (found[2] or found[3])
        else Token("word", words if words in ("tbl", "tfl") else f"{words[:2]}o", *span)
        for words, span in zip((found[first], found[second]), spans, strict=True)
    ]


def _parted(token: Token, names: RowNames) -> tuple[Token, ...]:
    if (row := row_word_parted(token)) is not None:
        return (row[0]._replace(low="row"), *row[1:])  # `repeat R2`
    parts = split_tight(token)
    if parts is None:
        return (token,)
    head, number = parts
    if head.kind == "x" or head.low in ("sk", "skip", "rep"):
        return parts
    stitch = names.stitch(head.low)
    return (Token("stitch", head.low, head.start, head.end, *stitch), number) if stitch else (token,)


def _in_as_increase(tokens: list[Token], at: int, out: list[Token], names: RowNames) -> Token:
    """`in` as some write inc: only where a stitch must stand, `(sc 3, in) 6`."""
    token = tokens[at]
    before = out[-1].kind if out else "end"
    after = tokens[at + 1].kind if at + 1 < len(tokens) else "end"
    if before not in _SEPARATES or after not in _AFTER_IN:
        return token
    if after == "number" and at + 2 < len(tokens) and tokens[at + 2].kind not in ("open", "close", ",", ".", ";", "="):
        return token
    if after == "open" and before not in (",", "open"):
        return token
    stitch = names.stitch("in") or ("inc", False)
    return token._replace(kind="stitch", value=stitch[0], own=stitch[1])


def _counted(tokens: list[Token]) -> list[Token]:
    """`3 d c cluster`, `3-dc cluster` as one name; `2-ch` as a chain."""
    out: list[Token] = []
    at, size = 0, len(tokens)
    while at < size:
        joined = _counted_here(tokens, at) if tokens[at].kind == "number" and at + 1 < size else None
        if joined is None:
            out.append(tokens[at])
            at += 1
        else:
            out.append(joined[0])
            at = joined[1]
    return out


def _counted_here(tokens: list[Token], at: int) -> tuple[Token, int] | None:
    number, nxt = tokens[at], at + 1
    hyphen = tokens[nxt].kind == "-" and tokens[nxt].start == number.end
    nxt += hyphen
    if nxt >= len(tokens) or tokens[nxt].kind != "stitch":
        return None
    stitch = tokens[nxt]
    if stitch.value == "ch" and hyphen:
        return Token("chain", stitch.low, number.start, stitch.end, number.value), nxt + 1
    kind = tokens[nxt + 1] if nxt + 1 < len(tokens) else None
    if kind is None or kind.kind != "stitch" or kind.value not in _COUNTED_KINDS.values():
        return None
    if stitch.value == kind.value:
        return None
    name = f"{number.value}-{stitch.value} {kind.value}"
    end, after = kind.end, nxt + 2
    return Token("stitch", name, number.start, end, name if name in stitches() else kind.value), after


def _told(tokens: list[Token], at: int, out: list[Token]) -> int:
    """Behind `d tr c (3 times over hook)`, `double treble ([d tr c] 3 times over hook)`: where that ends; else 0."""
    if tokens[at].kind != "open" or not out or out[-1].kind != "stitch":
        return 0
    depth = 0
    for i in range(at, min(at + 14, len(tokens))):
        depth += (tokens[i].kind == "open") - (tokens[i].kind == "close")
        if depth == 0:
            return i + 1 if [token.low for token in tokens[i - 2 : i]] == ["over", "hook"] else 0
    return 0


def _without_aliases(tokens: list[Token]) -> list[Token]:
    """`double crochet (dc)` as one stitch."""
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        told = _told(tokens, at, out)
        if told:
            at = told
            continue
        if (
            tokens[at].kind == "open"
            and out
            and at + 2 < len(tokens)
            and tokens[at + 2].kind == "close"
            and (
                (out[-1].kind == "stitch" and tokens[at + 1].kind == "stitch" and tokens[at + 1].value == out[-1].value)
                or (out[-1].low in ("stitch", "stitches") and tokens[at + 1].low in ("st", "sts"))
            )
            and not re.match(r"[()]", out[-1].low)
        ):
            at += 3
            continue
        out.append(tokens[at])
        at += 1
    return out
