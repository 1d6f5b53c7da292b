"""The document: the current plan, its undo stack and its file; `change` is the only door to the plan."""

import os
import zlib
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from gardenplot.plan import Plan
from gardenplot.plan.file import Opened, read_plan
from gardenplot.plan.saving import Saved, changed_on_disk, save_plan, sweep
from gardenplot.window.own_folder import versions
from gardenplot.words import _


class Step(QUndoCommand):
    """One step of undo, for every kind of edit: the plan before and the plan after."""

    def __init__(self, document: "Document", name: str, before: Plan, after: Plan, merge: str) -> None:
        super().__init__(name)
        self._document = document
        self._before, self._after = before, after
        self._merge = merge

    def redo(self) -> None:
        self._document._show(self._after)

    def undo(self) -> None:
        self._document._show(self._before)

    def id(self) -> int:
        return zlib.crc32(self._merge.encode()) & 0x7FFFFFFF if self._merge else -1

    def mergeWith(self, other: QUndoCommand) -> bool:
        if not isinstance(other, Step) or other._merge != self._merge:
            return False
        self._after = other._after
        self.setText(other.text())
        self.setObsolete(self._after == self._before)
        return True


class Document(QObject):
    """Holds the plan; emits `changed(before, after)` for each other one, then `opened` for a new one; and `saved`.

    `changing` comes before all of that, while the plan is still the old one.
    """

    changing = Signal()
    changed = Signal(object, object)
    opened = Signal()
    saved = Signal()
    today: Callable[[], date] = staticmethod(date.today)
    """Tells the day on which the plan is looked at: the one clock of the window."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._plan = Plan()
        self._saved: Plan | None = self._plan
        self.path: Path | None = None
        self.seen: str | None = None
        """The mark of what the file held when it was opened or saved here."""
        self.stack = QUndoStack(self)
        # At the end it throws its steps away and tells of it, to those who would ask what it is then.
        self.destroyed.connect(partial(self.stack.blockSignals, True))

    @property
    def plan(self) -> Plan:
        """The plan as it is now."""
        return self._plan

    @property
    def name(self) -> str:
        """What the document is called: its place's name, else its file's."""
        return self._plan.place.name or (self.path.stem if self.path else _("New plan"))

    @property
    def is_saved(self) -> bool:
        """Whether the plan is the one that was opened or saved last; coming back to it in any way counts.

        A plan that was begun here and never saved is not.
        """
        return self._plan is self._saved or self._plan == self._saved

    @property
    def last_saved(self) -> Plan | None:
        """The plan as it was opened or saved last; None for one that was begun here and never saved."""
        return self._saved

    def change(self, name: str, plan: Plan, merge: str = "") -> bool:
        """Make another plan the current one, as one step of undo; a plan that is no other makes no step.

        Steps with the same `merge` that follow one another become one, as in typing and nudging.
        """
        if plan is self._plan or plan == self._plan:
            return False
        self.stack.push(Step(self, name, self._plan, plan, merge))
        return True

    @property
    def changed_on_disk(self) -> bool:
        """Whether somebody else has written to the file since it was opened or saved here."""
        return self.path is not None and self.seen is not None and changed_on_disk(self.path, self.seen)

    def start(self, plan: Plan, path: Path | None = None, *, seen: str | None = None, kept: bool = True) -> None:
        """Begin with another plan; the steps of undo are gone.

        `seen` is the mark of what is in its file; a plan that is not `kept` anywhere yet is one to be saved.
        """
        self.path, self.seen = path, seen
        self.stack.clear()
        self._saved = plan if kept else None
        if not kept:
            self.stack.resetClean()
        self._show(plan)
        self.opened.emit()

    def open(self, path: Path, *, example: bool = False, found: Opened | None = None) -> tuple[str, ...]:
        """Open a plan file and give the problems found in it; raises FileError, and then nothing is changed.

        An example is opened as a plan without a file. What was `found` in it is not read again.
        """
        found = found or read_plan(path)
        if example:
            self.start(found.plan)
        else:
            sweep(path, versions())
            self.start(found.plan, path, seen=found.seen)
        return found.problems

    def save(self, path: Path, *, over: bool = False) -> Saved:
        """Write the plan to a file, which is the document's from then on.

        Raises ChangedError where somebody else has written to the document's own file, unless that is to be written
        `over`, and FileError.
        """
        own = self.path is not None and os.path.realpath(self.path) == os.path.realpath(path)
        saved = save_plan(path, self._plan, self.seen if own and not over else None, versions())
        self.path, self.seen = path, saved.seen
        self._saved = self._plan
        self.stack.setClean()
        self.saved.emit()
        return saved

    def _show(self, plan: Plan) -> None:
        self.changing.emit()
        before, self._plan = self._plan, plan
        self.changed.emit(before, plan)
