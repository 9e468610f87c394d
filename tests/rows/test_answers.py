"""The rows with answers are sound in themselves: by the slow worker where it reads them, by their proofs elsewhere."""

from __future__ import annotations

import re
from collections import Counter
from fractions import Fraction

import pytest
from rows_answers import Row, all_rows, by_pattern, earlier_than, kind_of, prior_of
from slow_worker.edges import expand
from slow_worker.row import Result
from slow_worker.whole import label_numbers, work_labelled

ROWS = all_rows()
LITERAL = ("stated-count-wrong", "turning-chain-convention", "stitches-left-over")


def worked(row: Row) -> list[Result]:
    """The row as the slow worker works it."""
    prior = prior_of(row)
    chain = row["prior"].get("turning_chain_made")
    return work_labelled(
        row["label"],
        row["text"],
        priors=[None if prior is None else expand(prior[size]) for size in range(len(row["sizes"]))],
        sizes=row["sizes"],
        shape=row["worked"],
        earlier=label_numbers(earlier_than(row)),
        notes=row["notes"],
        definitions=row["definitions"],
        turning_chains=[chain] * len(row["sizes"]),
        applies_to=row.get("applies_to"),
        terms=row["terms"],
    )


@pytest.mark.parametrize("row", [r for r in ROWS if r["answer"] == "slow worker"], ids=lambda r: r["row_id"])
def test_the_slow_worker_gives_the_same_answer(row: Row) -> None:
    expect, results = row["expect"], worked(row)
    faulty = set(expect.get("sizes", ()))
    assert {size for size, result in zip(row["sizes"], results, strict=True) if result.error} == faulty
    for number, (size, result) in enumerate(zip(row["sizes"], results, strict=True)):
        if size in faulty:
            assert result.error in (expect["fault"], *expect.get("also_accept", ())), result
        counts = expect.get("true_count") or expect.get("count_sts")
        if counts and counts[number] is not None and (size not in faulty or result.error in LITERAL):
            assert result.made == counts[number], result
        for unit, numbers in (expect.get("count_units") or expect.get("true_units") or {}).items():
            assert result.units.get(unit, 0) == numbers[number], (unit, result)
        for name, got in (("consumed", result.taken), ("times_worked", result.times)):
            if name in expect and expect[name][number] is not None and size not in faulty:
                assert got == expect[name][number], (name, result)


@pytest.mark.parametrize("row", [r for r in ROWS if "proof" in r["expect"]], ids=lambda r: r["row_id"])
def test_every_equation_of_a_proof_holds(row: Row) -> None:
    for left, right in re.findall(r"([\d(][\d()+x/ -]*?) = ([\d(][\d()+x/ -]*\d|\d+)", row["expect"]["proof"]):
        assert reckon(left) == reckon(right), row["expect"]["proof"]


def reckon(text: str) -> Fraction:
    """The value of `6 x (2 + 3)`."""
    plain = text.replace("x", "*").strip()
    assert re.fullmatch(r"[\d()+*/ -]+", plain)
    exact = re.sub(r"\d+", r"F(\g<0>)", plain)
    return eval(exact, {"__builtins__": {}, "F": Fraction})


def test_rows_by_hand_have_a_proof() -> None:
    for row in ROWS:
        if row["answer"] == "by hand" and kind_of(row) != "prose":
            assert "proof" in row["expect"], row["row_id"]


def test_the_mix_is_wide_enough() -> None:
    """Issue 3 asks for 150 rows; every fault that a row can have is planted at least once."""
    kinds = Counter(kind_of(row) for row in ROWS)
    faults = {row["expect"]["fault"] for row in ROWS if kind_of(row) == "fault"}
    assert len(ROWS) >= 200
    assert kinds["fault"] >= 40
    assert kinds["prose"] >= 10
    assert kinds["ambiguous"] >= 6
    assert len(faults) == 10
    assert {row["worked"] for row in ROWS} == {"flat", "joined rounds", "spiral", "half-twist band"}
    assert {row["terms"] for row in ROWS} == {"US", "UK"}
    assert max(len(row["sizes"]) for row in ROWS) == 12
    assert len(by_pattern()) >= 20
    assert sum(row["answer"] == "slow worker" for row in ROWS) >= 180
