"""Measuring by keyboard: arrows move a point, Tab turns to the other one, Ctrl goes from mark to mark."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.gestures.snap import grain, stride
from gardenplot.gestures.stage import Stepped, Turned
from gardenplot.window.canvas_stage import CanvasStage

_STEPS: dict[int, tuple[int, int]] = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


def press_measuring_key(event: QKeyEvent, stage: CanvasStage) -> bool:
    """Move a point of what is measured by the plan's step, with Shift by the finest; False for any other key."""
    key, held = event.key(), event.modifiers()
    if key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
        stage.send(Turned())
        return True
    if key not in _STEPS:
        return False
    units = stage.plan.place.units
    step = grain(units) if held & Qt.KeyboardModifier.ShiftModifier else stride(units)
    along, across = _STEPS[key]
    to_mark = bool(held & Qt.KeyboardModifier.ControlModifier)
    stage.send(Stepped(along * step, across * step, to_mark=to_mark))
    return True
