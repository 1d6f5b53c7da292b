"""The dates of a planting in words, each with the sum that gave it and how far to trust it."""

from collections.abc import Iterator
from datetime import date

from gardenplot.drawing.days import day_words
from gardenplot.drawing.number_words import in_short, name_words
from gardenplot.drawing.so_many import so_many_days
from gardenplot.layout import Grown
from gardenplot.season import Dates, market_day
from gardenplot.season.date_numbers import date_numbers
from gardenplot.season.emergence import NotInTable, emergence
from gardenplot.units import Temperature, Units
from gardenplot.words import _
from gardenplot.working import Number


def dates_told(one: Grown) -> dict[str, Number]:
    """The dates of a planting that are known, in the order in which they come, by their names; those of trays that
    harden off are the first and the last day that they stand there."""
    raised = one.hardened
    if raised is None:
        return date_numbers(one.planting, one.crop, one.order, one.site)
    found = date_numbers(raised.planting, raised.crop, raised.order, raised.site)
    return {name: found[name] for name in ("harden", "set_out") if name in found}


def date_lines(one: Grown, units: Units) -> Iterator[str]:
    """The dates of a planting, each with its sum, a line each."""
    for name, number in dates_told(one).items():
        words = emerges_words(one) if name == "emerges" and number.value is None else ""
        yield f"{name_words(name)}:  {words}" if words else in_short(number, units)


def emerges_words(one: Grown) -> str:
    """Why the table of days to emerge does not tell; empty where it does, or where it is not asked."""
    soil = one.planting.soil
    found = emergence(one.crop.emerges_like, soil) if soil is not None else None
    return table_words(found, soil) if isinstance(found, NotInTable) and soil is not None else ""


def table_words(found: NotInTable, soil: Temperature) -> str:
    """Why the table does not tell: "soil of 8 °C: the table has 59 to 86 °F (15 to 30 °C), next to none at 50 °F"."""
    if found.coldest is None or found.warmest is None:
        return _("the table of days to emerge does not have it")
    words = _("soil of {soil}: the table has {coldest} to {warmest} °F ({cold} to {warm} °C)").format(
        soil=soil,
        coldest=found.coldest,
        warmest=found.warmest,
        cold=_celsius(found.coldest),
        warm=_celsius(found.warmest),
    )
    if found.none_at is None:
        return words
    return words + _(", next to none emerging at {degrees} °F ({celsius} °C)").format(
        degrees=found.none_at, celsius=_celsius(found.none_at)
    )


def _celsius(fahrenheit: int) -> int:
    """The columns of the table lie nine degrees Fahrenheit apart from the freezing point on: whole ones Celsius."""
    return (fahrenheit - 32) * 5 // 9


def market_words(one: Grown) -> str:
    """The market day of a planting against the day that it is ready: "ready 1 day before Sat 17 May 2025"."""
    day = market_day(one.order, one.planting.market) if one.order is not None else None
    ready = one.dates.ready
    if day is None or ready is None:
        return ""
    days = (day - ready).days
    words = _("ready {days} before {day}") if days >= 0 else _("ready {days} after the market on {day}")
    return words.format(days=so_many_days(abs(days)), day=day_words(day))


def follows_words(one: Grown, planned: Dates) -> dict[str, str]:
    """By the name of a field, the day that holds where none was typed, or where another came about.

    `planned` are the dates without what came about.
    """
    found = {}
    for name in ("sow", "in_ground", "ready", "out"):
        day, meant = getattr(one.dates, name), getattr(planned, name)
        is_typed = getattr(one.planting, name) is not None
        if day is not None and (not is_typed or day != meant):
            found[name] = _("now {day}").format(day=day_words(day)) if day != meant else day_words(day)
    emerges = dates_told(one).get("emerges")
    if emerges is not None:
        day = None if emerges.value is None else day_words(date.fromordinal(int(emerges.value)))
        found["soil"] = _("emerges {day}").format(day=day) if day else emerges_words(one)
    return found
