"""The answers of one form: each field read as what it asks for; what can't be read is a finding and left out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.read.forms.amounts import Bounds, Reading, read_count, read_length, read_weight
from gradegen.read.forms.fields import Written
from gradegen.read.forms.time_taken import read_time

NUMBER_UNREADABLE = Rule(
    "form-number-unreadable", Severity.ERROR, "file format", "What a tester wrote in a field for a number is none."
)
NUMBER_UNCLEAR = Rule(
    "form-number-unclear", Severity.WARNING, "house", "A tester's number can be read in two ways, so it is left out."
)
TWO_UNITS_DIFFER = Rule(
    "form-units-differ", Severity.WARNING, "arithmetic", "A tester gave a measure in two units, and the two differ."
)
STITCHES = Bounds(Fraction(2), Fraction(150))  # over some inches; repeats are larger, so fewer
ROWS = Bounds(Fraction(1), Fraction(150))
REPEATS = Bounds(Fraction(1, 4), Fraction(60))
SKEINS = Bounds(Fraction(1, 10), Fraction(200))
MEASURES = Bounds(Fraction(1, 10), Fraction(300))
BODIES = Bounds(Fraction(1), Fraction(120))
HOOKS = Bounds(Fraction(1, 50), Fraction(2))
YARNS = Bounds(Fraction(36), Fraction(36 * 20_000), usual=Fraction(400))
GRAMS = Bounds(Fraction(1), Fraction(20_000), usual=Fraction(10))
OVERS = Bounds(Fraction(1, 2), Fraction(60))
_FAR = Fraction(1, 25)  # two units of one thing, each rounded to what a tape shows, differ less than this
_SHORT = 60

ALMOST = Fraction(1, 50)  # 4 in and 10 cm are the same to the trade


@dataclass(slots=True)
class Answers:
    """The fields of one form while they are read; `findings` gathers what could not be."""

    fields: Mapping[str, Written]
    size: str
    findings: list[Finding] = field(default_factory=list)

    def text(self, name: str) -> str:
        """What stands in a field; "" for one that is not there, or in which nothing was chosen."""
        found = self.fields.get(name)
        return found.text if found and found.text.strip(" -–?") else ""

    def place(self, name: str) -> Place | None:
        """Where a field stands."""
        found = self.fields.get(name)
        return found.place if found else None

    def count(
        self, name: str, what: str, bounds: Bounds, over: Fraction | None = None, own: Fraction | None = None
    ) -> Fraction | None:
        """A count, brought to the inches that the pattern counts over; `own`: those that the tester counted over."""
        read = self._read(name, lambda text: read_count(text, what, bounds))
        if read.value is None or over is None:
            return read.value
        counted = read.over or own or over
        return read.value if abs(counted / over - 1) <= ALMOST else read.value * over / counted

    def length(self, name: str, unit: str, bounds: Bounds) -> Fraction | None:
        """Inches."""
        return self._read(name, lambda text: read_length(text, unit, bounds)).value

    def grams(self, name: str) -> Fraction | None:
        """Grams."""
        return self._read(name, lambda text: read_weight(text, "g", GRAMS)).value

    def minutes(self, name: str) -> Fraction | None:
        """Minutes."""
        return self._read(name, read_time).value

    def either(self, names: Mapping[str, str], bounds: Bounds) -> Fraction | None:
        """A length that may be given in two fields, unit -> name: the first, where both agree."""
        read = {unit: self.length(name, unit, bounds) for unit, name in names.items()}
        found = {unit: length for unit, length in read.items() if length is not None}
        if len(found) < 2:
            return next(iter(found.values()), None)
        low, high = sorted(found.values())
        if high - low <= max(_FAR * high, Fraction(1, 4)):
            return next(iter(found.values()))
        name = list(names.values())[-1]
        written = self.fields[name]
        said = " and ".join(f"{self.text(names[unit])} {unit}" for unit in found)
        message = f"{said} are not the same length; the measure is left out."
        self.findings.append(TWO_UNITS_DIFFER.at(written.place, message, size=self.size, row=written.tip))
        return None

    def _read(self, name: str, read: Callable[[str], Reading]) -> Reading:
        written = self.fields.get(name)
        if written is None or not self.text(name):
            return Reading()
        reading = read(written.text)
        if reading.value is None:
            self.findings.append(_unread(written, reading, self.size))
        return reading


def _unread(written: Written, reading: Reading, size: str) -> Finding:
    said = written.text if len(written.text) <= _SHORT else written.text[:_SHORT] + "…"
    said = said.replace("\n", " ")
    if reading.either:
        message = f"“{said}” can be read in two ways, so it is left out."
        hint = f"Ask the tester: is it {' or '.join(reading.either)}?"
        return NUMBER_UNCLEAR.at(written.place, message, size=size, row=written.tip, hint=hint)
    message = f"“{said}” was not understood: {reading.why}."
    hint = "Ask the tester for one number with its unit, or write it into the form."
    return NUMBER_UNREADABLE.at(written.place, message, size=size, row=written.tip, hint=hint)
