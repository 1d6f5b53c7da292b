"""Filling what is left: wishes and orders placed in free ground and days."""

from gardenplot.filling.filled import Filling, Lacking, fill
from gardenplot.filling.placed import Placed
from gardenplot.filling.wanted import First, Weights

__all__ = ["Filling", "First", "Lacking", "Placed", "Weights", "fill"]
