"""Why a file can't be printed as a picture."""

from __future__ import annotations

from gradegen.findings import Finding, Place, Rule, Severity

NO_PICTURE = Rule(
    "picture-not-readable", Severity.ERROR, "file format", "A file is no picture, or one that can't be read."
)
TOO_LARGE = Rule(
    "picture-too-large", Severity.ERROR, "file format", "A picture is larger than any page needs, or made to be."
)
REACHES_OUT = Rule(
    "picture-reaches-out", Severity.ERROR, "file format", "A drawing asks for other files, which no page opens."
)


class PictureFault(Exception):  # noqa: N818
    """What is wrong with a file, in words that go on after its name, and what to do; never leaves the readers."""

    def __init__(self, rule: Rule, says: str, hint: str) -> None:
        super().__init__(says)
        self.rule, self.says, self.hint = rule, says, hint

    def finding(self, place: Place, name: str) -> Finding:
        """The fault at the place that names the file."""
        return self.rule.at(place, f"The picture “{name[:60]}” {self.says}.", hint=self.hint)
