"""Looking at a window from another thread than its own."""

import time
from collections.abc import Callable
from concurrent.futures import Future
from functools import partial
from typing import TypeVar

from PySide6.QtCore import QObject, Signal

T = TypeVar("T")
_PATIENCE = 10.0
"""Seconds to wait for what must come."""


class Eyes(QObject):
    """Each look is taken by Qt's own thread, whichever of its loops is running."""

    _asked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._asked.connect(self._take)

    def see(self, look: Callable[[], T]) -> T:
        """What a look gives; raises what it raises, and TimeoutError where the window no longer answers."""
        seen: Future[T] = Future()
        self._asked.emit(partial(_fulfil, seen, look))
        return seen.result(_PATIENCE)

    def wait_until(self, condition: Callable[[], object], what: str) -> None:
        """Look again and again until a condition holds; `what` is said where it never does."""
        until = time.monotonic() + _PATIENCE
        while not self.see(condition):
            assert time.monotonic() < until, f"waited in vain for {what}"
            time.sleep(0.02)

    def expect(self, look: Callable[[], object], wanted: object) -> None:
        """Look again and again until that is seen which is wanted."""
        until = time.monotonic() + _PATIENCE
        while (seen := self.see(look)) != wanted:
            assert time.monotonic() < until, f"{seen!r} is seen, not {wanted!r}"
            time.sleep(0.02)

    def _take(self, look: Callable[[], None]) -> None:
        look()


def _fulfil(seen: "Future[T]", look: Callable[[], T]) -> None:
    try:
        seen.set_result(look())
    except BaseException as error:  # the one who looks must have it, whatever it is
        seen.set_exception(error)
