import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.findings import Place
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.page.proof import prove_print
from gradegen.write.pattern import pattern_html

ALL, ONE = Edition(Path("out")), Edition(Path("out"), "M")


def pdf_of(html: str) -> bytes:
    data, _ = pdf_bytes(html, PageFiles(Path()), Place("x", 1, 1, 1, 1))
    assert data is not None
    return data


def proved(checked: Checked, edition: Edition, change: Callable[[str], str] = lambda html: html) -> list[Any]:
    html = pattern_html(checked, edition)
    changed = change(html)
    return list(prove_print(pdf_of(changed), checked, edition))


@pytest.mark.parametrize("edition", [ALL, ONE], ids=["all sizes", "one size"])
@pytest.mark.parametrize("name", ["wrap", "hat"])
def test_what_we_print_is_proved(name: str, edition: Edition, request: pytest.FixtureRequest) -> None:
    assert proved(request.getfixturevalue(name), edition) == []


def first_row(html: str) -> int:
    return html.index('<p class="row')


def test_one_wrong_count_in_one_size(wrap: Checked) -> None:
    size = wrap.sizes[3]
    twice = str(2 * size.counts["band"].n)

    def change(html: str) -> str:
        at = html.index(twice, first_row(html))
        return html[:at] + str(int(twice) + 1) + html[at + len(twice) :]

    found = proved(wrap, ALL, change)
    assert {finding.rule for finding in found} == {"print-differs"}
    assert {finding.size for finding in found} == {size.name}
    assert {(finding.expected, finding.found) for finding in found} == {(twice, str(int(twice) + 1))}
    assert {finding.place for finding in found} == {wrap.pattern.pieces[0].rows[1].place}


def test_two_sizes_changed_over(wrap: Checked) -> None:
    one, two = (str(2 * wrap.sizes[at].counts["band"].n) for at in (2, 3))

    def change(html: str) -> str:
        head, rows = html[: first_row(html)], html[first_row(html) :]
        return head + rows.replace(one, "@", 1).replace(two, one, 1).replace("@", two, 1)

    assert {finding.size for finding in proved(wrap, ALL, change)} == {"M", "L"}


def test_a_row_left_out(wrap: Checked) -> None:
    found = proved(
        wrap, ALL, lambda html: re.sub(r'<p class="row[^>]*><b class="label">Rnd.2:.*?</p>', "", html, flags=re.S)
    )
    assert [finding.place for finding in found] == [wrap.pattern.pieces[0].rows[2].place]


def test_a_word_left_out(wrap: Checked) -> None:
    found = proved(wrap, ONE, lambda html: html.replace("other side, ", ""))
    assert [finding.place for finding in found] == [wrap.pattern.pieces[0].rows[1].place]


def test_another_measure(wrap: Checked) -> None:
    found = proved(wrap, ALL, lambda html: html.replace("<td>64</td>", "<td>65</td>"))
    assert [finding.place for finding in found] == [wrap.pattern.measures["around"].place]
    assert found[0].expected.endswith("64")
    assert found[0].found.endswith("65")


def test_a_measure_that_stands_below_its_letter(wrap: Checked) -> None:
    """Where a cell breaks its line no space is read back, be it behind the letter that points to the drawing."""
    narrow = "tbody th b { width: 30mm !important }"
    assert proved(wrap, ALL, lambda html: html.replace("</style>", f"{narrow}</style>", 1)) == []


def test_another_measure_of_one_size(wrap: Checked) -> None:
    found = proved(wrap, ONE, lambda html: html.replace("<td>103</td>", "<td>104</td>"))
    assert [finding.place for finding in found] == [wrap.pattern.measures["around"].place]


def test_a_count_that_working_does_not_make(wrap: Checked) -> None:
    """The graded count is printed, but the worked row made another number of stitches."""
    rows = wrap.worked["M"]
    other = (rows[0], rows[1]._replace(made=1), *rows[2:])
    changed = replace(wrap, worked={**wrap.worked, "M": other})
    found = proved(changed, ONE)
    assert [(finding.size, finding.expected) for finding in found] == [("M", "1")]


def test_a_sum_in_a_label_that_was_not_put_in(wrap: Checked) -> None:
    """A label in which the reader saw no sum would be printed with its braces."""
    piece = wrap.pattern.pieces[0]
    last = piece.rows[-1]
    bare = replace(last, lists=last.lists[1:])
    changed = replace(wrap.pattern, pieces=(replace(piece, rows=(*piece.rows[:-1], bare)),))
    found = proved(replace(wrap, pattern=changed), ONE)
    assert [finding.place for finding in found] == [last.place]
