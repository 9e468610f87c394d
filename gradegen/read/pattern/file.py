"""A pattern file to a Pattern: what was written, every value with its place."""

from __future__ import annotations

from pathlib import Path

from gradegen.design.look import Look
from gradegen.design.pattern import Pattern, SizeChoice
from gradegen.design.pictures import Picture
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Place, Severity, Written
from gradegen.read.files import open_text
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.pattern import keys
from gradegen.read.pattern.counts import read_counts, read_measures
from gradegen.read.pattern.look import read_look
from gradegen.read.pattern.look_keys import LOOK
from gradegen.read.pattern.parts import choose_sizes, read_designer, read_gauges
from gradegen.read.pattern.pictures import read_pictures
from gradegen.read.pattern.seam_keys import SEAMS
from gradegen.read.pattern.seams import read_seams
from gradegen.read.pattern.shaping import read_shaping
from gradegen.read.pattern.shaping_keys import SHAPING
from gradegen.read.pattern.words import UNKNOWN_MEASURE, WordReader, Words
from gradegen.read.pattern.yarns import read_timed, read_yarns
from gradegen.read.size_tables.table import read_table_and_source
from gradegen.read.yaml.fields import Given, read_fields
from gradegen.read.yaml.places import read_yaml

Findings = tuple[Finding, ...]


def read_pattern(path: Path | str) -> tuple[Pattern | None, Findings]:
    """The pattern as written; None when its file, a key or its size table could not be read."""
    both, findings = read_pattern_and_table(path)
    return (both[0] if both else None), findings


def read_pattern_and_table(path: Path | str) -> tuple[tuple[Pattern, SizeTable] | None, Findings]:
    """The pattern and the size table it names, each read once.

    A fault in a key gives None, since all that follows from it would be wrong too; a fault in the wording of a row
    does not. All faults of the file are found in one go.
    """
    source, findings = open_text(Path(path))
    if source is None:
        return None, findings
    node, findings = read_yaml(source)
    if node is None:
        return None, findings
    given, more = read_fields(node, keys.PATTERN_FIELDS, "a pattern")
    if given is None:
        return None, findings + more
    return _read_given(given, source, Path(path), findings + more)


def _read_given(
    given: Given, source: Written, path: Path, findings: Findings
) -> tuple[tuple[Pattern, SizeTable] | None, Findings]:
    table, table_source, sizes, names, more = _sizes(given, path)
    findings += more
    gauges, more = read_gauges(given.value(keys.GAUGE) or ())
    findings += more
    measures, more = read_measures(given)
    findings += more
    counts, more = read_counts(given, gauges)
    findings += more
    yarns, more = read_yarns(given.value(keys.YARN) or (), names, given.value(keys.TERMS) or "US")
    findings += more
    timed, more = read_timed(given.value(keys.TIMED), names, given.value(keys.TERMS) or "US")
    findings += more
    shaping, more = read_shaping(given.value(SHAPING) or (), frozenset([*measures, *counts]))
    findings += more
    seams, more = read_seams(given.value(SEAMS) or ())
    findings += more
    words = _words(given, names)
    if words is not None:  # where no measure was read, a fault in them has been told
        known = measures or not _has_error(findings)
        findings += tuple(fault for fault in words.faults if known or fault.rule != UNKNOWN_MEASURE.id)
    title, terms = given.value(keys.TITLE), given.value(keys.TERMS)
    if words is None or table is None or sizes is None or title is None or terms is None or _has_error(findings):
        return None, findings + (words.findings if words else ())
    pictures, look, look_source, more = _shown(given, words, path.parent)
    pattern = Pattern(
        file=source.file,
        title=title,
        version=given.value(keys.VERSION),
        about=words.about,
        designer=read_designer(given.value(keys.DESIGNER)),
        terms=terms,
        level=given.value(keys.LEVEL),
        wearer=given.value(keys.WEARER),
        sizes=sizes,
        units=given.value(keys.UNITS) or "inches first",
        rounding=given.value(keys.ROUNDING),
        yarns=yarns,
        notions=words.notions,
        gauges=gauges,
        measures=measures,
        counts=counts,
        relations=given.value(keys.RELATIONS) or (),
        shaping=shaping,
        seams=seams,
        definitions=words.definitions,
        notes=words.notes,
        pieces=words.pieces,
        finishing=words.finishing,
        cautions=words.cautions,
        licence=words.licence,
        sources={part.file: part for part in (source, table_source, look_source) if part},
        timed=timed,
        pictures=pictures,
        look=look,
        place=Place(source.file, 1, 1, 1, 1),
    )
    return (pattern, table), findings + words.findings + more


def _shown(
    given: Given, words: Words, folder: Path
) -> tuple[tuple[Picture, ...], Look | None, Written | None, Findings]:
    """Pictures and look, with the text of its own file; what is wrong with them leaves the rows to be checked."""
    pictures, findings = read_pictures(words.pictures, words.pieces, folder)
    look, source, more = read_look(given.value(LOOK), folder)
    return pictures, look, source, findings + more


def _has_error(findings: Findings) -> bool:
    return any(finding.severity in (Severity.ERROR, Severity.INTERNAL) for finding in findings)


def _sizes(
    given: Given, path: Path
) -> tuple[SizeTable | None, Written | None, SizeChoice | None, tuple[str, ...], Findings]:
    """The table and its text, the choice of sizes, and their names; () when the sizes can't be known."""
    chosen = given.value(keys.SIZES)
    wanted = chosen.value(keys.TABLE) if chosen else None
    if chosen is None:
        return None, None, None, (), ()
    table, source, findings = read_table_and_source(wanted, path.parent) if wanted else (None, None, ())
    choice, names, more = choose_sizes(chosen, table)
    return table, source, choice, names, findings + more


def _words(given: Given, sizes: tuple[str, ...]) -> Words | None:
    """All words of the pattern; None when the sizes or the terms they are read by are not known."""
    terms = given.value(keys.TERMS)
    if terms is None or not sizes:
        return None
    counts = [key.text for key, _ in given.value(keys.COUNTS) or ()]
    names = RowNames(
        terms,
        sizes,
        counts=frozenset([*counts, *(f"{count} chain" for count in counts)]),
        measures=frozenset(key.text for key, _ in given.value(keys.MEASURES) or ()),
        schedules=frozenset(key.text for key, _ in given.value(SHAPING) or ()),
    )
    return WordReader(names).read(given)
