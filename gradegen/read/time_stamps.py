"""Time stamps of a film as its maker notes them: `0:00 Materials`, `12:45 Rnd 3`, one a line."""

from __future__ import annotations

import re
from dataclasses import dataclass

from gradegen.findings import Finding, Rule, Severity, Written

STAMP_UNREADABLE = Rule("time-stamp-unreadable", Severity.ERROR, "file format", "A line is no time stamp.")
STAMPS_FALL = Rule("time-stamps-fall", Severity.ERROR, "arithmetic", "A time stamp is not later than the one before.")
_STAMP = re.compile(
    r"\s*(?:(?P<hours>\d{1,2}):)?(?P<minutes>\d{1,3}):(?P<seconds>[0-5]\d)\s+[-–—]?\s*(?P<words>\S.*?)\s*"
)
HINT = "Write it as 12:45 Rnd 3, one a line."


@dataclass(frozen=True, slots=True)
class Stamp:
    """A moment of the film in seconds, and what begins there."""

    seconds: int
    words: str

    @property
    def text(self) -> str:
        """`12:45`, `1:02:03`."""
        minutes, seconds = divmod(self.seconds, 60)
        hours, rest = divmod(minutes, 60)
        return f"{hours}:{rest:02d}:{seconds:02d}" if hours else f"{minutes}:{seconds:02d}"


def read_stamps(written: Written) -> tuple[tuple[Stamp, ...], tuple[Finding, ...]]:
    """The stamps in the order written; a line that is none, or that goes back in time, is a finding at its place."""
    stamps: list[Stamp] = []
    findings: list[Finding] = []
    at = 0
    for line in written.text.split("\n"):
        place = written.place(at, at + len(line)) if line.strip() else None
        at += len(line) + 1
        if place is None:
            continue
        found = _STAMP.fullmatch(line)
        if found is None:
            findings.append(STAMP_UNREADABLE.at(place, "This line is no time stamp.", hint=HINT))
            continue
        seconds = int(found["hours"] or 0) * 3600 + int(found["minutes"]) * 60 + int(found["seconds"])
        if stamps and seconds <= stamps[-1].seconds:
            findings.append(
                STAMPS_FALL.at(
                    place,
                    "This is not later than the stamp before.",
                    found=line.strip()[:20],
                    expected=f"after {stamps[-1].text}",
                )
            )
            continue
        stamps.append(Stamp(seconds, found["words"]))
    return tuple(stamps), tuple(findings)
