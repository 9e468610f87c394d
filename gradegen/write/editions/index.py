"""A page that lists every edition written of a pattern, with what it is and how large its file is."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.write.editions.edition import Edition
from gradegen.write.page.html import laid_out

_STYLES = {"print": "", "low-ink": "low ink", "large-print": "large print", "spoken": "for a voice"}
_PAPERS = {"a4": "A4", "letter": "Letter"}


@dataclass(frozen=True, slots=True)
class Listed:
    """One file of the set: its name, what it is, and its size in words."""

    file: str
    what: str
    weighs: str


def write_index(checked: Checked, written: Iterable[tuple[Edition, Sequence[Path]]]) -> tuple[Path, ...]:
    """The index beside the editions, as HTML; () where nothing was written."""
    files = [(edition, path) for edition, paths in written for path in paths]
    if not files:
        return ()
    listed = [Listed(path.name, edition_words(edition, path, checked), _weighs(path)) for edition, path in files]
    path = files[0][1].parent / f"{Path(checked.pattern.file).stem}-editions.html"
    page = laid_out("editions.html", title=checked.pattern.title.text, editions=listed)
    path.write_bytes(page.encode())
    return (path,)


def edition_words(edition: Edition, path: Path, checked: Checked) -> str:
    """`All sizes, UK terms, centimetres first, large print, PDF on A4`."""
    pattern = checked.pattern
    inches = pattern.units == "inches first" if edition.units is None else edition.units == "in"
    sizes = [edition.size] if edition.size else list(edition.chosen)
    said = [
        f"Size{'s' if len(sizes) > 1 else ''} {', '.join(sizes)}" if sizes else "All sizes",
        "tester’s form to fill in" if edition.is_form else "",
        f"{edition.terms or pattern.terms} terms",
        "inches first" if inches else "centimetres first",
        _STYLES[edition.style],
        {".txt": "plain text", ".html": "web page"}.get(path.suffix, f"PDF on {_PAPERS[edition.paper]}"),
        "draft" if edition.draft else "",
    ]
    return ", ".join(part for part in said if part)


def _weighs(path: Path) -> str:
    return f"{-(-path.stat().st_size // 1000)} KB"
