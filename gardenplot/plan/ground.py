"""Where everything lies on the ground, in nm from the peg that it is measured from; what has no place gets one.

Beds without a place are laid side by side, a usual path apart, below whatever has a place.
"""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import cached_property, lru_cache
from math import cos, log, radians, sin

from attrs import frozen

from gardenplot.plan.lying import Standing, Tunnel, Walk
from gardenplot.plan.value import Bed, Plan
from gardenplot.units import CM, FOOT, INCH, M, Units

PATHS = {Units.METRIC: 45 * CM}
"""Between beds that have no place yet, common practice, no source; else in inches."""
_PATH_IN_INCHES = 18 * INCH
_QUARTERS = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}
_BETWEEN = 16
"""Between two columns lie so many paths, so that names have room before the heads."""
_SHAPE = 1.6
"""Beds without a place fill a frame so many times as wide as high."""

Spot = tuple[float, float]


@frozen(cache_hash=True)
class Frame:
    """A frame on the ground: where its zero lies, in nm, and how it is turned, in degrees clockwise.

    Whole places stay whole where it is turned by right angles.
    """

    x: int
    y: int
    turn: Fraction = Fraction(0)

    @cached_property
    def along(self) -> Spot:
        """The way of its x on the ground, one long."""
        return axis(self.turn)

    @property
    def is_square(self) -> bool:
        """Whether it is turned by right angles or not at all."""
        return self.turn in _QUARTERS

    def to_ground(self, x: float, y: float) -> Spot:
        """A place in this frame as one on the ground."""
        right, down = self.along
        return self.x + x * right - y * down, self.y + x * down + y * right

    def from_ground(self, x: float, y: float) -> Spot:
        """A place on the ground as one in this frame."""
        right, down = self.along
        x, y = x - self.x, y - self.y
        return x * right + y * down, y * right - x * down


def axis(turn: Fraction) -> Spot:
    """The way to the right turned clockwise by so many degrees, one long."""
    if turn in _QUARTERS:
        return _QUARTERS[int(turn)]
    return cos(radians(turn)), sin(radians(turn))


def frame_of(lying: Standing | Tunnel | Walk) -> Frame:
    """The frame of a bed, a tunnel or a path on the ground."""
    return Frame(lying.x.nm, lying.y.nm, lying.turn.turn if lying.turn else Fraction(0))


def standing_of(plan: Plan, bed_id: str) -> Standing | None:
    """The place of a bed on the ground, if it has one."""
    return next((one for one in plan.ground if one.bed == bed_id), None)


def path_width(units: Units) -> int:
    """How wide a path between beds usually is, in nm."""
    return PATHS.get(units, _PATH_IN_INCHES)


@lru_cache(maxsize=64)
def frames_of(plan: Plan) -> Mapping[str, Frame]:
    """The frame of every bed on the ground, by its id, in the plan's order; also of those that have no place yet."""
    placed = {one.bed: frame_of(one) for one in plan.ground}
    loose = [bed for bed in plan.beds if bed.id not in placed]
    begin = _step(plan)
    top = max((0, *(y for _x, y in _corners_on_ground(plan, placed)))) + begin
    slots = _side_by_side(loose, begin, -(-int(top) // begin) * begin, path_width(plan.place.units))
    return {bed.id: placed.get(bed.id) or slots[bed.id] for bed in plan.beds}


def _step(plan: Plan) -> int:
    """How far from the peg, and from what lies there, the first bed without a place is laid."""
    return M if plan.place.units is Units.METRIC else 3 * FOOT


def _corners_on_ground(plan: Plan, placed: Mapping[str, Frame]) -> Iterable[Spot]:
    for bed in plan.beds:
        if bed.id in placed:
            yield from corners_on_ground(placed[bed.id], bed.length.nm, bed.width.nm)
    strips: tuple[Tunnel | Walk, ...] = (*plan.tunnels, *plan.paths)
    for strip in strips:
        yield from corners_on_ground(frame_of(strip), strip.length.nm, strip.width.nm)


def corners_on_ground(frame: Frame, length: int, width: int) -> tuple[Spot, ...]:
    """The corners of a rectangle on the ground."""
    return tuple(frame.to_ground(x, y) for x, y in ((0, 0), (length, 0), (length, width), (0, width)))


def _side_by_side(beds: list[Bed], left: int, top: int, path: int) -> dict[str, Frame]:
    """Beds one below another in as many columns as make a frame that is a good deal wider than high."""
    if not beds:
        return {}
    rows = -(-len(beds) // _columns(beds, path))
    slots, x = {}, left
    for first in range(0, len(beds), rows):
        column, y = beds[first : first + rows], top
        for bed in column:
            slots[bed.id] = Frame(x, y)
            y += bed.width.nm + path
        x += max(bed.length.nm for bed in column) + _BETWEEN * path
    return slots


def _columns(beds: list[Bed], path: int) -> int:
    wide, high = max(bed.length.nm for bed in beds) + _BETWEEN * path, sum(bed.width.nm + path for bed in beds)
    return min(range(1, len(beds) + 1), key=lambda count: abs(log(count * count * wide / high / _SHAPE)))
