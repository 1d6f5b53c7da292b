"""The remainder of a block spread over its plants, on a spacing in the row that can be marked.

A wider spacing is taken only where the block still holds as many plants; of these, the widest that is reached without
losing one on the way.
"""

from collections.abc import Callable

from attrs import evolve

from gardenplot.layout.along import half_spacing
from gardenplot.layout.lines import kinds_of
from gardenplot.layout.value import Grid
from gardenplot.plan import Direction, Pattern, Place, Remainder
from gardenplot.plan.value import Planting
from gardenplot.units import CM, FOOT, INCH, Units

_FINEST = {Units.METRIC: CM, Units.FEET_AND_INCHES: INCH // 4, Units.DECIMAL_FEET: FOOT // 100}
"""What can be marked where the place names no tools: what a tape shows."""
_ROWS = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TWIN, Pattern.OFFSETS)


def may_spread(planting: Planting) -> bool:
    """Whether a remainder can be spread: over rows along the bed whose spacing in the row is free."""
    return planting.pattern in _ROWS and planting.direction is Direction.ALONG


def wider_spacings(place: Place, planting: Planting, in_row: int) -> tuple[int, ...]:
    """The spacings in nm above `in_row`, up to twice of it, on which a planting's remainder may be spread."""
    if planting.remainder is not Remainder.SPREAD or not may_spread(planting):
        return ()
    if place.markable_in_row:
        return tuple(sorted({one.nm for one in place.markable_in_row if in_row < one.nm <= 2 * in_row}))
    step = _FINEST[place.units]
    return tuple(range((in_row // step + 1) * step, 2 * in_row + 1, step))


def spread_over(grid: Grid, wider: tuple[int, ...], holds: Callable[[Grid], bool]) -> Grid:
    """The grid on the widest of some spacings on which its block still holds as many plants."""
    taken = grid
    for spacing in wider:
        wide = _respaced(grid, spacing)
        if not holds(wide):
            break
        taken = wide
    return taken


def _respaced(grid: Grid, in_row: int) -> Grid:
    ends = half_spacing(in_row) if grid.end_margin is None else grid.ends
    kinds = kinds_of(grid.pattern, grid.kinds[0].high, in_row, ends)
    return evolve(grid, in_row=in_row, rank=in_row, ends=ends, kinds=kinds, in_row_least=grid.in_row)
