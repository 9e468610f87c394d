"""Every entry of shared/stitches.yaml, and the look-ups by name."""

from __future__ import annotations

import pytest

from gradegen.trade.sources import TRUST_MARKS
from gradegen.trade.stitches import Stitch, find_stitch, longest_stitch, stitches


@pytest.mark.parametrize("stitch", stitches().values(), ids=lambda stitch: stitch.id)
def test_every_entry_is_whole(stitch: Stitch) -> None:
    assert stitch.takes >= 0
    assert set(stitch.makes) <= set(stitches()), "makes only stitches of the file"
    assert stitch.base is None or stitch.base in stitches()
    assert stitch.behind is None or stitches()[stitch.behind].behind == stitch.id
    assert stitch.glyph is None or stitch.chart
    assert stitch.trust in TRUST_MARKS
    assert stitch.source.title != "not known"
    assert stitch.source.publisher != "not known"
    assert all(stitch.names[terms] and all(stitch.names[terms]) for terms in ("US", "UK"))
    assert not stitch.varies or stitch.usual, "a stitch every pattern must explain shows its commonest making"
    assert all(number >= 1 for number in stitch.chains)


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("stitch", stitches().values(), ids=lambda stitch: stitch.id)
def test_every_name_of_every_stitch_finds_it(stitch: Stitch, terms: str) -> None:
    for name in stitch.names[terms]:
        assert find_stitch(name, terms) is stitch, name
        assert find_stitch(name.upper(), terms) is stitch, name
        assert find_stitch(name + "s", terms) is stitch or name.endswith("s"), name


def test_no_two_stitches_share_a_name_in_one_vocabulary() -> None:
    for vocabulary in ("US", "UK", "booklet"):
        owner: dict[str, str] = {}
        for stitch in stitches().values():
            for name in stitch.names[vocabulary]:
                assert owner.setdefault(name.casefold(), stitch.id) == stitch.id, (vocabulary, name)


def test_what_a_stitch_makes_counts_unless_it_is_a_chain() -> None:
    for stitch in stitches().values():
        assert all(stitches()[made].counts or made in ("ch", "sl st") for made in stitch.makes)


SPELLED = """
s c=sc; d c=dc; s d c=hdc; h d c=hdc; tr c=tr; d tr=dtr; d tr c=dtr; tr tr=trtr; sl st=sl st; ss=sl st; Sc=sc; S.C.=sc;
dcs=dc; s cs=sc; single crochets=sc; double crochets=dc; half double crochet=hdc; slip stitches=sl st;
treble=tr; trbl=tr; fpdc=FPdc; FP dc=FPdc; FP-dc=FPdc; BPHDC=BPhdc;
front post double crochet=FPdc; sc 2 tog=sc2tog; dc3tog=dc3tog;
dc dec=dc dec; V-sts=V-st; v st=V-st; 3-dc cluster=3-dc cluster; 3-dc cl=3-dc cluster; cl=cluster; sc sts=sc; htr=hdc;
crab stitch=reverse sc; fsc=fsc; magic circle=magic ring; extended dc=edc
"""
UK_SPELLED = """
dc=sc; htr=hdc; tr=dc; dtr=tr; trtr=dtr; d tr=tr; double crochet=sc; FPtr=FPdc; tr2tog=dc2tog; fdc=fsc; sc=sc; hdc=hdc;
dc inc=sc inc; s c=sc
"""


def _pairs(text: str) -> list[list[str]]:
    return [pair.strip().split("=") for pair in text.split(";")]


@pytest.mark.parametrize(("words", "id_"), _pairs(SPELLED))
def test_us_and_booklet_spellings(words: str, id_: str) -> None:
    found = find_stitch(words, "US")
    assert found is not None
    assert found.id == id_


@pytest.mark.parametrize(("words", "id_"), _pairs(UK_SPELLED))
def test_uk_spellings(words: str, id_: str) -> None:
    found = find_stitch(words, "UK")
    assert found is not None
    assert found.id == id_


@pytest.mark.parametrize("words", ["", "st", "sts", "sp", "loop", "next", "3 dc", "sc in", "fans in", "s", ".", "ch-2"])
def test_what_is_no_stitch_is_none(words: str) -> None:
    assert find_stitch(words, "US") is None


@pytest.mark.parametrize(
    ("text", "id_", "used"),
    [
        ("d c in next", "dc", 2),
        ("d c", "dc", 2),
        ("sl st in next", "sl st", 2),
        ("s c , ch 3", "sc", 2),
        ("half double crochet 2 stitches together twice", "hdc2tog", 6),
        ("dc dec over", "dc dec", 2),
        ("dc , ch 1", "dc", 1),
        ("V - st in", "V-st", 3),
        ("3 - dc cluster in", "3-dc cluster", 4),
        ("3-dc cluster in", "3-dc cluster", 2),
        ("sc2tog twice", "sc2tog", 1),
        ("sc ) 6", "sc", 1),
    ],
)
def test_the_longest_name_at_the_start_wins(text: str, id_: str, used: int) -> None:
    found = longest_stitch(text.split(), "US")
    assert found is not None
    assert (found[0].id, found[1]) == (id_, used)


@pytest.mark.parametrize("text", ["in next sc", "3 dc in next", "", "* sc", "the sc"])
def test_words_that_start_with_no_stitch(text: str) -> None:
    assert longest_stitch(text.split(), "US") is None


def test_post_stitches_know_their_other_side_and_what_they_answer_to() -> None:
    front = stitches()["FPdc"]
    assert (front.behind, front.base, front.post) == ("BPdc", "dc", "front")
    assert stitches()["FPdc2tog"].base == "dc"


def test_foundation_stitches_bring_their_own_chain() -> None:
    made = stitches()["fsc"]
    assert made.own_chain
    assert made.takes == 0
    assert made.makes == ("sc",)
