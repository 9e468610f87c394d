"""Which file a size table's name means: a ready table, or the user's own beside the pattern."""

from __future__ import annotations

from pathlib import Path

from gradegen.design.pattern import Text
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.read.yaml.fields import nearest
from gradegen.trade.folders import data_folder

SIZE_TABLE_MISSING = Rule("size-table-missing", Severity.ERROR, "file format", "There is no size table of this name.")
TABLE_OUT_OF_REACH = Rule(
    "table-out-of-reach", Severity.ERROR, "file format", "A size table lies outside the pattern's own folder."
)

TableFile = tuple[Path, str]  # where it lies, and the name it is shown by


def ready_tables() -> tuple[str, ...]:
    """Names of the size tables that come with the product."""
    return tuple(sorted(path.stem for path in data_folder("sizes").glob("*.yaml")))


def find_table(wanted: Text | str, beside: Path) -> tuple[TableFile | None, tuple[Finding, ...]]:
    """The file of a table: a ready one by its name, else a path from the folder of the pattern.

    A pattern reaches only its own folder and what lies below, so that a file from somebody else opens nothing of
    yours; a plain str is what you typed yourself and may lead anywhere.
    """
    name = wanted if isinstance(wanted, str) else wanted.text
    place = Place(name or "-", 1, 1, 1, 1) if isinstance(wanted, str) else wanted.place
    if name in ready_tables():
        return (data_folder("sizes") / f"{name}.yaml", f"sizes/{name}.yaml"), ()
    folder = beside if beside.is_dir() else beside.parent
    try:
        path = folder / name
        if not isinstance(wanted, str) and not path.resolve().is_relative_to(folder.resolve()):
            message = "A pattern opens size tables only in its own folder or below it."
            return None, (TABLE_OUT_OF_REACH.at(place, message, hint="Copy the table beside the pattern."),)
        if path.is_file():
            return (path, str(path)), ()
    except (OSError, ValueError):
        pass
    return None, (_missing(name, place, folder),)


def _missing(name: str, place: Place, folder: Path) -> Finding:
    ready = ready_tables()
    guess = nearest(Path(name).stem if name.endswith((".yaml", ".yml")) else name, ready)
    known = f"Ready tables: {', '.join(ready)}; your own goes by its path from the pattern, such as my-sizes.yaml."
    what = "no file" if "." in name or "/" in name else "no ready table and no file"
    message = f"There is {what} called “{name[:60]}” here."
    return SIZE_TABLE_MISSING.at(place, message, hint=f"Did you mean {guess}? {known}" if guess else known)
