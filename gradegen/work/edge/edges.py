"""Edges: reading them from `8 x (dc, ch-1 sp), sc`, tidying, turning, and counting what stands on them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache

from gradegen.design.edge import Edge, Kind, Run, Target

_COUNTED: frozenset[Kind] = frozenset({"st", "ch", "free loop", "row end"})
ENDLESS = 10**9  # stitches of an edge that is not known
_PIECE = re.compile(r"\s*(?:(\d+)\s*x\s*\(|(\d+)\s*x\s+|(\)|,|\()|([^,()]+))")


@cache
def target(
    kind: Kind, name: str, length: int = 0, group: str = "", nth: int = 0, size: int = 0, chain: bool = False
) -> Target:
    """The one shared Target of this description, so that equal targets are the same object."""
    return Target(kind, name, length, group, nth, size, chain)


def space(length: int) -> Target:
    """A chain space of so many chains."""
    return target("sp", "sp", length)


def named(words: str, spelled: Callable[[str], str] = str) -> Target:
    """The target that runs text names: "dc", "ch-2 sp", "ch", "row ends", "free loops", "sts"."""
    words = words.strip()
    if found := re.fullmatch(r"ch-?\s*(\d+)\s*(?:sp|loop|lp)s?", words):
        return space(int(found[1]))
    if words in ("sp", "sps", "loop", "loops"):
        return space(0)
    for kind in ("ch", "row end", "free loop"):
        if words in (kind, kind + "s", kind + "es"):
            return target(kind, kind)
    if words in ("picot", "picots"):
        return target("gap", "picot")
    if words.endswith("s") and words[:-1] in ("st", "sc", "hdc", "dc", "tr", "dtr"):
        words = words[:-1]
    return target("st", spelled(words))


class _RunsReader:
    """Reads `item, item`; item = `[N x] (items)` or `[N] name`."""

    def __init__(self, text: str, spelled: Callable[[str], str]) -> None:
        self.text, self.at, self.spelled = text, 0, spelled

    def items(self) -> Edge:
        found: list[Target | Run] = []
        while self.at < len(self.text):
            match = _PIECE.match(self.text, self.at)
            if match is None:
                break
            self.at = match.end()
            opened, times, sign, words = match.groups()
            if opened:
                found.append(Run(int(opened), self.items()))
            elif times:
                found.append(Run(int(times), (self.single(),)))
            elif sign == "(":
                found.append(Run(1, self.items()))
            elif sign == ")":
                break
            elif words and words.strip():
                found.append(self.counted(words.strip()))
        return tuple(found)

    def single(self) -> Target | Run:
        match = re.compile(r"[^,()]+").match(self.text, self.at)
        if match is None:
            return named("st")
        self.at = match.end()
        return self.counted(match[0].strip())

    def counted(self, words: str) -> Target | Run:
        if found := re.fullmatch(r"(\d+)(?:\s+(\S.*))?", words):
            return Run(int(found[1]), (named(found[2] or "st", self.spelled),))
        return named(words, self.spelled)


def read_runs(text: str, spelled: Callable[[str], str] = str) -> Edge:
    """The edge that runs text describes, tidied; `spelled` gives the stitch id of a name."""
    return tidy(_RunsReader(text, spelled).items())


def plain(number: int, name: str = "st", kind: Kind = "st") -> Edge:
    """So many plain stitches (or chains)."""
    return (Run(number, (target(kind, name),)),) if number > 0 else ()


def _joined(found: list[Target | Run], item: Target | Run) -> None:
    """Append, melting equal neighbours into one run, and stretches that say again what a run beside them says."""
    times, items = item if isinstance(item, Run) else (1, (item,))
    if times < 1 or not items:
        return
    if found:
        last = found[-1]
        before_times, before = last if isinstance(last, Run) else (1, (last,))
        if len(before) == len(items) and before == items:
            found[-1] = Run(before_times + times, items)
            return
    if times == 1:
        found.append(item if isinstance(item, Target) else items[0] if len(items) == 1 else item)
        _fold_back(found)
        return
    size = len(items)
    while size > 1 and len(found) >= size and found[-1] is items[-1] and tuple(found[-size:]) == items:
        del found[-size:]  # `dc, sp, 5 x (dc, sp)` is 6 x (dc, sp)
        times += 1
    found.append(Run(times, items))


_LONG = 16  # items of an edge beyond which it is searched for stretches that repeat


def _fold_back(found: list[Target | Run]) -> None:
    """Take the last items into a run before them that they repeat; fold a long edge's own repeats."""
    last = found[-1]
    for size in range(1, min(_FURTHEST + 1, len(found))):
        run = found[-size - 1]
        if isinstance(run, Run):
            if len(run.items) == size > 1 and run.items[-1] is last and tuple(found[-size:]) == run.items:
                found[-size - 1 :] = [Run(run.times + 1, run.items)]
            break
    if len(found) > _LONG:
        for size in range(2, _FURTHEST + 1):
            if found[-size - 1] is last and found[-size:] == found[-2 * size : -size]:
                found[-2 * size :] = [Run(2, tuple(found[-size:]))]
                break


_FURTHEST = 8  # the longest stretch that is looked for


def tidy(edge: Iterable[Target | Run]) -> Edge:
    """The same edge in its shortest usual form: neighbours melted, single runs opened."""
    found: list[Target | Run] = []
    for item in edge:
        if isinstance(item, Target):
            _joined(found, item)
            continue
        inner = tidy(item.items) if len(item.items) > 1 or isinstance(item.items[0], Run) else item.items
        if not inner:
            continue
        if item.times == 1:
            for one in inner:
                _joined(found, one)
        elif len(inner) == 1 and isinstance(inner[0], Run):
            _joined(found, Run(item.times * inner[0].times, inner[0].items))
        else:
            _joined(found, Run(item.times, inner))
    return tuple(found)


def _turned_item(one: Target | Run) -> Target | Run:
    if isinstance(one, Run):
        return one if _is_plain(one) else Run(one.times, turned(one.items))
    if not one.nth:
        return one
    return target(one.kind, one.name, one.length, one.group, one.size + 1 - one.nth, one.size, one.chain)


def _is_plain(run: Run) -> bool:
    """True for a run of one stitch or space that is no part of a group."""
    return len(run.items) == 1 and isinstance(run.items[0], Target) and not run.items[0].nth


def turned(edge: Edge) -> Edge:
    """The edge as the next row meets it after turning: last first, groups mirrored."""
    return tuple([_turned_item(item) for item in reversed(edge)])


def turned_round(edge: Edge) -> Edge:
    """A joined round that turns: the first stitch stays first, then the last one back to the second."""
    first, rest = split_first(edge)
    return tidy((*first, *turned(rest)))


def split_first(edge: Edge) -> tuple[Edge, Edge]:
    """The first target, and the rest."""
    if not edge:
        return (), ()
    head, tail = edge[0], edge[1:]
    if isinstance(head, Target):
        return (head,), tail
    first, inner = split_first(head.items)
    again = (Run(head.times - 1, head.items),) if head.times > 1 else ()
    return first, (*inner, *again, *tail)


def tally(edge: Edge) -> dict[Target, int]:
    """How often each target stands on the edge."""
    found: dict[Target, int] = {}
    _count_into(found, edge, 1)
    return found


def _count_into(found: dict[Target, int], edge: Edge, times: int) -> None:
    for item in edge:
        if isinstance(item, Run):
            _count_into(found, item.items, times * item.times)
        else:
            found[item] = found.get(item, 0) + times


def stitches(edge: Edge) -> int:
    """Countable places: stitches, chains, free loops, row ends."""
    total = 0
    for item in edge:
        if isinstance(item, Run):
            total += item.times * stitches(item.items)
        elif item.kind in _COUNTED:
            total += 1
    return total


def leading(edge: Edge, number: int) -> Edge:
    """The first so many targets of an edge."""
    found: list[Target | Run] = []
    for item in edge:
        if number <= 0:
            break
        if isinstance(item, Target):
            found.append(item)
            number -= 1
            continue
        size = count_targets(item.items)
        whole = min(item.times, number // size) if size else 0
        if whole:
            found.append(Run(whole, item.items))
            number -= whole * size
        if whole < item.times and number:
            found += leading(item.items, number)
            number = 0
    return tuple(found)


def last_target(edge: Edge) -> Target:
    """The last target of an edge that has any."""
    last = edge[-1]
    return last_target(last.items) if isinstance(last, Run) else last


def count_targets(edge: Edge) -> int:
    """All targets, spaces and stitches alike."""
    return sum(item.times * count_targets(item.items) if isinstance(item, Run) else 1 for item in edge)


def words(edge: Edge, most: int = 12) -> str:
    """The edge in trade words: `8 x (dc, ch-1 sp), sc`."""
    parts = [_item_words(item) for item in edge[:most]]
    return ", ".join(parts) + (", ..." if len(edge) > most else "") or "nothing"


def _item_words(item: Target | Run) -> str:
    if isinstance(item, Run):
        if len(item.items) == 1 and isinstance(item.items[0], Target):
            return f"{item.times} {target_words(item.items[0])}"
        return f"{item.times} x ({words(item.items)})"
    return target_words(item)


def target_words(one: Target) -> str:
    """One target in trade words."""
    if one.kind == "sp":
        return f"ch-{one.length} sp" if one.length else "sp"
    return f"{one.name} (chain)" if one.chain else one.name
