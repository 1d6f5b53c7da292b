"""The ground of a broadcast band in a bed that is no plain rectangle: measured on many lines along the bed.

The band keeps its edge distance across the bed, as rows do, and keeps clear of obstacles. Its area is the length that
it has on 512 lines, evenly spaced over its width, times what each stands for (midpoint rule): exact for a rectangle,
good to some five parts in a hundred thousand for a disc. More length never holds less.
"""

from functools import lru_cache

from gardenplot.layout.clearance import kept_by
from gardenplot.layout.filled import free_stretches
from gardenplot.layout.outline import Interval
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
    kept = [kept_by(one) for one in bed.obstacles if not one.rows]
    for number in range(LINES):
        offset = edge + (2 * number + 1) * width // (2 * LINES)
        ground = held(bed, offset - edge, offset + edge)
        stretches = [one.blocked(offset, offset, number) for one in kept]
        found.append(tuple(free_stretches(ground, (0, bed.length.nm), (0, 0), stretches)))
    return tuple(found)
