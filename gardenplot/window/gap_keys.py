"""Filling gaps by keyboard: arrows go from gap to gap, Enter takes the blocks that are shown."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.gestures.stage import Finished, Stepped
from gardenplot.plan import bed_of
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.canvas_stage import CanvasStage

_STEPS: dict[int, Stepped] = {
    Qt.Key.Key_Left: Stepped(-1, 0),
    Qt.Key.Key_Right: Stepped(1, 0),
    Qt.Key.Key_Up: Stepped(0, -1),
    Qt.Key.Key_Down: Stepped(0, 1),
}


def press_gap_key(event: QKeyEvent, stage: CanvasStage, places: CanvasPlaces) -> bool:
    """Go to the next gap or take the blocks of this one; False for any other key."""
    key = event.key()
    if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
        stage.send(Finished(), stage.at)
    elif key in _STEPS:
        stage.send(_STEPS[key], stage.at)
    else:
        return False
    show_lines(stage, places)
    return True


def show_lines(stage: CanvasStage, places: CanvasPlaces) -> None:
    """Let the lines stand at the gap that is being filled, where no mouse is over it."""
    trial = stage.trial
    if trial is None or trial.bed is None or trial.gap is None:
        return
    places.reveal(trial.bed)
    middle = bed_of(trial.plan, trial.bed).width.nm // 2
    stage.at = places.point_of(trial.bed, sum(trial.gap) // 2, middle)
    stage.show(trial)
