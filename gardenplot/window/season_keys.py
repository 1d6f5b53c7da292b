"""The season map by keyboard: the day shown, plantings chosen and moved by days, the days in sight."""

from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from gardenplot.drawing.season_map import SeasonMap
from gardenplot.errors import PlanError
from gardenplot.gestures.day_snap import moved
from gardenplot.gestures.drags import MOVE
from gardenplot.gestures.season_moved import OUT, try_along, try_days, try_out_later
from gardenplot.gestures.snap import stride
from gardenplot.season import Span
from gardenplot.window.canvas_keys import settle
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.sight import Sight

_DAYS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_PageUp: -7, Qt.Key.Key_PageDown: 7}
_SIDES = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_OUT_BY = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}
_WEEK = 7
_SHIFT, _ALT = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.AltModifier


def press_season_key(event: QKeyEvent, season: SeasonMap, whole: Span, sight: Sight, stage: CanvasStage) -> bool:
    """Do what a key asks for; False if it asks for nothing here.

    `whole` are the days that the plan is made for. Up and down move the day shown by one, Page up and Page down by a
    week; left and right choose a planting. With Alt they move the chosen planting by a day, with Shift too by a week,
    and along its bed by the plan's step; Page up and Page down then move the day on which it is out. Escape lets go
    of what is chosen.
    """
    key, held = Qt.Key(event.key()), event.modifiers()
    if held & _ALT:
        return _moves(key, held, season, sight, stage)
    if key in _DAYS:
        seen = season.span
        day = moved(sight.day or seen.first, _DAYS[key])
        sight.show_day(max(min(whole.first, seen.first), min(day, max(whole.last, seen.last))))
        return True
    if key in _SIDES:
        _choose(season, sight, _SIDES[key])
        return True
    if key == Qt.Key.Key_Escape and sight.planting is not None:
        sight.select(sight.bed)
        return True
    return False


def _moves(key: Qt.Key, held: Qt.KeyboardModifier, season: SeasonMap, sight: Sight, stage: CanvasStage) -> bool:
    """Move the chosen planting in time or along its bed."""
    planting = sight.planting
    if planting is None or planting not in {one.planting for one in season.blocks}:
        return False
    plan, week = stage.plan, _WEEK if held & _SHIFT else 1
    try:
        if key in _OUT_BY:
            settle(try_out_later(plan, planting, _OUT_BY[key] * week), OUT, stage, f"out {planting}")
        elif key in _DAYS:
            settle(try_days(plan, planting, _DAYS[key] * week), MOVE, stage, f"days {planting}")
        elif key in _SIDES:
            settle(
                try_along(plan, planting, _SIDES[key] * stride(plan.place.units)), MOVE, stage, f"nudge {planting}"
            )
        else:
            return False
    except PlanError as error:
        stage.refused.emit(str(error))
    return True


def _choose(season: SeasonMap, sight: Sight, way: int) -> None:
    """Select the planting that follows on the map, by its first day and its place."""
    ids = [one.planting for one in sorted(season.blocks, key=lambda one: (one.first or date.min, one.start))]
    if ids:
        at = ids.index(sight.planting) if sight.planting in ids else -1 if way > 0 else 0
        sight.select(season.bed, ids[(at + way) % len(ids)])
