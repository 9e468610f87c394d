"""Cells of a size table: a number, a band `[lowest, highest]`, or nothing where nothing was published."""

from __future__ import annotations

import re
from typing import Any

from gradegen.design.sizes import Band
from gradegen.findings import Finding, Place
from gradegen.read.yaml.fields import Kind, wrong_kind
from gradegen.read.yaml.kinds import POSITIVE
from gradegen.read.yaml.nodes import Listing, Node, Scalar

BandAt = tuple[Band | None, Place]

_NUMBER: dict[str, Any] = {"type": "number", "exclusiveMinimum": 0}
_BAND: dict[str, Any] = {"type": "array", "prefixItems": [_NUMBER, _NUMBER], "minItems": 2, "maxItems": 2}
_DASHED = re.compile(r"([0-9][0-9.]*)\s*[-–]\s*([0-9][0-9.]*)")


def read_band(node: Node) -> tuple[BandAt | None, tuple[Finding, ...]]:
    """One cell; `null` and nothing at all are cells that were not published."""
    if isinstance(node, Scalar):
        return _from_scalar(node)
    if not isinstance(node, Listing) or len(node.items) != 2:
        return None, (wrong_kind(node, "a number or a band such as [28, 30]", "Give the lowest and the highest body."),)
    ends = [POSITIVE.read(item) for item in node.items]
    findings = tuple(finding for _, found in ends for finding in found)
    low, high = (value for value, _ in ends)
    return ((Band(low, high), node.place), ()) if low is not None and high is not None else (None, findings)


def _from_scalar(node: Scalar) -> tuple[BandAt | None, tuple[Finding, ...]]:
    if node.is_empty or (node.style == "plain" and node.text in ("null", "~", "-")):
        return (None, node.place), ()
    if dashed := _DASHED.fullmatch(node.text.strip()):
        ends = [POSITIVE.read(Scalar(node.trimmed.part(*dashed.span(end)), "plain", node.place)) for end in (1, 2)]
        low, high = (value for value, _ in ends)
        if low is not None and high is not None:
            return (Band(low, high), node.place), ()
    number, findings = POSITIVE.read(node)
    return ((Band(number, number), node.place) if number is not None else None), findings


BAND: Kind[BandAt] = Kind("a number or a band such as [28, 30]", read_band, {"anyOf": [_NUMBER, _BAND]})


def _read_cells(node: Node) -> tuple[tuple[BandAt, ...] | None, tuple[Finding, ...]]:
    if not isinstance(node, Listing):
        return None, (wrong_kind(node, "a list with one value per size"),)
    cells = [read_band(item) for item in node.items]
    findings = tuple(finding for _, found in cells for finding in found)
    return (None if findings else tuple(cell for cell, _ in cells if cell is not None)), findings


CELLS: Kind[tuple[BandAt, ...]] = Kind(
    "a list with one value per size",
    _read_cells,
    {"type": "array", "items": {"anyOf": [_NUMBER, _BAND, {"type": "null"}]}, "examples": [[34, [36, 38], None]]},
)
