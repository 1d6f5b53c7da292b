"""The stage that gestures play on: it runs one at a time, shows its trials and commits them to the document."""

from datetime import date

from PySide6.QtCore import QObject, QPointF, Signal

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import name_of, says, titled
from gardenplot.errors import PlanError
from gardenplot.gestures.stage import Gesture, Pointer, Released, Trial
from gardenplot.plan import Plan, planting_of
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight


class CanvasStage(QObject):
    """What the canvas lends to a gesture."""

    shown = Signal()
    ended = Signal()
    refused = Signal(str)

    def __init__(self, document: Document, sight: Sight, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self._gesture: Gesture | None = None
        self._commits = False
        document.changed.connect(self._abandon)
        self.trial: Trial | None = None
        self.at: QPointF | None = None

    @property
    def plan(self) -> Plan:
        """The plan as it is now."""
        return self._document.plan

    @property
    def day(self) -> date | None:
        """The day that the drawing shows."""
        return self._sight.day

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way."""
        return self._gesture is not None

    def begin(self, gesture: Gesture) -> None:
        """Start a gesture; one that is under way is given up."""
        self.give_up()
        next(gesture)
        self._gesture = gesture

    def send(self, event: Pointer | Released, at: QPointF | None = None) -> None:
        """Tell the gesture where the hand is, or that it let go."""
        if self._gesture is None:
            return
        self.at = at
        try:
            self._gesture.send(event)
        except StopIteration:
            self._end()
        except PlanError as error:
            self._end()
            self.refused.emit(str(error))

    def give_up(self) -> None:
        """End the gesture and show the plan again, exactly as it was."""
        if self._gesture is not None:
            self._gesture.close()
            self._end()

    def show(self, trial: Trial | None) -> None:
        """Draw a trial, or the plan again."""
        self.trial = trial
        self.shown.emit()

    def commit(self, trial: Trial, verb: str) -> None:
        """Make a trial the plan, as one step of undo, and select its planting."""
        self._commits = True
        self._document.change(verb.format(crop=name_of(trial.plan, trial.planting)), trial.plan)
        self._commits = False
        self._sight.show_day(self._sight.day_for(trial.plan, trial.planting))
        self._sight.select(planting_of(trial.plan, trial.planting).bed, trial.planting)

    def refuse(self, trial: Trial) -> None:
        """Say why a trial cannot be."""
        look = looks(trial.plan)
        subject = titled(trial.plan, trial.planting, look)
        self.refused.emit(f"{subject} {says(trial.plan, trial.against[0], look)}")

    def _abandon(self) -> None:
        """Give a gesture up when the plan that it began with is no longer the plan."""
        if not self._commits:
            self.give_up()

    def _end(self) -> None:
        self._gesture = None
        self.at = None
        self.show(None)
        self.ended.emit()
