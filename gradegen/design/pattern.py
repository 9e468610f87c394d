"""A pattern file as written: every value with its place, nothing worked out yet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from gradegen.design.begin import Begin
from gradegen.design.formula import Amount, Formula
from gradegen.design.look import Look
from gradegen.design.pictures import Picture
from gradegen.design.relation import Relation
from gradegen.design.rows import Definition, Number, Row
from gradegen.design.schedule import Scheduled, ScheduleRule
from gradegen.design.seams import Seam
from gradegen.design.text import Text as Text
from gradegen.findings import Place, Written

Shape = Literal["flat", "joined rounds", "spiral", "half-twist band"]
Terms = Literal["US", "UK"]
Take = Literal["low", "middle", "high"]


@dataclass(frozen=True, slots=True)
class Designer:
    """Who made it, where to ask for help, the year of the copyright line, and where corrections stand."""

    name: Text
    help: Text | None
    year: int | None
    errata: Text | None = None


@dataclass(frozen=True, slots=True)
class SizeChoice:
    """Which table, which of its sizes (None: all), by which body column, and which end of a to-fit band is graded."""

    table: Text
    wanted: tuple[Text, ...] | None
    by: Text | None
    take: Take
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class Weighed:
    """Something made of a yarn and weighed or measured off: evidence of how much yarn the stitches take.

    "sample", "tester": the whole piece in `size`, with its `stitches` where written down. "swatch": `stitches`
    as counted (stitch id -> number), or a piece of fabric `width` by `height`.
    """

    what: Literal["sample", "tester", "swatch"]
    used: Amount
    size: Text | None = None
    stitches: Mapping[str, int] = field(default_factory=dict)
    width: Amount | None = None
    height: Amount | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class YarnStated:
    """Amounts as the designer prints them, each one for all sizes or one per size."""

    skeins: Formula | None = None
    yards: Formula | None = None
    metres: Formula | None = None
    grams: Formula | None = None
    ounces: Formula | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Timed:
    """How long crochet takes one hand: hours for a piece in a size, and stitches a minute by stitch id."""

    size: Text | None
    hours: Fraction | None
    per_minute: Mapping[str, Fraction] = field(default_factory=dict)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Yarn:
    """One yarn: weight category name, fibre, put-up (length and mass per skein), colour, and evidence of use.

    `weighed`: swatches and testers' pieces besides the sample. `unravelled`: stitch id -> yarn in one stitch. `margin`:
    percent on top of what is used. `price`: of one skein, in whatever currency. `besides`: yarn for seams, tassels, the
    swatch, by name. `tails`: ends to weave in. `length_also`, `mass_also`: the put-up said again in the other unit.
    `sample_stitches`: stitch id -> number in the sample as it was made; {} where its size's rows tell. `sewing`:
    lengths of yarn to sew one length of seam (None: as is usual); the yarn that says it is the one that sews.
    """

    letter: str
    weight: Text | None
    fibre: Text | None
    colour: Text | None
    skein_length: Amount | None
    skein_mass: Amount | None
    sample_size: Text | None
    sample_used: Amount | None
    place: Place = field(compare=False)
    weighed: tuple[Weighed, ...] = ()
    unravelled: Mapping[str, Formula] = field(default_factory=dict)
    margin: Fraction | None = None
    price: Text | None = None
    besides: Mapping[str, Amount] = field(default_factory=dict)
    tails: int | None = None
    stated: YarnStated | None = None
    length_also: Amount | None = None
    mass_also: Amount | None = None
    sample_stitches: Mapping[str, int] = field(default_factory=dict)
    sewing: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Gauge:
    """Stitches (or pattern repeats) and rows over a length, as given; the second pair is before washing.

    `stitches` counts stitches over `over`; where the designer measured repeats, `repeats` counts repeats of `repeat_of`
    stitches instead.
    """

    name: str
    stitches: Fraction | None
    repeats: Fraction | None
    repeat_of: int | None
    rows: Fraction | None
    over: Amount
    hook: Amount | None
    state: Literal["blocked", "unblocked"] | None
    before_stitches: Fraction | None
    before_rows: Fraction | None
    note: Text | None
    place: Place = field(compare=False)
    places: Mapping[str, Place] = field(default_factory=dict, compare=False)


@dataclass(frozen=True, slots=True)
class Measure:
    """What the finished piece should be: a sum of body columns and ease, per size."""

    name: str
    formula: Formula
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class CountRule:
    """How one count is found: a length at a gauge, snapped; or a plain sum of other counts.

    `across` (stitches) or `along` (rows) names the measure; `n = k * multiple + plus`; `chain = n + base_extra`;
    `parity`; `least`; `tie`: which way an exact half goes; `both_sides`: each round adds its height twice (half-twist
    band); `formula` instead of a measure: `2 * band + 1`. `pieces`: the measure is shared by this many equal pieces.
    `centre`: what lies in the middle in every size, a motif (odd number of repeats) or a gap (even); "same": either,
    but the same. `even_steps`: from size to size the repeats grow by one number or the next. `weight`: how much a drift
    of this count weighs against others it is solved with. `pins`: size -> the count the designer wants in it. A count
    without measure and sum follows from relations alone.
    """

    name: str
    across: Formula | None
    along: Formula | None
    formula: Formula | None
    gauge: Text | None
    multiple: int
    plus: int
    base_extra: int
    parity: Literal["even", "odd"] | None
    least: int | None
    most: int | None
    tie: Literal["up", "down"]
    both_sides: bool
    pieces: int
    place: Place = field(compare=False)
    places: Mapping[str, Place] = field(default_factory=dict, compare=False)
    centre: Literal["motif", "gap", "same"] | None = None
    even_steps: bool = False
    weight: Fraction = Fraction(1)
    pins: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of the work: its shape, its notes and its rows in working order.

    `edges`: the piece's named edges, each a sum of counts or of `rows`, `start` and `end`. `written`: the text of its
    rows, where a `{shaping}` stands in it that is only worked out with the sizes. `begin`: what an earlier piece left
    for it to be worked on (None: it begins by itself, or goes on from the piece above).
    """

    name: Text
    shape: Shape
    notes: tuple[Text, ...]
    rows: tuple[Row, ...]
    width: Text | None
    length: Text | None
    place: Place = field(compare=False)
    edges: Mapping[str, Formula] = field(default_factory=dict)
    written: Written | None = field(default=None, compare=False)
    begin: Begin | None = None


@dataclass(frozen=True, slots=True)
class Notion:
    """Something else that is needed, with how many per size when it is counted."""

    what: Text
    number: Number | None


@dataclass(frozen=True, slots=True)
class Pattern:
    """The whole pattern file as written; `scheduled` is its shaping worked out for every size, once it is graded."""

    file: str
    title: Text
    version: Text | None
    about: Text | None
    designer: Designer | None
    terms: Terms
    level: Text | None
    wearer: Literal["baby", "child", "adult"] | None
    sizes: SizeChoice
    units: Literal["inches first", "centimetres first"]
    rounding: Text | None
    yarns: tuple[Yarn, ...]
    notions: tuple[Notion, ...]
    gauges: Mapping[str, Gauge]
    measures: Mapping[str, Measure]
    counts: Mapping[str, CountRule]
    definitions: tuple[Definition, ...]
    notes: tuple[Text, ...]
    pieces: tuple[Piece, ...]
    finishing: tuple[Text, ...]
    cautions: tuple[Text, ...]
    licence: Text | None
    sources: Mapping[str, Written] = field(default_factory=dict, compare=False)
    timed: Timed | None = None
    relations: tuple[Relation, ...] = ()
    shaping: Mapping[str, ScheduleRule] = field(default_factory=dict)
    scheduled: Mapping[str, Scheduled] = field(default_factory=dict)
    seams: tuple[Seam, ...] = ()
    pictures: tuple[Picture, ...] = ()
    look: Look | None = None
    place: Place = field(compare=False, kw_only=True)
