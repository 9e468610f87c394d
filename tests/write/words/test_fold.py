import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.write.page.typeset import plain_again
from gradegen.write.words.fold import fold, folded, groups_of
from gradegen.write.words.unfold import LIST, unfold


@pytest.mark.parametrize(
    ("sizes", "groups"),
    [
        (1, ()),
        (2, (1,)),
        (5, (4,)),
        (6, (2, 3)),  # 84 (90, 96) (102, 108, 114): the shape the project's own brief asks for
        (9, (4, 4)),  # 1 (2, 3, 4, 5) (6, 7, 8, 9): a published style guide for several sizes (Morris)
        (10, (3, 3, 3)),
        (12, (3, 4, 4)),
        (15, (3, 3, 4, 4)),
    ],
)
def test_shape_by_number_of_sizes(sizes: int, groups: tuple[int, ...]) -> None:
    assert groups_of(sizes) == groups


@given(st.integers(2, 60))
def test_groups_hold_every_size_but_the_first(sizes: int) -> None:
    groups = groups_of(sizes)
    assert sum(groups) == sizes - 1
    assert max(groups) <= 4
    assert max(groups) - min(groups) <= 1
    assert list(groups) == sorted(groups)


def test_pieces_that_do_not_break() -> None:
    assert fold(["84", "90", "96", "102", "108", "114"]) == ("84", "(90, 96)", "(102, 108, 114)")


def test_one_value_for_all_is_printed_once() -> None:
    assert fold(["24"] * 9) == ("24",)
    assert fold(["24"]) == ("24",)


def test_a_size_that_is_not_worked() -> None:
    assert folded(["-", "2", "3"]) == "– (2, 3)"


def test_nothing() -> None:
    assert fold([]) == ()


@settings(derandomize=True)
@given(st.lists(st.integers(0, 500), min_size=1, max_size=15))
def test_taken_apart_again(numbers: list[int]) -> None:
    values = tuple(str(number) for number in numbers)
    printed = plain_again(folded(values))
    assert re.fullmatch(LIST, printed)
    assert unfold(printed, len(values)) == values


def test_a_list_of_another_length_is_refused() -> None:
    assert unfold("84(90,96)", 4) is None
