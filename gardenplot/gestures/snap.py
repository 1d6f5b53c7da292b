"""Where the hand is drawn to: the ends of gaps and neighbouring corners first, then round readings."""

from collections.abc import Iterable
from enum import StrEnum

from attrs import frozen

from gardenplot.layout import Ground
from gardenplot.units import CM, FOOT, INCH, M, Units


class Pull(StrEnum):
    """What a snap is drawn to."""

    HEAD_MARGIN = "head margin"
    FOOT_MARGIN = "foot margin"
    NEIGHBOUR = "neighbour"
    CORNER = "neighbouring corner"
    KEPT = "where it was"
    ALIGNED = "in line with a neighbour"
    PATH = "a path from a neighbour"
    TUNNEL = "a tunnel's line"
    SQUARE = "a round direction"
    PARALLEL = "a neighbour's direction"
    READING = "round reading"


@frozen
class Snap:
    """A tape reading in nm and what drew the hand there."""

    at: int
    pull: Pull


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


def snap(x: int, candidates: Iterable[Snap], units: Units, reach: int, *, free: bool = False) -> Snap:
    """The nearest candidate within reach of `x`, else the nearest round reading; free, the nearest readable one."""
    near = [one for one in candidates if abs(one.at - x) <= reach and not free]
    if near:
        return min(near, key=lambda one: (abs(one.at - x), one.at))
    step = grain(units) if free else step_at(units, reach)
    return Snap((x + step // 2) // step * step, Pull.READING)
