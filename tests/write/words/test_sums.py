from fractions import Fraction
from typing import Any

from gradegen.design.checked import Checked
from gradegen.design.formula import PerSize
from gradegen.write.words.sums import Worth, worth


def test_counts_are_bare_numbers(wrap: Checked, samples: Any) -> None:
    size = wrap.sizes[2]
    band = size.counts["band"].n
    assert worth(samples["formula"]("2 * band + 1"), size) == Worth(Fraction(2 * band + 1), False)


def test_measures_are_lengths_as_printed(wrap: Checked, samples: Any) -> None:
    size = wrap.sizes[2]
    around = size.measures["around"]
    assert around.finished is not None
    assert worth(samples["formula"]("around + 2 in"), size) == Worth(around.finished + 2, True)
    assert around.finished != around.target


def test_what_cannot_be_worked_out(wrap: Checked, samples: Any) -> None:
    size = wrap.sizes[0]
    assert worth(samples["formula"]("nobody"), size) is None
    assert worth(samples["formula"]("band + around"), size) is None
    assert worth(samples["formula"]("band / 0"), size) is None


def test_an_entry_per_size(wrap: Checked, samples: Any) -> None:
    listed = PerSize((samples["amount"](11, "in"), samples["amount"](12, "in")), samples["somewhere"]())
    assert worth(listed, wrap.sizes[1]) == Worth(Fraction(12), True)
    assert worth(listed, wrap.sizes[2]) is None
