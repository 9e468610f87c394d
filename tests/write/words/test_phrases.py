import re
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.write.words.marks import without_marks
from gradegen.write.words.phrases import Phrase, Printing, phrase, plain, sentence
from gradegen.write.words.print_numbers import length_style


def printing(checked: Checked, *names: str) -> Printing:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


def words(said: Phrase) -> str:
    return "".join(part.text for part in said).replace("\N{NO-BREAK SPACE}", " ")


def test_a_sum_in_every_size(wrap: Checked, samples: Any) -> None:
    said = phrase(samples["text"]("Ch {band} loosely."), printing(wrap))
    counts = [size.counts["band"].n for size in wrap.sizes]
    assert (
        without_marks(words(said))
        == f"Ch {counts[0]} ({', '.join(map(str, counts[1:5]))}) ({', '.join(map(str, counts[5:]))}) loosely."
    )


def test_each_group_is_whole(wrap: Checked, samples: Any) -> None:
    said = phrase(samples["text"]("Ch {band} loosely."), printing(wrap))
    groups = re.findall(r"\([^()]*\)", words(said))
    assert len(groups) == 2
    assert all(" " not in part.text for part in said if part.look == "whole")


def test_one_size_alone(wrap: Checked, samples: Any) -> None:
    said = phrase(samples["text"]("Ch {band}; in each of 2 (2, 2, 2, 4) (4, 4, 6, 6) sts."), printing(wrap, "1X"))
    assert words(said) == f"Ch {wrap.sizes[4].counts['band'].n}; in each of 4 sts."


def test_a_measure_in_both_units(wrap: Checked, samples: Any) -> None:
    text = samples["text"]("Pin it to {depth}.")
    assert words(phrase(text, printing(wrap, "XS"))) == "Pin it to 10¾ in (27.5 cm)."
    assert " in / " in words(phrase(text, printing(wrap)))


def test_a_range_from_list_to_list(wrap: Checked, samples: Any) -> None:
    text = samples["text"]("Rnds {band + 1}-{band + 4}: sc.")
    assert " to " in words(phrase(text, printing(wrap)))
    n = wrap.sizes[0].counts["band"].n
    assert words(phrase(text, printing(wrap, "XS"))) == f"Rnds {n + 1}–{n + 4}: sc."


def test_what_cannot_be_worked_out_stays(wrap: Checked, samples: Any) -> None:
    assert words(phrase(samples["text"]("Ch {nobody}."), printing(wrap))) == "Ch {nobody}."


def test_a_list_of_a_wrong_length_stays(wrap: Checked, samples: Any) -> None:
    assert words(phrase(samples["text"]("Ch 2 (3, 4)."), printing(wrap))) == "Ch 2 (3, 4)."


def test_the_closing_count_is_marked(wrap: Checked, samples: Any) -> None:
    text = samples["text"]("Sc around. (24 sc)")
    said = sentence(text.text, text.lists, printing(wrap), wrap.sizes, count_from=11)
    assert [part.text for part in said if part.look.startswith("count")] == ["(24\N{NO-BREAK SPACE}sc)"]


@pytest.mark.parametrize("text", ["<b>bold</b> & {x}", "ch-1 sp", "", "a - b"])
def test_plain_text_keeps_its_words(text: str) -> None:
    assert words(plain(text)).replace("–", "-") == text


def test_a_hyphened_word_is_whole() -> None:
    assert [part.text for part in plain("in next ch-1 sp") if part.look == "whole"] == ["ch-1"]
