"""One planting's block: its length from its plants or its plants from its length, and its rows filled."""

from functools import lru_cache
from itertools import cycle
from typing import NamedTuple

from gardenplot.layout.along import capacity, length_for, share_out
from gardenplot.layout.band import band_area
from gardenplot.layout.cross import cross_capacity, cross_length_for, cross_rows
from gardenplot.layout.filled import first_plants, first_ranks, plants_in, zone_rows
from gardenplot.layout.grids import grid_of, radii_of
from gardenplot.layout.phase import best_phase
from gardenplot.layout.rings import rings_in
from gardenplot.layout.spread import spread_over
from gardenplot.layout.turned import bed_for, best_turned, first_turned
from gardenplot.layout.value import Grid, Layout, Ring, Row, Run, Runs
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Crop, Order, Pattern, Phase, Planting
from gardenplot.season import stand_for

Block = tuple[int, int]
"""The tape readings between which a planting has the bed, in nm."""


class Sized(NamedTuple):
    """What a planting asks for: its grid, the plants wanted (None where length rules) and the length that was typed.

    The length is in nm, and None where plants rule or where it fills its gap.
    """

    grid: Grid
    wanted: int | None
    length: int | None

    @property
    def fills(self) -> bool:
        """Whether it takes the gap that it is put into; rings take the round of their bed."""
        return self.length is None and (self.wanted is None or self.grid.pattern is Pattern.RINGS)


def sized(bed: Bed, crop: Crop, planting: Planting, order: Order | None) -> Sized:
    """The size that a planting asks for, before its place in the bed is known."""
    grid = grid_of(bed, crop, planting)
    if planting.length is not None:
        return Sized(grid, None, planting.length.nm)
    if planting.plants is not None:
        return Sized(grid, planting.plants, None)
    return Sized(grid, stand_for(order, crop, grid.in_row) if order is not None else None, None)


def length_at(bed: Bed, crop: Crop, planting: Planting, size: Sized, start: int) -> int:
    """The length in nm of a block that begins at `start`, with its slack and rounded up; 0 where it fills its gap."""
    if size.length is not None:
        return size.length
    if size.wanted is None:
        return 0
    grid = _phased(bed, crop, planting, size, start, None)
    length = _length_for(bed, grid, crop, size.wanted, start) + (planting.slack.nm if planting.slack else 0)
    if planting.round_up_to is not None and planting.round_up_to.nm:
        length = -(-length // planting.round_up_to.nm) * planting.round_up_to.nm
    return length


def most_plants(bed: Bed, crop: Crop, planting: Planting, size: Sized, block: Block) -> int:
    """The plants that a block holds which asks for no size: those that `lay_out` would let stand in it."""
    (start, end), (first, last) = block, bed.zone
    grid = _phased(bed, crop, planting, size, start, end)
    return _capacity(bed, grid, crop, max(start, first), min(end, last))


def lay_out(
    bed: Bed, crop: Crop, planting: Planting, size: Sized, block: Block, wider: tuple[int, ...] = ()
) -> Layout:
    """The layout of a block; plants stand only where it lies inside the planting zone.

    Plants that were typed may leave the last rank part-filled; those of an order fill it. `wider` are spacings in the
    row, from narrow to wide, on which the remainder may be spread.
    """
    (start, end), (first, last) = block, bed.zone
    inside = max(start, first), min(end, last)
    grid, wanted = _phased(bed, crop, planting, size, start, end), size.wanted
    if wanted is not None and planting.plants is None and not size.fills:
        least = _length_for(bed, grid, crop, wanted, start)
        wanted = max(wanted, _capacity(bed, grid, crop, start, start + least))
    held = _capacity(bed, grid, crop, *inside)
    plants = held if wanted is None else min(held, wanted)
    gain = None
    if grid is not size.grid and grid != size.grid:
        gain = plants - min(plants, _capacity(bed, size.grid, crop, *inside))
    if wider:
        grid = spread_over(grid, wider, lambda wide: _capacity(bed, wide, crop, *inside) >= plants)
    is_round = grid.pattern is Pattern.RINGS
    offsets, fills = ((), ()) if is_round else _filled(bed, grid, *inside, plants)
    return Layout(
        planting=planting.id,
        bed=bed.id,
        crop=crop.id,
        start=start,
        end=end,
        grid=grid,
        offsets=offsets,
        fills=fills,
        plants=plants,
        wanted=wanted,
        rings=_rings(bed, grid, inside, plants if plants < held else None) if is_round else (),
        gain=gain,
        holds_trays=planting.hardens is not None,
    )


def _phased(bed: Bed, crop: Crop, planting: Planting, size: Sized, start: int, end: int | None) -> Grid:
    """The grid shifted, perhaps turned, where that is asked for: for its block or, where plants decide that, for all
    that follows."""
    if planting.phase is Phase.CENTRED:
        return size.grid
    first, last = bed.zone
    until = last if end is None or size.wanted is not None else min(end, last)
    if planting.phase is Phase.BEST:
        return best_phase(bed, size.grid, max(start, first), until)
    return best_turned(bed, crop, planting, size.grid, max(start, first), until, size.wanted)


def _filled(bed: Bed, grid: Grid, start: int, end: int, plants: int) -> tuple[tuple[int, ...], tuple[Runs, ...]]:
    """The offsets of a block's rows and what fills them by turns."""
    if _is_closed(bed, grid) and not grid.runs_across:
        turn = zip(cycle(grid.kinds), share_out(grid.pattern, grid.rows, plants), strict=False)
        return grid.offsets, tuple([(Run(start + kind.first, kind.step, count),) for kind, count in turn])
    rows = _rows(bed, grid, start, end, plants)
    return tuple(row.offset for row in rows), tuple(row.runs for row in rows)


def _rows(bed: Bed, grid: Grid, start: int, end: int, plants: int) -> tuple[Row, ...]:
    """So many plants of a block's rows, one row after another."""
    if grid.turn is not None:
        held = first_turned(grid.turn, zone_rows(bed_for(bed, grid.turn), grid, start, end), plants)
        return tuple(row for row in held if row.count)
    if _is_closed(bed, grid):
        return cross_rows(grid, start, plants)
    first = first_ranks if grid.runs_across else first_plants
    return first(zone_rows(bed, grid, start, end), plants)


@lru_cache(maxsize=64)
def _rings(bed: Bed, grid: Grid, inside: tuple[int, int], plants: int | None) -> tuple[Ring, ...]:
    radii = radii_of(bed, grid.edge_least, grid.between, grid.in_row)[: grid.rows]
    return rings_in(bed, grid, radii, inside, plants)


def _is_closed(bed: Bed, grid: Grid) -> bool:
    """Whether a closed formula counts the plants: rows in a bed that is a plain rectangle."""
    return is_plain(bed) and grid.pattern is not Pattern.CELLS


def _capacity(bed: Bed, grid: Grid, crop: Crop, start: int, end: int) -> int:
    """Plants that the ground between two tape readings holds."""
    if grid.pattern is Pattern.BROADCAST:
        top, bottom = _density(grid, crop)
        ground = max(0, end - start) * band_width(grid) if is_plain(bed) else band_area(bed, grid.edge, start, end)
        return ground * top // bottom
    if grid.pattern is Pattern.RINGS:
        return sum(ring.count for ring in _rings(bed, grid, (start, end), None))
    if not _is_closed(bed, grid):
        return plants_in(zone_rows(bed_for(bed, grid.turn), grid, start, end))
    if grid.runs_across:
        return cross_capacity(grid, end - start)
    return capacity(grid.pattern, grid.rows, grid.in_row, end - start, grid.ends)


def _length_for(bed: Bed, grid: Grid, crop: Crop, plants: int, start: int) -> int:
    """The least length in nm from `start` on that holds so many plants; past the bed's end as if it were plain."""
    if is_plain(bed):
        return _plain_length_for(grid, crop, plants)
    low, high = -1, max(0, bed.zone[1] - start)
    held = _capacity(bed, grid, crop, max(start, bed.zone[0]), start + high)
    if held < plants:
        return high + _plain_length_for(grid, crop, plants - held)
    guessed = _guessed_length(bed, grid, plants, max(start, bed.zone[0]), start + high) - start
    if _is_least(bed, grid, crop, plants, start, guessed):
        return guessed
    while high - low > 1:
        middle = (low + high) // 2
        enough = _capacity(bed, grid, crop, max(start, bed.zone[0]), start + middle) >= plants
        low, high = (low, middle) if enough else (middle, high)
    return high


def _guessed_length(bed: Bed, grid: Grid, plants: int, start: int, end: int) -> int:
    """Where a block ends whose last plants are those that the ground has there anyhow; nothing where rows differ."""
    if not grid.kinds or grid.turn is not None or grid.pattern is Pattern.CELLS:
        return 0
    return _ends_of(bed, grid, start, end)[plants - 1]


@lru_cache(maxsize=128)
def _ends_of(bed: Bed, grid: Grid, start: int, end: int) -> tuple[int, ...]:
    """The tape readings up to which the plants of a block need ground, the first one first."""
    rows = zip(zone_rows(bed, grid, start, end), cycle(grid.kinds), strict=False)
    if grid.runs_across:
        return tuple(row.offset + grid.ends[1] for row, _kind in rows for _plant in range(row.count))
    runs = ((run, kind) for row, kind in rows for run in row.runs)
    return tuple(
        sorted(run.first + number * run.step + kind.ends[1] for run, kind in runs for number in range(run.count))
    )


def _is_least(bed: Bed, grid: Grid, crop: Crop, plants: int, start: int, length: int) -> bool:
    """Whether a block of that length holds so many plants, and one that is a nanometre shorter does not."""
    first = max(start, bed.zone[0])
    is_enough = length > 0 and _capacity(bed, grid, crop, first, start + length) >= plants
    return is_enough and _capacity(bed, grid, crop, first, start + length - 1) < plants


def _plain_length_for(grid: Grid, crop: Crop, plants: int) -> int:
    if grid.pattern is Pattern.CELLS:
        return -(-plants // (grid.rows * grid.per_cell)) * grid.cell if grid.rows else 0
    if grid.pattern is not Pattern.BROADCAST:
        if grid.runs_across:
            return cross_length_for(grid, plants)
        return length_for(grid.pattern, grid.rows, grid.in_row, plants, grid.ends)
    top, bottom = _density(grid, crop)
    across = band_width(grid) * top
    return -(-plants * bottom // across) if across else 0


def band_width(grid: Grid) -> int:
    """Width in nm of a broadcast band: the bed less what is kept clear at both edges."""
    return max(0, grid.width - 2 * grid.edge)


def has_room(grid: Grid) -> bool:
    """Whether a row, a cell, a ring or a band fits across the bed at all."""
    return band_width(grid) > 0 if grid.pattern is Pattern.BROADCAST else grid.rows > 0


def _density(grid: Grid, crop: Crop) -> tuple[int, int]:
    """Plants per square nanometre as a fraction: the crop's rate, else one in each in-row x row spacing."""
    if crop.plants_per_area is None:
        return 1, grid.in_row * grid.between_least
    return crop.plants_per_area.per_nm2.numerator, crop.plants_per_area.per_nm2.denominator
