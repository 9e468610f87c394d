"""Forms merged: by hand for one pattern, against the standard library, and against what the yarn command reckons."""

import statistics
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.design.testing import (
    Asked,
    AskedGauge,
    AskedRow,
    FilledForm,
    GaugeMade,
    RowTold,
    YarnTaken,
)
from gradegen.findings import Place
from gradegen.pipeline import check_file
from gradegen.reckon.testers.merge import by_pattern, merge_forms
from gradegen.reckon.yarn.yarn import yarn_per_size

ROOT = Path(__file__).resolve().parents[3]
WRAP = ROOT / "shared" / "patterns" / "skerrywick-wrap.yaml"


@cache
def wrap() -> Checked:
    checked = check_file(WRAP).checked
    assert checked is not None
    return checked


def asked(size: str) -> Asked:
    checked = wrap()
    (gauge,) = checked.pattern.gauges.values()
    one = next(one for one in checked.sizes if one.name == size)
    version = checked.pattern.version
    assert version is not None
    return Asked(
        checked.pattern.title.text,
        version.text,
        size,
        "bust",
        (AskedGauge(gauge.name, gauge.stitches, gauge.rows, Fraction(4)),),
        {"A": "lamplight"},
        {name: measure.printed for name, measure in one.measures.items()},
        ("Wrap",),
        (AskedRow("Wrap", "Rnd 1", (0, 1)), AskedRow("Wrap", "Rnd 2", (0, 2))),
    )


def form(size: str, tester: str, grams: int | None = None, **others: Any) -> FilledForm:
    file = f"{tester or 'nobody'}-{size}.pdf"
    yarns = (YarnTaken("A", grams=None if grams is None else Fraction(grams)),)
    filled = FilledForm(file, asked(size), tester, Place(file, 1, 1, 1, 1), yarns=yarns)
    return replace(filled, **others)


def rules(findings: Any) -> list[str]:
    return [finding.rule for finding in findings]


def test_gauge_spread_against_the_stated_gauge() -> None:
    numbers = [Fraction(27, 2), Fraction(29, 2), Fraction(15), Fraction(53, 4)]
    forms = [
        form("M", f"T{at}", gauges=(GaugeMade("lamps", after=(number, None)),)) for at, number in enumerate(numbers)
    ]
    tested, _ = merge_forms(forms, wrap())
    assert tested is not None
    (gauge,) = tested.gauges
    assert (gauge.counted, gauge.after, gauge.stated) == ("stitches", True, 14)
    assert gauge.spread.median == statistics.median(numbers)
    assert gauge.spread.mean == statistics.mean(numbers)
    assert gauge.off == statistics.median(numbers) / 14 - 1


def test_a_gauge_far_off_is_told_where_it_is_stated() -> None:
    far = [form("M", name, gauges=(GaugeMade("lamps", after=(Fraction(13), None)),)) for name in "abc"]
    _, findings = merge_forms(far, wrap())
    (finding,) = (one for one in findings if one.rule == "gauge-differs-from-testers")
    assert finding.place == wrap().pattern.gauges["lamps"].places["stitches"]
    near = [form("M", name, gauges=(GaugeMade("lamps", after=(Fraction(141, 10), None)),)) for name in "abc"]
    assert "gauge-differs-from-testers" not in rules(merge_forms(near, wrap())[1])


def test_yarn_against_the_estimate_of_the_yarn_command() -> None:
    (need,), _ = yarn_per_size(wrap())
    tested, _ = merge_forms([form("M", "a", 180), form("M", "b", 160), form("L", "c", 230)], wrap())
    assert tested is not None
    for one in tested.yarns:
        known = need.of(one.size)
        assert known is not None
        assert one.reckoned == known.used
        used = [amount.grams for _, amount in one.each]
        assert used == {"M": [180, 160], "L": [230]}.get(one.size, [])
        # skeins are 200 yd to 100 g in the demo, so weights and lengths give the same ratio
        assert [ratio for _, ratio in one.ratios] == [
            grams / known.used.grams for grams in used if grams and known.used.grams
        ]
    assert [one.size for one in tested.yarns] == [size.name for size in wrap().sizes]


def test_pooled_evidence_is_what_the_pattern_reckons_once_the_lines_are_pasted(tmp_path: Path) -> None:
    forms = [form("M", "a", 180), form("S", "b", 150), form("2X", "c", 262)]
    tested, _ = merge_forms(forms, wrap())
    assert tested is not None
    lines = "".join(f"      {line}\n" for line in tested.evidence["A"])
    text = WRAP.read_text("utf-8").replace(
        "    fibre: wool and linen\n", f"    fibre: wool and linen\n    testers:\n{lines}"
    )
    path = tmp_path / "wrap.yaml"
    path.write_text(text, "utf-8")
    pasted = check_file(path).checked
    assert pasted is not None
    (need,), _ = yarn_per_size(pasted)
    assert {one.size: one.wanted for one in tested.yarns} == {one.size: one.wanted for one in need.sizes}
    again, _ = merge_forms(forms, pasted)
    assert again is not None
    assert again.evidence == {}  # what stands in the pattern is not offered twice


def test_what_can_be_printed() -> None:
    (need,), _ = yarn_per_size(wrap())
    known = {size.size: size.used.grams for size in need.sizes}
    grams = {"a": 170, "b": 190, "c": 180, "d": 150, "e": 200, "f": 900}
    tested, _ = merge_forms([form("M", name, number) for name, number in grams.items()], wrap())
    assert tested is not None
    used = sorted(Fraction(number) for name, number in grams.items() if name != "f")  # who is far off does not count
    tenths = statistics.quantiles(used, n=10, method="inclusive")  # the standard library's own, exact over fractions
    for one in tested.yarns:
        size = known[one.size]
        most = max(tenths[8], used[-1] if one.size == "M" else 0) / (known["M"] or 1)
        assert one.to_print is not None
        assert one.to_print.grams is not None
        wanted = (size or 0) * most * (1 + need.margin)
        assert one.to_print.grams % 25 == 0
        assert 0 <= one.to_print.grams - wanted < 25


def test_estimates_far_off_and_outliers() -> None:
    (need,), _ = yarn_per_size(wrap())
    known = need.of("M")
    assert known is not None
    assert known.used.grams is not None
    usual = int(known.used.grams * Fraction(5, 4))
    forms = [form("M", "a", usual), form("M", "b", usual + 1), form("M", "c", usual - 1), form("M", "d", usual * 2)]
    _, findings = merge_forms(forms, wrap())
    assert rules(findings).count("estimate-off") == 1
    (outlier,) = (one for one in findings if one.rule == "tester-far-off")
    assert outlier.place.file == "d-M.pdf"
    right = [form("M", name, int(known.used.grams) + at) for at, name in enumerate("abc")]
    assert {"estimate-off", "tester-far-off"}.isdisjoint(rules(merge_forms(right, wrap())[1]))


def test_measures_against_what_is_expected() -> None:
    around = asked("M").measures["around"]
    forms = [form("M", name, measures={"around": around + off}) for name, off in (("a", 1), ("b", Fraction(3, 4)))]
    tested, findings = merge_forms(forms, wrap())
    assert tested is not None
    (measure,) = tested.measures
    assert (measure.expected, measure.off) == (around, Fraction(7, 8))
    (finding,) = (one for one in findings if one.rule == "finished-measure-off")
    assert (finding.size, finding.place) == ("M", wrap().pattern.measures["around"].place)
    near = [form("M", "a", measures={"around": around + Fraction(1, 2)})]
    assert "finished-measure-off" not in rules(merge_forms(near, wrap())[1])


def test_errors_are_gathered_by_row_in_the_order_of_the_pattern() -> None:
    second, first = RowTold("Wrap, Rnd 2", (0, 2), "40", ""), RowTold("Wrap, Rnd 1", (0, 1), "", "unclear")
    forms = [
        form("M", "a", told=(second, first)),
        form("L", "b", told=(RowTold("Rnd 2", (0, 2), "50", "too few"), RowTold("the edge", None, "", "curls"))),
    ]
    tested, _ = merge_forms(forms, wrap())
    assert tested is not None
    assert [row.name for row in tested.rows] == ["Wrap, Rnd 1", "Wrap, Rnd 2", "the edge"]
    lines = [wrap().pattern.pieces[0].rows[at].place.line for at in (1, 2)]
    assert [row.line for row in tested.rows] == [*lines, None]
    told = [(one.asked.size, made, expected) for one, made, expected, _ in tested.rows[1].each]
    worked = {size: [row.made for row in wrap().worked[size] if row.row.place.line == lines[1]] for size in ("M", "L")}
    assert told == [("M", "40", str(worked["M"][0])), ("L", "50", str(worked["L"][0]))]


def test_time_and_marks() -> None:
    forms = [
        form("M", "a", minutes=Fraction(600), ratings={"Wrap": (2, 4)}),
        form("M", "b", minutes=Fraction(900), ratings={"Wrap": (3, None)}),
    ]
    tested, _ = merge_forms(forms, wrap())
    assert tested is not None
    assert [(time.size, time.spread.median) for time in tested.times] == [("M", 750)]
    (piece,) = tested.pieces
    assert piece.difficulty is not None
    assert piece.clarity is not None
    assert (piece.difficulty.median, piece.clarity.many) == (Fraction(5, 2), 1)


def test_sizes_without_a_tester() -> None:
    tested, findings = merge_forms([form("M", "a", 170)], wrap())
    assert tested is not None
    without = [size.name for size in wrap().sizes if size.name != "M"]
    assert list(tested.untested) == without
    assert [one.size for one in findings if one.rule == "size-untested"] == without
    everyone, more = merge_forms([form(size.name, "a", 170) for size in wrap().sizes], wrap())
    assert everyone is not None
    assert everyone.untested == ()
    assert "size-untested" not in rules(more)


def test_two_forms_of_one_tester_and_size() -> None:
    same = replace(form("M", "Ada", 170), file="copy.pdf", place=Place("copy.pdf", 1, 1, 1, 1))
    tested, findings = merge_forms([form("M", "Ada", 170), same], wrap())
    assert tested is not None
    assert len(tested.forms) == 1
    assert [(one.rule, one.place.file) for one in findings if one.rule.startswith("form")] == [
        ("form-sent-twice", "copy.pdf")
    ]
    other = replace(form("M", " ADA ", 190), file="other.pdf", place=Place("other.pdf", 1, 1, 1, 1))
    tested, findings = merge_forms([form("M", "Ada", 170), other, form("L", "Ada", 200)], wrap())
    assert tested is not None
    assert [one.asked.size for one in tested.forms] == ["L"]
    assert {one.place.file for one in findings if one.rule == "forms-contradict"} == {"Ada-M.pdf", "other.pdf"}
    nameless = [form("M", "", 170), replace(form("M", "", 190), file="b.pdf")]
    tested, _ = merge_forms(nameless, wrap())
    assert tested is not None
    assert len(tested.forms) == 2  # two people who gave no name


def test_forms_of_other_patterns_sizes_and_versions() -> None:
    other = form("M", "a", 170)
    strange = [
        replace(other, file="p", place=Place("p", 1, 1, 1, 1), asked=replace(other.asked, pattern="Another Wrap")),
        replace(other, file="s", place=Place("s", 1, 1, 1, 1), asked=replace(other.asked, size="9X")),
        replace(other, file="v", place=Place("v", 1, 1, 1, 1), asked=replace(other.asked, version="0.9"), tester="b"),
    ]
    tested, findings = merge_forms([other, *strange], wrap())
    assert tested is not None
    assert [one.file for one in tested.forms] == [other.file, "v"]
    found = {one.place.file: one.rule for one in findings if one.place.file in "psv"}
    assert found == {"p": "form-of-other-pattern", "s": "form-of-unknown-size", "v": "form-of-other-version"}


def test_without_the_pattern_the_forms_speak_for_themselves() -> None:
    around = asked("M").measures["around"]
    forms = [form("M", "a", 170, measures={"around": around + 1}), form("L", "b", 210)]
    tested, findings = merge_forms(forms)
    assert tested is not None
    assert not tested.has_pattern
    assert tested.sizes == ("M", "L")
    assert tested.untested == ()
    assert tested.measures[0].off == 1
    assert [one.reckoned for one in tested.yarns] == [None, None]
    assert rules(findings) == ["finished-measure-off"]
    other = replace(forms[0], asked=replace(forms[0].asked, pattern="Another"))
    assert [len(some) for some in by_pattern([*forms, other])] == [2, 1]


@pytest.mark.parametrize("checked", [None, "wrap"])
def test_no_forms(checked: str | None) -> None:
    assert merge_forms([], wrap() if checked else None) == (None, ())
