"""Days of less than ten hours of light, on which plants hardly grow.

That they do not count towards maturity is common practice, no source; a place can switch it off.
"""

from datetime import date, timedelta
from functools import lru_cache

from gardenplot.plan import Place
from gardenplot.season.span import Span
from gardenplot.season.sun import Site, site_of, sun_over

TEN_HOURS = timedelta(hours=10)
_DAY = timedelta(days=1)


@lru_cache(maxsize=64)
def counting_site(place: Place) -> Site | None:
    """Where short days are to be left out of the count; None where they count, or where nobody knows them."""
    return None if place.short_days_count else site_of(place)


def short_days(site: Site, span: Span) -> tuple[Span, ...]:
    """The short days of a span of dates, winter by winter."""
    years = range(max(2, span.first.year - 1), min(9997, span.last.year + 1) + 1)
    near = (year for year in years if _summer(site, year) <= span.last and span.first <= _summer(site, year + 1))
    winters = (winter for year in near if (winter := _winter(site, year)) is not None)
    cut = (Span(max(winter.first, span.first), min(winter.last, span.last)) for winter in winters)
    return tuple(each for each in cut if each.first <= each.last)


def days_that_count(site: Site | None, first: date, last: date) -> int:
    """How many days from the first to the last, both among them, are not too short; 0 where the last is earlier."""
    if last < first:
        return 0
    span = Span(first, last)
    return span.days - (sum(each.days for each in short_days(site, span)) if site is not None else 0)


def after(site: Site | None, day: date, days: int) -> date | None:
    """The first day by which so many days that count have gone by since a day; None past the calendar's end."""
    return _counted(site, day, days, 1)


def before(site: Site | None, day: date, days: int) -> date | None:
    """The last day since which so many days that count have gone by on a day; None before the calendar begins."""
    return _counted(site, day, days, -1)


def _counted(site: Site | None, day: date, days: int, way: int) -> date | None:
    """So many days that count on from a day, or back."""
    try:
        found = day + way * days * _DAY
        if site is None:
            return found
        # Each short day that lies between moves the end by a day, which may bring in further ones.
        while (lacking := days - _gone(site, day, found)) > 0:
            found += way * lacking * _DAY
    except OverflowError:
        return None
    return found


def _gone(site: Site, day: date, other: date) -> int:
    """How many days that count lie after the earlier of two days, up to the later one with it."""
    first, last = min(day, other), max(day, other)
    return days_that_count(site, first + _DAY, last) if first < last else 0


@lru_cache(maxsize=1024)
def _winter(site: Site, year: int) -> Span | None:
    """The short days about the winter solstice that lies in a year's end in the north, in its middle in the south.

    Between solstices days only grow longer or shorter, so that both ends are found by halving.
    """
    autumn, spring = _summer(site, year), _summer(site, year + 1)
    middle = date(year, 12, 21) if site.latitude >= 0 else date(year, 6, 21)
    if not _is_short(site, middle):
        return None
    return Span(_edge(site, autumn, middle), _edge(site, spring, middle))


def _summer(site: Site, year: int) -> date:
    """The summer solstice before the winter of a year."""
    return date(year, 6, 21) if site.latitude >= 0 else date(year - 1, 12, 21)


def _edge(site: Site, light: date, dark: date) -> date:
    """The short day that is nearest to a light one; the dark one is short."""
    if _is_short(site, light):
        return light
    while abs((dark - light).days) > 1:
        between = light + (dark - light) / 2
        light, dark = (light, between) if _is_short(site, between) else (between, dark)
    return dark


def _is_short(site: Site, day: date) -> bool:
    return sun_over(site, day).light < TEN_HOURS
