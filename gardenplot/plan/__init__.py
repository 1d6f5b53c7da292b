"""The plan as a frozen value, its edits and its file."""

from gardenplot.plan.choices import (
    DaysFrom,
    Direction,
    Establish,
    Frost,
    HoopShape,
    Pattern,
    Phase,
    Remainder,
    Reserved,
    Sheeting,
)
from gardenplot.plan.find import bed_of, by_id, crop_of, fresh_id, order_of, planting_of, plantings_in
from gardenplot.plan.goods import Feed, Good, GoodKind, Jugs, Watering
from gardenplot.plan.lying import Standing, Tunnel, Walk
from gardenplot.plan.value import (
    Actual,
    Bed,
    Box,
    Cover,
    Crop,
    MonthDay,
    Obstacle,
    Odds,
    Order,
    Past,
    Place,
    Plan,
    Planting,
    Wish,
)

__all__ = [
    "Actual", "Bed", "Box", "Cover", "Crop", "DaysFrom", "Direction", "Establish", "Feed", "Frost", "Good",
    "GoodKind", "HoopShape", "Jugs", "MonthDay", "Obstacle", "Odds", "Order", "Past", "Pattern", "Phase",
    "Place", "Plan", "Planting", "Remainder", "Reserved", "Sheeting", "Standing", "Tunnel", "Walk", "Watering",
    "Wish", "bed_of", "by_id", "crop_of", "fresh_id", "order_of", "planting_of", "plantings_in",
]  # fmt: skip
