"""Tracing a bed by keyboard: arrows lead to a place, Space sets a corner there, Enter closes the outline."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractScrollArea

from gardenplot.gestures.snap import grain, stride
from gardenplot.gestures.stage import Finished, Released, Stepped, TakenBack
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.theme import magnified

_STEPS: dict[int, tuple[int, int]] = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
_NEAR = 60
"""How near in pixels a place may come to an edge of the drawing before that is scrolled."""


def press_tracing_key(event: QKeyEvent, stage: CanvasStage, places: CanvasPlaces, area: QAbstractScrollArea) -> bool:
    """Go by the plan's step, with Shift by the finest, with Ctrl to a corner; False for a key of no use here."""
    key, held = event.key(), event.modifiers()
    if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
        stage.send(Finished(), stage.at)
    elif key == Qt.Key.Key_Backspace:
        stage.send(TakenBack(), stage.at)
    elif key == Qt.Key.Key_Space:
        stage.send(Stepped(0, 0), stage.at)
        stage.send(Released(), stage.at)
    elif key in _STEPS:
        units = stage.plan.place.units
        step = grain(units) if held & Qt.KeyboardModifier.ShiftModifier else stride(units)
        along, across = _STEPS[key]
        to_mark = bool(held & Qt.KeyboardModifier.ControlModifier)
        stage.send(Stepped(along * step, across * step, to_mark=to_mark), stage.at)
    else:
        return False
    _follow(stage, places, area)
    return True


def _follow(stage: CanvasStage, places: CanvasPlaces, area: QAbstractScrollArea) -> None:
    """Keep the place in sight, and let the lines stand there."""
    trial = stage.trial
    if trial is None or trial.sketch is None:
        return
    place = trial.sketch.points[trial.sketch.held]
    _scroll_to(places.ground_point(*place), area)
    stage.at = places.ground_point(*place)
    stage.show(trial)


def _scroll_to(point: QPointF, area: QAbstractScrollArea) -> None:
    """Scroll a point of the viewport into sight, beyond what there was to see if need be."""
    viewport, near, top = area.viewport(), _NEAR * magnified(), TAPE * magnified()
    bars = area.horizontalScrollBar(), area.verticalScrollBar()
    for bar, at, first, last in (
        (bars[0], point.x(), near, viewport.width() - near),
        (bars[1], point.y(), top + near / 2, viewport.height() - near / 2),
    ):
        over = min(at - first, 0) + max(at - last, 0)
        wanted = bar.value() + round(over / magnified())
        bar.setMaximum(max(bar.maximum(), wanted))
        bar.setValue(wanted)
