"""Days in words."""

from collections.abc import Sequence
from datetime import date
from functools import lru_cache

from gardenplot.units.figures import grouped
from gardenplot.words import _

_MOST_LISTED = 3
"""More market days than this are told by their number."""


def day_words(day: date) -> str:
    """A day as people say it: "Fri 9 Apr 2027"."""
    return f"{day:%a} {day.day} {day:%b %Y}"


def short_day(day: date) -> str:
    """A day in short: "9 Apr"."""
    return f"{day.day} {day:%b}"


@lru_cache(maxsize=1024)
def weekday_words(day: date) -> str:
    """A day beside its year: "Fri 9 Apr"."""
    return f"{day:%a} {day.day} {day:%b}"


def days_between(first: date, last: date) -> str:
    """Two days with all that they do not share: "12 – 18 Apr 2027", "28 Dec 2026 – 3 Jan 2027"."""
    begin = str(first.day)
    if (first.year, first.month) != (last.year, last.month):
        begin = short_day(first)
    if first.year != last.year:
        begin += f" {first:%Y}"
    return f"{begin} – {short_day(last)} {last:%Y}"


def missing_words(days: Sequence[date]) -> str:
    """The market days that are missed: "too late for 12 Jul, 19 Jul"; nothing where none is."""
    if not days:
        return ""
    listed = ", ".join(short_day(day) for day in days)
    if len(days) > _MOST_LISTED:
        listed = _("{count} market days from {first} on").format(count=grouped(len(days)), first=short_day(days[0]))
    return _("too late for {days}").format(days=listed)


def with_missing(words: str, days: Sequence[date]) -> str:
    """Words about the market day that is made, with those that are missed: "Sat 26 Jul, too late for 12 Jul"."""
    return ", ".join(part for part in (words, missing_words(days)) if part)
