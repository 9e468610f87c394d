from dataclasses import replace
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.graded import KeyEase
from gradegen.write.drawing.schematic import find_schematics
from gradegen.write.view.measures import measure_tables, size_key, size_sentences
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style


def printing(checked: Checked, *names: str) -> Printing:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


def said(checked: Checked, *names: str) -> str:
    return " ".join("".join(part.text for part in line) for line in size_sentences(checked, printing(checked, *names)))


def test_letters_follow_the_drawing(wrap: Checked) -> None:
    drawn = find_schematics(wrap, printing(wrap))
    assert drawn.letters == {"around": "A", "depth": "B"}
    assert [row.letter for row in measure_tables(wrap, printing(wrap), drawn)[0].rows] == ["", "A", "B", ""]
    assert [row.letter for row in measure_tables(wrap, printing(wrap))[0].rows] == ["", "", "", ""]


def test_body_finished_and_ease_stand_together(wrap: Checked) -> None:
    keyed = tuple(replace(size, key_eases=(KeyEase("around", "bust", Fraction(3)),)) for size in wrap.sizes)
    inches, _ = measure_tables(replace(wrap, sizes=keyed), printing(replace(wrap, sizes=keyed)))
    assert [(row.name, row.kind) for row in inches.rows] == [
        ("To fit bust", "body"), ("Around", ""), ("Ease", "ease"), ("Depth", "")
    ]  # fmt: skip
    assert inches.rows[2].cells[0] == "+3"


def test_a_table_for_each_unit(wrap: Checked) -> None:
    inches, cm = measure_tables(wrap, printing(wrap))
    assert (inches.caption, cm.caption) == ("Inches", "Centimetres")
    assert inches.columns == tuple(size.name for size in wrap.sizes)
    assert [row.name for row in inches.rows] == ["To fit bust", "Around", "Depth", "Ease"]
    assert inches.rows[0].cells[:2] == ("28–30", "32–34")
    assert inches.rows[3].cells[0] == "+3"


def test_what_is_printed_is_the_finished_measure(wrap: Checked) -> None:
    inches, _ = measure_tables(wrap, printing(wrap))
    for size, cell in zip(wrap.sizes, inches.rows[1].cells, strict=True):
        finished = size.measures["around"].finished
        assert finished is not None
        assert printing(wrap).style.rounding.inches_text(finished) == cell


def test_the_designers_unit_comes_first(wrap: Checked) -> None:
    metric = replace(wrap, pattern=replace(wrap.pattern, units="centimetres first"))
    assert [table.caption for table in measure_tables(metric, printing(metric))] == ["Centimetres", "Inches"]


def test_one_size_has_one_table(wrap: Checked) -> None:
    (table,) = measure_tables(wrap, printing(wrap, "M"))
    assert table.columns == ("Inches", "Centimetres")
    assert table.rows[1].cells == ("40½", "103")


def test_many_sizes_stand_closer(wrap: Checked, hat: Checked) -> None:
    assert measure_tables(wrap, printing(wrap))[0].density == "close"
    assert measure_tables(hat, printing(hat))[0].density == "open"


def test_the_graded_end_of_the_band_is_said(wrap: Checked) -> None:
    assert "graded for the middle of the bust given" in said(wrap)
    low = replace(wrap, pattern=replace(wrap.pattern, sizes=replace(wrap.pattern.sizes, take="low")))
    assert "low end of the bust" in said(low)


def test_the_fit_by_size(wrap: Checked) -> None:
    assert "Fit: classic fit." in said(wrap)
    mixed = replace(wrap, sizes=(replace(wrap.sizes[0], fit="loose fit"), *wrap.sizes[1:]))
    assert "loose fit in XS; classic fit in S, M" in said(mixed)
    assert "Fit: loose fit." in said(mixed, "XS")


def test_sizes_beyond_the_survey_are_marked(wrap: Checked) -> None:
    last = wrap.sizes[-1]
    assert last.to_fit is not None
    beyond = replace(wrap, sizes=(*wrap.sizes[:-1], replace(last, to_fit=replace(last.to_fit, extrapolated=True))))
    assert "Extrapolated beyond the survey: 5X." in said(beyond)
    assert "xtrapolated" not in said(beyond, "M")
    assert "extrapolated" in said(beyond, "5X")


def test_negative_ease(hat: Checked) -> None:
    inches, _ = measure_tables(hat, printing(hat))
    assert hat.sizes[0].ease == Fraction(-1)
    assert inches.rows[-1].cells[0] == "−1"


def test_the_key_has_the_shape_of_every_list(wrap: Checked) -> None:
    key = size_key(printing(wrap)).replace("\N{NO-BREAK SPACE}", "")
    assert key == "●XS (△S, ■M, ◇L, ▼1X) (○2X, ▲3X, □4X, ◆5X)"


def test_a_voice_hears_whose_ease_it_is(wrap: Checked) -> None:
    keyed = tuple(replace(size, key_eases=(KeyEase("around", "bust", Fraction(3)),)) for size in wrap.sizes)
    checked = replace(wrap, sizes=keyed)
    inches, _ = measure_tables(checked, replace(printing(checked), is_spoken=True))
    assert [row.name for row in inches.rows] == ["To fit bust", "Around", "Ease, around", "Depth"]
