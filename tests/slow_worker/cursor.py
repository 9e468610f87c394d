"""One row's words and how far we have read."""

from __future__ import annotations

import re
from collections.abc import Mapping

from slow_worker.steps import CannotReadError
from slow_worker.stitches import HEIGHTS, Own, item_atoms
from slow_worker.words import Word

CLOSERS = {"(": ")", "[": "]", "{": "}"}


class Cursor:
    """Looks at the coming words and takes them."""

    def __init__(self, tokens: list[Word], own: Mapping[str, Own], terms: str, inc: str) -> None:
        self.tokens, self.own, self.terms, self.pos = tokens, own, terms, 0
        self.stitches = HEIGHTS[terms]
        lowest = min(self.stitches, key=self.stitches.__getitem__)
        self.main = inc or next((str(token) for token in tokens if token in self.stitches), lowest)

    @property
    def done(self) -> bool:
        return self.pos >= len(self.tokens)

    def see(self, ahead: int = 0) -> Word:
        at = self.pos + ahead
        return self.tokens[at] if at < len(self.tokens) else Word("")

    def next(self) -> Word:
        word = self.see()
        self.pos += 1
        return word

    def sees(self, *pattern: str) -> bool:
        """Whether the coming words are these (`N` a number, `a|b` either)."""
        for ahead, want in enumerate(pattern):
            word = self.see(ahead)
            if not (word.isdigit() if want == "N" else word in want.split("|")):
                return False
        return True

    def takes(self, *pattern: str) -> bool:
        if self.sees(*pattern):
            self.pos += len(pattern)
            return True
        return False

    def number(self) -> int:
        word = self.next()
        if not word.isdigit():
            raise CannotReadError(f"a number instead of {word!r}")
        return int(word)

    def refuse(self) -> CannotReadError:
        return CannotReadError(" ".join(self.tokens[max(0, self.pos - 2) : self.pos + 5]))

    def _counts_remark(self) -> tuple[str, ...] | None:
        """`(counts as dc, ch 1)`, `(does not count as a st)`; None when nothing of the kind stands here."""
        if not self.sees("(|["):
            return None
        close = self._closing()
        inside = " ".join(self.tokens[self.pos + 1 : close])
        if re.match(r"does not count|not a st|doesn t count|do not count", inside):
            self.pos = close + 1
            return ()
        if found := re.match(r"(?:skipped ch(?:-\d)? )?(?:counts?|stands?) (?:as|for) (.*)$", inside):
            self.pos = close + 1
            return self._counted(found[1])
        return None

    def _counted(self, text: str) -> tuple[str, ...]:
        atoms: list[str] = []
        for part in re.split(r" , | and | plus ", text):
            part = re.sub(r"^(?:a|an|one|first|1|the) ", "", re.sub(r"^(?:a|an|one|first|1|the) ", "", part.strip()))
            part = re.sub(r"^ch-(\d+)(?: sp)?$", r"ch \1", part)
            atoms += ["st"] if part == "st" else item_atoms(part, {})
        return tuple(atoms)

    def _closing(self) -> int:
        """Where the bracket that opens here closes."""
        depth = 0
        for at in range(self.pos, len(self.tokens)):
            if self.tokens[at] in CLOSERS:
                depth += 1
            elif self.tokens[at] in CLOSERS.values():
                depth -= 1
                if depth == 0:
                    return at
        raise CannotReadError("a bracket that never closes")

    def _clause(self) -> str:
        """The words up to the next comma, semicolon or stop."""
        start = self.pos
        while not self.done and self.see() not in (",", ";", ".", ")", "]", "("):
            self.next()
        return " ".join(self.tokens[start : self.pos])
