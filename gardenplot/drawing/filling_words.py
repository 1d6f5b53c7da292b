"""A filling of the season in words: how good it is, what found its place and what did not."""

from math import ceil

from attrs import frozen

from gardenplot.drawing.days import days_between
from gardenplot.drawing.gap_words import REASONS
from gardenplot.drawing.hand_words import listed
from gardenplot.drawing.sayings import between_readings, name_of
from gardenplot.filling import Filling, Lacking, Placed
from gardenplot.filling.others import Kind
from gardenplot.plan import bed_of, by_id, crop_of, planting_of
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


@frozen
class FoundRow:
    """The cells of what was wanted, and whether it lacks plants."""

    cells: tuple[str, ...]
    lacks: bool = False


KINDS = {
    Kind.ORDERS: _("orders before any wish"),
    Kind.WISHES: _("wishes as much as orders"),
    Kind.WHOLE: _("an order whole or not at all"),
    Kind.PARTS: _("parts of orders for what they have"),
    Kind.APART: _("what is repeated whenever it finds ground"),
}
"""What counts more in another filling."""

FOUND_COLUMNS = (_("crop"), _("bed"), _("tape"), _("plants"), _("in the ground"))


def proof_words(filling: Filling) -> str:
    """How far from the best it is at most: "the best there is"."""
    if filling.proven:
        return _("the best there is")
    part = ceil(1000 * filling.short_of_bound) / 10
    return _("at most {part:.1f} % short of the best there is").format(part=part)


def worth_words(filling: Filling) -> str:
    """How much of what is wanted it meets, what the plants for wishes are worth, and its proof, in a line.

    What an order counts beside wishes is a weight and no worth, so it is not told.
    """
    met = ngettext(
        "{met} of {count} wish or order met", "{met} of {count} wishes and orders met", filling.wanted
    ).format(met=grouped(filling.met), count=grouped(filling.wanted))
    worth = sum(_worth_as_wished(filling, one) for one in filling.placed)
    wished = (_("plants for wishes worth {worth:.10g}").format(worth=round(worth, 2)),) if worth else ()
    return ", ".join((met, *wished, proof_words(filling)))


def offer_words(filling: Filling, kind: Kind | None = None) -> str:
    """A filling among others: "as it was weighed: 3 of 5 met", "an order whole or not at all: 4 of 5 met"."""
    met = _("{met} of {count} met").format(met=grouped(filling.met), count=grouped(filling.wanted))
    return _("{name}: {met}").format(name=_("as it was weighed") if kind is None else KINDS[kind], met=met)


def _worth_as_wished(filling: Filling, one: Placed) -> float:
    wish = planting_of(filling.plan, one.planting).wish
    return 0.0 if wish is None else by_id(filling.plan.wishes, wish).worth * one.plants


def found_rows(filling: Filling) -> tuple[FoundRow, ...]:
    """What found no place or not enough of it, then what was placed."""
    lacking = tuple(FoundRow(_lacking(filling, one), lacks=True) for one in filling.lacking)
    return (*lacking, *(FoundRow(_placed(filling, one)) for one in filling.placed))


def why_words(one: Lacking) -> str:
    """Why nothing of it has ground, where that is known: "needs a cover 13 Apr – 2 May 2027"."""
    if one.why is None:
        return ""
    if not one.cover:
        return REASONS[one.why]
    days = listed([days_between(each.first, each.last) for each in one.cover])
    return _("needs a cover {days}").format(days=days)


def _lacking(filling: Filling, one: Lacking) -> tuple[str, ...]:
    name, wanted = crop_of(filling.plan, one.crop).name, one.plants + one.lacks
    if not one.plants:
        return name, why_words(one) or _("found no place"), "", _("0 of {count}").format(count=grouped(wanted)), ""
    plants = _("{plants} of {count}").format(plants=grouped(one.plants), count=grouped(wanted))
    return name, _("found too little ground"), "", plants, ""


def _placed(filling: Filling, one: Placed) -> tuple[str, ...]:
    plan = filling.plan
    days = days_between(one.in_ground, one.out) if one.in_ground and one.out else _("no days")
    readings = between_readings(plan, one.start, one.end)
    return name_of(plan, one.planting), bed_of(plan, one.bed).name, readings, grouped(one.plants), days
