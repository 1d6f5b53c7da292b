"""What lies where on the ground: beds by their heads, tunnels and paths."""

from typing import Annotated

from attrs import frozen

from gardenplot.plan.unknown import Unknown
from gardenplot.units import Degrees, Length

FromPeg = Annotated[Length, "from the peg"]
"""How far right of the peg or below it something lies; less than nothing to its left or above it."""


@frozen(cache_hash=True)
class Standing:
    """Where a bed lies on the ground; kept apart from the bed, so that a bed moved keeps its layouts.

    `x` and `y` are the place of the head's end of its base line, to the right and downwards from the peg that the
    ground is measured from. `turn` is where its foot lies seen from there, clockwise from straight to the right.
    """

    bed: str
    x: FromPeg
    y: FromPeg
    turn: Degrees | None = None
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Tunnel:
    """A walk-in cover over beds, a rectangle on the ground that lies as a bed does; its outer strip is cold."""

    id: str
    name: str
    x: FromPeg
    y: FromPeg
    length: Length
    width: Length
    turn: Degrees | None = None
    cold_edge: Length | None = None
    unknown: Unknown = ()


@frozen(cache_hash=True)
class Walk:
    """A path with a name and a width of its own, a strip on the ground that lies as a bed does."""

    id: str
    name: str
    x: FromPeg
    y: FromPeg
    length: Length
    width: Length
    turn: Degrees | None = None
    unknown: Unknown = ()
