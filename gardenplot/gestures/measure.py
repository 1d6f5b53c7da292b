"""Measuring between two places: press and draw, or click one and then the other; nothing of it is in the plan."""

from collections.abc import Iterator
from datetime import date
from math import isqrt

from attrs import evolve, frozen

from gardenplot.drawing.hand_words import measured_words
from gardenplot.drawing.sayings import between_readings
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.snap import Marks, Pull, Snap, marks_of, snap
from gardenplot.gestures.snap_words import place_words
from gardenplot.gestures.stage import (
    Gesture,
    Measured,
    Pointer,
    Pressed,
    Released,
    Spot,
    Stage,
    Stepped,
    Trial,
    Turned,
)
from gardenplot.layout import lay_out_bed, standing
from gardenplot.plan import Plan, bed_of


@frozen
class _State:
    """What is measured so far; `pressed` where the hand pressed last, `drawing` while the second place follows it."""

    measured: Measured | None
    hand: Spot | None = None
    pressed: Spot | None = None
    drawing: bool = False


def measure(stage: Stage, first: Measured | None) -> Gesture:
    """Measure until the hand gives up; `first` is what is measured before the hand has pressed anywhere."""
    plan, day = stage.plan, stage.day
    marks = marks_of(plan, day)
    state = _State(first)
    while True:
        _show(stage, plan, state)
        event = yield
        match event:
            case Pointer(bed=str()):
                state = _followed(state, spot_at(plan, event, marks, day))
            case Pressed() if state.hand is not None:
                state = _pressed(state, state.hand)
            case Released() if state.drawing and state.hand != state.pressed:
                state = evolve(state, drawing=False)
            case Stepped() if state.measured is not None:
                state = evolve(state, measured=_stepped(plan, day, state.measured, event), drawing=False)
            case Turned() if state.measured is not None:
                turned = evolve(state.measured, at_end=not state.measured.at_end)
                state = evolve(state, measured=turned, drawing=False)


def _show(stage: Stage, plan: Plan, state: _State) -> None:
    if state.measured is not None:
        stage.show(Trial(plan, state.measured.end.bed, measured=state.measured))


def _followed(state: _State, hand: Spot) -> _State:
    """The second place follows the hand while it is being drawn."""
    if state.drawing and state.measured is not None:
        return evolve(state, hand=hand, measured=evolve(state.measured, end=hand))
    return evolve(state, hand=hand)


def _pressed(state: _State, hand: Spot) -> _State:
    """The first press begins a new line, a second click ends it."""
    if state.drawing and state.measured is not None and hand != state.pressed:
        return evolve(state, measured=evolve(state.measured, end=hand), pressed=None)
    return _State(Measured(hand, hand), hand, hand, drawing=True)


def measured_for(plan: Plan, bed: str, planting: str | None) -> Measured:
    """A block from its start to its end along the base line, or all of a bed."""
    block = layout_in(plan, planting) if planting is not None else None
    first, last = (block.start, block.end) if block is not None else (0, bed_of(plan, bed).length.nm)
    return Measured(Spot(bed, first, 0), Spot(bed, last, 0))


def spot_at(plan: Plan, pointer: Pointer, marks: Marks, day: date | None) -> Spot:
    """The place under the hand, drawn to what can be measured from; raises PlanError where there is no such bed."""
    bed, units = bed_of(plan, pointer.bed or ""), plan.place.units
    weaker = marks.level_with(pointer.x, pointer.reach, bed.id)
    along = snap(
        pointer.x, _along(plan, bed.id, day), units, pointer.reach, free=pointer.free, weaker=weaker
    )  # fmt: skip
    x = max(0, min(along.at, bed.length.nm))
    across = snap(pointer.y, _across(plan, bed.id, day, x), units, pointer.reach_across, free=pointer.free)
    return Spot(bed.id, x, max(0, min(across.at, bed.width.nm)), along, across)


def _along(plan: Plan, bed_id: str, day: date | None) -> Iterator[Snap]:
    bed = bed_of(plan, bed_id)
    yield from (Snap(0, Pull.END), Snap(bed.length.nm, Pull.END))
    yield from (Snap(bed.zone[0], Pull.HEAD_MARGIN), Snap(bed.zone[1], Pull.FOOT_MARGIN))
    for layout in standing(lay_out_bed(plan, bed), day):
        yield from (Snap(at, Pull.NEIGHBOUR, layout.planting) for at in (layout.start, layout.end))


def _across(plan: Plan, bed_id: str, day: date | None, x: int) -> Iterator[Snap]:
    bed = bed_of(plan, bed_id)
    yield from (Snap(0, Pull.EDGE), Snap(bed.width.nm, Pull.EDGE), Snap(bed.width.nm // 2, Pull.MIDDLE))
    for layout in standing(lay_out_bed(plan, bed), day):
        if layout.start <= x <= layout.end and not layout.grid.runs_across and layout.grid.turn is None:
            yield from (Snap(row.offset, Pull.ROW, layout.planting) for row in layout.rows)


def _stepped(plan: Plan, day: date | None, measured: Measured, step: Stepped) -> Measured:
    spot = measured.end if measured.at_end else measured.start
    bed = bed_of(plan, spot.bed)
    if step.to_mark:
        moved = _to_mark(plan, day, spot, step)
    else:
        x, y = spot.x + step.along, spot.y + step.across
        moved = Spot(bed.id, max(0, min(x, bed.length.nm)), max(0, min(y, bed.width.nm)))
    return evolve(measured, end=moved) if measured.at_end else evolve(measured, start=moved)


def _to_mark(plan: Plan, day: date | None, spot: Spot, step: Stepped) -> Spot:
    """The place at the next mark along the bed, or across it, the way of a step; the same where there is none."""
    if step.along:
        on = _next(_along(plan, spot.bed, day), spot.x, step.along)
        return Spot(spot.bed, on.at, spot.y, on, spot.across) if on else spot
    on = _next(_across(plan, spot.bed, day, spot.x), spot.y, step.across)
    return Spot(spot.bed, spot.x, on.at, spot.snap, on) if on else spot


def _next(marks: Iterator[Snap], at: int, way: int) -> Snap | None:
    ahead = (one for one in marks if (one.at - at) * way > 0)
    return min(ahead, key=lambda one: abs(one.at - at), default=None)


def readings(plan: Plan, measured: Measured) -> tuple[str, ...]:
    """What is measured in words, and below it from where to where and what drew the hand there."""
    start, end, units = measured.start, measured.end, plan.place.units
    along, across = abs(end.x - start.x), abs(end.y - start.y) if start.bed == end.bed else None
    straight = isqrt(along**2 + (across or 0) ** 2)
    moved = end if measured.at_end else start
    named = [words for snap in (moved.snap, moved.across) if (words := place_words(plan, snap))]
    return measured_words(units, along, across, straight), " · ".join(
        (between_readings(plan, start.x, end.x), *named)
    )
