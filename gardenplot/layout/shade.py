"""Which blocks of a bed stand in the shadow of taller ones at noon, where it is known how the bed lies to the sun."""

from datetime import date, timedelta
from fractions import Fraction
from math import cos, radians, sin, tan

from attrs import frozen

from gardenplot.plan import Bed, Plan
from gardenplot.plan.ground import axis, standing_of
from gardenplot.season import Site, Span
from gardenplot.season.shade import noon_shadow, telling_days
from gardenplot.season.sun import noon_lean, site_of
from gardenplot.working import RULES, Number, Source, Trust, Unit, known, smaller, worked


@frozen(cache_hash=True)
class Lie:
    """How a bed lies to the sun: where on earth, and how much of a way to the north goes along it and across it.

    `along` is less than nothing where the foot lies to the south.
    """

    site: Site
    along: float
    across: float
    width: int


@frozen(cache_hash=True)
class Tall:
    """A block between two tape readings, its height, and its days, the last one left out."""

    start: int
    end: int
    height: int
    first: date
    last: date


@frozen
class Shaded:
    """So much of a block in nm lies in the shadow of another one at noon of a day: the most that it ever does."""

    day: date
    length: int


def lie_of(plan: Plan, bed: Bed) -> Lie | None:
    """How a bed lies; None where its place on the ground, the north there or the latitude is not known."""
    standing, north, site = standing_of(plan, bed.id), plan.place.north, site_of(plan.place)
    if standing is None or north is None or site is None:
        return None
    right, down = axis(standing.turn.turn) if standing.turn else (1.0, 0.0)
    angle = radians(north.turn)
    along, across = right * sin(angle) - down * cos(angle), down * sin(angle) + right * cos(angle)
    return Lie(site, along, abs(across), bed.width.nm)


def shaded(lie: Lie, one: Tall, other: Tall) -> Shaded | None:
    """How much of the other block lies in the shadow of one that is taller; None where none ever does."""
    first, last = max(one.first, other.first), min(one.last, other.last)
    higher = one.height - other.height
    if higher <= 0 or first >= last:
        return None
    found = (
        Shaded(day, _reach(lie, day, higher, one, other))
        for day in telling_days(Span(first, last - timedelta(days=1)))
    )
    most = max(found, key=lambda each: each.length)
    return most if most.length > 0 else None


def _reach(lie: Lie, day: date, higher: int, one: Tall, other: Tall) -> int:
    """How far a shadow reaches into a block, along the bed; it ends where it leaves the bed at its side."""
    north = noon_shadow(lie.site, day, higher)
    along = north * share_along(lie, north)
    between = other.start - one.end if along > 0 else one.start - other.end
    return min(round(abs(along)) - between, other.end - other.start) if between >= 0 else 0


def share_along(lie: Lie, north: int) -> float:
    """How much of a shadow that reaches so far north goes along the bed until it leaves it; towards the head, less
    than nothing."""
    sideways = abs(north) * lie.across
    return lie.along * min(1.0, lie.width / sideways if sideways else 1.0)


def shade_number(lie: Lie, day: date, one: Tall, other: Tall) -> Number:
    """How much of the other block lies in the shadow of a taller one at noon of a day, with its working."""
    taller = known("taller", one.height, Unit.LENGTH, source=Source.PACKET)
    lower = known("lower", other.height, Unit.LENGTH, source=Source.PACKET)
    higher = worked("higher_by", Unit.LENGTH, "taller − lower", taller, lower, source=RULES)
    sun = known("sun_lean", noon_lean(lie.site, day), Unit.DEGREES, trust=Trust.GOOD, source=Source.NOON_SUN)
    shadow = worked("noon_shadow", Unit.LENGTH, "higher_by × tangent(sun_lean)", higher, sun,
                    using={"tangent": _tangent}, source=Source.GEOMETRY)  # fmt: skip
    along = share_along(lie, noon_shadow(lie.site, day, one.height - other.height))
    share = known("share_along", abs(along), Unit.SHARE, source=Source.MEASURED)
    apart = other.start - one.end if other.start >= one.end else one.start - other.end
    between = known("between_blocks", apart, Unit.LENGTH, source=Source.MEASURED)
    block = known("block", other.end - other.start, Unit.LENGTH, source=Source.MEASURED)
    return worked("shaded", Unit.LENGTH, "smaller(noon_shadow × share_along − between_blocks, block)", shadow, share,
                  between, block, using={"smaller": smaller}, source=Source.GEOMETRY)  # fmt: skip


def _tangent(lean: Fraction) -> Fraction:
    return Fraction(abs(tan(radians(lean))))
