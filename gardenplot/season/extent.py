"""The days of a plan: from the first that anything takes ground to the last."""

from datetime import date, timedelta
from functools import lru_cache

from gardenplot.plan import Plan
from gardenplot.season.dates import dates_of
from gardenplot.season.orders import market_days
from gardenplot.season.span import Span

_WEEK = timedelta(days=7)


@lru_cache(maxsize=16)
def season_of(plan: Plan) -> Span | None:
    """The days on which anything happens in the ground, else the market days, a week more at both ends.

    None for a plan in which nothing has a date.
    """
    dates = [dates_of(plan, planting) for planting in plan.plantings]
    days = [day for one in dates for day in (one.in_ground, one.out) if day]
    days = days or [day for order in plan.orders for day in market_days(order)]
    if not days:
        return None
    return Span(_moved(min(days), -_WEEK), _moved(max(days), _WEEK))


def _moved(day: date, by: timedelta) -> date:
    try:
        return day + by
    except OverflowError:
        return day
