"""The quiet bands behind a season map: days on which it may freeze, days of little light, and the months."""

from collections.abc import Iterator
from datetime import date, timedelta
from enum import StrEnum

from attrs import evolve, frozen

from gardenplot.drawing.days import short_day
from gardenplot.plan import MonthDay, Place
from gardenplot.season import Span, counting_site
from gardenplot.season.frost import on_year
from gardenplot.season.short_days import short_days
from gardenplot.words import _

_LONGEST_COLD = 150
"""Days beside a freeze that are drawn as cold: nobody plants further from it on its account."""


class Quiet(StrEnum):
    """What is the matter with the days of a band."""

    UNTIL_LAST_FREEZE = "until the last freeze"
    FROM_FIRST_FREEZE = "from the first freeze"
    DARK = "little light"


@frozen
class Band:
    """Days with something against them, the first and the last; the words for that, and the day they are about."""

    first: date
    last: date
    words: str
    quiet: Quiet
    turns: date


def bands(place: Place, span: Span) -> tuple[Band, ...]:
    """All bands of a span, those that lie under others first."""
    return (*dark(place, span), *cold(place, span), *frosty(place, span))


def cold(place: Place, span: Span) -> list[Band]:
    """The days of a span before each year's last freeze, for each chance that the place knows, longest first."""
    found: list[Band] = []
    for share, day in place.last_freeze:
        for last in _in_years(day, span.first.year, span.last.year):
            first = last - timedelta(days=_LONGEST_COLD) if last.year > 1 else date.min
            words = _("frost after {day}: {share}").format(share=share, day=short_day(last))
            found.extend(_cut(Band(first, last, words, Quiet.UNTIL_LAST_FREEZE, last), span))
    return sorted(found, key=lambda one: (one.first, one.last), reverse=True)


def frosty(place: Place, span: Span) -> list[Band]:
    """The days of a span after each year's first freeze, for each chance that the place knows, longest first."""
    found: list[Band] = []
    for share, day in place.first_freeze:
        for first in _in_years(day, span.first.year - 1, span.last.year):
            last = first + timedelta(days=_LONGEST_COLD) if first.year < date.max.year else date.max
            words = _("frost before {day}: {share}").format(share=share, day=short_day(first))
            found.extend(_cut(Band(first, last, words, Quiet.FROM_FIRST_FREEZE, first), span))
    return sorted(found, key=lambda one: (one.first, one.last))


def dark(place: Place, span: Span) -> list[Band]:
    """The days of a span that have less than ten hours of light, where these are left out of the count."""
    site = counting_site(place)
    if site is None:
        return []
    words = _("less than 10 h of light")
    return [Band(one.first, one.last, words, Quiet.DARK, one.first) for one in short_days(site, span)]


def _in_years(day: MonthDay, first: int, last: int) -> Iterator[date]:
    """A day of any year in each of some years."""
    for year in range(max(date.min.year, first), last + 1):
        yield on_year(day, year)


def _cut(band: Band, span: Span) -> Iterator[Band]:
    """The part of a band that lies in a span."""
    if band.last >= span.first and band.first <= span.last:
        yield evolve(band, first=max(band.first, span.first), last=min(band.last, span.last))


def months(span: Span) -> list[tuple[date, str]]:
    """The first of each month in a span, with its name; January, and the first one, with the year."""
    found: list[tuple[date, str]] = []
    year, month = span.first.year, span.first.month + (span.first.day > 1)
    while True:
        year, month = year + (month - 1) // 12, (month - 1) % 12 + 1
        if year > date.max.year or date(year, month, 1) > span.last:
            return found
        first = date(year, month, 1)
        found.append((first, f"{first:%b %Y}" if month == 1 or not found else f"{first:%b}"))
        month += 1
