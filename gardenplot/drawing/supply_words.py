"""What a bed's jugs, water and feeds come to, in lines of words; and all numbers of a bed or a planting."""

from collections.abc import Iterator

from gardenplot.drawing.cautions import JUGS, WATER
from gardenplot.drawing.days import day_words
from gardenplot.drawing.number_words import value_words
from gardenplot.drawing.sayings import between
from gardenplot.drawing.workings import bed_numbers, planting_numbers
from gardenplot.layout import lay_out_bed, lay_out_plan
from gardenplot.plan import Bed, Cover, Jugs, Plan, bed_of
from gardenplot.plan.shapes import area_of
from gardenplot.supplies import cover_cut, spare_width
from gardenplot.supplies.feeding import fed
from gardenplot.supplies.jugs import jug_heat
from gardenplot.supplies.water import bed_water
from gardenplot.words import _, ngettext
from gardenplot.working import Number, Source, Unit, known


def supply_lines(plan: Plan, bed_id: str) -> tuple[str, ...]:
    """A bed's jugs, water and feeds, a line each under a heading; nothing where there are none."""
    bed = bed_of(plan, bed_id)
    lines = [*_jug_lines(plan, bed), *_water_lines(plan, bed), *_feed_lines(plan, bed)]
    return (_("Water and soil"), *lines) if lines else ()


def supply_cautions(plan: Plan, bed_id: str) -> tuple[str, ...]:
    """What is said of a bed that is watered by drip lines or stands among jugs."""
    has_jugs, has_lines = any(one.bed == bed_id for one in plan.jugs), bool(bed_of(plan, bed_id).drip_lines)
    return (*((JUGS,) if has_jugs else ()), *((WATER,) if has_lines else ()))


def numbers_of(plan: Plan, bed_id: str, planting_id: str | None) -> tuple[Number, ...]:
    """All numbers of a planting, its rows and plants first, or of a bed: what is left, covers, jugs, water, feeds."""
    bed = bed_of(plan, bed_id)
    laid = lay_out_bed(plan, bed)
    if planting_id is not None:
        return planting_numbers(laid, planting_id, lay_out_plan(plan))
    covers = (_cover_numbers(plan, bed, cover) for cover in plan.covers if cover.bed == bed_id)
    jugs = (jug_heat(bed, each).numbers for each in plan.jugs if each.bed == bed_id)
    feeds = (fed(feed, area_of(bed)) for feed in plan.feeds if not feed.beds or bed_id in feed.beds)
    water = bed_water(plan.place, bed, area_of(bed)).numbers if bed.drip_lines or plan.place.watering else ()
    return (*bed_numbers(laid), *(number for cut in (*covers, *jugs) for number in cut), *water, *feeds)


def covers_apart(plan: Plan, bed: Bed) -> tuple[tuple[str, tuple[Number, ...]], ...]:
    """The covers of a bed that has several, each by its days, else by where it stands, with its numbers."""
    covers = [cover for cover in plan.covers if cover.bed == bed.id]
    if len(covers) < 2:
        return ()
    return tuple((_cover_name(plan, cover), _cover_numbers(plan, bed, cover)) for cover in covers)


def _cover_name(plan: Plan, cover: Cover) -> str:
    if cover.on is None:
        return _("Cover {between}").format(between=between(cover.start.nm, cover.end.nm, plan.place.units))
    if cover.off is None:
        return _("Cover on {on}").format(on=day_words(cover.on))
    return _("Cover on {on}, off {off}").format(on=day_words(cover.on), off=day_words(cover.off))


def _cover_numbers(plan: Plan, bed: Bed, cover: Cover) -> tuple[Number, ...]:
    """Where and when a cover stands, and what it takes."""
    cut = cover_cut(bed, cover)
    days = (("cover_on", cover.on), ("cover_off", cover.off))
    return (
        known("begins", cover.start.nm, Unit.READING, source=Source.OF_COVER),
        known("ends", cover.end.nm, Unit.READING, source=Source.OF_COVER),
        *(known(name, day.toordinal(), Unit.DATE, source=Source.OF_COVER) for name, day in days if day is not None),
        *cut.numbers,
        *(number for sheet in cut.sheets if (number := spare_width(sheet, plan.goods)) is not None),
        *([known("layers", cover.layers, Unit.COUNT, source=Source.OF_COVER)] if cover.layers > 1 else []),
    )


def _jug_lines(plan: Plan, bed: Bed) -> Iterator[str]:
    for jugs in plan.jugs:
        if jugs.bed == bed.id:
            yield _jugs_line(plan, bed, jugs)


def _jugs_line(plan: Plan, bed: Bed, jugs: Jugs) -> str:
    """ "0.40 – 4.40 m, 46 jugs of 5 l, 230 kg to carry, make up for … for about 50 minutes to 1½ hours"."""
    units, found = plan.place.units, jug_heat(bed, jugs)
    parts = [
        between(jugs.start.nm, jugs.end.nm, units),
        ngettext("{count} jug of {volume}", "{count} jugs of {volume}", found.count.whole or 0).format(
            count=value_words(found.count, units), volume=jugs.volume
        ),
        _("{weight} to carry").format(weight=value_words(found.weight, units)),
    ]
    if found.lasts.value is not None:
        lasts = value_words(found.lasts, units)
        parts.append(_("make up for what the bed loses on a clear night for {lasts}").format(lasts=lasts))
    return ", ".join(parts)


def _water_lines(plan: Plan, bed: Bed) -> Iterator[str]:
    units, found = plan.place.units, bed_water(plan.place, bed, area_of(bed))
    parts = [
        words.format(value=value_words(number, units))
        for number, words in (
            (found.weekly, _("{value} a week")),
            (found.hours, _("by drip in {value}")),
            (found.flow, _("drip lines take {value}")),
            (found.share, _("{value} of the supply")),
            (found.tank_days, _("a full tank lasts {value}")),
        )
        if number.value is not None
    ]
    if parts:
        yield ", ".join(parts)


def _feed_lines(plan: Plan, bed: Bed) -> Iterator[str]:
    for feed in plan.feeds:
        if not feed.beds or bed.id in feed.beds:
            number = fed(feed, area_of(bed))
            yield f"{feed.name or _('compost')}: {value_words(number, plan.place.units)}"
