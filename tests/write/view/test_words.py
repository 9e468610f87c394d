from dataclasses import replace

import pytest

from gradegen.design.checked import Checked
from gradegen.write.view.words import special_stitches, terms_sentences, used_abbreviations


def short_forms(checked: Checked, *texts: str) -> dict[str, str]:
    return {form.short: form.means for form in used_abbreviations(texts, checked.pattern)}


def test_only_what_is_used(wrap: Checked) -> None:
    found = short_forms(wrap, "Ch 1, sc in each st across, sk 2 sts, sl st in first sc.")
    # meanings as in the Craft Yarn Council's list of abbreviations
    assert found == {"ch": "chain", "sc": "single crochet", "sk": "skip", "sl st": "slip stitch", "st": "stitch"}


def test_numbered_stitches_and_chain_spaces(wrap: Checked) -> None:
    found = short_forms(wrap, "Sc2tog over next 2 sts, dc in next ch-1 sp.")
    assert {"sc2tog", "dc", "ch-", "sp"} <= set(found)
    assert "2" not in "".join(found).replace("sc2tog", "")


@pytest.mark.parametrize("text", ["Work a single crochet.", "3rd ch, 2nd st", "the inch, and more", "Inc: 2 sc"])
def test_nothing_is_invented(wrap: Checked, text: str) -> None:
    assert set(short_forms(wrap, text)) <= {"ch", "st", "inc", "sc"}


def test_own_stitches_are_explained_elsewhere(wrap: Checked) -> None:
    assert "fan" not in short_forms(wrap, "Little fan in next st, 6 fans.")
    (fan,) = special_stitches(wrap.pattern)
    assert fan.name == "Little fan"
    assert "".join(part.text for part in fan.lines[0]).endswith("indicated.")


def test_in_alphabetical_order(wrap: Checked) -> None:
    found = list(short_forms(wrap, "Tr, sc, BLO, ch, RS, dc."))
    assert found == sorted(found, key=str.casefold)


def terms(checked: Checked, *texts: str) -> str:
    used = used_abbreviations(texts, checked.pattern)
    return "".join(part.text for part in terms_sentences(checked.pattern, used)[0]).replace("\N{NO-BREAK SPACE}", " ")


def test_the_other_terms(wrap: Checked) -> None:
    # US single crochet is UK double crochet, US double crochet is UK treble: Craft Yarn Council
    said = terms(wrap, "Sc in next st, dc in next st.")
    assert said == "Written in US crochet terms. In UK terms, dc is tr, sc is dc."


def test_uk_patterns(wrap: Checked) -> None:
    british = replace(wrap, pattern=replace(wrap.pattern, terms="UK"))
    found = short_forms(british, "Dc in next st, miss 1, htr in next st.")
    assert found["dc"] == "double crochet"
    assert found["htr"] == "half treble"
    assert terms(british, "Dc in next st.") == "Written in UK crochet terms. In US terms, dc is sc."


def test_a_page_of_chains_alone(wrap: Checked) -> None:
    assert terms(wrap, "Ch 4.") == "Written in US crochet terms."
