"""The numbers of a planting and of a bed, each with its working: what is shown of them, and what opens it."""

from collections.abc import Iterator

from attrs import evolve

from gardenplot.drawing.date_words import dates_told
from gardenplot.drawing.days import short_day
from gardenplot.drawing.so_many import so_many_cells, so_many_clumps, so_many_plants, so_many_seeds
from gardenplot.layout import Grown, LaidOut, Layout, Stretch, free_on, fullest_day, spacings_for_orders, stood
from gardenplot.layout.bed_numbers import left_number, pieces_number, total_number
from gardenplot.layout.place_numbers import answer_numbers, order_numbers, readings, to_sell
from gardenplot.layout.row_numbers import plants_number, row_numbers
from gardenplot.plan import Bed, Crop
from gardenplot.plan.shapes import map_length_of
from gardenplot.season import market_day
from gardenplot.supplies import Raising, raised_for
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Number, Source, Unit, known, put_in, worked


def planting_numbers(laid: LaidOut, planting: str, laid_out: tuple[LaidOut, ...] = ()) -> tuple[Number, ...]:
    """All numbers of a planting: rows and plants, its place, what to raise, its dates, its order, what is over.

    `laid_out` are all beds of the plan, without which nothing is said of the order.
    """
    layout = laid.layout_of(planting)
    one = next(each for each in laid.grown if each.planting.id == planting)
    return (
        *row_numbers(laid.bed, one, layout),
        *readings(laid, layout),
        *raise_numbers(laid.bed, one, layout),
        *dates_told(one).values(),
        *_of_order(laid_out, one, layout),
        *answer_numbers(layout),
    )


def _of_order(laid_out: tuple[LaidOut, ...], one: Grown, layout: Layout) -> Iterator[Number]:
    """What stands of a planting, and of all that is planted for its market day, against what must."""
    standing = stood(one, layout)
    if standing != layout.plants:
        yield known("stands", standing, Unit.COUNT, source=Source.CAME_ABOUT)
    if one.order is None or not laid_out:
        return
    wanted = one.order.id, one.planting.market or 1
    yield from order_numbers(laid_out, one, spacings_for_orders(laid_out).get(wanted))
    sold = to_sell(laid_out, one, layout)
    if sold is not None:
        yield sold
    day, ready = market_day(one.order, one.planting.market), dates_told(one).get("ready")
    if day is not None and ready is not None:
        market = known("market", day.toordinal(), Unit.DATE, source=Source.OF_ORDER)
        yield worked("before_market", Unit.DAYS, "market − ready", market, ready, source=RULES)


def bed_numbers(laid: LaidOut) -> tuple[Number, ...]:
    """What a bed comes to on the day that it is fullest: its plants, what is left of it, and the pieces of that."""
    day = fullest_day(laid)
    pieces = (number for stretch in free_on(laid, day).leftover for number in _piece(laid.bed, stretch))
    on_map = map_length_of(laid.bed)
    slope = () if on_map is None else (known("map_length", on_map, Unit.LENGTH, source=Source.SLOPE),)
    return total_number((laid,)), left_at_fullest(laid), pieces_number(laid, day), *pieces, *slope


def left_at_fullest(laid: LaidOut) -> Number:
    """What is left of a bed on its fullest day, which its name tells: on others there may be more."""
    day = fullest_day(laid)
    left = left_number(laid, day)
    if day is None:
        return left
    words = _("{bed}, fullest on {day}").format(bed=laid.bed.name, day=f"{short_day(day)} {day:%Y}")
    return evolve(left, label=words)


def _piece(bed: Bed, stretch: Stretch) -> Iterator[Number]:
    """A piece that is left over; of one between blocks by how much it is wider than the gap of the bed."""
    yield known("begins", stretch.start, Unit.READING, source=Source.MEASURED)
    yield known("ends", stretch.end, Unit.READING, source=Source.MEASURED)
    piece = known("piece", stretch.length, Unit.LENGTH, source=Source.MEASURED)
    yield piece
    if bed.gap is not None and bed.zone[0] < stretch.start and stretch.end < bed.zone[1]:
        asked = known("bed_gap", bed.gap.nm, Unit.LENGTH, source=Source.OF_BED)
        yield worked("over_gap", Unit.SPACING, "piece − bed_gap", piece, asked, source=RULES)


def counted_numbers(bed: Bed, one: Grown, layout: Layout) -> tuple[Number, ...]:
    """The numbers behind a planting, from the width of its bed to the trays that raise it."""
    return (*row_numbers(bed, one, layout), *raise_numbers(bed, one, layout))


def raise_numbers(bed: Bed, one: Grown, layout: Layout) -> tuple[Number, ...]:
    """What to raise or sow, as far as it is known: one seed a cell is as many seeds as cells and not told again."""
    made = raised_for(one, layout)
    seed = made.seed if made.to_sow is None or made.seeds != made.cells else None
    raised = made.raised if one.crop.spare is not None else None
    still = made.still if made.spill is not None else None
    found = (made.bought, raised, made.to_sow, seed, made.filled, still, made.weight, made.stand, made.thinned)
    plants = evolve(plants_number(bed, one, layout), name="planted")
    return tuple(put_in(number, plants) for number in found if number is not None and number.value is not None)


def stand_words(one: Grown, layout: Layout) -> tuple[str, ...]:
    """What stands in the end of a crop in clumps, and what is thinned out: "200 plants in the end", "thin out 48"."""
    made, found = raised_for(one, layout), []
    if made.stand is not None and made.stand.whole is not None:
        found.append(_("{plants} in the end").format(plants=so_many_plants(made.stand.whole)))
    if made.thinned is not None and made.thinned.whole:
        found.append(_("thin out about {count}").format(count=grouped(made.thinned.whole)))
    return tuple(found)


def bought_words(crop: Crop, made: Raising) -> tuple[str, ...]:
    """What is bought in: "16 plants bought in", "16 clumps of 4 bought in"."""
    if made.bought is None:
        return ()
    return (_("{plants} bought in").format(plants=so_many_clumps(made.bought.whole or 0, crop.stand)),)


def with_bought(words: str, crop: Crop, made: Raising) -> str:
    """What is planted, with what of it is bought in: "136 plants, 16 of them bought in"; of all of it that alone."""
    if made.is_all_bought or made.bought is None:
        return words if made.bought is None else bought_words(crop, made)[0]
    count = grouped(made.bought.whole or 0)
    if made.to_sow is None:
        # Seed is none of the plants.
        return ", ".join((words, *bought_words(crop, made)))
    return _("{planted}, {count} of them bought in").format(planted=words, count=count)


def trays_line(one: Grown, layout: Layout) -> str:
    """What to raise in words: "157 plants, 175 cells, 3 trays of 84; 2 trays still give about 151"."""
    made = raised_for(one, layout)
    parts = []
    if made.plants is not None:
        parts.append(so_many_clumps(made.plants, one.crop.stand))
    if made.cells is not None:
        parts.append(so_many_cells(made.cells))
    if made.trays is not None:
        trays = ngettext("{count} tray of {cells}", "{count} trays of {cells}", made.trays)
        parts.append(trays.format(count=made.trays, cells=one.crop.tray_cells))
    if made.to_sow is None and made.seeds is not None:
        parts.append(so_many_seeds(made.seeds))
    words = ", ".join((*parts, *bought_words(one.crop, made), *stand_words(one, layout)))
    if made.spill is not None:
        still = ngettext(
            "{trays} tray still gives about {plants}", "{trays} trays still give about {plants}", made.spill.trays
        )
        words += "; " + still.format(trays=made.spill.trays, plants=grouped(made.spill.plants))
    return words
