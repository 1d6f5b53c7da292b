"""What an order lacks that its bed cannot hold, and the ways out, in words: what is done, met and paid for it."""

from collections.abc import Iterator

from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.sayings import CLOSER, NEAR_EDGE, PATTERNS, between_readings, counted_in
from gardenplot.drawing.so_many import so_many_clumps, so_many_days
from gardenplot.filling.claims import whole_plants
from gardenplot.filling.giving_way import WayKind
from gardenplot.filling.met import Met
from gardenplot.filling.ways_out import Shortage, Way
from gardenplot.findings import Kind
from gardenplot.layout import Layout, lay_out_bed, nearest_rows
from gardenplot.layout.across import closer_than_packet
from gardenplot.layout.close_numbers import edge_asked
from gardenplot.plan import Plan, Reserved, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.clumps import clump_for, clump_of, crop_as_planted
from gardenplot.season import dates_of, market_day
from gardenplot.units.figures import apart, grouped, offset, rounded, span, unlike
from gardenplot.words import _, ngettext


def shortage_words(plan: Plan, one: Shortage) -> str:
    """By how much an order does not fit: in plants, in length of bed and in its own units."""
    wanted, bed = _wanted_words(plan, one), bed_of(plan, one.bed).name
    if one.has_ground and any(each.id == one.planting for each in plan.plantings):
        if _begins_there(plan, one):
            return _("{wanted}: too long a block, what is still needed has ground in {bed}").format(
                wanted=wanted, bed=bed
            )
        return _("{wanted}: no ground where they stand, elsewhere in {bed} there is").format(wanted=wanted, bed=bed)
    if one.has_ground:
        return _("{wanted}: not planted yet, {bed} has the ground").format(wanted=wanted, bed=bed)
    plants, length = _so_many_short(plan, one), span(one.length, plan.place.units)
    if one.order is None:
        words = _("{wanted} do not fit {bed}: {plants} short, {length} of bed")
        return words.format(wanted=wanted, bed=bed, plants=plants, length=length)
    if not (one.plants or one.units):
        words = _("{wanted}: a block is {length} too long for {bed}, but all that is ordered stands without that")
        return words.format(wanted=wanted, bed=bed, length=length)
    if not one.length and _leaves_places(plan, one):
        words = _("{wanted}: {plants} short beside the places that are left empty, {lacking} of the order")
        return words.format(wanted=wanted, plants=plants, lacking=grouped(one.units))
    words = _("{wanted} do not fit {bed}: {plants} short, {length} of bed, {lacking} of the order")
    return words.format(wanted=wanted, bed=bed, plants=plants, length=length, lacking=grouped(one.units))


def _begins_there(plan: Plan, one: Shortage) -> bool:
    """Whether the ground that it has lies where its block already begins, which is longer than it needs to be."""
    return lay_out_bed(plan, bed_of(plan, one.bed)).layout_of(one.planting).start == one.over.begins


def _leaves_places(plan: Plan, one: Shortage) -> bool:
    """Whether its block is there and leaves places empty that are kept for what follows."""
    there = [each for each in plan.plantings if each.id == one.planting]
    return bool(there) and there[0].reserved is not Reserved.CUT_FIRST


def _wanted_words(plan: Plan, one: Shortage) -> str:
    """What is wanted: "60 Coriander for Sat 21 Jun 2025"; of a planting for no order its plants, "58 Leek"."""
    if one.order is None:
        planting = planting_of(plan, one.planting)
        plants = grouped(whole_plants(plan, planting))
        return _("{units} {crop}").format(units=plants, crop=crop_of(plan, planting.crop).name)
    order = order_of(plan, one.order)
    return _("{units} {crop} for {day}").format(
        units=grouped(order.units), crop=crop_of(plan, order.crop).name,
        day=day_words(market_day(order, one.market) or order.on),
    )  # fmt: skip


def way_words(way: Way) -> str:
    """A way out in one line: what is done; what is met then; what else it costs."""
    met = ", ".join(_met_words(way, one) for one in way.met)
    if not way.fits:
        short = _("still does not fit: {length} too long").format(length=span(way.short, way.plan.place.units))
        return f"{done_words(way)}: {short}"
    return "; ".join((f"{done_words(way)}: {met}", *costs(way)))


def done_words(way: Way) -> str:
    """What is done: "Chinese cabbage in Second bed", "Less Chinese cabbage"."""
    plan, crop = way.plan, _crop(way.plan, way)
    match way.kind:
        case WayKind.LESS if _is_whole(way):
            part = next((one for one in way.parts if one.planting == way.planting), None)
            if part is None:
                return _("Without this block of {crop}").format(crop=crop)
            readings = between_readings(plan, part.start, part.end)
            return _("{crop} in {bed}, {readings}").format(
                crop=crop, bed=bed_of(plan, part.bed).name, readings=readings
            )
        case WayKind.LESS:
            return _("Less {crop}").format(crop=crop)
        case WayKind.LONGER:
            words = _("{crop} in a longer block, {plants} in {length}")
            length = span(_layout(way).length, plan.place.units)
            return words.format(crop=crop, plants=_so_many(way, _layout(way).plants), length=length)
        case WayKind.BED:
            bed = planting_of(plan, way.planting).bed
            return _("{crop} in {bed}").format(crop=crop, bed=_bed_words(way, bed))
        case WayKind.SPLIT:
            return _split_words(way, crop)
        case WayKind.DATE:
            return _date_words(way, crop)
        case WayKind.PATTERN:
            return _("{crop} in another pattern, {pattern}").format(
                crop=crop, pattern=PATTERNS[_layout(way).grid.pattern]
            )
        case WayKind.CLOSER:
            layout = _layout(way)
            rows = counted_in(way.plan, layout) if way.fits else _so_many(way, layout.wanted or layout.plants)
            return _("{crop} closer, {rows}").format(crop=crop, rows=rows)


def name_of_way(way: Way) -> str:
    """What is done, in fewer words where more is told beside it: "Coriander in a further bed"."""
    crop = _crop(way.plan, way)
    match way.kind:
        case WayKind.BED if way.new_bed is not None:
            return _("{crop} in a further bed").format(crop=crop)
        case WayKind.SPLIT if way.new_bed is not None:
            return _("{crop} split, the rest in a further bed").format(crop=crop)
        case WayKind.DATE if planting_of(way.plan, way.planting).in_ground is not None:
            day = planting_of(way.plan, way.planting).in_ground
            return _("{crop} from {day} on").format(crop=crop, day=day_words(day) if day else "")
        case _:
            return done_words(way)


def _is_whole(way: Way) -> bool:
    """Whether nothing is less than it is wanted."""
    return way.fits and all(one.units >= one.wanted for one in way.met)


def costs(way: Way) -> Iterator[str]:
    """What a way costs beside what is not met: closer plants, a further bed, and what it leaves."""
    units = way.plan.place.units
    yield from _closer_words(way)
    if way.more:
        yield _("{length} more of bed").format(length=span(way.more, units))
    left = span(way.left, units)
    yield _("{length} of bed left").format(length=left) if way.left else _("nothing left")
    yield ngettext("{count} change", "{count} changes", way.changes).format(count=way.changes)


def closer_by(way: Way) -> tuple[int, int, int]:
    """How much closer it stands in the row and between rows than the packet says, and to the edge, in nm."""
    if not any(part.planting == way.planting for part in way.parts):
        return 0, 0, 0
    layout = _layout(way)
    crop = crop_of(way.plan, layout.crop)
    in_row, rows = closer_than_packet(crop, layout)
    return in_row, rows, max(0, edge_asked(bed_of(way.plan, layout.bed), crop, layout) - layout.grid.edge)


def _closer_words(way: Way) -> Iterator[str]:
    """As the findings say it."""
    in_row, rows, edge = closer_by(way)
    if not (in_row or rows or edge):
        return
    layout, units = _layout(way), way.plan.place.units
    crop, grid = crop_of(way.plan, layout.crop), layout.grid
    if in_row:
        yield CLOSER[Kind.CLOSER_IN_ROW].format(is_=apart(grid.in_row, units), packet=apart(crop.in_row.nm, units))
    if rows:
        is_, packet = offset(nearest_rows(grid), units), offset(crop.row_spacing[0].nm, units)
        yield CLOSER[Kind.CLOSER_ROWS].format(is_=is_, packet=packet)
    if edge:
        is_, least = unlike(grid.edge, edge_asked(bed_of(way.plan, layout.bed), crop, layout), units)
        yield NEAR_EDGE.format(is_=is_, least=least)


def _met_words(way: Way, one: Met) -> str:
    """ "27 of 48 Chinese cabbage (56 %)"; what is late says so."""
    plan = way.plan
    if one.order is not None:
        crop = _for_its_day(way, one, crop_of(plan, order_of(plan, one.order).crop).name)
    else:
        there = [each for each in plan.plantings if each.id == one.planting]
        crop = crop_of(plan, there[0].crop).name if there else _("given up")
    units = min(one.units, one.wanted)
    words = _("{units} of {wanted} {crop}").format(units=grouped(units), wanted=grouped(one.wanted), crop=crop)
    if units < one.wanted:
        words += f" ({rounded(100 * one.share)} %)"
    if one.late:
        late = _("{days} late") if one.late > 0 else _("{days} early")
        words += f", {late.format(days=so_many_days(abs(one.late)))}"
    return words


def _bed_words(way: Way, bed: str) -> str:
    there = bed_of(way.plan, bed)
    if bed != way.new_bed:
        return there.name
    return _("a further bed of {length} with its margins").format(length=span(there.length.nm, way.plan.place.units))


def _split_words(way: Way, crop: str) -> str:
    units = way.plan.place.units
    first = next(part for part in way.parts if part.planting == way.planting)
    rest = next(part for part in way.parts if part.planting == way.rest)
    words = _("{crop} split, {here} here and {there} in {bed}")
    return words.format(
        crop=crop, here=span(first.end - first.start, units), there=span(rest.end - rest.start, units),
        bed=_bed_words(way, rest.bed),
    )  # fmt: skip


def _date_words(way: Way, crop: str) -> str:
    planting = planting_of(way.plan, way.planting)
    met = next((one for one in way.met if one.planting == way.planting), None)
    if planting.order is not None and met is not None and planting.in_ground is None:
        order = order_of(way.plan, planting.order)
        market = market_day(order, planting.market) or order.on
        return _("{crop} for the market on {day} instead").format(crop=crop, day=day_words(market))
    day = dates_of(way.plan, planting).in_ground or planting.in_ground
    return _("{crop} in the ground from {day}").format(crop=crop, day=day_words(day) if day else "")


def _crop(plan: Plan, way: Way) -> str:
    mine = next((one for one in way.met if one.planting == way.planting and one.order is not None), None)
    name = crop_of(plan, way.crop).name
    return name if mine is None or way.kind is WayKind.DATE else _for_its_day(way, mine, name)


def _for_its_day(way: Way, one: Met, crop: str) -> str:
    """A crop by its name, with its market day where it is met for several."""
    alike = [each for each in way.met if each.order is not None and _ordered_crop(way.plan, each) == crop]
    if len(alike) < 2 or one.order is None:
        return crop
    order = order_of(way.plan, one.order)
    return _("{crop} for {day}").format(crop=crop, day=short_day(market_day(order, one.market) or order.on))


def _ordered_crop(plan: Plan, one: Met) -> str:
    return crop_of(plan, order_of(plan, one.order).crop).name if one.order is not None else ""


def _so_many(way: Way, places: int) -> str:
    """Plants, or clumps of what stands in clumps."""
    return so_many_clumps(places, clump_of(way.plan, way.planting))


def _so_many_short(plan: Plan, one: Shortage) -> str:
    """The same of what an order lacks, by what stands for it or would; a way may do without that planting."""
    there = next((each for each in plan.plantings if each.id == one.planting), None)
    if there is None and one.order is not None:
        return so_many_clumps(one.plants, clump_for(plan, order_of(plan, one.order)))
    return so_many_clumps(one.plants, 1 if there is None else crop_as_planted(plan, there).stand)


def _layout(way: Way) -> Layout:
    bed = planting_of(way.plan, way.planting).bed
    return lay_out_bed(way.plan, bed_of(way.plan, bed)).layout_of(way.planting)
