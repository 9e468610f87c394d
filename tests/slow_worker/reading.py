"""Words to steps, by a plain descent. What it does not understand it refuses: `CannotReadError`."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from slow_worker.cursor import CLOSERS
from slow_worker.repeats import Repeats
from slow_worker.steps import (
    Bound,
    CannotReadError,
    Chain,
    Choice,
    Each,
    Evenly,
    Join,
    Leave,
    OtherSide,
    Place,
    Repeat,
    Skip,
    Slip,
    Turn,
    UndefinedError,
    Work,
)
from slow_worker.stitches import POST, TOGETHER, Own, item_atoms, printed
from slow_worker.words import Word, words

ENDS = ("around", "across", "end")
NOISE = (",", ";", ".", ":", "and", "then", "now", "also", "last", "working", "work", "begin", "start", "with", "make")


def read(plain: str, own: Mapping[str, Own], terms: str = "US", inc: str = "") -> tuple[object, ...]:
    """The steps of one row, already spelled and without its stated count."""
    reader = Reader(words(plain), own, terms, inc)
    steps = reader.steps(lambda: False)
    if not reader.done:
        raise CannotReadError(" ".join(reader.tokens[reader.pos :][:6]))
    return steps


class Reader(Repeats):
    """The part of reading that understands steps and repeats."""

    # -- a row of steps ----------------------------------------------------------------------------------------------

    def steps(self, ends: Callable[[], bool]) -> tuple[object, ...]:
        """Steps until `ends()` or the words run out."""
        made: list[object] = []
        while not self.done and not ends():
            if self.see() in NOISE and not self.sees("work|make", "even"):
                self.next()
            elif self.sees("x", "N") or re.fullmatch(r"x\d+", self.see()):
                self._bind_loosely(made)
            else:
                made += self.step(made)
        return tuple(made)

    def _bind_loosely(self, made: list[object]) -> None:
        """`sc, inc x 6` without brackets: the last step, or everything so far."""
        times = self._times_sign()
        last, all_ = (*made[:-1], Repeat((made[-1],), (times,))), (Repeat(tuple(made), (times,)),)
        made[:] = [last[0]] if len(made) == 1 else [Choice((last, all_))]

    def step(self, before: list[object]) -> list[object]:
        word = self.see()
        if word in ("*", "**"):
            return self._star()
        if word in CLOSERS:
            return self._bracket()
        if self.sees("ch", "N") or re.fullmatch(r"ch\d+", word):
            return [self._chain()]
        simple = {
            "join": self._join,
            "turn": self._turn,
            "slst": self._slip,
            "sk": self._skip,
            "leaving": self._leave,
            "leave": self._leave,
        }
        if word in simple:
            return [simple[str(word)]()]
        if self.takes("along", "other|opposite|second", "side") or self.takes("other|opposite|second", "side"):
            self.takes("of", "ch|chain")
            return [OtherSide()]
        if word in ("increasing", "decreasing"):
            return [self._evenly(1 if word == "increasing" else -1)]
        if self.sees("in|into", "next|each|same|corner|first|last|ring"):
            return self._place_first()
        return self._work()

    # -- small steps -------------------------------------------------------------------------------------------------

    def _chain(self) -> Chain:
        word = self.next()
        number = int(word[2:]) if word != "ch" else self.number()
        return Chain(number, self._counts_remark())

    def _join(self) -> object:
        self.next()
        clause = self._clause()
        if found := re.search(r"\bin (?:any|first|next|corner) ?(?:corner )?(ch-\d+ sp|sp|st|sc|dc|hdc)$", clause):
            first = found[1] in ("st", "sc", "dc", "hdc")
            if not clause.startswith(("with slst in", "with slst to")) and not first:
                return Slip(Place("next", ("corner" if "corner" in clause else found[1],)))
        return Join(ring=bool(re.search(r"ring|first ch\b", clause)))

    def _turn(self) -> Turn:
        self.next()
        return Turn()

    def _leave(self) -> Leave:
        if "unworked" not in self._clause():
            raise self.refuse()
        return Leave()

    def _slip(self) -> Slip:
        self.next()
        if self.takes("in|into|to|across|over"):
            self.takes("the")
            if self.takes("centre", "of"):
                self.takes("the")
            return Slip(self._place())
        return Slip(Place("next"))

    def _skip(self) -> Skip:
        self.next()
        self.takes("the")
        which = "first" if self.takes("first") else "next"
        if which == "next":
            self.takes("next")
        number = self.number() if self.see().isdigit() else 1
        if self.takes("in|for", "thumb|sleeve|underarm"):
            return Skip(Place(which, ("st",), number))
        kinds = (self._thing(),) if self._thing_here() else ("st",)
        if self.takes("for"):
            self._clause()
        return Skip(Place(which, kinds, number))

    def _evenly(self, sign: int) -> Evenly:
        self.next()
        number = self.number()
        self._thing()
        if self.takes("at", "each", "end"):
            return Evenly(sign * number * 2)
        if not self.takes("evenly"):
            raise self.refuse()
        self.takes("spaced")
        self.takes("across|around")
        return Evenly(sign * number)

    # -- repeats -----------------------------------------------------------------------------------------------------

    def _star(self) -> list[object]:
        mark = str(self.next())
        stop: list[int] = []

        def over() -> bool:
            return self.see() == mark or self.see() in ENDS or self.sees("rep", "from", mark) or self.sees("rep", mark)

        body: list[object] = []
        while not self.done and not over():
            if mark == "*" and self.see() == "**" and self._ends_at_double():
                self.next()
                stop.append(len(body))
            elif self.see() in NOISE:
                self.next()
            elif self.sees("x", "N"):
                self._bind_loosely(body)
            else:
                body += self.step(body)
        if self.done:
            raise CannotReadError("a * that never repeats")
        if self.takes(mark):  # a closed pair
            while self.see() in (",", ";", "."):
                self.next()
            self.takes("rep", mark, "to", mark) or self.takes("rep", "from", mark, "to", mark)
            self.takes("rep", mark, mark)
        elif self.takes("rep", "from", mark, "to", mark) or self.takes("rep", "from", mark) or self.takes("rep", mark):
            pass
        return [self._times(tuple(body), stop[0] if stop else None, star=True)]

    def _ends_at_double(self) -> bool:
        rest = " ".join(self.tokens[self.pos :])
        return bool(re.search(r"ending last rep at \*\*", rest))

    def _bracket(self) -> list[object]:
        """A repeat, a group for one place, or a remark."""
        close = self._closing()
        after = self.tokens[close + 1] if close + 1 < len(self.tokens) else Word("")
        inside = self.tokens[self.pos + 1 : close]
        if after in ("in", "into"):
            atoms = self._group(inside)
            self.pos = close + 2
            return [self._placed(Work(atoms, Place("next")))]
        if len(inside) <= 2 and (not after or after in (",", ";", ".")):
            self.pos = close + 1  # a remark such as (shell) or (picot made)
            return []
        inner = Reader(list(inside), self.own, self.terms, self.main)
        body = inner.steps(lambda: False)
        self.pos = close + 1
        return [self._times(body, None, star=False)]

    def _group(self, inside: list[Word]) -> tuple[str, ...]:
        atoms: list[str] = []
        parts: list[list[Word]] = [[]]
        for word in inside:
            if word in (",", "and", "/"):
                parts.append([])
            else:
                parts[-1].append(word)
        for part in parts:
            atoms += self._item(part)
        return tuple(atoms)

    def _item(self, part: list[Word]) -> list[str]:
        names = [word for word in part if not word.isdigit()]
        numbers = [int(word) for word in part if word.isdigit()]
        if len(names) == 1 and str(names[0]) in self.own and len(numbers) <= 1:
            return list(self.own[str(names[0])].atoms) * (numbers[0] if numbers else 1)
        return [printed(atom) for atom in item_atoms(" ".join(part), {})]

    # -- working into places -----------------------------------------------------------------------------------------

    def _place_first(self) -> list[object]:
        """`in next sp make 2 dc, ch 1 and 2 dc`: the items end after `and`."""
        self.next()
        place = self._place()
        self.takes("make|work")
        if self.sees("("):
            close = self._closing()
            atoms = self._group(self.tokens[self.pos + 1 : close])
            self.pos = close + 1
            return [Work(atoms, place)]
        atoms_list: list[str] = []
        many = "and" in self.tokens[self.pos : self.pos + 12]
        while True:
            part: list[Word] = []
            while not self.done and self.see() not in (",", "and", ".", ";", ")", "*", "rep"):
                part.append(self.next())
            atoms_list += self._item(part)
            if not many or self.see() not in (",", "and"):
                return [Work(tuple(atoms_list), place)]
            many = self.next() != "and"

    def _work(self) -> list[object]:
        """A stitch and where it goes."""
        if self.see(1) == "/":  # dc2/ch2/dc2 in next sp
            end = self.tokens.index("in", self.pos) if "in" in self.tokens[self.pos :] else self.pos
            atoms = self._group(self.tokens[self.pos : end])
            self.pos = end + 1
            return [self._placed(Work(atoms, Place("next")))]
        found = re.fullmatch(r"([a-z]+)(\d+)", self.see())
        if found and found[1] in self.stitches:  # dc2: two, one in each
            self.tokens[self.pos : self.pos + 1] = words(f"{found[1]} {found[2]}")
        count = self.number() if self.see().isdigit() else None
        glued = count is not None and self.see().glued
        atoms, unit, takes = self._stitch(count is not None)
        if self.see().isdigit() and count is None and not self.sees("N", "times|more|x"):
            count = self.number()
            return [self._after_count(atoms, unit, takes, count, glued=False, behind=True)]
        return [self._after_count(atoms, unit, takes, count, glued, behind=False)]

    def _stitch(self, counted: bool) -> tuple[tuple[str, ...], str, int]:
        """Atoms, the name it was called by when it is a group, how many places one of it takes."""
        word = str(self.next())
        if word in self.own:
            return self._own_stitch(word)
        if word in ("inc", "dec"):
            return ((self.main, self.main), "", 1) if word == "inc" else ((f"{self.main}2tog",), "", 2)
        if word in self.stitches and self.see() in ("inc", "dec"):
            return ((word, word), "", 1) if self.next() == "inc" else ((f"{word}2tog",), "", 2)
        if found := TOGETHER.fullmatch(word):
            return (word,), "", int(found[2])
        if word in self.stitches or POST.fullmatch(word):
            return (printed(word),), "", 1
        if not counted and self.sees("in|into|around", "next|each|first|last|same") and re.fullmatch(r"[a-z-]+", word):
            raise UndefinedError(word)
        self.pos -= 1
        raise self.refuse()

    def _own_stitch(self, word: str) -> tuple[tuple[str, ...], str, int]:
        own = self.own[word]
        if own.macro or not own.atoms:
            raise CannotReadError(f"{own.name} as explained")
        return own.atoms, own.name if len(own.atoms) > 1 else "", 1

    def _after_count(
        self, atoms: tuple[str, ...], unit: str, takes: int, count: int | None, glued: bool, behind: bool
    ) -> object:
        if takes > 1:  # sc2tog, dec
            return self._together(atoms, takes, count)
        if self.sees("in|into|over|under") or self.sees("around", "next|each|first|last|same"):
            self.next()
            times = count or 1
            return self._placed(Work(atoms * times, Place("next"), unit if times == 1 else ""))
        if self._bound_here():
            return Work(atoms, Place("each", bound=self._bound()), unit)
        if atoms == ("picot",):
            return Work(atoms, Place("here"))
        if count is None and self.takes("twice"):
            return Repeat((Work(atoms, Place("next"), unit),), (2,))
        if count is None and self.sees("N", "times|x"):
            times = self.number()
            self.next()
            return Repeat((Work(atoms, Place("next"), unit),), (times,))
        each = Work(atoms, Place("next", number=count or 1), unit)
        if glued and (count or 0) > 1 and not behind:
            return Choice(((each,), (Work(atoms * (count or 1), Place("next")),)))
        return each

    def _together(self, atoms: tuple[str, ...], takes: int, count: int | None) -> object:
        kinds: tuple[str, ...] = ("st",)
        if self.takes("over|in", "next", "N"):
            kinds = (self._thing(),)
        one = Work(atoms, Place("next", kinds, takes), together=True)
        if self.takes("over|in", "last", "N"):
            one = Work(atoms, Place("last", (self._thing(),), takes), together=True)
        if count:
            return Repeat((one,), (count,))
        if self.takes("twice"):
            return Repeat((one,), (2,))
        if self.sees("N", "times|x"):
            times = self.number()
            self.next()
            return Repeat((one,), (times,))
        if self._bound_here():
            return Repeat((one,), bound=self._bound())
        return one

    def _placed(self, work: Work) -> object:
        """`work` at the place that stands here, with what may follow: `and in each ch`, `and 2 sc in each sp`."""
        place = self._place()
        skipped = self._counts_remark() if place.which == "hook" else None
        first = Work(work.atoms, place, work.unit, skipped=skipped)
        if place.which != "each" or not self.sees("and"):
            if self.sees("and|,", "in", "each|next|every"):
                self.pos += 2
                more = self._placed(work)
                return Choice(((first, more),))
            return self._times_of(first)
        lots = [(work.atoms, place.kinds)]
        while self.sees("and"):
            mark = self.pos
            self.next()
            atoms = work.atoms
            if not self.sees("in"):
                times = self.number() if self.see().isdigit() else 1
                if self.see() not in self.stitches:
                    self.pos = mark
                    break
                atoms = (str(self.next()),) * times
            if not self.takes("in"):
                self.pos = mark
                break
            other = self._place()
            lots.append((atoms, other.kinds))
            place = other
        return Each(tuple(lots), place.bound or Bound("end"))

    def _times_of(self, work: Work) -> object:
        if self.takes("twice"):
            return Repeat((work,), (2,))
        return work
