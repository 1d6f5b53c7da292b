"""Work in another process, of which the window hears after so many events and not after so much time."""

from PySide6.QtWidgets import QApplication

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Apart, Parts, Result, Work
from gardenplot.window.long_work import Watched

_FIRST, _LAST = 2, 5
"""After so many events the first word of the work is heard, and what came out of it."""


class InTurn:
    """Stands in for `Apart`: the same work in the same process, but its words are waited for at fixed looks.

    Which words come between the first and the last hangs on time, so these are passed over.
    """

    def __init__(self, work: Work) -> None:
        self._apart = Apart(work)
        self._looks = 0

    def told(self) -> Parts | Result | None:
        """What is heard at this look; raises the GardenplotError that ended the work."""
        self._looks += 1
        if self._looks == _FIRST:
            return self._next()
        word: Parts | Result | None = None
        while self._looks == _LAST and not isinstance(word, Result):
            word = self._next()
        return word

    def end(self) -> None:
        """End it, done or not."""
        self._apart.end()

    def _next(self) -> Parts | Result:
        try:
            word: Parts | Result | GardenplotError = self._apart._pipe.recv()
        except (EOFError, OSError) as error:
            raise GardenplotError("the work ended before it was done") from error
        if isinstance(word, GardenplotError):
            raise word
        self._looks = _LAST if isinstance(word, Result) else self._looks
        return word


def look_at_work() -> None:
    """Let each part of the window that waits for work look at it once."""
    for top in QApplication.topLevelWidgets():
        for watched in top.findChildren(Watched):
            if watched._clock.isActive():
                watched._look()
