"""The sizes of a text pattern: from its sizes line, from a sentence about brackets, or from its size lists."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence

from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.plain_text.lines import Line

SIZES_ASSUMED = Rule("sizes-assumed", Severity.NOTE, "house", "the text does not name its sizes")

_SIZES = re.compile(
    r"\s*(?:(?:finished|available|women'?s|men'?s|children'?s|child'?s|kids'?|baby|adult|to fit) )?(?:sizes?|sizing)\b"
    r"(?:\s*\([^()]*\)\s*(?=:))?\s*(?:are|come|available|included)?\s*:?\s*(.+)",
    re.I,
)
_ALONE = re.compile(r"\s*(?:finished )?(?:sizes?|sizing)\s*:?\s*$", re.I)
_EXPLAINED = re.compile(r"\s*[^(),;]+\([^()]*\)\s*(?:(?:,|;|/|and|&)\s*[^(),;]+\([^()]*\)\s*)+\.?$", re.I)
_DIMENSION = re.compile(
    r"\d.*(?:\b(?:square|across|wide|width|high|height|tall|long|length|deep|diameter|circumference)\b"
    r"|\d[^\d,;]{0,8}\s(?:x|by)\s|\d\s*[×x]\s*\d)"
    r"|\d\s*(?:cm|mm)\b\.?\s*[/(,]\s*[\d½¼¾. -]+\s*(?:in\b|inch|[\"”″])"
    r"|\d[½¼¾]?\s*(?:in\b|inch(?:es)?|[\"”″])\.?\s*[/(,]\s*[\d.]+\s*(?:cm|mm)\b",
    re.I,
)
_UNIT = re.compile(r"(?:(?:years?|yrs?|months?|mos?|cm|in|inches)\b.*|\")\.?", re.I)
_ONE_SIZE = re.compile(r"\s*one\s*(?:size\b.*)?\.?\s*$", re.I)
_TO_FIT = re.compile(r"\s*(?:to )?fits? (?:an? )?(?:[a-z]+ )?(?=\d)", re.I)
_LIST = re.compile(r"\d+\s*[(\[]\s*\d+(?:\s*[,:]\s*\d+)+\s*[)\]](?:\s*[(\[]\s*\d+(?:\s*[,:]\s*\d+)*\s*[)\]])*")
_PAIR = re.compile(
    r"\d+(?:st|nd|rd|th)\s*\(\s*\d+(?:st|nd|rd|th)\s*\)"
    r"|\d+\s*\(\s*\d+\s*\)\s*(?:times|more|rows|rnds|rounds|sts|meshes|loops|groups|inches)\b",
    re.I,
)
_PAIRS_ENOUGH = 3  # one pair alone may be a number and a remark
_SMALLEST = re.compile(
    r"\bfor (?:the )?(?:smallest )?sizes? ([\w/-]+)(?: only)?\s*[.;,:]?\s*(?:the )?(?:with )?"
    r"(?:changes|larger|other|remaining)?\s*(?:sizes?|changes)?\s*(?:for|:)?\s*(?:sizes? )?(.*?)\s*"
    r"(?:are )?(?:given )?in (?:parenthes[ie]s|brackets)",
    re.I,
)


def sizes_of(lines: Iterable[Line]) -> tuple[str, ...]:
    """Size names from the text's sizes line; ("one",) when there is none."""
    kept = [line for line in lines if line.part in ("head", "other", "notes")]
    for line, following in zip(kept, [*kept[1:], None], strict=True):
        match = _SIZES.match(line.words.text) if line.part != "notes" else None
        if match:
            return split_sizes(match[1])
        if following and _ALONE.match(line.words.text):
            return split_sizes(following.words.text)
    for line in kept:
        match = _SMALLEST.search(line.words.text)
        if match and match[2].strip():
            return split_sizes(f"{match[1]}, {match[2]}")
    return ("one",)


def sizes_by_lists(
    lines: Sequence[Line], source: Written, named: tuple[str, ...]
) -> tuple[tuple[str, ...], tuple[Finding, ...]]:
    """Sizes that only the size lists give away, named by their number, where those named fit none of the lists."""
    lengths = Counter(
        len(re.findall(r"\d+", found))
        for line in lines
        if line.part == "rows"
        for found in _LIST.findall(line.words.text)
    )
    pairs = 0 if lengths or len(named) > 1 else sum(len(_PAIR.findall(line.words.text)) for line in lines)
    if pairs >= _PAIRS_ENOUGH:
        lengths[2] = pairs
    if not lengths or len(named) in lengths or (len(named) > 1 and lengths.total() < _ENOUGH):
        return named, ()
    number = lengths.most_common(1)[0][0]
    names = tuple(f"size {i + 1}" for i in range(number))
    line = "No line names the sizes" if len(named) == 1 else f"The line of sizes was read as {len(named)} names"
    said = f"{line}; the size lists have {number} numbers, so {number} sizes are worked."
    return names, (SIZES_ASSUMED.at(source.place(0, 1), said, hint="--sizes S,M,L"),)


_ENOUGH = 3  # size lists that must agree before they outweigh a line that names the sizes


def split_sizes(words: str) -> tuple[str, ...]:
    """Size names: `S (M, L)`, `S, M and L`, `XS (S, M) (L, XL)`, `34-38-42`, `one size`, `S (6), M (8)`."""
    if _ONE_SIZE.match(words) or (_DIMENSION.search(words) and not _LIST.search(words)):
        return ("one",)
    words = _TO_FIT.sub("", words)
    if _EXPLAINED.match(words):
        words = re.sub(r"\s*\([^()]*\)", "", words)
    listed = re.search(r"[(),\[\]{};|]|\band\b", words) is not None  # then `S/M` is one size
    words = re.sub(r"[(\[][^()\[\]]*[)\]]", _with_commas, words)
    cut = re.split(r"[(),\[\]{};|]|\s/\s|\band\b" if listed else r"/", words.strip().rstrip("."))
    names = [part.strip(" :.") for part in cut if part.strip(" :.")]
    if len(names) == 1 and re.fullmatch(r"\S+(?:\s*-\s*\S+)+", names[0]):
        names = [part.strip() for part in re.split(r"\s*-\s*", names[0])]
    if len(names) > 1 and _UNIT.fullmatch(names[-1]):
        names.pop()
    return tuple(dict.fromkeys(names)) or ("one",)


def _with_commas(bracket: re.Match[str]) -> str:
    """`[M: L]`, `(M-L-XL)` as a list."""
    words = bracket[0].replace(":", ",")
    return words if "," in words or any(sign.isdigit() for sign in words) else re.sub(r"\s*[-–]\s*", ",", words)
