"""What does not go as planned and what can be done about it, beside the drawing: looked at, then taken or left."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing.opened import Opened
from gardenplot.drawing.remedies import Remedy, Trouble
from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Work
from gardenplot.gestures.proposal import day_to_see, hold, instead
from gardenplot.plan import Plan, planting_of
from gardenplot.window.answers_view import AnswersView
from gardenplot.window.beside_drawing import covered
from gardenplot.window.canvas import Canvas
from gardenplot.window.document import Document
from gardenplot.window.end_buttons import make_strong
from gardenplot.window.fields import LARGE, Choice
from gardenplot.window.long_work import Watched
from gardenplot.window.numbers_button import NumbersButton
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified
from gardenplot.window.wrapping import Wrapping
from gardenplot.words import _

_NARROW_EDGE = 4
"""Pixels round what stands in a narrow dialog, so that two buttons find room beside one another."""


class AnswersDialog(QDialog):
    """Draws the remedy under the mouse or the keyboard over the plan, which is untouched until one is taken.

    What changes the plan gives it all up, as does Escape in the dialog or on the drawing. `which` chooses one of
    several troubles.
    """

    told = Signal(str)
    as_taken: Callable[[Plan, Plan], Plan] = staticmethod(lambda _before, after: after)
    """What the plan of a remedy becomes when it is taken, by the plan before."""

    def __init__(self, document: Document, canvas: Canvas, sight: Sight, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Dialog)
        self._document, self._canvas, self._sight = document, canvas, sight
        self._stage, self._day = canvas.stage, sight.day
        self._work: Watched | None = None
        self._over = False
        self.which, self.view = Choice(), AnswersView()
        self.take, self.leave = QPushButton(_("Take")), QPushButton(_("Leave it"))
        self.numbers, self.foot = NumbersButton(partial(_opened, document, self.view), self), Wrapping(spacing=8)
        self.column = QVBoxLayout(self)
        self._lay_out()
        self._stage.begin(hold(), measuring=True)
        self._stage.ended.connect(self.reject)
        self.view.looked.connect(self._look)
        self.view.table.taken.connect(self._take)
        self.view.explained.connect(self.numbers.click)
        self.take.clicked.connect(self._take)
        self.leave.clicked.connect(self.reject)

    def _lay_out(self) -> None:
        self.which.setAccessibleName(_("Which of them"))
        self.which.take_what_there_is()
        make_strong(self.take)
        self.take.setToolTip(_("Enter, or a double click on its name"))
        self.take.setDefault(True)
        self.leave.setToolTip(_("All stays as it is, as with Escape"))
        ends = QHBoxLayout()
        ends.addStretch(1)
        self.foot.addWidget(self.numbers)
        if magnified() < LARGE:
            for button in (self.leave, self.take):
                ends.addWidget(button)
            self.foot.add_group(ends)
        else:
            for button in (self.leave, self.take):
                self.foot.addWidget(button)
            self.column.setContentsMargins(*(_NARROW_EDGE,) * 4)
        self.column.setSpacing(8)
        self.column.addWidget(self.which)
        self.column.addWidget(self.view, 1)
        self.column.addLayout(self.foot)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return takes what is chosen in the table, and presses the button it is on; in a field it takes nothing."""
        keys = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if event.key() not in keys or self.focusWidget() in (self.view.table, self.take, self.leave, self.numbers):
            super().keyPressEvent(event)

    def done(self, outcome: int) -> None:
        """However it is closed, the work ends and the drawing shows the plan again, on the day that it showed."""
        if self._over:
            return
        self._over = True
        self._end_work()
        self._stage.give_up()
        self._canvas.view.settle()
        self._sight.show_day(self._day)
        super().done(outcome)

    def _found(self, value: object) -> None:
        """The work gave what was sought."""
        raise NotImplementedError

    def seek(self, work: Work, *, at_once: bool, anew: bool = True) -> None:
        """Seek remedies, at once where that takes no time, else in a process of its own; what is shown may stay."""
        self._end_work()
        if anew:
            self.show_nothing(_("Looking for what can be done …"))
        self.take.setEnabled(False)
        if at_once:
            self._found(work.carried_out(lambda *_parts: None))
            return
        self._work = Watched(work, self)
        self._work.ended.connect(self._found)
        self._work.failed.connect(self._fail)

    def show_trouble(self, trouble: Trouble) -> None:
        """Show a trouble with its remedies; one without leaves the plan to be seen as it is."""
        self._stage.show(None)
        self.view.show_trouble(trouble)
        self.view.table.setFocus()
        self.take.setEnabled(bool(trouble.remedies))

    def show_nothing(self, says: str) -> None:
        """Show no remedy, and the plan as it is."""
        self.view.show_nothing(says)
        self.take.setEnabled(False)
        self._stage.show(None)

    def _look(self, remedy: Remedy) -> None:
        """Draw a remedy over the plan, on a day on which it is seen."""
        trial = instead(self._document.plan, remedy.plan)
        self._sight.show_day(day_to_see(trial, self._day))
        self._stage.show(trial)
        about = self.view.trouble.about if self.view.trouble is not None else None
        # What it is about is revealed last, and stays in sight whatever else does.
        shown = sorted(trial.proposed, key=lambda one: one != about)
        for bed in reversed(dict.fromkeys(planting_of(trial.plan, one).bed for one in shown)):
            self._canvas.view.reveal(bed, trial.plan, covered(self, self._canvas.viewport()))

    def _end_work(self) -> None:
        if self._work is not None:
            self._work.end()
            self._work = None

    def _fail(self, error: GardenplotError) -> None:
        self.reject()
        self.told.emit(_("{says}; the plan is as it was").format(says=error.says))

    def _take(self) -> None:
        """Make the chosen remedy the plan, in one step, and select what it is about."""
        remedy = self.view.whole or self.view.chosen
        if remedy is None or not self.take.isEnabled():
            return
        trial = instead(self._document.plan, remedy.plan)
        day = day_to_see(trial, self._day)
        self.accept()
        # The button that led here may be good for nothing any more, and would hand the keyboard on to anything.
        self._canvas.setFocus()
        if not self._document.change(remedy.step, self.as_taken(self._document.plan, remedy.plan)):
            self.told.emit(_("{done}; in the plan all stays where it is").format(done=remedy.step))
        elif trial.proposed:
            self._sight.show_day(day)
            self._sight.choose(remedy.plan, trial.proposed)


def _opened(document: Document, view: AnswersView) -> tuple[Plan, Opened] | None:
    """The numbers of what is looked at, in the units of the plan."""
    opened = view.opened()
    return None if opened is None else (document.plan, opened)
