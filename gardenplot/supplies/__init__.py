"""What to raise, sow, buy and carry."""

from gardenplot.supplies.covers import CoverCut, cover_cut, stock_width
from gardenplot.supplies.raising import Raising, Spill, raised_for, raising

__all__ = ["CoverCut", "Raising", "Spill", "cover_cut", "raised_for", "raising", "stock_width"]
