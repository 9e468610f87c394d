"""Yarns of a pattern file: put-ups, what samples and swatches took, amounts as stated, and how long it took."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Literal

from gradegen.design.formula import PerSize
from gradegen.design.pattern import Terms, Timed, Weighed, Yarn, YarnStated
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.notation.sizes.size_lists import SIZE_LIST_LENGTH
from gradegen.read.pattern import keys
from gradegen.read.pattern.parts import unknown_size
from gradegen.read.yaml.fields import Given, Named
from gradegen.read.yaml.nodes import Scalar
from gradegen.trade.stitches import find_stitch

SWATCH_INCOMPLETE = Rule(
    "swatch-incomplete", Severity.ERROR, "file format", "A swatch says neither its stitches nor its width and height."
)

Findings = tuple[Finding, ...]


def read_yarns(named: Named[Given], sizes: tuple[str, ...], terms: Terms) -> tuple[tuple[Yarn, ...], Findings]:
    """The yarns in the order written, their evidence by stitch id."""
    findings: list[Finding] = []
    yarns: list[Yarn] = []
    for key, given in named:
        if given is not None:
            yarns.append(_yarn(key, given, terms))
            findings += _faults(given, sizes)
    return tuple(yarns), tuple(findings)


def _yarn(key: Scalar, given: Given, terms: Terms) -> Yarn:
    length, mass, length_also, mass_also = given.value(keys.SKEIN_FIELD) or (None, None, None, None)
    sample = given.value(keys.SAMPLE)
    return Yarn(
        letter=key.text,
        weight=given.value(keys.YARN_WEIGHT),
        fibre=given.value(keys.FIBRE),
        colour=given.value(keys.COLOUR),
        skein_length=length,
        skein_mass=mass,
        sample_size=sample.value(keys.SAMPLE_SIZE) if sample else None,
        sample_used=sample.value(keys.SAMPLE_USED) if sample else None,
        place=key.place,
        weighed=tuple(_weighed(given, terms)),
        unravelled=stitch_ids(given.value(keys.UNRAVELLED) or (), terms),
        margin=given.value(keys.MARGIN),
        price=given.value(keys.PRICE),
        besides={name.text: used for name, used in given.value(keys.BESIDES) or () if used is not None},
        tails=given.value(keys.TAILS),
        stated=_stated(given.value(keys.STATED)),
        length_also=length_also,
        mass_also=mass_also,
        sample_stitches=stitch_ids(sample.value(keys.SAMPLE_STITCHES) or (), terms) if sample else {},
        sewing=given.value(keys.SEWING),
    )


def _weighed(given: Given, terms: Terms) -> Iterator[Weighed]:
    for piece in given.value(keys.TESTERS) or ():
        yield from _one("tester", piece, terms)
    for swatch in given.value(keys.SWATCHES) or ():
        yield from _one("swatch", swatch, terms)


def _one(what: Literal["tester", "swatch"], piece: Given, terms: Terms) -> Iterator[Weighed]:
    used = piece.value(keys.SAMPLE_USED)
    if used is not None:
        yield Weighed(
            what,
            used,
            piece.value(keys.SAMPLE_SIZE),
            stitch_ids(piece.value(keys.SWATCH_STITCHES) or (), terms),
            piece.value(keys.SWATCH_WIDTH),
            piece.value(keys.SWATCH_HEIGHT),
            place=piece.place,
        )


def stitch_ids(named: Named[Any], terms: Terms) -> dict[str, Any]:
    """Values by stitch id for values by stitch name; a name that is no stitch of the trade is the pattern's own."""
    found = {}
    for key, value in named:
        if value is not None:
            known = find_stitch(key.text, terms)
            found[known.id if known else key.text] = value
    return found


def _stated(given: Given | None) -> YarnStated | None:
    if given is None:
        return None
    return YarnStated(*(given.value(field) for field in keys.STATED_FIELDS), place=given.place)


def _faults(given: Given, sizes: tuple[str, ...]) -> list[Finding]:
    sample = given.value(keys.SAMPLE)
    pieces = [*([sample] if sample else []), *(given.value(keys.TESTERS) or ())]
    named = [size for piece in pieces if (size := piece.value(keys.SAMPLE_SIZE)) is not None]
    findings = [unknown_size(size, sizes) for size in named if sizes and size.text not in sizes]
    findings += _list_lengths(given.value(keys.STATED), sizes)
    for swatch in given.value(keys.SWATCHES) or ():
        if not _is_measured(swatch) and not swatch.has_unknown:
            message = "This swatch says neither its stitches nor its width and height."
            hint = "Add stitches: {dc: 200, ch: 60}, or width: 6 in and height: 6 in."
            findings.append(SWATCH_INCOMPLETE.at(swatch.place, message, hint=hint))
    return findings


def _list_lengths(stated: Given | None, sizes: tuple[str, ...]) -> Iterator[Finding]:
    for field in keys.STATED_FIELDS if stated is not None and sizes else ():
        listed = stated.value(field) if stated is not None else None
        if isinstance(listed, PerSize) and len(listed.each) != len(sizes):
            yield SIZE_LIST_LENGTH.at(
                listed.place,
                f"The pattern has {len(sizes)} sizes, and {field.key} are given for {len(listed.each)}.",
                expected=str(len(sizes)),
                found=str(len(listed.each)),
            )


def _is_measured(swatch: Given) -> bool:
    sides = (keys.SWATCH_WIDTH.key, keys.SWATCH_HEIGHT.key)
    return keys.SWATCH_STITCHES.key in swatch.places or all(side in swatch.places for side in sides)


def read_timed(given: Given | None, sizes: tuple[str, ...], terms: Terms) -> tuple[Timed | None, Findings]:
    """How long a piece took; a size that is none of the pattern's is a finding."""
    if given is None:
        return None, ()
    size = given.value(keys.TIMED_SIZE)
    findings = (unknown_size(size, sizes),) if size is not None and sizes and size.text not in sizes else ()
    paces: Mapping[str, Any] = stitch_ids(given.value(keys.PER_MINUTE) or (), terms)
    return Timed(size, given.value(keys.HOURS), paces, place=given.place), findings
