"""The ground by keyboard: the chosen bed moved and turned by steps, another one chosen, its strip shown."""

from fractions import Fraction

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.gestures.bed_moved import MOVE, MOVE_ALL, TURN, TURN_ALL, try_bed_by, try_turn_by
from gardenplot.gestures.choosing import extended
from gardenplot.gestures.snap import grain, stride
from gardenplot.plan import Plan
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.sight import Sight

_WAYS: dict[int, tuple[int, int]] = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
_TURNS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_NEXT: dict[int, int] = {Qt.Key.Key_BracketLeft: -1, Qt.Key.Key_BracketRight: 1}
_MORE: dict[int, int] = {Qt.Key.Key_BraceLeft: -1, Qt.Key.Key_BraceRight: 1}


def press_ground_key(event: QKeyEvent, plan: Plan, sight: Sight, stage: CanvasStage) -> bool:
    """Do what a key asks for; False if it asks for nothing here.

    Arrows move the chosen beds by the plan's step, with Shift by the finest; with Ctrl, left and right turn them by
    15 degrees, with Shift by one. [ and ] choose another bed, { and } one more; Escape gives a drag up, else lets go
    of what is chosen.
    """
    key, keys = event.key(), event.modifiers()
    if key == Qt.Key.Key_Escape:
        if stage.is_busy:
            stage.give_up()
        else:
            sight.select(sight.bed if sight.planting else None)
        return True
    if key in _NEXT and plan.beds:
        ids = [bed.id for bed in plan.beds]
        at = ids.index(sight.bed) if sight.bed in ids else (-1 if _NEXT[key] > 0 else 0)
        sight.select(ids[(at + _NEXT[key]) % len(ids)])
        return True
    if key in _MORE:
        sight.choose_beds(extended(tuple(bed.id for bed in plan.beds), sight.beds, _MORE[key]))
        return True
    if sight.bed is None or key not in _WAYS:
        return False
    is_fine = bool(keys & Qt.KeyboardModifier.ShiftModifier)
    if keys & Qt.KeyboardModifier.ControlModifier:
        return _turn(plan, sight.beds, _TURNS.get(key, 0) * (1 if is_fine else 15), stage)
    step = grain(plan.place.units) if is_fine else stride(plan.place.units)
    right, down = _WAYS[key]
    trial = try_bed_by(plan, sight.bed, (right * step, down * step), sight.beside)
    stage.commit(trial, MOVE_ALL if sight.beside else MOVE, f"ground {' '.join(sight.beds)}")
    return True


def _turn(plan: Plan, beds: tuple[str, ...], degrees: int, stage: CanvasStage) -> bool:
    if not degrees:
        return False
    trial = try_turn_by(plan, beds[0], Fraction(degrees), beds[1:])
    stage.commit(trial, TURN_ALL if beds[1:] else TURN, f"turn {' '.join(beds)}")
    return True
