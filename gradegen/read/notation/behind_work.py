"""Work that goes on behind what is made already: `sc in back of work between next 2 petals`.

The words say on which side of the flower the hook goes; where the stitch goes is said by the place behind them.
"""

from __future__ import annotations

from gradegen.read.notation.reading import Reading
from gradegen.read.notation.word_lists import phrases

_BEHIND = phrases(
    "in back of work|in the back of work|in back of the work|at back of work|at the back of work|"
    "at the back of the work|on back of work|behind the work|behind work|in front of work|in front of the work"
)
_PLACES = frozenset({"between", "in", "into", "over", "around", "through"})


def pass_behind(r: Reading) -> None:
    """Passes the words where a place stands behind them."""
    mark = r.at
    if r.phrase(_BEHIND) and r.low() not in _PLACES:
        r.at = mark
