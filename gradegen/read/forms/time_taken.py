"""How long a piece took, as people write it: `2 h 30`, `12.5 hours`, `150 min`, `2:30`."""

from __future__ import annotations

import re
from fractions import Fraction

from gradegen.numbers.exact import decimal_text
from gradegen.read.forms.amounts import Bounds, Reading
from gradegen.read.forms.written_numbers import NUMBER, number_readings, tidy

BOUNDS = Bounds(Fraction(5), Fraction(3000 * 60))
_ABOUT = re.compile(r"^(?:~|≈|ca?\.?|about|around|roughly|approx(?:\.|imately)?)\s*(?=[\d½¼¾])", re.IGNORECASE)
_HOURS = r"(?:h|hs|hr|hrs|hour|hours|std)\.?"
_MINUTES = r"(?:m|mn|min|mins|minute|minutes)\.?"
_LONG = re.compile(
    rf"(?:(?P<hours>{NUMBER})\s*{_HOURS})?(?:\s*(?:,|and|&|\+)?\s*(?P<minutes>{NUMBER})\s*(?P<word>{_MINUTES})?)?",
    re.IGNORECASE,
)
_CLOCK = re.compile(r"(?P<hours>\d{1,4}):(?P<minutes>[0-5]\d)(?:\s*(?:h|hrs?|hours?))?", re.IGNORECASE)
_EITHER = re.compile(r"(?P<hours>\d{1,3})[.,](?P<minutes>[0-5]\d)")
_DAYS = re.compile(rf"(?P<number>{NUMBER})\s*(?P<word>days?|weeks?|months?|evenings?|weekends?)\b.*", re.IGNORECASE)


def read_time(text: str) -> Reading:
    """Minutes; a bare number is hours. `2.30` may be 2 h 30 or 2.3 hours, so it is asked about."""
    bare = _ABOUT.sub("", tidy(text))
    if found := _CLOCK.fullmatch(bare):
        return _within(Fraction(int(found["hours"]) * 60 + int(found["minutes"])))
    if found := _EITHER.fullmatch(bare):
        decimal = decimal_text(Fraction(f"{found['hours']}.{found['minutes']}"))
        return Reading(either=(f"{int(found['hours'])} h {found['minutes']} min", f"{decimal} hours"))
    if _DAYS.fullmatch(bare):
        return Reading(why="how many hours of work that was is not said")
    found = _LONG.fullmatch(bare)
    if found is None or not bare:
        return Reading(why="it is no time")
    return _summed(found)


def _summed(found: re.Match[str]) -> Reading:
    hours = number_readings(found["hours"]) if found["hours"] else (Fraction(0),)
    minutes = number_readings(found["minutes"]) if found["minutes"] else (Fraction(0),)
    per = 60 if found["minutes"] and not found["word"] and not found["hours"] else 1  # a bare number is hours
    if found["hours"] and found["minutes"] and minutes and minutes[0] >= 60:
        return Reading(why="more than 59 minutes stand beside its hours")
    likely = [total for hour in hours for minute in minutes if (total := hour * 60 + minute * per) in BOUNDS]
    if len(likely) > 1:
        return Reading(either=tuple(f"{decimal_text(total / 60)} hours" for total in likely))
    if likely:
        return Reading(likely[0])
    return Reading(why="no piece takes so long or so short a time" if hours and minutes else "it is no time")


def _within(minutes: Fraction) -> Reading:
    return Reading(minutes) if minutes in BOUNDS else Reading(why="no piece takes so long or so short a time")
