"""How the numbers of a layout came about: each sum with the numbers put in."""

from gardenplot.layout import Grid, Grown, Layout, band_width
from gardenplot.layout.along import ranks_in
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Pattern, Plan, bed_of
from gardenplot.season import stand_for
from gardenplot.supplies import raising
from gardenplot.units import Units
from gardenplot.units.figures import Figure, offset, span
from gardenplot.words import _, ngettext
from gardenplot.working import Trust, Working

RULES = "common practice, no source"


def workings(plan: Plan, one: Grown, layout: Layout) -> tuple[Working, ...]:
    """The sums behind a planting, from the width of its bed to the trays that raise it."""
    units = plan.place.units
    return (*_rows(layout, units), *_plants(plan, one, layout), *_raise(plan, one, layout))


def _rows(layout: Layout, units: Units) -> list[Working]:
    grid = layout.grid
    if grid.pattern is Pattern.BROADCAST:
        band = _("{width} − 2 × {edge}").format(width=_o(grid.width, units), edge=_o(grid.edge, units))
        return [Working(_("band"), band, str(_o(band_width(grid), units)))]
    if grid.rows_asked is not None:
        found = [Working(_("rows"), _("typed"), str(grid.rows))]
    else:
        width, edge, between = (_o(nm, units).number for nm in (grid.width, grid.edge_least, grid.between_least))
        found = [
            Working(
                _("rows"), f"({width} − 2 × {edge}) ÷ {between} + 1", _("{rows}, whole part").format(rows=grid.rows)
            )
        ]
    if grid.rows:
        width, between = _o(grid.width, units).number, _o(grid.between, units).number
        found.append(Working(_("edge"), f"({width} − {grid.rows - 1} × {between}) ÷ 2", str(_o(grid.edge, units))))
    return found


def _plants(plan: Plan, one: Grown, layout: Layout) -> list[Working]:
    found, grid, units = [], layout.grid, plan.place.units
    order = one.order
    if order is not None and one.planting.plants is None and one.planting.length is None:
        loss = one.crop.field_loss.text if one.crop.field_loss else "0 %"
        each = f" × {order.plants_per_unit}" if order.plants_per_unit > 1 else ""
        stand = stand_for(order, one.crop)
        found.append(
            Working(_("stand"), f"{order.units}{each} ÷ (1 − {loss})", _("{plants}, up").format(plants=stand))
        )
    if grid.pattern is Pattern.BROADCAST:
        found.append(Working(_("plants"), _("area × rate, whole part"), str(layout.plants), Trust.GOOD))
        return found
    if not grid.rows:
        return found
    found += _a_row(plan, layout, units)
    found.append(Working(_("plants"), " + ".join(str(count) for count in layout.per_row), str(layout.plants)))
    return found


def _a_row(plan: Plan, layout: Layout, units: Units) -> list[Working]:
    """Plants in a row, from the ground inside the margins where that decides, else from the plants asked for."""
    grid, counts, bed = layout.grid, layout.per_row, bed_of(plan, layout.bed)
    if not is_plain(bed):
        return [Working(_("a row"), _("its own ground ÷ {spacing}").format(spacing=_o(grid.in_row, units)),
                        _("each its whole part"))]  # fmt: skip
    first, last = bed.zone
    inside = max(0, min(layout.end, last) - max(layout.start, first))
    if counts[0] != ranks_in(grid.in_row, inside, grid.ends):
        return [Working(_("a row"), f"{layout.plants} ÷ {grid.rows}", _("{plants}, up").format(plants=counts[0]))]
    ground = f"{span(inside, units)} ÷ {_o(grid.in_row, units)}"
    if grid.end_margin is not None:
        free = (
            f"({span(inside, units)} − 2 × {_o(grid.end_margin, units)})" if grid.end_margin else span(inside, units)
        )
        return [Working(_("a row"), f"{free} ÷ {_o(grid.in_row, units)} + 1",
                        _("{plants}, whole part").format(plants=counts[0]))]  # fmt: skip
    found = [Working(_("a row"), ground, _("{plants}, whole part").format(plants=counts[0]))]
    moved = max(0, 2 * inside - grid.in_row) // (2 * grid.in_row)
    if grid.pattern is not Pattern.STRAIGHT and grid.rows > 1 and counts[1] == moved:
        found.append(Working(_("moved row"), f"{ground} − ½", _("{plants}, whole part").format(plants=moved)))
    return found


def _raise(plan: Plan, one: Grown, layout: Layout) -> list[Working]:
    made = raising(one.crop, layout.plants, layout.grid.in_row)
    found = []
    if made.plants is None and made.seeds is not None:
        row = span(layout.plants * layout.grid.in_row, plan.place.units)
        slack = f" × (1 + {one.crop.seeder_slack})" if one.crop.seeder_slack else ""
        sown = f"{row} × {one.crop.seeds_per_row}{slack}"
        found.append(Working(_("seeds"), sown, _("{seeds}, up").format(seeds=made.seeds), Trust.GOOD, RULES))
    if made.plants is not None and one.crop.spare is not None:
        found.append(
            Working(
                _("raise"),
                f"{layout.plants} × (1 + {one.crop.spare})",
                _("{plants}, up").format(plants=made.plants),
                Trust.GOOD,
                RULES,
            )
        )
    if made.cells is not None and one.crop.germination is not None:
        seeds = one.crop.seeds_per_cell or 1
        usable = str(one.crop.germination) if seeds == 1 else f"(1 − (1 − {one.crop.germination})^{seeds})"
        found.append(
            Working(
                _("cells"), f"{made.plants} ÷ {usable}", _("{cells}, up").format(cells=made.cells), Trust.GOOD, RULES
            )
        )
    if made.trays is not None:
        found.append(
            Working(
                _("trays"),
                f"{made.cells} ÷ {one.crop.tray_cells}",
                _("{trays}, up").format(trays=made.trays),
                Trust.GOOD,
                RULES,
            )
        )
    return found


def convention(grid: Grid, units: Units) -> str:
    """How plants along a row are counted, wherever a count is shown."""
    if grid.end_margin is None:
        return _("half a spacing at both ends")
    if grid.end_margin == 0:
        return _("plant on the mark at both ends")
    return _("{margin} at both ends").format(margin=_o(grid.end_margin, units))


def trays_line(one: Grown, layout: Layout) -> str:
    """What to raise in words: "157 plants, 175 cells, 3 trays of 84; 2 trays still give about 151"."""
    made = raising(one.crop, layout.plants, layout.grid.in_row)
    parts = []
    if made.plants is not None:
        parts.append(ngettext("{count} plant", "{count} plants", made.plants).format(count=made.plants))
    if made.cells is not None:
        parts.append(ngettext("{count} cell", "{count} cells", made.cells).format(count=made.cells))
    if made.trays is not None:
        trays = ngettext("{count} tray of {cells}", "{count} trays of {cells}", made.trays)
        parts.append(trays.format(count=made.trays, cells=one.crop.tray_cells))
    if made.plants is None and made.seeds is not None:
        parts.append(ngettext("{count} seed", "{count} seeds", made.seeds).format(count=made.seeds))
    words = ", ".join(parts)
    if made.spill is not None:
        still = ngettext(
            "{trays} tray still gives about {plants}", "{trays} trays still give about {plants}", made.spill.trays
        )
        words += "; " + still.format(trays=made.spill.trays, plants=made.spill.plants)
    return words


def _o(nm: int, units: Units) -> Figure:
    return offset(nm, units)
