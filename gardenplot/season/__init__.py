"""When: dates back from the market day and forward from the day in the ground."""

from gardenplot.season.dates import Dates, dates_for, dates_of, grown_on, share_days, stand_for
from gardenplot.season.span import Span, season_of

__all__ = ["Dates", "Span", "dates_for", "dates_of", "grown_on", "season_of", "share_days", "stand_for"]
