"""Our own rows through the engine: one by one with `check_row`, then as whole patterns in plain text.

The gates are issue 3's: at least 98 % of countable rows right, no correct row called wrong, every planted fault found
under its name in exactly its sizes. What is right about a row stands in `own.jsonl`, by the slow worker or a proof.
"""

from __future__ import annotations

import contextlib
import functools
import io
import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from rows_answers import FILE, Row, all_rows, by_pattern, earlier_than, kind_of, prior_of

import gradegen
from gradegen.cli import main

WORKED = {
    "flat": "Worked flat in turned rows.",
    "joined rounds": "Worked in joined rounds.",
    "spiral": "Worked in a spiral without joining.",
    "half-twist band": "Worked as a half-twist band: every round runs along both sides.",
}


def judged(row: Row, got: Any) -> str:
    """Says "right", or what is wrong about the engine's answer."""
    expect = row["expect"]
    if kind_of(row) == "prose":
        return "right" if got.status == "not-checked" else f"prose called {got.status}"
    if kind_of(row) == "fault":
        return _fault_judged(row, got)
    if got.status != "proved":
        return {"wrong": "false alarm"}.get(got.status, "left unread")
    if differs(expect.get("count_sts", ()), got.made):
        return f"made {got.made}"
    for unit, numbers in expect.get("count_units", {}).items():
        if differs(numbers, got.units.get(unit, ())):
            return f"{unit}: {got.units.get(unit)}"
    if differs(expect.get("consumed", ()), got.taken):
        return f"taken {got.taken}"
    return "right"


def _fault_judged(row: Row, got: Any) -> str:
    expect = row["expect"]
    if got.status != "wrong":
        return f"missed fault ({got.status})"
    errors = [finding for finding in got.findings if finding.severity == "error"]
    blamed = {finding.size for finding in errors}
    blamed = set(row["sizes"]) if None in blamed else blamed
    if blamed != set(expect["sizes"]):
        return f"blamed sizes {sorted(blamed)}"
    if not {finding.rule for finding in errors} & {expect["fault"], *expect.get("also_accept", ())}:
        return f"called {sorted({finding.rule for finding in errors})}"
    return f"made {got.made}" if differs(expect["true_count"], got.made) else "right"


def differs(wanted: Sequence[int | None], got: Sequence[int | None]) -> bool:
    """Whether any number that was asked for (None: any will do) is missing or another one."""
    got = [*got, *[None] * (len(wanted) - len(got))]
    return any(want is not None and want != mine for want, mine in zip(wanted, got, strict=False))


def checked(row: Row, file: Path = FILE) -> Any:
    """The engine's answer to one row."""
    return gradegen.check_row(
        row["text"],
        prior=prior_of(row),
        worked=row["worked"],
        sizes=row["sizes"],
        label=row["label"],
        terms=row["terms"],
        notes=row["notes"],
        definitions=row["definitions"],
        earlier=earlier_than(row, file),
        turning_chain=row["prior"].get("turning_chain_made"),
        applies_to=row.get("applies_to"),
    )


@functools.cache
def verdicts() -> dict[str, tuple[Row, str]]:
    """Row id to the row and the verdict on the engine's answer."""
    return {row["row_id"]: (row, judged(row, checked(row))) for row in all_rows()}


def not_right(*kinds: str) -> list[str]:
    """The rows of these kinds that the engine does not get right, a line each."""
    return [
        f"{key} {row['text'][:70]} -> {said}"
        for key, (row, said) in verdicts().items()
        if kind_of(row) in kinds and said != "right"
    ]


def test_no_correct_row_is_called_wrong() -> None:
    assert not [line for line in not_right("correct", "ambiguous") if line.endswith("-> false alarm")]


def test_every_planted_fault_is_found_under_its_name_in_its_sizes() -> None:
    assert not not_right("fault")


def test_prose_is_left_alone() -> None:
    assert not not_right("prose")


def test_countable_rows_are_right() -> None:
    countable = [row for row in all_rows() if kind_of(row) != "prose"]
    wrong = not_right("correct", "ambiguous", "fault")
    assert len(countable) - len(wrong) >= 0.98 * len(countable), "\n".join(wrong)


# -- whole patterns in plain text ------------------------------------------------------------------------------------


def text_of(rows: list[Row]) -> tuple[str, list[int]]:
    """A pattern as a plain text file, and the line each row stands on."""
    first = rows[0]
    sizes = first["sizes"]
    lines = [
        first["pattern_title"],
        "",
        "Sizes: " + ("one size" if len(sizes) == 1 else f"{sizes[0]} ({', '.join(sizes[1:])})"),
        f"Terms: {first['terms']} terms",
        WORKED[first["worked"]],
        "",
        "Notes",
        *(f"- {note}" for note in first["notes"]),
    ]
    if first["definitions"]:
        lines += ["", "Special stitches", *(f"- {name}: {text}" for name, text in first["definitions"].items())]
    lines += ["", "Instructions"]
    places = []
    for row in rows:
        lines.append(f"{row['label']}: {row['text']}" if row["label"] else row["text"])
        places.append(len(lines))
    return "\n".join(lines) + "\n", places


@functools.cache
def whole_patterns(folder: Path) -> list[tuple[list[Row], list[int], dict[str, Any]]]:
    """Every pattern up to its first planted fault, and what `gradegen check FILE.txt --json` says of it."""
    answers = []
    for name, rows in by_pattern().items():
        cut = next((at for at, row in enumerate(rows) if kind_of(row) == "fault"), len(rows) - 1)
        text, places = text_of(rows[: cut + 1])
        path = folder / f"{name}.txt"
        path.write_text(text, encoding="utf-8")
        with contextlib.redirect_stdout(io.StringIO()) as printed:
            main(["check", str(path), "--json"])
        answers.append((rows[: cut + 1], places, json.loads(printed.getvalue())))
    return answers


@pytest.fixture(scope="module")
def answers(tmp_path_factory: pytest.TempPathFactory) -> list[tuple[list[Row], list[int], dict[str, Any]]]:
    return whole_patterns(tmp_path_factory.mktemp("texts"))


def _flagged(answer: dict[str, Any]) -> set[int]:
    return {finding["place"]["line"] for finding in answer["findings"] if finding["severity"] == "error"}


def test_whole_patterns_raise_no_false_alarm(answers: list[tuple[list[Row], list[int], dict[str, Any]]]) -> None:
    alarms = [
        f"{row['row_id']} {row['text'][:70]}"
        for rows, places, answer in answers
        for row, line in zip(rows, places, strict=True)
        if kind_of(row) != "fault" and line in _flagged(answer)
    ]
    assert not alarms


def test_whole_patterns_show_their_first_fault(answers: list[tuple[list[Row], list[int], dict[str, Any]]]) -> None:
    missed = [
        rows[-1]["row_id"]
        for rows, places, answer in answers
        if kind_of(rows[-1]) == "fault" and places[-1] not in _flagged(answer)
    ]
    faults = sum(kind_of(rows[-1]) == "fault" for rows, _, _ in answers)
    assert len(missed) <= 0.05 * faults, missed


def test_whole_patterns_are_proved(answers: list[tuple[list[Row], list[int], dict[str, Any]]]) -> None:
    proved = sum(answer["proved"] for _, _, answer in answers)
    pairs = sum(answer["proved"] + answer["wrong"] + answer["not_checked"] for _, _, answer in answers)
    prose = sum(
        len(row.get("applies_to") or row["sizes"]) for rows, _, _ in answers for row in rows if kind_of(row) == "prose"
    )
    assert proved >= 0.8 * (pairs - prose)
