"""Where plants stand: a pure function of a bed and its plantings, in whole nanometres."""

from gardenplot.layout.across import RowAnswer, nearest_rows, row_answers, rows_are_closer
from gardenplot.layout.bed import (
    Grown,
    LaidOut,
    compete,
    followers_of,
    kept_for,
    lay_out_bed,
    lay_out_plan,
    planted_for_orders,
    planted_for_wishes,
    spacings_for_orders,
    stood,
)
from gardenplot.layout.block import band_width, has_room
from gardenplot.layout.grids import least_edge
from gardenplot.layout.ground import Ground, ground_for
from gardenplot.layout.leftover import Free, Stretch, free_between, free_on, fullest_day, standing
from gardenplot.layout.value import EdgeRule, Grid, Layout, Row, Run

__all__ = [
    "EdgeRule", "Free", "Grid", "Ground", "Grown", "LaidOut", "Layout", "Row", "RowAnswer", "Run",
    "Stretch", "band_width", "compete", "followers_of", "free_between", "free_on", "fullest_day",
    "ground_for", "has_room", "kept_for", "lay_out_bed", "lay_out_plan", "least_edge", "nearest_rows",
    "planted_for_orders", "planted_for_wishes", "row_answers", "rows_are_closer", "spacings_for_orders",
    "standing", "stood",
]  # fmt: skip
