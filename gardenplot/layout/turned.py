"""Grids that keep one phase, turned so that their rows run along an edge of their bed instead of along the tape.

A turned layout is an ordinary layout of the bed turned about its origin, between the tape readings of its block. That
frame is exact: there, plants keep all their distances to the nanometre. Corners of the turned bed that do not fall on
whole nanometres are moved inwards, by less than 2 nm across each edge; places turned back are rounded once. So in the
frame of the bed plants stand inside it to within 1 nm, and keep their spacing to within 2 nm.

Rows within half a right angle of the tape keep the edge distance across themselves, as rows along the bed do; steeper
ones keep it at their ends, as rows across it do.

Directions are tried of the bed's longest edges and square to them, up to `DIRECTIONS`, and no other. Round obstacles
turn with their middle. Of rectangular ones plants keep clear as of the circle round them, unless the frame is turned
by a right angle; all obstacles are in the way of all rows, since turned rows have other numbers.
"""

from collections.abc import Iterable
from functools import lru_cache
from itertools import cycle, islice, pairwise, product
from math import dist, hypot, isqrt

from attrs import evolve

from gardenplot.layout.filled import zone_rows
from gardenplot.layout.grids import grid_of
from gardenplot.layout.outline import Interval, Point
from gardenplot.layout.phase import best_phase, searched_phase
from gardenplot.layout.turn import FINE, Turn
from gardenplot.layout.value import Grid, Row, Run
from gardenplot.layout.zone import corners_of, held, is_metric
from gardenplot.plan import Bed, Crop, Direction, Obstacle, Pattern, Planting
from gardenplot.plan.shapes import posts_of
from gardenplot.plan.simple import fault_of
from gardenplot.units import Length, Units, length_of

DIRECTIONS = 12
_PATTERNS = (Pattern.STAGGERED, Pattern.TRIANGULAR, Pattern.CELLS)
_INWARDS = 1.25
"""How far in nm edges are moved inwards where a corner is no whole number: more than rounding moves it back."""


def may_turn(bed: Bed, planting: Planting) -> bool:
    """Whether a planting's grid can be turned: one that keeps its phase, along a bed with edges of its own."""
    has_edges = bool(bed.outline or posts_of(bed))
    return has_edges and planting.pattern in _PATTERNS and planting.direction is Direction.ALONG


@lru_cache(maxsize=512)
def best_turned(
    bed: Bed, crop: Crop, planting: Planting, grid: Grid, start: int, end: int, wanted: int | None
) -> Grid:
    """The grid shifted, or shifted and turned to an edge: turned only where the block from `start` to `end` then
    holds more plants, of those that are wanted if that is a number."""
    best = best_phase(bed, grid, start, end)
    if not may_turn(bed, planting):
        return best
    most = _count(zone_rows(bed, best, start, end))
    for turn in _turns(bed, planting.pattern):
        if wanted is not None and most >= wanted:
            break
        seen = bed_for(bed, turn)
        turned = _turned_grid(seen, crop, planting, grid, turn)
        turned, _proved = searched_phase(seen, turned, start, end, beat=most // grid.per_cell)
        rows = zone_rows(seen, turned, start, end)
        if _count(rows) > most:
            best, most = _without_empty(turned, rows), _count(rows)
    return best


def _turned_grid(seen: Bed, crop: Crop, planting: Planting, grid: Grid, turn: Turn) -> Grid:
    """A planting's grid in its bed as turned rows see it; the ends of steep rows keep what else their sides keep."""
    if not turn.is_steep:
        return evolve(grid_of(seen, crop, planting), turn=turn)
    margin = planting.end_margin or Length(grid.between_least // 2, "")
    swapped = evolve(planting, edge=margin, end_margin=Length(grid.edge_least, ""))
    return evolve(grid_of(seen, crop, swapped), turn=turn, edge_least=grid.edge_least, edge_rule=grid.edge_rule)


def bed_for(bed: Bed, turn: Turn | None) -> Bed:
    """The bed as the rows of a grid see it."""
    return bed if turn is None else _turned_bed(bed, turn)


def first_turned(turn: Turn, rows: tuple[Row, ...], wanted: int) -> tuple[Row, ...]:
    """So many plants of turned rows: those nearest to the head first, and of these those nearest to the base line."""
    places = sorted(place for row in rows for run in row.runs for place in _places(turn, row, run))
    last = places[wanted - 1] if 0 < wanted <= len(places) else None
    if last is None:
        return rows if wanted else ()

    def left(row: Row) -> Iterable[Run]:
        for run in row.runs:
            yield from run.without({number for number, at in enumerate(_places(turn, row, run)) if at > last})

    return tuple(Row(row.offset, tuple(left(row))) for row in rows)


def string_of(bed: Bed, turn: Turn, offset: int, plants: Interval) -> Interval:
    """Where in the turned frame a string over the plants of a row, from first to last, meets the edges of the bed."""
    first, last = plants
    ground = held(bed_for(bed, turn), offset, offset)
    begin = max((left for left, _right in ground if left <= first), default=first)
    end = min((right for _left, right in ground if right >= last), default=last)
    return begin, end


def _places(turn: Turn, row: Row, run: Run) -> Iterable[Point]:
    return (turn.place(run.first + number * run.step, row.offset) for number in range(run.count))


def _count(rows: tuple[Row, ...]) -> int:
    return sum(row.count for row in rows)


def _without_empty(grid: Grid, rows: tuple[Row, ...]) -> Grid:
    """A turned grid without lines on which nothing stands; a line of cells has several rows of plants.

    None of its plants is nearer to the edge than was asked for: lines only hold what is not.
    """
    each = len(rows) // len(grid.offsets)
    lines = zip(grid.offsets, cycle(grid.kinds), strict=False)
    kept = [line for number, line in enumerate(lines) if _count(rows[number * each : (number + 1) * each])]
    offsets, kinds = zip(*kept, strict=True)
    return evolve(grid, offsets=offsets, kinds=kinds, rows=len(kept), edge=max(grid.edge, grid.edge_least))


@lru_cache(maxsize=256)
def _turns(bed: Bed, pattern: Pattern) -> tuple[Turn, ...]:
    """The turns that are tried, those to the longest edges first; cells look the same turned by a right angle."""
    corners = corners_of(bed)
    found: dict[Point, Turn] = {}
    edges = sorted(zip(corners, (*corners[1:], corners[0]), strict=True), key=lambda edge: -dist(*edge))
    for edge, is_square in product(edges, (False, True)):
        turn = Turn(edge, is_square, bed.length.nm)
        if turn.direction[1] and not (pattern is Pattern.CELLS and turn.is_steep):
            found.setdefault(turn.direction, turn)
    moved = (_moved(turn, corners) for turn in islice(found.values(), DIRECTIONS))
    return tuple(turn for turn in moved if fault_of(_turned_corners(corners, turn)) is None)


def _moved(turn: Turn, corners: tuple[Point, ...]) -> Turn:
    """The turn with its frame moved to where the turned bed begins."""
    readings, offsets = zip(*(turn.fine(corner) for corner in corners), strict=True)
    return evolve(turn, origin=(min(readings) >> FINE, min(offsets) >> FINE))


@lru_cache(maxsize=256)
def _turned_bed(bed: Bed, turn: Turn) -> Bed:
    corners = _turned_corners(corners_of(bed), turn)
    units = Units.METRIC if is_metric(bed) else Units.FEET_AND_INCHES
    length, width = (length_of(max(sides), units) for sides in zip(*corners, strict=True))
    return evolve(
        bed, length=length, width=width, head_margin=None, foot_margin=None, box=None,
        outline=tuple((Length(x, ""), Length(y, "")) for x, y in corners),
        obstacles=tuple(_turned_obstacle(one, turn) for one in bed.obstacles),
    )  # fmt: skip


def _turned_corners(corners: tuple[Point, ...], turn: Turn) -> tuple[Point, ...]:
    """The corners of a bed in the turned frame: whole as they are, or moved inwards and then rounded."""
    fine = [turn.fine(corner) for corner in corners]
    around = zip([fine[-1], *fine[:-1]], fine, [*fine[1:], fine[0]], strict=True)
    side = 1 if sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise([*fine, fine[0]])) > 0 else -1
    if turn.is_quarter:
        return tuple(_whole(corner, turn) for corner in fine)
    return tuple(_whole(_inwards(*three, side), turn) for three in around)


def _whole(fine: Point, turn: Turn) -> Point:
    """The nearest whole point of the turned frame."""
    half = 1 << FINE - 1
    return (fine[0] + half >> FINE) - turn.origin[0], (fine[1] + half >> FINE) - turn.origin[1]


def _inwards(before: Point, corner: Point, after: Point, side: int) -> Point:
    """A corner that is not whole, moved to where its edges meet, moved inwards: to the left at a `side` of 1."""
    if not any(at % (1 << FINE) for at in corner):
        return corner
    (x1, y1), (x2, y2) = (_way(before, corner), _way(corner, after))
    by = side * _INWARDS * (1 << FINE) / (1 + x1 * x2 + y1 * y2)
    return corner[0] - round(by * (y1 + y2)), corner[1] + round(by * (x1 + x2))


def _way(one: Point, other: Point) -> tuple[float, float]:
    """The direction from a point to another, 1 long."""
    along, up = other[0] - one[0], other[1] - one[1]
    return along / hypot(along, up), up / hypot(along, up)


def _turned_obstacle(obstacle: Obstacle, turn: Turn) -> Obstacle:
    """An obstacle in the turned frame, and kept clear of by what rounding its middle and a plant may take."""
    x, y = _whole(turn.fine((obstacle.x.nm, obstacle.y.nm)), turn)
    length, width = (one.nm if one else 0 for one in (obstacle.length, obstacle.width))
    clear = obstacle.keep_clear.nm if obstacle.keep_clear else 0
    middle = evolve(obstacle, x=Length(x, ""), y=Length(y, ""), rows=())
    if turn.is_quarter:
        return evolve(middle, length=obstacle.width, width=obstacle.length)
    round_it = obstacle.diameter or Length(isqrt(length**2 + width**2) + 1, "")
    return evolve(middle, diameter=round_it, length=None, width=None, keep_clear=Length(clear + 2, ""))
