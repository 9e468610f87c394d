"""What it finds.

A yarn given by skeins or by weight, with no yards or metres anywhere.

Why it matters.

Skeins differ from maker to maker, and the yarn may be gone next year. Only a length lets somebody take another yarn.

Example.

    yarn:
      A: {weight: medium, fibre: wool, skein: 100 g}

Written right.

    yarn:
      A: {weight: medium, fibre: wool, skein: 200 yd / 100 g}

Whose rule.

Trade standard: materials give the yards or metres of a skein beside its weight.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("length-missing", Severity.WARNING, "trade standard", "A yarn is given without yards or metres.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per yarn without a length."""
    for yarn in checked.pattern.yarns:
        if _is_given(yarn) and not _has_length(yarn):
            place = yarn.skein_mass.place if yarn.skein_mass else yarn.place
            message = f"Yarn {yarn.letter} is given without yards or metres."
            yield RULE.at(place, message, hint="Add the length of a skein, such as 200 yd / 100 g.")


def _is_given(yarn: Yarn) -> bool:
    said = yarn.stated
    return yarn.skein_mass is not None or bool(said and (said.skeins or said.grams or said.ounces))


def _has_length(yarn: Yarn) -> bool:
    said = yarn.stated
    return yarn.skein_length is not None or bool(said and (said.yards or said.metres))
