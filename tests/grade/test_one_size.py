from pathlib import Path

import pytest

from gradegen.grade.one_size import numbers_of_one
from gradegen.pipeline import grade_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"


@pytest.mark.parametrize("name", ["bollard-hat", "gunwale-pullover", "skerrywick-wrap"])
def test_a_size_alone_comes_to_the_counts_it_has_among_the_others(name: str) -> None:
    checked = grade_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    for size in checked.sizes[::4]:
        alone = numbers_of_one(checked.pattern, checked.table, size.index)
        assert alone.keys() == size.numbers().keys()
        measured = [rule.name for rule in checked.pattern.counts.values() if rule.across or rule.along]
        assert [alone[each] for each in measured] == [size.numbers()[each] for each in measured]


def test_no_such_size() -> None:
    checked = grade_file(PATTERNS / "bollard-hat.yaml").checked
    assert checked is not None
    assert numbers_of_one(checked.pattern, checked.table, 99) == {}
