"""The whole page as HTML, held against files that a person can read.

To write them anew after a change that is meant: REWRITE=1 .venv/bin/python -m pytest tests/write/page/test_document.py
"""

import os
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.write.editions.edition import Edition
from gradegen.write.page.document import document_view
from gradegen.write.page.html import document_html
from gradegen.write.pattern import pattern_html

GOLDEN = Path(__file__).parent / "golden"
CASES = {
    "wrap-all-sizes": ("wrap", Edition(Path("out"))),
    "wrap-M": ("wrap", Edition(Path("out"), "M", "letter")),
    "hat-all-sizes": ("hat", Edition(Path("out"), draft=True)),
    "hat-NB": ("hat", Edition(Path("out"), "NB")),
}


def body(html: str) -> str:
    """The page without its style sheet and its drawings' paths, which have tests of their own."""
    start, end = html.index("<style>"), html.index("</style>")
    lines = (html[:start] + html[end + len("</style>") :]).splitlines()
    return "\n".join(line for line in lines if line.strip() and not line.startswith("<path")) + "\n"


@pytest.mark.parametrize("case", CASES)
def test_page(case: str, request: pytest.FixtureRequest) -> None:
    name, edition = CASES[case]
    page = body(pattern_html(request.getfixturevalue(name), edition))
    file = GOLDEN / f"{case}.html"
    if os.environ.get("REWRITE"):
        file.write_text(page, encoding="utf-8")
    assert page == file.read_text(encoding="utf-8")


def test_no_golden_file_is_left_over() -> None:
    assert {file.stem for file in GOLDEN.iterdir()} == set(CASES)


def strings(value: Any) -> bool:
    if isinstance(value, tuple):
        return all(strings(each) for each in value)
    if is_dataclass(value):
        return all(strings(getattr(value, each.name)) for each in fields(value))
    return value is None or isinstance(value, str)


@pytest.mark.parametrize("name", ["wrap", "hat"])
def test_after_the_view_there_are_only_strings(name: str, request: pytest.FixtureRequest) -> None:
    assert strings(document_view(request.getfixturevalue(name), Edition(Path("out"), draft=True)))


def test_a_missing_value_is_a_mistake_and_not_a_blank(wrap: Checked) -> None:
    from jinja2 import UndefinedError

    view = document_view(wrap, Edition(Path("out")))
    with pytest.raises(UndefinedError):
        document_html(replace(view, gauge=(object(),)))  # type: ignore[arg-type]


def facts(checked: Checked, size: str | None = None) -> dict[str, str]:
    view = document_view(checked, Edition(Path("out"), size))
    return {fact.name: "".join(part.text for part in fact.lines[0]) for fact in view.facts}


def test_the_first_page_says_what_it_is(wrap: Checked) -> None:
    assert facts(wrap)["Sizes"] == "XS to 5X"
    assert facts(wrap, "M")["Size"] == "M"
    assert facts(wrap)["Terms"] == "US"


def colophon(checked: Checked, size: str | None = None) -> dict[str, str]:
    view = document_view(checked, Edition(Path("out"), size))
    return {entry.name: "".join(part.text for part in entry.lines[0]) for entry in view.colophon}


def test_what_was_proved_is_said_and_no_more(wrap: Checked) -> None:
    assert colophon(wrap)["Checked"] == "Every row was worked in every size before printing, and its count proved."
    rows = wrap.worked["M"]
    some = replace(wrap, worked={**wrap.worked, "M": (rows[0]._replace(status="not-checked"), *rows[1:])})
    assert "44 of 45 counts proved" in colophon(some)["Checked"]
    assert "4 of 5 counts proved" in colophon(some, "M")["Checked"]
    assert colophon(some, "L")["Checked"] == "Every row was worked before printing, and its count proved."
    assert "Checked" not in colophon(replace(wrap, worked={}))


@pytest.mark.parametrize(
    ("address", "link"),
    [
        ("help@example.org", "mailto:help@example.org"),
        ("https://example.org/help", "https://example.org/help"),
        ("javascript:alert(1)", ""),
        ("ask in the shop", ""),
    ],
)
def test_help_is_a_link_only_where_it_is_an_address(wrap: Checked, samples: Any, address: str, link: str) -> None:
    assert wrap.pattern.designer is not None
    designer = replace(wrap.pattern.designer, help=samples["text"](address))
    view = document_view(replace(wrap, pattern=replace(wrap.pattern, designer=designer)), Edition(Path("out")))
    (entry,) = (each for each in view.colophon if each.name == "Help")
    assert entry.lines[0][-1].link == link


def test_long_sections_are_not_set_beside_each_other(wrap: Checked, samples: Any) -> None:
    long = tuple(samples["text"]("Keep away from flames. " * 20) for _ in range(6))
    edition = Edition(Path("out"))
    assert document_view(wrap, edition).close_stands == "beside-each-other"
    changed = replace(wrap, pattern=replace(wrap.pattern, cautions=long))
    assert document_view(changed, edition).close_stands == "stacked"
