"""Corners and obstacles by keyboard: chosen, nudged, added, taken away."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.drawing.handles import Grip, Handle, Point, handles_of
from gardenplot.gestures.obstacle_moved import MOVE, try_obstacle_by, try_without_obstacle
from gardenplot.gestures.outline_drawn import RESHAPE, try_corner_after, try_corner_by, try_without_corner
from gardenplot.gestures.snap import grain, stride
from gardenplot.gestures.stage import Trial
from gardenplot.plan import bed_of
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.sight import Sight
from gardenplot.words import _

_TURNS: dict[int, int] = {Qt.Key.Key_BracketLeft: -1, Qt.Key.Key_BracketRight: 1}
_STEPS: dict[int, tuple[int, int]] = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


def press_handle_key(event: QKeyEvent, sight: Sight, stage: CanvasStage) -> bool:
    """Do what a key asks of a corner or an obstacle; False if it asks for nothing here.

    The brackets choose the one before and the next. Arrows move the chosen one by the plan's step, with Shift by the
    finest; Insert adds a corner in the middle of the side that follows it; Delete takes it away.
    """
    key, bed, handle = event.key(), sight.bed, sight.handle
    if bed is None:
        return False
    if key in _TURNS:
        _choose(bed, _TURNS[key], sight, stage)
        return True
    if handle is None:
        return False
    if key in _STEPS:
        units = stage.plan.place.units
        step = grain(units) if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else stride(units)
        by = _STEPS[key][0] * step, _STEPS[key][1] * step
        _settle(_moved(stage, bed, handle, by), _verb(handle), stage, f"{handle.grip} {bed} {handle.number}")
    elif key == Qt.Key.Key_Insert and handle.grip is Grip.CORNER:
        _settle(try_corner_after(stage.plan, bed, handle.number), RESHAPE, stage)
    elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
        remove_handle(bed, handle, stage)
    else:
        return False
    return True


def remove_handle(bed: str, handle: Handle, stage: CanvasStage) -> None:
    """Take a corner or an obstacle away."""
    if handle.grip is Grip.OBSTACLE:
        _settle(try_without_obstacle(stage.plan, bed, handle.number), _("Remove obstacle from {bed}"), stage)
    else:
        _settle(try_without_corner(stage.plan, bed, handle.number), RESHAPE, stage)


def _choose(bed: str, way: int, sight: Sight, stage: CanvasStage) -> None:
    """Choose the next corner or obstacle of a bed, or the one before."""
    handles = handles_of(bed_of(stage.plan, bed))
    if not handles:
        stage.refused.emit(
            _("{bed} has no corners yet: Bed ▸ Reshape the outline.").format(bed=bed_of(stage.plan, bed).name)
        )
        return
    at = handles.index(sight.handle) if sight.handle in handles else -1 if way > 0 else 0
    sight.select(bed, None, handles[(at + way) % len(handles)])


def _moved(stage: CanvasStage, bed: str, handle: Handle, by: Point) -> Trial:
    tried = try_obstacle_by if handle.grip is Grip.OBSTACLE else try_corner_by
    return tried(stage.plan, bed, handle.number, by)


def _verb(handle: Handle) -> str:
    return MOVE if handle.grip is Grip.OBSTACLE else RESHAPE


def _settle(trial: Trial, verb: str, stage: CanvasStage, merge: str = "") -> None:
    """Make a trial the plan, or say why it cannot be."""
    if trial.can_be:
        stage.commit(trial, verb, merge)
    else:
        stage.refuse(trial)
