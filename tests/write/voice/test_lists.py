import pytest

from gradegen.write.voice.lists import each_size, in_unit, number_aloud


def test_every_value_with_its_size() -> None:
    assert each_size(("XS", "S", "M"), ("135", "147", "147")) == "size XS: 135; sizes S and M: 147"


def test_one_value_for_all() -> None:
    assert each_size(("XS", "S"), ("6", "6")) == "6"


def test_a_size_that_does_not_work_it() -> None:
    assert each_size(("XS", "S"), ("-", "6")) == "size XS: not worked; size S: 6"


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("17½", "17 and a half"),
        ("¾", "three quarters"),
        ("28–30", "28 to 30"),
        ("−1½", "minus 1 and a half"),
        ("+3", "plus 3"),
    ],
)
def test_numbers(written: str, said: str) -> None:
    assert number_aloud(written) == said


def test_units() -> None:
    assert in_unit("1", "in") == "1 inch"
    assert in_unit("4", "cm") == "4 centimetres"
    assert in_unit("−½", "in") == "minus half an inch"
    assert in_unit("+¾", "in") == "plus three quarters of an inch"
