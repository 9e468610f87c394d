"""The typefaces that pages can be set in: those that come with the product, all under the SIL Open Font License."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Typeface:
    """One family: the name pages call it by, and the kind that a browser falls back to.

    `light`: it has a light weight, which large titles are set in.
    """

    family: str
    fallback: str
    light: bool = True


TYPEFACES: Mapping[str, Typeface] = MappingProxyType(
    {
        "Inter": Typeface("Body", "'Helvetica Neue', Arial, 'Segoe UI Symbol', sans-serif"),
        "Source Serif 4": Typeface("Serif", "Georgia, 'Times New Roman', serif"),
        "Atkinson Hyperlegible": Typeface("Large", "Verdana, Arial, sans-serif", light=False),
    }
)
