from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.read.forms.time_taken import read_time


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("2 h 30", 150),
        ("2h30m", 150),
        ("2 hrs 30 mins", 150),
        ("2 hours and 30 minutes", 150),
        ("150 min", 150),
        ("12:30", 750),
        ("2.5", 150),
        ("2,5 h", 150),
        ("2.25 h", 135),
        ("14", 840),
        ("about 10h", 600),
        ("½ h", 30),
        ("1 1/2 hours", 90),
        ("1,200 min", 1200),
    ],
)
def test_times(text: str, minutes: int) -> None:
    assert read_time(text).value == minutes


@pytest.mark.parametrize(
    ("text", "either"), [("2.30", ("2 h 30 min", "2.3 hours")), ("12,50", ("12 h 50 min", "12.5 hours"))]
)
def test_hours_with_two_decimals_are_asked_about(text: str, either: tuple[str, str]) -> None:
    assert read_time(text).either == either


@pytest.mark.parametrize(
    "text", ["", "3 days", "2 h 75", "blue", "2 and 3", "0", "100000 h", "2:75", "2 weeks of evenings"]
)
def test_no_times(text: str) -> None:
    read = read_time(text)
    assert read.value is None
    assert read.why


@settings(derandomize=True, max_examples=200)
@given(st.integers(1, 400), st.integers(0, 59))
def test_hours_and_minutes_come_back(hours: int, minutes: int) -> None:
    total = Fraction(hours * 60 + minutes)
    for text in (
        f"{hours} h {minutes}",
        f"{hours}h{minutes:02d}min",
        f"{hours}:{minutes:02d}",
        f"{hours * 60 + minutes} min",
    ):
        assert read_time(text).value == total


@settings(derandomize=True, max_examples=300)
@given(st.text(alphabet="0123456789.,:½ hmindays", max_size=20))
def test_anything_is_read_without_a_fault(text: str) -> None:
    read = read_time(text)
    assert (read.value is not None) + bool(read.either) + bool(read.why) == 1
