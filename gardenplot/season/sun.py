"""Sunrise, sunset and the length of a day at a place, worked out by the library ephem.

Checked against the tables of the United States Naval Observatory (`tests/published`): sunrise and sunset are those of
the sun's upper limb on a level horizon, with the refraction that almanacs allow for there, 34 minutes of arc. Hills
and trees make them later and earlier; the height of a place hardly does.
"""

from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from math import degrees
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import ephem
from attrs import frozen

from gardenplot.plan import Place

_HORIZON = "-0:34"
_WHOLE_DAY = timedelta(days=1)
_FIRST, _LAST = date(1, 1, 3), date(9999, 12, 29)
"""The days whose suns can be told: a day before and after them must be in the calendar too."""


@frozen(cache_hash=True)
class Site:
    """Where on earth, in degrees north and east; where the east is not known, only the lengths of days are right."""

    latitude: float
    longitude: float = 0.0


@frozen
class Sun:
    """One day's sunrise and sunset in universal time, and how long it is light.

    Both are None on a day that is light or dark all through.
    """

    rise: datetime | None
    set: datetime | None
    light: timedelta


def site_of(place: Place) -> Site | None:
    """Where a place is; None where it does not say its latitude."""
    if place.latitude is None:
        return None
    return Site(place.latitude, place.longitude or 0.0)


def zone_of(place: Place) -> ZoneInfo | None:
    """The time zone of a place; None where it has none, or one that this computer does not know."""
    return _zone(place.time_zone) if place.time_zone else None


@lru_cache(maxsize=64)
def _zone(name: str) -> ZoneInfo | None:
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, OSError, ValueError):
        # Not only a name that is not known: a folder's name or one that leaves the folder of zones ends here too.
        return None


def sun_at(place: Place, day: date) -> Sun | None:
    """The sun of a day on the clock of a place; None where the place does not say where it is, or by which clock."""
    zone = zone_of(place)
    if place.latitude is None or place.longitude is None or zone is None or not _FIRST <= day <= _LAST:
        return None
    sun = sun_over(Site(place.latitude, place.longitude), day)
    return Sun(
        sun.rise.astimezone(zone) if sun.rise else None, sun.set.astimezone(zone) if sun.set else None, sun.light
    )


@lru_cache(maxsize=8192)
def noon_lean(site: Site, day: date) -> float:
    """How far the sun of a day's noon stands from straight overhead, in degrees; less than nothing to the north.

    The latitude less the sun's declination (Meeus: Astronomical Algorithms, chapter 13, on the meridian).
    """
    noon = datetime.combine(min(max(day, _FIRST), _LAST), time(12), UTC) - timedelta(hours=site.longitude / 15)
    sun = ephem.Sun(noon.replace(tzinfo=None))
    return site.latitude - degrees(sun.g_dec)


@lru_cache(maxsize=8192)
def sun_over(site: Site, day: date) -> Sun:
    """The sunrise before and the sunset after the noon of a day, by the sun's own time at the site."""
    noon = datetime.combine(min(max(day, _FIRST), _LAST), time(12), UTC) - timedelta(hours=site.longitude / 15)
    observer, sun = ephem.Observer(), ephem.Sun()
    observer.lat, observer.lon = str(site.latitude), str(site.longitude)
    observer.pressure, observer.horizon = 0, _HORIZON
    observer.date = noon.replace(tzinfo=None)
    try:
        rise = observer.previous_rising(sun)
        observer.date = noon.replace(tzinfo=None)
        sets = observer.next_setting(sun)
    except ephem.AlwaysUpError:
        return Sun(None, None, _WHOLE_DAY)
    except ephem.NeverUpError:
        return Sun(None, None, timedelta(0))
    first, last = (moment.datetime().replace(tzinfo=UTC) for moment in (rise, sets))
    if last - first > _WHOLE_DAY:
        # At the edge of a polar summer or winter the nearest ones belong to other days.
        observer.date = noon.replace(tzinfo=None)
        sun.compute(observer)
        return Sun(None, None, _WHOLE_DAY if sun.alt > ephem.degrees(_HORIZON) else timedelta(0))
    return Sun(first, last, last - first)
