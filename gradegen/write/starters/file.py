"""`gradegen new`: a commented pattern file to start from, for a kind of piece and a body size table."""

from __future__ import annotations

import json
import re
from datetime import date
from pathlib import Path

from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.trade.folders import data_folder
from gradegen.write.starters.kinds import KINDS

TITLE_EMPTY = Rule(
    "title-empty", Severity.ERROR, "file format", "A new pattern needs a name with a letter or digit in it."
)
FILE_EXISTS = Rule("file-exists", Severity.ERROR, "file format", "A file of this name is already there.")
COLUMN_NEEDED = Rule(
    "column-needed", Severity.ERROR, "file format", "The size table lacks a column this kind of piece needs."
)
NOT_FOR_BABIES = Rule(
    "not-for-babies", Severity.ERROR, "house", "This kind of piece does not come out in babies' sizes."
)
NOT_WRITABLE = Rule("not-writable", Severity.ERROR, "file format", "The file can't be written.")


def write_starter(
    title: str, kind: str, table: SizeTable, named: str, folder: Path
) -> tuple[Path | None, tuple[Finding, ...]]:
    """Writes the pattern beside what is there already, never over it; gives its path."""
    shown = "".join(sign for sign in " ".join(title.split()) if sign.isprintable()).encode("utf-8", "ignore").decode()
    path = folder / f"{file_name(shown)}.yaml"
    place = Place(str(path), 1, 1, 1, 1)
    if not re.search(r"\w", shown):
        return None, (TITLE_EMPTY.at(place, "The name of a pattern needs at least one letter or digit."),)
    refused = _refused(kind, table)
    if refused is not None:
        return None, (refused,)
    text = starter_text(shown, kind, table, named)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as stream:
            stream.write(text)
    except FileExistsError:
        return None, (
            FILE_EXISTS.at(
                place,
                "There is a file of this name already; it was left as it is.",
                hint="Take another name, or another folder with --out.",
            ),
        )
    except OSError as problem:
        return None, (NOT_WRITABLE.at(place, f"The file can't be written: {problem.strerror or problem}."),)
    return path, ()


def _refused(kind: str, table: SizeTable) -> Finding | None:
    """Why this kind can't be begun with this table."""
    about = KINDS[kind]
    missing = [column for column in about.needs if column not in table.columns]
    if missing:
        message = (
            f"The kind {kind} works from {' and '.join(missing)}, which the size table {table.name} does not give."
        )
        return COLUMN_NEEDED.at(table.place, message, hint=f"Take --size-table {about.usual}.")
    if not about.for_babies and "baby" in (table.wearer, *table.wearer_by_size):
        message = f"The kind {kind} has more shaping than a baby's size has rounds for."
        return NOT_FOR_BABIES.at(table.place, message, hint="Take --kind round-yoke, or another size table.")
    return None


def starter_text(title: str, kind: str, table: SizeTable, named: str) -> str:
    """The file's text, for a table with all columns that the kind needs."""
    around, depth = _girth(table)
    text = (data_folder("templates") / "starters" / f"{kind}.yaml").read_text(encoding="utf-8")
    given = {
        "title": json.dumps(title, ensure_ascii=False),
        "table": named if re.fullmatch(r"[A-Za-z][\w-]*", named) else json.dumps(named, ensure_ascii=False),
        "by": table.by,
        "sizes": _sizes(kind, table),
        "around": around,
        "depth": depth,
        "year": str(date.today().year),
    }
    return re.sub("@([a-z]+)@", lambda found: given[found[1]], text)


def _sizes(kind: str, table: SizeTable) -> str:
    """All sizes, or those for which the table gives every column that the kind needs."""
    needed = [table.columns[column].cells for column in KINDS[kind].needs]
    whole = [size for at, size in enumerate(table.sizes) if all(cells[at] is not None for cells in needed)]
    return "all" if len(whole) == len(table.sizes) else f"[{', '.join(whole)}]"


def file_name(title: str) -> str:
    """The title as a file name: small letters, digits and dashes."""
    return re.sub(r"[^\w]+", "-", title.lower()).strip("-_")[:60] or "pattern"


def _girth(table: SizeTable) -> tuple[str, str]:
    """What a band goes round and how deep it is: shoulders where the table has them, else chest, else head."""
    if "shoulder girth" in table.columns:
        return "shoulder girth + 3 in", "13 in"
    if table.by == "head":
        return "head + 3 in", "9 in"
    return f"1.15 * {table.by} + 2 in", "10 in"
