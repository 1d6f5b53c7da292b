"""Where the hand is drawn to: ends of gaps and neighbouring corners, then other beds' marks, then round readings."""

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Iterable, Iterator
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
    ALIGNED = "in line with a neighbour"
    PATH = "a path from a neighbour"
    TUNNEL = "a tunnel's line"
    SQUARE = "a round direction"
    PARALLEL = "a neighbour's direction"
    READING = "round reading"


@frozen
class Snap:
    """A tape reading in nm and what drew the hand there, where it is a block: its planting."""

    at: int
    pull: Pull
    planting: str | None = None


_BEDS_BESIDE = 3
"""A bed is drawn to marks of so many beds on either side: to those of a hundred beds it would be drawn everywhere."""
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
    """A tape reading in nm at which a block begins or ends, and the number of its bed."""

    at: int
    bed: int
    planting: str


@frozen
class Marks:
    """Where blocks of all beds begin and end, by their readings; a bed is drawn to those of the beds beside it."""

    beds: tuple[str, ...] = ()
    marks: tuple[Mark, ...] = ()

    def level_with(self, x: int, reach: int, bed: str, back: int = 0) -> Iterator[Snap]:
        """The marks of beds beside one, half as far from `x` as it reaches, each less `back` nm, to be drawn to."""
        if not self.marks:
            return
        own, near = self.beds.index(bed), reach // 2
        first = bisect_left(self.marks, x - near, key=_reading)
        for mark in self.marks[first : bisect_right(self.marks, x + near, key=_reading)]:
            if 0 < abs(mark.bed - own) <= _BEDS_BESIDE:
                yield Snap(mark.at - back, Pull.OTHER_BED, mark.planting)


NO_MARKS = Marks()


def marks_of(plan: Plan, day: date | None, without: Collection[str] = ()) -> Marks:
    """The marks of all beds on a day, but not those of some plantings."""
    found = (
        Mark(at, number, layout.planting)
        for number, laid in enumerate(lay_out_plan(plan))
        for layout in standing(laid, day)
        if layout.planting not in without
        for at in (layout.start, layout.end)
    )
    return Marks(tuple(bed.id for bed in plan.beds), tuple(sorted(found, key=_reading)))


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
