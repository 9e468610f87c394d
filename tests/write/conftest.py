"""Two invented patterns built by hand, graded and worked without any other room: what the printers are tried on."""

from __future__ import annotations

import logging
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount, Formula, Name, Sum
from gradegen.design.graded import GradedCount, GradedMeasure, GradedSize
from gradegen.design.pattern import CountRule, Designer, Gauge, Measure, Notion, Pattern, Piece, SizeChoice, Text, Yarn
from gradegen.design.rows import Definition, Label, Listed, Number, Row, Stated, Thing
from gradegen.design.sizes import Band, Cell, SizeTable
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place

FILE = "invented/sample.yaml"
_lines = iter(range(1, 1_000_000))


def somewhere() -> Place:
    """A new place on every call."""
    line = next(_lines)
    return Place(FILE, line, 1, line, 2)


def amount(number: object, unit: str | None) -> Amount:
    return Amount(Fraction(str(number)), unit, somewhere())


def formula(words: str) -> Formula:
    """`2 * band + 1`, `around`, `band / 6`, read from the left."""
    parts = re.split(r"\s*([-+*/])\s*", words.strip())
    value: Formula = _term(parts[0])
    for sign, term in zip(parts[1::2], parts[2::2], strict=True):
        value = Sum(sign, value, _term(term), somewhere())
    return value


def _term(words: str) -> Formula:
    found = re.fullmatch(r"([\d.]+)\s*(in|cm)?", words)
    return amount(found[1], found[2]) if found else Name(words, somewhere())


_LISTED = re.compile(r"\{(?P<sum>[^{}]+)\}|(?P<list>[\d-]+(?:\s\([\d, -]+\))+)")


def lists_in(text: str) -> tuple[Listed, ...]:
    found = []
    for each in _LISTED.finditer(text):
        if each["sum"]:
            found.append(Listed(*each.span(), (), formula(each["sum"])))
        else:
            found.append(Listed(*each.span(), tuple(re.findall(r"\d+|-", each["list"]))))
    return tuple(found)


def text(words: str) -> Text:
    return Text(words, somewhere(), lists_in(words))


Made = Callable[[Mapping[str, int]], int]


def row(words: str, sizes: Sequence[str] | None = None) -> Row:
    """A row by its words alone; how it is worked is of no interest to a printer."""
    head = words.split(":")[0]
    only = re.search(r"\s*\([^()]* only\)", head)
    label = head[: only.start()] if only else head
    stated = re.search(r"\((\{[^{}]+\}|\d+) [a-z]+\)\.?$", words)
    counts = ()
    if stated:
        inner = stated[1]
        number = (
            Number((), formula(inner[1:-1]), place=somewhere())
            if inner[0] == "{"
            else Number((int(inner),), place=somewhere())
        )
        counts = (Stated(number, Thing("st"), place=somewhere()),)
    place = somewhere()
    return Row(
        Label(label, "round", place=place),
        (),
        counts,
        sizes=tuple(sizes) if sizes else None,
        text=words,
        lists=lists_in(words),
        place=place,
    )


def graded(
    name: str, at: int, body: tuple[str, str], measures: Mapping[str, tuple[object, int, str]], gauge: Gauge
) -> GradedSize:
    """One size: measures are name -> (target, multiple, count name); counts come from the gauge."""
    counts, kept = {}, {}
    for measure, (target, multiple, count) in measures.items():
        rate = (gauge.stitches if multiple else gauge.rows) or Fraction(1)
        rate /= gauge.over.number
        step = multiple or 1
        wanted = Fraction(str(target))
        n = int(wanted * rate / step + Fraction(1, 2)) * step
        finished = n / rate
        kept[measure] = GradedMeasure(measure, wanted, finished, somewhere())
        counts[count] = GradedCount(
            count,
            n,
            n,
            wanted * rate,
            n // step,
            wanted,
            finished,
            "to the nearest",
            n - step,
            n + step,
            "sts",
            somewhere(),
        )
    low, high = (Fraction(end) for end in body)
    inches, cm = Band(low, high), Band(low * Fraction(254, 100), high * Fraction(254, 100))
    cell = Cell(inches, cm, somewhere())
    return GradedSize(
        name, at, "adult", {"bust": cell}, {"bust": (low + high) / 2}, cell, kept, counts, Fraction(3), "classic fit"
    )


def with_sums(size: GradedSize, sums: Mapping[str, Callable[[Mapping[str, int]], int]]) -> GradedSize:
    counts = dict(size.counts)
    for name, reckon in sums.items():
        n = reckon({key: count.n for key, count in counts.items()})
        counts[name] = GradedCount(name, n, n, None, None, None, None, "", None, None, "sts", somewhere())
    return replace(size, counts=counts)


def worked(row: Row, size: GradedSize, made: int | None, times: int = 1) -> WorkedRow:
    applies = row.sizes is None or size.name in row.sizes
    status: Any = "proved" if made is not None and applies else "not-checked"
    return WorkedRow(
        row,
        row.label.text,
        size.name,
        status,
        (),
        (),
        made,
        {"sc": made or 0},
        None,
        times,
        {},
        (),
        (),
        (),
        "",
        applies,
    )


def bundle(pattern: Pattern, sizes: Sequence[GradedSize], made: Mapping[int, tuple[Made, Made]]) -> Checked:
    """`made`: row number over all pieces -> (stitches made, times) by the counts of a size."""
    rows = [each for piece in pattern.pieces for each in piece.rows]
    by_size = {}
    for size in sizes:
        numbers = size.numbers()
        by_size[size.name] = tuple(
            worked(each, size, made[at][0](numbers), made[at][1](numbers)) if at in made else worked(each, size, None)
            for at, each in enumerate(rows)
        )
    pairs = [each for each_size in by_size.values() for each in each_size if each.applies]
    proved = sum(each.status == "proved" for each in pairs)
    return Checked(pattern, a_table(sizes), tuple(sizes), by_size, (), proved, 0, len(pairs) - proved)


def a_table(sizes: Sequence[GradedSize]) -> SizeTable:
    names = tuple(size.name for size in sizes)
    return SizeTable(
        "invented",
        "invented",
        "Invented body sizes",
        "Demo House",
        "2026",
        "",
        "adult",
        "bust",
        names,
        {},
        (),
        somewhere(),
    )


def once(_: Mapping[str, int]) -> int:
    return 1


def a_gauge(name: str, stitches: str, rows: str) -> Gauge:
    return Gauge(
        name, Fraction(stitches), None, None, Fraction(rows), amount(4, "in"), amount(6, "mm"), "blocked",
        Fraction("13.5"), Fraction(7), text("in pattern"), somewhere(),
    )  # fmt: skip


def a_pattern(title: str, gauge: Gauge, measures: Sequence[str], pieces: Sequence[Piece], **others: Any) -> Pattern:
    yarn = Yarn(
        "A",
        text("medium"),
        text("wool"),
        text("slate"),
        amount(200, "yd"),
        amount(100, "g"),
        text("M"),
        amount(168, "g"),
        somewhere(),
    )
    known: dict[str, Any] = {
        "file": FILE,
        "title": text(title),
        "version": text("1.2"),
        "about": text(
            "Rows of small arches over a plain ground. Invented for the tests of the printers, and never crocheted."
        ),
        "designer": Designer(text("Demo House"), text("help@example.org"), 2026),
        "terms": "US",
        "level": text("easy"),
        "wearer": None,
        "sizes": SizeChoice(text("invented"), None, text("bust"), "middle", somewhere()),
        "units": "inches first",
        "rounding": text("1/4 in"),
        "yarns": (yarn,),
        "notions": (
            Notion(text("tapestry needle"), None),
            Notion(text("stitch markers"), Number((2,), place=somewhere())),
        ),
        "gauges": {gauge.name: gauge},
        "measures": {name: Measure(name, amount(1, "in"), somewhere()) for name in measures},
        "counts": {},
        "definitions": (),
        "notes": (text("Ch 1 at the start of a round does not count as a stitch."),),
        "pieces": tuple(pieces),
        "finishing": (text("Weave in the ends."), text("Pin it out to {around} around, and let it dry.")),
        "cautions": (text("Keep it away from open flames."),),
        "licence": text("You may sell what you make from this pattern by hand."),
        "place": somewhere(),
    }
    return Pattern(**(known | others))


WOMEN = ("XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X")


def a_piece(name: str, shape: Any, width: str, length: str, rows: Sequence[Row]) -> Piece:
    return Piece(text(name), shape, (), tuple(rows), text(width), text(length), somewhere())


def make_wrap(names: Sequence[str] = WOMEN) -> Checked:
    """A half-twist wrap, one size for each of `names`."""
    gauge = a_gauge("arches", "13", "7")
    rows = [
        row("Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch."),
        row(
            "Rnd 1: Ch 1 (does not count as a st), sc in each ch, "
            "then sc in the free loop of each ch along the other side, join. ({2 * band} sc)"
        ),
        row(
            "Rnd 2: Ch 4 (counts as dc and ch 1), sk first 2 sts, *little fan in next st, sk next 3 sts; "
            "rep from * around, join. ({band / 2} fans)"
        ),
        row(
            "Rnds 3-{rounds - 1}: Ch 1 (does not count as a st), *sc in next ch-1 sp, ch 3; "
            "rep from * around, join. ({band} sc)"
        ),
        row(
            "Rnd {rounds}: Ch 1, sc in each st around, "
            "2 more sc in each of 2 (2, 2, 2, 4) (4, 4, 6, 6) marked sts, join. Fasten off. ({2 * band} sc)"
        )
        if len(names) == len(WOMEN)
        else row("Rnd {rounds}: Ch 1, sc in each st around, join. Fasten off. ({2 * band} sc)"),
    ]  # fmt: skip
    sizes = [
        graded(
            name,
            at,
            (str(28 + 4 * at), str(30 + 4 * at)),
            {"around": (32 + 4 * at, 4, "band"), "depth": (11 + at // 2, 0, "rounds")},
            gauge,
        )
        for at, name in enumerate(names)
    ]
    fan = Definition("little fan", "(dc, ch 1, dc, ch 1, dc) in st or sp indicated", place=somewhere())
    piece = a_piece("Band", "half-twist band", "around", "depth", rows)
    pattern = a_pattern("Tidewrack Wrap", gauge, ("around", "depth"), [piece], definitions=(fan,))
    twice: tuple[Made, Made] = (lambda n: 2 * n["band"], once)
    made = {0: (lambda n: n["band"], once), 1: twice, 2: (lambda n: n["band"] // 2, once), 4: twice}
    made[3] = (lambda n: n["band"], lambda n: n["rounds"] - 3)
    return bundle(pattern, sizes, made)


HEADS = ("NB", "B", "C", "S", "M", "L", "XL")


def make_hat() -> Checked:
    """A brimmed hat in seven sizes: crown from the centre, even sides, a brim."""
    gauge = a_gauge("single crochet", "16", "17")
    grows = "*Sc in next {} sts, inc in next st; rep from * around. ({} sc)"
    crown = [row("Rnd 2: Inc in each st. (12 sc)")]
    crown += [row(f"Rnd {at}: " + grows.format(at - 2, 6 * at)) for at in range(3, 10)]
    more = []
    for at in range(10, 15):
        some = HEADS[at - 9 :]
        only = f"{', '.join(some[:-1])} and {some[-1]} only"
        more.append(row(f"Rnd {at} ({only}): " + grows.format(at - 2, 6 * at), some))
    rows = [
        row("Rnd 1: 6 sc in magic ring. (6 sc)"),
        *crown,
        *more,
        row("Rnd {crown + 1}: Sc in back loop only of each st around. ({full} sc)"),
        row("Rnds {crown + 2}-{last side}: Sc in each st around. ({full} sc)"),
        row(
            "Rnd {last side + 1}: Working in front loops only, *sc in next 5 sts, inc in next st; "
            "rep from * around. ({7 * crown} sc)"
        ),
        row("Rnds {last side + 2}-{last}: Sc in each st around. ({7 * crown} sc)"),
    ]
    sizes = []
    for at, name in enumerate(HEADS):
        size = graded(
            name,
            at,
            (str(Fraction(27 + 3 * at, 2)), str(Fraction(30 + 3 * at, 2))),
            {
                "around": (Fraction(27, 2) + Fraction(3, 2) * at, 6, "full"),
                "sides": (3 + Fraction(at, 4), 0, "side rounds"),
            },
            gauge,
        )
        size = replace(
            size, ease=Fraction(-1), fit=None, wearer=("baby", "baby", "child", "adult", "adult", "adult", "adult")[at]
        )
        sums = {
            "crown": lambda n: n["full"] // 6,
            "last side": lambda n: n["full"] // 6 + n["side rounds"],
            "last": lambda n: n["full"] // 6 + n["side rounds"] + 6,
        }
        sizes.append(with_sums(size, sums))
    piece = a_piece("Hat", "spiral", "around", "sides", rows)
    width = CountRule(
        "full", formula("around"), None, None, text(gauge.name), 6, 0, 0, None, None, None, "up", False, 1, somewhere()
    )
    pattern = a_pattern("Sluicegate Hat", gauge, ("around", "sides"), [piece], counts={"full": width})
    made: dict[int, tuple[Made, Made]] = {at: (lambda n, at=at: 6 * at + 6, once) for at in range(14)}  # type: ignore[misc]
    made[14] = (lambda n: n["full"], once)
    made[15] = (lambda n: n["full"], lambda n: n["side rounds"] - 1)
    made[16] = (lambda n: 7 * n["crown"], once)
    made[17] = (lambda n: 7 * n["crown"], lambda n: 5)
    return bundle(pattern, sizes, made)


@pytest.fixture(scope="session")
def wrap() -> Checked:
    return make_wrap()


@pytest.fixture(scope="session")
def hat() -> Checked:
    return make_hat()


@pytest.fixture(scope="session")
def samples() -> Any:
    """Makers of patterns, for tests that change one."""
    return {
        each.__name__.removeprefix("make_").removeprefix("a_"): each
        for each in (make_wrap, make_hat, a_piece, text, row, somewhere, formula, amount, worked)
    }


@pytest.fixture(autouse=True)
def typesetter_is_silent() -> Any:
    """A warning of the typesetter fails the test that caused it."""
    said: list[str] = []

    class Keep(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            said.append(record.getMessage())

    keep = Keep(logging.WARNING)
    logging.getLogger("weasyprint").addHandler(keep)
    yield said
    logging.getLogger("weasyprint").removeHandler(keep)
    assert said == []
