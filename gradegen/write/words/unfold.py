"""A printed size list taken apart again."""

from __future__ import annotations

import re

ONE = r"(?:\d+(?:st|nd|rd|th)|[\d.]+[½¼¾⅓⅔⅛⅜⅝⅞]?|[½¼¾⅓⅔⅛⅜⅝⅞]|-)"
LIST = rf"-?{ONE}(?:\({ONE}(?:,{ONE})*\))*"  # without blanks, as plain_again leaves it


def unfold(text: str, sizes: int) -> tuple[str, ...] | None:
    """One value per size from `84(90,96)` or `84`; None when there are neither one nor as many values as sizes."""
    values = tuple(re.split(r"[(),]+", text.strip("()")))
    if len(values) == 1:
        return values * sizes
    return values if len(values) == sizes else None
