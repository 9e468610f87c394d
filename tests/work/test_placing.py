"""What sits on what: keeping the record changes nothing, and the record is what a hand would write down."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from gradegen import check_row
from gradegen.design.edge import Edge, Run
from gradegen.design.rows import Change
from gradegen.work.edge.placing import MOST_PLACES, Laid, Placed, Placing, opened
from gradegen.work.piece import piece
from gradegen.work.row.row import Outcome, work_once

OWN = Path(__file__).resolve().parents[1] / "rows" / "own.jsonl"


def size_of(edge: Edge) -> int:
    return sum(item.times * size_of(item.items) if isinstance(item, Run) else 1 for item in edge)


@pytest.fixture
def records(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Outcome, Placed | None]]:
    """Every row that is worked is worked a second time with its record kept."""
    found: list[tuple[Outcome, Placed | None]] = []

    def twice(row: Any, site: Any, before: Edge, underside: Edge = (), *, leaves: bool = False) -> Outcome:
        outcome = work_once(row, site, before, underside, leaves=leaves)
        if outcome.fault is None and outcome.unclear is None and not site.blind and size_of(before) < MOST_PLACES:
            again = work_once(row, site, before, underside, leaves=leaves, placing=Placing())
            if any(isinstance(step, Change) for step in row.steps):
                return outcome  # where loose decreases go is not said, so nothing can be placed
            assert opened(again.after) == opened(outcome.after), row.text
            assert (again.made, again.units, again.taken, again.census) == (
                outcome.made, outcome.units, outcome.taken, outcome.census,
            ), row.text  # fmt: skip
            found.append((outcome, again.placed))
        return outcome

    monkeypatch.setattr(piece, "work_once", twice)
    monkeypatch.setattr(piece.PieceWork, "_together", lambda *_: None)  # a record is kept of one size
    return found


def test_keeping_the_record_changes_nothing(records: list[tuple[Outcome, Placed | None]]) -> None:
    for line in OWN.read_text("utf-8").splitlines():
        row = json.loads(line)
        prior = row["prior"]
        made_here = prior.get("made_in_row") or prior["kind"] in ("ring", "chain both sides", "none", "row ends")
        given = None if made_here else list(prior.get("runs") or prior["sts"])
        check_row(
            row["text"], prior=given, worked=row["worked"], sizes=row["sizes"], label=row["label"], terms=row["terms"],
            notes=row["notes"], definitions=row["definitions"], applies_to=row.get("applies_to"),
        )  # fmt: skip
    kept = [placed for _, placed in records if placed is not None]
    assert len(records) > 500
    assert len(kept) > 0.9 * len(records)


def laid(text: str, prior: Any, worked: Any = "flat", **more: Any) -> tuple[Laid, ...]:
    """The record of one row in one size."""
    kept: list[Placed | None] = []

    def keep(row: Any, site: Any, before: Edge, underside: Edge = (), *, leaves: bool = False) -> Outcome:
        outcome = work_once(row, site, before, underside, leaves=leaves, placing=Placing())
        kept.append(outcome.placed)
        return outcome

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(piece, "work_once", keep)
        assert check_row(text, prior=prior, worked=worked, sizes=("M",), **more).status == "proved"
    assert kept[-1] is not None
    return tuple(one for one in kept[-1].laid if one.what not in ("run", "runs end"))


def feet(found: tuple[Laid, ...]) -> list[tuple[str, list[int]]]:
    return [(one.name, [spot.at for spot in one.into]) for one in found if one.what == "st"]


def test_shells_go_into_one_place_each() -> None:
    found = laid("*Sc in next st, sk next 2 sts, 5 dc in next st, sk next 2 sts; rep from * around, join. (12 sts)", 12,
                 "joined rounds")  # fmt: skip
    assert feet(found) == [("sc", [0]), *[("dc", [3])] * 5, ("sc", [6]), *[("dc", [9])] * 5]


def test_stitches_together_have_a_foot_in_each() -> None:
    found = laid("Ch 1, sc2tog over next 2 sts, sc in each st to last 2 sts, sc2tog over last 2 sts, turn. (6 sts)", 8)
    assert feet(found) == [("sc2tog", [0, 1]), *[("sc", [at]) for at in range(2, 6)], ("sc2tog", [6, 7])]


def test_an_increase_has_two_in_one() -> None:
    found = laid("*Sc in next st, inc in next st; rep from * around. (9 sc)", 6, "spiral")
    assert feet(found) == [("sc", [at]) for at in (0, 1, 1, 2, 3, 3, 4, 5, 5)]


def test_spaces_are_reached_over_what_lies_between() -> None:
    found = laid("*3 dc in next ch-1 sp; rep from * around, join. (9 dc)", "3 x (2 dc, ch-1 sp)", "joined rounds")
    assert feet(found) == [("dc", [at]) for at in (2, 2, 2, 5, 5, 5, 8, 8, 8)]


def test_a_counting_chain_stands_on_the_first_stitch() -> None:
    found = laid("Ch 3 (counts as dc), dc in next 4 sts, turn. (5 dc)", "5 dc")
    assert [(one.what, one.length, one.chain, [spot.at for spot in one.into]) for one in found[:3]] == [
        ("chains", 3, False, []), ("st", 0, True, [0]), ("st", 0, False, [1]),
    ]  # fmt: skip


def test_both_sides_of_a_chain_are_told_apart() -> None:
    found = laid("Ch 6, sc in 2nd ch from hook, sc in next 3 ch, 3 sc in last ch, working along other side of ch, "
                 "sc in next 3 ch, 2 sc in last ch. (12 sc)", None, "spiral")  # fmt: skip
    spots = [(spot.on, spot.at) for one in found if one.what == "st" for spot in one.into]
    assert spots == [("chain", at) for at in (1, 2, 3, 4, 5, 5, 5)] + [("other side", at) for at in (0, 1, 2, 3, 3)]


def test_loops_and_slip_stitches_are_kept() -> None:
    found = laid("Ch 1, sc in back loop only of each of next 3 sts, sl st in next 2 sts, turn.", 5)
    assert [one.loop for one in found if one.what == "st"] == ["back"] * 3
    assert [[spot.at for spot in one.into] for one in found if one.what == "slip"] == [[3], [4]]
