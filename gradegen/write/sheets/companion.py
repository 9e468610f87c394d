"""What goes with a filmed tutorial: a cue sheet, a description text, and a small version for practice."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.read.time_stamps import Stamp
from gradegen.reckon.any_size import AnySizeSheet
from gradegen.reckon.practice import Practice
from gradegen.write.editions.edition import Paper
from gradegen.write.page.html import laid_out
from gradegen.write.sheets.companion_cues import cues
from gradegen.write.sheets.companion_text import description_text, practice_text
from gradegen.write.sheets.file import put_file, write_sheet
from gradegen.write.words.phrases import plain

Findings = tuple[Finding, ...]


def cue_sheet_html(practice: Practice, checked: Checked, stamps: Sequence[Stamp] = (), paper: Paper = "a4") -> str:
    """The cue sheet as one HTML page."""
    chain = f"{practice.chains} chains, " if practice.chains else f"{practice.count} stitches, " * bool(practice.count)
    what = (
        "the practice version" if practice.shows_all else f"the practice version, made like size {practice.size.name}"
    )
    about = f"Counts are for {what}: {chain}{practice.stitches} stitches in all. Every row of it was worked and proved."
    title = checked.pattern.title.text
    return laid_out(
        "companion.html",
        title=f"{title}: cue sheet",
        about=plain(about),
        cues=cues(practice, checked, stamps),
        paper=paper,
        foot=title,
    )


def write_companion(
    checked: Checked,
    practice: Practice,
    sheet: AnySizeSheet | None,
    folder: Path,
    stamps: Sequence[Stamp] = (),
    paper: Paper = "a4",
) -> tuple[tuple[Path, ...], Findings]:
    """The cue sheet, the description and the practice version in a folder, named after the pattern's file."""
    stem = Path(checked.pattern.file).stem
    paths, findings = write_sheet(
        cue_sheet_html(practice, checked, stamps, paper), folder / f"{stem}-cue-sheet.pdf", checked
    )
    texts = {"description": description_text(checked, sheet, stamps), "practice": practice_text(practice, checked)}
    for name, text in texts.items():
        written, found = put_file(f"{text}\n".encode(), folder / f"{stem}-{name}.txt", checked)
        paths, findings = paths + written, findings + found
    return paths, findings
