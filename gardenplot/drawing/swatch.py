"""A crop's spacing as a small piece of bed, to scale."""

from collections.abc import Iterator

from gardenplot.plan import Crop
from gardenplot.units import MM

SWATCH_SCALE = 50
"""Swatches are drawn at 1 : 50."""


def swatch(crop: Crop, width: float, height: float) -> Iterator[tuple[float, float, float]]:
    """x, y and radius in mm of the plants in a piece of bed of `width` x `height` mm, the first half a spacing in."""
    along, across = crop.in_row.nm / MM, crop.row_spacing[0].nm / MM
    radius = min(along, across) * 0.3
    y = min(across, height) / 2
    while y < height:
        x = min(along, width) / 2
        while x < width:
            yield x, y, min(radius, 60.0)
            x += along
        y += across
