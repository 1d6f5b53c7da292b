"""The season map by keyboard: the day shown, plantings chosen, moved by days, copied, and all as on the drawing."""

from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.drawing.season_map import SeasonMap
from gardenplot.errors import PlanError
from gardenplot.gestures.choosing import extended
from gardenplot.gestures.day_snap import moved
from gardenplot.gestures.drags import COPY, MOVE
from gardenplot.gestures.season_drawn import OUT, try_out_later
from gardenplot.gestures.season_moved import try_along, try_days, try_next_turn
from gardenplot.gestures.snap import grain, stride
from gardenplot.season import Span
from gardenplot.window.canvas_keys import press_key, settle
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight

_DAYS: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_PageUp: -7, Qt.Key.Key_PageDown: 7}
_SIDES: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_OUT_BY: dict[int, int] = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}
_AS_DRAWN = (Qt.Key.Key_Home, Qt.Key.Key_End, Qt.Key.Key_Delete, Qt.Key.Key_Backspace)
"""Keys that do here what they do on the drawing."""
_WEEK = 7
_SHIFT, _ALT = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.AltModifier
_CTRL = Qt.KeyboardModifier.ControlModifier


def press_season_key(
    event: QKeyEvent, season: SeasonMap, whole: Span, document: Document, sight: Sight, stage: CanvasStage
) -> bool:
    """Do what a key asks for; False if it asks for nothing here.

    `whole` are the days that the plan is made for. Up and down move the day shown by one, Page up and Page down by a
    week; left and right choose a planting, with Shift one more. With Alt they move what is chosen by a day, with
    Shift too by a week, and along its bed by the plan's step, with Shift too by the finest; Page up and Page down
    then move the day on which it is out. Insert copies what is chosen to the first days after it on which its ground
    is free, with Shift to the last before it. Ranks, ends and Delete are as on the drawing. Escape lets go of
    what is chosen.
    """
    key, held = event.key(), event.modifiers()
    if key == Qt.Key.Key_Escape:
        return _let_go(sight)
    if held & _ALT or key == Qt.Key.Key_Insert:
        return _moves(key, held, season, sight, stage)
    if key in _AS_DRAWN or (held & _CTRL and key in _SIDES):
        return sight.planting is not None and press_key(event, document, sight, stage)
    if key in _DAYS:
        seen = season.span
        day = moved(sight.day or seen.first, _DAYS[key])
        sight.show_day(max(min(whole.first, seen.first), min(day, max(whole.last, seen.last))))
        return True
    if key in _SIDES:
        _choose(season, sight, stage, _SIDES[key], adds=bool(held & _SHIFT))
        return True
    return False


def _let_go(sight: Sight) -> bool:
    """Let go of all but one of what is chosen, then of that."""
    if sight.others:
        sight.select(sight.bed, sight.planting)
    elif sight.planting is not None:
        sight.select(sight.bed)
    else:
        return False
    return True


def _moves(key: int, held: Qt.KeyboardModifier, season: SeasonMap, sight: Sight, stage: CanvasStage) -> bool:
    """Move what is chosen in time or along its bed, or copy it in time."""
    chosen = sight.chosen
    if not chosen or chosen[0] not in {one.planting for one in season.blocks}:
        return False
    try:
        return _moved(key, held, chosen, stage)
    except PlanError as error:
        stage.refused.emit(str(error))
        return True


def _moved(key: int, held: Qt.KeyboardModifier, chosen: tuple[str, ...], stage: CanvasStage) -> bool:
    plan, week, who = stage.plan, _WEEK if held & _SHIFT else 1, " ".join(chosen)
    if key == Qt.Key.Key_Insert:
        settle(try_next_turn(plan, chosen, -1 if held & _SHIFT else 1), COPY, stage)
    elif key in _OUT_BY:
        settle(try_out_later(plan, chosen[0], _OUT_BY[key] * week), OUT, stage, f"out {chosen[0]}")
    elif key in _DAYS:
        settle(try_days(plan, chosen, _DAYS[key] * week), MOVE, stage, f"days {who}")
    elif key in _SIDES:
        step = grain(plan.place.units) if held & _SHIFT else stride(plan.place.units)
        settle(try_along(plan, chosen, _SIDES[key] * step), MOVE, stage, f"nudge {who}")
    else:
        return False
    return True


def _choose(season: SeasonMap, sight: Sight, stage: CanvasStage, way: int, *, adds: bool) -> None:
    """Select the planting that follows on the map, by its first day and its place, or add it to those chosen."""
    ids = tuple(one.planting for one in sorted(season.blocks, key=lambda one: (one.first or date.min, one.start)))
    if adds:
        sight.choose(stage.plan, extended(ids, sight.chosen, way))
    elif ids:
        at = ids.index(sight.planting) if sight.planting in ids else -1 if way > 0 else 0
        sight.select(season.bed, ids[(at + way) % len(ids)])
