"""Where the product's own data lies: beside the package in a checkout, inside it in an installed wheel."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

Folder = Literal["sizes", "templates", "shared"]

_PACKAGE = Path(__file__).resolve().parent.parent


def data_folder(name: Folder) -> Path:
    """The folder of ready size tables, of page templates, or of what every pattern shares (stitches, yarn)."""
    packed = _PACKAGE / "_data" / name
    return packed if packed.is_dir() else _PACKAGE.parent / name
