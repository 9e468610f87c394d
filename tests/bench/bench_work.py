"""How fast rows are worked, in process time: ordinary rows in number, and one row over very many stitches.

.venv/bin/python -m pytest tests/bench/bench_work.py -s

The figures: 10,000 row-size pairs of ordinary rows, already read, in under a second, the best of five; a row over 10
million stitches at most 1.5 times one over 100 (the median of ratios of pairs timed one right after the other: the
machine may be busy).
"""

import gc
import statistics
import sys
import time

from gradegen import check_row
from gradegen.design.notes import ChainNote, NoteFacts
from gradegen.design.rows import Row
from gradegen.findings import Written
from gradegen.read.notation.rows import read_rows
from gradegen.read.notation.words.row_names import RowNames
from gradegen.work.order.sequence import RowsInOrder
from gradegen.work.piece.piece import PieceWork

SIZES = tuple(f"size {n}" for n in range(1, 11))
PAIRS = 10_000
SECONDS = 1.0
RATIO = 1.5
WIDE = [96 + 12 * n for n in range(10)]
LONG = "Ch 1, *sc in next 3 sts, 2 sc in next st; rep from * around; join. ({n} sc)"


def listed(numbers: list[int]) -> str:
    """`97 (109, 121, ...)`."""
    return f"{numbers[0]} ({', '.join(str(n) for n in numbers[1:])})"


def changed(by: int) -> str:
    """The width of every size, so many stitches more."""
    return listed([n + by for n in WIDE])


HALVES, THIRDS, TWELFTHS = (listed([n // by for n in WIDE]) for by in (2, 3, 12))
ROWS = f"""Row 1: Ch {changed(2)}, sc in 2nd ch from hook and in each ch across, turn. ({changed(1)} sc)
Row 2: Ch 1, sc in each st across, turn. ({changed(1)} sc)
Row 3: Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn. ({changed(3)} sc)
Row 4: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. ({changed(1)} sc)
Row 5: Ch 3, dc in next st and in each st across, turn. ({changed(1)} dc)
Row 6: Ch 1, sc in first st, *ch 3, sk 2 sts, sc in next st; rep from * across, turn. ({THIRDS} ch-3 sps)
Row 7: Ch 1, sc in first sc, *3 sc in next ch-3 sp; rep from * across, turn. ({changed(1)} sc)
Row 8: Ch 3, *sk 1 st, 2 dc in next st; rep from * across, turn. ({changed(1)} dc)
Row 9: Ch 1, sc in next {HALVES} sts, 2 sc in next st, sc in each st to end, turn. ({changed(2)} sc)
Row 10: Ch 1, (sc in next 5 sts, sc2tog) {TWELFTHS} times, sc in each st to end, turn.
Row 11: Ch 1, hdc in each st across, turn."""


def rows() -> tuple[Row, ...]:
    """The rows as trees."""
    return read_rows(Written.plain(ROWS), RowNames(sizes=SIZES))[0]


def seconds_for(ready: tuple[Row, ...], pairs: int) -> float:
    """Process time that so many pairs take, scaled from the whole pieces it was measured over."""
    notes = NoteFacts((ChainNote(3, ("dc",)), ChainNote(1, ())))
    done = 0
    start = time.process_time()
    while done < pairs:
        order = RowsInOrder(PieceWork("flat", SIZES, {}, notes, [{} for _ in SIZES]))
        for row in ready:
            statuses = {worked.status for worked in order.work(row)}
            assert statuses == {"proved"}, row.text
        done += len(ready) * len(SIZES)
    return (time.process_time() - start) * pairs / done


def test_ordinary_rows() -> None:
    ready = rows()
    gc.freeze()  # what the test runner itself holds is no part of the figure
    tries = [seconds_for(ready, PAIRS) for _ in range(5)]
    sys.stdout.write(f"\n{PAIRS} row-size pairs: best {min(tries):.2f} s, median {statistics.median(tries):.2f} s\n")
    assert min(tries) < SECONDS


def seconds_over(stitches: int, tries: int = 20) -> float:
    """Process time of some checks of one row over so many stitches."""
    text = LONG.format(n=stitches // 4 * 5)
    start = time.process_time()
    for _ in range(tries):
        result = check_row(text, prior=[stitches], worked="joined rounds", sizes=["one"], label="Rnd 9")
        assert result.status == "proved"
    return time.process_time() - start


def test_the_length_of_a_row_costs_nothing() -> None:
    seconds_over(100)
    ratios = [seconds_over(10_000_000) / seconds_over(100) for _ in range(31)]
    sys.stdout.write(f"\n10 million stitches against 100: median ratio {statistics.median(ratios):.2f}\n")
    assert statistics.median(ratios) <= RATIO
