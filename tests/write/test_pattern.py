import io
import re
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.sizes import Band, Cell
from gradegen.findings import Rule, Severity
from gradegen.write.editions.edition import Edition
from gradegen.write.page.proof import prove_print
from gradegen.write.pattern import file_name, pattern_html, write_pattern
from gradegen.write.words.marks import without_marks

WRONG = Rule("stated-count-wrong", Severity.ERROR, "arithmetic", "a count that is not so")
LIST = re.compile(r"\d \(\d+, \d")


def text_of(path: Path) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(path.read_bytes())).pages)


def words_of(html: str) -> str:
    body = html[html.index("<body") :]
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", " ", body)).replace("\N{NO-BREAK SPACE}", " ")


def test_a_document_is_written(wrap: Checked, tmp_path: Path) -> None:
    paths, findings = write_pattern(wrap, Edition(tmp_path / "new folder"))
    assert findings == ()
    assert paths == (tmp_path / "new folder" / "sample.pdf",)
    assert "Tidewrack Wrap" in text_of(paths[0])


def test_errors_are_refused_but_for_a_draft(wrap: Checked, tmp_path: Path, samples: Any) -> None:
    wrong = replace(wrap, findings=(WRONG.at(samples["somewhere"](), "The count differs.", size="M", row="Rnd 3"),))
    paths, findings = write_pattern(wrong, Edition(tmp_path))
    assert paths == ()
    assert [(finding.rule, finding.follows) for finding in findings] == [("print-refused", "stated-count-wrong")]
    assert list(tmp_path.iterdir()) == []
    paths, findings = write_pattern(wrong, Edition(tmp_path, draft=True))
    assert [path.name for path in paths] == ["sample-draft.pdf"]
    text = text_of(paths[0])
    assert text.count("DRAFT") == len(PdfReader(paths[0]).pages)
    assert "stated-count-wrong" in text


def test_no_draft_mark_elsewhere(wrap: Checked) -> None:
    assert "DRAFT" not in words_of(pattern_html(wrap, Edition(Path("out"))))


def test_a_size_nobody_has(wrap: Checked, tmp_path: Path) -> None:
    paths, (finding,) = write_pattern(wrap, Edition(tmp_path, "XXL"))
    assert paths == ()
    assert finding.rule == "print-size-unknown"
    assert "XS, S, M" in str(finding.hint)


def test_a_folder_that_cannot_be_made(wrap: Checked, tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file")
    paths, (finding,) = write_pattern(wrap, Edition(tmp_path / "taken"))
    assert paths == ()
    assert finding.rule == "print-not-written"


def test_a_print_that_differs_is_not_written(wrap: Checked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from gradegen.write import pattern

    honest = pattern.pattern_html
    monkeypatch.setattr(pattern, "pattern_html", lambda *given: honest(*given).replace("<td>103</td>", "<td>104</td>"))
    paths, findings = write_pattern(wrap, Edition(tmp_path, "M"))
    assert paths == ()
    assert [finding.rule for finding in findings] == ["print-differs"]
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("edition", "name"),
    [
        (Edition(Path()), "sample.pdf"),
        (Edition(Path(), "2/3XL", "letter"), "sample-2-3XL-letter.pdf"),
        (Edition(Path(), "M", draft=True), "sample-M-draft.pdf"),
    ],
)
def test_file_names(wrap: Checked, edition: Edition, name: str) -> None:
    assert file_name(wrap, edition) == name


@pytest.mark.parametrize("name", ["wrap", "hat"])
def test_same_bytes_wherever_the_pattern_lies(name: str, tmp_path: Path, request: pytest.FixtureRequest) -> None:
    checked = request.getfixturevalue(name)
    written = []
    for folder in ("one", "two, with a longer name"):
        (tmp_path / folder).mkdir()
        moved = replace(checked, pattern=replace(checked.pattern, file=str(tmp_path / folder / "x.yaml")))
        (path,), _ = write_pattern(moved, Edition(tmp_path / folder))
        written.append(path.read_bytes())
    assert written[0] == written[1]


# ---- one size's pages ------------------------------------------------------------------------------------------------


def other_body(size: GradedSize) -> GradedSize:
    """The same size with every value changed."""
    measures = {
        name: replace(measure, target=measure.target + 7, finished=(measure.finished or measure.target) + 7)
        for name, measure in size.measures.items()
    }
    counts = {name: replace(count, n=count.n + 77, chain=count.chain + 77) for name, count in size.counts.items()}
    cell = Cell(Band(Fraction(71), Fraction(72)), Band(Fraction(171), Fraction(172)), size.counts["band"].place)
    return replace(
        size, measures=measures, counts=counts, to_fit=cell, ease=Fraction(9), fit="loose fit", wearer="baby"
    )


def with_other_values(checked: Checked, kept: str) -> Checked:
    sizes = tuple(size if size.name == kept else other_body(size) for size in checked.sizes)
    worked = {
        name: rows if name == kept else tuple(row._replace(made=1, status="not-checked") for row in rows)
        for name, rows in checked.worked.items()
    }
    return replace(checked, sizes=sizes, worked=worked)


def test_nothing_of_other_sizes_stands_on_a_page(wrap: Checked, tmp_path: Path) -> None:
    (mine,), _ = write_pattern(wrap, Edition(tmp_path / "a", "M"))
    (other,), _ = write_pattern(with_other_values(wrap, "M"), Edition(tmp_path / "b", "M"))
    assert text_of(mine) == text_of(other)
    assert mine.read_bytes() == other.read_bytes()


@pytest.mark.parametrize("size", ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"])
def test_every_size_alone(wrap: Checked, size: str) -> None:
    edition = Edition(Path("out"), size)
    page = pattern_html(wrap, edition)
    assert pattern_html(with_other_values(wrap, size), edition) == page
    assert not LIST.search(words_of(page))


@pytest.mark.parametrize("size", ["NB", "C", "XL"])
def test_no_list_and_no_other_size_in_a_hat(hat: Checked, size: str) -> None:
    words = words_of(pattern_html(hat, Edition(Path("out"), size)))
    assert not LIST.search(words)
    assert not re.search(r"\bonly[):]", words)
    assert not re.search(r"\bsizes\b", words.replace("Invented body sizes", ""), re.IGNORECASE)


def test_lists_stand_among_many_sizes(wrap: Checked) -> None:
    words = words_of(pattern_html(wrap, Edition(Path("out"))))
    assert "Ch104(116,132,144,156)(168,184,196,208)" in re.sub(r"\s|&nbsp;", "", without_marks(words))
    assert "Sizes ● XS (△ S, ■ M, ◇ L, ▼ 1X) (○ 2X, ▲ 3X, □ 4X, ◆ 5X)" in words


def test_what_a_designer_writes_cannot_become_markup(wrap: Checked, samples: Any) -> None:
    text = samples["text"]
    nasty = '<img src="file:///etc/passwd"> & "quoted" \'too\' {{ 7 * 7 }} {% for x in y %}'
    piece = wrap.pattern.pieces[0]
    pattern = replace(
        wrap.pattern,
        title=text(nasty),
        notes=(text(nasty),),
        licence=text(nasty),
        pieces=(replace(piece, name=text(nasty)),),
    )
    page = pattern_html(replace(wrap, pattern=pattern), Edition(Path("out")))
    assert "<img" not in page
    assert page.count("&lt;img") >= 5
    assert "{{ 7 * 7 }}" in page


@pytest.mark.parametrize("sizes", [1, 12])
def test_any_number_of_sizes(samples: Any, sizes: int, tmp_path: Path) -> None:
    checked = samples["wrap"]([f"S{at}" for at in range(1, sizes + 1)])
    paths, findings = write_pattern(checked, Edition(tmp_path))
    assert findings == ()
    assert prove_print(paths[0].read_bytes(), checked, Edition(tmp_path)) == ()


def test_little_is_enough(wrap: Checked, tmp_path: Path) -> None:
    """A pattern without any of the parts that may be left out still prints."""
    nothing: dict[str, Any] = dict.fromkeys(("version", "about", "designer", "level", "rounding", "licence"))
    nothing |= dict.fromkeys(("yarns", "notions", "definitions", "notes", "finishing", "cautions", "pieces"), ())
    bare = replace(wrap.pattern, **nothing, gauges={}, measures={})
    checked = replace(wrap, pattern=bare, worked={})
    paths, findings = write_pattern(checked, Edition(tmp_path))
    assert findings == ()
    assert "Tidewrack Wrap" in text_of(paths[0])
