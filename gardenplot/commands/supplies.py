"""`gardenplot supplies PLAN [--json] [--list]`: what to raise, sow, cut, buy and carry."""

from argparse import ArgumentParser, Namespace
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from gardenplot.commands.carry import carry_shapes, print_carry
from gardenplot.commands.numbers_shape import add_workings, print_working, working_shape
from gardenplot.commands.shape import (
    NO_PAPER,
    add_json,
    add_plan,
    asked,
    in_mm,
    named_beds,
    opened,
    print_json,
    print_table,
    write_out,
)
from gardenplot.drawing.cautions import cautions_of
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.shopping_list import ShopGroup, cost_words, shop_groups
from gardenplot.drawing.sowing_list import spill_words
from gardenplot.drawing.supply_words import supply_lines
from gardenplot.drawing.tables import LIST_COLUMNS
from gardenplot.drawing.workings import bought_words, stand_words
from gardenplot.exports.shopping_csv import write_list
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Bed, Cover, Jugs, Plan, bed_of, planting_of
from gardenplot.plan.clumps import clump_of
from gardenplot.plan.shapes import area_of
from gardenplot.season import dates_of
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper
from gardenplot.supplies import CoverCut, Raising, cover_cut, raised_for
from gardenplot.supplies.feeding import fed
from gardenplot.supplies.jugs import jug_heat
from gardenplot.supplies.shopping import Asked
from gardenplot.supplies.water import bed_water
from gardenplot.units import MM
from gardenplot.units.figures import span
from gardenplot.words import _


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)
    parser.add_argument("--list", action="store_true", help=_("print what to buy and carry, less what is in store"))
    parser.add_argument("--csv", type=Path, metavar="OUT.csv", help=_("write that list as a table"))
    parser.add_argument("--pdf", type=Path, metavar="OUT.pdf", help=_("write that list to print"))
    parser.add_argument(
        "--paper", type=asked(Paper, NO_PAPER), choices=list(Paper), default=Paper.A4, help=_("a4 or letter")
    )
    parser.add_argument("--bed", action="append", metavar="ID", help=_("only for this bed; may be given again"))
    parser.add_argument("--from", dest="first", type=_day, metavar="DAY", help=_("only what is needed from this day"))
    parser.add_argument("--to", dest="last", type=_day, metavar="DAY", help=_("only what is needed until this day"))
    add_workings(parser)


_day = asked(date.fromisoformat, _("“{typed}” is no date: write it like 2027-04-09"))


def run(arguments: Namespace) -> int:
    """Print the supplies; exit status 0. Raises PlanError for a bed that the plan does not have."""
    plan = opened(arguments.plan)
    beds = named_beds(plan, arguments.bed)
    asked = Asked(beds, arguments.first, arguments.last)
    if arguments.csv is not None:
        write_out(arguments.plan, arguments.csv, write_list(shop_groups(plan, asked)))
    elif arguments.pdf is not None:
        made = printed(
            plan, arguments.paper, [Kind.LIST], choices=Choices(beds, arguments.first, arguments.last),
            name=arguments.plan.stem, day=date.today(),
        )  # fmt: skip
        write_out(arguments.plan, arguments.pdf, made.pdf)
    elif arguments.json:
        print_json(_all(plan, asked))
    elif arguments.list:
        _print_list(plan, shop_groups(plan, asked), workings=arguments.workings)
    else:
        _print(plan, asked, workings=arguments.workings)
    return 0


def _all(plan: Plan, asked: Asked) -> dict[str, Any]:
    raised, groups = _raised(plan), shop_groups(plan, asked)
    return {
        "plantings": [_planting(plan, planting.id, raised[planting.id]) for planting in plan.plantings],
        "covers": [_cover(plan, cover, cover_cut(bed_of(plan, cover.bed), cover)) for cover in plan.covers],
        "jugs": [_jugs(plan, jugs) for jugs in plan.jugs],
        "beds": [_bed(plan, bed) for bed in plan.beds],
        "carry": carry_shapes(plan, asked),
        "list": [_item(plan, group, number) for group in groups for number in range(len(group.rows))],
        "cost": cost_words(plan, groups) or None,
    }


def _raised(plan: Plan) -> dict[str, Raising]:
    return {
        layout.planting: raised_for(one, layout)
        for laid in lay_out_plan(plan)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
    }


def _planting(plan: Plan, planting_id: str, raised: Raising) -> dict[str, Any]:
    set_out = dates_of(plan, planting_of(plan, planting_id)).in_ground if raised.bought is not None else None
    numbers = (
        raised.bought, raised.raised, raised.to_sow, raised.seed, raised.filled, raised.weight, raised.stand,
        raised.thinned,
    )  # fmt: skip
    return {
        "id": planting_id,
        "raise": raised.plants,
        "cells": raised.cells,
        "seeds": raised.seeds,
        "trays": raised.trays,
        "buy_in": raised.bought.whole if raised.bought else None,
        "buy_in_by": set_out.isoformat() if set_out else None,
        "clump": clump_of(plan, planting_id),
        "final_stand": raised.stand.whole if raised.stand else None,
        "thinned": raised.thinned.whole if raised.thinned else None,
        "grams": None if raised.grams is None else round(float(raised.grams), 2),
        "workings": [working_shape(plan, number) for number in numbers if number is not None],
    }


def _cover(plan: Plan, cover: Cover, cut: CoverCut) -> dict[str, Any]:
    return {
        "id": cover.id,
        "hoops": cut.hoops,
        "hoop_spacing_mm": None if cut.hoop_spacing is None else float(cut.hoop_spacing / MM),
        "hoop_length_mm": in_mm(cut.hoop_length),
        "cloth_width_mm": in_mm(cut.cloth_width),
        "cloth_length_mm": in_mm(cut.cloth_length),
        "cloth_layers": cut.cloth.layers.whole if cut.cloth else None,
        "film_width_mm": in_mm(cut.film.width.whole if cut.film else None),
        "film_length_mm": in_mm(cut.film.length.whole if cut.film else None),
        "weights": cut.weights.whole if cut.weights else None,
        "workings": [working_shape(plan, number) for number in cut.numbers],
    }


def _jugs(plan: Plan, jugs: Jugs) -> dict[str, Any]:
    found = jug_heat(bed_of(plan, jugs.bed), jugs)
    return {
        "id": jugs.id,
        "jugs": found.count.whole,
        "workings": [working_shape(plan, number) for number in found.numbers],
    }


def _bed(plan: Plan, bed: Bed) -> dict[str, Any]:
    feeds = [fed(feed, area_of(bed)) for feed in plan.feeds if not feed.beds or bed.id in feed.beds]
    numbers = (*bed_water(plan.place, bed, area_of(bed)).numbers, *feeds)
    return {"id": bed.id, "workings": [working_shape(plan, number) for number in numbers]}


def _item(plan: Plan, group: ShopGroup, number: int) -> dict[str, Any]:
    row = group.rows[number]
    what, needed, stored, to_buy, cost = row.cells
    item = row.item
    numbers = item.needed, item.in_all, item.lacking, item.packs, item.cost
    return {
        "group": group.name, "kind": str(item.kind), "what": what, "needed": needed, "in_store": stored or None,
        "to_buy": to_buy or None, "packs": item.packs.whole, "cost": cost or None,
        "filled_in_all": item.in_all.whole if item.in_all else None,
        "workings": [working_shape(plan, one) for one in numbers if one is not None],
    }  # fmt: skip


def _print(plan: Plan, asked: Asked, *, workings: bool) -> None:
    raised = _raised(plan)
    _print_raising(plan, raised)
    for cover in plan.covers:
        cut = cover_cut(bed_of(plan, cover.bed), cover)
        print(_cover_line(plan, cover, cut))
    for bed in plan.beds:
        for line in supply_lines(plan, bed.id)[1:]:
            print(f"{bed.name}: {line}")
    print_carry(plan, asked)
    print()
    _print_cautions(shop_groups(plan, asked))
    for planting in plan.plantings if workings else ():
        one = raised[planting.id]
        last = one.filled if one.trays is not None else one.weight if one.grams is not None else one.seed
        if last is not None:
            print(f"\n{titled(plan, planting.id, looks(plan))}")
            print_working(plan, last)


def _print_cautions(groups: tuple[ShopGroup, ...]) -> None:
    """What is said of what is needed, each once."""
    for words in cautions_of(row.item.kind for group in groups for row in group.rows):
        print(words)


def _print_raising(plan: Plan, raised: Mapping[str, Raising]) -> None:
    """What is raised of each planting, what one tray less would give, and what is thinned out."""
    look = looks(plan)
    rows: list[tuple[str, ...]] = [(_("planting"), _("raise"), _("cells"), _("seeds"), _("trays"), _("grams"))]
    for planting in plan.plantings:
        one = raised[planting.id]
        grams = "–" if one.grams is None else f"{float(one.grams):.1f}"
        counts = (one.plants, one.cells, one.seeds, one.trays)
        rows.append(
            (titled(plan, planting.id, look), *("–" if count is None else str(count) for count in counts), grams)
        )
    print_table(rows)
    for laid in lay_out_plan(plan):
        for grown, layout in zip(laid.grown, laid.layouts, strict=True):
            made = raised[layout.planting]
            for words in filter(
                None, (spill_words(grown.crop, made), *bought_words(grown.crop, made), *stand_words(grown, layout))
            ):
                print(f"{titled(plan, layout.planting, look)}: {words}")


def _cover_line(plan: Plan, cover: Cover, cut: CoverCut) -> str:
    units = plan.place.units
    parts = [_("cover {id}, {bed}").format(id=cover.id, bed=bed_of(plan, cover.bed).name)]
    if cut.hoops is not None and cut.hoop_spacing is not None:
        apart = span(round(cut.hoop_spacing), units)
        parts.append(_("{count} hoops {apart} apart").format(count=cut.hoops, apart=apart))
    if cut.hoop_length is not None:
        parts.append(_("cut {length}").format(length=span(cut.hoop_length, units)))
    for sheet in cut.sheets:
        if sheet.width.whole is not None and sheet.length.whole is not None:
            width, length = span(sheet.width.whole, units), span(sheet.length.whole, units)
            words = _("film {width} × {length}") if sheet is cut.film else _("cloth {width} × {length}")
            layers = sheet.layers.whole or 1
            times = _("{count} layers of ").format(count=layers) if layers > 1 else ""
            parts.append(times + words.format(width=width, length=length))
    return " · ".join(parts)


def _print_list(plan: Plan, groups: tuple[ShopGroup, ...], *, workings: bool) -> None:
    if not groups:
        print(_("nothing is needed"))
        return
    rows: list[tuple[str, ...]] = [LIST_COLUMNS]
    for group in groups:
        rows.append((group.name, "", "", "", ""))
        rows += [(f"  {row.cells[0]}", *row.cells[1:]) for row in group.rows]
    print_table(rows)
    cost = cost_words(plan, groups)
    if cost:
        print(_("cost: {cost}").format(cost=cost))
    _print_cautions(groups)
    if workings:
        for row in (row for group in groups for row in group.rows):
            print(f"\n{row.cells[0]}")
            print_working(plan, row.item.cost if row.item.cost.value is not None else row.item.lacking)
