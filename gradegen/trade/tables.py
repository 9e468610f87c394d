"""Reads the trade's own data files, each once."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from typing import Any

import yaml

from gradegen.trade.folders import data_folder

_Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@cache
def read_table(name: str) -> Mapping[str, Any]:
    """What stands in shared/NAME.yaml; our own files, so a broken one is our fault and may raise."""
    text = (data_folder("shared") / f"{name}.yaml").read_text(encoding="utf-8")
    table = yaml.load(text, Loader=_Loader)  # a safe loader, in C where there is one
    if not isinstance(table, dict):
        raise TypeError(f"shared/{name}.yaml must hold a mapping")
    return table


def exact(number: int | float | str) -> Fraction:
    """A number of a data file exactly as it is written there: 2.25 is 9/4."""
    return Fraction(str(number))
