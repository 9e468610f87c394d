"""How much of a corpus of printed booklet rows is read and worked, when its rows are given as whole patterns.

The corpus is a file of JSON lines (`source`, `pattern`, `row_label`, `text`); it is no part of the project, and none of
its words stand here: rows are named by their number in the file, from 0. Which rows were drawn, which of them are whole
crochet rows, and what counts were worked out by hand stands in `booklet_rows.json`.

    .venv/bin/python tests/measure/booklets.py CORPUS                 the figures
    .venv/bin/python tests/measure/booklets.py CORPUS --show 12 40    these rows as they were read and worked
    .venv/bin/python tests/measure/booklets.py CORPUS --draw 50 7     50 worked counts drawn with seed 7

Read: every token lies in a step. Counted: worked to a number of stitches in every size that works the row.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import tempfile
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding
from gradegen.pipeline import Outcome, check_text
from gradegen.read.notation.clauses.unread import holds_unread

ROWS = Path(__file__).with_name("booklet_rows.json")
HEAD = ("Terms: US terms", "", "Instructions")
FIRST_LINE = 3 + len(HEAD)  # the first row's line in a whole pattern: behind its title and a blank line
SEED, DRAWN = 150, 150


@dataclass(frozen=True, slots=True)
class Printed:
    """One row of the corpus in its pattern: its number in the file and how it is written in the whole-pattern text."""

    number: int
    pattern: tuple[str, str]
    words: str


@dataclass(slots=True)
class Judged:
    """What became of one row: its workings by size, and the errors told of it."""

    printed: Printed
    worked: list[WorkedRow]
    errors: list[Finding]

    @property
    def is_read(self) -> bool:
        """True when every token lies in a step."""
        return bool(self.worked) and not holds_unread(self.worked[0].row.steps)

    @property
    def made(self) -> tuple[int, ...] | None:
        """The count per size that works the row; None when any is not known."""
        counts = [row.made for row in self.worked if row.applies]
        return tuple(count for count in counts if count is not None) if counts and None not in counts else None


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of a run: whole rows of the sample, how many were read and counted, counts wrong, errors."""

    whole: int
    read: int
    counted: int
    unlike: Mapping[int, tuple[tuple[int, ...], tuple[int, ...]]]
    checked: int
    errors: Mapping[int, Sequence[Finding]]


def known() -> dict[str, Any]:
    """What was found out by hand."""
    found: dict[str, Any] = json.loads(ROWS.read_text("utf-8"))
    return found


def printed_rows(corpus: Path) -> list[Printed]:
    """All rows in the order of the file."""
    rows = [json.loads(line) for line in corpus.read_text("utf-8").splitlines() if line.strip()]
    return [Printed(i, (row["source"], row["pattern"]), _written(row)) for i, row in enumerate(rows)]


def _written(row: Mapping[str, Any]) -> str:
    text = " ".join(row["text"].split())
    label = row["row_label"]
    return text if label == "(unlabelled)" else f"{label.rstrip(':. ')}: {text}"


def by_pattern(rows: Iterable[Printed]) -> list[list[Printed]]:
    """The rows of each pattern, patterns in the order they begin."""
    found: dict[tuple[str, str], list[Printed]] = {}
    for row in rows:
        found.setdefault(row.pattern, []).append(row)
    return list(found.values())


def whole_text(rows: Sequence[Printed]) -> str:
    """One pattern as an ordinary text."""
    title = " ".join(rows[0].pattern[1].split()) or "Pattern"
    return "\n".join([title, "", *HEAD, *(row.words for row in rows), ""])


def judge_all(corpus: Path) -> list[Judged]:
    """Every row of the corpus, worked in its pattern."""
    judged: dict[int, Judged] = {}
    with tempfile.TemporaryDirectory() as folder:
        for rows in by_pattern(printed_rows(corpus)):
            file = Path(folder) / "pattern.txt"
            file.write_text(whole_text(rows), "utf-8")
            for one in _judge(rows, check_text(file)):
                judged[one.printed.number] = one
    return [judged[number] for number in sorted(judged)]


def _judge(rows: Sequence[Printed], outcome: Outcome) -> list[Judged]:
    worked: dict[int, list[WorkedRow]] = {}
    for of_size in outcome.checked.worked.values() if outcome.checked else ():
        for one in of_size:
            worked.setdefault(one.row.place.line, []).append(one)
    errors = [finding for finding in outcome.findings if finding.severity in ("error", "internal")]
    lines = range(FIRST_LINE, FIRST_LINE + len(rows))
    return [
        Judged(row, worked.get(line, []), [finding for finding in errors if finding.place.line == line])
        for line, row in zip(lines, rows, strict=True)
    ]


def sample(number_of_rows: int) -> list[int]:
    """The rows drawn for labelling."""
    return sorted(random.Random(SEED).sample(range(number_of_rows), DRAWN))


def figures(judged: Sequence[Judged]) -> Figures:
    """Everything issue 3 asks of the corpus."""
    facts = known()
    whole = [judged[i] for i in sample(len(judged)) if i not in facts["not whole"]]
    got = {int(i): judged[int(i)].made for i in facts["counts"]}
    by_hand = {int(i): _by_size(count, len(got[int(i)] or ())) for i, count in facts["counts"].items()}
    unlike = {i: (by_hand[i], made) for i, made in got.items() if made is not None and made != by_hand[i]}
    return Figures(
        len(whole),
        sum(one.is_read for one in whole),
        sum(one.made is not None for one in whole),
        unlike,
        sum(made is not None for made in got.values()),
        {one.printed.number: one.errors for one in judged if one.errors},
    )


def _by_size(count: int | Sequence[int], sizes: int) -> tuple[int, ...]:
    """One count holds for every size."""
    return (count,) * sizes if isinstance(count, int) else tuple(count)


def _report(judged: Sequence[Judged]) -> str:
    found = figures(judged)
    contradicted = set(known()["contradicted"])
    lines = [
        f"{len(judged)} rows of {len(by_pattern(one.printed for one in judged))} patterns; drawn: {found.whole} whole",
        f"read     {found.read} = {100 * found.read / found.whole:.1f} %",
        f"counted  {found.counted} = {100 * found.counted / found.whole:.1f} %",
        f"all rows: read {sum(one.is_read for one in judged)}, counted {sum(one.made is not None for one in judged)}",
        f"counts worked by hand: {found.checked - len(found.unlike)} of {found.checked} alike",
    ]
    lines += [f"  row {i}: by hand {hand}, worked {made}" for i, (hand, made) in sorted(found.unlike.items())]
    lines += [f"errors in {len(found.errors)} rows"]
    for i, errors in sorted(found.errors.items()):
        first = errors[0]
        kind = "true" if i in contradicted else "NOT JUDGED"
        lines += [f"  row {i} ({kind}): {first.rule}, {first.expected} against {first.found}: {first.because}"]
    return "\n".join(lines)


def _shown(one: Judged) -> str:
    lines = [f"--- {one.printed.number} | {one.printed.pattern[1]}", one.printed.words]
    for row in one.worked:
        lines += [f"  {row.label}: {row.status}, made {row.made}, {dict(row.units)}, {row.why_not}"]
        lines += [
            f"    {step.words} x{step.times}: takes {step.takes_words}; makes {step.makes_words}" for step in row.steps
        ]
    lines += [f"  ! {finding.rule}: {finding.message} {finding.because or ''}" for finding in one.errors]
    return "\n".join(lines)


def main(arguments: Sequence[str]) -> int:
    """The figures, or the rows asked for."""
    ask = argparse.ArgumentParser(description="Printed booklet rows: how many are read and counted.")
    ask.add_argument("corpus", type=Path)
    ask.add_argument("--show", type=int, nargs="+", metavar="ROW")
    ask.add_argument("--draw", type=int, nargs=2, metavar=("HOW_MANY", "SEED"))
    ask.add_argument("--unread", action="store_true", help="show the whole rows of the sample that are not read")
    ask.add_argument("--uncounted", action="store_true", help="show the whole rows of the sample that are not counted")
    given = ask.parse_args(arguments)
    judged = judge_all(given.corpus)
    whole = [judged[i] for i in sample(len(judged)) if i not in known()["not whole"]]
    chosen: list[Judged] = [judged[i] for i in given.show or ()]
    if given.draw:
        counted = [one for one in judged if one.made is not None]
        chosen += sorted(
            random.Random(given.draw[1]).sample(counted, given.draw[0]), key=lambda one: one.printed.number
        )
    chosen += [one for one in whole if given.unread and not one.is_read]
    chosen += [one for one in whole if given.uncounted and one.made is None]
    sys.stdout.write("\n".join(map(_shown, chosen)) + "\n" if chosen else _report(judged) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
