"""How repeats went, kept for the working of a finding and for charts."""

from __future__ import annotations

from dataclasses import dataclass

from gradegen.design.edge import Edge
from gradegen.findings import Place
from gradegen.work.edge.edges import stitches


@dataclass(slots=True)
class RepeatFact:
    """How one repeat went: stitches and spaces that all its runs took, the new edge before and after, how many runs."""

    place: Place
    took: int
    took_spaces: int
    before: Edge
    after: Edge
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
        return (stitches(self.after) - stitches(self.before)) // self.times
