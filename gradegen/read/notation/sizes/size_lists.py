"""Size lists in every printed shape, joined to one token each: `84 (90, 96)`, `15[18:21]`, `69-75-81`, `{2 * band}`."""

from __future__ import annotations

from dataclasses import dataclass, field

from gradegen.design.rows import Listed, Number
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.notation.sizes.list_entries import BEFORE, UNITS, Entry, bare_list, entry_of
from gradegen.read.notation.sizes.names_in_sums import names_in_sum
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import Token
from gradegen.read.notation.words.word_lists import ROWS
from gradegen.read.sums.formula import read_formula

SIZE_LIST_LENGTH = Rule(
    "size-list-length",
    Severity.ERROR,
    "arithmetic",
    "A size list has more or fewer entries than the pattern has sizes.",
)
_MOST = 40  # entries of one list


@dataclass(slots=True)
class Listing:
    """The tokens with lists joined, the lists found, and what is wrong with them."""

    tokens: list[Token] = field(default_factory=list)
    lists: list[Listed] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    prose: bool = False


def join_lists(written: Written, tokens: list[Token], names: RowNames, *, prose: bool = False) -> Listing:
    """Every size list and sum of graded counts as one "count" token; in prose only what can be nothing else."""
    out = Listing(prose=prose)
    at = 0
    while at < len(tokens):
        token = tokens[at]
        after = None
        if token.kind == "open" and token.low == "{" and (names.counts or names.measures):
            after = _sum(written, tokens, at, names, out)
            if after is not None:
                _as_chain(written, out)
        if token.kind == "chain" and len(names.sizes) > 1:
            after = _chain_list(written, tokens, at, names, out)
        if after is None and (token.kind in ("number", "measure", "open", "-")):
            after = _list(written, tokens, at, names, out)
        if after is None:
            out.tokens.append(token)
            after = at + 1
        at = after
    return out


def _as_chain(written: Written, out: Listing) -> None:
    """`ch-{underarm}`: word, hyphen and sum as one chain of so many."""
    if len(out.tokens) < 3:
        return
    word, hyphen, number = out.tokens[-3:]
    tight = word.end == hyphen.start and hyphen.end == number.start
    if tight and hyphen.kind == "-" and word.value == "ch":
        text = written.text[word.start : number.end]
        out.tokens[-3:] = [Token("chain", text, word.start, number.end, number.value)]


def _chain_list(written: Written, tokens: list[Token], at: int, names: RowNames, out: Listing) -> int | None:
    """`ch-6 (6, 8) sp`: spaces of so many chains by size."""
    group = _group(tokens, at + 1) if at + 1 < len(tokens) and tokens[at + 1].kind == "open" else None
    if group is None or len(group[0]) + 1 != len(names.sizes) or any(entry.value is None for entry in group[0]):
        return None
    token, start, end = tokens[at], tokens[at].start, tokens[group[1] - 1].end
    digits = len(str(token.value))
    entries = [Entry(int(str(token.value)), token.end - digits, token.end), *group[0]]
    places = tuple(written.place(entry.start, entry.end) for entry in entries)
    number = Number(tuple(entry.value for entry in entries), place=written.place(start, end), places=places)
    out.lists.append(Listed(token.end - digits, end, tuple(written.text[e.start : e.end] for e in entries)))
    out.tokens.append(Token("chain", written.text[start:end], start, end, number))
    return group[1]


def join_sums(written: Written, tokens: list[Token], names: RowNames) -> Listing:
    """Every sum of graded counts in braces as one "count" token; size lists stay as they are."""
    out = Listing()
    at = 0
    while at < len(tokens):
        braces = tokens[at].kind == "open" and tokens[at].low == "{" and names.counts
        after = _sum(written, tokens, at, names, out) if braces else None
        if after is None:
            out.tokens.append(tokens[at])
        at = after or at + 1
    return out


# ---- sums ------------------------------------------------------------


def _sum(written: Written, tokens: list[Token], at: int, names: RowNames, out: Listing) -> int | None:
    close = next((i for i in range(at + 1, min(at + 40, len(tokens))) if tokens[i].low == "}"), None)
    if close is None or close == at + 1:
        return None
    start, end = tokens[at].start, tokens[close].end
    formula, _ = read_formula(written, start + 1, end - 1)
    known = names_in_sum(formula, names) if formula is not None else None
    if not known:
        return None
    place = written.place(start, end)
    number = Number((), formula, place=place, places=(place,))
    out.lists.append(Listed(start, end, (), formula))
    out.tokens.append(Token("count", written.text[start:end], start, end, number))
    return close + 1


# ---- lists ------------------------------------------------------------


def _list(written: Written, tokens: list[Token], at: int, names: RowNames, out: Listing) -> int | None:
    sizes = len(names.sizes)
    found = _found(tokens, at, sizes) or bare_list(tokens, at, sizes, prose=out.prose)
    if names.only and (found is None or len(found[0]) != sizes):
        fewer = _found(tokens, at, len(names.only))
        found = _among_all(*fewer, names) if fewer and len(fewer[0]) == len(names.only) else found
    if found is None or (out.prose and len(found[0]) != sizes and not _plainly_graded(tokens, *found)):
        return None
    entries, after = found
    start, end = tokens[at].start, tokens[after - 1].end
    texts = tuple(written.text[entry.start : entry.end] or "-" for entry in entries)
    out.lists.append(Listed(start, end, texts))
    if len(entries) != sizes:
        out.findings.append(wrong_length(written, entries, start, end, names))
    out.tokens.append(_count_token(written, entries, start, end))
    return after


def _found(tokens: list[Token], at: int, sizes: int) -> tuple[list[Entry], int] | None:
    return _bracketed(tokens, at, sizes) or _signed(tokens, at, sizes) or _enclosed(tokens, at, sizes)


def _among_all(entries: list[Entry], after: int, names: RowNames) -> tuple[list[Entry], int]:
    """The list of a row that only some sizes work, with nothing for the others."""
    given = dict(zip(names.only, entries, strict=True))
    last = entries[-1].end
    return [given.get(size) or Entry(None, last, last) for size in names.sizes], after


def _plainly_graded(tokens: list[Token], entries: list[Entry], after: int) -> bool:
    """In prose: `17 (17½, 18) in` with a bracket of two or more and a unit behind it."""
    following = tokens[after].low if after < len(tokens) else ""
    return tokens[after - 1].kind == "close" and len(entries) >= 3 and following in UNITS


def _count_token(written: Written, entries: list[Entry], start: int, end: int) -> Token:
    if not all(entry.whole for entry in entries):
        return Token("measure", written.text[start:end], start, end)
    number = Number(
        tuple(entry.value for entry in entries),
        place=written.place(start, end),
        places=tuple(written.place(entry.start, entry.end) for entry in entries),
    )
    return Token("count", written.text[start:end], start, end, number)


def wrong_length(written: Written, entries: list[Entry], start: int, end: int, names: RowNames) -> Finding:
    """The finding for a list with more or fewer entries than there are sizes; it concerns them all."""
    sizes, found = len(names.sizes), len(entries)
    given = f"{sizes} sizes" if sizes > 1 else "one size"
    return SIZE_LIST_LENGTH.at(
        written.place(start, end),
        "This size list does not have one number for each size.",
        expected=f"{sizes} numbers ({', '.join(names.sizes)})" if sizes > 1 else "1 number",
        found=f"{found} numbers ({written.text[start:end]})",
        because=f"the pattern has {given}",
        hint="write one number for every size, in the pattern's order; use - for a size that is not worked",
    )


def _group(tokens: list[Token], at: int) -> tuple[list[Entry], int] | None:
    """`(90, 96)` at `at`, numbers and nothing else."""
    if tokens[at].kind != "open":
        return None
    entries: list[Entry] = []
    i = at + 1
    while i < len(tokens) and len(entries) < _MOST:
        entry = entry_of(tokens[i])
        if entry is None:
            return None
        entries.append(entry)
        i += 1
        if i < len(tokens) and tokens[i].kind == "measure" and tokens[i].low[:1] not in "0123456789":
            return None
        if i < len(tokens) and tokens[i].kind in (",", ":", ";", "/"):
            i += 1
        elif i < len(tokens) and tokens[i].kind == "close":
            return entries, i + 1
        else:
            return None
    return None


def _bracketed(tokens: list[Token], at: int, sizes: int) -> tuple[list[Entry], int] | None:
    """`84 (90, 96) (102, 108)`, `60 (60) 66 (66) 72`, `3[4:5]`."""
    first = entry_of(tokens[at])
    if first is None or at + 1 >= len(tokens) or tokens[at + 1].kind != "open":
        return None
    if (hyphened := _hyphened(tokens, at + 1, sizes - 1)) is not None:
        return [first, *hyphened[0]], hyphened[1]
    entries, i = [first], at + 1
    most_in_bracket = 0
    while i < len(tokens) and len(entries) < _MOST:
        group = _group(tokens, i)
        if group is not None and (len(entries) < sizes or most_in_bracket == 0):
            entries += group[0]
            most_in_bracket = max(most_in_bracket, len(group[0]))
            i = group[1]
            continue
        single = entry_of(tokens[i]) if most_in_bracket == 1 and 1 < len(entries) < sizes else None
        if single is None or tokens[i - 1].kind != "close" or tokens[i].kind != "number":
            break
        entries.append(single)
        i += 1
    if len(entries) == 1:
        return None
    return (entries, i) if _is_list(tokens, at, i, entries, sizes, most_in_bracket) else None


def _hyphened(tokens: list[Token], at: int, number: int) -> tuple[list[Entry], int] | None:
    """The `(60-64)` of `56 (60-64)` where it holds a number for each of the other sizes, two or more."""
    close = at + 2 * number
    if number < 2 or close >= len(tokens) or tokens[close].kind != "close":
        return None
    entries = [entry_of(token) for token in tokens[at + 1 : close : 2] if token.kind in ("number", "measure")]
    found = [entry for entry in entries if entry is not None]
    signs = {token.kind for token in tokens[at + 2 : close : 2]}
    return (found, close + 1) if len(found) == number and signs == {"-"} else None


def _is_list(tokens: list[Token], at: int, after: int, entries: list[Entry], sizes: int, widest: int) -> bool:
    """Whether `6 (42)` is a list, or a number of times and a count."""
    if tokens[at].kind == "-":
        before = tokens[at - 1].kind if at else "word"
        return len(entries) == sizes and widest >= 1 and before in ("word", "open", "=", ":", ".", ";")
    if widest >= 2 and (len(entries) == sizes or sizes > 1 or _names_unit(tokens, at, after)):
        return True
    if len(entries) == sizes:
        return not (sizes == 2 and after >= len(tokens) and _follows_repeat(tokens, at) and _doubled(entries))
    if sizes == 1:
        return at > 0 and tokens[at - 1].low in ("next", "last", "first") and after < len(tokens)
    return _names_unit(tokens, at, after)


def _names_unit(tokens: list[Token], at: int, after: int) -> bool:
    following = tokens[after] if after < len(tokens) else None
    if following is not None and (following.kind in ("stitch", "chain") or following.low in UNITS):
        return True
    before = tokens[at - 1] if at else None
    return before is not None and (before.low in BEFORE or before.value == "ch")


def _follows_repeat(tokens: list[Token], at: int) -> bool:
    return at > 0 and tokens[at - 1].kind in ("close", "x", "stitch", "star")


def _doubled(entries: list[Entry]) -> bool:
    first, second = entries[0].value, entries[1].value
    return first is not None and second is not None and second >= 2 * first


def _signed(tokens: list[Token], at: int, sizes: int) -> tuple[list[Entry], int] | None:
    """`69-75-81`, `70/76/84`, `67:73:79`: numbers with one sign between them, with blanks only where all are there."""
    signs = ("-", "/", ":", "other")
    if at + 2 >= len(tokens) or tokens[at].kind not in ("number", "measure") or tokens[at + 1].kind not in signs:
        return None
    if at and tokens[at - 1].low in ROWS:
        return None  # `Repeat Rows 2-5`
    if sizes > 2 and (spaced := _spaced(tokens, at, sizes)) is not None:
        return spaced
    sign, i = tokens[at + 1].kind, at + 1
    first = entry_of(tokens[at])
    entries = [first] if first else []
    while i + 1 < len(tokens) and tokens[i].kind == sign and len(entries) < _MOST:
        entry = entry_of(tokens[i + 1]) if tokens[i + 1].kind in ("number", "measure") else None
        if entry is None or tokens[i].start != tokens[i - 1].end or entry.start != tokens[i].end:
            break
        entries.append(entry)
        i += 2
    if len(entries) < 2 or sizes < 2:
        return None
    if len(entries) == sizes and (sizes > 2 or _names_unit(tokens, at, i) or _is_stated(tokens, at)):
        return entries, i
    return (entries, i) if sign == "-" and len(entries) >= 3 else None


def _spaced(tokens: list[Token], at: int, sizes: int) -> tuple[list[Entry], int] | None:
    """`72 - 80 - 88`, `72 | 80 | 88`: one number per size, a sign with blanks between."""
    after = at + 2 * sizes - 1
    if after > len(tokens):
        return None
    signs, numbers = tokens[at + 1 : after : 2], tokens[at:after:2]
    if any(sign.low != signs[0].low or (sign.kind == "other" and sign.low != "|") for sign in signs):
        return None
    entries = [entry_of(token) for token in numbers if token.kind in ("number", "measure")]
    found = [entry for entry in entries if entry is not None]
    more = after < len(tokens) and tokens[after].low == signs[0].low and tokens[after].kind != ":"
    return (found, after) if len(found) == sizes and not more else None


def _is_stated(tokens: list[Token], at: int) -> bool:
    return at > 0 and tokens[at - 1].kind in ("=", "open")


def _enclosed(tokens: list[Token], at: int, sizes: int) -> tuple[list[Entry], int] | None:
    """`(9, 10, 11)` with no number before it, and `9, 10, 11 sts` inside a bracket."""
    if sizes < 2:
        return None
    group = _group(tokens, at)
    if group is not None:
        return group if len(group[0]) == sizes and any(entry.value is not None for entry in group[0]) else None
    if at and tokens[at - 1].kind == "open" and tokens[at].kind in ("number", "-"):
        return _run(tokens, at, sizes)
    return None


def _run(tokens: list[Token], at: int, sizes: int) -> tuple[list[Entry], int] | None:
    entries: list[Entry] = []
    i = at
    while i < len(tokens) and len(entries) < sizes:
        entry = entry_of(tokens[i])
        if entry is None:
            return None
        entries.append(entry)
        i += 1
        if len(entries) < sizes:
            if i >= len(tokens) or tokens[i].kind != ",":
                return None
            i += 1
    following = tokens[i] if i < len(tokens) else None
    is_unit = following is not None and (following.kind in ("stitch", "chain") or following.low in UNITS)
    return (entries, i) if is_unit else None
