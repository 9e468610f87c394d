from dataclasses import replace

from gradegen.design.checked import Checked
from gradegen.write.view.cautions import caution_sentences, cautions_close
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style


def said(checked: Checked, words: str, *names: str) -> str:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    printing = Printing(checked.sizes, sizes, length_style(checked.pattern))
    return " ".join(
        "".join(part.text for part in sentence) for sentence in caution_sentences(checked.pattern, printing, [words])
    )


def test_the_designers_own_come_first(hat: Checked) -> None:
    assert said(hat, "").startswith("Keep it away from open flames.")


def test_babies_bring_their_own_cautions(hat: Checked) -> None:
    # safe infant sleep: American Academy of Pediatrics, 2022 (published summaries)
    assert "baby’s bed" in said(hat, "", "NB")
    assert "baby’s bed" not in said(hat, "", "L")
    assert "baby’s bed" in said(hat, "")


def test_the_pattern_may_say_who_it_is_for(hat: Checked) -> None:
    grown = replace(hat, pattern=replace(hat.pattern, wearer="adult"))
    assert "baby’s bed" not in said(grown, "")


def test_words_bring_cautions(wrap: Checked) -> None:
    assert "Steam" in said(wrap, "Steam it, made of acrylic.")


def test_the_last_word_is_not_ours() -> None:
    close = "".join(part.text for part in cautions_close())
    assert "qualified people" in close
    assert "law" in close
