"""The dates of a planting in words, each with the sum that gave it and how far to trust it."""

from collections.abc import Iterator
from datetime import date, timedelta

from gardenplot.drawing.days import day_words
from gardenplot.drawing.so_many import so_many_days
from gardenplot.layout import Grown
from gardenplot.plan import Actual, Establish
from gardenplot.season import Dates, market_day
from gardenplot.season.dates import added_days, packet_days, wanted_ready
from gardenplot.season.emergence import SOURCE, NotInTable, emergence
from gardenplot.season.short_days import days_that_count
from gardenplot.units import Temperature
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Trust, Working

MINUS, NONE = "−", "–"
_HARDENING = "University of Maryland Extension, hardening off vegetable seedlings"


def date_workings(one: Grown) -> tuple[Working, ...]:
    """The dates of a planting that are known, in the order in which they come."""
    raised = one.crop.establish is Establish.TRANSPLANT
    found = [*_sow(one), *_pot_up(one), *_harden(one)] if raised else []
    return (*found, *_in_ground(one), *_emerges(one), *_ready(one), *_last(one), *_out(one))


def _day(name: str, day: date | None, how: str, trust: Trust = Trust.FAIR, source: str = RULES) -> Iterator[Working]:
    if day is not None:
        yield Working(name, how, day_words(day), trust, source)


def _fixed(name: str, day: date | None, *, came: bool) -> Iterator[Working]:
    """A day that nothing had to be counted for."""
    return _day(name, day, _("as it came about") if came else _("typed"), Trust.EXACT, "")


def _came(one: Grown) -> Actual:
    return one.planting.actual or Actual()


def _sow(one: Grown) -> Iterator[Working]:
    dates, days = one.dates, one.crop.raising_days
    if _came(one).sown or one.planting.sow:
        yield from _fixed(_("sow"), dates.sow, came=_came(one).sown is not None)
    elif dates.set_out is not None and days is not None:
        yield from _day(_("sow"), dates.sow, f"{day_words(dates.set_out)} {MINUS} {so_many_days(days)}")


def _pot_up(one: Grown) -> Iterator[Working]:
    if _came(one).potted_up:
        yield from _fixed(_("pot up"), one.dates.pot_up, came=True)
    elif one.dates.sow is not None and one.crop.pot_up_days is not None:
        how = f"{day_words(one.dates.sow)} + {so_many_days(one.crop.pot_up_days)}"
        yield from _day(_("pot up"), one.dates.pot_up, how)


def _harden(one: Grown) -> Iterator[Working]:
    dates, days = one.dates, one.crop.hardening_days
    if _came(one).hardened:
        yield from _fixed(_("harden off from"), dates.harden, came=True)
    elif dates.set_out is not None and days is not None:
        how = f"{day_words(dates.set_out)} {MINUS} {so_many_days(days)}"
        yield from _day(_("harden off from"), dates.harden, how, source=_HARDENING)


def _in_ground(one: Grown) -> Iterator[Working]:
    dates, planting, came = one.dates, one.planting, _came(one)
    raised = one.crop.establish is Establish.TRANSPLANT
    name = _("set out") if raised else _("sow")
    if came.set_out or (came.sown and not raised):
        yield from _fixed(name, dates.in_ground, came=True)
    elif planting.in_ground or (planting.sow and not raised):
        yield from _fixed(name, dates.in_ground, came=False)
    elif raised and (came.sown or planting.sow) and dates.sow and one.crop.raising_days is not None:
        how = f"{day_words(dates.sow)} + {so_many_days(one.crop.raising_days)}"
        yield from _day(name, dates.in_ground, how)
    else:
        wanted = wanted_ready(planting, one.order)
        if wanted is not None:
            yield from _day(
                name, dates.in_ground, f"{day_words(wanted)} {MINUS} {_field(one, dates.in_ground, wanted)}"
            )


def _field(one: Grown, first: date | None, last: date | None) -> str:
    """The days in the field with what is added to the packet's, and those that were too short to count."""
    packet, added = packet_days(one.crop), added_days(one.planting, one.crop)
    words = so_many_days(packet or 0)
    if added:
        words = _("({packet} + {added} for the cool) days").format(packet=packet, added=added)
    if first is None or last is None or one.site is None:
        return words
    short = (last - first).days - days_that_count(one.site, first + timedelta(days=1), last)
    if not short:
        return words
    return words + ngettext(", {count} short day left out", ", {count} short days left out", short).format(
        count=short
    )


def _emerges(one: Grown) -> Iterator[Working]:
    """When what is sown in the bed emerges, where the temperature of its soil is known."""
    soil, day = one.planting.soil, one.dates.sow
    if soil is None or day is None or one.crop.establish is not Establish.DIRECT:
        return
    found = emergence(one.crop.emerges_like, soil)
    if isinstance(found, NotInTable):
        yield Working(_("emerges"), table_words(found, soil), NONE, Trust.FAIR, SOURCE)
        return
    days = -(-found.days.numerator // found.days.denominator)
    how = _("{sown} + {days} at {soil}").format(sown=day_words(day), days=so_many_days(days), soil=soil)
    yield from _day(_("emerges"), day + timedelta(days=days), how, source=SOURCE)


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


def _ready(one: Grown) -> Iterator[Working]:
    dates, came = one.dates, _came(one)
    if came.harvested is not None:
        yield from _fixed(_("ready"), dates.ready, came=True)
    elif dates.ready is not None and dates.ready == one.planting.ready and came.set_out is None:
        yield from _fixed(_("ready"), dates.ready, came=False)
    elif dates.in_ground is not None:
        how = f"{day_words(dates.in_ground)} + {_field(one, dates.in_ground, dates.ready)}"
        yield from _day(_("ready"), dates.ready, how)


def _last(one: Grown) -> Iterator[Working]:
    days, ready = one.crop.harvest_days, one.dates.ready
    if days and ready is not None:
        yield from _day(_("cut until"), one.dates.last, f"{day_words(ready)} + {so_many_days(days)}")


def _out(one: Grown) -> Iterator[Working]:
    dates = one.dates
    if _came(one).cleared or one.planting.out:
        yield from _fixed(_("ground free"), dates.out, came=_came(one).cleared is not None)
    elif dates.last is not None:
        yield from _day(_("ground free"), dates.out, f"{day_words(dates.last)} + {so_many_days(1)}")


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
    emerges = next(_emerges(one), None)
    if emerges is not None:
        found["soil"] = f"{emerges.name} {emerges.value}" if emerges.value != NONE else emerges.sum
    return found


def dates_in_order(dates: Dates) -> tuple[tuple[str, date], ...]:
    """The dates that are known, with the words for what is done, in the order in which they come."""
    steps = (
        (_("sow"), dates.sow),
        (_("pot up"), dates.pot_up),
        (_("harden off from"), dates.harden),
        (_("set out"), dates.set_out),
        (_("ready"), dates.ready),
        (_("cut until"), dates.last if dates.last != dates.ready else None),
        (_("ground free"), dates.out),
    )
    return tuple((words, day) for words, day in steps if day is not None)
