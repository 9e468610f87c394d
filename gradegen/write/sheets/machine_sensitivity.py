"""How finely a pattern depends on gauge and repeats, for other programs."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from gradegen.grade.ask.sensitivity import Sensitivity

if TYPE_CHECKING:
    from gradegen.grade.ask.nearer import Drifted, Way

VERSION, PLACES = 1, 4


def sensitivity_json(found: Sensitivity) -> str:
    """The answer of `grade --sensitivity --json`; lengths in decimal inches."""
    return json.dumps(
        {
            "version": VERSION,
            "half_a_stitch": {
                felt.count: {
                    "gauge": felt.gauge,
                    "unit": felt.unit,
                    "over": felt.over,
                    "sizes": {
                        size.size: {
                            "finished_in": _decimal(size.finished),
                            "looser_in": _decimal(size.looser),
                            "tighter_in": _decimal(size.tighter),
                            "step_in": None if size.step is None else _decimal(size.step),
                            "is_a_size": size.is_a_size,
                        }
                        for size in felt.sizes
                    },
                }
                for felt in found.felt
            },
            "limits": {
                one.count: {
                    "largest_drift_in": _decimal(one.largest),
                    "size": one.size,
                    "half_repeat_in": _decimal(one.half_repeat),
                    "half_one_in": _decimal(one.half_one),
                    "kept_off_by": one.by or None,
                }
                for one in found.limited
            },
            "nearer": _nearer(found),
        },
        indent=1,
    )


def _nearer(found: Sensitivity) -> dict[str, Any] | None:
    nearer = found.nearer
    if nearer is None:
        return None
    return {
        "now": _drifted(nearer.now),
        "tried": nearer.tried,
        "reach": nearer.reach,
        "halving": [_way(way) for way in nearer.halving],
        "best": nearer.best and _way(nearer.best),
    }


def _way(way: Way) -> dict[str, Any]:
    return {"change": way.change, "largest": _drifted(way.largest)}


def _drifted(drifted: Drifted) -> dict[str, Any]:
    return {"drift_in": _decimal(drifted.off), "count": drifted.count, "size": drifted.size}


def _decimal(number: Fraction) -> int | float:
    rounded = round(number, PLACES)
    return rounded.numerator if rounded.denominator == 1 else rounded.numerator / rounded.denominator
