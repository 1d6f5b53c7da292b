"""The canvas by keyboard: choose, move, push, resize, remove; corners and obstacles have keys of their own."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.drawing.hand_words import chosen_name, push_words, short_words, stopped_words
from gardenplot.drawing.letters import looks
from gardenplot.errors import PlanError
from gardenplot.gestures.choosing import extended, walk
from gardenplot.gestures.drags import MOVE, RESIZE
from gardenplot.gestures.push import FOOT, HEAD
from gardenplot.gestures.snap import grain, stride
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.together import against, try_beds, try_butted, try_shift
from gardenplot.gestures.trials import try_ranks
from gardenplot.plan import Plan
from gardenplot.plan.several import remove_plantings
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.document import Document
from gardenplot.window.handle_keys import press_handle_key
from gardenplot.window.sight import Sight
from gardenplot.words import _

_SIDES: dict[int, int] = {Qt.Key.Key_Left: HEAD, Qt.Key.Key_Right: FOOT}
_ENDS: dict[int, int] = {Qt.Key.Key_Home: HEAD, Qt.Key.Key_End: FOOT}
_WAYS: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
_REMOVES = (Qt.Key.Key_Delete, Qt.Key.Key_Backspace)
_CTRL, _SHIFT, _ALT = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)


def press_key(event: QKeyEvent, document: Document, sight: Sight, stage: CanvasStage) -> bool:
    """Do what a key asks for; False if it asks for nothing here.

    Up and down choose plantings in walking order, with Shift one more beside those chosen. Left and right move what
    is chosen by the plan's step, with Shift by the finest, with Alt pushing the neighbours along; with Ctrl they take
    a rank off the foot end or add one, with Ctrl and Shift at the head end. Home and End move it up against what lies
    before and behind it, Alt with up and down into the bed before and the next. Delete removes it; Escape gives a
    drag up.
    """
    key = event.key()
    if key == Qt.Key.Key_Escape:
        _escape(sight, stage)
        return True
    if stage.is_on_ground or stage.is_measuring or stage.is_filling:
        return False
    if press_handle_key(event, sight, stage):
        return True
    if key in _WAYS and not event.modifiers() & _ALT:
        return choose(document, sight, _WAYS[key], adds=bool(event.modifiers() & _SHIFT))
    if sight.planting is None:
        return False
    if key not in _SIDES and key not in _ENDS and key not in _WAYS and key not in _REMOVES:
        return False
    try:
        if key in _REMOVES:
            remove(document, sight.chosen)
        else:
            _move(event, document.plan, sight.chosen, stage)
    except PlanError as error:
        stage.refused.emit(str(error))
    return True


def _move(event: QKeyEvent, plan: Plan, chosen: tuple[str, ...], stage: CanvasStage) -> None:
    trial, verb, merge = _tried(event, plan, chosen)
    settle(trial, verb, stage, merge)
    if event.key() in _ENDS and trial.can_be and trial.plan is plan:
        stage.refused.emit(_("{crop} stands up against it already").format(crop=chosen_name(plan, chosen)))


def _escape(sight: Sight, stage: CanvasStage) -> None:
    """Give a gesture up, else let go of all but one of what is chosen, then of that, then of the bed."""
    if stage.is_busy:
        stage.give_up()
    elif sight.others:
        sight.select(sight.bed, sight.planting)
    else:
        sight.select(sight.bed if sight.planting or sight.handle else None)


def choose(document: Document, sight: Sight, way: int, *, adds: bool = False) -> bool:
    """Select the next planting in walking order, or the one before; or add it to those that are chosen."""
    order = walk(document.plan, sight.day)
    if not order:
        return False
    if adds:
        sight.choose(document.plan, extended(order, sight.chosen, way))
        return True
    at = order.index(sight.planting) if sight.planting in order else -1 if way > 0 else 0
    sight.choose(document.plan, (order[(at + way) % len(order)],))
    return True


def remove(document: Document, plantings: Sequence[str]) -> None:
    """Remove plantings, as one step of undo; raises PlanError for what is in the ground."""
    plan = document.plan
    name = _("Remove {crop}").format(crop=chosen_name(plan, plantings))
    document.change(name, remove_plantings(plan, plantings))


def _tried(event: QKeyEvent, plan: Plan, chosen: tuple[str, ...]) -> tuple[Trial, str, str]:
    """What a key that moves or resizes tries, with the verb of its step and what it merges with."""
    key, held, who = event.key(), event.modifiers(), " ".join(chosen)
    pushes = bool(held & _ALT)
    if key in _WAYS:
        return try_beds(plan, chosen, _WAYS[key]), MOVE, ""
    if key in _ENDS:
        return try_butted(plan, chosen, _ENDS[key]), MOVE, ""
    if held & _CTRL:
        foot = not held & _SHIFT
        more = _SIDES[key] if foot else -_SIDES[key]
        return try_ranks(plan, chosen[0], more, foot=foot, pushes=pushes), RESIZE, f"ranks {foot} {who}"
    step = grain(plan.place.units) if held & _SHIFT else stride(plan.place.units)
    return try_shift(plan, chosen, _SIDES[key] * step, pushes=pushes), MOVE, f"nudge {pushes} {who}"


def settle(trial: Trial, verb: str, stage: CanvasStage, merge: str = "") -> None:
    """Make a trial the plan; one that cannot be is refused, unless what is chosen is in trouble already.

    What it pushes along, what can make no more room, and that fewer plants stand than asked for, is said.
    """
    known = {one.id for one in stage.plan.plantings}
    before = [one for one in trial.chosen if one in known]
    if not trial.can_be and (trial.refusal or not (before and against(stage.plan, before))):
        stage.refuse(trial)
        return
    plan = stage.plan
    stage.commit(trial, verb, merge)
    look = looks(stage.plan)
    said = (
        push_words(trial.plan, ((one.planting, one.by) for one in trial.pushed), look),
        stopped_words(trial.plan, trial.stopped, look) if trial.stopped else "",
        short_words(plan, trial.plan, trial.chosen[0]) if verb == RESIZE else "",
    )
    if any(said):
        stage.refused.emit(" · ".join(words for words in said if words))
