"""The forms of the demos, written once by two processes, and a hand that fills them in.

Three sizes of every demo are tried; with EVERY_SIZE=1 in the environment it is every size, which takes a minute or two.
"""

import os
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfWriter

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file, print_editions
from gradegen.write.editions.edition import Edition

ROOT = Path(__file__).resolve().parents[3]
FILES = sorted((ROOT / "shared" / "patterns").glob("*.yaml"))
DEMOS = [path.stem for path in FILES if "\npieces:" in path.read_text("utf-8")]


@cache
def read_demo(name: str) -> Checked:
    checked = check_file(ROOT / "shared" / "patterns" / f"{name}.yaml").checked
    assert checked is not None
    return checked


def sizes_tried(checked: Checked) -> list[str]:
    names = [size.name for size in checked.sizes]
    return names if os.environ.get("EVERY_SIZE") else [names[0], names[len(names) // 2], names[-1]]


@pytest.fixture(scope="session")
def demo() -> Callable[[str], Checked]:
    return read_demo


@pytest.fixture(scope="session")
def written(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Mapping[str, Path]]:
    @cache
    def write(name: str) -> Mapping[str, Path]:
        checked = read_demo(name)
        asked = Edition(tmp_path_factory.mktemp(name), is_form=True)
        done = list(print_editions(checked, asked.for_each(sizes_tried(checked)), jobs=2))
        assert [finding for one in done for finding in one.findings] == []
        return {one.edition.size or "": one.paths[0] for one in done}

    return write


@pytest.fixture(scope="session")
def fill() -> Callable[[Path, Path, Mapping[str, str]], Path]:
    def write(form: Path, to: Path, answers: Mapping[str, str]) -> Path:
        """The form filled in by pypdf and saved; a field that is not there fails."""
        writer = PdfWriter(clone_from=form)
        names = {str(widget.get_object().get("/T")) for page in writer.pages for widget in page.get("/Annots", ())}
        assert set(answers) <= names
        for page in writer.pages:
            if "/Annots" in page:
                writer.update_page_form_field_values(page, dict(answers), auto_regenerate=False)
        writer.write(to)
        return to

    return write
