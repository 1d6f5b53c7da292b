"""Reading a large plan in a thread, with all that the window asks of it, while the window lives on."""

import gc
import threading
from collections.abc import Callable, Iterator
from contextlib import suppress
from datetime import date
from pathlib import Path
from typing import cast

from PySide6.QtWidgets import QWidget

from gardenplot.drawing import shopping_list
from gardenplot.drawing.tables import summary
from gardenplot.errors import GardenplotError
from gardenplot.exports import apart
from gardenplot.findings import find_all
from gardenplot.layout import lay_out_plan
from gardenplot.plan.file import Opened, read_plan
from gardenplot.season.extent import season_of
from gardenplot.window import long_work
from gardenplot.window.ledger_lines import count_lines, date_lines
from gardenplot.words import _

_LARGE = 100_000
"""Bytes from which on a file is read beside the window: some 400 plantings."""
_STEPS = 4


class Aside:
    """Reads in a thread, step by step; what comes of it is remembered by value, so the window finds it at once.

    A process could not remember it for the window. A thread takes turns with the window at Python's lock every 5 ms.
    Meanwhile nobody looks for garbage in that thread, as in `garbage.py`.
    """

    def __init__(self, steps: Iterator[object]) -> None:
        self._steps = steps
        self._done = 0
        self._value: object = None
        self._error: BaseException | None = None
        self._ends = False
        self._had_looks = gc.isenabled()
        gc.disable()
        self._thread = threading.Thread(target=self._go, daemon=True)
        self._thread.start()

    def told(self) -> "apart.Parts | apart.Result | None":
        """How far it is; raises what went wrong."""
        if self._thread.is_alive():
            return apart.Parts(self._done, _STEPS)
        if self._error is not None:
            raise self._error
        return apart.Result(self._value)

    def end(self) -> None:
        """Go no further than the step that is under way."""
        self._ends = True
        self._thread.join()
        # A large plan is many parts, none of which is garbage: the first look would hold the window up.
        gc.freeze()
        if self._had_looks:
            gc.enable()

    def _go(self) -> None:
        try:
            for value in self._steps:
                self._value, self._done = value, self._done + 1
                if self._ends:
                    break
        except Exception as error:  # it is raised where it is asked for
            self._error = error


def read_aside(path: Path, today: date, parent: QWidget) -> Opened | None:
    """Read a plan file; None where the grower stopped that. Raises FileError."""
    if not _is_large(path):
        return read_plan(path)
    words = _("Opening {file} …").format(file=path.name)
    found = long_work.carried_out(words, Aside(_read(path, today)), parent)
    return cast(Opened | None, found)


def _read(path: Path, today: date) -> Iterator[Opened]:
    found = read_plan(path)
    yield found
    first: tuple[Callable[[], object], ...] = (
        lambda: (lay_out_plan(found.plan), season_of(found.plan), summary(found.plan)),
        lambda: (find_all(found.plan, today), count_lines(found.plan)),
        # Tables that are turned to later: what they ask of each bed stays known through edits of other beds.
        lambda: (date_lines(found.plan), shopping_list.shop_groups(found.plan)),
    )
    for each in first:
        # What goes wrong here does so in the window too, where it is told.
        with suppress(GardenplotError):
            each()
        yield found


def _is_large(path: Path) -> bool:
    try:
        return path.stat().st_size >= _LARGE
    except (OSError, ValueError):
        return False
