"""What to raise, sow, buy and carry."""

from gardenplot.supplies.covers import CoverCut, SheetCut, cover_cut, spare_width, stock_width
from gardenplot.supplies.raising import Raising, Spill, raised_for, raising

__all__ = [
    "CoverCut",
    "Raising",
    "SheetCut",
    "Spill",
    "cover_cut",
    "raised_for",
    "raising",
    "spare_width",
    "stock_width",
]
