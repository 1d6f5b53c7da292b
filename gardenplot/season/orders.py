"""What an order asks for: its market days, and the plants or the row that must stand for each of them.

Stand = units / (1 - field loss), rounded up. Formula: common practice, no source.
"""

from datetime import date, timedelta
from fractions import Fraction
from math import ceil

from gardenplot.plan import Crop, Order


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


def units_to_grow(order: Order, crop: Crop) -> int:
    """The units that must grow for one market day, so that those that are lost leave enough: rounded up."""
    return ceil(order.units / (1 - _loss(crop)))


def stand_for(order: Order, crop: Crop, row: int | None = None) -> int:
    """The plants that must stand for one market day of an order.

    `row` is the length of row in nm that a plant has, needed where a unit is cut from a length of row: the crop's own
    spacing where it is not given.
    """
    if order.row_per_unit is not None:
        return -(-units_to_grow(order, crop) * order.row_per_unit.nm // (row or crop.in_row.nm))
    if order.units_per_plant is not None:
        return ceil(order.units / (order.units_per_plant * (1 - _loss(crop))))
    return ceil(order.units * order.plants_per_unit / (1 - _loss(crop)))


def units_from(order: Order, crop: Crop, plants: int, row: int | None = None) -> int:
    """The units that so many plants leave to sell after what is lost: rounded down."""
    kept = plants * (1 - _loss(crop))
    if order.row_per_unit is not None:
        # Whole units are counted before any is lost, as they were when the row was sized.
        return int((plants * (row or crop.in_row.nm) // order.row_per_unit.nm) * (1 - _loss(crop)))
    if order.units_per_plant is not None:
        return int(kept * order.units_per_plant)
    return int(kept / order.plants_per_unit)


def _loss(crop: Crop) -> Fraction:
    return crop.field_loss.part if crop.field_loss else Fraction(0)
