"""Reads how often a repeat runs: `around`, `to last 3 sts`, `6 times`, `twice more`, `x 6`."""

from __future__ import annotations

import re

from slow_worker.places import Places
from slow_worker.steps import Bound, Repeat


class Repeats(Places):
    """The part of reading that understands how often."""

    def _times(self, body: tuple[object, ...], stop_at: int | None, star: bool) -> Repeat:
        """How often: words after `rep from *` or after a closing bracket."""
        self.takes("rep")
        if self.takes("to", "last", "N"):
            self.pos -= 1
            number = self.number()
            return self._ending(body, Bound("last", number, (self._thing(),)), stop_at)
        if self.takes("to", "within", "last"):
            return self._ending(body, Bound("last", self.number(), (self._thing(),)), stop_at)
        if self.takes("to", "last"):
            return self._ending(body, Bound("last", 1, (self._thing(),)), stop_at)
        if self.takes("around|across") or self.takes("to", "end") or self.takes("to", "the", "end"):
            if self.takes("to", "last"):
                number = self.number() if self.see().isdigit() else 1
                return self._ending(body, Bound("last", number, (self._thing(),)), stop_at)
            return self._ending(body, Bound("end"), stop_at)
        if self.takes("to"):
            self.takes("next")
            return Repeat(body, bound=Bound("before", 0, (self._thing(),)))
        counts = self._how_often(star)
        return self._ending(Repeat(body, counts), None, stop_at) if stop_at else Repeat(body, counts)

    def _ending(self, body: tuple[object, ...] | Repeat, bound: Bound | None, stop_at: int | None) -> Repeat:
        counts = body.times if isinstance(body, Repeat) else ()
        steps = body.body if isinstance(body, Repeat) else body
        ahead = 1 if self.see() == "," else 0
        if self.see(ahead) == "ending" and self.see(ahead + 1) == "last" and self.see(ahead + 2) == "rep":
            self.pos += ahead + 3
            if not self.takes("at", "**"):
                raise self.refuse()
            return Repeat(steps, counts, bound, stop_at)
        if self.see(ahead) == "ending":
            self.pos += ahead + 1
            self.takes("with")
        return Repeat(steps, counts, bound)

    def _how_often(self, star: bool) -> tuple[int, ...]:
        if self.takes("once"):
            self.takes("more")
            return (2,) if star else (1,)
        if self.takes("twice"):
            return (3,) if self.takes("more") or star else (2,)
        if self.sees("x") or re.fullmatch(r"x\d+", self.see()):
            return (self._times_sign(),)
        number = self.number()
        if self.takes("more", "times") or self.takes("more", "time") or self.takes("times", "more"):
            return (number + 1,)
        if self.takes("times", "in", "all") or not star:
            self.takes("times|x")
            return (number,)
        if not self.takes("times"):
            raise self.refuse()
        return (number + 1, number) if star else (number,)

    def _times_sign(self) -> int:
        word = self.next()
        return int(word[1:]) if word != "x" else self.number()
