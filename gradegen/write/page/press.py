"""The typesetter in a process of its own: warmed up while the pattern is still read and worked, and held to limits.

Loading the typesetter takes as long as checking a pattern; on two processors they go on side by side. What lays a page
out can also run for ever (a style sheet or a drawing made to do so): a process of its own can be stopped.
"""

from __future__ import annotations

import os
import pickle
import sys
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from gradegen.findings import Finding, Place
from gradegen.write.page.assets import PageFiles

Findings = tuple[Finding, ...]
Typeset = Callable[[str, PageFiles, Place, str | None], Callable[[], tuple[bytes | None, Findings]]]

_SECONDS, _BYTES = 120, 3_000_000_000  # of processor time and of memory for one document
_LENGTH = 8  # bytes before every message, saying how long it is


@dataclass(slots=True)
class Press:
    """A typesetting process for one page. Leaving its `with` block ends the process."""

    process: int
    to_it: int
    from_it: int

    def typeset(
        self, html: str, files: PageFiles, place: Place, closer: str | None = None
    ) -> Callable[[], tuple[bytes | None, Findings]]:
        """Begins to lay the page out; what it gives back waits for the PDF, or for a finding that says why not."""
        with suppress(BrokenPipeError):
            _send(self.to_it, (html, files, place, closer))
        return lambda: self._finished(place)

    def _finished(self, place: Place) -> tuple[bytes | None, Findings]:
        answer = _receive(self.from_it)
        if isinstance(answer, str):
            raise RuntimeError(answer)  # a fault of ours in the other process
        return answer if answer is not None else _stopped(place)

    def __enter__(self) -> Press:
        return self

    def __exit__(self, *_: object) -> None:
        import signal

        os.close(self.to_it)
        os.close(self.from_it)
        os.kill(self.process, signal.SIGKILL)
        os.waitpid(self.process, 0)


def typeset_here(
    html: str, files: PageFiles, place: Place, closer: str | None = None
) -> Callable[[], tuple[bytes | None, Findings]]:
    """The same in this process."""
    from gradegen.write.page.pdf import pdf_bytes

    return lambda: pdf_bytes(html, files, place, closer)


def start_press() -> Press | None:
    """A typesetting process that begins to load at once; None where processes can't be split off (not on Linux)."""
    if not sys.platform.startswith("linux"):
        return None
    inwards, to_it = os.pipe()
    from_it, outwards = os.pipe()
    process = _split_off()
    if process:
        os.close(inwards)
        os.close(outwards)
        return Press(process, to_it, from_it)
    try:
        os.close(to_it)
        os.close(from_it)
        _serve(inwards, outwards)
    finally:
        os._exit(0)


def _split_off() -> int:
    """Another process like this one: its number here, 0 there."""
    import warnings

    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # that other threads are not taken along is just as well
        return os.fork()


def _serve(inwards: int, outwards: int) -> None:
    """In the new process: loads the typesetter, takes one page, gives back what became of it."""
    import gc

    gc.disable()
    _limit()
    from gradegen.write.page.pdf import pdf_bytes, warm_up

    warm_up()
    asked = _receive(inwards)
    if asked is None:
        return
    try:
        answer: object = pdf_bytes(*asked)
    except MemoryError:
        return
    except Exception as fault:
        answer = f"{type(fault).__name__}: {fault}"
    _send(outwards, answer)


def _limit() -> None:
    import resource

    for what, most in ((resource.RLIMIT_CPU, _SECONDS), (resource.RLIMIT_AS, _BYTES), (resource.RLIMIT_CORE, 0)):
        _, hard = resource.getrlimit(what)
        resource.setrlimit(what, (most if hard == resource.RLIM_INFINITY else min(most, hard), hard))


def _stopped(place: Place) -> tuple[None, Findings]:
    from gradegen.write.page.pdf import NOT_TYPESET

    message = "The page could not be laid out: it took too long or too much memory, and was stopped."
    return None, (NOT_TYPESET.at(place, message),)


def _send(pipe: int, value: object) -> None:
    data = pickle.dumps(value)
    data = len(data).to_bytes(_LENGTH, "big") + data
    while data:
        data = data[os.write(pipe, data) :]


def _receive(pipe: int) -> Any:
    """The next value; None when the other side has gone."""
    head = _read(pipe, _LENGTH)
    data = _read(pipe, int.from_bytes(head, "big")) if head else b""
    return pickle.loads(data) if data else None


def _read(pipe: int, length: int) -> bytes:
    parts: list[bytes] = []
    while length:
        part = os.read(pipe, min(length, 1 << 20))
        if not part:
            return b""
        parts.append(part)
        length -= len(part)
    return b"".join(parts)
