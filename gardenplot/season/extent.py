"""The days of a plan: from the first that anything takes ground to the last, and those round them to plan in."""

from datetime import date, timedelta
from functools import lru_cache

from gardenplot.plan import Plan
from gardenplot.season.dates import all_dates
from gardenplot.season.orders import market_days
from gardenplot.season.span import Span

_DAY, _WEEK = timedelta(days=1), timedelta(days=7)
_MONTHS_WITHOUT_DATES = 8


@lru_cache(maxsize=16)
def season_of(plan: Plan) -> Span | None:
    """The days on which anything happens in the ground, else the market days, a week more at both ends.

    None for a plan in which nothing has a date.
    """
    days = [day for one in all_dates(plan) for day in (one.in_ground, one.out) if day]
    days = days or [day for order in plan.orders for day in market_days(order)]
    if not days:
        return None
    return Span(_moved(min(days), -_WEEK), _moved(max(days), _WEEK))


def planning_days(plan: Plan, today: date) -> Span:
    """The months of a plan's season and the one after them, in which something more may go in.

    Without a date anywhere some months from today's on.
    """
    season = season_of(plan)
    if season is None:
        return Span(today.replace(day=1), _end_of_month(today, _MONTHS_WITHOUT_DATES - 1))
    return Span(season.first.replace(day=1), _end_of_month(season.last, 1))


def _end_of_month(day: date, later: int) -> date:
    """The last day of a month so many months later, or of the calendar."""
    years, month = divmod(day.month + later, 12)
    if day.year + years > date.max.year:
        return date.max
    return date(day.year + years, month + 1, 1) - _DAY


def _moved(day: date, by: timedelta) -> date:
    try:
        return day + by
    except OverflowError:
        return day
