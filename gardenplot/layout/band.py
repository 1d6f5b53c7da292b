"""The ground of a broadcast band in a bed that is no plain rectangle: measured on many lines along the bed.

The band keeps its edge distance across the bed, as rows do, and keeps clear of obstacles. Its area is the length that
it has on 512 lines, evenly spaced over its width, times what each stands for (midpoint rule): exact for a rectangle,
good to some five parts in a hundred thousand for a disc. More length never holds less.
"""

from functools import lru_cache

from gardenplot.layout.clearance import blocked
from gardenplot.layout.outline import Interval, without
from gardenplot.layout.value import Line
from gardenplot.layout.zone import held
from gardenplot.plan import Bed

LINES = 512


def band_area(bed: Bed, edge: int, start: int, end: int) -> int:
    """Square nanometres of a band that keeps `edge` nm from the edges of its bed, between two tape readings."""
    width = max(0, bed.width.nm - 2 * edge)
    length = sum(
        max(0, min(right, end) - max(left, start)) for line in _lines(bed, edge, width) for left, right in line
    )
    return length * width // LINES


@lru_cache(maxsize=256)
def _lines(bed: Bed, edge: int, width: int) -> tuple[tuple[Interval, ...], ...]:
    """What the band has of each line."""
    found = []
    for number in range(LINES):
        offset = edge + (2 * number + 1) * width // (2 * LINES)
        line = Line(offset, offset - edge, offset + edge, 1, (0, 0), 0)
        free = held(bed, line.low, line.high)
        for obstacle in (one for one in bed.obstacles if not one.rows):
            stretch = blocked(obstacle, line, number)
            if stretch is not None:
                free = without(free, *stretch)
        found.append(free)
    return tuple(found)
