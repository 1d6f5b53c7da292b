"""What is to be done, week by week: each planting from sowing until its ground is free, covers on and off, markets.

Weeks are those of ISO 8601: they begin on Monday, and the first of a year is the one with its first Thursday.
"""

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from enum import StrEnum
from functools import lru_cache
from itertools import groupby

from attrs import evolve, frozen

from gardenplot.drawing.days import days_between, missing_words, weekday_words
from gardenplot.drawing.letters import looks
from gardenplot.drawing.market_rows import market_id, market_rows
from gardenplot.drawing.number_words import value_words
from gardenplot.drawing.sayings import between, cut_by
from gardenplot.drawing.so_many import so_many_clumps, so_many_sown, so_many_trays
from gardenplot.drawing.thinned import left_words, thin_about
from gardenplot.drawing.workings import with_bought
from gardenplot.findings import Kind, find_in_bed
from gardenplot.layout import Grown, LaidOut, Layout, lay_out_plan
from gardenplot.plan import Actual, Bed, Cover, Crop, Establish, Plan, bed_of
from gardenplot.season import market_made, markets_missed
from gardenplot.supplies import Raising, cover_cut, raised_for
from gardenplot.supplies.bench import Bench, bench_by_week
from gardenplot.supplies.raising import is_seed
from gardenplot.units import Units
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext

_SUNDAY = 7


class Job(StrEnum):
    """What is done on a day, in the order in which jobs of one day are told."""

    COVER_OFF = "cover off"
    FREE = "ground free"
    SOW = "sow"
    POT_UP = "pot up"
    THIN = "thin"
    HARDEN = "harden"
    SET_OUT = "set out"
    READY = "ready"
    CUT_BY = "cut by"
    LAST = "last"
    COVER_ON = "cover on"
    MARKET = "market"


_JOBS = {
    Job.COVER_OFF: _("cover off"),
    Job.FREE: _("ground free"),
    Job.SOW: _("sow in the bed"),
    Job.POT_UP: _("pot up"),
    Job.THIN: _("thin, about"),
    Job.HARDEN: _("harden off"),
    Job.SET_OUT: _("set out"),
    Job.READY: _("ready to harvest"),
    Job.CUT_BY: _("cut by"),
    Job.LAST: _("cut until"),
    Job.COVER_ON: _("cover on"),
    Job.MARKET: _("market"),
}
_RANK = {job: number for number, job in enumerate(Job)}
_NOTHING_YET = Actual()


@frozen(cache_hash=True)
class DateRow:
    """A job on a day: in words, for which planting or where, and how many of what.

    `until` is the first day on which a job of several days is over. `about` is the id of the planting or cover, of
    what is cut for another also that one's, of a market its order's with the number of its day; `market` has both.
    `missed` are the market days that a harvest misses, or what a market day lacks. A market has no bed.
    """

    day: date
    job: Job
    what: str
    name: str
    amount: str
    bed_name: str
    bed: str
    about: str
    planting: str | None = None
    until: date | None = None
    done: bool = False
    missed: str = ""
    market: tuple[str, int] | None = None

    @property
    def amount_told(self) -> str:
        """How many of what, with the market days that it misses."""
        return ", ".join(part for part in (self.amount, self.missed) if part)

    @property
    def is_later_market(self) -> bool:
        """Whether it is a market day that something late makes in place of its own."""
        return self.market is not None and self.about != market_id(*self.market)

    @property
    def day_words(self) -> str:
        """The day as it is told below the heading of its week: "Fri 9 Apr"."""
        return weekday_words(self.day)


@frozen(cache_hash=True)
class Week:
    """A week in which something is to be done: its year and number by ISO 8601, and its rows.

    `bench` tells how many trays stand on the bench then and how much room they take; empty where none does.
    """

    year: int
    number: int
    rows: tuple[DateRow, ...]
    bench: str = ""

    @property
    def name(self) -> str:
        """ "Week 15"."""
        return _("Week {number}").format(number=self.number)

    @property
    def days(self) -> str:
        """From its Monday to its Sunday: "12 – 18 Apr 2027"."""
        monday = date.fromisocalendar(self.year, self.number, 1)
        # The calendar ends on a Friday.
        return days_between(monday, monday + timedelta(days=min(_SUNDAY - 1, (date.max - monday).days)))


def by_week(plan: Plan) -> tuple[Week, ...]:
    """The weeks of a plan in which something is to be done."""
    rows, benches = date_rows(plan), {_week_of(bench.monday): bench for bench in bench_by_week(plan)}
    return tuple(
        Week(*week, tuple(inner), _bench_words(plan, benches.get(week)))
        for week, inner in groupby(rows, lambda row: _week_of(row.day))
    )


def _bench_words(plan: Plan, bench: Bench | None) -> str:
    """ "9 trays on the bench, 1.36 m²"."""
    if bench is None or bench.trays.whole is None:
        return ""
    area = value_words(bench.area, plan.place.units)
    return _("{trays} on the bench, {area}").format(trays=so_many_trays(bench.trays.whole), area=area)


def _week_of(day: date) -> tuple[int, int]:
    year, number, _weekday = day.isocalendar()
    return year, number


@lru_cache(maxsize=16)
def date_rows(plan: Plan) -> tuple[DateRow, ...]:
    """All jobs of a plan that have a day, by day; those of one day as `Job` has them, then along the plan.

    Trays that harden off in a bed do so there, and not where they are to be set out.
    """
    look = looks(plan)
    in_beds = {planting.hardens for planting in plan.plantings if planting.hardens is not None}
    rows = [
        row
        for laid in lay_out_plan(plan)
        for row in _bed_rows(laid, tuple(look[one.planting.id].letter for one in laid.grown), plan.place.units)
        if row.job is not Job.HARDEN or row.about not in in_beds
    ]
    rows += [row for cover in plan.covers for row in _cover_rows(plan, cover)]
    rows += [
        DateRow(
            one.day, Job.MARKET, job_words(Job.MARKET), one.name, one.amount, "", "", one.about,
            missed=one.late, market=(one.order, one.market),
        )
        for one in market_rows(plan)
    ]  # fmt: skip
    place = {planting: number for number, planting in enumerate(look)}
    return tuple(sorted(rows, key=lambda row: (row.day, _RANK[row.job], place.get(row.planting or row.about, -1))))


@lru_cache(maxsize=1024)
def _bed_rows(laid: LaidOut, letters: tuple[str, ...], units: Units) -> tuple[DateRow, ...]:
    rows = [
        row
        for one, layout, letter in zip(laid.grown, laid.layouts, letters, strict=True)
        for row in _planting_rows(laid.bed, one, layout, letter, units)
    ]
    return (*rows, *_cut_rows(laid, letters))


def _cut_rows(laid: LaidOut, letters: tuple[str, ...]) -> Iterator[DateRow]:
    """By when plants are cut that stand on places kept for what follows."""
    there = {one.planting.id: (one, letter) for one, letter in zip(laid.grown, letters, strict=True)}
    for finding in find_in_bed(laid):
        if finding.kind is Kind.IN_THE_WAY and finding.planting is not None and finding.other is not None:
            (one, letter), (other, next_letter) = there[finding.planting], there[finding.other]
            amount = _("{plants}, for {letter}").format(
                plants=so_many_clumps(finding.amount, one.crop.stand), letter=next_letter
            )
            done = one.planting.actual is not None and one.planting.actual.cleared is not None
            day = cut_by(other.dates.in_ground)
            about = f"{finding.planting} {finding.other}"
            yield from (
                evolve(row, about=about) for row in _maker(laid.bed, one, letter)(Job.CUT_BY, day, amount, done=done)
            )


def _planting_rows(bed: Bed, one: Grown, layout: Layout, letter: str, units: Units) -> Iterator[DateRow]:
    row = _maker(bed, one, letter)
    if one.hardened is not None:
        yield from _tray_row(one, one.hardened, layout, row)
        return
    dates, came = one.dates, one.planting.actual or _NOTHING_YET
    made = raised_for(one, layout)
    raised = one.crop.establish is Establish.TRANSPLANT
    in_bed = came.set_out is not None or (not raised and came.sown is not None)
    plants = so_many_clumps(layout.plants, one.crop.stand)
    raise_plants = so_many_clumps(made.plants or layout.plants, one.crop.stand)
    if not made.is_all_bought:
        yield from row(
            Job.SOW,
            dates.sow,
            _sown(one.crop, made, plants, units),
            done=came.sown is not None or (not raised and in_bed),
        )
        yield from row(Job.POT_UP, dates.pot_up, raise_plants, done=came.potted_up is not None)
        yield from _thin_row(one, layout, units, row)
    trays = raise_plants if made.trays is None else so_many_trays(made.trays)
    yield from row(Job.HARDEN, dates.harden, trays, until=dates.set_out, done=came.hardened is not None)
    yield from row(Job.SET_OUT, dates.set_out, with_bought(plants, one.crop, made), done=in_bed)
    over = None if dates.last is None or dates.last == date.max else dates.last + timedelta(days=1)
    yield from row(
        Job.READY, dates.ready, _ready(one, layout), until=over, done=came.harvested is not None, missed=_missed(one)
    )
    if dates.last != dates.ready:
        yield from row(Job.LAST, dates.last, "")
    yield from row(Job.FREE, dates.out, _("from this day on"), done=came.cleared is not None)


def _thin_row(one: Grown, layout: Layout, units: Units, row: Callable[..., Iterator[DateRow]]) -> Iterator[DateRow]:
    """About when what came up too thick is thinned. Nobody records that, but what is cut was thinned."""
    left, came = left_words(one, layout, units), one.planting.actual or _NOTHING_YET
    if left:
        done = came.harvested is not None or came.cleared is not None
        yield from row(Job.THIN, thin_about(one), _("to {left}").format(left=left), done=done)


def _tray_row(one: Grown, raised: Grown, layout: Layout, row: Callable[..., Iterator[DateRow]]) -> Iterator[DateRow]:
    """From when trays stand where they harden off; when that ends, their plants are set out."""
    is_done = (raised.planting.actual or _NOTHING_YET).hardened is not None
    yield from row(Job.HARDEN, one.dates.harden, so_many_trays(layout.plants), until=one.dates.out, done=is_done)


def _maker(bed: Bed, one: Grown, letter: str) -> Callable[..., Iterator[DateRow]]:
    """What makes the rows of one planting."""
    planting, raised = one.planting.id, one.crop.establish is Establish.TRANSPLANT
    name = f"{letter} {(one.hardened or one).crop.name}"

    def row(
        job: Job, day: date | None, amount: str, *, until: date | None = None, done: bool = False, missed: str = ""
    ) -> Iterator[DateRow]:
        if day is not None:
            over = until if until is not None and until > day else None
            what = job_words(job, raised=raised, planted=not is_seed(one.crop))
            yield DateRow(day, job, what, name, amount, bed.name, bed.id, planting, planting, over, done, missed)

    return row


def _cover_rows(plan: Plan, cover: Cover) -> Iterator[DateRow]:
    bed = bed_of(plan, cover.bed)
    readings, hoops = between(cover.start.nm, cover.end.nm, plan.place.units), cover_cut(bed, cover).hoops
    amount = "" if hoops is None else ngettext("{count} hoop", "{count} hoops", hoops).format(count=grouped(hoops))
    for job, day, until in ((Job.COVER_ON, cover.on, cover.off), (Job.COVER_OFF, cover.off, None)):
        if day is not None:
            yield DateRow(day, job, job_words(job), readings, amount, bed.name, bed.id, cover.id, None, until)


def job_words(job: Job, *, raised: bool = True, planted: bool = False) -> str:
    """What is done, in words; what is sown in trays is told from what is sown or planted where it grows."""
    if planted and job is Job.SOW:
        return _("plant")
    return _("sow in trays") if raised and job is Job.SOW else _JOBS[job]


def _sown(crop: Crop, made: Raising, plants: str, units: Units) -> str:
    """What is sown, as far as the packet says: "58 seeds, 1 tray", "832 seeds, 13.9 g", else for how many plants."""
    if made.seeds is None:
        return _("for {plants}").format(plants=plants)
    parts = [so_many_sown(crop, made.seeds)]
    if made.trays is not None:
        parts.append(so_many_trays(made.trays))
    elif made.weight is not None and made.grams is not None and made.to_sow is None:
        parts.append(value_words(made.weight, units))
    return ", ".join(parts)


def _ready(one: Grown, layout: Layout) -> str:
    """How many plants, and the market that they make: "45 plants for Sat 17 May"."""
    order, market, ready = one.order, one.planting.market, one.dates.ready
    day = market_made(order, market, ready) if order is not None and ready is not None else None
    plants = so_many_clumps(layout.plants, one.crop.stand)
    return plants if day is None else _("{plants} for {day}").format(plants=plants, day=weekday_words(day))


def _missed(one: Grown) -> str:
    """The market days that it misses, as it is ready too late for them: "too late for 12 Jul, 19 Jul"."""
    order, market, ready = one.order, one.planting.market, one.dates.ready
    if order is None or ready is None:
        return ""
    return missing_words(markets_missed(order, market, market_made(order, market, ready)))
