"""What a row can ask for, as small as possible."""

from __future__ import annotations

from dataclasses import dataclass


class CannotReadError(Exception):
    """The slow worker does not understand this wording."""


class UndefinedError(Exception):
    """A stitch that nobody explained."""


@dataclass(frozen=True)
class Bound:
    """How far: to the "end", to the "last" `number` of `kinds`, or "before" the next of `kinds`."""

    to: str
    number: int = 0
    kinds: tuple[str, ...] = ()


@dataclass(frozen=True)
class Place:
    """Where a step goes. `which`: next, each, same, here, first, last, hook, ring, tch, nth (in a run of `kinds`)."""

    which: str
    kinds: tuple[str, ...] = ("st",)
    number: int = 1
    nth: int | None = None
    bound: Bound | None = None


@dataclass(frozen=True)
class Work:
    """All of `atoms` go into each place; `together`: one lot over all places. `unit` is the name it was called by."""

    atoms: tuple[str, ...]
    place: Place
    unit: str = ""
    together: bool = False
    skipped: tuple[str, ...] | None = None  # what skipped foundation chains were said to count as


@dataclass(frozen=True)
class Each:
    """`sc in each st and 2 sc in each sp around`: what is made depends on what comes next."""

    lots: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]  # (atoms, kinds)
    bound: Bound


@dataclass(frozen=True)
class Skip:
    place: Place


@dataclass(frozen=True)
class Chain:
    """`counts`: None nothing said, () does not count, else what it stands for."""

    number: int
    counts: tuple[str, ...] | None = None


@dataclass(frozen=True)
class Slip:
    place: Place


@dataclass(frozen=True)
class Join:
    ring: bool = False


@dataclass(frozen=True)
class Turn:
    pass


@dataclass(frozen=True)
class Leave:
    """The rest stays unworked, and that is meant."""


@dataclass(frozen=True)
class OtherSide:
    """From here on the free loops of the foundation, back towards its beginning."""


@dataclass(frozen=True)
class Evenly:
    """So many stitches more (or fewer) than the steps say, anywhere."""

    change: int


@dataclass(frozen=True)
class Repeat:
    """`times`: how often, likeliest first; or a bound. The last run ends after `stop_at` steps."""

    body: tuple[object, ...]
    times: tuple[int, ...] = ()
    bound: Bound | None = None
    stop_at: int | None = None


@dataclass(frozen=True)
class Choice:
    """One wording, several meanings, likeliest first."""

    meanings: tuple[tuple[object, ...], ...]
