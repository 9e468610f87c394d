"""A schedule as the trade's sentence, for all sizes or for one alone; rows are read from the same words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from gradegen.design.schedule import Schedule, Scheduled, ScheduleRule
from gradegen.trade.tables import read_table

Slot = tuple[tuple[int, ...], tuple[int, ...]]  # (every, times), each one per size


@cache
def _forms() -> Any:
    return read_table("house_style")["passages"]


def sentence(scheduled: Scheduled, size: str | None = None, *, rounds: bool = False) -> str:
    """The schedule in words: for all sizes with size lists, or for one size with single numbers.

    `rounds`: rows are called rounds. "" where a size it is wanted for could not be worked out.
    """
    schedules = [one for one in scheduled.sizes if one is not None and size in (None, one.size)]
    if not schedules or (size is None and len(schedules) != len(scheduled.sizes)):
        return ""
    words = _Words(scheduled.rule, schedules, "rnd" if rounds else "row", alone=size is not None)
    return words.whole()


@dataclass(frozen=True, slots=True)
class _Words:
    """One schedule in the sizes that are printed. `alone`: on the pages of one size."""

    rule: ScheduleRule
    each: Sequence[Schedule]
    row: str
    alone: bool

    def whole(self) -> str:
        """The whole sentence, by the way the shaping is worked."""
        match self.rule.way:
            case "short rows" | "bust":
                return self.short_rows()
            case "stitch heights":
                return self.heights()
            case "one row":
                return self.one_row()
        return self.over_rows()

    # over rows ------------------------------------------------------------------------------------------------------

    def over_rows(self) -> str:
        parts = [part for part in (self.left_first(), self.shaped(), self.plain()) if part]
        return str(_forms()["then"]).join(parts) or str(_forms()["nothing"])

    def left_first(self) -> str:
        """`leave 6 (7, 8) sts unworked at each end of next row`."""
        if not any(one.leave for one in self.each):
            return ""
        number = [one.leave for one in self.each]
        form = _forms()["leave both" if self.each[0].ends == 2 else "leave"]
        return str(form).format(n=listed(number), sts=_sts(number), edge=self.edge(), row=self.row) + self.skips(number)

    def shaped(self) -> str:
        """`dec 1 st at each end of next row, then every 4th row 6 (7, 8) times`."""
        rates = [self.next_row()] if any(one.first_is_next for one in self.each) else []
        rates += [self.rate(*slot) for slot in self.slots() if any(slot[1])]
        if not rates:
            return ""
        joined = str(_forms()["then"]).join(rates)
        if self.rule.row is not None:
            name = self.rule.row.text.rsplit(" ", 1)
            label = name[0] if len(name) > 1 else self.rule.row.text
            row = name[-1] if len(name) > 1 else self.row
            return str(_forms()["work row"]).format(label=label, row=row, rates=joined)
        return str(_forms()["events"][self.where()]).format(change=self.change(), rates=joined)

    def where(self) -> str:
        return {"both ends": "each end", "one end": "one end", "evenly": "evenly"}[self.rule.each]

    def edge(self) -> str:
        return f"at {self.rule.edge}" if self.rule.edge else "at one end"

    def change(self) -> str:
        """`dec 1 st at each end`."""
        number = [abs(one.by) for one in self.each]
        ups = {one.by > 0 for one in self.each if one.by and any(True for _ in one.events())}
        verb = "inc" if ups == {True} else "dec"
        place = {"both ends": "at each end", "one end": self.edge(), "evenly": "evenly"}[self.rule.each]
        return f"{verb} {listed(number)} {_sts(number)} {place}"

    def next_row(self) -> str:
        number = [int(one.first_is_next) for one in self.each]
        return str(_forms()["next"]).format(row=self.row) + self.skips(number)

    def slots(self) -> list[Slot]:
        """The rates of all sizes side by side: by interval where that skips no more than by their order does."""
        runs = [[run for run in one.runs if run[1]] for one in self.each]
        if len({tuple(every for every, _ in one.runs) for one in self.each if one.runs}) == 1:
            longest = max((one.runs for one in self.each), key=len)
            padded = [one.runs or tuple((every, 0) for every, _ in longest) for one in self.each]
            return _side_by_side(padded)
        by_order, by_interval = _by_order(runs), _by_interval(runs, self.rule)
        return by_interval if by_interval is not None and _skips(by_interval) <= _skips(by_order) else by_order

    def rate(self, every: tuple[int, ...], times: tuple[int, ...]) -> str:
        """`every 4th row 6 (7, 8) times`, with the sizes that skip it."""
        forms = _forms()
        form = forms["every"]
        one = every[0] if len(set(every)) == 1 and every[0] in (1, 2) else "more"
        words = str(form[one]).format(nth=listed([_nth(number) for number in every]), row=self.row)
        once = set(times) == {1}
        return str(forms["once" if once else "times"]).format(rate=words, n=listed(times)) + self.skips(times)

    def skips(self, times: Sequence[int]) -> str:
        """`(S and M: skip this part)`; a size alone never meets a part it skips."""
        names = [one.size for one, number in zip(self.each, times, strict=True) if not number]
        if not names or self.alone:
            return ""
        said = " and ".join([", ".join(names[:-1]), names[-1]] if names[1:] else names)
        return str(_forms()["skip"]).format(sizes=said)

    def plain(self) -> str:
        """`work even for 3 rows`, for rows that are left after the last event."""
        rows = [one.plain for one in self.each]
        if not any(rows):
            return ""
        plural = self.row if set(rows) == {1} else f"{self.row}s"
        return str(_forms()["even"]).format(n=listed(rows), rows=plural)

    # slopes ---------------------------------------------------------------------------------------------------------

    def short_rows(self) -> str:
        """`leave 7 sts unworked at end of next 2 rows, then 8 sts at end of next 4 rows`."""
        both = self.each[0].ends
        parts = []
        for at in range(max(len(one.groups) for one in self.each)):
            groups = [one.groups[at] if at < len(one.groups) else (0, 0) for one in self.each]
            number, rows = [group[0] for group in groups], [group[1] * both for group in groups]
            form = _forms()["short rows" if both == 2 else "short rows at one end"]
            words = str(form["first" if not at else "further"]).format(
                n=listed(number), sts=_sts(number), times=listed(rows), row=self.row, often=_often(rows)
            )
            parts.append(words + self.skips(number))
        joined = str(_forms()["then"]).join(parts)
        after = _forms()["all stitches"].format(row=self.row) if self.rule.way == "bust" and joined else ""
        return joined + after or str(_forms()["nothing"])

    def heights(self) -> str:
        """`sl st in next 5 (6, 6) sts, sc in next 6 sts, hdc in next 6 sts`."""
        parts = []
        for at, stitch in enumerate(self.rule.heights):
            number = [one.groups[at][0] for one in self.each]
            parts.append(f"{stitch} in next {listed(number)} {_sts(number)}")
        return ", ".join(parts)

    def one_row(self) -> str:
        """`(sc in next 6 sts, sc2tog) 5 times, (sc in next 5 sts, sc2tog) 5 times`."""
        stitch = self.rule.stitch
        if all(one.to == one.before for one in self.each):
            return f"{stitch} in each st across"
        if any((one.to < one.before) != (self.each[0].to < self.each[0].before) for one in self.each):
            return ""
        fewer = self.each[0].to < self.each[0].before
        event = f"{stitch}2tog" if fewer else f"2 {stitch} in next st"
        edged = not fewer and self.each[0].groups[-1][1] == 1 and len(self.each[0].groups) > 2
        groups = [one.groups[1:-1] if edged else one.groups for one in self.each]
        slots = _side_by_side([tuple(one) for one in groups])
        parts = [self._group(plain, times, event) for plain, times in slots]
        if edged:
            first, last = ([one.groups[end][0] for one in self.each] for end in (0, -1))
            parts = [self._stretch(first), event, *parts, self._stretch(last)]
        return ", ".join(part for part in parts if part)

    def _group(self, plain: Sequence[int], times: Sequence[int], event: str) -> str:
        if not any(times):
            return ""
        stretch = self._stretch(plain)
        inside = f"{stretch}, {event}" if stretch else event
        return f"({inside}) {listed(times)} times{self.skips(times)}" if set(times) != {1} else inside

    def _stretch(self, number: Sequence[int]) -> str:
        return f"{self.rule.stitch} in next {listed(number)} {_sts(number)}" if any(number) else ""


def _side_by_side(runs: Sequence[Sequence[tuple[int, int]]]) -> list[Slot]:
    """Runs of all sizes by their order; where a size has fewer, its last interval runs no times."""
    slots: list[Slot] = []
    for at in range(max((len(own) for own in runs), default=0)):
        usual = next((own[at][0] for own in runs if at < len(own)), 1)
        taken = [own[at] if at < len(own) else ((own[-1][0] if own else usual), 0) for own in runs]
        slots.append((tuple(every for every, _ in taken), tuple(times for _, times in taken)))
    return slots


_by_order = _side_by_side


def _skips(slots: Sequence[Slot]) -> int:
    """How many entries are 0 times."""
    return sum(not often for _, times in slots for often in times)


def _by_interval(runs: Sequence[Sequence[tuple[int, int]]], rule: ScheduleRule) -> list[Slot] | None:
    """One slot an interval, where all sizes use them in one order; None where they do not."""
    intervals = sorted({every for own in runs for every, _ in own}, reverse=rule.curve == "round")
    in_order = all([every for every, _ in own] == [e for e in intervals if e in dict(own)] for own in runs)
    once = all(len(dict(own)) == len(own) for own in runs)
    if not in_order or not once:
        return None
    return [((every,) * len(runs), tuple(dict(own).get(every, 0) for own in runs)) for every in intervals]


def listed(values: Sequence[object]) -> str:
    """`6`, or one per size as `6 (7, 8)`."""
    texts = [str(value) for value in values]
    if len(set(texts)) == 1:
        return texts[0]
    return f"{texts[0]} ({', '.join(texts[1:])})"


def _often(times: Sequence[int]) -> str:
    return "once" if set(times) == {1} else f"{listed(times)} times"


def _sts(numbers: Sequence[int]) -> str:
    return "st" if set(numbers) == {1} else "sts"


def _nth(number: int) -> str:
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def joined_sentences(parts: Sequence[Scheduled], size: str | None = None, *, rounds: bool = False) -> str:
    """The first schedule's sentence, and each further one `at the same time`, with the row it begins on."""
    if len(parts) == 1:
        return sentence(parts[0], size, rounds=rounds)
    each = [[one for one in part.sizes if one is not None and size in (None, one.size)] for part in parts]
    row, words = "rnd" if rounds else "row", ""
    for part, schedules in zip(parts, each, strict=True):
        said = _Words(part.rule, [replace(one, plain=0) for one in schedules], row, alone=size is not None).over_rows()
        if said == _forms()["nothing"]:
            continue
        form = _forms()["same time"] if words else "{after}{shaping}"
        words += str(form).format(after=_begins(schedules, rounds), shaping=said)
    rest = [replace(together[0], plain=_rest(together)) for together in zip(*each, strict=True)]
    plain = _Words(parts[0].rule, rest, row, alone=size is not None).plain()
    return str(_forms()["then"]).join(part for part in (words, plain) if part) or str(_forms()["nothing"])


def _rest(together: Sequence[Schedule]) -> int:
    """Rows left after the last event of all."""
    used = max(one.after + one.used if any(True for _ in one.events()) else 0 for one in together)
    return max(one.after + one.rows for one in together) - used


def _begins(schedules: Sequence[Schedule], rounds: bool) -> str:
    """`beg with row 9 (11, 13) of these, `; "" where all begin at once."""
    if not any(one.after for one in schedules):
        return ""
    begins = listed([one.after + 1 for one in schedules])
    return str(_forms()["after"]).format(row="rnd" if rounds else "row", n=begins)
