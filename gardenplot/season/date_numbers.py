"""The dates of a planting as numbers with their workings: the days of `dates_for`, and what they are counted from.

Ready = market day - lead; set out = ready - field days; sow = set out - raising days, as `dates` has it. A day that
was typed or that came about is exact, one that was counted fair: a week or two. Formulas: common practice, no source;
hardening off and the days to emerge name theirs.
"""

from collections.abc import Iterator
from datetime import date, timedelta

from attrs import frozen

from gardenplot.plan import Actual, Crop, DaysFrom, Establish, Order, Planting
from gardenplot.season.dates import Dates, added_days, cut_day, dates_for, field_days, wanted_ready
from gardenplot.season.emergence import NotInTable, emergence
from gardenplot.season.orders import market_day, market_number
from gardenplot.season.short_days import days_that_count
from gardenplot.season.sun import Site
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, worked

_NOTHING_YET = Actual()


@frozen
class _Asked:
    """What the dates of a planting follow from, and what they are."""

    planting: Planting
    crop: Crop
    order: Order | None
    site: Site | None
    dates: Dates

    @property
    def came(self) -> Actual:
        """What came about."""
        return self.planting.actual or _NOTHING_YET

    @property
    def raised(self) -> bool:
        """Whether it is raised in trays."""
        return self.crop.establish is Establish.TRANSPLANT


def date_numbers(planting: Planting, crop: Crop, order: Order | None, site: Site | None = None) -> dict[str, Number]:
    """The dates that are known, by their names in `Dates`, and `emerges`, in the order in which they come.

    Where the table of days to emerge does not have the soil that was typed, `emerges` is not known.
    """
    asked = _Asked(planting, crop, order, site, dates_for(planting, crop, order, site))
    return {name: number for name, number in _all(asked) if name == "emerges" or _is_true(asked.dates, name, number)}


def _is_true(dates: Dates, name: str, number: Number | None) -> bool:
    day: date | None = getattr(dates, name)
    return number is not None and day is not None and number.value == day.toordinal()


def _all(asked: _Asked) -> Iterator[tuple[str, Number]]:
    ready = _ready(asked)
    in_ground = _in_ground(asked, ready)
    if asked.raised:
        yield from _raising(asked, in_ground)
    if in_ground is not None:
        yield ("set_out" if asked.raised else "sow"), in_ground
    yield from _emerges(asked, in_ground)
    if ready is None and in_ground is not None:
        ready = _counted_on(asked, in_ground)
    last = ready
    if ready is not None:
        yield "ready", ready
    if ready is not None and asked.crop.harvest_days:
        last = _shifted("last", "ready + harvest_days", ready, _days("harvest_days", asked.crop.harvest_days))
        yield "last", last
    yield from _out(asked, last)


def _raising(asked: _Asked, in_ground: Number | None) -> Iterator[tuple[str, Number]]:
    """The days in trays; what came about is told whether what it would follow from is known or not."""
    sow, pot_up, harden = _sow(asked, in_ground), None, None
    if sow is not None:
        yield "sow", sow
        pot_up = _shifted("pot_up", "sow + pot_up_days", sow, _days("pot_up_days", asked.crop.pot_up_days))
    yield from _of("pot_up", asked.came.potted_up, pot_up)
    if in_ground is not None:
        days = _days("hardening_days", asked.crop.hardening_days)
        harden = _shifted("harden", "set_out − hardening_days", in_ground, days, source=Source.HARDENING)
    yield from _of("harden", asked.came.hardened, harden)


def _out(asked: _Asked, last: Number | None) -> Iterator[tuple[str, Number]]:
    """The day on which the ground is free: where nobody says, the day after the last cut."""
    if asked.came.cleared is not None:
        yield "out", _came("out", asked.came.cleared)
    elif asked.planting.out is not None:
        yield "out", _typed("out", asked.planting.out)
    elif last is not None:
        day, cut = known("a_day", 1, Unit.DAYS, source=RULES), _cut(asked, last)
        kept = last if cut is None else cut
        yield "out", _shifted("out", f"{kept.name} + a_day", kept, day)


def _cut(asked: _Asked, last: Number) -> Number | None:
    """The day on which it is cut for the market day that it makes, where that is after the last of its harvest."""
    planting, order, ready = asked.planting, asked.order, asked.dates.ready
    day = cut_day(planting, order, ready)
    if order is None or ready is None or day is None or last.value is None or day.toordinal() <= last.value:
        return None
    market = market_number(order, planting.market, known("ready", ready.toordinal(), Unit.DATE))
    assert market is not None
    lead = known("lead_days", order.lead_days, Unit.DAYS, source=Source.OF_ORDER)
    return worked("cut_for_market", Unit.DATE, "market_made − lead_days", market, lead, source=RULES)


def _of(name: str, came: date | None, counted: Number | None) -> Iterator[tuple[str, Number]]:
    """What came about, else what was counted, if it was."""
    number = counted if came is None else _came(name, came)
    if number is not None:
        yield name, number


def _came(name: str, day: date) -> Number:
    return known(name, day.toordinal(), Unit.DATE, source=Source.CAME_ABOUT)


def _typed(name: str, day: date) -> Number:
    return known(name, day.toordinal(), Unit.DATE, source=Source.OF_PLANTING)


def _days(name: str, days: int | None, source: Source = Source.PACKET) -> Number:
    return known(name, days, Unit.DAYS, trust=Trust.FAIR, source=source)


def _shifted(name: str, formula: str, *terms: Number, source: Source = RULES) -> Number:
    return worked(name, Unit.DATE, formula, *terms, trust=Trust.FAIR, source=source)


def _sow(asked: _Asked, in_ground: Number | None) -> Number | None:
    if asked.came.sown is not None:
        return _came("sow", asked.came.sown)
    if asked.planting.sow is not None:
        return _typed("sow", asked.planting.sow)
    if in_ground is None:
        return None
    return _shifted("sow", "set_out − raising_days", in_ground, _days("raising_days", asked.crop.raising_days))


def _in_ground(asked: _Asked, ready: Number | None) -> Number | None:
    """The day of setting out or, of what is sown where it grows, of sowing; without what came about or was typed it
    is counted back from the day on which it is to be ready."""
    came, planting, name = asked.came, asked.planting, "set_out" if asked.raised else "sow"
    happened = came.set_out or (None if asked.raised else came.sown)
    if happened is not None:
        return _came(name, happened)
    given = planting.in_ground or (None if asked.raised else planting.sow)
    if given is not None:
        return _typed(name, given)
    sown = came.sown or planting.sow
    if asked.raised and sown is not None and asked.crop.raising_days is not None:
        sow = _sow(asked, None)
        assert sow is not None
        return _shifted(name, "sow + raising_days", sow, _days("raising_days", asked.crop.raising_days))
    wanted = wanted_ready(planting, asked.order)
    if wanted is None or asked.dates.in_ground is None:
        return None
    by = ready if ready is not None and ready.value == wanted.toordinal() else _wanted(asked, "wanted", wanted)
    return _through(asked, name, by, "−", asked.dates.in_ground, wanted)


def _wanted(asked: _Asked, name: str, day: date) -> Number:
    """The day on which it is to be ready, as it was typed or before its market day."""
    market = market_day(asked.order, asked.planting.market) if asked.order is not None else None
    if asked.planting.ready is not None or asked.order is None or market is None:
        return _typed(name, day)
    on = known("market", market.toordinal(), Unit.DATE, source=Source.OF_ORDER)
    lead = known("lead_days", asked.order.lead_days, Unit.DAYS, source=Source.OF_ORDER)
    return worked(name, Unit.DATE, "market − lead_days", on, lead, source=RULES)


def _ready(asked: _Asked) -> Number | None:
    """The day on which it is ready, where that is not counted on from the day in the ground."""
    came, planting, ready = asked.came, asked.planting, asked.dates.ready
    if came.harvested is not None:
        return _came("ready", came.harvested)
    is_counted = came.set_out is not None and field_days(planting, asked.crop) is not None
    if ready is None or is_counted:
        return None
    if planting.ready == ready:
        return _typed("ready", ready)
    is_fixed = came.sown or planting.in_ground or planting.sow
    wanted = wanted_ready(planting, asked.order)
    return _wanted(asked, "ready", ready) if not is_fixed and wanted == ready else None


def _counted_on(asked: _Asked, in_ground: Number) -> Number | None:
    first, last = asked.dates.in_ground, asked.dates.ready
    if first is None or last is None:
        return None
    return _through(asked, "ready", in_ground, "+", first, last)


def _through(asked: _Asked, name: str, since: Number, sign: str, first: date, last: date) -> Number:
    """A day so many days in the field before or after another; those too short to count are days more."""
    field = _field(asked)
    short = 0
    if asked.site is not None:
        short = (last - first).days - days_that_count(asked.site, first + timedelta(days=1), last)
    if not short:
        return _shifted(name, f"{since.name} {sign} field_days", since, field)
    more = _days("short_days", short, Source.SUN)
    return _shifted(name, f"{since.name} {sign} field_days {sign} short_days", since, field, more)


def _field(asked: _Asked) -> Number:
    """The packet's days, counted from when the crop goes into its bed, and those that are added for the cool."""
    crop, added = asked.crop, added_days(asked.planting, asked.crop)
    packet = _days("field_days" if not added else "packet_days", crop.field_days)
    counted_from = DaysFrom.SETTING_OUT if asked.raised else DaysFrom.SOWING
    if crop.days_from not in (None, counted_from) and crop.field_days is not None:
        of, raising = _days("days_of_packet", crop.field_days), _days("raising_days", crop.raising_days)
        formula = "larger(days_of_packet − raising_days, 1)" if asked.raised else "days_of_packet + raising_days"
        packet = worked(packet.name, Unit.DAYS, formula, of, raising, trust=Trust.FAIR, source=RULES,
                        using={"larger": max})  # fmt: skip
    if not added:
        return packet
    source = Source.PACKET if asked.planting.cool_days is None else Source.OF_PLANTING
    cool = _days("cool_days", added, source)
    return worked("field_days", Unit.DAYS, "packet_days + cool_days", packet, cool, trust=Trust.FAIR, source=RULES)


def _emerges(asked: _Asked, sown: Number | None) -> Iterator[tuple[str, Number]]:
    """When what is sown in the bed emerges, where the temperature of its soil is known."""
    if asked.planting.soil is None or sown is None or asked.raised:
        return
    found = emergence(asked.crop.emerges_like, asked.planting.soil)
    days = known("emergence_days", None if isinstance(found, NotInTable) else found.days, Unit.DAYS,
                 trust=Trust.FAIR, source=Source.EMERGENCE)  # fmt: skip
    yield "emerges", worked("emerges", Unit.DATE, "sow + emergence_days", sown, days, rounding=Rounding.UP,
                            trust=Trust.FAIR, source=Source.EMERGENCE)  # fmt: skip
