"""Days in words."""

from datetime import date


def day_words(day: date) -> str:
    """A day as people say it: "Fri 9 Apr 2027"."""
    return f"{day:%a} {day.day} {day:%b %Y}"


def short_day(day: date) -> str:
    """A day in short: "9 Apr"."""
    return f"{day.day} {day:%b}"
