"""The `seams` block of a pattern: which edges meet, and by which name of the trade a mismatch goes."""

from __future__ import annotations

from fractions import Fraction

from gradegen.design.seams import Division, Join, PickUp, Seam, SeamKind
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.read.pattern import seam_keys as keys
from gradegen.read.pattern.seam_keys import Meeting, SeamGiven
from gradegen.read.yaml.fields import Given

SEAM_INCOMPLETE = Rule("seam-incomplete", Severity.ERROR, "file format", "A seam lacks a part it needs.")

Findings = tuple[Finding, ...]
_KINDS: tuple[tuple[SeamKind, tuple[str, ...]], ...] = (
    ("shoulder", ("shoulder", "shoulders")),
    ("side", ("side", "sides")),
    ("sleeve", ("sleeve", "sleeves", "armhole", "armholes", "cap")),
    ("raglan", ("raglan", "raglans")),
    ("width", ("width", "back", "front", "across")),
)


def read_seams(given: tuple[SeamGiven, ...]) -> tuple[tuple[Seam, ...], Findings]:
    """The seams in order; one that lacks a part is a finding."""
    seams: list[Seam] = []
    findings: list[Finding] = []
    for key, body in given:
        name = key.text if key else ""
        found = _seam(name, key.place if key else None, body)
        if isinstance(found, Finding):
            findings.append(found)
        else:
            seams.append(found)
    return tuple(seams), tuple(findings)


def _seam(name: str, place: Place | None, body: Meeting | Given) -> Seam | Finding:
    if isinstance(body, tuple):
        return _join(name, body, None)
    meeting = body.value(keys.JOIN)
    if meeting is not None:
        return _join(name, meeting, body)
    if keys.PICK_UP.key in body.places:
        return _pick_up(name, body)
    if keys.DIVIDES.key in body.places:
        return _division(name, body)
    message = "A seam joins two edges, picks up stitches, or divides a yoke."
    return SEAM_INCOMPLETE.at(place or body.place, message, hint="join: front shoulder to back shoulder")


def _join(name: str, meeting: Meeting, given: Given | None) -> Join:
    left, right, text = meeting
    within = given.value(keys.WITHIN) if given else None
    sewn = given.value(keys.SEWN) if given else None
    return Join(name, kind_of_seam(name, text.text), left, right, text.text, within, sewn, place=text.place)


def kind_of_seam(name: str, words: str) -> SeamKind:
    """What the seam is, by its name; without one, by the words of its edges, except what only a name can say."""
    for kind, known in _KINDS:
        if set(name.lower().split()) & set(known):
            return kind
    for kind, known in _KINDS[:4]:
        if set(words.lower().replace("=", " ").split()) & set(known):
            return kind
    return "edges"


def _pick_up(name: str, given: Given) -> PickUp | Finding:
    count, along, ratio = given.value(keys.PICK_UP), given.value(keys.ALONG_ROWS), given.value(keys.RATIO_OF)
    besides = given.value(keys.BESIDES_STS)
    if count is None or (along is not None and ratio is None and keys.RATIO_OF.key not in given.places):
        return SEAM_INCOMPLETE.at(given.place, "A pick-up along rows needs its ratio.", hint="ratio: 3 for 4")
    return PickUp(
        name or "the border",
        count,
        along,
        ratio or Fraction(1),
        besides,
        given.value(keys.BORDER_MULTIPLE),
        given.value(keys.BORDER_PLUS) or 0,
        text="",
        sewn=given.value(keys.SEWN) or 0,
        place=given.place_of(keys.PICK_UP),
    )


def _division(name: str, given: Given) -> Division | Finding:
    whole, parts, sleeve = given.value(keys.DIVIDES), given.value(keys.BODY_PARTS), given.value(keys.SLEEVE_PART)
    chain = given.value(keys.UNDERARM)
    if whole is None or not parts or sleeve is None or chain is None:
        hint = "{of: yoke, body parts: [front, back], sleeve part: sleeve top, underarm: underarm}"
        return SEAM_INCOMPLETE.at(given.place, "A division names the whole, its parts and the underarm.", hint=hint)
    return Division(
        name or "the division",
        whole,
        parts,
        sleeve,
        chain,
        given.value(keys.BODY_ROUND),
        given.value(keys.SLEEVE_ROUND),
        place=given.place_of(keys.DIVIDES),
    )
