"""The words of a series: what was made of it, and for which days there was no ground."""

from collections.abc import Sequence
from datetime import date

from gardenplot.drawing.days import day_words
from gardenplot.drawing.hand_words import listed
from gardenplot.drawing.sayings import name_of
from gardenplot.plan import Plan
from gardenplot.words import _, ngettext

_TOLD = 3
"""Days that are told one by one; of more the rest is counted."""


def series_words(plan: Plan, planting: str, made: int, without_ground: Sequence[date]) -> str:
    """What came of a series: "Leek: 3 plantings more; no ground is free for Sat 12 Jun 2027"."""
    words = ngettext("{crop}: {count} planting more", "{crop}: {count} plantings more", made).format(
        crop=name_of(plan, planting), count=made
    )
    if not without_ground:
        return words
    days = [day_words(day) for day in without_ground[:_TOLD]]
    more = len(without_ground) - len(days)
    if more:
        days.append(ngettext("{count} day more", "{count} days more", more).format(count=more))
    missing = _("no ground is free for {days}").format(days=listed(days))
    return (
        f"{words}; {missing}"
        if made
        else _("{crop}: {missing}").format(crop=name_of(plan, planting), missing=missing)
    )


def markets_words(days: Sequence[date]) -> str:
    """The market days that a series can be made for: "Without a planting: Sat 12 Jun 2027 and Sat 19 Jun 2027"."""
    told = [day_words(day) for day in days[:_TOLD]]
    if len(days) > _TOLD:
        more = len(days) - _TOLD
        told.append(ngettext("{count} day more", "{count} days more", more).format(count=more))
    return _("Market days without a planting: {days}.").format(days=listed(told))
