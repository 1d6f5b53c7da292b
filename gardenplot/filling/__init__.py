"""Filling what is left: wishes and orders placed in free ground and days."""

from gardenplot.filling.season import Filling, Lacking, Placed, fill
from gardenplot.filling.wanted import Weights

__all__ = ["Filling", "Lacking", "Placed", "Weights", "fill"]
