"""Frost as odds: the chance that it still freezes after a day, from the dates that a place knows.

The dates are those of published tables, which give for each chance the day after which a freeze is that likely.
Between two of them nothing is made up: a day lies before the one and after the other, and that is said. They are
odds, no forecast, and hold for the station where they were taken.
"""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from functools import lru_cache
from itertools import pairwise

from attrs import frozen

from gardenplot.plan import Cover, Crop, Establish, Frost, MonthDay, Odds, Place
from gardenplot.season.dates import Dates
from gardenplot.season.span import Span
from gardenplot.units import Share

_TENDER = frozenset({Frost.TENDER, Frost.VERY_TENDER})
_RARE = {True: 10, False: 50}
"""From how many years in a hundred a freeze is worth a word, for crops that it kills and for others."""

_SEASON = timedelta(days=183)
"""Half a year: nearer to a last freeze than this a day is asked about that one and no other."""


@frozen
class Freeze:
    """How a day lies to the dates of a place's freezes in one year.

    `likelier` is the largest chance whose day is still to come, with that day and how far off it is in days,
    `at_most` the least whose day is over: a freeze is no likelier than that. Before every day `at_most` is None,
    after all of them `likelier`.
    """

    likelier: Share | None
    day: date | None
    days: int
    at_most: Share | None


def is_tender(crop: Crop) -> bool:
    """Whether frost kills a crop."""
    return crop.frost in _TENDER


def is_hard(place: Place, frost: Frost | None) -> bool:
    """Whether it is the hard freezes of a place that count for a crop: for hardy ones, where the place knows them."""
    return frost is Frost.HARDY and bool(place.last_hard_freeze)


def last_freeze(place: Place, day: date, *, hard: bool = False) -> Freeze | None:
    """The chance that it still freezes after a day of spring or summer; None where the place knows no dates.

    With `hard`, of a hard freeze (28 °F, −2.2 °C) instead of a freeze (32 °F, 0 °C). In the autumn, more than half a
    year past the last freeze, None too: the next spring's dates say nothing of it.
    """
    odds = place.last_hard_freeze if hard else place.last_freeze
    return _last(odds, day)


def _last(odds: Odds, day: date) -> Freeze | None:
    if not odds:
        return None
    year = _year_of(odds, day)
    if year is None:
        return None
    rarest = on_year(_rarest(odds), year)
    dated = ((share, _towards(when, rarest)) for share, when in odds)
    days = sorted(dated, key=lambda one: one[0].part, reverse=True)
    coming = [(share, when) for share, when in days if day < when]
    over = [share for share, when in days if when <= day]
    likelier, when = coming[0] if coming else (None, None)
    return Freeze(likelier, when, (when - day).days if when else 0, over[-1] if over else None)


@frozen
class FirstFreeze:
    """A chance that it has frozen by a day of autumn, and the next larger chance that the place knows, if any."""

    share: Share
    day: date
    more: Share | None = None


def first_freezes(place: Place, first: date, last: date) -> tuple[FirstFreeze, ...]:
    """The chances of a first freeze whose days lie between two, earliest first: those of the first autumn there.

    Rarer ones than are worth a word for what frost kills are left out.
    """
    odds = sorted(
        (one for one in place.first_freeze if one[0].part * 100 >= _RARE[True]), key=lambda one: one[0].part
    )
    larger = dict(pairwise(share for share, _day in odds))
    years = range(first.year, last.year + 1)
    dated = [FirstFreeze(share, on_year(day, year), larger.get(share)) for year in years for share, day in odds]
    found = sorted((one for one in dated if first < one.day <= last), key=lambda one: one.day)
    return tuple(one for one in found if one.day - found[0].day < _SEASON)


def _year_of(odds: Odds, day: date) -> int | None:
    """The year of the rarest of the last freezes that a day is to be set against."""
    for year in (day.year - 1, day.year, day.year + 1):
        if date.min.year <= year <= date.max.year:
            last = on_year(_rarest(odds), year)
            if abs(last - day) <= _SEASON:
                return year
    return None


def _rarest(odds: Odds) -> MonthDay:
    """The day of the least chance, which is the last of the days, also where the turn of a year lies between them."""
    return min(odds, key=lambda one: one[0].part)[1]


def _towards(when: MonthDay, rarest: date) -> date:
    """The day of a greater chance in the same winter as the day of the rarest."""
    day = on_year(when, rarest.year)
    is_before = day - rarest > _SEASON and rarest.year > date.min.year
    return on_year(when, rarest.year - 1) if is_before else day


def on_year(day: MonthDay, year: int) -> date:
    """A day of a year; 29 February is the 28th where there is none."""
    try:
        return date(year, day.month, day.day)
    except ValueError:
        return date(year, day.month, day.day - 1)


def spring_freeze(place: Place, crop: Crop, day: date | None) -> Freeze | None:
    """The freeze that is still to come for a crop that goes into the ground on a day; None where it needs no word.

    What is sown in its bed is below the ground at first, so it counts only for tender crops; for hardy ones only
    where the place knows its hard freezes. Crops of which nobody says how they take frost are taken for half-hardy.
    """
    is_sown, hard = crop.establish is Establish.DIRECT, is_hard(place, crop.frost)
    if day is None or (is_sown and not is_tender(crop)) or (crop.frost is Frost.HARDY and not hard):
        return None
    freeze = last_freeze(place, day, hard=hard)
    if freeze is None or freeze.likelier is None or freeze.likelier.part * 100 < _RARE[is_tender(crop)]:
        return None
    return freeze


def freezes_until(place: Place, crop: Crop, day: date | None) -> date | None:
    """The last day of spring before which a freeze is worth a word for a crop that goes in on a day; None for none.

    An average date fails one year in two: what frost kills is covered until the rarest freeze that is worth a word.
    """
    until = None
    while (freeze := spring_freeze(place, crop, until or day)) is not None:
        until = freeze.day
    return until


def autumn_freezes(place: Place, crop: Crop, dates: Dates) -> tuple[FirstFreeze, ...]:
    """The first freezes that are worth a word while a tender crop is still to be cut, earliest first."""
    if not is_tender(crop) or dates.in_ground is None or dates.stays is None:
        return ()
    return first_freezes(place, dates.in_ground, dates.stays)


def autumn_freeze(place: Place, crop: Crop, dates: Dates, until: date | None) -> FirstFreeze | None:
    """The likeliest of them by a day, the last on which the crop stands in the open; None where there is none."""
    freezes = autumn_freezes(place, crop, dates)
    return next((one for one in reversed(freezes) if until is None or one.day <= until), next(iter(freezes), None))


@lru_cache(maxsize=8192)
def frosty(place: Place, crop: Crop, dates: Dates) -> tuple[Span, ...]:
    """From when to when a crop must stand under a cover so that frost does not find it in the open."""
    return tuple(_frosty(place, crop, dates))


def _frosty(place: Place, crop: Crop, dates: Dates) -> Iterator[Span]:
    until = freezes_until(place, crop, dates.in_ground) if crop.frost is not Frost.HARDY else None
    if until is not None and dates.in_ground is not None:
        yield Span(dates.in_ground, until)
    freezes = autumn_freezes(place, crop, dates)
    if freezes and dates.stays is not None:
        yield Span(freezes[0].day, dates.stays)


def bare_from(covers: Iterable[Cover], day: date) -> date | None:
    """The first day from a day on of which no cover stands, one taking over from another; None where one stays on."""
    while over := [one for one in covers if one.on is None or one.on <= day]:
        offs = [one.off for one in over if one.off is not None]
        if len(offs) < len(over):
            return None
        if max(offs) <= day:
            return day
        day = max(offs)
    return day


def bare_until(covers: Iterable[Cover], day: date) -> date | None:
    """The last day up to a day on which no cover stands, one taking over from another; None where one always does."""
    covers = tuple(covers)
    while over := [one for one in covers if one.on != day and is_covered(one, Span(day, day))]:
        ons = [one.on for one in over if one.on is not None]
        if len(ons) < len(over):
            return None
        day = min(ons)
    return day


def is_covered(cover: Cover, span: Span) -> bool:
    """Whether a cover is on from one day to another."""
    return (cover.on is None or cover.on <= span.first) and (cover.off is None or span.last <= cover.off)


def are_covered(covers: Iterable[Cover], span: Span) -> bool:
    """Whether covers are on from one day to another, one taking over from another."""
    covers = tuple(covers)
    bare = bare_from(covers, span.first)
    return bare is None or span.first < bare >= span.last or any(is_covered(one, span) for one in covers)
