"""What a pattern's notes settle: turning chains, `inc = 2 sc in next st`, the multiple."""

from __future__ import annotations

import re
from collections.abc import Iterable

from gradegen.design.notes import ChainNote, Multiple, NoteFacts
from gradegen.design.rows import Definition
from gradegen.findings import Written
from gradegen.read.notation.notes.chain_notes import chain_notes
from gradegen.read.notation.notes.definitions import read_definition, renames
from gradegen.read.notation.words.row_names import RowNames

_NAME = r"[\"“”']?(?:1 |one |a )?(?P<name>[A-Za-z][\w-]*(?: [A-Za-z][\w-]*){0,3})[\"“”']?"
_EQUALS = re.compile(rf"(?:^|[.;,]\s*|\band )\s*{_NAME}\s*=\s*", re.MULTILINE)
_COLON = re.compile(rf"^{_NAME}\s*:\s*(?=[(\[\d]|work |make |[a-z]+ (?:in|into|next) )", re.MULTILINE | re.IGNORECASE)
_NO_STITCH = re.compile(
    r"\b(?:notes?|gauge|sizes?|hook|yarn|row|rows|rnd|rnds|rounds?|finished|tension|skill|multiple|terms|at|to)\b",
    re.IGNORECASE,
)
_MULTIPLE = re.compile(
    r"multiple of (?P<of>\d+)(?: sts?| ch| stitches| chains?)?"
    r"(?:\s*(?:\+|plus|and)\s*(?P<plus>\d+)(?!\s*(?:more )?(?:for|ch\b|chains?\b))(?: sts?| stitches)?)?"
    r"(?:\s*[,(;]?\s*(?:\+|plus|add|and|with)\s*(?:an extra )?(?P<extra>\d+)\s*(?:more |extra )?"
    r"(?:for|ch\b|chs\b|chains?\b|sts? for))?",
    re.IGNORECASE,
)


def read_notes(texts: Iterable[Written], names: RowNames) -> NoteFacts:
    """All that the notes settle, taken together; the first word on a chain wins."""
    chains: list[ChainNote] = []
    definitions: dict[str, Definition] = {}
    multiple: Multiple | None = None
    for written in texts:
        known = RowNames(names.terms, names.sizes, {**names.definitions, **definitions}, names.counts, names.measures)
        found = _definitions(written, known)
        definitions.update(found)
        chains += [note for note in chain_notes(written, known) if note not in chains]
        multiple = multiple or _multiple(written.text)
    return NoteFacts(tuple(chains), definitions, multiple)


def _multiple(text: str) -> Multiple | None:
    found = _MULTIPLE.search(text)
    if found is None or int(found.group("of")) == 0:
        return None
    said_chain = found.group("extra") is not None or re.search(r"\bch(?:s|ains?)?\b", text, re.IGNORECASE)
    worked_over = re.search(r"\b(?:sts?|stitch(?:es)?|worked? (?:over|on))\b", text, re.IGNORECASE)
    of_stitches = worked_over is not None and not said_chain
    return Multiple(int(found.group("of")), int(found.group("plus") or 0), int(found.group("extra") or 0), of_stitches)


def _definitions(written: Written, names: RowNames) -> dict[str, Definition]:
    """Every `NAME = ...` of a note."""
    text = written.text
    heads = list(_EQUALS.finditer(text))
    titled = _COLON.match(text)
    if not heads and titled is not None and not _NO_STITCH.search(titled.group("name")):
        heads = [titled]
    found: dict[str, Definition] = {}
    for i, head in enumerate(heads):
        end = heads[i + 1].start() if i + 1 < len(heads) else len(text)
        words = written.part(head.end(), _stop(text, head.end(), end))
        name = _as_named(head.group("name"), text, head.start("name"))
        known = RowNames(names.terms, names.sizes, {**names.definitions, **found}, names.counts)
        definition = _defined(name, words, known)
        if definition is not None:
            found[name] = definition
    return found


def _stop(text: str, start: int, end: int) -> int:
    """A definition ends with its sentence."""
    stop = text.find(". ", start, end)
    return stop if stop >= 0 else end


def _as_named(name: str, text: str, at: int) -> str:
    """The name without the capital that only begins its sentence."""
    first = name.split(" ")[0]
    return name[0].lower() + name[1:] if first[1:].islower() and first[:1].isupper() and len(first) > 1 else name


def _defined(name: str, words: Written, names: RowNames) -> Definition | None:
    if not words.text.strip() or renames(name, words.text, names):
        return None
    definition, _ = read_definition(name, words, names)
    return definition if definition.makes or definition.steps or definition.one else None
