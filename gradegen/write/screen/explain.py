"""A worked row step by step for the screen: the edge before, what each step takes and makes, the edge after."""

from __future__ import annotations

from gradegen.design.edge import Edge, Run, Target, stitches_in
from gradegen.design.worked import WorkedRow, WorkedStep
from gradegen.write.screen.findings import Line
from gradegen.write.screen.source import text_at

SUMMED = ("group", "sp", "st")  # units that only add up others
WORDS_WIDE = 44  # columns for the words of a step
LONGEST_EDGE = 12  # pieces of an edge shown before "..."


def explained_row(row: WorkedRow) -> list[Line]:
    """One row in one size: what it meets, its steps, what it leaves, and how it was read."""
    times = f", worked {row.times} times" if row.times > 1 else ""
    lines: list[Line] = [((f"{row.label}, size {row.size}{times}", "bold"),), ((f"  {row.row.text}", ""),), ()]
    if not row.applies:
        return [*lines, ((f"  Size {row.size} does not work this row.", ""),)]
    lines += [_labelled("before", edge_in_words(row.before))]
    lines += _steps(row.steps)
    lines += [_labelled("after", edge_in_words(row.after)), _labelled("", _totals(row)), *_verdict(row)]
    return lines


def edge_in_words(edge: Edge) -> str:
    """An edge as runs: "44 x (dc, ch-1 sp), sc"; "nothing yet" before the first chain."""
    if not edge:
        return "nothing yet"
    parts = _parts(_gathered(edge))
    shown = ", ".join(parts[:LONGEST_EDGE]) + (", ..." if len(parts) > LONGEST_EDGE else "")
    total = stitches_in(edge)
    return f"{shown}   = {total} {'stitch' if total == 1 else 'stitches'}"


def target_in_words(target: Target) -> str:
    """One place of an edge by the name the trade gives it."""
    if target.kind == "sp":
        return f"ch-{target.length} sp" if target.length else "sp"
    if target.kind == "st":
        return f"{target.name} (starting chain)" if target.chain else target.name
    return target.kind if target.kind != "gap" else target.name


def _gathered(edge: Edge) -> Edge:
    """The same edge with what stands before and after a repeat taken into it where it is one more of the same."""
    items = list(edge)
    at = 0
    while at < len(items):
        run = items[at]
        if isinstance(run, Run):
            many, same, times = len(run.items), list(run.items), run.times
            while at >= many and items[at - many : at] == same:
                del items[at - many : at]
                at, times = at - many, times + 1
            while items[at + 1 : at + 1 + many] == same:
                del items[at + 1 : at + 1 + many]
                times += 1
            items[at] = Run(times, run.items)
        at += 1
    return tuple(items)


def _parts(edge: Edge) -> list[str]:
    return [words if times == 1 else f"{times} {words}" for times, words in _counted(edge)]


def _counted(edge: Edge) -> list[tuple[int, str]]:
    """How many of each, like neighbours together."""
    counted: list[tuple[int, str]] = []
    for item in edge:
        for times, words in [(1, target_in_words(item))] if isinstance(item, Target) else _run(item):
            if counted and counted[-1][1] == words:
                counted[-1] = (counted[-1][0] + times, words)
            else:
                counted.append((times, words))
    return counted


def _run(run: Run) -> list[tuple[int, str]]:
    inside = _counted(run.items)
    if len(inside) == 1:
        return [(run.times * inside[0][0], inside[0][1])]
    if run.times == 1:
        return inside
    return [(1, f"{run.times} x ({', '.join(_parts(run.items))})")]


def _steps(steps: tuple[WorkedStep, ...]) -> list[Line]:
    words = ["  " * step.depth + _shortened(step.words or text_at(step.place), WORDS_WIDE) for step in steps]
    wide = max((len(text) for text in words), default=0)
    return [_step(text, wide, step) for text, step in zip(words, steps, strict=True)]


def _step(words: str, wide: int, step: WorkedStep) -> Line:
    times = f"{step.times} x " if step.times != 1 else ""
    takes = f"takes {step.takes} {'st' if step.takes == 1 else 'sts'}" if step.takes else "takes nothing"
    makes = f"makes {_shortened(step.makes_words, WORDS_WIDE)}" if step.makes_words else "makes no stitch"
    return ((f"    {times}{words:<{wide}}", ""), (f"  {takes}; {makes}", ""), (f";  {step.left} left", "dim"))


def _shortened(text: str, most: int) -> str:
    return text if len(text) <= most else text[: most - 4].rstrip() + " ..."


def _totals(row: WorkedRow) -> str:
    made = "no count" if row.made is None else f"{row.made} made"
    units = ", ".join(f"{number} {name}" for name, number in row.units.items() if name not in SUMMED)
    taken = "" if row.taken is None else f"; {row.taken} taken of the edge before"
    return f"{made}{f' ({units})' if units else ''}{taken}"


def _verdict(row: WorkedRow) -> list[Line]:
    style = {"proved": "green", "wrong": "bold red", "not-checked": "yellow"}[row.status]
    why = f": {row.why_not}" if row.why_not else ""
    lines: list[Line] = [((f"  {row.status}{why}", style),)]
    return lines + [_labelled("read", words) for words in row.reading]


def _labelled(label: str, text: str) -> Line:
    return ((f"  {label:<8}", "bold"), (text, ""))
