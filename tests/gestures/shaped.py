"""A bed in the shape of an L with a post in it, and the hand at any place of it."""

from gardenplot.gestures.stage import Pointer
from gardenplot.plan import Plan
from gardenplot.units import Length
from tests.drawing.hand_worked import plan_from
from tests.layout.ground import Fields, nm

ELL = ("0 cm by 0 cm", "8 m by 0 cm", "8 m by 1 m", "3 m by 1 m", "3 m by 2 m", "0 cm by 2 m")
POST: Fields = {"name": "post", "x": "5 m", "y": "50 cm", "diameter": "12 cm", "keep_clear": "20 cm"}
CHARD: Fields = {"id": "chard", "name": "Chard", "in_row": "25 cm", "row_spacing": "25 cm"}


def ell(*corners: str, post: Fields | None = POST, units: str = "metric") -> Plan:
    """One bed, North, of those corners, full of chard."""
    outline = [corner.split(" by ") for corner in corners or ELL]
    bed: Fields = {"id": "b1", "name": "North", "outline": outline, "obstacles": [post] if post else []}
    return plan_from(
        {"units": units}, beds=[bed], crops=[CHARD], plantings=[{"id": "p1", "bed": "b1", "crop": "chard"}]
    )


def box(length: str = "8 m", width: str = "1 m", units: str = "metric") -> Plan:
    """One rectangle, North, full of chard."""
    bed: Fields = {"id": "b1", "name": "North", "length": length, "width": width}
    return plan_from(
        {"units": units}, beds=[bed], crops=[CHARD], plantings=[{"id": "p1", "bed": "b1", "crop": "chard"}]
    )


def over(
    place: str, *, reach: str = "10 cm", across: str = "5 cm", free: bool = False, bed: str | None = "b1"
) -> Pointer:
    """The hand at a place like "7.53 m by 2 cm"; a minus means before the head or beyond the base line."""
    x, y = (-nm(part[1:]) if part.startswith("-") else nm(part) for part in place.split(" by "))
    return Pointer(bed, x, y, nm(reach), free, nm(across))


def corners_typed(plan: Plan, bed: int = 0) -> tuple[str, ...]:
    """The corners of a bed's outline as they stand in the plan."""
    return tuple(f"{x} by {y}" for x, y in plan.beds[bed].outline)


def written(*corners: str) -> tuple[tuple[int, int], ...]:
    """Corners in nanometres."""
    return tuple((nm(x), nm(y)) for x, y in (corner.split(" by ") for corner in corners))


def places(plan: Plan, bed: int = 0) -> tuple[tuple[int, int], ...]:
    """The corners of a bed's outline in nanometres."""
    return tuple((x.nm, y.nm) for x, y in plan.beds[bed].outline)


def reach_of(plan: Plan, bed: int = 0) -> tuple[Length, Length]:
    """How far a bed reaches along and across."""
    return plan.beds[bed].length, plan.beds[bed].width
