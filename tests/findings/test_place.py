"""Places count from 1, in characters, and every character of a text knows its own."""

from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.findings import Place, Written


def test_a_place_prints_as_editors_read_it() -> None:
    assert str(Place("hat.yaml", 3, 7, 3, 9)) == "hat.yaml:3:7"


def test_places_sort_in_reading_order() -> None:
    later, earlier = Place("f", 3, 1, 3, 2), Place("f", 2, 9, 2, 10)
    assert sorted([later, earlier]) == [earlier, later]


def test_the_end_is_one_past_the_last_character() -> None:
    written = Written.plain("Row 1: sc", "f", 4, 7)
    assert written.place(0, 3) == Place("f", 4, 7, 4, 10)
    assert written.place(7, 9) == Place("f", 4, 14, 4, 16)
    assert written.place(9, 9) == Place("f", 4, 16, 4, 16)


def test_later_lines_start_at_column_one() -> None:
    written = Written.plain("ab\ncd\n", "f", 10, 5)
    assert written.place(3, 5) == Place("f", 11, 1, 11, 3)
    assert written.place(1, 4) == Place("f", 10, 6, 11, 2)


@settings(derandomize=True, max_examples=200)
@given(st.text("ab \n", max_size=40), st.integers(0, 40), st.integers(0, 40), st.integers(0, 40))
def test_a_part_keeps_the_places_of_the_whole(text: str, first: int, second: int, spot: int) -> None:
    start, end = sorted((min(first, len(text)), min(second, len(text))))
    written = Written.plain(text, "f", 3, 4)
    part = written.part(start, end)
    assert part.text == text[start:end]
    if end > start:
        at = spot % (end - start)
        assert part.place(at, at + 1) == written.place(start + at, start + at + 1)
