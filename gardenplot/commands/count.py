"""`gardenplot count PLAN [--json] [--csv OUT.csv] [--workings]`: counts of each planting, bed by bed, and in all."""

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Any

from gardenplot.commands.numbers_shape import add_workings, print_workings, workings_shape
from gardenplot.commands.shape import add_json, add_plan, in_mm, opened, print_json, print_table, write_out
from gardenplot.drawing.conventions import convention
from gardenplot.drawing.left_words import left_at_fullest
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import between_readings, rows_by_plants, so_many_planted, titled
from gardenplot.drawing.so_many import so_many_clumps
from gardenplot.drawing.turns import walked
from gardenplot.drawing.workings import bed_numbers
from gardenplot.exports.counts_csv import write_counts
from gardenplot.layout import LaidOut, Layout, free_on, fullest_day, lay_out_bed, lay_out_plan
from gardenplot.layout.place_numbers import readings
from gardenplot.layout.row_numbers import row_numbers
from gardenplot.plan import Plan, Planting, bed_of
from gardenplot.plan.clumps import clump_of
from gardenplot.plan.shapes import map_length_of
from gardenplot.words import _
from gardenplot.working import Number


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)
    add_workings(parser)
    parser.add_argument("--csv", type=Path, metavar="OUT.csv", help=_("write the plants of every row as a table"))


def run(arguments: Namespace) -> int:
    """Print or write the counts; exit status 0."""
    plan = opened(arguments.plan)
    if arguments.csv is not None:
        write_out(arguments.plan, arguments.csv, write_counts(plan))
    elif arguments.json:
        print_json(counts(plan, workings=arguments.workings))
    else:
        _print(plan)
        if arguments.workings:
            _print_workings(plan)
    return 0


def counts(plan: Plan, *, workings: bool = False) -> dict[str, Any]:
    """The counts as JSON values: lengths in mm from the head and from the base line; perhaps with their workings."""
    laid_out = lay_out_plan(plan)
    layouts = {layout.planting: layout for laid in laid_out for layout in laid.layouts}
    return {
        "plantings": [
            _planting(layouts[planting.id]) | workings_shape(plan, _counted(plan, planting), wanted=workings)
            for planting in plan.plantings
        ],
        "beds": [_bed(laid) | workings_shape(plan, bed_numbers(laid), wanted=workings) for laid in laid_out],
        "plants": sum(layout.planted for layout in layouts.values()),
    }


def _counted(plan: Plan, planting: Planting) -> tuple[Number, ...]:
    """The rows, plants and block of a planting, and between which readings it lies."""
    laid = lay_out_bed(plan, bed_of(plan, planting.bed))
    layout = laid.layout_of(planting.id)
    one = next(each for each in laid.grown if each.planting.id == planting.id)
    return (*row_numbers(laid.bed, one, layout), *readings(laid, layout))


def _print_workings(plan: Plan) -> None:
    """How each count came about, planting by planting, and what is left of each bed."""
    look = looks(plan)
    for planting in plan.plantings:
        print(f"\n{titled(plan, planting.id, look)}")
        print_workings(plan, _counted(plan, planting))
    for laid in lay_out_plan(plan):
        print(f"\n{laid.bed.name}")
        print_workings(plan, bed_numbers(laid))


def _planting(layout: Layout) -> dict[str, Any]:
    return {
        "id": layout.planting,
        "bed": layout.bed,
        "crop": layout.crop,
        "pattern": str(layout.grid.pattern),
        "direction": str(layout.grid.direction),
        "rows": layout.rows_planted,
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


def _plants(plan: Plan, layout: Layout) -> str:
    """The plants of a planting as a number alone, or "34 clumps of 4"."""
    clump = clump_of(plan, layout.planting)
    return str(layout.plants) if clump == 1 or layout.holds_trays else so_many_clumps(layout.plants, clump)


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
                _plants(plan, layout),
            )
            for layout in walked(laid)
        ]
    print_table(rows)
    print()
    for laid in lay_out_plan(plan):
        print(f"{laid.bed.name}: {left_at_fullest((laid,), plan.place.units)}")
    layouts = [layout for laid in lay_out_plan(plan) for layout in laid.layouts]
    print(_("{plants} in all").format(plants=so_many_planted(lay_out_plan(plan))))
    for words in dict.fromkeys(convention(layout.grid, plan.place.units) for layout in layouts):
        print(_("Counts: {convention}.").format(convention=words))
