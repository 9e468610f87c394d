"""Parts of a pattern that hold no prose: designer, sizes, yarns, gauges, measures, counts."""

from __future__ import annotations

from gradegen.design.formula import Name
from gradegen.design.pattern import CountRule, Designer, Gauge, Measure, SizeChoice, Text, Yarn
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.read import pattern_keys as keys
from gradegen.read.derived_columns import unknown_column
from gradegen.read.fields import Given, Named, nearest
from gradegen.read.formula import read_formula
from gradegen.read.nodes import Scalar
from gradegen.read.size_table import UNKNOWN_SIZE, size_repeated

GAUGE_INCOMPLETE = Rule("gauge-incomplete", Severity.ERROR, "trade standard", "A gauge lacks a part it needs.")
GAUGE_GIVEN_TWICE = Rule(
    "gauge-given-twice", Severity.ERROR, "file format", "A gauge gives stitches and repeats for one length."
)
UNKNOWN_GAUGE = Rule("unknown-gauge", Severity.ERROR, "file format", "A count names a gauge that is not given.")
COUNT_NEEDS_ONE_MEASURE = Rule(
    "count-needs-one-measure", Severity.ERROR, "file format", "A count has no measure, or more than one."
)
NAME_UNUSABLE = Rule("name-unusable", Severity.ERROR, "file format", "A name that no sum could use.")
LIMITS_CROSSED = Rule(
    "limits-crossed", Severity.ERROR, "arithmetic", "The smallest count allowed is above the largest."
)

Findings = tuple[Finding, ...]


def read_designer(given: Given | None) -> Designer | None:
    """Who made the design; None when it was not said."""
    name = given.value(keys.DESIGNER_NAME) if given else None
    if given is None or name is None:
        return None
    return Designer(name, given.value(keys.DESIGNER_HELP), given.value(keys.DESIGNER_YEAR))


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


def read_yarns(named: Named[Given], sizes: tuple[str, ...]) -> tuple[tuple[Yarn, ...], Findings]:
    """The yarns in the order written."""
    findings: list[Finding] = []
    yarns: list[Yarn] = []
    for key, given in named:
        if given is None:
            continue
        skein = given.value(keys.SKEIN_FIELD) or (None, None)
        sample = given.value(keys.SAMPLE)
        size = sample.value(keys.SAMPLE_SIZE) if sample else None
        if size is not None and sizes and size.text not in sizes:
            findings.append(unknown_size(size, sizes))
        weight, fibre, colour = (given.value(field) for field in (keys.YARN_WEIGHT, keys.FIBRE, keys.COLOUR))
        used = sample.value(keys.SAMPLE_USED) if sample else None
        yarns.append(Yarn(key.text, weight, fibre, colour, *skein, size, used, key.place))
    return tuple(yarns), tuple(findings)


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


def read_measures(given: Given) -> tuple[dict[str, Measure], Findings]:
    """The measures by name."""
    named = given.value(keys.MEASURES) or ()
    findings = tuple(finding for key, _ in named if (finding := _unusable(key)))
    return {key.text: Measure(key.text, formula, key.place) for key, formula in named if formula}, findings


def _unusable(key: Scalar) -> Finding | None:
    """A name that a sum could not mention, such as `2nd band`."""
    formula, _ = read_formula(key.trimmed)
    if isinstance(formula, Name) and formula.name == key.text:
        return None
    hint = "Use words of letters, such as brim or upper arm: no sign, no number at the start, no unit."
    return NAME_UNUSABLE.at(key.place, f"“{key.text[:40]}” can't be used as a name in sums.", hint=hint)


def read_counts(given: Given, gauges: dict[str, Gauge]) -> tuple[dict[str, CountRule], Findings]:
    """The counts by name; `gauges` are those that could be read."""
    counts: dict[str, CountRule] = {}
    findings: list[Finding] = []
    every_gauge = tuple(key.text for key, _ in given.value(keys.GAUGE) or ())
    for key, count in given.value(keys.COUNTS) or ():
        if unusable := _unusable(key):
            findings.append(unusable)
        if count is not None:
            counts[key.text] = _count(key, count)
            findings += _count_faults(counts[key.text], every_gauge, gauges)
    return counts, tuple(findings)


def _count(key: Scalar, given: Given) -> CountRule:
    multiple = given.value(keys.MULTIPLE)
    return CountRule(
        name=key.text,
        across=given.value(keys.ACROSS),
        along=given.value(keys.ALONG),
        formula=given.value(keys.SUM_OF),
        gauge=given.value(keys.COUNT_GAUGE),
        multiple=1 if multiple is None else multiple,
        plus=given.value(keys.PLUS) or 0,
        base_extra=given.value(keys.BASE_EXTRA) or 0,
        parity=given.value(keys.PARITY),
        least=given.value(keys.LEAST),
        most=given.value(keys.MOST),
        tie=given.value(keys.TIE) or "up",
        both_sides=given.value(keys.BOTH_SIDES) or False,
        pieces=given.value(keys.PIECES_SHARING) or 1,
        place=key.place,
        places=given.places,
    )


def _count_faults(count: CountRule, every_gauge: tuple[str, ...], gauges: dict[str, Gauge]) -> list[Finding]:
    ways = [way for way in ("across", "along", "sum") if way in count.places]
    if len(ways) != 1:
        message = f"{count.name} has {' and '.join(ways) if ways else 'no measure'}; a count is found in one way."
        hint = "Give one of across: (stitches), along: (rows) or sum: (of other counts)."
        return [COUNT_NEEDS_ONE_MEASURE.at(count.place, message, hint=hint)]
    if count.least is not None and count.most is not None and count.least > count.most:
        message = f"{count.name} must have at least {count.least} and at most {count.most}."
        return [LIMITS_CROSSED.at(count.places["least"], message, hint="Swap the two.")]
    return _count_gauge_faults(count, ways[0], every_gauge, gauges) if ways[0] != "sum" else []


def _count_gauge_faults(count: CountRule, way: str, every: tuple[str, ...], gauges: dict[str, Gauge]) -> list[Finding]:
    name = count.gauge.text if count.gauge else every[0] if len(every) == 1 else None
    if name is None:
        if not every or "gauge" in count.places:  # told elsewhere
            return []
        message = f"{count.name} does not say which gauge it is worked at."
        return [UNKNOWN_GAUGE.at(count.place, message, hint=f"Add gauge: and one of {', '.join(every)}.")]
    if not every:
        return []
    if name not in every:
        return [_unknown_gauge(name, count.gauge.place if count.gauge else count.place, every)]
    gauge = gauges.get(name)
    if gauge is None:
        return []
    given = ("rows",) if way == "along" else ("stitches", "repeats")
    if not gauge.places.keys() & set(given):
        message = f"Gauge {name} has no {given[0]}, and {count.name} needs them."
        see_also = ((count.place, "needed here"),)
        return [GAUGE_INCOMPLETE.at(gauge.place, message, hint=f"Add {given[0]}: over the length.", see_also=see_also)]
    return []


def _unknown_gauge(name: str, place: Place, every: tuple[str, ...]) -> Finding:
    guess = nearest(name, every)
    hint = f"Did you mean {guess}?" if guess else f"The gauges are {', '.join(every)}." if every else None
    return UNKNOWN_GAUGE.at(place, f"There is no gauge {name}.", hint=hint)
