"""Where the hand is drawn to: ends of gaps and neighbouring corners, then other beds' marks, then round readings."""

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import date
from enum import StrEnum

from attrs import frozen

from gardenplot.layout import Ground, lay_out_plan, standing
from gardenplot.plan import Plan
from gardenplot.units import CM, FOOT, INCH, M, Units


class Pull(StrEnum):
    """What a snap is drawn to."""

    HEAD_MARGIN = "head margin"
    FOOT_MARGIN = "foot margin"
    NEIGHBOUR = "neighbour"
    CORNER = "neighbouring corner"
    KEPT = "where it was"
    OTHER_BED = "level with another bed"
    EDGE = "edge of the bed"
    END = "end of the bed"
    ROW = "row"
    MIDDLE = "middle of the bed"
    READING = "round reading"


@frozen
class Snap:
    """A tape reading in nm and what drew the hand there, where it is a block: its planting."""

    at: int
    pull: Pull
    planting: str | None = None


_STEPS = {
    Units.METRIC: (CM, 5 * CM, 10 * CM, 50 * CM, M),
    Units.FEET_AND_INCHES: (INCH // 4, INCH, 3 * INCH, 6 * INCH, FOOT),
    Units.DECIMAL_FEET: (FOOT // 100, FOOT // 20, FOOT // 10, FOOT // 2, FOOT),
}


def grain(units: Units) -> int:
    """The finest step of the hand in nm: what a person can read off a tape."""
    return _STEPS[units][0]


def stride(units: Units) -> int:
    """The step of an arrow key in nm."""
    return _STEPS[units][1]


def step_at(units: Units, reach: int) -> int:
    """The largest round step in nm that the hand can still aim at, with snaps that pull over `reach` nm."""
    return max((step for step in _STEPS[units] if step <= reach), default=grain(units))


def snaps_of(ground: Ground, length: int) -> tuple[Snap, ...]:
    """Starts at which a block of that length fills up to a margin or to a neighbour."""
    head, foot = ground.zone
    return (
        Snap(head, Pull.HEAD_MARGIN),
        Snap(foot - length, Pull.FOOT_MARGIN),
        *(Snap(last + ground.gap, Pull.NEIGHBOUR) for _first, last in ground.blocks),
        *(Snap(first - ground.gap - length, Pull.NEIGHBOUR) for first, _last in ground.blocks),
    )


@frozen
class Mark:
    """A tape reading in nm at which a block of a bed begins or ends."""

    at: int
    bed: str
    planting: str


def marks_of(plan: Plan, day: date | None, without: Collection[str] = ()) -> tuple[Mark, ...]:
    """Where blocks begin and end in all beds on a day, by their readings; but not those of some plantings."""
    return tuple(
        sorted(
            (
                Mark(at, laid.bed.id, layout.planting)
                for laid in lay_out_plan(plan)
                for layout in standing(laid, day)
                if layout.planting not in without
                for at in (layout.start, layout.end)
            ),
            key=lambda mark: mark.at,
        )
    )


def level_with(marks: Sequence[Mark], x: int, reach: int, bed: str, back: int = 0) -> Iterator[Snap]:
    """The marks of other beds within reach of `x`, each less `back` nm, as places to be drawn to."""
    for mark in marks[bisect_left(marks, x - reach, key=_reading) : bisect_right(marks, x + reach, key=_reading)]:
        if mark.bed != bed:
            yield Snap(mark.at - back, Pull.OTHER_BED, mark.planting)


def _reading(mark: Mark) -> int:
    return mark.at


def snap(
    x: int,
    candidates: Iterable[Snap],
    units: Units,
    reach: int,
    *,
    free: bool = False,
    weaker: Iterable[Snap] = (),
) -> Snap:
    """The nearest candidate within reach of `x`, else the nearest weaker one, else the nearest round reading.

    Free, it is the nearest readable one.
    """
    for some in () if free else (candidates, weaker):
        near = [one for one in some if abs(one.at - x) <= reach]
        if near:
            return min(near, key=lambda one: (abs(one.at - x), one.at))
    step = grain(units) if free else step_at(units, reach)
    return Snap((x + step // 2) // step * step, Pull.READING)
