"""Ease by its published names: how much larger than the body a finished bust or chest is."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from gradegen.trade.sources import Source, source_of
from gradegen.trade.tables import exact, read_table


@dataclass(frozen=True, slots=True)
class Fit:
    """One published name and the ease it stands for, in inches, ends included; None: no end."""

    name: str
    least: Fraction
    most: Fraction | None


@dataclass(frozen=True, slots=True)
class FitNames:
    """The published names from closest to widest, the body columns they are for, where from and how sure."""

    fits: tuple[Fit, ...]
    columns: tuple[str, ...]
    source: Source
    trust: str


@cache
def fit_names() -> FitNames:
    """The names of shared/ease.yaml."""
    table = read_table("ease")
    fits = tuple(
        Fit(str(row["name"]), exact(row["in"][0]), None if row["in"][1] is None else exact(row["in"][1]))
        for row in table["fits"]
    )
    return FitNames(fits, tuple(table["for_columns"]), source_of(table["source"]), str(table["trust"]))


def fit_name(ease: Fraction) -> str:
    """The published name for an ease in inches; honest where names touch and where there is none.

    A gap gives "between close fitting and classic fit", a shared end "classic fit or loose fit".
    """
    fits = fit_names().fits
    named = [fit.name for fit in fits if fit.least <= ease and (fit.most is None or ease <= fit.most)]
    if named:
        return " or ".join(named)
    below = [fit.name for fit in fits if fit.most is not None and fit.most < ease]
    above = [fit.name for fit in fits if ease < fit.least]
    return f"between {below[-1]} and {above[0]}" if below else f"closer than {above[0]}"
