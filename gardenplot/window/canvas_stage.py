"""The stage that gestures play on: it runs one at a time, shows its trials and commits them to the document."""

from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPointF, Signal

from gardenplot.drawing import hand_words
from gardenplot.drawing.handles import Grip
from gardenplot.drawing.letters import looks_in_hand
from gardenplot.drawing.sayings import titled
from gardenplot.errors import PlanError
from gardenplot.plan import Plan, bed_of
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight

if TYPE_CHECKING:
    from gardenplot.gestures.stage import Event, Gesture, Trial


class CanvasStage(QObject):
    """What the canvas lends to a gesture."""

    shown = Signal()
    ground_wanted = Signal(bool)
    ended = Signal()
    refused = Signal(str)

    def __init__(self, document: Document, sight: Sight, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self._gesture: Gesture | None = None
        self._commits = False
        self.is_on_ground = self.is_measuring = self.is_filling = self.in_bits = False
        document.changing.connect(self._abandon)
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

    def begin(
        self, gesture: "Gesture", *, on_ground: bool = False, measuring: bool = False, filling: bool = False
    ) -> None:
        """Start a gesture, perhaps one on empty ground under the beds, one that measures or one that fills gaps.

        One that is under way is given up.
        """
        self.give_up()
        next(gesture)
        self._gesture = gesture
        self.is_on_ground, self.is_measuring, self.is_filling = on_ground, measuring, filling
        self.ground_wanted.emit(on_ground)

    def send(self, event: "Event", at: QPointF | None = None) -> None:
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

    def show(self, trial: "Trial | None", *, in_bits: bool = False) -> None:
        """Draw a trial, or the plan again; in bits where something else is going on, which that would hold up."""
        self.trial, self.in_bits = trial, in_bits
        self.shown.emit()

    def commit(self, trial: "Trial", verb: str, merge: str = "") -> None:
        """Make a trial the plan, as one step of undo, and select what it is about.

        Steps with the same `merge` that follow one another become one, as in nudging.
        """
        self._commits = True
        self._document.change(_named(verb, trial), trial.plan, merge)
        self._commits = False
        self._sight.show_day(self._sight.day_for(trial.plan, trial.planting))
        self._sight.select(trial.bed, trial.planting, trial.handle, trial.others, trial.beside)

    def refuse(self, trial: "Trial") -> None:
        """Say why a trial cannot be."""
        if trial.refusal or trial.planting is None:
            subject = f"{bed_of(trial.plan, trial.bed).name}: " if trial.bed else ""
            self.refused.emit(f"{subject}{trial.refusal}")
            return
        look = looks_in_hand(self.plan, trial.plan)
        subject = titled(trial.plan, trial.against[0].planting or trial.planting, look)
        words = f"{subject} {hand_words.refusal_words(trial.plan, trial.against[0], trial.chosen, look, trial.later)}"
        if trial.later is not None:
            words += f": {hand_words.later_words(trial.plan, trial.planting, trial.later, offered=True)}"
        self.refused.emit(words)

    def _abandon(self) -> None:
        """Give a gesture up while the plan that it began with is still there to be asked."""
        if not self._commits:
            self.give_up()

    def _end(self) -> None:
        self._gesture = None
        self.at, self.is_on_ground, self.is_measuring, self.is_filling = None, False, False, False
        self.ground_wanted.emit(False)
        self.show(None)
        self.ended.emit()


def _named(verb: str, trial: "Trial") -> str:
    """The name of a step: a verb with the crop, the bed, the obstacle or how many beds the trial is about."""
    bed = bed_of(trial.plan, trial.bed) if trial.bed else None
    handle = trial.handle
    return verb.format(
        crop=hand_words.chosen_name(trial.plan, trial.chosen) if trial.chosen else "",
        bed=bed.name if bed else "",
        count=len(trial.beds),
        obstacle=bed.obstacles[handle.number].name if bed and handle and handle.grip is Grip.OBSTACLE else "",
    )
