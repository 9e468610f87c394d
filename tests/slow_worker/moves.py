"""Moves: a few words of a row that know what they take from the edge and what they make of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from hypothesis import strategies as st

NOTES = ("Ch 1 at beg does not count as a st.", "Ch 3 at beg counts as a dc.")
SIZE_NAMES = ("XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X", "8X")
# Of treble, which no other move makes: so nothing but the name makes one.
DEFINITIONS = {"V-st": "(tr, ch 1, tr) in st or sp indicated", "shell": "5 tr in st or sp indicated"}


@dataclass(frozen=True)
class Move:
    """A few words of a row: what they take from the edge and what they make. `own`: named stitches of the pattern."""

    words: str
    takes: tuple[str, ...]
    makes: tuple[str, ...]
    own: tuple[str, ...] = ()


@dataclass(frozen=True)
class MadeRow:
    """A row and all that must come of it, per size. `faulty`: sizes in which it is wrong, `fault` by which name."""

    text: str
    shape: str
    sizes: tuple[str, ...]
    priors: tuple[str, ...]
    made: tuple[int, ...]
    taken: tuple[int, ...]
    after: tuple[tuple[str, ...], ...]
    own: tuple[dict[str, int], ...]
    definitions: dict[str, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    faulty: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()


def is_stitch(item: str) -> bool:
    """Whether a thing on an edge counts as a stitch."""
    return not item.endswith(" sp")


def stitches(items: Sequence[str]) -> int:
    """How many of these things are stitches."""
    return sum(is_stitch(item) for item in items)


def listed(values: Sequence[int], shape: str = "round") -> str:
    """A size list as printed: `84`, `84 (90, 96)`, `84 [90, 96]` or `84 (90, 96) (102, 108)`."""
    if len(values) == 1:
        return str(values[0])
    first, rest = values[0], values[1:]
    if shape == "square":
        return f"{first} [{', '.join(map(str, rest))}]"
    if shape == "grouped" and len(rest) > 3:
        return f"{first} ({', '.join(map(str, rest[:2]))}) ({', '.join(map(str, rest[2:]))})"
    return f"{first} ({', '.join(map(str, rest))})"


# -- moves -----------------------------------------------------------------------------------------------------------

PLAIN = st.sampled_from(["sc", "hdc", "dc"])


def called(name: str, number: int, by_name: bool) -> str:
    """`next 3 sts` or `next 3 dc`."""
    if by_name:
        return name
    return "st" if number == 1 else "sts"


@st.composite
def stitch_moves(draw: st.DrawFn, below: str, by_name: bool) -> Move:
    """A move that takes stitches named `below`."""
    stitch = draw(PLAIN)
    number = draw(st.integers(1, 6))
    thing, one = called(below, number, by_name), called(below, 1, by_name)
    kind = draw(st.sampled_from(["plain", "each of", "inc", "tog", "sk", "group", "post", "own", "tog3"]))
    if kind == "plain":
        words = f"{stitch} in next {thing}" if number == 1 else f"{stitch} in next {number} {thing}"
        return Move(words, (below,) * number, (stitch,) * number)
    if kind == "each of":
        return Move(
            f"{stitch} in each of next {number + 1} {called(below, 2, by_name)}",
            (below,) * (number + 1),
            (stitch,) * (number + 1),
        )
    if kind == "inc":
        many = draw(st.integers(2, 5))
        return Move(f"{many} {stitch} in next {one}", (below,), (stitch,) * many)
    if kind in ("tog", "tog3"):
        together = 2 if kind == "tog" else 3
        return Move(f"{stitch}{together}tog", (below,) * together, (f"{stitch}{together}tog",))
    if kind == "sk":
        return Move(f"sk next {number} {thing}" if number > 1 else f"sk next {thing}", (below,) * number, ())
    if kind == "post":
        side = draw(st.sampled_from(["FP", "BP"]))
        return Move(f"{side}dc around next {one}", (below,), (f"{side}dc",))
    if kind == "own":
        name = draw(st.sampled_from(sorted(DEFINITIONS)))
        makes = ("tr", "ch-1 sp", "tr") if name == "V-st" else ("tr",) * 5
        return Move(f"{name} in next {one}", (below,), makes, (name,))
    left, chain, right = draw(st.integers(1, 3)), draw(st.integers(1, 4)), draw(st.integers(1, 3))
    makes = ("dc",) * left + (f"ch-{chain} sp",) + ("dc",) * right
    side = [f"{n} dc" if n > 1 else "dc" for n in (left, right)]
    return Move(f"({side[0]}, ch {chain}, {side[1]}) in next {one}", (below,), makes)


@st.composite
def space_moves(draw: st.DrawFn, length: int) -> Move:
    """A move into one ch-`length` space."""
    stitch = draw(PLAIN)
    many = draw(st.integers(1, 6))
    sp = draw(st.sampled_from([f"ch-{length} sp", f"ch-{length} sp", "sp", f"ch-{length} loop"]))
    if draw(st.booleans()):
        words = f"{stitch} in next {sp}" if many == 1 else f"{many} {stitch} in next {sp}"
        return Move(words, (f"ch-{length} sp",), (stitch,) * many)
    chain = draw(st.integers(1, 3))
    return Move(
        f"({stitch}, ch {chain}, {stitch}) in next {sp}", (f"ch-{length} sp",), (stitch, f"ch-{chain} sp", stitch)
    )


@st.composite
def bodies(draw: st.DrawFn, below: str, length: int | None, by_name: bool) -> tuple[Move, ...]:
    """One to five moves that can stand in a repeat; chains lie between stitches, and something is taken."""
    moves: list[Move] = []
    for _ in range(draw(st.integers(1, 5))):
        into_space = length is not None and draw(st.booleans())
        moves.append(draw(space_moves(length) if into_space and length is not None else stitch_moves(below, by_name)))
        if draw(st.integers(0, 3)) == 0:
            chain = draw(st.integers(1, 6))
            moves.append(Move(f"ch {chain}", (), (f"ch-{chain} sp",)))
    if not any(move.makes and not move.words.startswith("ch ") for move in moves):
        moves.insert(0, Move(f"sc in next {called(below, 1, by_name)}", (below,), ("sc",)))
    return tuple(moves)


def words_of(moves: Sequence[Move]) -> str:
    return ", ".join(move.words for move in moves)


def taken_by(moves: Sequence[Move]) -> tuple[str, ...]:
    return tuple(item for move in moves for item in move.takes)


def made_by(moves: Sequence[Move]) -> tuple[str, ...]:
    return tuple(item for move in moves for item in move.makes)


def runs(groups: Sequence[tuple[int, Sequence[str]]]) -> str:
    """An edge in runs notation: `3 sc, 8 x (dc, ch-1 sp)`."""
    parts = []
    for times, items in groups:
        if not items or not times:
            continue
        inner = ", ".join(items)
        parts.append(inner if times == 1 else f"{times} x ({inner})")
    return ", ".join(parts)
