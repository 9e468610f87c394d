"""Row labels: `Rnd 5:`, `4th Row:`, `8-14)`, `Next 4 rows`, `Row 7 (M and L only)`, `1st Row of Second Side`."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import Literal

from gradegen.design.rows import Label, Listed, Number
from gradegen.findings import Finding, Written
from gradegen.read.notation.labels.row_numbers import ROW_WORDS, NumberReader
from gradegen.read.notation.sizes.size_lists import join_sums
from gradegen.read.notation.sizes.sizes_named import sizes_named
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import Token, row_word_parted, scan
from gradegen.read.notation.words.word_lists import words

_ROW = r"(?:rows?|rnds?|rounds?|rds?)"
_NUM = r"\d+(?:st|nd|rd|th)?(?:\s*[(\[][\d\s,;:.a-z–—-]*[)\]])*"
_SPAN = rf"{_NUM}(?:\s*(?:\.?-|\.?–|—|to|through|thru|and|&|\+|,|\.\.\.)\s*(?:{_ROW}\.?\s*|r)?{_NUM})*"
_NO_COLON = re.compile(
    rf"(?:(?P<ordinal>{_SPAN}\s+{_ROW})\b|(?P<word>(?:{_ROW}\.?\s*|r)(?:{_SPAN}))|(?P<named>(?:next|last|final|first)\s+(?:\d+\s+)?{_ROW})\b)"
    r"(?P<side>\s*\((?:rs|ws|right side|wrong side)\))?\s*(?P<end>\.\s*-+|\.|-{1,2}|–|—|\))?",
    re.IGNORECASE,
)

_BARE = re.compile(rf"(?P<word>{_SPAN})\s*(?:\)|\.(?=\s)|:)", re.IGNORECASE)
_SIZED = re.compile(r"\s*(?:for\s+)?sizes?\s+(?P<sizes>[^:.*()]{1,60}?)\s+only\s*[:,]\s*(?=\S)", re.IGNORECASE)
_LONGEST = 90
_NEVER = words(
    "blo flo working work rep repeat note notes for with using in on at if size sizes gauge ch sc dc hdc tr sl"
)
_QUIET = words("and of the all even odd numbered even-numbered odd-numbered & inclusive only every color colour")
_SIDES: dict[str, Literal["RS", "WS"]] = {"rs": "RS", "ws": "WS", "right side": "RS", "wrong side": "WS"}


@dataclass(slots=True)
class ReadLabel:
    """A label, where the row's text begins behind it, and what else it says."""

    label: Label
    end: int = 0
    side: Literal["RS", "WS"] | None = None
    sizes: tuple[str, ...] | None = None
    lists: list[Listed] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)


def read_label(written: Written, names: RowNames) -> ReadLabel:
    """The label at the start of a row; one with no text and no name when the row has none."""
    sized = _SIZED.match(written.text)
    sizes = sizes_named(sized.group("sizes"), names.sizes) if sized else None
    begin = sized.end() if sized and sizes else 0
    end, stop = _extent(written.text[begin:])
    if stop == 0:
        return ReadLabel(Label("", place=written.place(0, 0)))
    found = interpret(written.part(begin, begin + end), names)
    found.end = begin + stop
    found.sizes = found.sizes or (sizes if begin else None)
    found.lists = [
        replace(listed, start=listed.start + begin, end=listed.end + begin)
        for listed in found.lists
        if listed.end <= stop
    ]
    return found


def _extent(text: str) -> tuple[int, int]:
    """Where the label ends, and where the row's text begins; 0, 0 without a label."""
    lead = len(text) - len(text.lstrip())
    colon = _colon(text)
    if colon is not None and _may_be_label(text[:colon]):
        return colon, _behind(text, colon + 1)
    dashed = _DASHED.match(text, lead)
    if dashed is not None:
        return dashed.end("label"), _behind(text, dashed.end())
    found = _NO_COLON.match(text, lead)
    rest = text[found.end() :] if found is not None else ""
    if found is not None and (found.group("end") or found.group("word") or rest.strip()) and not _runs_on(rest):
        return _label_end(found), _behind(text, found.end())
    bare = _BARE.match(text, lead)
    if bare is not None:
        return bare.end("word"), _behind(text, bare.end())
    return 0, 0


_DASHED = re.compile(  # `Round 1 - 6 sc in ring`: one round, and six stitches
    r"(?P<label>(?:row|rnd|round|rd|r)\.?\s*\d+)\s+[-–—]\s+(?=\d+\s*[a-z])", re.IGNORECASE
)


def _label_end(found: re.Match[str]) -> int:
    end = max(found.end(name) for name in ("ordinal", "word", "named"))
    return max(end, found.end("side"))


def _runs_on(rest: str) -> bool:
    """`Row 3 is worked ...` is a sentence."""
    words = rest.split(maxsplit=1)
    return bool(words) and words[0].lower() in (
        "is",
        "are",
        "was",
        "should",
        "of",
        "and",
        "until",
        "times",
        "from",
        "will",
        "only",
    )


def _behind(text: str, at: int) -> int:
    while at < len(text) and text[at] in " \t:.)-–—":
        at += 1
    return at


_COLONED = re.compile(r"\d+(?::\d+){2,}")  # the `8:8:9` of `Rows 4-8:8:9: Repeat Row 3`


def _colon(text: str) -> int | None:
    depth = 0
    text = _COLONED.sub(lambda found: "0" * len(found.group()), text)
    for i, sign in enumerate(text[:_LONGEST]):
        if sign in "([{":
            depth += 1
        elif sign in ")]}":
            depth = max(0, depth - 1)
        elif sign == ":" and depth == 0:
            return i
        elif sign in ";*=" and depth == 0:
            return None
    return None


def _may_be_label(text: str) -> bool:
    tokens = scan(text)
    if not tokens or len(tokens) > 30:
        return False
    if any(token.low in ROW_WORDS for token in tokens) and tokens[0].low not in ("rep", "repeat", "for", "as", "work"):
        return not re.search(r"[.,]\s+[a-z]+\s+[a-z]+\s+[a-z]", text)
    if tokens[0].kind in ("number", "ordinal"):
        return all(token.kind not in ("word", "stitch") or token.low in ("to", "and", "through") for token in tokens)
    if re.fullmatch(r"\s*[Rr]n?d?\d+.*", text):
        return True
    words = [token for token in tokens if token.kind in ("word", "number")]
    return (
        len(words) == len(tokens) <= 4
        and all(token.low not in _NEVER for token in tokens)
        and text.lstrip()[:1].isupper()
    )


def interpret(written: Written, names: RowNames) -> ReadLabel:
    """What the words of a label say, all of them belonging to it."""
    written, sizes = _without_sizes(written, names)
    text = written.text.strip(" \t.:-–—")
    found = ReadLabel(Label(text, place=written.place(0, len(written.text))), len(written.text))
    tokens = _plain_tokens(written, names, found)
    reader = NumberReader(written, tokens, names)
    kind: Literal["row", "round", ""] = ""
    name: list[Token] = []
    while reader.at < len(tokens):
        token = reader.token()
        if token.low in ROW_WORDS and (len(token.low) > 2 or reader.token(1).kind == "number" or token.low == "rd"):
            if token.low != "r":  # `R5` may be either
                kind = kind or ("row" if ROW_WORDS[token.low] == "row" else "round")
            reader.at += 1
            continue
        if name and not kind and token.kind == "number" and _numbers_part(reader):
            name.append(token)
            reader.at += 1
            continue
        if token.kind in ("number", "ordinal", "count") and _takes_number(found, name, kind, reader):
            continue
        if token.low in _SIDES:
            found.side = _SIDES[token.low]
            reader.at += 1
            continue
        if token.kind == "," and found.label.first is not None:
            break  # `Rnd 5, colour C`
        if token.kind in ("word", "number") and token.low not in ("and", "of", "the") and not found.label.listed:
            name.append(token)
        reader.at += 1
    label = replace(found.label, kind=kind, name=_name(written, name, found.label))
    found.label = _classes(label, tokens, written)
    found.sizes = found.sizes or sizes
    return found


def _numbers_part(reader: NumberReader) -> bool:
    """True for the 2 of `Fin 2, Row 3`: a row word with a number of its own stands behind it."""
    ahead = 2 if reader.token(1).kind == "," else 1
    return reader.token(ahead).low in ROW_WORDS and reader.token(ahead + 1).kind == "number"


_SIZES_BEHIND = re.compile(
    r"(?:\s*[,;]|\s+[-–—]|\s+for\b)\s*(?:for\s+)?(?P<said>(?:sizes?\s+)?[^:]{1,60}?(?:\s+only)?)\s*$", re.IGNORECASE
)
_SIZES_BEFORE = re.compile(
    r"\s*(?:for\s+)?(?P<said>(?:all\s+)?sizes?\b[^:]{0,60}?)\s*[,;:–—-]\s*(?=r\w*\b)", re.IGNORECASE
)


def _without_sizes(written: Written, names: RowNames) -> tuple[Written, tuple[str, ...] | None]:
    """The label without `, sizes M and L only` or `All sizes,`, and the sizes so named (None: none, or all)."""
    for pattern in (_SIZES_BEHIND, _SIZES_BEFORE):
        for found in pattern.finditer(written.text):
            said = found.group("said")
            is_cut = said.count("(") != said.count(")")  # the end of `(S, M and L only)` behind its first comma
            sizes = None if is_cut else sizes_named(said, names.sizes)
            if sizes is not None and re.search(r"\b(?:sizes?|only)\b", said, re.IGNORECASE):
                blank = " " * (found.end() - found.start())
                text = written.text[: found.start()] + blank + written.text[found.end() :]
                return Written(text, written.file, written.anchors), (None if sizes == names.sizes else sizes)
            break
    return written, None


def _takes_number(found: ReadLabel, name: list[Token], kind: str, reader: NumberReader) -> bool:
    """Reads row numbers, or the 4 of `Next 4 rows`; False when numbers were read before."""
    label = found.label
    if label.first is not None:
        return False
    numbers = reader.read()
    if numbers is None:
        return False
    found.lists += numbers.lists
    found.findings += numbers.findings
    counts_rows = bool(name) and name[-1].low in ("next", "last", "first") and not kind
    if counts_rows and reader.token().low in ROW_WORDS and numbers.last is None:
        found.label = replace(label, rows=numbers.first)
    else:
        found.label = replace(label, first=numbers.first, last=numbers.last, listed=numbers.listed)
    return True


def _plain_tokens(written: Written, names: RowNames, found: ReadLabel) -> list[Token]:
    """The label's tokens without brackets that hold words; what those say is noted."""
    tokens: list[Token] = []
    joined = join_sums(written, scan(written.text), names)
    found.lists += joined.lists
    for token in joined.tokens:
        tokens.extend(row_word_parted(token) or (token,))
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        close = (
            next((k for k in range(i, len(tokens)) if tokens[k].kind == "close"), None)
            if tokens[i].kind == "open"
            else None
        )
        if close is None:
            out.append(tokens[i])
            i += 1
            continue
        inside = tokens[i + 1 : close]
        if any(t.kind == "word" and t.low not in ("to", "through", "thru") for t in inside):
            _remark(written, inside, names, found)
        else:
            out.extend(tokens[i : close + 1])
        i = close + 1
    return out


def _remark(written: Written, inside: list[Token], names: RowNames, found: ReadLabel) -> None:
    """`(WS)`, `(M, L and XL only)`, `(cuff dec)`, `(10 rounds)`."""
    said = written.text[inside[0].start : inside[-1].end].strip().lower()
    for written_side, side in _SIDES.items():
        if re.search(rf"\b{written_side}\b", said):
            found.side = side
    sizes = sizes_named(said, names.sizes)
    if sizes is not None and ("only" in said or "size" in said):
        found.sizes = sizes


def _name(written: Written, words: list[Token], label: Label) -> str:
    """The words of the label that are no numbers: "Foundation", "Next", "Second Side"."""
    kept = [written.text[token.start : token.end] for token in words if token.low not in _QUIET]
    return " ".join(word.capitalize() if word.isupper() and len(word) > 3 else word for word in kept)


def _classes(label: Label, tokens: list[Token], written: Written) -> Label:
    """`Row 4 & all even-numbered rows to Row 12`, `Rows 2, 4, 6 ... 12`: the numbers spelled out."""
    words = {token.low for token in tokens}
    if label.first is None:
        return label
    step = 2 if words & {"even", "odd", "even-numbered", "odd-numbered"} else 0
    dots = "..." in written.text or "…" in written.text
    if step and "to" in words and label.last is None:
        last = next((token for token in reversed(tokens) if token.kind in ("number", "ordinal")), None)
        if last is not None and isinstance(last.value, int):
            return _stepped(label, last, step, written)
    if dots and len(label.listed) >= 3:
        values = [number.values[0] or 0 for number in label.listed]
        gap = values[1] - values[0]
        if gap > 0 and (values[-1] - values[0]) % gap == 0 and values[-1] < 2000:
            place = label.listed[-1].place
            every = range(values[0], values[-1] + 1, gap)
            listed = tuple(Number((value,), place=place, places=(place,)) for value in every)
            return replace(label, listed=listed)
    return label


def _stepped(label: Label, last: Token, step: int, written: Written) -> Label:
    first = label.first.values[0] if label.first else None
    if first is None or not isinstance(last.value, int) or not first < last.value < first + 2000:
        return replace(label, name="")
    place = written.place(last.start, last.end)
    listed = tuple(Number((value,), place=place, places=(place,)) for value in range(first, last.value + 1, step))
    end = Number((last.value,), place=place, places=(place,))
    return replace(label, listed=listed, last=end, name="")
