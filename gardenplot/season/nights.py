"""The nights on which covers stand: when the sun sets, and by when they must be on.

Cover by = sunset - an hour: common practice, no source; a place can ask for more time or for less. Sunset is told to
the minute, as almanacs print it, and the rest is counted from what is told, so that a line on paper adds up. Where
nobody knows the sunset no time is claimed, and the night says why.
"""

from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum

from attrs import frozen

from gardenplot.plan import Cover, Place, Plan
from gardenplot.season.dates import dates_of
from gardenplot.season.extent import season_of
from gardenplot.season.span import Span
from gardenplot.season.sun import sun_at, zone_of

USUAL_AHEAD = 60
"""Minutes before sunset, where a place says nothing: common practice, no source."""
_DAY = timedelta(days=1)
_HALF_MINUTE = timedelta(seconds=30)


class NoSunset(StrEnum):
    """Why no sunset is told."""

    NO_PLACE = "no place"
    NO_CLOCK = "no clock"
    LIGHT_ALL_DAY = "light all day"
    DARK_ALL_DAY = "dark all day"
    OUT_OF_REACH = "out of reach"


@frozen
class Night:
    """The night that begins on a day, with the covers that stand in it, in the plan's order.

    Sunset and the time to cover by are on the clock of the place and may lie after midnight; both are None where
    `why` says why.
    """

    day: date
    covers: tuple[Cover, ...]
    sunset: datetime | None = None
    cover_by: datetime | None = None
    why: NoSunset | None = None


def ahead_of(place: Place) -> timedelta:
    """How long before sunset the covers of a place are to be on."""
    return timedelta(minutes=USUAL_AHEAD if place.cover_before is None else place.cover_before)


def cover_by(sunset: datetime, ahead: timedelta) -> datetime:
    """So long before a sunset, on the same clock, also where that is changed in between."""
    return (sunset.astimezone(UTC) - ahead).astimezone(sunset.tzinfo)


def stays_on(plan: Plan, cover: Cover) -> Span | None:
    """The first and the last night of a cover; a day that it leaves open is bounded by what stands in its bed.

    Where no day of that is known the season bounds it. None where that gives no night.
    """
    there = _in_bed(plan, cover.bed) or season_of(plan)
    first = cover.on or (there.first if there else None)
    last = cover.off - _DAY if cover.off is not None and cover.off > date.min else None
    if cover.off is None:
        last = there.last if there else None
    return Span(first, last) if first is not None and last is not None and first <= last else None


def _in_bed(plan: Plan, bed: str) -> Span | None:
    """From the first night on which anything stands in a bed to the last; None where its days are not known."""
    dates = [dates_of(plan, planting) for planting in plan.plantings if planting.bed == bed]
    begins = [one.in_ground for one in dates if one.in_ground is not None]
    ends = [one.out for one in dates if one.out is not None]
    if not begins or not ends or min(begins) >= max(ends):
        return None
    return Span(min(begins), max(ends) - _DAY)


def covered_span(plan: Plan) -> Span | None:
    """From the first night on which any cover of a plan stands to the last; None where there is none."""
    spans = [span for cover in plan.covers if (span := stays_on(plan, cover)) is not None]
    return Span(min(one.first for one in spans), max(one.last for one in spans)) if spans else None


def nights(plan: Plan, within: Span) -> Iterator[Night]:
    """The nights of a span of days on which any cover stands, in their order."""
    stand = [(cover, span) for cover in plan.covers if (span := stays_on(plan, cover)) is not None]
    for number in range(within.days):
        day = within.first + number * _DAY
        covers = tuple(cover for cover, span in stand if span.first <= day <= span.last)
        if covers:
            yield _night(plan.place, day, covers)


def _night(place: Place, day: date, covers: tuple[Cover, ...]) -> Night:
    sun = sun_at(place, day)
    if sun is None:
        return Night(day, covers, why=_no_sun(place))
    if sun.set is None:
        return Night(day, covers, why=NoSunset.LIGHT_ALL_DAY if sun.light else NoSunset.DARK_ALL_DAY)
    sunset = cover_by(sun.set, -_HALF_MINUTE).replace(second=0, microsecond=0)
    return Night(day, covers, sunset, cover_by(sunset, ahead_of(place)))


def _no_sun(place: Place) -> NoSunset:
    if place.latitude is None or place.longitude is None:
        return NoSunset.NO_PLACE
    return NoSunset.NO_CLOCK if zone_of(place) is None else NoSunset.OUT_OF_REACH
