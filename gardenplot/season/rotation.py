"""Families in a bed: how many seasons lie between one time that a family grew there and the next.

A season is the year in which a crop went into the ground. Common advice is three or four years between crops of a
family, much longer where club root or white rot is about (common practice, no source). In one or two tunnel beds that
cannot be kept: it is said, never forbidden.
"""

from collections.abc import Iterator

from attrs import frozen

from gardenplot.plan import Bed, Place

USUAL_GAP = 3
"""Seasons in between that are asked for where a place says nothing."""


@frozen
class Stay:
    """A family in a bed in one season: as a planting of the plan, or as it is remembered."""

    family: str
    season: int
    planting: str | None = None


@frozen
class Return:
    """A family that comes back to a bed: which planting brings it, after which stay, how many seasons in between."""

    planting: str
    before: Stay
    between: int


def family_gap(place: Place) -> int:
    """How many seasons a place leaves between crops of one family."""
    return USUAL_GAP if place.family_gap is None else place.family_gap


def returns(bed: Bed, stays: tuple[Stay, ...], gap: int) -> Iterator[Return]:
    """Plantings that bring a family back too soon, each with the last time that it grew there.

    Crops of one family in the same season are one stay: what follows within a season is a succession, no rotation.
    """
    past = [Stay(one.family, one.season) for one in bed.history]
    for stay in stays:
        earlier = [one for one in (*past, *stays) if _key(one) == _key(stay) and one.season < stay.season]
        latest = max(earlier, key=lambda one: one.season, default=None)
        if latest is not None and stay.planting is not None and stay.season - latest.season - 1 < gap:
            yield Return(stay.planting, latest, stay.season - latest.season - 1)


def _key(stay: Stay) -> str:
    return stay.family.strip().casefold()
