"""Parts of a pattern that hold no prose: designer, sizes, yarns, gauges."""

from __future__ import annotations

from gradegen.design.pattern import Designer, Gauge, SizeChoice, Text
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.pattern import keys
from gradegen.read.size_tables.derived_columns import unknown_column
from gradegen.read.size_tables.table import UNKNOWN_SIZE, size_repeated
from gradegen.read.yaml.fields import Given, Named, nearest
from gradegen.read.yaml.nodes import Scalar

GAUGE_INCOMPLETE = Rule("gauge-incomplete", Severity.ERROR, "trade standard", "A gauge lacks a part it needs.")
GAUGE_GIVEN_TWICE = Rule(
    "gauge-given-twice", Severity.ERROR, "file format", "A gauge gives stitches and repeats for one length."
)

Findings = tuple[Finding, ...]


def read_designer(given: Given | None) -> Designer | None:
    """Who made the design; None when it was not said."""
    name = given.value(keys.DESIGNER_NAME) if given else None
    if given is None or name is None:
        return None
    return Designer(
        name, given.value(keys.DESIGNER_HELP), given.value(keys.DESIGNER_YEAR), given.value(keys.DESIGNER_ERRATA)
    )


def choose_sizes(given: Given, table: SizeTable | None) -> tuple[SizeChoice | None, tuple[str, ...], Findings]:
    """The choice, the names of the sizes it comes to in the table's order, and what the table does not have."""
    name, wanted, by = given.value(keys.TABLE), given.value(keys.FOR), given.value(keys.BY)
    chosen = wanted.sizes if wanted else None
    known = table.sizes if table else ()
    findings = [unknown_size(size, known) for size in chosen or () if table is not None and size.text not in known]
    seen: dict[str, Text] = {}
    findings += [
        size_repeated(size, seen[size.text]) for size in chosen or () if seen.setdefault(size.text, size) is not size
    ]
    if table is not None and by is not None and by.text not in table.columns:
        findings.append(unknown_column(by.text, by.place, tuple(table.columns)))
    order = {size: at for at, size in enumerate(known)}
    names = known if chosen is None else tuple(sorted(seen, key=lambda size: order.get(size, len(order))))
    if name is None:
        return None, names, tuple(findings)
    return SizeChoice(name, chosen, by, given.value(keys.TAKE) or "middle", given.place), names, tuple(findings)


def unknown_size(size: Text, known: tuple[str, ...]) -> Finding:
    """The finding for a size name that is not among those known."""
    guess = nearest(size.text, known)
    hint = f"Did you mean {guess}?" if guess else f"The sizes are {', '.join(known)}."
    return UNKNOWN_SIZE.at(size.place, f"There is no size {size.text}.", hint=hint)


def read_gauges(named: Named[Given]) -> tuple[dict[str, Gauge], Findings]:
    """The gauges by name; one that lacks a part is a finding."""
    gauges: dict[str, Gauge] = {}
    findings: list[Finding] = []
    for key, given in named:
        gauge = _gauge(key, given) if given else None
        if gauge is not None:
            findings += _gauge_faults(gauge)
            gauges[key.text] = gauge
    return gauges, tuple(findings)


def _gauge(key: Scalar, given: Given) -> Gauge | None:
    over, before, note = given.value(keys.OVER), given.value(keys.BEFORE), given.value(keys.GAUGE_NOTE)
    if over is None:
        return None
    places = dict(given.places)
    if before is not None:
        places |= {f"before {name}": place for name, place in before.places.items()}
    return Gauge(
        name=key.text,
        stitches=given.value(keys.STITCHES_OVER),
        repeats=given.value(keys.REPEATS),
        repeat_of=given.value(keys.REPEAT_OF),
        rows=given.value(keys.ROWS_OVER),
        over=over,
        hook=given.value(keys.HOOK),
        state=given.value(keys.STATE),
        before_stitches=before.value(keys.BEFORE_STITCHES) if before else None,
        before_rows=before.value(keys.BEFORE_ROWS) if before else None,
        note=Text(note.text, note.place()) if note else None,
        place=key.place,
        places=places,
    )


def _gauge_faults(gauge: Gauge) -> list[Finding]:
    if gauge.stitches is not None and gauge.repeats is not None:
        message = f"Gauge {gauge.name} gives both stitches and repeats."
        return [GAUGE_GIVEN_TWICE.at(gauge.places["repeats"], message, hint="Keep one of them.")]
    if gauge.repeats is not None and gauge.repeat_of is None and "repeat of" not in gauge.places:
        message = f"Gauge {gauge.name} does not say how many stitches make one repeat."
        return [
            GAUGE_INCOMPLETE.at(gauge.places["repeats"], message, hint="Add repeat of: and the number of stitches.")
        ]
    if not gauge.places.keys() & {"stitches", "repeats", "rows"}:
        message = f"Gauge {gauge.name} has neither stitches nor rows."
        return [GAUGE_INCOMPLETE.at(gauge.place, message, hint="Add stitches: and rows: over the length.")]
    return []
