from dataclasses import replace
from fractions import Fraction
from typing import Any

from gradegen.design.checked import Checked
from gradegen.design.formula import PerSize
from gradegen.design.pattern import Notion, YarnStated
from gradegen.design.rows import Number
from gradegen.write.view.materials import gauge_entries, material_entries
from gradegen.write.view.whole import Entry
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style


def printing(checked: Checked, *names: str) -> Printing:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


def lines(entry: Entry) -> list[str]:
    return ["".join(part.text for part in line).replace("\N{NO-BREAK SPACE}", " ") for line in entry.lines]


def test_yarn_hook_and_notions(wrap: Checked) -> None:
    yarn, hook, notions = material_entries(wrap, printing(wrap))
    assert (yarn.name, hook.name, notions.name) == ("Yarn", "Hook", "Notions")
    # category 4 is called medium, and 6 mm is US J-10: Craft Yarn Council charts; 1 yd = 0.9144 m, 1 oz = 28.35 g
    assert lines(yarn)[:2] == ["Medium weight (4), wool, slate", "Skeins of 200 yd (183 m), 100 g (3.5 oz)"]
    assert lines(hook) == ["6 mm (US J-10), or the size that gives you the gauge."]
    assert lines(notions) == ["Tapestry needle", "Stitch markers: 2"]


def test_the_sample_belongs_to_its_size(wrap: Checked) -> None:
    assert "The sample in size M used 168 g (5.9 oz), about 336 yd (307 m)." in lines(
        material_entries(wrap, printing(wrap, "M"))[0]
    )
    assert len(lines(material_entries(wrap, printing(wrap, "L"))[0])) == 2


def test_metric_skeins_come_first_where_written_so(wrap: Checked, samples: Any) -> None:
    yarn = replace(wrap.pattern.yarns[0], skein_length=samples["amount"](183, "m"), sample_used=None)
    metric = replace(wrap, pattern=replace(wrap.pattern, yarns=(yarn,)))
    assert "183 m (200 yd)" in lines(material_entries(metric, printing(metric))[0])[1]


def test_several_yarns_have_letters(wrap: Checked) -> None:
    first = wrap.pattern.yarns[0]
    two = replace(wrap, pattern=replace(wrap.pattern, yarns=(first, replace(first, letter="B"))))
    assert [entry.name for entry in material_entries(two, printing(two))][:2] == ["Yarn A", "Yarn B"]


def test_buttons_by_size(wrap: Checked, samples: Any) -> None:
    number = Number((5, 5, 6, 6, 6, 7, 7, 7, 8), place=samples["somewhere"]())
    some = replace(wrap, pattern=replace(wrap.pattern, notions=(Notion(samples["text"]("buttons"), number),)))
    assert lines(material_entries(some, printing(some))[-1]) == ["Buttons: 5 (5, 6, 6, 6) (7, 7, 7, 8)"]
    assert lines(material_entries(some, printing(some, "5X"))[-1]) == ["Buttons: 8"]


def test_gauge_in_both_states(wrap: Checked) -> None:
    (gauge,) = gauge_entries(wrap, printing(wrap))
    assert lines(gauge) == [
        "13 sts and 7 rows = 4 in (10 cm) in pattern, blocked.",
        "Before blocking: 13½ sts and 7 rows.",
    ]


def test_gauge_by_repeats(wrap: Checked) -> None:
    gauge = replace(
        wrap.pattern.gauges["arches"], stitches=None, repeats=Fraction(5), repeat_of=4, rows=None, before_stitches=None,
        before_rows=None, note=None, state=None,
    )  # fmt: skip
    repeats = replace(wrap, pattern=replace(wrap.pattern, gauges={"arches": gauge}))
    assert lines(gauge_entries(repeats, printing(repeats))[0]) == ["5 repeats of 4 sts = 4 in (10 cm)."]


def test_amounts_as_stated(wrap: Checked, samples: Any) -> None:
    place = samples["somewhere"]()
    each = tuple(samples["amount"](number, None) for number in (2, 2, 2, 3, 3, 3, 3, 4, 4))
    stated = YarnStated(PerSize(each, place), samples["amount"](360, "yd"), place=place)
    yarn = replace(wrap.pattern.yarns[0], stated=stated)
    told = replace(wrap, pattern=replace(wrap.pattern, yarns=(yarn,)))
    assert "You need 2 (2, 2, 3, 3) (3, 3, 4, 4) skeins, 360 yd" in lines(material_entries(told, printing(told))[0])
    assert "You need 4 skeins, 360 yd" in lines(material_entries(told, printing(told, "5X"))[0])
