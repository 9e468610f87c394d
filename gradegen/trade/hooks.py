"""Hook sizes: the millimetre is the truth, letters and numbers are only names for it; look-ups give all that fit."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Any, Literal

from gradegen.trade.sources import Source, source_of
from gradegen.trade.tables import exact, read_table


@dataclass(frozen=True, slots=True)
class Hook:
    """One hook size; `us` and `uk` are None where that system has no name for it."""

    mm: Fraction
    us: str | None
    uk: str | None
    kind: Literal["regular", "steel"]
    note: str | None
    source: Source
    trust: str
    trust_uk: str | None


@cache
def hooks() -> tuple[Hook, ...]:
    """All hooks: regular ones from fine to thick, then steel ones from thick to fine."""
    table = read_table("hooks")
    source = source_of(table["source"])
    regular = tuple(_hook(written, "regular", source) for written in table["regular"])
    return regular + tuple(_hook(written, "steel", source) for written in table["steel"])


def _hook(written: Mapping[str, Any], kind: Literal["regular", "steel"], source: Source) -> Hook:
    uk, trust = written.get("UK"), written["trust"]
    trust_uk = written.get("trust UK", trust) if uk else None
    return Hook(exact(written["mm"]), written["US"], uk, kind, written.get("note"), source, trust, trust_uk)


_MM = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm\b", re.IGNORECASE)
_PREFIX = re.compile(r"^(?:size|hook|no\.?|#)\s*", re.IGNORECASE)


def hooks_of(mm: Fraction, kind: Literal["regular", "steel"] | None = None) -> tuple[Hook, ...]:
    """Every hook of exactly this millimetre size."""
    return tuple(hook for hook in hooks() if hook.mm == mm and kind in (None, hook.kind))


def find_hooks(words: str) -> tuple[Hook, ...]:
    """Every hook these words can mean: `5 mm`, `H-8`, `US 7` (two hooks), `steel 7`, `UK 12` (two hooks).

    Millimetres, where they stand, decide alone. `US` and `UK` say whose names are meant; nothing said means US.
    """
    millimetres = _MM.search(words)
    if millimetres:
        return hooks_of(exact(millimetres.group(1).replace(",", ".")))
    level = " ".join(words.casefold().replace("½", " 1/2").replace(".5", " 1/2").split())
    steel = "steel" in level
    level = level.replace("steel", " ").replace("crochet hook", " ").replace("hook", " ").strip()
    uk = level.startswith("uk")
    name = _PREFIX.sub("", level.removeprefix("uk").removeprefix("us").strip()).strip()
    name = re.sub(r"\s*([-/])\s*(?!2\b)", r"\1", name)
    if uk:
        return tuple(hook for hook in hooks() if hook.uk == name)
    return tuple(hook for hook in hooks() if name in us_names(hook) and (not steel or hook.kind == "steel"))


def us_names(hook: Hook) -> frozenset[str]:
    """All ways its US name is written, in small letters: M/N-13 is m/n-13, m/n, m, n, m-13, n-13, 13."""
    if hook.us is None:
        return frozenset()
    letters, _, number = hook.us.casefold().partition("-")
    if not number and letters[0].isdigit():
        return frozenset({letters})
    single = [letters, *letters.split("/")]
    joined = [f"{letter}{join}{number}" for letter in single for join in ("-", "/", " ", "") if number]
    return frozenset([*single, *joined, *([number] if number else [])])


def hook_words(mm: Fraction, kind: Literal["regular", "steel"] = "regular") -> str:
    """How a hook is printed: the millimetres, then the US name where there is one: `5 mm (US H-8)`."""
    names = [hook.us for hook in hooks_of(mm, kind) if hook.us]
    size = f"{Decimal(mm.numerator) / Decimal(mm.denominator):f}"
    return f"{size} mm (US {'steel ' if kind == 'steel' else ''}{names[0]})" if names else f"{size} mm"
