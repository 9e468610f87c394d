"""How a stitch name is compared: capitals, full stops, hyphens and plurals make no difference."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

_HYPHEN = re.compile(r"\s*[-\u2010\u2011\u2013]\s*")
_COUNTED = re.compile(r"^(\d+)-(?=[a-z])")


_BEGUN = re.compile(r"(?:beg|beginning|begin|start|starting|starter|initial|first)\.?[ -]+(?=\w)", re.IGNORECASE)


def begun_name(name: str) -> str:
    """The `shell` of `beg shell`, the first of a round, whose chain stands for a stitch; "" for any other name."""
    found = _BEGUN.match(name)
    return name[found.end() :].strip() if found else ""


def _level(words: str) -> str:
    """The name in one case, without full stops; hyphens are spaces, but for `3-dc cluster`."""
    text = words.casefold().replace(".", "")
    if text.isalnum():
        return text
    text = _HYPHEN.sub("-", text.strip())
    counted = _COUNTED.match(text)
    head, rest = (counted.group(0), text[counted.end() :]) if counted else ("", text)
    return head + " ".join(rest.replace("-", " ").split())


def _singular(name: str) -> str:
    """The name less the plural ending of its last word."""
    if name.endswith("stitches"):
        return name[:-2]
    return name[:-1] if name.endswith("s") and not name.endswith("ss") else name


@lru_cache(maxsize=4096)
def spelling(words: str) -> tuple[str, ...]:
    """The keys to look a name up by, the likelier first."""
    name = _level(words)
    return tuple(dict.fromkeys((name, _singular(name)))) if name else ()


def spellings_of(names: Iterable[str], *, plain: bool) -> Iterator[str]:
    """The keys one stitch is found by; a plain stitch also as `sc st`."""
    for name in names:
        key = _level(name)
        yield key
        if plain:
            yield f"{key} st"
            yield f"{key} stitch"
