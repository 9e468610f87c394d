"""What the tests of whole texts share."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.design.worked import WorkedRow
from gradegen.pipeline import check_text


@pytest.fixture
def worked(tmp_path: Path) -> Callable[..., list[WorkedRow]]:
    """Works the rows of a plain text of one piece in one size; no error may be found in them."""

    def work(*rows: str) -> list[WorkedRow]:
        file = tmp_path / "pattern.txt"
        file.write_text("\n".join(["Harbour edging", "", "Terms: US terms", "", "Instructions", *rows, ""]), "utf-8")
        outcome = check_text(file)
        assert outcome.checked is not None
        assert not [finding for finding in outcome.findings if finding.severity == "error"]
        (found,) = outcome.checked.worked.values()
        return list(found)

    return work
