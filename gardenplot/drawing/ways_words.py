"""What an order lacks that its bed cannot hold, and the ways out, in words: what is done, met and paid for it."""

from collections.abc import Iterator

from gardenplot.drawing.days import day_words
from gardenplot.drawing.sayings import CLOSER, PATTERNS, counted
from gardenplot.drawing.so_many import so_many_days, so_many_plants
from gardenplot.filling.giving_way import WayKind
from gardenplot.filling.met import Met
from gardenplot.filling.ways_out import Shortage, Way
from gardenplot.findings import Kind
from gardenplot.layout import Layout, lay_out_bed, nearest_rows
from gardenplot.layout.across import closer_than_packet
from gardenplot.plan import Plan, bed_of, crop_of, order_of, planting_of
from gardenplot.season import dates_of, market_day
from gardenplot.units.figures import grouped, offset, rounded, span
from gardenplot.words import _, ngettext


def shortage_words(plan: Plan, one: Shortage) -> str:
    """By how much an order does not fit: in plants, in length of bed and in its own units."""
    order = order_of(plan, one.order)
    words = _("{units} {crop} for {day} do not fit {bed}: {plants} short, {length} of bed, {lacking} of the order")
    return words.format(
        units=grouped(order.units), crop=crop_of(plan, order.crop).name,
        day=day_words(market_day(order, one.market) or order.on), bed=bed_of(plan, one.bed).name,
        plants=so_many_plants(one.plants), length=span(one.length, plan.place.units), lacking=grouped(one.units),
    )  # fmt: skip


def way_words(way: Way) -> str:
    """A way out in one line: what is done; what is met then; what else it costs."""
    met = ", ".join(_met_words(way.plan, one) for one in way.met)
    if not way.fits:
        short = _("still does not fit: {length} too long").format(length=span(way.short, way.plan.place.units))
        return f"{done_words(way)}: {short}"
    return "; ".join((f"{done_words(way)}: {met}", *costs(way)))


def done_words(way: Way) -> str:
    """What is done: "Chinese cabbage in Second bed", "Less Chinese cabbage"."""
    plan, crop = way.plan, _crop(way.plan, way)
    match way.kind:
        case WayKind.LESS:
            return _("Less {crop}").format(crop=crop)
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
            rows = counted(layout) if way.fits else so_many_plants(layout.wanted or layout.plants)
            return _("{crop} closer, {rows}").format(crop=crop, rows=rows)


def costs(way: Way) -> Iterator[str]:
    """What a way costs beside what is not met: closer plants, a further bed, and what it leaves."""
    units = way.plan.place.units
    yield from _closer_words(way)
    left = span(way.left, units)
    yield _("{length} of bed left").format(length=left) if way.left else _("nothing left")
    yield ngettext("{count} change", "{count} changes", way.changes).format(count=way.changes)


def _closer_words(way: Way) -> Iterator[str]:
    """As the findings say it."""
    if not any(part.planting == way.planting for part in way.parts):
        return
    layout, units = _layout(way), way.plan.place.units
    crop, grid = crop_of(way.plan, layout.crop), layout.grid
    in_row, rows = closer_than_packet(crop, layout)
    if in_row:
        yield CLOSER[Kind.CLOSER_IN_ROW].format(is_=offset(grid.in_row, units), packet=offset(crop.in_row.nm, units))
    if rows:
        is_, packet = offset(nearest_rows(grid), units), offset(crop.row_spacing[0].nm, units)
        yield CLOSER[Kind.CLOSER_ROWS].format(is_=is_, packet=packet)
    if grid.edge < grid.edge_least:
        words = _("outer row {is_} from the edge, {least} is the least")
        yield words.format(is_=offset(grid.edge, units), least=offset(grid.edge_least, units))


def _met_words(plan: Plan, one: Met) -> str:
    """ "27 of 48 Chinese cabbage (56 %)"; what is late says so."""
    if one.order is not None:
        crop = crop_of(plan, order_of(plan, one.order).crop).name
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
    return crop_of(plan, way.crop).name


def _layout(way: Way) -> Layout:
    bed = planting_of(way.plan, way.planting).bed
    return lay_out_bed(way.plan, bed_of(way.plan, bed)).layout_of(way.planting)
