"""A place on an edge that moves forward; moving over a million stitches costs what moving over ten costs."""

from __future__ import annotations

from collections.abc import Callable

from gradegen.design.edge import Edge, Run, Target

Fits = Callable[[Target], bool]
Spot = tuple[tuple[int, ...], tuple[int, ...], int]


class _Span:
    """A stretch of the edge, with how many targets of a kind stand from each item to its end."""

    __slots__ = ("counts", "items", "length", "times")

    def __init__(self, edge: Edge, times: int) -> None:
        self.items: list[Target | _Span] = [
            _Span(item.items, item.times) if isinstance(item, Run) else item for item in edge
        ]
        self.length = len(self.items)
        self.times = times
        self.counts: dict[str, list[int]] = {}

    def suffix(self, kind: str, fits: Fits) -> list[int]:
        """For each item: how many targets that fit stand from it to the end of one pass."""
        known = self.counts.get(kind)
        if known is None:
            known = [0] * (self.length + 1)
            for i in range(self.length - 1, -1, -1):
                item = self.items[i]
                if isinstance(item, _Span):
                    known[i] = known[i + 1] + item.times * item.suffix(kind, fits)[0]
                else:
                    known[i] = known[i + 1] + fits(item)
            self.counts[kind] = known
        return known


class Cursor:
    """The next target of an edge. `spans`, `at`, `left`: the nested stretches around it, where, and passes left."""

    __slots__ = ("at", "left", "moved", "spans")

    def __init__(self, edge: Edge) -> None:
        self.spans = [_Span(edge, 1)]
        self.at = [0]
        self.left = [1]
        self.moved = 0
        self._settle()

    def _settle(self) -> None:
        """Come to rest on a target, or at the end (at the end of the outermost span)."""
        spans, at, left = self.spans, self.at, self.left
        while True:
            span, i = spans[-1], at[-1]
            if i < span.length:
                item = span.items[i]
                if not isinstance(item, _Span):
                    return
                spans.append(item)
                at.append(0)
                left.append(item.times)
            elif left[-1] > 1:
                left[-1] -= 1
                at[-1] = 0
            elif len(spans) == 1:
                return
            else:
                spans.pop()
                at.pop()
                left.pop()
                at[-1] += 1

    def peek(self) -> Target | None:
        """The next target; None at the end."""
        span, i = self.spans[-1], self.at[-1]
        if i >= span.length:
            return None
        item = span.items[i]
        return item if isinstance(item, Target) else None

    def run_here(self) -> tuple[int, int]:
        """How many equal targets stand here in one run, and how long that run was; (1, 1) outside one."""
        span = self.spans[-1]
        return (self.left[-1], span.times) if span.length == 1 and len(self.spans) > 1 else (1, 1)

    def like_here(self) -> tuple[int, int]:
        """How many equal targets stand side by side here, and how many of them are passed."""
        left, times = self.run_here()
        if times > 1:
            return times, times - left
        items, i = self.spans[-1].items, self.at[-1]
        first, after = i, i
        while first > 0 and items[first - 1] == items[i]:
            first -= 1
        while after + 1 < len(items) and items[after + 1] == items[i]:
            after += 1
        return after - first + 1, i - first

    def step(self) -> None:
        """Past one target."""
        self.at[-1] += 1
        self.moved += 1
        self._settle()

    def save(self) -> tuple[list[_Span], list[int], list[int], int]:
        """All that `load` needs to come back here."""
        return self.spans.copy(), self.at.copy(), self.left.copy(), self.moved

    def load(self, saved: tuple[list[_Span], list[int], list[int], int]) -> None:
        """Back to a saved place."""
        spans, at, left, self.moved = saved
        self.spans, self.at, self.left = spans.copy(), at.copy(), left.copy()

    def remaining(self, kind: str, fits: Fits) -> int:
        """How many targets that fit stand from here to the end."""
        spans, at, left = self.spans, self.at, self.left
        depth = len(spans) - 1
        suffix = spans[depth].counts.get(kind) or spans[depth].suffix(kind, fits)
        total = suffix[at[depth]] + (left[depth] - 1) * suffix[0]
        while depth:  # only the deepest span still holds its own current item
            depth -= 1
            suffix = spans[depth].counts.get(kind) or spans[depth].suffix(kind, fits)
            total += suffix[at[depth] + 1] + (left[depth] - 1) * suffix[0]
        return total

    def whole(self, kind: str, fits: Fits) -> int:
        """How many targets that fit stand on the whole edge."""
        return self.spans[0].suffix(kind, fits)[0]

    def pass_over(self, kind: str, fits: Fits, number: int) -> bool:
        """Move just past the `number`-th target that fits; False (and not moved) when there are fewer."""
        if number <= 0:
            return True
        span, i, left = self.spans[-1], self.at[-1], self.left[-1]
        if span.length == 1 and i == 0 and number <= left and fits(span.items[0]):  # type: ignore[arg-type]
            self._pass_in_run(number)
            return True
        if number > span.suffix(kind, fits)[i] and self.remaining(kind, fits) < number:
            return False
        self.moved += 1
        while True:
            span, i = self.spans[-1], self.at[-1]
            suffix = span.suffix(kind, fits)
            if number <= suffix[i]:
                number = self._pass_inside(span, i, suffix, kind, fits, number)
                if number == 0:
                    self.at[-1] += 1
                    self._settle()
                    return True
                continue
            number -= suffix[i]
            self._leave_pass(suffix[0], number)
            if suffix[0] and self.left[-1] > 0 and self.at[-1] == 0:
                skipped = min(self.left[-1] - 1, (number - 1) // suffix[0])
                self.left[-1] -= skipped
                number -= skipped * suffix[0]

    def _pass_in_run(self, number: int) -> None:
        """Past some or all of the equal targets that one run has left."""
        self.moved += 1
        if number < self.left[-1]:
            self.left[-1] -= number
            return
        self.left[-1], self.at[-1] = 1, 1
        self._settle()

    def _leave_pass(self, each: int, number: int) -> None:
        """To the next pass of this span, or out of it."""
        if self.left[-1] > 1 and each:
            self.left[-1] -= 1
            self.at[-1] = 0
            return
        self.spans.pop()
        self.at.pop()
        self.left.pop()
        self.at[-1] += 1

    def _pass_inside(self, span: _Span, i: int, suffix: list[int], kind: str, fits: Fits, number: int) -> int:
        """Walk this pass to the item that holds the wanted target; 0 when it is that very target."""
        while number > suffix[i] - suffix[i + 1]:
            number -= suffix[i] - suffix[i + 1]
            i += 1
        self.at[-1] = i
        item = span.items[i]
        if not isinstance(item, _Span):
            return 0
        each = item.suffix(kind, fits)[0]
        skipped = (number - 1) // each
        self.spans.append(item)
        self.at.append(0)
        self.left.append(item.times - skipped)
        return number - skipped * each

    def to_end(self) -> None:
        """Past everything."""
        self.spans, self.at, self.left = self.spans[:1], [self.spans[0].length], [1]
        self.moved += 1

    def rest(self) -> Edge:
        """What stands from here to the end, as an edge."""
        parts: list[Target | Run] = []
        deepest = len(self.spans) - 1
        for depth in range(deepest, -1, -1):
            span = self.spans[depth]
            i = self.at[depth] + (depth < deepest)
            parts += [_edge_item(item) for item in span.items[i:]]
            if self.left[depth] > 1:
                parts.append(Run(self.left[depth] - 1, tuple(_edge_item(item) for item in span.items)))
        return tuple(parts)


def _edge_item(item: Target | _Span) -> Target | Run:
    if isinstance(item, _Span):
        return Run(item.times, tuple(_edge_item(one) for one in item.items))
    return item
