"""How much of a bed is drawn: plants and rows, or from afar only what each block is."""

from enum import StrEnum
from functools import lru_cache

from gardenplot.layout import LaidOut, Layout
from gardenplot.units import MM

_ROWS_APART = 2.5
"""Pixels between two rows below which they run together."""


class Detail(StrEnum):
    """What a drawing of a bed shows of its blocks: their plants, or their hatch and letter."""

    PLANTS = "plants"
    BLOCKS = "blocks"


def detail_at(laid: LaidOut, across: float) -> Detail:
    """What can be told apart at so many pixels per mm across the bed."""
    return Detail.BLOCKS if _apart(laid) / MM * across < _ROWS_APART else Detail.PLANTS


@lru_cache(maxsize=1024)
def _apart(laid: LaidOut) -> int:
    """The least distance in nm between two rows of a bed, or its width where it has none."""
    return min((_between(layout) for layout in laid.layouts), default=laid.bed.width.nm)


def _between(layout: Layout) -> int:
    grid = layout.grid
    return (grid.twin or grid.between) if len(layout.rows) > 1 else grid.width
