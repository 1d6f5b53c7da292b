"""The ways out of what does not fit, side by side: what each meets and what it costs, as differences."""

from collections import Counter
from functools import partial

from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.letters import looks
from gardenplot.drawing.remedies import Remedy, Trouble, met_cell, stake_lines, stakes_cell, without_empty
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.so_many import so_many_clumps
from gardenplot.drawing.ways_numbers import shortage_numbers, way_numbers
from gardenplot.drawing.ways_words import closer_by, name_of_way, shortage_words, way_words
from gardenplot.filling.met import Met
from gardenplot.filling.ways_out import Lack, Shortage, Way, shortage
from gardenplot.plan import Plan, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.clumps import clump_for
from gardenplot.season import market_day
from gardenplot.units.figures import MINUS, grouped, offset, span
from gardenplot.words import _


def ways_trouble(plan: Plan, lack: Lack, *, told: object = None) -> Trouble:
    """What an order lacks, with its ways out; `told` is what long work is handed, and nothing is told."""
    del told
    found, title = shortage(plan, lack), lack_title(plan, lack)
    if found is None:
        crop = crop_of(plan, _crop_id(plan, lack.order, lack.block)).name
        return Trouble(
            lack.block or "", title, (_("No bed is wide enough for a row of {crop}.").format(crop=crop),), (), ()
        )
    says = [shortage_words(plan, found)]
    if not found.ways:
        says.append(_("No way out was found that gives all of it ground, or nearly so."))
    met = found.ways[0].met if found.ways else ()
    columns = (
        _("way out"), *_met_headings(plan, met), _("another bed"), _("closer by"), _("bed left"), _("stakes"),
    )  # fmt: skip
    remedies = tuple(_remedy(plan, found, way) for way in found.ways)
    numbers = partial(shortage_numbers, plan, found)
    return without_empty(Trouble(found.planting, title, tuple(says), columns, remedies, numbers))


def lack_title(plan: Plan, lack: Lack) -> str:
    """What an order lacks, in few words: "Coriander for Sat 21 Jun 2025: 382 plants short"."""
    if lack.order is None:
        name = titled(plan, lack.block or "", looks(plan))
        return _("{planting}: {short}").format(planting=name, short=_("lacks ground"))
    order = order_of(plan, lack.order)
    crop, day = crop_of(plan, order.crop).name, day_words(market_day(order, lack.market) or order.on)
    short = (
        _("{plants} short").format(plants=so_many_clumps(lack.plants, clump_for(plan, order)))
        if lack.plants
        else _("lacks ground")
    )
    return _("{crop} for {day}: {short}").format(crop=crop, day=day, short=short)


def _met_headings(plan: Plan, met: tuple[Met, ...]) -> tuple[str, ...]:
    """What is wanted of each: "Coriander: 60", with the market day where a crop has several of them."""
    names = [_crop(plan, one) for one in met]
    often = Counter(names)
    return tuple(
        _("{crop}: {wanted}").format(
            crop=name if often[name] < 2 else f"{name} {_market(plan, one)}".strip(), wanted=grouped(one.wanted)
        )
        for name, one in zip(names, met, strict=True)
    )


def _crop(plan: Plan, one: Met) -> str:
    return crop_of(plan, _crop_id(plan, one.order, one.planting)).name


def _crop_id(plan: Plan, order: str | None, planting: str | None) -> str:
    return order_of(plan, order).crop if order is not None else planting_of(plan, planting or "").crop


def _market(plan: Plan, one: Met) -> str:
    day = market_day(order_of(plan, one.order), one.market) if one.order is not None else None
    return short_day(day) if day else ""


def _remedy(plan: Plan, found: Shortage, way: Way) -> Remedy:
    stakes, units = stake_lines(plan, way.plan), plan.place.units
    met = (met_cell(one.units, one.wanted - one.units, one.late) for one in way.met)
    left = str(span(way.left, units)) if way.left else _("none")
    cells = (
        name_of_way(way), *met, _elsewhere(found, way), _closer(way),
        left if way.fits else _("{length} too long").format(length=span(way.short, units)),
        stakes_cell(plan, way.plan),
    )  # fmt: skip
    numbers = partial(way_numbers, plan, found, way)
    return Remedy(cells, way_words(way), stakes, name_of_way(way), way.plan, way.fits, numbers)


def _elsewhere(found: Shortage, way: Way) -> str:
    """The ground that it takes in another bed: "+18′ 9″, new", "+6.00 m"."""
    units = way.plan.place.units
    if way.new_bed is not None:
        return _("+{length}, new").format(length=span(bed_of(way.plan, way.new_bed).length.nm, units))
    taken = sum(part.end - part.start for part in way.parts if part.bed != found.bed)
    return f"+{span(taken, units)}" if taken else ""


def _closer(way: Way) -> str:
    """By how much it is closer than its packet: "rows −3″"."""
    units = way.plan.place.units
    parts = zip((_("in row"), _("rows"), _("edge")), closer_by(way), strict=True)
    return ", ".join(f"{words} {MINUS}{offset(nm, units)}" for words, nm in parts if nm)
