"""The proof of a spoken edition: the numbers of every row in every size, read back from the finished text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from html import unescape

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.write.editions.edition import Edition
from gradegen.write.page.proof import PRINT_DIFFERS, Sought, expect_print
from gradegen.write.page.proof_rows import Wanted
from gradegen.write.view.rows import label_bounds

_NAMES = r"\bsizes? (?P<names>[^:;,.]+(?:, [^:;.]+?)?): "
_SIZE = re.compile(_NAMES + r"(?P<value>not worked|\d+\w*)")
_LABEL = re.compile(_NAMES + r"(?P<label>[^;:]*)[;:]\s*", re.IGNORECASE)


def text_of(html: str) -> str:
    """The text of a spoken page, a line for every block."""
    body = html.partition("<body>")[2]
    return unescape(re.sub(r"<[^>]+>", "", body))


def prove_spoken(text: str, checked: Checked, edition: Edition) -> tuple[Finding, ...]:
    """A finding for every number that a row says otherwise; () when every one agrees."""
    lines = [line.strip() for line in text.split("\n")]
    expected = expect_print(checked, edition)
    findings: list[Finding] = []
    at = 0
    for sought in expected.rows:
        wanted = [values for values in sought.wanted if values is not None and len(set(values)) > 1]
        found = next((here for here in range(at, len(lines)) if _agrees(lines[here], sought, wanted)), None)
        if found is None:
            message = f"{sought.name} does not stand in the text with its numbers."
            findings.append(PRINT_DIFFERS.at(sought.row.place, message, hint="Please report it with the pattern."))
        else:
            at = found + 1
    return tuple(findings)


def _agrees(line: str, sought: Sought, wanted: Sequence[tuple[str, ...]]) -> bool:
    """True when the line holds these lists, in order and nothing else, and the row's numbers for all sizes."""
    names = [size.name for size in sought.sizes]
    in_label = [values for values in _label_values(sought) if len(set(values)) > 1]
    rest = _after_label(line, names, in_label) if in_label else line
    if rest is None:
        return False
    return list(_lists(rest, names)) == list(wanted[len(in_label) :]) and _has_others(line, sought)


def _label_values(sought: Sought) -> Iterator[tuple[str, ...]]:
    """The lists of the row's label, which come first in its search."""
    end, _ = label_bounds(sought.row)
    pairs = zip(sought.search.listed, sought.wanted, strict=True)
    yield from (values for listed, values in pairs if listed and values and listed.end <= end)


def _after_label(line: str, names: Sequence[str], values: Sequence[tuple[str, ...]]) -> str | None:
    """What follows a label that is said size by size, when it says these values; None when it doesn't."""
    at, missing = 0, set(names)
    while missing:
        found = _LABEL.match(line, at)
        if found is None:
            return None
        numbers = re.findall(r"\d+", found["label"])
        for name in re.split(r", | and ", found["names"]):
            each = [one[names.index(name)] for one in values] if name in names else ["?"]
            if not all(value in numbers for value in each):
                return None
            missing.discard(name)
        at = found.end()
    return line[at:]


def _lists(line: str, names: Sequence[str]) -> Iterator[tuple[str, ...]]:
    """Every list of the line, one value per size; a new list begins where a size comes again."""
    values: dict[str, str] = {}
    for found in _SIZE.finditer(line):
        for name in re.split(r", | and ", found["names"]):
            values[name] = "-" if found["value"] == "not worked" else found["value"]
        if len(values) == len(names):
            yield tuple(values.get(name, "") for name in names)
            values = {}
    if values:
        yield tuple(values.get(name, "") for name in names)


def _has_others(line: str, sought: Sought) -> bool:
    """True when the numbers that all sizes share stand in the line, in order."""
    shared: list[Wanted] = [values for values in sought.wanted if values is not None and len(set(values)) == 1]
    bare = _SIZE.sub(" ", line)
    at = 0
    for values in shared:
        found = re.compile(rf"(?<![\w.]){re.escape(values[0])}(?![\w.]*\d)").search(bare, at) if values else None
        if found is None:
            return False
        at = found.end()
    return True
