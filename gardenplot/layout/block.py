"""One planting's block: its length from its plants or its plants from its length, and its rows filled."""

from attrs import frozen

from gardenplot.layout.across import grid_of
from gardenplot.layout.along import capacity, first_in_row, length_for, share_out
from gardenplot.layout.value import Grid, Layout, Row, Run
from gardenplot.plan import Bed, Crop, Order, Pattern, Planting
from gardenplot.season import stand_for


@frozen
class Sized:
    """What a planting asks for: its grid, the plants wanted (None where length rules) and the length (None if it
    fills its gap), in nm."""

    grid: Grid
    wanted: int | None
    length: int | None


def sized(bed: Bed, crop: Crop, planting: Planting, order: Order | None) -> Sized:
    """The size that a planting asks for, before its place in the bed is known."""
    grid = grid_of(bed, crop, planting)
    if planting.length is not None:
        return Sized(grid, None, planting.length.nm)
    wanted = planting.plants
    if wanted is None and order is not None:
        wanted = stand_for(order, crop)
    if wanted is None:
        return Sized(grid, None, None)
    length = _length_for(grid, crop, wanted)
    with_slack = length + (planting.slack.nm if planting.slack else 0)
    if planting.round_up_to is not None and planting.round_up_to.nm:
        with_slack = -(-with_slack // planting.round_up_to.nm) * planting.round_up_to.nm
    if planting.plants is None:
        wanted = max(wanted, _capacity(grid, crop, length))
    return Sized(grid, wanted, with_slack)


def lay_out(bed: Bed, crop: Crop, planting: Planting, size: Sized, start: int, length: int) -> Layout:
    """The layout of a block that begins at `start`; plants stand only where it lies inside the planting zone."""
    first, last = bed.zone
    inside_from, inside_to = max(start, first), min(start + length, last)
    room = max(0, inside_to - inside_from)
    plants = _capacity(size.grid, crop, room)
    if size.wanted is not None:
        plants = min(plants, size.wanted)
    return Layout(
        planting=planting.id,
        bed=bed.id,
        crop=crop.id,
        start=start,
        end=start + length,
        grid=size.grid,
        rows=_rows(size.grid, inside_from, plants),
        plants=plants,
        wanted=size.wanted,
    )


def _rows(grid: Grid, start: int, plants: int) -> tuple[Row, ...]:
    return tuple(
        Row(
            grid.edge + number * grid.between,
            (Run(start + first_in_row(grid.pattern, number, grid.in_row), grid.in_row, count),),
        )
        for number, count in enumerate(share_out(grid.pattern, grid.rows, plants))
    )


def _capacity(grid: Grid, crop: Crop, length: int) -> int:
    if grid.pattern is not Pattern.BROADCAST:
        return capacity(grid.pattern, grid.rows, grid.in_row, length)
    top, bottom = _density(grid, crop)
    return length * band_width(grid) * top // bottom


def _length_for(grid: Grid, crop: Crop, plants: int) -> int:
    if grid.pattern is not Pattern.BROADCAST:
        return length_for(grid.pattern, grid.rows, grid.in_row, plants)
    top, bottom = _density(grid, crop)
    across = band_width(grid) * top
    return -(-plants * bottom // across) if across else 0


def band_width(grid: Grid) -> int:
    """Width in nm of a broadcast band: the bed less what is kept clear at both edges."""
    return max(0, grid.width - 2 * grid.edge)


def _density(grid: Grid, crop: Crop) -> tuple[int, int]:
    """Plants per square nanometre as a fraction: the crop's rate, else one in each in-row x row spacing."""
    if crop.plants_per_area is None:
        return 1, grid.in_row * grid.between_least
    return crop.plants_per_area.per_nm2.numerator, crop.plants_per_area.per_nm2.denominator
