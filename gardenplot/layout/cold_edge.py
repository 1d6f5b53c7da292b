"""Where a bed lies in the cold edge of a tunnel, and which stretches of it do not.

Trigonometry works in floats; less than a millimetre counts as nothing.
"""

from collections.abc import Iterator
from functools import lru_cache
from math import ceil, floor

from gardenplot.plan import Bed, Standing, Tunnel
from gardenplot.plan.ground import frame_of
from gardenplot.units import MM

Stretch = tuple[int, int]
"""Between which tape readings in nm."""


def in_cold_edges(
    bed: Bed, start: int, end: int, place: Standing, tunnels: tuple[Tunnel, ...]
) -> Iterator[tuple[Tunnel, int]]:
    """The tunnels in whose cold strip a block of a bed stands, and how near in nm it comes to a wall of each."""
    frame, width = frame_of(place), bed.width.nm
    corners = [frame.to_ground(x, y) for x in (start, end) for y in (0, width)]
    for tunnel in tunnels:
        if tunnel.cold_edge is None:
            continue
        inside, (length, across) = frame_of(tunnel), (tunnel.length.nm, tunnel.width.nm)
        off = [min(x, length - x, y, across - y) for x, y in (inside.from_ground(*corner) for corner in corners)]
        if min(off) > -MM and round(min(off)) + MM <= tunnel.cold_edge.nm:
            yield tunnel, round(max(0.0, min(off)))


@lru_cache(maxsize=256)
def out_of_cold_edges(bed: Bed, place: Standing | None, tunnels: tuple[Tunnel, ...]) -> tuple[Stretch, ...]:
    """The stretches of a bed in which a block stands in no tunnel's cold strip; all of it if it has no place."""
    found = [(0, bed.length.nm)]
    for tunnel in tunnels:
        if tunnel.cold_edge is None or place is None:
            continue
        free = [*_within(bed, place, tunnel, tunnel.cold_edge.nm - MM // 2)]
        for low, high in _within(bed, place, tunnel, -MM) or [(bed.length.nm + MM, bed.length.nm)]:
            # Stretches are rounded inwards: what lies outside begins up to a millimetre farther out.
            free = [(0, low - MM), *free, (high + MM, bed.length.nm)]
        found = both(found, free)
    return tuple(found)


def both(some: list[Stretch], others: list[Stretch]) -> list[Stretch]:
    """The stretches that lie in one of each."""
    clipped = ((max(low, first), min(high, last)) for low, high in some for first, last in others)
    return sorted({(low, high) for low, high in clipped if low < high})


def _within(bed: Bed, place: Standing, tunnel: Tunnel, off: int) -> list[Stretch]:
    """The one stretch of a bed, if any, all of whose width is so far inside a tunnel's walls, to the millimetre."""
    frame, inside = frame_of(place), frame_of(tunnel)
    low, high = 0.0, float(bed.length.nm)
    for across in (0, bed.width.nm):
        here, there = (inside.from_ground(*frame.to_ground(x, across)) for x in (0, bed.length.nm))
        for begin, end, wall in zip(here, there, (tunnel.length.nm, tunnel.width.nm), strict=True):
            for first, last in ((begin - off, end - off), (wall - off - begin, wall - off - end)):
                # A straight line from first to last: at least nothing where the bed is inside.
                if first < 0 and last < 0:
                    return []
                meets = bed.length.nm * first / (first - last) if first != last else 0.0
                low, high = (max(low, meets), high) if first < 0 else (low, min(high, meets) if last < 0 else high)
    first, last = ceil(low / MM) * MM, bed.length.nm if high >= bed.length.nm else floor(high / MM) * MM
    return [(first, last)] if first < last else []
