"""A new bed traced corner by corner: each click or Space sets one, Backspace takes it back, the first one closes."""

from collections.abc import Sequence

from attrs import evolve

from gardenplot.drawing.handles import Point
from gardenplot.errors import PlanError
from gardenplot.gestures.outline_drawn import aim, reason
from gardenplot.gestures.stage import (
    Finished,
    Gesture,
    Pointer,
    Released,
    Sketch,
    Stage,
    Stepped,
    TakenBack,
    Trial,
)
from gardenplot.plan import Bed, Plan
from gardenplot.plan.edits import add_bed
from gardenplot.units import Length, length_of
from gardenplot.words import _

TRACE = _("Trace {bed}")
_FEWEST = 3
_STRIDES = 10
"""Steps of a key that goes to the next mark where there is none."""


def trace_bed(stage: Stage) -> Gesture:
    """Set corners until the outline is closed; one that cannot be is refused, and the tracing goes on."""
    plan = stage.plan
    corners: tuple[Point, ...] = ()
    pointer: Pointer | None = None
    while True:
        event = yield
        trial = try_corner(plan, corners, pointer)
        match event:
            case Pointer():
                pointer = event
            case Stepped():
                pointer = _stepped(trial, event)
            case TakenBack():
                corners = corners[:-1]
            case Finished() if _closed(stage, plan, corners):
                return
            case Released() if trial.sketch and trial.sketch.closed:
                if _closed(stage, plan, corners):
                    return
            case Released() if trial.sketch:
                corners = tuple(dict.fromkeys(trial.sketch.points))
        stage.show(try_corner(plan, corners, pointer))


def _stepped(trial: Trial, step: Stepped) -> Pointer:
    """The place that a key leads to from the last one, at first from zero: by a step, or in line with a corner.

    Where there is none that way it leads on by ten steps. Nothing pulls there.
    """
    points, held = (trial.sketch.points, trial.sketch.held) if trial.sketch else ((), 0)
    at = points[held] if points else (0, 0)
    x, y = (
        _next(at[axis], by, [one[axis] for one in points]) if step.to_mark and by else max(0, at[axis] + by)
        for axis, by in enumerate((step.along, step.across))
    )
    return Pointer(None, x, y, reach=0, free=True)


def _next(at: int, by: int, marks: Sequence[int]) -> int:
    """The nearest of some marks the way of a step, or ten steps on."""
    ahead = (one for one in marks if (one - at) * by > 0)
    return min(ahead, key=lambda one: abs(one - at), default=max(0, at + _STRIDES * by))


def _closed(stage: Stage, plan: Plan, corners: tuple[Point, ...]) -> bool:
    """Close the outline, or say why it cannot be closed."""
    trial = try_traced(plan, corners)
    if not trial.can_be:
        stage.refuse(trial)
        return False
    stage.show(None)
    stage.commit(trial, TRACE)
    return True


def try_corner(plan: Plan, corners: tuple[Point, ...], pointer: Pointer | None) -> Trial:
    """The corners set so far and one more at the pointer, which on the first corner closes the outline."""
    if pointer is None:
        return Trial(plan, None, sketch=Sketch(corners, max(0, len(corners) - 1), closed=False) if corners else None)
    along, across = aim(pointer, (*corners[-1:], *corners[:1]), plan.place.units)
    at = along.at, across.at
    if corners and at == corners[-1]:
        return Trial(plan, None, sketch=Sketch(corners, len(corners) - 1, closed=False))
    if len(corners) >= _FEWEST and at == corners[0]:
        trial = evolve(try_traced(plan, corners), plan=plan, bed=None)
    else:
        trial = Trial(plan, None, sketch=Sketch((*corners, at), len(corners), closed=False))
    return evolve(trial, snap=along, across=across)


def try_traced(plan: Plan, corners: tuple[Point, ...]) -> Trial:
    """The plan with one bed more, which has these corners, in nm."""
    sketch = Sketch(corners, 0)
    if len(corners) < _FEWEST:
        return Trial(plan, None, sketch=sketch, refusal=_("an outline needs three corners or more"))
    try:
        after = add_bed(plan, _bed(plan, corners))
    except PlanError as error:
        return Trial(plan, None, sketch=sketch, refusal=reason(error))
    return Trial(after, after.beds[-1].id, sketch=sketch)


def _bed(plan: Plan, corners: tuple[Point, ...]) -> Bed:
    units, number = plan.place.units, len(plan.beds) + 1
    names = {bed.name for bed in plan.beds}
    while (name := _("Bed {number}").format(number=number)) in names:
        number += 1
    return Bed(
        id=f"bed-{number}",
        name=name,
        length=Length(max(x for x, _y in corners), ""),
        width=Length(max(y for _x, y in corners), ""),
        outline=tuple((length_of(x, units), length_of(y, units)) for x, y in corners),
    )
