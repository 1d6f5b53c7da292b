"""Two spacings of a block as a surveyor dimensions them: from plant to plant in a row, and from row to row."""

from attrs import frozen

from gardenplot.drawing.handles import Point, Zoom
from gardenplot.layout import Layout
from gardenplot.layout.value import Row, Run
from gardenplot.plan import Pattern
from gardenplot.units import MM, Units
from gardenplot.units.figures import apart

_LEAST = 44.0
"""Pixels that a spacing must have for its figure."""
_CLOSE = 90.0
"""Pixels between rows from which their spacing is shown although the one in the row is too small for its figure."""
_BARE = (Pattern.CELLS, Pattern.RINGS, Pattern.BROADCAST)
"""Patterns that say by their lines how far apart plants stand, or have no rows."""
Stretch = tuple[float, float]
"""From where to where, in nm."""


@frozen
class Dimension:
    """A distance shown: a line between two points, the points `feet` that it is measured between, and the figure.

    All points are in nm in the frame of the bed.
    """

    start: Point
    end: Point
    feet: tuple[Point, Point]
    words: str


@frozen
class _Seen:
    """What of a block is in sight, along its rows and across them, in pixels per mm both ways."""

    layout: Layout
    along: Stretch
    across: Stretch
    zoom: Zoom

    def point(self, along: float, across: float) -> Point:
        """A place given along and across the rows, in the frame of the bed, all in nm."""
        return (round(across), round(along)) if self.layout.grid.runs_across else (round(along), round(across))


def spacings(layout: Layout, zoom: Zoom, along: Stretch, across: Stretch, units: Units) -> tuple[Dimension, ...]:
    """One spacing in the row and one between rows near the middle of what is in sight, where they are large enough.

    `along` and `across` are from where to where the bed is in sight, in nm along the tape and from the base line.
    """
    grid = layout.grid
    if grid.pattern in _BARE or grid.turn is not None:
        return ()
    along = max(along[0], layout.start), min(along[1], layout.end)
    if grid.runs_across:
        zoom, along, across = Zoom(zoom.across, zoom.along), across, along
    in_row, between = grid.in_row / MM * zoom.along, max(grid.between, grid.twin) / MM * zoom.across
    if max(in_row / _LEAST, between / _CLOSE) < 1:
        return ()
    return _dimensions(_Seen(layout, along, across, zoom), units)


def _dimensions(seen: _Seen, units: Units) -> tuple[Dimension, ...]:
    rows = [row for row in seen.layout.rows if seen.across[0] <= row.offset <= seen.across[1]]
    gaps = [(_off_middle(row.offset, seen.across), row, gap) for row in rows for gap in _gap(row, seen.along)]
    if not gaps:
        return ()
    _off, row, (first, step) = min(gaps, key=lambda one: one[0])
    other = _beside(row, rows)
    found = []
    if step / MM * seen.zoom.along >= _LEAST:
        half = (row.offset + other.offset) / 2 if other else row.offset + seen.layout.grid.edge / 2
        ends = [seen.point(at, half) for at in (first, first + step)]
        feet = seen.point(first, row.offset), seen.point(first + step, row.offset)
        found.append(Dimension(ends[0], ends[1], feet, str(apart(step, units))))
    if other and abs(other.offset - row.offset) / MM * seen.zoom.across >= _LEAST:
        ahead = 1.5 if step / MM * seen.zoom.along >= 2 * _LEAST else 2.5
        at = first + ahead * step if first + (ahead + 0.5) * step <= seen.along[1] else first - (ahead - 1) * step
        # Where little is in sight it stands at the edge of that rather than beyond.
        at = max(seen.along[0], min(at, seen.along[1]))
        one, two = seen.point(at, row.offset), seen.point(at, other.offset)
        found.append(Dimension(one, two, (one, two), str(apart(abs(other.offset - row.offset), units))))
    return tuple(found)


def _off_middle(at: float, stretch: Stretch) -> float:
    return abs(at - (stretch[0] + stretch[1]) / 2)


def _gap(row: Row, along: Stretch) -> list[tuple[int, int]]:
    """The first of two plants next to each other, both in sight, nearest to its middle, and their distance."""
    found = [(run.first + _number(run, along) * run.step, run.step) for run in row.runs if run.count > 1]
    seen = [one for one in found if along[0] <= one[0] and one[0] + one[1] <= along[1]]
    return [min(seen, key=lambda one: _off_middle(one[0] + one[1] / 2, along))] if seen else []


def _number(run: Run, along: Stretch) -> int:
    """The number of the plant, from 0, before the gap nearest to the middle of what is in sight."""
    middle = (along[0] + along[1]) / 2
    return max(0, min(run.count - 2, round((middle - run.first) / run.step - 0.5)))


def _beside(row: Row, rows: list[Row]) -> Row | None:
    """The next row in sight, or the one before."""
    at = rows.index(row)
    return rows[at + 1] if at + 1 < len(rows) else rows[at - 1] if at else None
