"""The document: the current plan, its undo stack and its file; `change` is the only door to the plan."""

import zlib
from collections.abc import Callable
from datetime import date
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from gardenplot.plan import Plan
from gardenplot.plan.file import read_plan, write_plan
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
    """Holds the plan; emits `changed(before, after)` for each other one, then `opened` for a new one; and `saved`."""

    changed = Signal(object, object)
    opened = Signal()
    saved = Signal()
    today: Callable[[], date] = staticmethod(date.today)
    """Tells the day on which the plan is looked at: the one clock of the window."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._plan = self._saved = Plan()
        self.path: Path | None = None
        self.stack = QUndoStack(self)

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
        """Whether the plan is the one that was opened or saved last; coming back to it in any way counts."""
        return self._plan is self._saved or self._plan == self._saved

    def change(self, name: str, plan: Plan, merge: str = "") -> bool:
        """Make another plan the current one, as one step of undo; a plan that is no other makes no step.

        Steps with the same `merge` that follow one another become one, as in typing and nudging.
        """
        if plan is self._plan or plan == self._plan:
            return False
        self.stack.push(Step(self, name, self._plan, plan, merge))
        return True

    def start(self, plan: Plan, path: Path | None = None) -> None:
        """Begin with another plan; the steps of undo are gone."""
        self.path = path
        self.stack.clear()
        self._saved = plan
        self._show(plan)
        self.opened.emit()

    def open(self, path: Path, *, example: bool = False) -> tuple[str, ...]:
        """Open a plan file and give the problems found in it; raises FileError, and then nothing is changed.

        An example is opened as a plan without a file.
        """
        found = read_plan(path)
        self.start(found.plan, None if example else path)
        return found.problems

    def save(self, path: Path) -> None:
        """Write the plan to a file, which is the document's from then on; raises FileError."""
        write_plan(path, self._plan)
        self.path = path
        self._saved = self._plan
        self.stack.setClean()
        self.saved.emit()

    def _show(self, plan: Plan) -> None:
        before, self._plan = self._plan, plan
        self.changed.emit(before, plan)
