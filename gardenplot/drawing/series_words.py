"""The words of a series: what was made of it, and for which days there was no ground."""

from collections.abc import Sequence
from datetime import date

from gardenplot.drawing.days import short_day
from gardenplot.drawing.hand_words import listed
from gardenplot.drawing.sayings import name_of
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.plan.series import series_of
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext

_MOST = 3
"""Days that are told one by one; of more the rest is counted."""


def series_words(plan: Plan, planting: str, made: int, without_ground: Sequence[date]) -> str:
    """What came of a series: "Leek: 3 plantings more".

    Or: "Leek: 3 of 4 plantings have ground; none is free for 12 Jun".
    """
    if not without_ground:
        return ngettext("{crop}: {count} planting more", "{crop}: {count} plantings more", made).format(
            crop=name_of(plan, planting), count=made
        )
    count = made + len(without_ground)
    words = ngettext(
        "{crop}: {made} of {count} planting has ground; none is free for {days}",
        "{crop}: {made} of {count} plantings have ground; none is free for {days}",
        count,
    )
    return words.format(crop=name_of(plan, planting), made=made, count=count, days=_told(without_ground))


def _told(days: Sequence[date]) -> str:
    told = [short_day(day) for day in days[:_MOST]]
    more = len(days) - len(told)
    if more:
        told.append(ngettext("{count} day more", "{count} days more", more).format(count=more))
    return listed(told)


def linked_words(plan: Plan, planting: str) -> str:
    """What a change of a planting does to the others of its series, for before one is made; nothing without one."""
    series = series_of(plan, planting)
    if not series:
        return ""
    count = grouped(len(series))
    if is_in_ground(planting_of(plan, planting)):
        return _("One of {count} in a series, but in the ground: it stands by itself.").format(count=count)
    others = sum(one.id != planting and not is_in_ground(one) for one in series)
    if not others:
        return _("One of {count} in a series, of which all others are in the ground.").format(count=count)
    words = ngettext(
        "One of {count} in a series: its pattern, rows, spacings and size are changed in {others} other too, "
        "place and days in this one alone.",
        "One of {count} in a series: its pattern, rows, spacings and size are changed in {others} others too, "
        "place and days in this one alone.",
        others,
    )
    return words.format(count=count, others=grouped(others))


def markets_words(days: Sequence[date]) -> str:
    """The market days that a series can be made for: "Without a planting: 12 Jun and 19 Jun."."""
    return _("Market days without a planting: {days}.").format(days=_told(days))
