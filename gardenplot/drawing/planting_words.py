"""A planting in words beside its fields: dates, order met or short, the other answer for rows."""

from gardenplot.drawing.actual_words import planted_words
from gardenplot.drawing.days import day_words, weekday_words
from gardenplot.drawing.sayings import TIMES
from gardenplot.layout import Grown, Layout, lay_out_plan, planted_for_orders, row_answers, spacings_for_orders
from gardenplot.plan import Crop, Establish, Order, Pattern, Plan, bed_of
from gardenplot.plan.catalogue import entry_of
from gardenplot.season import market_day, market_days, stand_for
from gardenplot.units import Units
from gardenplot.units.figures import THIN, apart, grouped, offset, span
from gardenplot.words import _, ngettext


def dates_words(plan: Plan, one: Grown) -> str:
    """Where and when, the year once where it is one: "Tunnel, east · in ground Sun 11 Apr – Sun 16 May 2027"."""
    bed = bed_of(plan, one.planting.bed).name
    if one.dates.in_ground is None:
        return f"{bed} · {_('no dates yet')}"
    begin, out = one.dates.in_ground, one.dates.out
    if out is None:
        since = _("in ground from {day}") if one.hardened is None else _("hardening off from {day}")
        return f"{bed} · {since.format(day=day_words(begin))}"
    there = _("in ground") if one.hardened is None else _("hardening off")
    first = weekday_words(begin) if begin.year == out.year else day_words(begin)
    return f"{bed} · {there} {first} – {day_words(out)}"


def order_words(order: Order, units: Units) -> str:
    """An order in short: "120 for Sat 17 May 2025", "40 × 5 for Sat 5 Jul 2025, 6 times every 7 days"."""
    wanted = grouped(order.units)
    if order.plants_per_unit > 1:
        wanted += f"{TIMES}{order.plants_per_unit}"
    elif order.row_per_unit is not None:
        wanted = _("{units} of {row} of row").format(units=wanted, row=offset(order.row_per_unit.nm, units))
    elif order.units_per_plant is not None:
        wanted = _("{units}, {count} from a plant,").format(units=wanted, count=grouped(order.units_per_plant))
    days = len(market_days(order))
    if days < 2:
        return _("{wanted} for {day}").format(wanted=wanted, day=day_words(order.on))
    return ngettext(
        "{wanted} for {day}, {days} times every day",
        "{wanted} for {day}, {days} times every {every} days",
        order.every_days,
    ).format(wanted=wanted, days=grouped(days), every=order.every_days, day=day_words(order.on))


def order_met_words(plan: Plan, one: Grown, layout: Layout) -> str:
    """Whether the plants that stand for its market day meet the order: "met, 2 to spare of 136".

    Of an order with several days it is said which: "Sat 12 Jun 2027, market day 2 of 3: 16 plants short of 168".
    """
    order, laid_out = one.order, lay_out_plan(plan)
    if order is None:
        return ""
    wanted = order.id, one.planting.market or 1
    standing = planted_for_orders(laid_out)[wanted]
    needed = stand_for(order, one.crop, spacings_for_orders(laid_out).get(wanted))
    if standing >= needed:
        words = _("met, {spare} to spare of {plants}").format(
            spare=grouped(standing - needed), plants=grouped(standing)
        )
    else:
        words = ngettext("{short} plant short of {plants}", "{short} plants short of {plants}", needed - standing)
        if one.crop.stand > 1:
            words = ngettext("{short} clump short of {plants}", "{short} clumps short of {plants}", needed - standing)
        words = words.format(short=grouped(needed - standing), plants=grouped(needed))
    said = planted_words(one, layout), _on_market_day(order, one.planting.market, words), _beside(plan, wanted)
    return "; ".join(part for part in said if part)


def _on_market_day(order: Order, market: int | None, words: str) -> str:
    """Words with the market day that they are about, where an order has several."""
    days, day = len(market_days(order)), market_day(order, market)
    if days < 2 or day is None:
        return words
    return _("{day}, market day {number} of {days}: {words}").format(
        day=day_words(day), number=market or 1, days=grouped(days), words=words
    )


def _beside(plan: Plan, wanted: tuple[str, int]) -> str:
    """How many plantings are for one market day, where it is not this one alone."""
    count = sum((one.order, one.market or 1) == wanted for one in plan.plantings)
    if count < 2:
        return ""
    return ngettext("{count} planting is for it", "{count} plantings are for it", count).format(count=grouped(count))


def rows_words(layout: Layout, units: Units) -> str:
    """Both answers for rows: "4 at 7.5 cm from the edge, or 3 at 17.5 cm"."""
    grid = layout.grid
    if grid.pattern is Pattern.BROADCAST or grid.turn is not None or not grid.rows:
        return ""
    taken, *others = row_answers(grid)
    words = _("{edge} at the edge").format(edge=offset(taken.edge, units))
    if others and others[0].edge > 0:
        # Nobody plants a row on the very edge.
        words += "; " + _("or {rows} with {edge}").format(rows=others[0].rows, edge=offset(others[0].edge, units))
    return words


def spare_words(layout: Layout, units: Units) -> str:
    """What of the block no rank fills: "12 cm over at the foot end"."""
    grid = layout.grid
    if grid.pattern in (Pattern.BROADCAST, Pattern.RINGS) or grid.turn is not None or layout.last_plant is None:
        return ""
    behind = grid.in_row // 2 if grid.pattern is Pattern.CELLS else grid.ends[1]
    over = layout.end - layout.last_plant - behind
    return _("{length} over at the foot end").format(length=span(over, units)) if over > 1_000_000 else ""


def source_words(crop: Crop) -> str:
    """Where the numbers of a crop come from, a line each; a crop of the grower's own has no source but the grower."""
    entry = entry_of(crop)
    if entry is None:
        return _("{crop}: your own numbers").format(crop=crop.name)
    lines = [f"{_as_given(crop, field)}: {source}" for field, source in entry.sources.items() if hasattr(crop, field)]
    first = _("The seed packet and local advice come first. Numbers from:")
    return "\n".join((first, *lines, entry.note)).strip()


def _as_given(crop: Crop, field: str) -> str:
    """A field of a crop and, of a spacing, how far it is in the units of its sources: "in row 18 in"."""
    spacings = {"in_row": (crop.in_row,), "row_spacing": crop.row_spacing}
    return " ".join(
        (field.replace("_", " "), _(" to ").join(length.text for length in spacings.get(field, ())))
    ).strip()


def spacing_words(crop: Crop, units: Units) -> str:
    """A crop's spacing and how it gets into the bed, in the plan's units: "20 × 30 cm · set out".

    What was typed in inches, as in most publications, is told as it was typed in a plan in decimal feet.
    """
    how = _("set out") if crop.establish is Establish.TRANSPLANT else _("sow")
    typed = [length.text.rpartition(" ") for length in (crop.in_row, crop.row_spacing[0])]
    if units is Units.DECIMAL_FEET and all(unit == "in" for _number, _gap, unit in typed):
        return f"{typed[0][0]}{TIMES}{typed[1][0]}{THIN}in · {how}"
    along, across = apart(crop.in_row.nm, units), apart(crop.row_spacing[0].nm, units)
    return f"{along.number}{TIMES}{across} · {how}"
