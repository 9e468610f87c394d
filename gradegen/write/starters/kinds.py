"""The kinds of piece that `gradegen new` can begin, and what each needs of a size table."""

from __future__ import annotations

from dataclasses import dataclass

_BODY = ("cross back", "arm length to underarm", "upper arm", "armhole depth")


@dataclass(frozen=True, slots=True)
class StarterKind:
    """`usual`: the table taken when none is named; `needs`: columns it works from; `for_babies`: their sizes too."""

    usual: str
    needs: tuple[str, ...] = ()
    for_babies: bool = True


KINDS: dict[str, StarterKind] = {
    "half-twist": StarterKind("women"),
    "hat": StarterKind("head", ("head",)),
    "drop-shoulder": StarterKind("women", _BODY),
    "set-in-cardigan": StarterKind("women", _BODY),
    "raglan": StarterKind(
        "women", _BODY, for_babies=False
    ),  # its yoke has more kinds of rounds than a baby's has rounds
    "round-yoke": StarterKind("child", _BODY),
    "crescent-shawl": StarterKind("women", ("cross back",)),
    "triangle-shawl": StarterKind("women", ("cross back",)),
    "mitts": StarterKind("hand", ("hand",)),
    "socks": StarterKind("foot", ("foot", "foot length")),
    "motif-blanket": StarterKind("blanket", ("width", "length")),
}
