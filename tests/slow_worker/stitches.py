"""Names of stitches: which words are stitches, and which things on an edge a word can mean."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from slow_worker.steps import CannotReadError
from slow_worker.words import one_word, spell, words

HEIGHTS = {
    "US": {"sc": 1, "hdc": 2, "dc": 3, "tr": 4, "dtr": 5},
    "UK": {"dc": 1, "htr": 2, "tr": 3, "dtr": 4, "ttr": 5},
}
POST = re.compile(r"(fp|bp)(sc|hdc|dc|tr|htr|dtr)")
TOGETHER = re.compile(r"(sc|hdc|dc|tr|htr|dtr)(\d)tog")
ALWAYS_ONE = ("bobble", "popcorn", "puff", "cluster")


@dataclass(frozen=True)
class Own:
    """A stitch the pattern explains: what goes into one place, or (`macro`) a longer wording."""

    name: str
    atoms: tuple[str, ...] = ()
    macro: str = ""


def is_stitch(item: str) -> bool:
    """Whether this thing on an edge is a stitch (or a chain or row end to work in), not a space and not a picot."""
    return not item.endswith(" sp") and item != "picot"


def family(name: str) -> str:
    """The plain stitch behind a post stitch or a decrease: FPdc and dc2tog are both dc."""
    if found := POST.fullmatch(name.lower()):
        return found[2]
    if found := TOGETHER.fullmatch(name):
        return found[1]
    return name


def printed(name: str) -> str:
    """A stitch's name as it is printed: FPdc, not fpdc."""
    found = POST.fullmatch(name)
    return found[1].upper() + found[2] if found else name


def matches(kind: str, item: str, edge: Sequence[str]) -> bool:
    """Whether `item` is what a step means that says `kind`."""
    if kind == "place":
        return item != "picot"
    if kind == "st":
        return is_stitch(item)
    if kind == "sp":
        return item.endswith(" sp")
    if kind == "corner":
        spaces = [other for other in edge if other.endswith(" sp")]
        return bool(spaces) and item == max(spaces, key=lambda sp: int(sp[3:-3]))
    return item == kind or (item == "st" and is_stitch(kind) and kind != "ch") or family(item) == family(kind)


def read_own(definitions: Mapping[str, str], notes: Sequence[str]) -> dict[str, Own]:
    """Own stitches by their one-word name, from the definitions and from notes of the form `Corner = (...) in sp`."""
    texts = dict(definitions)
    for note in notes:
        for part in re.split(r"[;.]|, (?=\w+ = )", note):
            if found := re.fullmatch(r"\s*\"?([A-Za-z0-9][\w -]*?)\"?\s*=\s*(.+)", part):
                name = re.sub(r"^1 ", "", found[1].strip())
                if name not in ("inc", "dec"):
                    texts.setdefault(name, found[2])
    own: dict[str, Own] = {}
    for name, text in texts.items():
        own[one_word(name)] = _own(name, text, texts)
    return own


def _own(name: str, text: str, others: Mapping[str, str]) -> Own:
    plain = spell(text, others)
    if name.lower().split()[-1] in ALWAYS_ONE or re.search(r"counts? as (?:1|one)\b|\btog|; 1 st", plain):
        return Own(name, (name,))
    if name.lower().startswith("picot"):
        return Own(name, ("picot",))
    if re.search(r"\bsk\b|\bnext\b", plain) and not re.fullmatch(r"[^,]*\bin (?:the )?next \S+", plain):
        return Own(name, macro=plain)
    try:
        return Own(name, group_atoms(plain, others))
    except CannotReadError:
        return Own(name)


def group_atoms(plain: str, others: Mapping[str, str]) -> tuple[str, ...]:
    """What `(2 dc, ch 1, 2 dc) in same sp` or `5 dc in same st` puts into one place."""
    found = re.match(r"\(([^()]*)\)", plain)
    inside = found[1] if found else re.split(r"\b(?:in|into)\b", plain)[0]
    atoms: list[str] = []
    for part in re.split(r",|\band\b|/", inside):
        atoms += item_atoms(part, others)
    if not atoms:
        raise CannotReadError(plain)
    return tuple(atoms)


def item_atoms(part: str, others: Mapping[str, str]) -> list[str]:
    """`2 dc`, `dc2`, `ch 1` inside a group."""
    tokens = words(part)
    if len(tokens) == 1 and (found := re.fullmatch(r"([a-z]+?)(\d+)", tokens[0])):
        tokens = [*words(found[1]), *words(found[2])] if found[1] == "ch" else [*words(found[2]), *words(found[1])]
    if len(tokens) == 2 and tokens[0] == "ch" and tokens[1].isdigit():
        return [f"ch-{tokens[1]} sp"]
    if len(tokens) == 2 and tokens[1].isdigit():
        tokens.reverse()
    times = int(tokens.pop(0)) if len(tokens) == 2 and tokens[0].isdigit() else 1
    if len(tokens) != 1:
        raise CannotReadError(part)
    name = str(tokens[0])
    if name.startswith("own_"):
        inner = next((text for other, text in others.items() if one_word(other) == name), None)
        if inner is None:
            raise CannotReadError(part)
        key = next(other for other in others if one_word(other) == name)
        return list(_own(key, inner, {k: v for k, v in others.items() if k != key}).atoms) * times
    if name not in HEIGHTS["US"] and name not in HEIGHTS["UK"] and not TOGETHER.fullmatch(name):
        raise CannotReadError(part)
    return [name] * times
