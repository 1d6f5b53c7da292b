"""How the rows and plants of a layout came about, pattern by pattern, and how its counts treat its ends."""

from collections import Counter
from collections.abc import Callable

from attrs import evolve

from gardenplot.drawing.sayings import TIMES
from gardenplot.drawing.turned_words import angle_words, edge_words
from gardenplot.layout import Grid, Grown, Layout, band_width
from gardenplot.layout.along import ranks_in
from gardenplot.layout.cells import sub_row_offsets
from gardenplot.layout.cross import in_cross_rows
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern, Plan, bed_of
from gardenplot.season import stand_for
from gardenplot.units import Units
from gardenplot.units.figures import Figure, grouped, offset, span
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Trust, Working

_MOST_ADDED = 8
"""More rows than this are added up in groups of as many plants."""
_MOST_RINGS = 6


def row_workings(plan: Plan, one: Grown, layout: Layout) -> list[Working]:
    """The sums of rows and plants, from the width of the bed to the plants that stand."""
    units, bed = plan.place.units, bed_of(plan, layout.bed)
    sums = _cross if layout.grid.runs_across else _SUMS.get(layout.grid.pattern, _along)
    if layout.grid.turn is not None:
        sums = _turned
    found = [*_stand(one), *sums(bed, layout, units), *_added(layout), *_shifted(layout, units)]
    return [evolve(each, source=_SOURCES.get(layout.grid.pattern, RULES)) for each in found]


_SOURCES = {
    Pattern.TRIANGULAR: _("geometry: rows of an equilateral triangle lie its side × √3 ÷ 2 apart"),
    Pattern.RINGS: _("geometry: n chords of a circle are each its diameter × sin(180° ÷ n) long"),
}


def convention(grid: Grid, units: Units) -> str:
    """How plants along a row are counted, wherever a count is shown."""
    if grid.pattern is Pattern.CELLS:
        return _("whole cells of {cell}").format(cell=_o(grid.cell, units))
    if grid.pattern is Pattern.RINGS:
        return _("outer ring {edge} inside").format(edge=_o(grid.edge_least, units))
    if grid.end_margin is None:
        half = _("half a row spacing") if grid.runs_across else _("half a spacing")
        return _("{half} at both ends").format(half=half)
    if grid.end_margin == 0:
        return _("plant on the mark at both ends")
    return _("{margin} at both ends").format(margin=_o(grid.end_margin, units))


_Sums = list[Working]


def _stand(one: Grown) -> _Sums:
    """The plants that an order needs."""
    order = one.order
    if order is None or one.planting.plants is not None or one.planting.length is not None:
        return []
    loss = one.crop.field_loss.text if one.crop.field_loss else "0 %"
    each = f" × {order.plants_per_unit}" if order.plants_per_unit > 1 else ""
    stand = stand_for(order, one.crop)
    return [
        Working(
            _("stand"),
            f"{grouped(order.units)}{each} ÷ (1 − {loss})",
            _("{plants}, up").format(plants=grouped(stand)),
        )
    ]


def _along(bed: Bed, layout: Layout, units: Units) -> _Sums:
    """Straight, staggered and triangular rows."""
    grid = layout.grid
    width, edge, between = (_o(nm, units).number for nm in (grid.width, grid.edge_least, grid.between_least))
    found = [_typed_rows(grid)]
    if grid.rows_asked is None:
        found = [Working(_("rows"), f"({width} − 2 × {edge}) ÷ {between} + 1", _whole(grid.rows))]
    return [*found, *_edge(grid, units), *_a_row(bed, layout, units)] if grid.rows else found


def _typed_rows(grid: Grid) -> Working:
    return Working(_("rows"), _("typed"), str(grid.rows))


def _edge(grid: Grid, units: Units) -> _Sums:
    width, between = _o(grid.width, units).number, _o(grid.between, units).number
    if grid.offsets and grid.offsets[0] != (grid.width - (grid.rows - 1) * grid.between) // 2:
        return [Working(_("edge"), _("rows shifted"), str(_o(grid.edge, units)))]
    return [Working(_("edge"), f"({width} − {grid.rows - 1} × {between}) ÷ 2", str(_o(grid.edge, units)))]


def _twin(bed: Bed, layout: Layout, units: Units) -> _Sums:
    grid = layout.grid
    width, edge, between, twin = (
        _o(nm, units).number for nm in (grid.width, grid.edge_least, grid.between_least, grid.twin)
    )
    pairs = Working(_("pairs"), f"({width} − 2 × {edge} − {twin}) ÷ {between} + 1", _whole(grid.rows // 2))
    found = [pairs if grid.rows_asked is None else _typed_rows(grid)]
    return [*found, *_a_row(bed, layout, units)] if grid.rows else found


def _own(bed: Bed, layout: Layout, units: Units) -> _Sums:
    rows = [_typed_rows(layout.grid)]
    return [*rows, *_a_row(bed, layout, units)] if layout.grid.rows else rows


def _cells(bed: Bed, layout: Layout, units: Units) -> _Sums:
    grid = layout.grid
    width, cell = _o(grid.width, units).number, _o(grid.cell, units).number
    keep = max(0, grid.edge_least - sub_row_offsets(grid.cell, grid.per_cell)[0])
    room = f"({width} − 2 × {_o(keep, units).number})" if keep else width
    across = Working(_("cells across"), f"{room} ÷ {cell}", _whole(grid.rows))
    if grid.rows_asked is not None:
        across = Working(_("cells across"), _("typed"), str(grid.rows))
    each = Working(_("cells"), _("{plants} plants in each").format(plants=grid.per_cell), _cell_count(layout))
    if not is_plain(bed) or not grid.rows:
        return [across, each]
    first, last = bed.zone
    inside = max(0, min(layout.end, last) - max(layout.start, first))
    along = Working(_("cells along"), f"{span(inside, units)} ÷ {_o(grid.cell, units)}", _whole(inside // grid.cell))
    return [across, along, each]


def _turned(bed: Bed, layout: Layout, units: Units) -> _Sums:
    """Rows along an edge: how far apart they are, since no width of the bed tells how many there are."""
    grid = layout.grid
    each = _("{plants} plants in each").format(plants=grid.per_cell)
    if grid.pattern is Pattern.CELLS:
        return [Working(_("cells"), each, _cell_count(layout))]
    apart = _("{between} apart").format(between=_o(grid.between, units))
    return [Working(_("rows"), apart, str(len(layout.rows))), *_a_row(bed, layout, units)]


def _cell_count(layout: Layout) -> str:
    whole, rest = divmod(layout.plants, layout.grid.per_cell)
    return _("{cells}, up").format(cells=grouped(whole + 1)) if rest else grouped(whole)


def _rings(_bed: Bed, layout: Layout, units: Units) -> _Sums:
    """Plants of each ring: as many as keep their spacing along the chord."""
    in_row = _o(layout.grid.in_row, units)
    rings = [ring for ring in layout.rings if ring.count]
    found = [
        Working(
            _("ring of {radius}").format(radius=_o(ring.radius, units)),
            f"180° ÷ asin({in_row.number} ÷ (2 × {_o(ring.radius, units).number}))",
            _whole(ring.count),
        )
        for ring in rings[:_MOST_RINGS]
        if ring.radius and ring.count > 1
    ]
    return [Working(_("rings"), _("{between} apart").format(between=_o(layout.grid.between, units)), str(len(rings))),
            *found]  # fmt: skip


def _cross(bed: Bed, layout: Layout, units: Units) -> _Sums:
    """Rows across the bed: plants in one, and ranks of the block."""
    grid = layout.grid
    width, edge, step = (_o(nm, units).number for nm in (grid.width, grid.edge_least, grid.in_row))
    found = [Working(_("a row"), f"({width} − 2 × {edge}) ÷ {step} + 1", _whole(grid.rows))]
    straight, moved = in_cross_rows(grid)
    if grid.kinds and moved != straight:
        found.append(Working(_("moved row"), f"({width} − 2 × {edge}) ÷ {step} + ½", _whole(moved)))
    first, last = bed.zone
    inside = max(0, min(layout.end, last) - max(layout.start, first))
    if len(layout.rows) == ranks_in(grid.rank, inside, grid.ends):
        found.append(Working(_("rows"), _ground(grid, inside, units), _whole(len(layout.rows))))
    return found


def _band(_bed: Bed, layout: Layout, units: Units) -> _Sums:
    grid = layout.grid
    band = _("{width} − 2 × {edge}").format(width=_o(grid.width, units), edge=_o(grid.edge, units))
    return [Working(_("band"), band, str(_o(band_width(grid), units)))]


_SUMS: dict[Pattern, Callable[[Bed, Layout, Units], _Sums]] = {
    Pattern.TWIN: _twin,
    Pattern.OFFSETS: _own,
    Pattern.CELLS: _cells,
    Pattern.RINGS: _rings,
    Pattern.BROADCAST: _band,
}


def _a_row(bed: Bed, layout: Layout, units: Units) -> _Sums:
    """Plants in a row, from the ground inside the margins where that decides, else from the plants asked for."""
    grid, counts = layout.grid, layout.per_row
    if not is_plain(bed):
        ground = _("its own ground ÷ {spacing}").format(spacing=_o(grid.in_row, units))
        return [Working(_("a row"), ground, _("each its whole part"))]
    first, last = bed.zone
    inside = max(0, min(layout.end, last) - max(layout.start, first))
    if counts[0] != ranks_in(grid.in_row, inside, grid.ends):
        return [
            Working(
                _("a row"),
                f"{grouped(layout.plants)} ÷ {grid.rows}",
                _("{plants}, up").format(plants=grouped(counts[0])),
            )
        ]
    found = [
        *_spread(grid, inside, counts[0], units),
        Working(_("a row"), _ground(grid, inside, units), _whole(counts[0])),
    ]
    moved = max(0, 2 * inside - grid.in_row) // (2 * grid.in_row)
    staggers = grid.pattern.staggers and grid.end_margin is None
    if staggers and grid.rows > 1 and counts[1] == moved:
        found.append(Working(_("moved row"), f"{_ground(grid, inside, units)} − ½", _whole(moved)))
    return found


def _spread(grid: Grid, inside: int, plants: int, units: Units) -> _Sums:
    """A wider spacing that takes up the remainder."""
    if grid.in_row_least is None or not plants:
        return []
    narrow = _o(grid.in_row_least, units)
    sum_ = _("{ground} ÷ {plants}, of what can be marked; at least {narrow}").format(
        ground=span(inside, units), plants=plants, narrow=narrow
    )
    return [Working(_("spread"), sum_, str(_o(grid.in_row, units)))]


def _ground(grid: Grid, inside: int, units: Units) -> str:
    """The ranks of a block: its length, less what is kept free, by its rank."""
    length, rank = span(inside, units), _o(grid.rank, units)
    if grid.end_margin is None:
        return f"{length} ÷ {rank}"
    free = f"({length} − 2 × {_o(grid.end_margin, units)})" if grid.end_margin else str(length)
    return f"{free} ÷ {rank} + 1"


def _added(layout: Layout) -> _Sums:
    """Plants of all rows added up."""
    if layout.grid.pattern is Pattern.BROADCAST:
        return [Working(_("plants"), _("area × rate, whole part"), grouped(layout.plants), Trust.GOOD)]
    if not layout.grid.rows:
        return []
    counts = layout.per_row
    words = " + ".join(grouped(count) for count in counts) or "0"
    if len(counts) > _MOST_ADDED:
        groups = Counter(count for count in counts if count).items()
        words = (
            " + ".join(f"{rows}{TIMES}{grouped(count)}" if rows > 1 else grouped(count) for count, rows in groups)
            or "0"
        )
    if layout.grid.pattern is Pattern.CELLS and layout.plants % layout.grid.per_cell == 0:
        words = f"{grouped(layout.plants // layout.grid.per_cell)}{TIMES}{layout.grid.per_cell}"
    return [Working(_("plants"), words, grouped(layout.plants))]


def _shifted(layout: Layout, units: Units) -> _Sums:
    """What shifting the rows brought, and to which edge they are turned."""
    turn = layout.grid.turn
    found = []
    if turn is not None:
        found.append(Working(_("rows turned"), edge_words(turn, units), angle_words(turn)))
    if layout.gain is None:
        return found
    gained = ngettext("{count} plant more", "{count} plants more", layout.gain).format(count=grouped(layout.gain))
    centred = _("{plants} where they are centred").format(plants=grouped(layout.plants - layout.gain))
    return [*found, Working(_("rows shifted"), centred, gained)]


def _whole(number: int) -> str:
    return _("{number}, whole part").format(number=grouped(number))


def _o(nm: int, units: Units) -> Figure:
    return offset(nm, units)
