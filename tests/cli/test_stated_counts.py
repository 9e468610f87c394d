"""Every stated count of both demos raised by one: one fault, at that number, in exactly the sizes changed."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from gradegen.design.rows import Number
from gradegen.findings import Place
from gradegen.pipeline import Outcome, check_file
from gradegen.write.screen_fold import Folded, fold

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
NAMES = ("skerrywick-wrap", "bollard-hat")


def stated_numbers(demo: str) -> Iterator[tuple[Number, tuple[str, ...]]]:
    """Every stated count with the sizes that work its row."""
    checked = check_file(DEMOS / f"{demo}.yaml").checked
    assert checked is not None
    sizes = tuple(size.name for size in checked.sizes)
    for piece in checked.pattern.pieces:
        for row in piece.rows:
            yield from ((stated.number, row.sizes or sizes) for stated in row.stated)


CASES = [(demo, number, sizes) for demo in NAMES for number, sizes in stated_numbers(demo)]


def raised(text: str) -> str:
    return text[:-1] + " + 1}" if text.startswith("{") else str(int(text) + 1)


def with_raised(text: str, place: Place) -> str:
    lines = text.split("\n")
    line = lines[place.line - 1]
    start, end = place.column - 1, place.end_column - 1
    lines[place.line - 1] = line[:start] + raised(line[start:end]) + line[end:]
    return "\n".join(lines)


def checked_copy(tmp_path: Path, text: str) -> Outcome:
    (tmp_path / "bollard-hat-heads.yaml").write_text((DEMOS / "bollard-hat-heads.yaml").read_text("utf-8"), "utf-8")
    path = tmp_path / "copy.yaml"
    path.write_text(text, encoding="utf-8")
    return check_file(path)


def faults(outcome: Outcome) -> tuple[Folded, ...]:
    return fold(finding for finding in outcome.findings if finding.severity not in ("note", "warning"))


def test_there_are_counts_to_raise() -> None:
    assert len(CASES) >= 35


@pytest.mark.parametrize(("demo", "number", "sizes"), CASES, ids=lambda case: str(getattr(case, "place", case))[-20:])
def test_one_count_raised(demo: str, number: Number, sizes: tuple[str, ...], tmp_path: Path) -> None:
    text = (DEMOS / f"{demo}.yaml").read_text("utf-8")
    found = faults(checked_copy(tmp_path, with_raised(text, number.place)))
    assert len(found) == 1, [folded.first for folded in found]
    assert found[0].first.rule == "stated-count-wrong"
    assert (found[0].place.line, found[0].place.column) == (number.place.line, number.place.column)
    assert found[0].sizes == sizes


def test_each_entry_of_a_list_raised_in_turn(tmp_path: Path) -> None:
    text = (DEMOS / "skerrywick-wrap.yaml").read_text("utf-8")
    checked = check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert checked is not None
    counts = [2 * size.counts["band"].n for size in checked.sizes]
    listed = f"{counts[0]} ({', '.join(map(str, counts[1:5]))}) ({', '.join(map(str, counts[5:]))})"
    assert text.count("({2 * band} hdc)\n      Rnd 2") == 1
    text = text.replace("({2 * band} hdc)\n      Rnd 2", f"({listed} hdc)\n      Rnd 2")
    assert faults(checked_copy(tmp_path, text)) == ()
    line = next(number for number, words in enumerate(text.split("\n"), 1) if listed in words)
    for size, count in zip(checked.sizes, counts, strict=True):
        column = text.split("\n")[line - 1].index(str(count)) + 1
        place = Place("", line, column, line, column + len(str(count)))
        found = faults(checked_copy(tmp_path, with_raised(text, place)))
        assert [(one.place.line, one.place.column, one.sizes) for one in found] == [(line, column, (size.name,))]
