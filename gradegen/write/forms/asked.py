"""What a form asks of one size, out of the checked pattern."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from gradegen.design.checked import Checked
from gradegen.design.pattern import Gauge
from gradegen.design.testing import Asked, AskedGauge, AskedRow
from gradegen.numbers.units import inches_of
from gradegen.write.view.measures import graded_by
from gradegen.write.view.rows import row_sizes, row_view
from gradegen.write.words.phrases import Phrase, Printing

_BESIDE_ROWS = ("Materials", "Notes", "Measures", "Finishing", "Drawing or chart")
OUTSIDE = -1  # the piece of what is no row


def asked_of(checked: Checked, printing: Printing) -> Asked:
    """The questions of the first printed size."""
    pattern, size = checked.pattern, printing.sizes[0]
    return Asked(
        pattern.title.text,
        pattern.version.text if pattern.version else "",
        size.name,
        graded_by(checked),
        tuple(_gauges(pattern.gauges.values())),
        {yarn.letter: yarn.colour.text if yarn.colour else "" for yarn in pattern.yarns},
        {name: size.measures[name].printed for name in pattern.measures if name in size.measures},
        tuple(piece.name.text for piece in pattern.pieces),
        (*_rows(checked, printing), *_pages()),
    )


def _gauges(gauges: Iterable[Gauge]) -> Iterator[AskedGauge]:
    for gauge in gauges:
        over = inches_of(gauge.over)
        if over:
            yield AskedGauge(
                gauge.name,
                gauge.stitches if gauge.repeats is None else gauge.repeats,
                gauge.rows,
                over,
                inches_of(gauge.hook) if gauge.hook else None,
                None if gauge.repeats is None else gauge.repeat_of,
                gauge.state != "unblocked",
                (gauge.before_stitches, gauge.before_rows),
            )


def _pages() -> Iterator[AskedRow]:
    """What else can be wrong."""
    for at, words in enumerate(_BESIDE_ROWS):
        yield AskedRow("Pages", words, (OUTSIDE, at))


def _rows(checked: Checked, printing: Printing) -> Iterator[AskedRow]:
    """Every row of the size that has a name, as its page prints it."""
    for one, piece in enumerate(checked.pattern.pieces):
        for two, row in enumerate(piece.rows):
            label = _words(row_view(row, {}, printing).label) if row_sizes(row, printing.sizes) else ""
            if label:
                yield AskedRow(piece.name.text, label, (one, two))


def _words(label: Phrase) -> str:
    return "".join(part.text for part in label).replace("\N{NO-BREAK SPACE}", " ").strip(" :")
