"""What to raise, sow, buy and carry."""

from gardenplot.supplies.covers import CoverCut, cover_cut
from gardenplot.supplies.raising import Raising, Spill, raising

__all__ = ["CoverCut", "Raising", "Spill", "cover_cut", "raising"]
