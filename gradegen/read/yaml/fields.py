"""Blocks of a file to typed values: what a key takes is said once, for reading and for editors' completion alike."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar, cast

from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.read.yaml.nodes import Block, Listing, Node, Scalar, head_of

UNKNOWN_KEY = Rule("unknown-key", Severity.ERROR, "file format", "A key that nothing here reads.")
MISSING_KEY = Rule("missing-key", Severity.ERROR, "file format", "A key that must be there is not.")
VALUE_MISSING = Rule("value-missing", Severity.ERROR, "file format", "A key stands there without a value.")
WRONG_KIND = Rule("wrong-kind", Severity.ERROR, "file format", "A value is of another kind than its key takes.")

MOST_UNKNOWN = 4  # more unknown keys than this in one block are one finding: it is another kind of block

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Kind(Generic[T]):
    """What a value may be: its name in a sentence, how a node is read, and its JSON Schema."""

    name: str
    read: Callable[[Node], tuple[T | None, tuple[Finding, ...]]]
    schema: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Field(Generic[T]):
    """One key of a block."""

    key: str
    kind: Kind[T]
    about: str
    required: bool = False
    example: str = ""


@dataclass(frozen=True, slots=True)
class Given:
    """What a block gave: values by key (None where one could not be read), and where each stands.

    `has_unknown`: keys stood in it that nothing reads, so what seems missing may only be misspelt.
    """

    values: Mapping[str, object]
    places: Mapping[str, Place]
    place: Place
    has_unknown: bool = False

    def value(self, field: Field[T]) -> T | None:
        """The value of a key, None when it was not given or could not be read."""
        return cast("T | None", self.values.get(field.key))

    def place_of(self, field: Field[Any]) -> Place:
        """Where the value stands; the block when the key was not given."""
        return self.places.get(field.key, self.place)


Fields = tuple[Field[Any], ...]


def nearest(word: str, known: tuple[str, ...]) -> str | None:
    """The known name most like `word`, None when nothing is like it."""
    from difflib import get_close_matches

    folded = {name.casefold(): name for name in reversed(known)}
    if folded and (close := get_close_matches(word.casefold().replace("_", " "), folded, n=1, cutoff=0.6)):
        return folded[close[0]]
    return None


def wrong_kind(node: Node, wanted: str, hint: str | None = None) -> Finding:
    """The finding for a value of another kind; a colon that made a block out of a text is named."""
    if isinstance(node, Block) and node.entries and hint is None:
        key = node.entries[0].key
        message = f"{wanted[0].upper()}{wanted[1:]} is needed here, not a block of keys."
        hint = f"If “{key.text}: ...” is meant as words, put the whole text in quotes: a colon and a blank make a key."
        return WRONG_KIND.at(key.place, message, hint=hint)
    found = {Block: "a block of keys", Listing: "a list"}.get(type(node), "this")
    message = f"{wanted[0].upper()}{wanted[1:]} is needed here, not {found}."
    return WRONG_KIND.at(head_of(node), message, hint=hint or "Put text with brackets or a dash in quotes.")


def read_fields(node: Node, fields: Fields, what: str) -> tuple[Given | None, tuple[Finding, ...]]:
    """The values of one block; unknown, empty and missing keys are findings at their places."""
    if not isinstance(node, Block):
        keys = ", ".join(field.key for field in fields[:4])
        return None, (
            wrong_kind(node, f"{what}, a block of keys,", f"Its keys are {keys}{' ...' * (len(fields) > 4)}."),
        )
    by_key = {field.key: field for field in fields}
    values: dict[str, object] = {}
    places: dict[str, Place] = {}
    findings: list[Finding] = []
    unknown = [entry.key for entry in node.entries if entry.key.text not in by_key]
    for entry in node.entries:
        if field := by_key.get(entry.key.text):
            places[field.key] = head_of(entry.value)
            values[field.key], found = _value(entry.key, entry.value, field)
            findings += found
    guesses = {nearest(key.text, tuple(by_key)) for key in unknown}
    missing = [field for field in fields if field.required and field.key not in values and field.key not in guesses]
    findings += _unknown_keys(unknown, tuple(by_key), what)
    if len(unknown) <= MOST_UNKNOWN:
        findings += _missing_keys(missing, node, what)
    return Given(values, places, node.head, bool(unknown)), tuple(findings)


def _value(key: Scalar, node: Node, field: Field[Any]) -> tuple[object, tuple[Finding, ...]]:
    if not (isinstance(node, Scalar) and node.is_empty):
        return field.kind.read(node)
    severity = Severity.ERROR if field.required else Severity.WARNING
    hint = f"Write {field.kind.name} after the colon" + ("." if field.required else ", or take the line out.")
    return None, (VALUE_MISSING.at(key.place, f"{field.key} has no value.", hint=hint, severity=severity),)


def _unknown_keys(unknown: list[Scalar], known: tuple[str, ...], what: str) -> list[Finding]:
    if len(unknown) > MOST_UNKNOWN:
        names = ", ".join(key.text for key in unknown[:3])
        message = f"{what[0].upper()}{what[1:]} has no keys {names} ... ({len(unknown)} unknown ones)."
        return [UNKNOWN_KEY.at(unknown[0].place, message, hint=f"Known here: {', '.join(known)}.")]
    return [_unknown_key(key, known, what) for key in unknown]


def _unknown_key(key: Scalar, known: tuple[str, ...], what: str) -> Finding:
    guess = nearest(key.text, known)
    hint = f"Did you mean {guess}?" if guess else f"Known here: {', '.join(known)}."
    return UNKNOWN_KEY.at(key.place, f"{what[0].upper()}{what[1:]} has no key {key.text or '(empty)'}.", hint=hint)


def _missing_keys(missing: list[Field[Any]], node: Block, what: str) -> list[Finding]:
    if not missing:
        return []
    names = " and ".join(field.key for field in missing)
    example = "; ".join(f"{field.key}: {field.example}" for field in missing if field.example)
    hint = f"Add {example}" if example else f"Add {names}."
    return [MISSING_KEY.at(node.head, f"{what[0].upper()}{what[1:]} needs {names}.", hint=hint)]


def block_of(fields: Fields, what: str) -> Kind[Given]:
    """A block with these keys and no others."""
    schema = {
        "type": "object",
        "additionalProperties": False,
        "properties": {field.key: _described(field) for field in fields},
        "required": [field.key for field in fields if field.required],
    }
    return Kind(what, lambda node: read_fields(node, fields, what), schema)


def _described(field: Field[Any]) -> Mapping[str, Any]:
    examples = {"examples": [field.example]} if field.example else {}
    return {**field.kind.schema, "description": field.about, **examples}


Named = tuple[tuple[Scalar, T | None], ...]


def names_of(kind: Kind[T], what: str) -> Kind[Named[T]]:
    """Names of the writer's own choosing, each with one value; a value that can't be read leaves its name known."""

    def read(node: Node) -> tuple[Named[T] | None, tuple[Finding, ...]]:
        if not isinstance(node, Block):
            return None, (wrong_kind(node, what, f"Write a name, a colon and {kind.name}, one line each."),)
        named: list[tuple[Scalar, T | None]] = []
        findings: list[Finding] = []
        misplaced = 0
        for entry in node.entries:
            value, found = _value(entry.key, entry.value, Field(entry.key.text, kind, "", True))
            named.append((entry.key, cast("T | None", value)))
            of_wrong_kind = any(
                finding.rule == WRONG_KIND.id and finding.place == head_of(entry.value) for finding in found
            )
            misplaced += of_wrong_kind
            findings += () if of_wrong_kind and misplaced > 1 else found  # a key above them is lost: once is enough
        return tuple(named), tuple(findings)

    return Kind(what, read, {"type": "object", "additionalProperties": kind.schema})


def list_of(kind: Kind[T], what: str) -> Kind[tuple[T, ...]]:
    """A list; a single value counts as a list of one. Items that can't be read are left out, with their findings."""

    def read(node: Node) -> tuple[tuple[T, ...] | None, tuple[Finding, ...]]:
        items = node.items if isinstance(node, Listing) else (node,)
        values: list[T] = []
        findings: list[Finding] = []
        for item in items:
            if found := _empty_item(item, kind.name):
                findings.append(found)
                continue
            value, more = kind.read(item)
            findings += more
            if value is not None:
                values.append(value)
        return tuple(values), tuple(findings)

    several = {"type": "array", "items": kind.schema}
    return Kind(what, read, several if kind.schema.get("type") == "object" else {"anyOf": [several, kind.schema]})


def _empty_item(node: Node, wanted: str) -> Finding | None:
    if not (isinstance(node, Scalar) and node.is_empty):
        return None
    hint = f"Write {wanted} after the dash, or take the line out."
    return VALUE_MISSING.at(node.place, "This item is empty.", hint=hint, severity=Severity.WARNING)
