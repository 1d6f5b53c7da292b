"""`gardenplot count PLAN [--json]`: counts of each planting, bed by bed, and in all."""

from argparse import ArgumentParser, Namespace
from typing import Any

from gardenplot.commands.shape import add_json, add_plan, in_mm, opened, print_json, print_table
from gardenplot.drawing.conventions import convention
from gardenplot.drawing.left_words import left_at_fullest
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import between_readings, rows_by_plants, titled
from gardenplot.drawing.turns import walked
from gardenplot.layout import LaidOut, Layout, free_on, fullest_day, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.shapes import map_length_of
from gardenplot.words import _, ngettext


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)


def run(arguments: Namespace) -> int:
    """Print the counts; exit status 0."""
    plan = opened(arguments.plan)
    if arguments.json:
        print_json(counts(plan))
    else:
        _print(plan)
    return 0


def counts(plan: Plan) -> dict[str, Any]:
    """The counts as JSON values: lengths in mm from the head and from the base line."""
    laid_out = lay_out_plan(plan)
    layouts = {layout.planting: layout for laid in laid_out for layout in laid.layouts}
    return {
        "plantings": [_planting(layouts[planting.id]) for planting in plan.plantings],
        "beds": [_bed(laid) for laid in laid_out],
        "plants": sum(layout.planted for layout in layouts.values()),
    }


def _planting(layout: Layout) -> dict[str, Any]:
    return {
        "id": layout.planting,
        "bed": layout.bed,
        "crop": layout.crop,
        "pattern": str(layout.grid.pattern),
        "direction": str(layout.grid.direction),
        "rows": len(layout.per_row),
        "plants": layout.plants,
        "wanted": layout.wanted,
        "plants_per_row": list(layout.per_row),
        "row_offsets_mm": [in_mm(row.offset) for row in layout.rows],
        "ring_radii_mm": [in_mm(ring.radius) for ring in layout.rings],
        "in_row_mm": in_mm(layout.grid.in_row),
        "more_by_best_phase": layout.gain,
        "turned_degrees": round(layout.grid.turn.degrees, 2) if layout.grid.turn else None,
        "ends": "half spacing" if layout.grid.end_margin is None else "margin",
        "end_margin_mm": in_mm(layout.grid.end_margin),
        "from_mm": in_mm(layout.start),
        "to_mm": in_mm(layout.end),
        "first_plant_mm": in_mm(layout.first_plant),
        "last_plant_mm": in_mm(layout.last_plant),
    }


def _bed(laid: LaidOut) -> dict[str, Any]:
    day = fullest_day(laid)
    free = free_on(laid, day)
    return {
        "id": laid.bed.id,
        "map_length_mm": in_mm(map_length_of(laid.bed)),
        "plants": sum(layout.planted for layout in laid.layouts),
        "leftover_mm": in_mm(free.total),
        "leftover_pieces": len(free.leftover),
        "leftover": [{"from_mm": in_mm(one.start), "to_mm": in_mm(one.end)} for one in free.leftover],
        "leftover_on": day.isoformat() if day else None,
    }


def _print(plan: Plan) -> None:
    look = looks(plan)
    rows: list[tuple[str, ...]] = [(_("planting"), _("bed"), _("from – to"), _("rows × plants"), _("plants"))]
    for laid in lay_out_plan(plan):
        rows += [
            (
                titled(plan, layout.planting, look),
                laid.bed.name,
                between_readings(plan, layout.start, layout.end),
                rows_by_plants(layout),
                str(layout.plants),
            )
            for layout in walked(laid)
        ]
    print_table(rows)
    print()
    for laid in lay_out_plan(plan):
        print(f"{laid.bed.name}: {left_at_fullest((laid,), plan.place.units)}")
    total = sum(layout.planted for laid in lay_out_plan(plan) for layout in laid.layouts)
    print(ngettext("{count} plant in all", "{count} plants in all", total).format(count=total))
    layouts = [layout for laid in lay_out_plan(plan) for layout in laid.layouts]
    for words in dict.fromkeys(convention(layout.grid, plan.place.units) for layout in layouts):
        print(_("Counts: {convention}.").format(convention=words))
