"""Charts drawn and read back: what stands in the SVG is what the row makes, glyph by glyph.

The count of a row comes from the engine's census of stitches, kept apart from the record that a chart is drawn from.
"""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from xml.etree import ElementTree

import pytest
from pieces import PIECES, SHELLS, worked

from gradegen import pipeline
from gradegen.design.checked import Checked
from gradegen.write.chart.whole import Chart, Undrawn, file_svg, page_svg, piece_chart
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
SVG = "{http://www.w3.org/2000/svg}"
DRAWN = {
    "skerrywick-wrap": ["Wrap"],
    "bollard-hat": ["Hat"],
    "gunwale-pullover": ["Yoke", "Body", "Neckband", "Sleeves"],
    "limpet-pullover": ["Yoke", "Body", "Neckband", "Sleeves"],
    "slipway-cardigan": ["Back", "Fronts", "Sleeves", "Button Band", "Buttonhole Band"],
}
ONLY_IN_NAMES = {"5-dc bobble", "3-dc cluster"}


def printing_of(checked: Checked, size: str | None = None) -> Printing:
    sizes = tuple(one for one in checked.sizes if size in (None, one.name))
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


def drawn(checked: Checked, at: int = 0, size: str | None = None) -> Chart:
    chart = piece_chart(checked, checked.pattern.pieces[at], printing_of(checked, size))
    assert isinstance(chart, Chart), chart
    return chart


def read_rows(svg: str) -> list[Counter[str]]:
    """How often each stitch is drawn in each row, chains and slip stitches included."""
    rows = []
    for group in ElementTree.fromstring(svg).iter(f"{SVG}g"):
        if group.get("class") != "row":
            continue
        found: Counter[str] = Counter()
        for one in group:
            if one.get("class") == "st":
                found[one.get("data-stitch", "")] += 1
            elif one.get("class") == "picot":
                found["picot"] += 1
            for use in one.iter(f"{SVG}use"):
                kind = use.get("class")
                if kind is not None and one.get("class") != "st":
                    found[kind] += 1
        rows.append(found)
    return rows


def counted(chart: Chart) -> list[tuple[str, Counter[str], Counter[str]]]:
    """For each row: its label, what is drawn, what the engine counts; a foundation counts where it was chained."""
    svg = read_rows(page_svg(chart))
    pairs = []
    upright = sum(row["foundation"] for row in svg)
    ring = ElementTree.fromstring(page_svg(chart)).find(f"{SVG}g[@class='middle']")
    in_ring = Counter(use.get("class") for use in ring.iter(f"{SVG}use"))["ch"] if ring is not None else 0
    waiting = Counter({"ch": upright + in_ring, "sl st": 1 if in_ring else 0})
    for row, seen in zip(chart.rows.rows, svg, strict=True):
        assert set(seen) - {"ch", "sl-st", "again", "foundation", "place"} <= {one.name for one in row.things}
        plain = Counter({name: number for name, number in seen.items() if name not in ("again", "foundation", "place")})
        plain["sl st"] += plain.pop("sl-st", 0)
        plain += waiting
        waiting = Counter()
        if row.source is None:
            waiting = plain
            continue
        census = Counter(row.source.census)
        if row.is_base:
            plain["sl st"] = census["sl st"]  # the join of a foundation ring is not drawn
        pairs.append((row.label.label.text if row.label else "", +plain, +census))
    return pairs


def agree(chart: Chart) -> None:
    for label, seen, census in counted(chart):
        picots = seen.pop("picot", 0) if "picot" not in census else 0
        seen.update({"ch": 3 * picots, "sl st": picots} if picots else {})
        assert seen == census, label


@pytest.mark.parametrize("name", sorted(DRAWN))
def test_each_demo_is_drawn_as_its_rows_are_worked(name: str) -> None:
    checked = pipeline.check_file(DEMOS / f"{name}.yaml").checked
    assert checked is not None
    found = []
    for at, piece in enumerate(checked.pattern.pieces):
        chart = piece_chart(checked, piece, printing_of(checked))
        if isinstance(chart, Chart):
            found.append(piece.name.text)
            agree(drawn(checked, at))
    assert found == DRAWN[name]


@pytest.mark.parametrize("size", ["NB", "T", "L"])
def test_each_size_of_the_hat_has_its_own_chart(size: str) -> None:
    checked = pipeline.check_file(DEMOS / "bollard-hat.yaml").checked
    assert checked is not None
    chart = drawn(checked, size=size)
    agree(chart)
    own = {row.made for row in checked.worked[size] if row.applies}
    made = {sum(n for name, n in row.source.census.items()) for row in chart.rows.rows if row.source is not None}
    assert made <= own


@pytest.mark.parametrize("name", sorted(PIECES))
def test_pieces_of_every_kind_are_drawn_as_they_are_worked(name: str, tmp_path: Path) -> None:
    checked = worked(tmp_path, name).checked
    assert checked is not None
    assert checked.wrong == checked.not_checked == 0
    agree(drawn(checked))


def test_a_wrong_row_is_not_drawn(tmp_path: Path) -> None:
    """One stitch fewer in the shells of row 1, and nothing above comes out even."""
    checked = worked(tmp_path, "shells", rows=SHELLS.replace("sk next 2 ch, 5 dc", "sk next 3 ch, 5 dc", 1)).checked
    assert checked is not None
    assert isinstance(piece_chart(checked, checked.pattern.pieces[0], printing_of(checked)), Undrawn)


def test_fewer_dc_in_a_shell_are_fewer_in_its_chart(tmp_path: Path) -> None:
    checked = worked(tmp_path, "shells", rows="\n".join(SHELLS.splitlines()[:2]).replace("5 dc", "7 dc")).checked
    assert checked is not None
    assert read_rows(page_svg(drawn(checked)))[1]["dc"] % 7 == 0


def feet(chart: Chart, row: int) -> list[list[int]]:
    return [[at for _, at in thing.feet] for thing in chart.rows.rows[row].things if thing.what == "st"]


def test_shells_stand_where_a_hand_would_put_them(tmp_path: Path) -> None:
    """From the hook: sc in the 2nd chain, shell in the 5th, sc in the 8th (by hand; common practice, no source)."""
    checked = worked(tmp_path, "shells").checked
    assert checked is not None
    chart = drawn(checked)
    base = len(chart.rows.rows[0].things)
    assert base == 19  # three repeats of 6 and 1; the chain more stands upright
    assert feet(chart, 1)[:7] == [[18], [15], [15], [15], [15], [15], [12]]
    assert feet(chart, 2)[:3] == [[19], [19], [16]]  # on the sc, on the sc, in the middle of the shell


def test_rows_alternate_and_rounds_do_not(tmp_path: Path) -> None:
    checked = worked(tmp_path, "shells").checked
    assert checked is not None
    assert [row.ahead for row in drawn(checked).rows.rows] == [1, -1, 1, -1]
    square = worked(tmp_path, "square").checked
    assert square is not None
    assert [row.ahead for row in drawn(square).rows.rows] == [1, 1, 1]


def test_rows_that_repeat_are_drawn_once() -> None:
    checked = pipeline.check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert checked is not None
    chart = drawn(checked, size="M")
    assert [mark.number for mark in chart.legend.marks] == ["", "1", "2", "3", "4", "9", "10", "11"]
    assert [(again.first, again.last) for again in chart.legend.again] == [(3, 4)]


def test_a_bracket_is_clear_of_the_row_numbers() -> None:
    """`12–19` is five signs long, and stood over the bracket of the rows that are worked again."""
    checked = pipeline.check_file(DEMOS / "slipway-cardigan.yaml").checked
    assert checked is not None
    chart = drawn(checked, 4, "M")
    svg = page_svg(chart)
    bracket = re.search(r'<path class="again"[^>]* d="M([\d.-]+) ', svg)
    assert bracket is not None
    numbers = re.findall(r'<text x="([\d.-]+)" [^>]*font-size="([\d.]+)" text-anchor="end"[^>]*>(\d[^<]*)</text>', svg)
    assert "12–19" in [number for _, _, number in numbers]
    assert all(float(x) - 0.6 * float(size) * len(number) > float(bracket[1]) for x, size, number in numbers)


def test_a_chart_says_that_it_is_smaller_than_the_one_size() -> None:
    checked = pipeline.check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert checked is not None
    assert "It is drawn smaller than this size, with the same stitches in each repeat." in drawn(checked, 0, "M").shows
    assert "It is drawn smaller than any size, with the same stitches in each repeat." in drawn(checked).shows


def test_even_rows_are_drawn_as_often_as_their_sides_ask(tmp_path: Path) -> None:
    """Rows 2 to 20 are 19 rows: one of them leaves the work on the side that 19 do."""
    checked = worked(tmp_path, "even").checked
    assert checked is not None
    chart = drawn(checked)
    assert [mark.number for mark in chart.legend.marks] == ["", "1", "2–20"]


def test_a_chain_of_plain_numbers_is_drawn_shorter(tmp_path: Path) -> None:
    checked = worked(tmp_path, "literal").checked
    assert checked is not None
    chart = drawn(checked)
    assert chart.small.chain == 14  # two repeats of 6, and 2: counted by hand


def test_a_chart_speaks_for_itself(tmp_path: Path) -> None:
    checked = worked(tmp_path, "bobbles").checked
    assert checked is not None
    printing = printing_of(checked)
    chart = drawn(checked)
    svg = file_svg(chart, printing)
    root = ElementTree.fromstring(svg)
    title, described = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None
    assert described is not None
    assert title.text == "Stitch chart: Bobbles"
    assert "Row 2" in (described.text or "")
    assert "5-dc bobble in next st" in (described.text or "")
    assert {"ch: chain", "sc: single crochet", "worked in the back loop only"} <= {entry.words for entry in chart.key}
    assert root.get("font-family")
    assert not re.search(r"var\(|currentColor", svg)


def test_in_uk_terms_the_key_says_them(tmp_path: Path) -> None:
    rows = SHELLS.replace("dc", "tr").replace("sc", "dc").replace("Sc", "Dc")
    checked = worked(tmp_path, "shells", terms="UK", rows=rows).checked
    assert checked is not None
    assert {entry.words for entry in drawn(checked).key} == {"ch: chain", "dc: double crochet", "tr: treble"}


def test_the_same_chart_is_the_same_bytes(tmp_path: Path) -> None:
    first, second = (worked(tmp_path, "square").checked for _ in range(2))
    assert first is not None
    assert second is not None
    assert file_svg(drawn(first), printing_of(first)) == file_svg(drawn(second), printing_of(second))


def test_an_oval_lies_about_its_chain(tmp_path: Path) -> None:
    """Chains met from both sides, but at its end; by hand: 8 above, 3 in the end, 7 below, 2 in the other end."""
    checked = worked(tmp_path, "oval").checked
    assert checked is not None
    chart = drawn(checked)
    assert chart.rows.is_oval
    base = [thing for thing in chart.rows.rows[0].things if not thing.again]
    assert len(base) == 9  # ten chains, one of them skipped
    stood = [at[0] for at in feet(chart, 1)]
    assert stood[:11] == [8, 7, 6, 5, 4, 3, 2, 1, 0, 0, 0]
    assert [at - 9 for at in stood[11:]] == [1, 2, 3, 4, 5, 6, 7, 8, 8]
    page = ElementTree.fromstring(page_svg(chart))
    assert len([use for use in page.iter(f"{SVG}use") if use.get("class") in ("ch", "again")][:9]) == 9
    assert "chain in the middle" in chart.shows


def test_an_oval_from_a_foundation_written_apart(tmp_path: Path) -> None:
    checked = worked(tmp_path, "sole").checked
    assert checked is not None
    chart = drawn(checked)
    stood = [at[0] for at in feet(chart, 1)]
    # nine chains are left of twelve: dc in the 4th, 7 more, 6 in the last, and on along the other side
    assert stood[:15] == [8, 7, 6, 5, 4, 3, 2, 1, 0, 0, 0, 0, 0, 0, 9 + 1]


@pytest.mark.parametrize("name", ["gunwale-pullover", "limpet-pullover"])
def test_a_piece_that_goes_on_stands_on_what_was_left(name: str) -> None:
    checked = pipeline.check_file(DEMOS / f"{name}.yaml").checked
    assert checked is not None
    body, band = drawn(checked, 1), drawn(checked, 2)
    assert body.rows.rows[0].is_base
    assert {thing.name for thing in body.rows.rows[0].things} <= {"st", "sp"}
    assert "an earlier piece has left" in body.shows
    assert all(thing.again for thing in band.rows.rows[0].things)  # the free loops of the yoke's chain
    at = [thing.feet[0][1] for thing in body.rows.rows[1].things if thing.feet]
    assert at == sorted(at)
    assert len(at) < len(body.rows.rows[0].things)  # the sleeves stay unworked


def test_shaping_over_rows_is_drawn_row_by_row() -> None:
    """The armhole of the back: stitches left at both ends, then decreases at both ends, then even rows."""
    checked = pipeline.check_file(DEMOS / "slipway-cardigan.yaml").checked
    assert checked is not None
    chart = drawn(checked)
    names = [[thing.name for thing in row.things if thing.what == "st"] for row in chart.rows.rows]
    shaped = [row for row in names if "hdc2tog" in row]
    assert shaped
    assert all(row[0] == row[-1] == "hdc2tog" for row in shaped)
    slips = [thing for row in chart.rows.rows for thing in row.things if thing.what == "slip"]
    assert slips  # over the stitches left unworked
    rule, small = checked.pattern.scheduled["back armhole"], chart.small.numbers
    assert rule.rule.name == "back armhole"
    assert len(names[-1]) == small["cross"]
    assert len(names[1]) == small["back"] == small["cross"] + 2 * small["underarm"] + 2 * small["arm decs"]
    assert len(slips) == small["underarm"]


def test_a_passage_that_says_where_is_drawn_there(tmp_path: Path) -> None:
    checked = worked(tmp_path, "wedge").checked
    assert checked is not None
    chart = drawn(checked)
    rows = [(row.ahead, [thing.name for thing in row.things if thing.what == "st"]) for row in chart.rows.rows]
    narrowed = [(ahead, row) for ahead, row in rows if "sc2tog" in row]
    assert len(narrowed) == 3
    # one edge: at the beginning of rows that go one way, at the end of those that go back
    assert {(ahead, row.index("sc2tog") == 0) for ahead, row in narrowed} in (
        {(1, True), (-1, False)},
        {(1, False), (-1, True)},
    )
