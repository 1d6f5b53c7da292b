"""What an order asks for: its market days, and the plants or the row that must stand for each of them.

Stand = units / (1 - field loss), rounded up; of a crop that stands in clumps a place for each clump. Formula: common
practice, no source.
"""

from datetime import date, timedelta
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor

from attrs import frozen

from gardenplot.plan import Crop, Order
from gardenplot.plan.clumps import is_own
from gardenplot.working import RULES, Number, Rounding, Source, Unit, known, larger, worked


def market_days(order: Order) -> tuple[date, ...]:
    """The days on which an order is wanted; those past the calendar's end are left out."""
    days = []
    for number in range(order.times):
        try:
            days.append(order.on + timedelta(days=number * order.every_days))
        except OverflowError:
            break
    return tuple(days)


def market_day(order: Order, market: int | None) -> date | None:
    """One of an order's days, counted from 1, the first where none is named; None if it has no such day."""
    days, number = market_days(order), (market or 1) - 1
    return days[number] if number < len(days) else None


def market_made(order: Order, market: int | None, ready: date) -> date | None:
    """The first day that what is ready on a day makes: the market day that it is for, or so many rounds later.

    None where its order has no such day, or the calendar ends before.
    """
    made = market_number(order, market, known("ready", ready.toordinal(), Unit.DATE))
    return date.fromordinal(made.whole) if made and made.whole and made.whole <= date.max.toordinal() else None


def market_number(order: Order | None, market: int | None, ready: Number | None) -> Number | None:
    """That day with its working, counted from the day of `date.toordinal`."""
    wanted = None if order is None else market_day(order, market)
    if order is None or wanted is None or ready is None:
        return None
    day = known("market", wanted.toordinal(), Unit.DATE, source=Source.OF_ORDER)
    lead = known("lead_days", order.lead_days, Unit.DAYS, source=Source.OF_ORDER)
    every = known("every_days", order.every_days, Unit.DAYS, source=Source.OF_ORDER)
    formula = f"larger(({ready.name} + lead_days − market) ÷ every_days, 0)"
    rounds = worked("rounds_late", Unit.COUNT, formula, ready, lead, day, every, rounding=Rounding.UP,
                    using={"larger": larger}, source=RULES)  # fmt: skip
    return worked("market_made", Unit.DATE, "market + rounds_late × every_days", day, rounds, every, source=RULES)


def markets_missed(order: Order, market: int | None, made: date | None) -> tuple[date, ...]:
    """The market days from the one that something is for until the one that it makes."""
    wanted = market_day(order, market)
    if wanted is None or made is None:
        return ()
    return tuple(map(date.fromordinal, range(wanted.toordinal(), made.toordinal(), order.every_days)))


def units_to_grow(order: Order, crop: Crop) -> int:
    """The units that must grow for one market day, so that those that are lost leave enough: rounded up."""
    return ceil(_to_grow(order, crop).value or 0)


@frozen
class Each:
    """What a place has that something is planted in: nm of row, and the plants that are left in it, on average."""

    row: int
    clump: Fraction


def stand_for(order: Order, crop: Crop, each: Each | int | None = None) -> int:
    """The plants that must stand for one market day of an order; of clumps the places.

    `each` is what a place has, or only its length of row in nm, needed where a unit is cut from a length of row: the
    crop's own spacing and clump where they are not given.
    """
    return ceil(stand_number(order, crop, each).value or 0)


def _row_number(crop: Crop, each: Each | int | None) -> Number:
    row = each.row if isinstance(each, Each) else each
    return known("in_row_spacing", row or crop.in_row.nm, Unit.SPACING, source=Source.PACKET)


@lru_cache(maxsize=4096)
def stand_number(order: Order, crop: Crop, each: Each | int | None = None) -> Number:
    """The plants that must stand for one market day of an order, with their working; `each` is as in `stand_for`."""
    if order.row_per_unit is not None:
        grow = _to_grow(order, crop)
        unit = known("row_per_unit", order.row_per_unit.nm, Unit.LENGTH, source=Source.OF_ORDER)
        plant = _row_number(crop, each)
        return _up("stand", "to_grow × row_per_unit ÷ in_row_spacing", grow, unit, plant)
    ordered, loss = _ordered(order), _loss_number(crop)
    each_left = clump_numbers(crop, each)
    left = " ÷ clump" if each_left else ""
    if order.units_per_plant is not None:
        units = known("units_per_plant", order.units_per_plant, Unit.COUNT, source=Source.OF_ORDER)
        formula = "ordered ÷ (units_per_plant × (1 − field_loss))"
        return _up("stand", formula + left, ordered, units, loss, *each_left)
    if order.plants_per_unit == 1:
        return _up("stand", "ordered ÷ (1 − field_loss)" + left, ordered, loss, *each_left)
    plants = known("plants_per_unit", order.plants_per_unit, Unit.COUNT, source=Source.OF_ORDER)
    return _up("stand", "ordered × plants_per_unit ÷ (1 − field_loss)" + left, ordered, plants, loss, *each_left)


def clump_numbers(crop: Crop, each: Each | int | None = None) -> tuple[Number, ...]:
    """The plants that are left in a place, where they are more than one; on average where plantings differ."""
    left = each.clump if isinstance(each, Each) else Fraction(crop.stand)
    if left == 1:
        return ()
    is_packet = left == crop.stand and not is_own(crop, "clump")
    typed = Source.OF_PLANTING if left.denominator == 1 else Source.COUNTED
    return (known("clump", left, Unit.COUNT, source=Source.PACKET if is_packet else typed),)


def _to_grow(order: Order, crop: Crop) -> Number:
    return _up("to_grow", "ordered ÷ (1 − field_loss)", _ordered(order), _loss_number(crop))


def _ordered(order: Order) -> Number:
    return known("ordered", order.units, Unit.COUNT, source=Source.OF_ORDER)


def _loss_number(crop: Crop) -> Number:
    return known("field_loss", _loss(crop), Unit.SHARE, source=Source.PACKET if crop.field_loss else Source.NOT_TYPED)


def _up(name: str, formula: str, *terms: Number) -> Number:
    return worked(name, Unit.COUNT, formula, *terms, rounding=Rounding.UP, source=RULES)


@lru_cache(maxsize=4096)
def units_from(order: Order, crop: Crop, plants: int, each: Each | int | None = None) -> int:
    """The units that the plants of so many places leave to sell after what is lost: rounded down."""
    return floor(sold_number(order, crop, known("planted_for", plants, Unit.COUNT), each).value or 0)


def sold_number(order: Order, crop: Crop, stands: Number, each: Each | int | None = None) -> Number:
    """The units that the plants that stand leave to sell, with their working; `each` is as in `stand_for`."""
    lost, left, each_left = _loss_number(crop), f"{stands.name} × (1 − field_loss)", clump_numbers(crop, each)
    left += " × clump" if each_left else ""
    if order.row_per_unit is not None:
        # Whole units are counted before any is lost, as they were when the row was sized.
        return _down("to_sell", "all_units × (1 − field_loss)", _units_in_row(order, crop, stands, each), lost)
    if order.units_per_plant is not None:
        units = known("units_per_plant", order.units_per_plant, Unit.COUNT, source=Source.OF_ORDER)
        return _down("to_sell", f"{left} × units_per_plant", stands, lost, units, *each_left)
    if order.plants_per_unit == 1:
        return _down("to_sell", left, stands, lost, *each_left)
    plants = known("plants_per_unit", order.plants_per_unit, Unit.COUNT, source=Source.OF_ORDER)
    return _down("to_sell", f"{left} ÷ plants_per_unit", stands, lost, plants, *each_left)


def _units_in_row(order: Order, crop: Crop, stands: Number, each: Each | int | None) -> Number:
    """Whole units that are cut from a length of row."""
    apart = _row_number(crop, each)
    cut = known("row_per_unit", order.row_per_unit.nm if order.row_per_unit else None, Unit.LENGTH,
                source=Source.OF_ORDER)  # fmt: skip
    return _down("all_units", f"{stands.name} × in_row_spacing ÷ row_per_unit", stands, apart, cut)


def _down(name: str, formula: str, *terms: Number) -> Number:
    return worked(name, Unit.COUNT, formula, *terms, rounding=Rounding.DOWN, source=RULES)


def _loss(crop: Crop) -> Fraction:
    return crop.field_loss.part if crop.field_loss else Fraction(0)
