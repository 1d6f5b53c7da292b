"""Drags of plantings: a crop from the shelf, blocks along and across beds, an end of a block.

Each computes from the plan at the press and the pointer's whole way, never from the step before.
"""

from collections.abc import Callable, Sequence

from gardenplot.gestures.snap import marks_of
from gardenplot.gestures.stage import Gesture, Pointer, Released, Stage, Trial
from gardenplot.gestures.together import take, try_move
from gardenplot.gestures.trials import try_crop, try_resize
from gardenplot.plan import Crop
from gardenplot.words import _

MOVE, COPY, RESIZE = _("Move {crop}"), _("Copy {crop}"), _("Resize {crop}")


def place_crop(stage: Stage, crop: Crop) -> Gesture:
    """Place a crop from the shelf where the hand lets go."""
    plan, day = stage.plan, stage.day
    marks = marks_of(plan, day)
    yield from drag(stage, lambda pointer: try_crop(plan, crop, pointer, day, marks), _("Place {crop}"))


def move_block(stage: Stage, planting_id: str, press: Pointer, others: Sequence[str] = ()) -> Gesture:
    """Move or copy a planting by the place where it was taken hold of, and others along with it."""
    taken = take(stage.plan, (planting_id, *others), press.x, stage.day)
    yield from drag(stage, lambda pointer: try_move(taken, pointer), MOVE)


def resize_block(stage: Stage, planting_id: str, *, foot: bool) -> Gesture:
    """Draw the foot end of a planting, or its head end, to where the hand lets go."""
    plan = stage.plan
    yield from drag(stage, lambda pointer: try_resize(plan, planting_id, foot, pointer), RESIZE)


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
        stage.commit(trial, COPY if trial.copies else verb)
    else:
        stage.refuse(trial)
