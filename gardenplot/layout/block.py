"""One planting's block: its length from its plants or its plants from its length, and its rows filled."""

from attrs import frozen

from gardenplot.layout.across import grid_of
from gardenplot.layout.along import capacity, first_in_row, length_for, share_out
from gardenplot.layout.value import Grid, Layout, Row, Run
from gardenplot.layout.zone import area, first_plants, is_plain, zone_rows
from gardenplot.plan import Bed, Crop, Order, Pattern, Planting
from gardenplot.season import stand_for


@frozen
class Sized:
    """What a planting asks for: its grid, the plants wanted (None where length rules) and the length that was typed.

    The length is in nm, and None where plants rule or where it fills its gap.
    """

    grid: Grid
    wanted: int | None
    length: int | None

    @property
    def fills(self) -> bool:
        """Whether it takes the gap that it is put into."""
        return self.wanted is None and self.length is None


def sized(bed: Bed, crop: Crop, planting: Planting, order: Order | None) -> Sized:
    """The size that a planting asks for, before its place in the bed is known."""
    grid = grid_of(bed, crop, planting)
    if planting.length is not None:
        return Sized(grid, None, planting.length.nm)
    if planting.plants is not None:
        return Sized(grid, planting.plants, None)
    return Sized(grid, stand_for(order, crop) if order is not None else None, None)


def length_at(bed: Bed, crop: Crop, planting: Planting, size: Sized, start: int) -> int:
    """The length in nm of a block that begins at `start`, with its slack and rounded up; 0 where it fills its gap."""
    if size.length is not None:
        return size.length
    if size.wanted is None:
        return 0
    length = _length_for(bed, size.grid, crop, size.wanted, start) + (planting.slack.nm if planting.slack else 0)
    if planting.round_up_to is not None and planting.round_up_to.nm:
        length = -(-length // planting.round_up_to.nm) * planting.round_up_to.nm
    return length


def lay_out(bed: Bed, crop: Crop, planting: Planting, size: Sized, start: int, length: int) -> Layout:
    """The layout of a block that begins at `start`; plants stand only where it lies inside the planting zone.

    Plants that were typed may leave the last rank part-filled; those of an order fill it.
    """
    first, last = bed.zone
    inside_from, inside_to = max(start, first), min(start + length, last)
    wanted = size.wanted
    if wanted is not None and planting.plants is None:
        least = _length_for(bed, size.grid, crop, wanted, start)
        wanted = max(wanted, _capacity(bed, size.grid, crop, start, start + least))
    plants = _capacity(bed, size.grid, crop, inside_from, inside_to)
    if wanted is not None:
        plants = min(plants, wanted)
    return Layout(
        planting=planting.id,
        bed=bed.id,
        crop=crop.id,
        start=start,
        end=start + length,
        grid=size.grid,
        rows=_rows(bed, size.grid, inside_from, inside_to, plants),
        plants=plants,
        wanted=wanted,
    )


def _rows(bed: Bed, grid: Grid, start: int, end: int, plants: int) -> tuple[Row, ...]:
    if not is_plain(bed):
        return first_plants(zone_rows(bed, grid, start, end), plants)
    return tuple(
        Row(
            grid.edge + number * grid.between,
            (Run(start + first_in_row(grid.pattern, number, grid.in_row, grid.ends), grid.in_row, count),),
        )
        for number, count in enumerate(share_out(grid.pattern, grid.rows, plants))
    )


def _capacity(bed: Bed, grid: Grid, crop: Crop, start: int, end: int) -> int:
    """Plants that the ground between two tape readings holds."""
    if grid.pattern is Pattern.BROADCAST:
        top, bottom = _density(grid, crop)
        ground = max(0, end - start) * band_width(grid) if is_plain(bed) else area(bed, start, max(start, end))
        return ground * top // bottom
    if is_plain(bed):
        return capacity(grid.pattern, grid.rows, grid.in_row, end - start, grid.ends)
    return sum(row.count for row in zone_rows(bed, grid, start, end))


def _length_for(bed: Bed, grid: Grid, crop: Crop, plants: int, start: int) -> int:
    """The least length in nm from `start` on that holds so many plants; past the bed's end as if it were plain."""
    if is_plain(bed):
        return _plain_length_for(grid, crop, plants)
    low, high = -1, max(0, bed.zone[1] - start)
    held = _capacity(bed, grid, crop, max(start, bed.zone[0]), start + high)
    if held < plants:
        return high + _plain_length_for(grid, crop, plants - held)
    while high - low > 1:
        middle = (low + high) // 2
        enough = _capacity(bed, grid, crop, max(start, bed.zone[0]), start + middle) >= plants
        low, high = (low, middle) if enough else (middle, high)
    return high


def _plain_length_for(grid: Grid, crop: Crop, plants: int) -> int:
    if grid.pattern is not Pattern.BROADCAST:
        return length_for(grid.pattern, grid.rows, grid.in_row, plants, grid.ends)
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
