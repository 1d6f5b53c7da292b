"""Where words find room in a drawing: upon no plant, no ring and no other words."""

import numpy as np
from numpy.typing import NDArray

from gardenplot.drawing.marks import Plants
from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from gardenplot.sheets.render import Frame, kept_radius
from gardenplot.units import MM

Box = tuple[float, float, float, float]
"""Left, bottom, right and top in points."""
Standing = tuple[NDArray[np.float64], float]
"""Where plants or rings stand on the page, and how far they reach in points."""


def standing(mark: Plants, frame: Frame) -> Standing:
    """Where the plants or rings of a mark stand on the page, and how far they reach in points."""
    return on_page(mark.layout, frame), kept_radius(mark.spread, frame)


def on_page(layout: Layout, frame: Frame) -> NDArray[np.float64]:
    """Where plants stand in points of the page, of shape (n, 2)."""
    scale, corner = np.array([frame.along, -frame.across]), np.array([frame.left, frame.top])
    places: NDArray[np.float64] = corner + positions(layout) / MM * scale
    return places


def is_free(box: Box, plants: list[Standing], frame: Frame) -> bool:
    """Whether a box is in sight and stands upon no plant and no ring."""
    window = frame.window
    if window is not None:
        (left, top), (right, bottom) = frame.place(window.left, window.top), frame.place(window.right, window.bottom)
        if not (left < box[0] < box[2] < right and bottom < box[1] < box[3] < top):
            return False
    middle, half = np.array([box[0] + box[2], box[1] + box[3]]) / 2, np.array([box[2] - box[0], box[3] - box[1]]) / 2
    return all((np.abs(places - middle) > half + radius).any(axis=1).all() for places, radius in plants)


def meet(one: Box, other: Box) -> bool:
    """Whether two boxes share ground."""
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
