"""The set of editions a shop would offer."""

from pathlib import Path

from gradegen.write.editions.edition import Edition, all_editions


def test_every_size_has_its_pages_and_its_form() -> None:
    editions = all_editions(Edition(Path("out"), with_source=True), ("S", "M", "L"), ("US", "in"))
    assert [one.size for one in editions if one.size and not one.is_form] == ["S", "M", "L"]
    forms = [one for one in editions if one.is_form]
    assert [one.size for one in forms] == ["S", "M", "L"]
    assert not any(form.with_source for form in forms)
    assert len(set(editions)) == len(editions)


def test_of_one_size_there_is_one_form() -> None:
    editions = all_editions(Edition(Path("out"), "M", style="large-print"), ("S", "M"), ("US", "in"))
    assert [(one.size, one.style) for one in editions if one.is_form] == [("M", "print")]
