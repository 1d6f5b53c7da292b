"""What was wanted and found its place, in a gap or in a season."""

from datetime import date

from attrs import frozen


@frozen
class Placed:
    """A wish or an order that found a place: the planting made for it, its plants, tape readings in nm and days."""

    wanted: str
    planting: str
    bed: str
    plants: int
    start: int
    end: int
    in_ground: date | None
    out: date | None
