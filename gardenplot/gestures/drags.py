"""Drags of plantings: a crop from the shelf, a block along and across beds, an end of a block.

Each computes from the plan at the press and the pointer's whole way, never from the step before.
"""

from collections.abc import Callable

from gardenplot.gestures.stage import Gesture, Pointer, Released, Stage, Trial
from gardenplot.gestures.trials import layout_in, try_crop, try_move, try_resize
from gardenplot.plan import Crop
from gardenplot.words import _


def place_crop(stage: Stage, crop: Crop) -> Gesture:
    """Place a crop from the shelf where the hand lets go."""
    plan, day = stage.plan, stage.day
    yield from drag(stage, lambda pointer: try_crop(plan, crop, pointer, day), _("Place {crop}"))


def move_block(stage: Stage, planting_id: str, press: Pointer) -> Gesture:
    """Move a planting by the place where it was taken hold of."""
    plan = stage.plan
    grip = press.x - layout_in(plan, planting_id).start
    yield from drag(stage, lambda pointer: try_move(plan, planting_id, grip, pointer), _("Move {crop}"))


def resize_block(stage: Stage, planting_id: str, *, foot: bool) -> Gesture:
    """Draw the foot end of a planting, or its head end, to where the hand lets go."""
    plan = stage.plan
    yield from drag(stage, lambda pointer: try_resize(plan, planting_id, foot, pointer), _("Resize {crop}"))


def drag(stage: Stage, attempt: Callable[[Pointer], Trial | None], verb: str) -> Gesture:
    """Show what comes of each place that the hand goes to, and make the last one the plan when it lets go."""
    trial: Trial | None = None
    while True:
        event = yield
        if isinstance(event, Released):
            break
        if isinstance(event, Pointer):
            trial = attempt(event)
            stage.show(trial)
    stage.show(None)
    if trial is None:
        return
    if trial.can_be:
        stage.commit(trial, verb)
    else:
        stage.refuse(trial)
