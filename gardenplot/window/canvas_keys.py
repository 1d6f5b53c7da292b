"""The canvas by keyboard: choose, nudge, resize, remove; corners and obstacles have keys of their own."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.drawing.sayings import name_of
from gardenplot.errors import PlanError
from gardenplot.gestures.snap import grain, stride
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.trials import against, try_ranks, try_shift
from gardenplot.layout import lay_out_plan, standing
from gardenplot.plan.edits import remove_planting
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.document import Document
from gardenplot.window.handle_keys import press_handle_key, press_tracing_key
from gardenplot.window.sight import Sight
from gardenplot.words import _

_SIDES = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_WAYS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


def press_key(event: QKeyEvent, document: Document, sight: Sight, stage: CanvasStage) -> bool:
    """Do what a key asks for; False if it asks for nothing here.

    Up and down choose plantings in walking order; left and right move the chosen one by the plan's step, with Shift
    by the finest, with Ctrl they take a rank off its foot end or add one; Delete removes it; Escape gives a drag up.
    """
    key = Qt.Key(event.key())
    if key == Qt.Key.Key_Escape:
        if not stage.is_busy:
            sight.select(sight.bed if sight.planting or sight.handle else None)
        stage.give_up()
        return True
    if stage.is_on_ground:
        return press_tracing_key(event, stage)
    if press_handle_key(event, sight, stage):
        return True
    if key in _WAYS:
        return choose(document, sight, _WAYS[key])
    if sight.planting is None:
        return False
    if key in _SIDES:
        try:
            trial, name, merge = _side(event, _SIDES[key], document, sight.planting)
            _settle(trial, sight.planting, name, merge, document, stage)
        except PlanError as error:
            stage.refused.emit(str(error))
        return True
    if key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
        remove(document, sight.planting)
        return True
    return False


def choose(document: Document, sight: Sight, way: int) -> bool:
    """Select the next planting in walking order, or the one before."""
    walk = [
        (laid.bed.id, layout.planting) for laid in lay_out_plan(document.plan) for layout in standing(laid, sight.day)
    ]
    if not walk:
        return False
    at = next((number for number, one in enumerate(walk) if one[1] == sight.planting), -1 if way > 0 else 0)
    sight.select(*walk[(at + way) % len(walk)])
    return True


def remove(document: Document, planting: str) -> None:
    """Remove a planting, as one step of undo."""
    plan = document.plan
    document.change(_("Remove {crop}").format(crop=name_of(plan, planting)), remove_planting(plan, planting))


def _side(event: QKeyEvent, side: int, document: Document, planting: str) -> tuple[Trial, str, str]:
    units = document.plan.place.units
    if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
        return try_ranks(document.plan, planting, side), _("Resize {crop}"), f"ranks {planting}"
    step = grain(units) if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else stride(units)
    return try_shift(document.plan, planting, side * step), _("Move {crop}"), f"nudge {planting}"


def _settle(trial: Trial, planting: str, name: str, merge: str, document: Document, stage: CanvasStage) -> None:
    """Make a trial the plan; one that cannot be is refused, unless the planting is in trouble already."""
    if trial.against and not against(document.plan, planting):
        stage.refuse(trial)
        return
    document.change(name.format(crop=name_of(trial.plan, planting)), trial.plan, merge)
