"""A worked row step by step for the screen: the edge before, what each step takes and makes, the edge after."""

from __future__ import annotations

from gradegen.design.edge import Edge, Run, Target, stitches_in
from gradegen.design.worked import WorkedRow, WorkedStep
from gradegen.write.screen_findings import Line

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
    parts = _parts(edge)
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


def _parts(edge: Edge) -> list[str]:
    parts: list[tuple[int, str]] = []
    for item in edge:
        times, words = (1, target_in_words(item)) if isinstance(item, Target) else _run(item)
        if parts and parts[-1][1] == words:
            parts[-1] = (parts[-1][0] + times, words)
        else:
            parts.append((times, words))
    return [words if times == 1 else f"{times} {words}" for times, words in parts]


def _run(run: Run) -> tuple[int, str]:
    inside = _parts(run.items)
    if len(run.items) == 1 and isinstance(run.items[0], Target):
        return run.times, target_in_words(run.items[0])
    return 1, (", ".join(inside) if run.times == 1 else f"{run.times} x ({', '.join(inside)})")


def _steps(steps: tuple[WorkedStep, ...]) -> list[Line]:
    if not steps:
        return []
    words = [f"{'  ' * step.depth}{step.words}" for step in steps]
    wide = min(44, max(len(text) for text in words))
    lines: list[Line] = []
    for text, step in zip(words, steps, strict=True):
        takes = f"takes {step.takes_words}" if step.takes else "takes nothing"
        makes = f"makes {step.makes_words}" if step.makes else "makes no stitch"
        times = f"{step.times} x " if step.times != 1 else ""
        lines.append(
            ((f"    {times:>6}{text:<{wide}}", ""), (f"  {takes}; {makes}", ""), (f"   {step.left} left", "dim"))
        )
    return lines


def _totals(row: WorkedRow) -> str:
    made = "no count" if row.made is None else f"{row.made} made"
    units = ", ".join(f"{number} {name}" for name, number in row.units.items())
    taken = "" if row.taken is None else f"; {row.taken} taken of the edge before"
    return f"{made}{f' ({units})' if units else ''}{taken}"


def _verdict(row: WorkedRow) -> list[Line]:
    style = {"proved": "green", "wrong": "bold red", "not-checked": "yellow"}[row.status]
    why = f": {row.why_not}" if row.why_not else ""
    lines: list[Line] = [((f"  {row.status}{why}", style),)]
    return lines + [_labelled("read", words) for words in row.reading]


def _labelled(label: str, text: str) -> Line:
    return ((f"  {label:<8}", "bold"), (text, ""))
