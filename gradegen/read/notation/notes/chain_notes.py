"""What notes say of starting and turning chains: `Ch 2 at beg of row does not count as a st`."""

from __future__ import annotations

import re

from gradegen.design.notes import ChainNote
from gradegen.findings import Written
from gradegen.read.notation.notes.spelling import spelled
from gradegen.read.notation.sizes.size_lists import join_lists
from gradegen.read.notation.stitches.counting import read_count_words, read_counted
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.word_lists import ROWS, phrases, words

_SENTENCE = re.compile(r"[^.;\n]+")
_CHAINS = words("tch t-ch tchs")
_NOT_COUNTED = ("without", "no", "not", "never")


def chain_notes(written: Written, names: RowNames) -> list[ChainNote]:
    """What each sentence settles."""
    found: list[ChainNote] = []
    for sentence in _SENTENCE.finditer(written.text):
        found += _sentence(written.part(sentence.start(), sentence.end()), names)
    return found


def _sentence(written: Written, names: RowNames) -> list[ChainNote]:
    tokens = spelled(written.text, RowNames(names.terms, ("one",)))
    r = Reading(written, names, join_lists(written, tokens, RowNames()).tokens)
    lengths: list[int | None] = []
    before: str | None = None
    while r.here.kind != "end":
        if lengths:
            found = _verdict(r, lengths, before)
            if found is not None:
                return found
        elif (row_of := _uncounted(r)) is not None:
            return [ChainNote(None, (), row_of)]
        if (length := _chain(r)) is not False:
            if None in lengths:
                lengths.remove(None)
            if length is not None or not lengths:
                lengths.append(length)
            continue
        if r.low() in ("is", "are") and not lengths:
            return []  # `A block is ch 3 ...`
        before = _row_kind(r) or before
        r.at += 1
    return []


def _chain(r: Reading) -> int | bool | None:
    """The length of the chain named here, None for `turning chain`; False, and nothing read, otherwise."""
    token = r.here
    if token.kind == "number" and r.peek().value == "ch" and r.peek().kind == "stitch":
        r.at += 2  # `3 chain`
        return int(str(token.value))
    if token.kind == "chain":
        r.at += 1
        r.accept("sp")
        return int(str(token.value))
    if token.kind == "stitch" and token.value == "ch":
        r.at += 1
        r.accept("of")  # `turning chains of 1`
        number = r.number()
        return number.values[0] if number is not None and number.values else None
    if token.low in _CHAINS:
        r.at += 1
        return None
    return False


def _row_kind(r: Reading) -> str | None:
    """The dc of `dc rnds`, `before dc`."""
    token = r.here
    if token.kind != "stitch" or token.value in ("ch", "sl st"):
        return None
    is_kind = r.low(1) in ROWS or (r.at > 0 and r.tokens[r.at - 1].low == "before")
    return str(token.value) if is_kind else None


def _uncounted(r: Reading) -> str | None:
    """`S c rnds have no counted ch`, `S c rnds start without a counted chain`."""
    kind = _row_kind(r)
    if kind is None:
        return None
    rest = [token.low for token in r.tokens[r.at + 2 :] if token.kind != "end"]
    chains = any(token.kind in ("chain",) or token.value == "ch" for token in r.tokens[r.at + 2 :])
    return kind if chains and "counted" in rest and any(word in rest for word in _NOT_COUNTED) else None


def _verdict(r: Reading, lengths: list[int | None], before: str | None) -> list[ChainNote] | None:
    """What the chains count as, when the words here say it."""
    mark = r.at
    if r.here.kind == "=" and None not in lengths:
        counted = read_count_words(r) if r.peek().low in ("0", "no") else None  # `ch 1 = 0 sts`
        r.at += counted is None  # `5 ch at beg of row = 1 tr + 2 ch sp`
        counted = counted or read_counted(r)
        return [ChainNote(length, counted[0], before) for length in lengths] if counted is not None else None
    if r.low() in ("as",) or r.here.kind == "=":
        return None
    if r.low() == "do" and r.low(1) == "not" and r.low(2) != "count":
        return None
    found = read_count_words(r)
    if found is None:
        r.at = mark
        return None
    as_ = found[0]
    notes = _by_length(r, as_, before)
    if notes:
        return notes
    return [*(ChainNote(length, as_, before) for length in lengths), *_further(r, before)]


def _further(r: Reading, before: str | None) -> list[ChainNote]:
    """`..., 5 chain for a treble and 2 chain`, `and ch 5 as d c and ch 2`: the same said of other chains."""
    notes: list[ChainNote] = []
    while r.here.kind == "," or r.low() in ("and", "or", "while", "but"):
        r.at += 1
        r.accept("and", "or", "a", "the")
        length = _chain(r)
        r.phrase(phrases("to turn|for turning|to begin"))
        if not isinstance(length, int) or isinstance(length, bool):
            return notes
        if r.accept("for", "as"):
            counted = read_counted(r)
            if counted is None:
                return notes
            notes.append(ChainNote(length, counted[0], before))
    return notes


def _by_length(r: Reading, as_: tuple[str, ...], before: str | None) -> list[ChainNote]:
    """`stand for dc (ch 3) or for dc and ch 2 (ch 5)`."""
    notes: list[ChainNote] = []
    while r.here.kind == "open":
        close = r.partner(r.at)
        r.at += 1
        length = _chain(r)
        if close is None or length is False or not isinstance(length, int) or r.at != close:
            return notes
        r.at += 1
        notes.append(ChainNote(length, as_, before))
        r.accept(",")
        if not r.accept("or", "and"):
            break
        more = read_count_words(r) if r.low() != "for" else _for(r)
        if more is None:
            break
        as_ = more[0]
    return notes


def _for(r: Reading) -> tuple[tuple[str, ...], bool] | None:
    """`for dc and ch 2`."""
    r.at += 1
    return read_counted(r)
