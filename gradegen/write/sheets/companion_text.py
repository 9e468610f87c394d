"""The texts beside a filmed tutorial: its description, kept short, and the practice version as an ordinary pattern."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gradegen.design.checked import Checked
from gradegen.read.time_stamps import Stamp
from gradegen.reckon import yarn_per_size
from gradegen.reckon.any_size import AnySize, AnySizeSheet
from gradegen.reckon.practice import Practice
from gradegen.write.sheets.any_size_view import cells_of, example_lines, formula_parts, heads_of
from gradegen.write.sheets.companion_cues import numbered_rows, plain_label, printing_of, words_of
from gradegen.write.sheets.yarn_view import aligned, substitution_line, up
from gradegen.write.view.materials import gauge_entries, hook_sizes
from gradegen.write.view.rows import row_view, rows_for
from gradegen.write.view.words import terms_sentences, used_abbreviations
from gradegen.write.words.phrases import Printing, phrase
from gradegen.write.words.print_numbers import length_style

HOW = {
    "flat": "Worked flat, in rows.",
    "joined rounds": "Worked in joined rounds.",
    "spiral": "Worked in a spiral, without joining.",
    "half-twist band": "Worked in joined rounds on a band with a half twist.",
}
LONGEST = 4_999  # characters a description may have
MOST_LINES = 14  # of the short any-size table


def description_text(checked: Checked, sheet: AnySizeSheet | None, stamps: Sequence[Stamp] = ()) -> str:
    """Materials, multiple, a short any-size table, terms and chapters; always under 5,000 characters.

    Lines of the table go first where it would be longer, then the list of abbreviations.
    """
    for most in (MOST_LINES, 9, 6, 4, 0):
        for with_words in (True, False):
            text = "\n\n".join(part for part in _parts(checked, sheet, stamps, most, with_words) if part)
            if len(text) <= LONGEST:
                return text
    return text[:LONGEST].rsplit("\n", 1)[0]


def _parts(
    checked: Checked, sheet: AnySizeSheet | None, stamps: Sequence[Stamp], most: int, with_words: bool
) -> Iterator[str]:
    pattern = checked.pattern
    by = f" by {pattern.designer.name.text}" if pattern.designer else ""
    yield f"{pattern.title.text}{by}"
    printing = Printing(checked.sizes, checked.sizes, length_style(pattern))
    if pattern.about is not None:
        yield words_of(phrase(pattern.about, printing))
    yield "\n".join(["MATERIALS", *_materials(checked)])
    gauges = [
        f"{entry.name}: {' '.join(words_of(line) for line in entry.lines)}"
        for entry in gauge_entries(checked, printing)
    ]
    yield "\n".join(["GAUGE", *gauges]) if gauges else ""
    if sheet is not None:
        yield "\n".join(_any_size(checked, sheet, most))
    yield "\n".join(_terms(checked, with_words))
    yield "\n".join(["CHAPTERS", *(f"{stamp.text} {stamp.words}" for stamp in stamps)]) if stamps else ""
    yield "\n".join(_closing(checked))


def _materials(checked: Checked) -> Iterator[str]:
    needs, _ = yarn_per_size(checked)
    by_letter = {need.letter: need for need in needs}
    for yarn in checked.pattern.yarns:
        need = by_letter.get(yarn.letter)
        told = [text.text for text in (yarn.weight, yarn.fibre, yarn.colour) if text is not None]
        yield f"Yarn {yarn.letter}: {', '.join(told)}"
        if need is not None and any(size.wanted.inches is not None for size in need.sizes):
            sizes = "; ".join(
                f"{size.size} {up(size.wanted.yards)} yd ({up(size.wanted.metres)} m)"
                + (f", {size.skeins} skein{'s' if size.skeins != 1 else ''}" if size.skeins else "")
                for size in need.sizes
            )
            yield f"{sizes}."
        yield substitution_line(checked, yarn, None)
    hooks = hook_sizes(checked.pattern.gauges.values())
    if hooks:
        yield f"Hook: {' and '.join(hooks)}, or the size that gives you the gauge"
    for notion in checked.pattern.notions:
        yield notion.what.text[:1].upper() + notion.what.text[1:]


def _any_size(checked: Checked, sheet: AnySizeSheet, most: int) -> Iterator[str]:
    parts = formula_parts(sheet)
    yield "ANY SIZE"
    if parts is not None:
        step, plus, extra = parts
        made = "Chain" if sheet.sizes[0].chains is not None else "Work"
        also = f", plus {extra} for the base" if extra else ""
        yield f"{made} a multiple of {step}{f' plus {plus}' if plus else ''}{also}."
    style = length_style(checked.pattern)
    if most:
        lines = [cells_of(one, sheet, style) for one in few_of(sheet.sizes, most)]
        yield aligned(heads_of(sheet, checked, style), lines)
    if parts is not None:
        yield from example_lines(sheet, style)


def few_of(sizes: Sequence[AnySize], most: int) -> list[AnySize]:
    """The named sizes where they are few enough, else some of all, evenly spaced, the first and last among them."""
    named = [one for one in sizes if one.named]
    if 0 < len(named) <= most:
        return named
    if len(sizes) <= most:
        return list(sizes)
    places = {at * (len(sizes) - 1) // (most - 1) for at in range(most)}
    return [sizes[at] for at in sorted(places)]


def _terms(checked: Checked, with_words: bool) -> Iterator[str]:
    pattern = checked.pattern
    texts = [row.text for piece in pattern.pieces for row in piece.rows]
    texts += [own.text for own in pattern.definitions]
    forms = used_abbreviations(texts, pattern)
    yield "TERMS"
    for sentence in terms_sentences(pattern, forms):
        yield words_of(sentence)
    if with_words:
        yield ", ".join(f"{form.short} {form.means}" for form in forms)
    for own in pattern.definitions:
        yield f"{own.name}: {own.text}"


def _closing(checked: Checked) -> Iterator[str]:
    pattern = checked.pattern
    if pattern.designer and pattern.designer.help:
        yield f"Help: {pattern.designer.help.text}"
    if pattern.licence is not None:
        yield pattern.licence.text
    if pattern.designer and pattern.designer.year:
        yield f"© {pattern.designer.year} {pattern.designer.name.text}"


def practice_text(practice: Practice, checked: Checked) -> str:
    """The practice version as an ordinary text pattern, its numbers put in; it can be checked like any other."""
    pattern, printing = practice.pattern, printing_of(practice, checked)
    shapes = dict.fromkeys(HOW[piece.shape] for piece in pattern.pieces)
    parts = [f"{pattern.title.text}, practice version", f"{pattern.terms} terms. {' '.join(shapes)}"]
    if pattern.definitions:
        own = [f"{one.name[:1].upper()}{one.name[1:]}: {one.text}" for one in pattern.definitions]
        parts.append("\n".join(["Special stitches", *own]))
    notes = [words_of(phrase(note, printing)) for note in pattern.notes]
    if notes:
        parts.append("\n".join(["Notes", *notes]))
    for piece in pattern.pieces:
        worked = {row.row.place: row for row in practice.rows}
        lines = [piece.name.text, *(words_of(phrase(note, printing)) for note in piece.notes)]
        shown = {id(row) for row, _, _ in numbered_rows(practice, checked, piece)}
        for row in rows_for(piece, printing.sizes):
            if id(row) not in shown:
                continue
            view = row_view(row, {practice.size.name: worked[row.place]}, printing)
            count = words_of(view.count)
            lines.append(f"{plain_label(words_of(view.label))}: {words_of(view.text)}{f' {count}' if count else ''}")
        parts.append("\n".join(lines))
    return "\n\n".join(parts)
