"""How repeats went, kept for the working of a finding and for charts."""

from __future__ import annotations

from dataclasses import dataclass

from gradegen.findings import Place


@dataclass(slots=True)
class RepeatFact:
    """How one repeat went: stitches and spaces that all its runs took, stitches they made, and how many runs."""

    place: Place
    took: int
    took_spaces: int
    made: int
    times: int

    @property
    def takes(self) -> int:
        """Stitches that one run took."""
        return self.took // self.times

    @property
    def spaces(self) -> int:
        """Spaces that one run took."""
        return self.took_spaces // self.times

    @property
    def makes(self) -> int:
        """Stitches that one run made."""
        return self.made // self.times
