"""When: dates back from the market day and forward from the day in the ground, daylight, frost and nights."""

from gardenplot.season.dates import Dates, dates_for, dates_of, grown_on, share_days, tray_dates
from gardenplot.season.extent import planning_days, season_of
from gardenplot.season.orders import (
    market_day,
    market_days,
    market_made,
    markets_missed,
    stand_for,
    stand_number,
)
from gardenplot.season.short_days import counting_site
from gardenplot.season.span import Span
from gardenplot.season.sun import Site

__all__ = [
    "Dates", "Site", "Span", "counting_site", "dates_for", "dates_of", "grown_on", "market_day", "market_days",
    "market_made", "markets_missed", "planning_days", "season_of", "share_days", "stand_for", "stand_number",
    "tray_dates",
]  # fmt: skip
