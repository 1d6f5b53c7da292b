"""What came about of a planting in words: since when it is in the ground, how many stand, what is to sell."""

from gardenplot.drawing.days import short_day
from gardenplot.layout import Grown, Layout, lay_out_plan, planted_for_orders, stood
from gardenplot.plan import Establish, Plan
from gardenplot.season.orders import units_from
from gardenplot.units.figures import grouped
from gardenplot.words import _


def since_words(one: Grown) -> str:
    """Since when a planting is in the ground: "in the ground since 9 Apr"; nothing while it is only planned."""
    came = one.planting.actual
    if came is None or came.set_out is None:
        return ""
    first = short_day(came.set_out)
    if came.cleared is not None:
        return _("was in the ground from {first} to {last}").format(first=first, last=short_day(came.cleared))
    return _("in the ground since {day}").format(day=first)


def planted_words(one: Grown, layout: Layout) -> str:
    """How many plants stand of those laid out, where that was counted: "planted 160 of 168", "112 of 168 stand"."""
    standing = stood(one, layout)
    if standing == layout.plants:
        return ""
    words = _("{count} of {plants} came up")
    if one.crop.establish is Establish.TRANSPLANT:
        words = _("planted {count} of {plants}")
    if was_counted_in_bed(one):
        words = _("{count} of {plants} stand")
    return words.format(count=grouped(standing), plants=grouped(layout.plants))


def was_counted_in_bed(one: Grown) -> bool:
    """Whether it is known what stands in the bed now, or which rows failed."""
    came = one.planting.actual
    return came is not None and (came.standing is not None or bool(came.failed_rows))


def came_words(one: Grown, layout: Layout) -> str:
    """What came about in a line: "in the ground since 9 Apr, planted 160 of 168"."""
    return ", ".join(words for words in (since_words(one), planted_words(one, layout)) if words)


def sale_words(plan: Plan, one: Grown, layout: Layout) -> str:
    """What all that stands for a market day should leave to sell: "about 205 to sell, 210 ordered"."""
    if one.order is None:
        return ""
    standing = planted_for_orders(lay_out_plan(plan)).get((one.order.id, one.planting.market or 1), 0)
    units = units_from(one.order, one.crop, standing, layout.grid.in_row)
    words = _("about {units} to sell, {ordered} ordered")
    return words.format(units=grouped(units), ordered=grouped(one.order.units))
