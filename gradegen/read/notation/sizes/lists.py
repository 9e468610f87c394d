"""Size lists and `{sums}` anywhere in a text, prose included, for printing one size alone."""

from __future__ import annotations

from collections.abc import Collection

from gradegen.design.rows import Listed
from gradegen.findings import Finding, Written
from gradegen.read.notation.sizes.size_lists import join_lists
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import scan


def find_lists(
    written: Written, sizes: tuple[str, ...], names: RowNames | Collection[str] = ()
) -> tuple[tuple[Listed, ...], tuple[Finding, ...]]:
    """Every list (`17 (17½, 18)`) and every sum of graded counts in a text; lists of a wrong length are findings.

    `names`: the counts and measures that may stand in braces.
    """
    known = names if isinstance(names, RowNames) else RowNames(counts=frozenset(names))
    own = RowNames(known.terms, sizes, {}, known.counts, known.measures)
    listing = join_lists(written, scan(written.text), own, prose=True)
    return tuple(listing.lists), tuple(listing.findings)
