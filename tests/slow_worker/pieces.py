"""Hypothesis strategy: whole pieces whose rows fit one another, with their counts, in one to four sizes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from hypothesis import strategies as st
from slow_worker.moves import SIZE_NAMES, listed


@dataclass(frozen=True)
class MadePiece:
    """A piece as plain lines, and the stitches every line must come to, per size."""

    shape: str
    sizes: tuple[str, ...]
    lines: tuple[str, ...]
    made: tuple[tuple[int, ...], ...]

    @property
    def text(self) -> str:
        """The rows, one a line."""
        return "\n".join(self.lines) + "\n"


Counts = tuple[int, ...]
NOTES = ("Ch 1 at beg does not count as a st.", "Ch 3 at beg counts as a dc.")


@dataclass(frozen=True)
class Template:
    """A row over a kind of edge: its words, which counts it fits, the stitches it makes, the kind of edge it gives."""

    words: str
    fits: Callable[[int], bool]
    makes: Callable[[int], int]
    over: str = "plain"
    gives: str = "plain"
    flat_only: bool = False


TEMPLATES = (
    Template("Ch 1, sc in each st {across}", lambda n: True, lambda n: n),
    Template("Ch 3, dc in each st {across}", lambda n: True, lambda n: n),
    Template("Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog", lambda n: n >= 8, lambda n: n - 2, flat_only=True),
    Template("Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st", lambda n: n < 99, lambda n: n + 2),
    Template("Ch 1, *sc in next st, dc in next st; rep from * {across}", lambda n: n % 2 == 0, lambda n: n),
    Template(
        "Ch 1, (sc in next 3 sts, 2 sc in next st) {across}", lambda n: n % 4 == 0 and n < 90, lambda n: n // 4 * 5
    ),
    Template(
        "Ch 1, *sc in next st, sc2tog; rep from * {across}", lambda n: n % 3 == 0 and n > 20, lambda n: n // 3 * 2
    ),
    Template("Ch 1, *sk next 2 sts, 3 dc in next st; rep from * {across}", lambda n: n % 3 == 0, lambda n: n),
    Template(
        "Ch 1, sc in first st, *sk next 2 sts, (dc, ch 1, dc, ch 1, dc) in next st, sk next 2 sts, sc in next st; "
        "rep from * {across}",
        lambda n: n % 6 == 1,
        lambda n: (n - 1) // 6 * 4 + 1,
        gives="fans",
        flat_only=True,
    ),
    Template(
        "Ch 4 (counts as dc and ch 1), sk next st, dc in next st, *ch 1, sk next st, dc in next st; "
        "rep from * {across}",
        lambda n: n % 2 == 1,
        lambda n: (n + 1) // 2,
        gives="mesh",
        flat_only=True,
    ),
    Template("Ch 1, sc in each dc and in each ch-1 sp {across}", lambda n: True, lambda n: 2 * n - 1, over="mesh"),
    Template(
        "Ch 3, *dc in next ch-1 sp, dc in next dc; rep from * {across}", lambda n: True, lambda n: 2 * n - 1, "mesh"
    ),
    Template(
        "Ch 1, *sc in next st, 2 sc in next ch-1 sp; rep from * to last st, sc in last st",
        lambda n: n > 1,
        lambda n: 3 * n - 2,
        "mesh",
    ),
    Template(
        "Ch 1, sc in each st and in each ch-1 sp {across}", lambda n: True, lambda n: (n - 1) // 4 * 6 + 1, over="fans"
    ),
)


@st.composite
def pieces(draw: st.DrawFn) -> MadePiece:
    """A foundation and three to eight rows more; rows that fit all sizes only; now and then two of them repeated."""
    many = draw(st.sampled_from([1, 2, 3, 4]))
    sizes = SIZE_NAMES[:many] if many > 1 else ("one",)
    first = draw(st.integers(10, 40))
    counts: Counts = tuple(first + 12 * draw(st.integers(1, 2)) * step for step in range(many))
    flat = draw(st.booleans())
    row = "Row" if flat else "Rnd"
    if flat:
        begin = f"Ch {listed([n + 1 for n in counts])}. Sc in 2nd ch from hook and in each ch across, turn."
    else:
        begin = f"Ch {listed(counts)}, join with sl st in first ch. Ch 1, sc in each ch around; join."
    lines, made, kind, number = [f"{row} 1: {begin} [{listed(counts)}]"], [counts], "plain", 2
    ending = ("across", "turn") if flat else ("around", "join")
    start: list[tuple[str, Counts]] = [(kind, counts)]  # what each numbered row was worked into
    for _ in range(draw(st.integers(3, 8))):
        fitting = [one for one in TEMPLATES if one.over == kind and (flat or not one.flat_only)]
        fitting = [one for one in fitting if all(one.fits(n) for n in counts)]
        if len(start) > 2 and start[-2] == (kind, counts) and draw(st.booleans()):
            last = number + 2 * draw(st.integers(1, 3)) - 1
            lines.append(f"{row}s {number}-{last}: Rep {row}s {number - 2} and {number - 1}. [{listed(counts)}]")
            made.append(counts)
            number = last + 1
            start = [(kind, counts)]
            continue
        one = draw(st.sampled_from(fitting))
        start.append((kind, counts))
        counts, kind = tuple(one.makes(n) for n in counts), one.gives
        words = one.words.format(across=ending[0])
        lines.append(f"{row} {number}: {words}; {ending[1]}. [{listed(counts)}]")
        made.append(counts)
        number += 1
    return MadePiece("flat" if flat else "joined rounds", sizes, tuple(lines), tuple(made))


def as_text(piece: MadePiece, lines: Sequence[str]) -> tuple[str, int]:
    """The piece as an ordinary text file, and the line its first row stands on."""
    sizes = "one size" if len(piece.sizes) == 1 else f"{piece.sizes[0]} ({', '.join(piece.sizes[1:])})"
    shape = "Worked flat in turned rows." if piece.shape == "flat" else "Worked in joined rounds."
    head = ["A Piece for Practice", "", f"Sizes: {sizes}", "Terms: US terms", shape, "", "Notes"]
    head += [f"- {note}" for note in NOTES] + ["", "Instructions"]
    return "\n".join([*head, *lines]) + "\n", len(head) + 1
