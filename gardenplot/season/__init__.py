"""When: dates back from the market day and forward from the day in the ground."""

from gardenplot.season.dates import Dates, dates_for, dates_of, grown_on, share_days, stand_for

__all__ = ["Dates", "dates_for", "dates_of", "grown_on", "share_days", "stand_for"]
