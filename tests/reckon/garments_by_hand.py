"""A garment's pieces worked by hand, with any chain and any counts: does every row come out?

The slow worker works the rows; shaping over rows is done here, on plain lists of stitches. Nothing of gradegen is used:
counts come in as numbers, and a passage as `gradegen explain` prints it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from patterns.by_hand import value_of
from patterns.garments import of_size, shaped
from slow_worker.row import Edge
from slow_worker.sizes import label_for_size
from slow_worker.whole import next_edge, rows_of, split_rows, work_labelled

STATED = re.compile(r"\s*\((?:\{|\d)[^()]*\)\s*$")
FASTENED = re.compile(r"\s*Fasten off[^.]*\.")
LAST = re.compile(r"(?i)\brep last (?:(\d+) )?(?:rows?|rnds?)")
SPARE = 1_000
SKIPPED = re.compile(r" \([^()]*: skip this part\)")


def stops_at(
    pattern: Mapping[str, Any],
    pieces: Sequence[str],
    counts: Mapping[str, int],
    passages: Mapping[str, str] | None = None,
) -> str | None:
    """The first row that does not come out with these counts, as `Piece Row 2`; None when all do.

    `passages`: the shaping of one size in the trade's words, by the braces that stand for it.
    """
    edge: Edge | None = None
    held: Edge = []
    for name in pieces:
        (piece,) = [one for one in pattern["pieces"] if one["name"] == name]
        edge = _beginning(name, edge, held, counts)
        worked = _piece(piece, edge, counts, passages or {}, [*pattern.get("notes", []), *piece.get("notes", [])])
        if isinstance(worked, str):
            return f"{name} {worked}"
        edge, unworked = worked
        held = held or unworked
    return None


def _beginning(name: str, edge: Edge | None, held: Edge, counts: Mapping[str, int]) -> Edge | None:
    """What a later piece is worked on: the body on the yoke, the neckband on the other side of the chain."""
    if name == "Neckband":
        return ["ch"] * counts["neck"]
    if name == "Sleeves" and held:
        half = ["ch"] * (counts["underarm"] // 2)
        return [*half, *held, *half]
    return edge if name == "Body" else None


def _piece(
    piece: Mapping[str, Any],
    edge: Edge | None,
    counts: Mapping[str, int],
    passages: Mapping[str, str],
    notes: list[str],
) -> tuple[Edge, Edge] | str:
    """The last edge and what Rnd 1 of a body leaves for a sleeve; else the label of the row that does not come out."""
    done: list[str] = []
    held: Edge = []
    for label, text in split_rows(piece["rows"]):
        plain = FASTENED.sub("", STATED.sub("", text)).replace(
            "in the free loop of each ch along the other side", "in each ch around"
        )
        if (found := re.search(r"\{([\w ]+)\}", plain)) and found[1] in passages:
            edge = _shaping(edge or [], passages[found[1]], piece, counts)
            if edge is None:
                return label
            continue
        if "sk next {sleeve part} sts" in plain:
            held = _sleeve(edge or [], counts)
        number = rows_of(label_for_size(label, 0, ("X",), _lists(counts))).count
        if number < 1:
            continue
        before: tuple[str | None, Edge | None] = (None, None)
        for turn in _turns(plain, number, done):
            if turn is None:
                return label
            if (turn, edge) == before:  # the same row on the same edge, and the same comes of it again
                continue
            before = (turn, edge)
            edge, worked = _row(label, turn, edge, counts, piece["shape"], notes)
            if not worked:
                return label
        if held and edge is not None and "sk next {sleeve part} sts" in plain:
            edge = _chains_apart(edge, counts["underarm"])
        done += [plain] * number
    return edge or [], held


def _turns(plain: str, number: int, done: list[str]) -> list[str | None]:
    """The text of every row of a label; None where a cycle of earlier rows does not fill it."""
    last = LAST.search(plain)
    again = re.match(r"(?i)rep (?:rows?|rnds?) (\d+)(?: and (\d+))?", plain)
    if last:
        cycle = done[-int(last[1] or 1) :]
    elif again:  # the first of `done` is the foundation where there is one, so Rnd 2 is its third text
        first = 1 if done[0].lower().startswith("ch ") and "2nd ch" not in done[0].lower() else 0
        cycle = [done[int(spot) - 1 + first] for spot in again.groups() if spot]
    else:
        return [plain] * number
    if number % len(cycle):
        return [None]
    turns = cycle * (number // len(cycle))
    return list(turns)


def _row(
    label: str, text: str, edge: Edge | None, counts: Mapping[str, int], shape: str, notes: list[str]
) -> tuple[Edge | None, bool]:
    """The edge as the next row meets it, and whether the row came out."""
    (result,) = work_labelled(
        "Row 1" if shape == "flat" else "Rnd 1", text, priors=[edge], sizes=("X",), shape=shape, earlier={},
        counts=_lists(counts), notes=notes,
    )  # fmt: skip
    if result.error or result.made is None:
        return None, False
    return (list(result.after) if result.made == 0 else next_edge(result, shape)), True


def _lists(counts: Mapping[str, int]) -> dict[str, list[int]]:
    return {name: [number] for name, number in counts.items()}


def _sleeve(edge: Edge, counts: Mapping[str, int]) -> Edge:
    """The stitches of the yoke that the first sleeve is worked on, with what stands beside them."""
    half, part = counts["back"] // 2, counts["sleeve part"]
    between = [at for at, one in enumerate(edge) if one.startswith("ch-1")]
    if between:
        return edge[half : half + part + 2]
    return edge[half : half + part]


def _chains_apart(edge: Edge, underarm: int) -> Edge:
    """The edge with every chain of an underarm by itself, for the round above works into them."""
    return [one for name in edge for one in (["ch"] * underarm if name == f"ch-{underarm} sp" else [name])]


def _shaping(edge: Edge, passage: str, piece: Mapping[str, Any], counts: Mapping[str, int]) -> Edge | None:
    """The edge after a passage; None where stitches run out. A round of increases goes from its edge to `yoke`."""
    if passage == "one row":
        more = counts["yoke"] - len(edge)
        return ["sc"] * counts["yoke"] if 0 <= more <= len(edge) else None
    stitch = "hdc" if piece["shape"] == "flat" else "sc"
    for wide in shaped(passage, [*edge, *[stitch] * SPARE], stitch):  # as if there were plenty, then counted
        edge = wide[SPARE:]
        if not edge:
            return None
    return [stitch] * len(edge)


def own_passage(text: str, at: int, sizes: int) -> str:
    """One size's words of a passage, without its parts that are worked no times."""
    return re.sub(r", then [^,]* 0 times", "", of_size(SKIPPED.sub("", text), at, sizes))


def relations_broken(pattern: Mapping[str, Any], counts: Mapping[str, int]) -> list[str]:
    """The relations, multiples and limits of a pattern file that these counts do not keep; those of the neck apart."""
    broken = []
    for relation in pattern["relations"]:
        left, sign, right = re.split(r" (<=|>=|=) ", relation)
        one, other = value_of(left, dict(counts)), value_of(right, dict(counts))
        if not {"=": one == other, "<=": one <= other, ">=": one >= other}[sign]:
            broken.append(relation)
    for name, rule in pattern["counts"].items():
        if name == "neck":
            continue
        n = counts[name]
        if "sum" in rule and n != value_of(str(rule["sum"]), dict(counts)):
            broken.append(f"{name} is no sum")
        if n < rule.get("least", 0) or n > rule.get("most", n) or (n - rule.get("plus", 0)) % rule.get("multiple", 1):
            broken.append(f"{name} {n}")
    return broken
