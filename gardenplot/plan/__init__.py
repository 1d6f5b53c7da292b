"""The plan as a frozen value, its edits and its file."""

from gardenplot.plan.find import bed_of, by_id, crop_of, fresh_id, order_of, planting_of, plantings_in
from gardenplot.plan.value import (
    Bed,
    Box,
    Cover,
    Crop,
    Direction,
    Establish,
    HoopShape,
    MonthDay,
    Obstacle,
    Order,
    Pattern,
    Phase,
    Place,
    Plan,
    Planting,
    Remainder,
    Reserved,
    Standing,
    Tunnel,
    Walk,
    Wish,
)

__all__ = [
    "Bed", "Box", "Cover", "Crop", "Direction", "Establish", "HoopShape", "MonthDay", "Obstacle", "Order", "Pattern",
    "Phase", "Place", "Plan", "Planting", "Remainder", "Reserved", "Standing", "Tunnel", "Walk", "Wish", "bed_of",
    "by_id", "crop_of", "fresh_id", "order_of", "planting_of", "plantings_in",
]  # fmt: skip
