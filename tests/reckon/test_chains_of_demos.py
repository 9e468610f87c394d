"""Which foundation chains each demo allows: derived from the rows, and every chain worked by hand.

`GRADEGEN_LONG=1` works every chain from 1 to 300; the short form fewer. Where a piece begins without a chain, that is
said in a sentence.
"""

from __future__ import annotations

import os
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from patterns.by_hand import read_yaml
from patterns.garments import graded, numbers, passage
from reckon.garments_by_hand import own_passage, relations_broken, stops_at

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon.multiples.chains_allowed import PieceChains, SolvedChains, chains_allowed
from gradegen.reckon.multiples.foundation import Foundation, foundations, piece_groups
from gradegen.reckon.multiples.multiples import Derived, derive_multiple
from gradegen.reckon.multiples.solved_trial import SolvedTrial
from gradegen.reckon.multiples.trial import Trial
from gradegen.write.sheets.multiples_text import multiples_text

LONG = bool(os.environ.get("GRADEGEN_LONG"))
REACH = 300 if LONG else 24
PATTERNS = Path(__file__).parents[2] / "shared" / "patterns"
CARDIGAN, FIRST = "slipway-cardigan", "XS"
PIECES = {"Back": "back", "Fronts": "front", "Sleeves": "cuff", "Button Band": None, "Buttonhole Band": None}
PASSAGES = ("back armhole", "front armhole", "front neckline", "sleeve sides", "sleeve cap")


@cache
def demo(name: str) -> Checked:
    found = check_file(PATTERNS / f"{name}.yaml").checked
    assert found is not None
    return found


def foundation_of(name: str, piece: str) -> Foundation:
    return next(one for one in foundations(demo(name).pattern) if one.pieces[0].name.text == piece)


# ---- other counts as they are ---------------------------------------------------------------------------------------


@cache
def passages_of(name: str) -> dict[str, str]:
    sizes = len(graded(name)["sizes"])
    lines = [line.strip() for line in (PATTERNS / f"{name}.yaml").read_text("utf-8").splitlines()]
    rows = {brace: next(line for line in lines if f": {{{brace}}}." in line) for brace in PASSAGES}
    return {brace: own_passage(passage(name, row).split(": ", 1)[1], 0, sizes) for brace, row in rows.items()}


@cache
def derived(piece: str) -> Derived:
    checked = demo(CARDIGAN)
    found = derive_multiple(Trial(checked.pattern, checked.sizes, 0, foundation_of(CARDIGAN, piece)).work)
    assert found is not None
    return found


def with_chain(piece: str, chains: int) -> dict[str, Any]:
    """The cardigan's file with another chain written in one piece."""
    pattern = read_yaml(f"{CARDIGAN}.yaml")
    count = PIECES[piece]
    (mine,) = [one for one in pattern["pieces"] if one["name"] == piece]
    old = f"Ch {{{count} + 1}}." if count else "Ch 7."
    assert old in mine["rows"]
    return {**pattern, "pieces": [{**mine, "rows": mine["rows"].replace(old, f"Ch {chains}.", 1)}]}


@pytest.mark.parametrize("piece", PIECES)
def test_every_chain_of_the_cardigan_by_hand(piece: str) -> None:
    counts = numbers(CARDIGAN, FIRST)
    for chains in range(1, REACH + 1):
        stop = stops_at(with_chain(piece, chains), [piece], counts, passages_of(CARDIGAN))
        assert derived(piece).allows(chains) == (stop is None), (chains, stop)


@pytest.mark.parametrize(
    ("piece", "words"),
    [
        ("Back", "any number from 10"),  # 9 sts, less 2 x 2 at the armholes, less 2 twice: 1 st is left
        ("Button Band", "any number from 2"),
        ("Buttonhole Band", "7 alone"),  # 2 sts, 2 skipped, 2 sts: no other number has its last two there
    ],
)
def test_the_cardigan_on_paper(piece: str, words: str) -> None:
    assert derived(piece).words == words


# ---- other counts worked out anew -----------------------------------------------------------------------------------


@cache
def solved(name: str) -> SolvedTrial:
    return SolvedTrial(demo(name), 0, foundation_of(name, "Yoke"))


def chains_near(name: str) -> list[int]:
    """The chains tried: all to 300, or those around the smallest that works and around the size's own."""
    if LONG:
        return list(range(1, 301))
    own = demo(name).sizes[0].counts["neck"].n
    return [*range(17, 25), *range(43, 46), *range(own - 1, own + 6)]


@cache
def works(name: str, chains: int) -> bool:
    return solved(name).work(chains).works


@pytest.mark.parametrize("name", ["gunwale-pullover", "limpet-pullover"])
def test_every_chain_of_a_yoke_by_hand(name: str) -> None:
    """The counts that follow keep every relation, and all rows on them come out just where the engine says so."""
    pattern = read_yaml(f"{name}.yaml")
    working = []
    for chains in chains_near(name):
        counts = solved(name).numbers(chains)
        stop = (
            "no counts"
            if counts is None
            else stops_at(pattern, ["Yoke", "Body", "Neckband"], counts, {"spread": "one row"})
        )
        if counts is not None:
            assert counts["neck"] == chains
            assert relations_broken(pattern, counts) == []
        assert works(name, chains) == (stop is None), (chains, stop)
        working += [chains] if stop is None else []
    assert working


def test_the_raglan_on_paper() -> None:
    """neck = 2 * back top + 2 * sleeve top, both even, sleeve top 8 or more: fours from 20. All counts tried."""
    for chains in chains_near("gunwale-pullover"):
        tops = [(back, sleeve) for back in range(2, chains, 2) for sleeve in range(8, chains, 2)]
        assert works("gunwale-pullover", chains) == any(2 * a + 2 * b == chains for a, b in tops), chains


def test_the_round_yoke_on_paper() -> None:
    """Fours, for Rnd 2 increases in every 4th; and the last round of increases at most doubles 7 for each 4."""
    yoke = demo("limpet-pullover").sizes[0].counts["yoke"].n
    for chains in chains_near("limpet-pullover"):
        fits = chains % 4 == 0 and 7 * chains // 4 <= yoke <= 14 * chains // 4
        assert works("limpet-pullover", chains) == fits, chains


# ---- what is said ---------------------------------------------------------------------------------------------------


def test_a_piece_without_a_chain_to_choose_is_said_to_have_none() -> None:
    (hat,) = chains_allowed(demo("bollard-hat"))
    assert (hat.begins, hat.foundation, hat.held, hat.solved) == ("begins in a ring", None, None, None)
    assert multiples_text((hat,)) == (
        "Hat: Hat begins in a ring, so there is no foundation chain to choose and no multiple to derive."
    )


def test_the_wrap_with_what_it_states() -> None:
    (wrap,) = chains_allowed(demo("skerrywick-wrap"))
    assert wrap.held is not None
    assert (wrap.held.multiple, wrap.held.left, wrap.held.smallest) == (3, (0,), 6)
    text = multiples_text((wrap,))
    assert "a multiple of 3, from 6 on" in text
    assert "The count band asks for a multiple of 6 plus 3." in text


def test_every_piece_of_every_demo_is_spoken_of() -> None:
    for name in ("skerrywick-wrap", "bollard-hat", CARDIGAN):
        pattern = demo(name).pattern
        found = chains_allowed(demo(name))
        assert [one.pieces for one in found] == [
            tuple(piece.name.text for piece in group) for group in piece_groups(pattern)
        ]
        assert all(one.begins or one.held for one in found)


def test_chains_that_follow_no_step_are_listed() -> None:
    assert SolvedChains((20, 24, 28), 40).words == "a multiple of 4, from 20 to 28"
    assert SolvedChains((20, 24, 28), 30).words == "a multiple of 4, from 20 as far as tried, to 30"
    assert SolvedChains((21, 24, 28), 40).words == "21, 24, 28"
    assert SolvedChains((), 40).words == "none up to 40"
    assert "7 alone" not in multiples_text((PieceChains(("Scrap",), "M", "", None, (), Derived(0, (), 8, (7,), (8,))),))


def test_one_chain_alone_is_found_however_short_it_is() -> None:
    """Everything stops at the same row but 7 chains, which lie among those tried: they are not passed over."""
    assert derived("Buttonhole Band").also == (7,)
    assert derived("Buttonhole Band").smallest == 7
