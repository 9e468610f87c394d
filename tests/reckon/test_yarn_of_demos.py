"""Yarn of every demo: evidence and spread, skeins that never fall, edgings, sizes that do not lean on each other."""

from __future__ import annotations

import re
import shutil
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.pipeline import check_file
from gradegen.reckon import YarnNeed, stitch_census, yarn_per_size
from gradegen.reckon.yarn.evidence import all_weighed
from gradegen.reckon.yarn.fitted_yarn import fit_yarn

PATTERNS = Path(__file__).parents[2] / "shared" / "patterns"
DEMOS = ["skerrywick-wrap", "bollard-hat", "gunwale-pullover", "limpet-pullover", "slipway-cardigan"]
# What edges each demo, taken out of a copy of its file: the last round of tips, the brim, the neckband, the bands.
EDGINGS = {
    "skerrywick-wrap": (r"      Rnd \{rounds\}: .*\n        join.*\n",),
    "bollard-hat": (r"      Rnds \{last side \+ 5\}-\{last\}: .*\n",),
    "gunwale-pullover": (r"  - name: Neckband\n(?:    .*\n)+\n",),
    "limpet-pullover": (r"  - name: Neckband\n(?:    .*\n)+\n", r"  - neckband: .*\n"),
    "slipway-cardigan": (r"  - name: Button(?:hole)? Band\n(?:    .*\n)+\n", r"  - [a-z ]+: .*band.*\n"),
}


@cache
def demo(name: str) -> Checked:
    found = check_file(PATTERNS / f"{name}.yaml").checked
    assert found is not None
    return found


@cache
def need_of(name: str) -> YarnNeed:
    (need,), _ = yarn_per_size(demo(name))
    return need


def test_no_demo_is_forgotten() -> None:
    files = {path.stem for path in PATTERNS.glob("*.yaml") if "\npieces:" in path.read_text("utf-8")}
    assert files == set(DEMOS)


@pytest.mark.parametrize("name", DEMOS)
def test_every_size_has_yarn_with_evidence_and_spread(name: str) -> None:
    need = need_of(name)
    assert len(need.evidence) > 1
    assert need.spread is not None
    assert Fraction(9, 10) < need.spread[0] < need.spread[1] < Fraction(11, 10)
    for size in need.sizes:
        assert size.low is not None
        assert size.high is not None
        low, used, high = size.low.inches, size.used.inches, size.high.inches
        assert low is not None
        assert used is not None
        assert high is not None
        assert low <= used <= high
        assert low < high
        assert size.is_whole


@pytest.mark.parametrize("name", DEMOS)
def test_skeins_never_fall_as_sizes_grow(name: str) -> None:
    sizes = need_of(name).sizes
    for smaller, larger in pairwise(sizes):
        assert (smaller.used.inches or 0) < (larger.used.inches or 0)
        assert (smaller.skeins or 0) <= (larger.skeins or 0)
    for size in sizes:
        assert size.skeins is not None
        assert size.slack is not None
        assert 0 <= size.slack < 1
        assert (size.wanted.inches or 0) > (size.used.inches or 0)


@pytest.mark.parametrize("name", DEMOS)
def test_what_was_weighed_is_what_its_stitches_come_to_nearly(name: str) -> None:
    """Every piece lies within a twentieth of the fit, and its stitches are those of its size today."""
    census = stitch_census(demo(name))
    (yarn,) = demo(name).pattern.yarns
    assert all(Fraction(19, 20) < one.ratio < Fraction(21, 20) for one in need_of(name).evidence)
    sized = [one for one in all_weighed(yarn) if one.size is not None]
    assert sized
    for one in sized:
        assert one.size is not None
        assert dict(one.stitches) == dict(census.of(one.size.text)), one.size.text


@pytest.mark.parametrize("name", DEMOS)
def test_a_copy_without_its_edging_takes_less_by_the_edging(name: str, tmp_path: Path) -> None:
    """By exactly what the census counts for the rows taken out."""
    text = (PATTERNS / f"{name}.yaml").read_text("utf-8")
    for pattern in EDGINGS[name]:
        text, times = re.subn(pattern, "", text)
        assert times
    for table in (*PATTERNS.glob("*-heads.yaml"), *PATTERNS.glob("*-sizes.yaml")):
        shutil.copy(table, tmp_path)
    path = tmp_path / "copy.yaml"
    path.write_text(text, encoding="utf-8")
    bare = check_file(path).checked
    assert bare is not None
    census, less = stitch_census(demo(name)), stitch_census(bare)
    fitted = fit_yarn(demo(name), census, demo(name).pattern.yarns[0])
    assert fitted is not None
    (bare_need,), _ = yarn_per_size(bare)
    for size in need_of(name).sizes:
        edging = census.of(size.size) - less.of(size.size)
        assert not less.of(size.size) - census.of(size.size)
        assert sum(edging.values()) > 0
        other = bare_need.of(size.size)
        assert other is not None
        assert size.used.inches is not None
        assert other.used.inches is not None
        assert size.used.inches - other.used.inches == fitted.takes(edging).inches


def changed(size: GradedSize) -> GradedSize:
    counts = {name: replace(count, n=count.n + 77, chain=count.chain + 77) for name, count in size.counts.items()}
    return replace(size, counts=counts, fit="another fit")


@pytest.mark.parametrize("name", DEMOS)
def test_no_size_leans_on_another(name: str) -> None:
    """With every other size's counts changed and its rows gone, the size takes the same yarn to the last fraction."""
    for size in demo(name).sizes:
        others = tuple(one if one is size else changed(one) for one in demo(name).sizes)
        rows = {one: rows if one == size.name else () for one, rows in demo(name).worked.items()}
        (need,), _ = yarn_per_size(replace(demo(name), sizes=others, worked=rows))
        assert need.of(size.name) == need_of(name).of(size.name)
