"""Filling what is left: wishes placed in free ground and days."""

from gardenplot.filling.season import Filling, Placed, fill

__all__ = ["Filling", "Placed", "fill"]
