"""Many findings of one fault, one per size, become one for the eye; the data keeps them all."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from gradegen.findings import Finding, Place


@dataclass(frozen=True, slots=True)
class Folded:
    """One fault as shown: the findings of all the sizes it stands in, in the order of the sizes; never empty."""

    each: tuple[Finding, ...]

    @property
    def first(self) -> Finding:
        """The finding whose words are shown."""
        return self.each[0]

    @property
    def sizes(self) -> tuple[str, ...]:
        """Sizes it stands in; () when it concerns all of them."""
        return tuple(finding.size for finding in self.each if finding.size is not None)

    @property
    def places(self) -> tuple[Place, ...]:
        """Every place it points at, once each, in order."""
        return tuple(sorted({finding.place for finding in self.each}))

    @property
    def place(self) -> Place:
        """The first of its places."""
        return self.places[0]


def fold(findings: Iterable[Finding]) -> tuple[Folded, ...]:
    """Findings that say the same of the same row on the same line in several sizes, put together; order is kept."""
    groups: list[list[Finding]] = []
    open_groups: dict[object, list[list[Finding]]] = {}
    for finding in findings:
        key = (finding.rule, finding.severity, finding.place.file, finding.place.line, finding.row, finding.message)
        alike = open_groups.setdefault(key, [])
        group = next((group for group in alike if _has_room(group, finding)), None)
        if group is None:
            group = []
            alike.append(group)
            groups.append(group)
        group.append(finding)
    return tuple(Folded(tuple(group)) for group in groups)


def _has_room(group: Sequence[Finding], finding: Finding) -> bool:
    return finding.size is not None and all(other.size not in (None, finding.size) for other in group)


def sizes_in_words(folded: Folded, sizes: Sequence[str]) -> str:
    """Says "all sizes", "size M" or "sizes M L"; empty when the fault concerns the pattern as a whole."""
    named = folded.sizes
    if not named:
        return ""
    if set(named).isdisjoint(sizes):
        return names_of(named)
    if len(named) > 1 and set(named) >= set(sizes):
        return "all sizes"
    if all(name.startswith("size ") for name in named):  # `size 1`, `size 2`: the text names none
        return names_of(named)
    return ("size " if len(named) == 1 else "sizes ") + names_of(named)


def names_of(sizes: Sequence[str]) -> str:
    """`S M 2X`; with commas where a name has a blank in it: `tween, adult woman`."""
    return (", " if any(" " in name for name in sizes) else " ").join(sizes)


def grouped(folded: Folded, words: Callable[[Finding], str | None]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Each different text that `words` gives, with the sizes that share it, in order."""
    texts: dict[str, list[str]] = {}
    for finding in folded.each:
        text = words(finding)
        if text:
            texts.setdefault(text, []).append(finding.size or "")
    return tuple((text, tuple(size for size in sizes if size)) for text, sizes in texts.items())
