"""Reads where a step goes: `next 3 sts`, `each st to last 2 sts`, `same sp`, `2nd ch from hook`."""

from __future__ import annotations

import re

from slow_worker.cursor import Cursor
from slow_worker.steps import Bound, CannotReadError, Place
from slow_worker.stitches import POST, TOGETHER, printed


class Places(Cursor):
    """The part of reading that understands places."""

    def _place(self) -> Place:
        """Where: `next 3 sts`, `each st to last 2 sts`, `same sp`, `2nd ch from hook`, `ring`, `top of ch-3` ..."""
        self.takes("the")
        top = self.takes("top", "of")
        if self.takes("turning", "ch") or self.takes("tch") or self._takes_that_chain() or (top and self.takes("ch")):
            return Place("tch")
        self.takes("a")
        if self.takes("ring|mr") or self.takes("magic", "ring|circle"):
            return Place("ring")
        if re.fullmatch(r"\d+(?:st|nd|rd|th)", self.see()) or self.sees("centre", "st|sc|dc|hdc|tr", "of"):
            return self._numbered()
        if self.takes("same"):
            return self._same()
        if self.takes("each|every|all"):
            return self._each()
        for which in ("next", "first", "last"):
            if self.takes(which):
                number = self.number() if self.see().isdigit() else 1
                return Place(which, (self._thing(),), number)
        return Place("here", (self._thing(),))

    def _takes_that_chain(self) -> bool:
        """`ch-3` as in `top of ch-3`: the turning chain, not a ch-3 sp."""
        if re.fullmatch(r"ch-\d+", self.see()) and self.see(1) not in ("sp", "of"):
            self.next()
            return True
        return False

    def _numbered(self) -> Place:
        word = self.next()
        nth = int(re.sub(r"\D", "", word)) if word != "centre" else None
        if self.takes("ch", "from", "hook") or self.takes("st", "from", "hook"):
            return Place("hook", ("ch",), nth=nth)
        if self.takes("ch|st", "of", "turning", "ch"):
            return Place("tch")
        if self.sees("ch", "of") and self.see(2).startswith("ch-"):
            self.pos += 3
            return Place("tch")
        kind = self._thing()
        if not self.takes("of"):
            raise self.refuse()
        which = str(self.next())
        if which not in ("next", "first", "each"):
            raise self.refuse()
        if re.fullmatch(r"\d+-[a-z]+", self.see()):
            self.next()
        else:
            size = self.own.get(str(self.see()))
            if size is None and self.see() != "group":
                raise self.refuse()
            self.next()
        self.takes("group")
        return Place("nth", (kind,), nth=nth)

    def _same(self) -> Place:
        if self.takes("place"):
            kinds: tuple[str, ...] = ("place",)
        else:
            kinds = (self._thing(),)
        if self.takes("as"):
            self._clause()
        return Place("same", kinds)

    def _each(self) -> Place:
        if self.takes("of"):
            self.takes("the")
            which = str(self.next()) if self.see() in ("next", "first", "last") else "next"
            number = self.number()
            return Place(which, (self._thing(),), number)
        self.takes("rem|remaining")
        kinds = [self._thing()]
        while self.sees("and", "sc|hdc|dc|tr|htr|st|sp|picot") and self.see(2) != "in":
            self.next()
            kinds.append(self._thing())
        while self.sees("and") and (re.fullmatch(r"ch-\d+", self.see(1)) or str(self.see(1)) in self.own):
            self.next()
            kinds.append(self._thing())
        return Place("each", tuple(kinds), bound=self._bound() if self._bound_here() else Bound("end"))

    def _bound_here(self) -> bool:
        return self.see() in ("around", "across", "even") or self.sees("to")

    def _bound(self) -> Bound:
        if self.takes("even") or (self.takes("around|across") and not self.sees("to", "last")):
            return Bound("end")
        if not self.takes("to"):
            raise self.refuse()
        self.takes("the|next")
        if self.takes("end|join"):
            return Bound("end")
        if self.takes("within"):
            self.takes("last")
            return Bound("last", self.number(), (self._thing(),))
        if self.takes("last"):
            number = self.number() if self.see().isdigit() else 1
            return Bound("last", number, (self._thing(),))
        return Bound("before", 0, (self._thing(),))

    def _thing_here(self) -> bool:
        mark = self.pos
        try:
            self._thing()
        except CannotReadError:
            return False
        finally:
            self.pos = mark
        return True

    def _thing(self) -> str:
        """The kind of place that stands here, as `matches` knows it."""
        word = str(self.next())
        if found := re.fullmatch(r"ch-(\d+)|(\d+)-ch", word):
            self.takes("corner")
            if not self.takes("sp"):
                raise self.refuse()
            return f"ch-{found[1] or found[2]} sp"
        if word == "corner":
            self.takes("sp")
            return "corner"
        if word == "row" and self.takes("end|ends"):
            return "row end"
        if word == "freeloop" or (word == "free" and self.takes("sp")):
            return "free loop"
        if word in self.own and len(self.own[word].atoms) == 1:
            return self.own[word].name if self.own[word].atoms != ("picot",) else "picot"
        if word == "st" and self.takes("or", "sp"):
            return "place"
        if word in ("st", "sp", "ch", "picot") or word in self.stitches:
            return word
        if POST.fullmatch(word) or TOGETHER.fullmatch(word):
            return printed(word)
        self.pos -= 1
        raise self.refuse()
