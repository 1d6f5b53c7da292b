"""What is planned for a day that does not suit it: frost, the market, the age of plants, families that come back."""

from collections.abc import Iterator
from datetime import date
from functools import lru_cache
from math import ceil, floor

from attrs import evolve

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import Grown, LaidOut, Layout
from gardenplot.plan import Bed, Cover, Establish, Frost, Place
from gardenplot.season import Span, emergence, market_day
from gardenplot.season.dates import oldest_age, wanted_ready
from gardenplot.season.frost import (
    are_covered,
    autumn_freeze,
    autumn_freezes,
    bare_from,
    bare_until,
    freezes_until,
    spring_freeze,
)
from gardenplot.season.rotation import Stay, family_gap, returns


@lru_cache(maxsize=2048)
def find_in_time(laid: LaidOut, place: Place, covers: tuple[Cover, ...]) -> tuple[Finding, ...]:
    """What stands against the days of a bed's plantings; `covers` are those of the bed."""
    found, joined = [], _end_to_end(covers)
    for one, layout in zip(laid.grown, laid.layouts, strict=True):
        over = tuple(cover for cover in joined if cover.start.nm <= layout.start and layout.end <= cover.end.nm)
        found += [*_market(one, layout), *_age(one, layout), *_soil(one, layout), *_spring(one, layout, place, over)]
        found += [*_autumn(one, layout, place, over), *_unready(one, layout), *_too_early(laid.bed, one, layout)]
    return (*found, *_families(laid, place))


def _end_to_end(covers: tuple[Cover, ...]) -> tuple[Cover, ...]:
    """The covers of a bed, those that are on for the same days and meet or lap along it as one."""
    joined: list[Cover] = []
    for cover in sorted(covers, key=lambda one: (one.on or date.min, one.off or date.max, one.start.nm)):
        last = joined[-1] if joined else None
        if last is not None and (last.on, last.off) == (cover.on, cover.off) and cover.start.nm <= last.end.nm:
            joined[-1] = evolve(last, end=max(last.end, cover.end, key=lambda one: one.nm))
        else:
            joined.append(cover)
    return tuple(joined)


def _at(kind: Kind, layout: Layout, amount: int, limit: int = 0) -> Finding:
    return Finding(kind, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=amount, limit=limit)


def _market(one: Grown, layout: Layout) -> Iterator[Finding]:
    """Ready too late for its market, or for a market that its order does not have."""
    planting, order = one.planting, one.order
    if order is not None and market_day(order, planting.market) is None:
        yield _at(Kind.NO_MARKET, layout, planting.market or 1, order.times)
        return
    ready, wanted = one.dates.ready, wanted_ready(planting, order)
    if order is not None and ready is not None and wanted is not None and ready > wanted:
        yield _at(Kind.LATE, layout, (ready - wanted).days)


def _too_early(bed: Bed, one: Grown, layout: Layout) -> Iterator[Finding]:
    """In before its bed can be used, told until it came about."""
    came, day, first = one.planting.actual, one.dates.in_ground, bed.usable_from
    has_come = came is not None and came.set_out is not None
    if day is not None and first is not None and day < first and not has_come:
        yield _at(Kind.BED_LATE, layout, (first - day).days)


def _unready(one: Grown, layout: Layout) -> Iterator[Finding]:
    """Out before it is ready, as when its days were moved to where days are short; not what was cleared so."""
    came, ready, out = one.planting.actual, one.dates.ready, one.dates.out
    if (came is None or came.cleared is None) and ready is not None and out is not None and out < ready:
        yield _at(Kind.OUT_UNREADY, layout, (ready - out).days)


def _age(one: Grown, layout: Layout) -> Iterator[Finding]:
    """Sown after it is set out, or set out older than plants should be."""
    dates, crop = one.dates, one.crop
    if crop.establish is not Establish.TRANSPLANT or dates.sow is None or dates.set_out is None:
        return
    age, oldest = (dates.set_out - dates.sow).days, oldest_age(crop)
    if age < 0:
        yield _at(Kind.SOWN_AFTER, layout, -age)
    if oldest is not None and age > oldest:
        yield _at(Kind.OVER_AGE, layout, age, oldest)


def _soil(one: Grown, layout: Layout) -> Iterator[Finding]:
    """Soil in which the published table has nothing emerge of what is sown in it; told until something has.

    The limit is the coldest or the warmest of the table, in degrees Fahrenheit.
    """
    soil, came = one.planting.soil, one.planting.actual
    has_emerged = came is not None and (came.emerged is not None or came.stand is not None)
    if soil is None or one.crop.establish is not Establish.DIRECT or has_emerged:
        return
    told = emergence.emergence(one.crop.emerges_like, soil)
    if isinstance(told, emergence.NotInTable) and told.coldest is not None and told.warmest is not None:
        if soil.fahrenheit < told.coldest:
            yield _at(Kind.SOIL_COLD, layout, floor(soil.fahrenheit), told.coldest)
        else:
            yield _at(Kind.SOIL_WARM, layout, ceil(soil.fahrenheit), told.warmest)


def _spring(one: Grown, layout: Layout, place: Place, over: tuple[Cover, ...]) -> Iterator[Finding]:
    """In the ground while it may still freeze: told of what frost can hurt, noted of what is hardy or covered.

    Where its cover comes off too early, that day counts, and is the limit; where the cover stays on, the limit is 1.
    """
    day, until = one.dates.in_ground, freezes_until(place, one.crop, one.dates.in_ground)
    if day is None or until is None:
        return
    bare = bare_from(over, day)
    covered = bare is None or until <= bare
    kind = Kind.FROST_NOTE if covered or one.crop.frost is Frost.HARDY else Kind.FROST
    off = bare if kind is Kind.FROST and bare is not None and day < bare else None
    freeze = spring_freeze(place, one.crop, off or day)
    if freeze is not None:
        yield _at(kind, layout, freeze.days, off.toordinal() if off else int(covered))


def left_bare(covers: tuple[Cover, ...], start: int, end: int, day: date) -> tuple[tuple[int, int], ...]:
    """What covers that are on on a day leave bare of a block, from one tape reading in nm to another.

    Nothing where none is over any of it.
    """
    bare, at = list[tuple[int, int]](), start
    is_on = (one for one in covers if (one.on is None or one.on <= day) and (one.off is None or day < one.off))
    over = sorted((one.start.nm, one.end.nm) for one in is_on if one.start.nm < end and start < one.end.nm)
    for first, last in over:
        bare += [(at, first)] if at < first else []
        at = max(at, last)
    return (*bare, *([(at, end)] if at < end else ())) if over else ()


def _autumn(one: Grown, layout: Layout, place: Place, over: tuple[Cover, ...]) -> Iterator[Finding]:
    """Tender crops that are still to be cut when it may have frozen.

    Where a cover goes on too late, its day counts in place of the last one, and is the limit.
    """
    freezes, last = autumn_freezes(place, one.crop, one.dates), one.dates.stays
    if not freezes or last is None or are_covered(over, Span(freezes[0].day, last)):
        return
    bare = bare_until(over, last)
    freeze = autumn_freeze(place, one.crop, one.dates, bare)
    if freeze is not None:
        on = bare.toordinal() if bare is not None and bare < last else 0
        yield _at(Kind.AUTUMN_FROST, layout, (last - freeze.day).days, on)


def _families(laid: LaidOut, place: Place) -> Iterator[Finding]:
    """Families that come back too soon; a crop that follows its own kind in one season is no matter of rotation."""
    layouts = {layout.planting: layout for layout in laid.layouts}
    stays = tuple(
        Stay(one.crop.family, one.dates.in_ground.year, one.planting.id)
        for one in laid.grown
        if one.crop.family and one.dates.in_ground is not None
    )
    for back in returns(laid.bed, stays, family_gap(place)):
        yield _at(Kind.FAMILY, layouts[back.planting], back.between, family_gap(place))
