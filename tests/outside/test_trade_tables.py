"""The trade's tables held against published values."""

from __future__ import annotations

from fractions import Fraction

import pytest

from gradegen.trade.abbreviations import abbreviations, meaning
from gradegen.trade.cautions import cautions_for, cautions_rule
from gradegen.trade.hooks import find_hooks, hook_words, hooks_of
from gradegen.trade.levels import find_level, project_levels
from gradegen.trade.stitches import find_stitch, stitches
from gradegen.trade.terms import terms_only_in, text_in, word_in
from gradegen.trade.yarn import find_yarn_weights, weights_for_gauge, yarn_credit_line

HOOKS = "Craft Yarn Council, Crochet Hook Sizes, Standards & Guidelines booklet 2018, p. 27"
YARN = "Craft Yarn Council, Standard Yarn Weight System, 2018; Crochet World, October 2018, p. 64"
TERMS = "Craft Yarn Council, Term differences between the U.S., U.K. and Canada, 2018"
ABBREVIATIONS = "Craft Yarn Council, Crochet Abbreviations Master List, 2018 booklet, pp. 1-2"


# ---- hooks -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("mm", "us", "uk"),
    [
        ("5", "H-8", "6"),  # several printed copies agree
        ("4.5", "7", "7"),  # several printed copies agree; the one regular size with a number and no letter
        ("9", "M/N-13", "00"),  # one printed copy seen; many lists print M-13
        ("7", None, "2"),  # one printed copy seen; there is no US letter and none may be invented
    ],
)
def test_a_millimetre_size_has_these_names(mm: str, us: str | None, uk: str) -> None:
    """Source: HOOKS; UK numbers as makers print them beside the millimetres."""
    (hook,) = hooks_of(Fraction(mm), "regular")
    assert (hook.us, hook.uk) == (us, uk)
    assert (us or "mm") in hook_words(Fraction(mm))
    assert us is not None or "US" not in hook_words(Fraction(mm))


@pytest.mark.parametrize(
    ("words", "mm"),
    [
        ("US J-10", ["6"]),  # several printed copies agree
        ("US steel 7", ["1.65"]),  # one printed copy seen
        ("US 7", ["4.5", "1.65"]),  # follows from the two lists: a regular and a steel hook
        ("US B-1", ["2.25"]),  # several printed copies agree; some lists print 2.0 or 2.5 mm
        ("M-13", ["9"]),  # as many lists print M/N-13
        ("UK 12", ["2.5", "2.75"]),  # two sizes share the number
        ("6.5 mm", ["6.5"]),
        ("K-10½", ["6.5"]),
        ("I", ["5.25", "5.5"]),  # sold at both; from memory
    ],
)
def test_a_name_gives_every_hook_it_can_mean(words: str, mm: list[str]) -> None:
    """Source: HOOKS."""
    assert [hook.mm for hook in find_hooks(words)] == [Fraction(size) for size in mm]


@pytest.mark.parametrize("words", ["", "hook", "US 99", "Z", "4.4 mm", "blue", "UK 7.5"])
def test_a_name_that_no_list_prints_gives_no_hook(words: str) -> None:
    assert find_hooks(words) == ()


# ---- yarn ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stitches_in_4_inches", "categories"),
    [(13, [3, 4]), (18, [2]), (21, [1]), (16, [2, 3]), (11, [4, 5]), (8, [5, 6]), (5, [7]), (36, [])],
)
def test_a_crochet_gauge_gives_every_category_that_holds_it(stitches_in_4_inches: int, categories: list[int]) -> None:
    """Source: YARN. 36 is in category 0 only when counted in double crochets, as most printings say."""
    assert [weight.number for weight in weights_for_gauge(stitches_in_4_inches)] == categories


def test_lace_gauge_is_counted_in_double_crochets() -> None:
    """Source: YARN, the footnote to category 0."""
    assert [weight.number for weight in weights_for_gauge(36, "dc")] == [0]


def test_category_4_hooks() -> None:
    """Source: YARN."""
    (medium,) = find_yarn_weights("4")
    assert (medium.hook_mm.low, medium.hook_mm.high) == (Fraction(11, 2), Fraction(13, 2))
    assert medium.hook_us == ("I-9", "K-10 1/2")


@pytest.mark.parametrize(
    ("name", "numbers"),
    [
        ("Medium", [4]),
        ("worsted", [4]),
        ("aran", [4]),
        ("DK", [3]),
        ("baby", [1, 2]),
        ("roving", [6, 7]),
        ("sport", [2]),
    ],
)
def test_a_yarn_name_gives_every_category_it_stands_in(name: str, numbers: list[int]) -> None:
    """Source: YARN, the row of type names."""
    assert [weight.number for weight in find_yarn_weights(name)] == numbers


def test_the_publisher_is_credited_as_it_asks() -> None:
    """Source: the yarn chart's own terms of use."""
    assert yarn_credit_line() == "Source: Craft Yarn Council's www.YarnStandards.com"


# ---- terms -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("us", "uk"),
    [
        ("sc", "dc"),  # several printed copies agree
        ("hdc", "htr"),  # several printed copies agree
        ("dc", "tr"),  # several printed copies agree
        ("tr", "dtr"),  # several printed copies agree
        ("dtr", "trtr"),  # one printed copy seen
        ("sl st", "ss"),  # from memory; UK lists print ss or sl st
    ],
)
def test_us_stitches_have_these_uk_names(us: str, uk: str) -> None:
    """Source: TERMS."""
    assert stitches()[us].abbreviation("UK") == uk
    found = find_stitch(uk, "UK")
    assert found is not None
    assert found.id == us


def test_a_row_changes_terms_in_one_pass() -> None:
    """Follows from the table; a chain of replacements would make dtr of every stitch."""
    us = "sc in next 3 sts, dc in next st, tr in next st"
    uk = "dc in next 3 sts, tr in next st, dtr in next st"
    assert text_in(us, "US", "UK") == uk
    assert text_in(uk, "UK", "US") == us


def test_gauge_is_tension() -> None:
    """Source: TERMS; from memory."""
    assert word_in("gauge", "UK") == "tension"
    assert word_in("Tension", "US") == "Gauge"


@pytest.mark.parametrize(
    ("word", "terms"),
    [
        ("sc", "US"),
        ("hdc", "US"),
        ("htr", "UK"),
        ("dc", None),
        ("tr", None),
        ("ch", None),
        ("sl st", None),
        ("st", None),
    ],
)
def test_which_names_show_the_terms(word: str, terms: str | None) -> None:
    """Source: TERMS: sc or hdc, US; htr, UK; only dc, tr, ch and sl st, it cannot be told."""
    assert terms_only_in(word) == terms


# ---- abbreviations ---------------------------------------------------------------------------------------------------

PUBLISHED = """
alt approx beg bet BL BLO bo BP BPdc BPdtr BPhdc BPsc BPtr CC ch ch- ch-sp CL cont dc dc2tog dec dtr edc ehdc esc etr
FL FLO foll FP FPdc FPdtr FPhdc FPsc FPtr hdc hdc2tog inc lp m MC pat patt pc pm prev ps puff rem rep rnd RS sc sc2tog
sh sk sl_st sm sl_m sp st tbl tch t-ch tog tr tr2tog trtr WS yo yoh
"""


@pytest.mark.parametrize("short", [word.replace("_", " ") for word in PUBLISHED.split()])
def test_every_published_abbreviation_is_known(short: str) -> None:
    """Source: ABBREVIATIONS."""
    assert meaning(short, "US")
    assert meaning(short, "UK")


@pytest.mark.parametrize(
    ("short", "us"),
    [
        ("sc", "single crochet"),
        ("FPdc", "front post double crochet"),
        ("sc2tog", "single crochet 2 stitches together"),
        ("dc2tog", "double crochet 2 stitches together"),
        ("ehdc", "extended half double crochet"),
        ("trtr", "triple treble crochet"),
        ("BLO", "back loop only"),
        ("MC", "main color"),
        ("tch", "turning chain"),
        ("RS", "right side"),
    ],
)
def test_published_meanings(short: str, us: str) -> None:
    """Source: ABBREVIATIONS."""
    assert meaning(short, "US") == us


def test_capitals_as_printed() -> None:
    """Source: ABBREVIATIONS: BL, FP, MC and RS are printed in capitals."""
    assert {"BL", "FP", "MC", "RS", "WS", "CC", "BLO", "FLO", "CL", "BP", "FL"} <= set(abbreviations())


# ---- turning chains --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("stitch", "chains"), [("sc", 1), ("hdc", 2), ("dc", 3), ("tr", 4), ("dtr", 5)])
def test_turning_chains_by_stitch(stitch: str, chains: int) -> None:
    """General handbook practice; from memory."""
    assert stitches()[stitch].turning_chain == chains


@pytest.mark.parametrize(
    ("stitch", "chains", "counts"),
    [("sc", 1, False), ("dc", 3, True), ("tr", 4, True), ("hdc", 2, None), ("hdc", 1, None), ("dc", 2, None)],
)
def test_what_habit_makes_of_a_turning_chain(stitch: str, chains: int, counts: bool | None) -> None:
    """Common practice, no source: ch 3 and 4 count, ch 1 before sc does not; before hdc, and ch 2 before dc, both."""
    assert stitches()[stitch].chains[chains] is counts


# ---- levels ----------------------------------------------------------------------------------------------------------


def test_the_four_project_levels() -> None:
    """Source: Craft Yarn Council, Project Levels, 2018 booklet, p. 12; Crochet World, October 2018, p. 64."""
    assert [level.name for level in project_levels()] == ["Basic", "Easy", "Intermediate", "Complex"]
    older = find_level("experienced")
    assert older is not None
    assert older.name == "Complex"


# ---- safety ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("wearer", "words", "kinds", "expected"),
    [
        # a hooded jacket, size 4, cord in the hood: 16 CFR 1120; EN 14682
        ("child", "Thread a cord through the hood.", ["jacket"], {"drawstrings-us", "drawstrings-eu"}),
        # a jacket, size 14, neck cord: outside the US neck rule (2T-12), inside EN 14682's 7-14 rule: still warn
        ("child", "Make a neck cord 20 in long.", ["jacket"], {"drawstrings-eu"}),
        # a jacket, size 16, waist cord 4 in outside its channel: the US limit is 3 in
        ("child", "Leave 4 in of the waist cord outside the channel at each side.", ["jacket"], {"drawstrings-us"}),
        # a toy for a 2-year-old with button eyes: 16 CFR 1501
        ("child", "Sew on button eyes.", ["toy"], {"small-parts-us", "toys-us", "toys-eu"}),
        # a baby's hat: AAP, safe sleep, 2022
        ("baby", "Weave in ends.", ["hat"], {"safe-sleep"}),
        # steam on acrylic: common practice, no source
        ("adult", "Steam lightly to block the acrylic.", ["wrap"], {"heat-on-man-made-fibres"}),
    ],
)
def test_cautions_that_must_come_up(wearer: str, words: str, kinds: list[str], expected: set[str]) -> None:
    assert expected <= {caution.id for caution in cautions_for(wearer, words, kinds)}


def test_cautions_defer_to_local_rules_and_qualified_people() -> None:
    assert "pointers, not rulings" in cautions_rule()
    assert "qualified people" in cautions_rule()


def test_the_waist_cord_limit_is_in_the_words() -> None:
    """Source: 16 CFR 1120.3: at most 3 in outside the channel."""
    (cord,) = [caution for caution in cautions_for("child", "waist cord", []) if caution.id == "drawstrings-us"]
    assert "3 in" in cord.text
    assert "16 CFR 1120" in cord.rule
