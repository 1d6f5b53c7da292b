"""`gardenplot supplies PLAN [--json]`: what to raise, sow and cut."""

from argparse import ArgumentParser, Namespace
from typing import Any

from gardenplot.commands.shape import add_json, add_plan, in_mm, opened, print_json, print_table
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Cover, Plan, bed_of
from gardenplot.supplies import CoverCut, Raising, cover_cut, raised_for
from gardenplot.units import MM
from gardenplot.units.figures import span
from gardenplot.words import _, ngettext


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)


def run(arguments: Namespace) -> int:
    """Print the supplies; exit status 0."""
    plan = opened(arguments.plan)
    raised = _raised(plan)
    cuts = [(cover, cover_cut(bed_of(plan, cover.bed), cover)) for cover in plan.covers]
    if arguments.json:
        print_json(
            {
                "plantings": [_planting(planting.id, raised[planting.id]) for planting in plan.plantings],
                "covers": [_cover(cover, cut) for cover, cut in cuts],
            }
        )
        return 0
    _print(plan, raised, cuts)
    return 0


def _raised(plan: Plan) -> dict[str, Raising]:
    return {
        layout.planting: raised_for(one.crop, layout)
        for laid in lay_out_plan(plan)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
    }


def _planting(planting_id: str, raised: Raising) -> dict[str, Any]:
    return {
        "id": planting_id,
        "raise": raised.plants,
        "cells": raised.cells,
        "seeds": raised.seeds,
        "trays": raised.trays,
        "grams": None if raised.grams is None else round(float(raised.grams), 2),
    }


def _cover(cover: Cover, cut: CoverCut) -> dict[str, Any]:
    return {
        "id": cover.id,
        "hoops": cut.hoops,
        "hoop_spacing_mm": None if cut.hoop_spacing is None else float(cut.hoop_spacing / MM),
        "hoop_length_mm": in_mm(cut.hoop_length),
        "cloth_width_mm": in_mm(cut.cloth_width),
        "cloth_length_mm": in_mm(cut.cloth_length),
    }


def _print(plan: Plan, raised: dict[str, Raising], cuts: list[tuple[Cover, CoverCut]]) -> None:
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
    for planting in plan.plantings:
        spill = raised[planting.id].spill
        if spill is not None:
            words = ngettext("{trays} tray would still give about {plants} plants",
                             "{trays} trays would still give about {plants} plants", spill.trays)  # fmt: skip
            print(f"{titled(plan, planting.id, look)}: {words.format(trays=spill.trays, plants=spill.plants)}")
    for cover, cut in cuts:
        print(_cover_line(plan, cover, cut))


def _cover_line(plan: Plan, cover: Cover, cut: CoverCut) -> str:
    units = plan.place.units
    parts = [_("cover {id}, {bed}").format(id=cover.id, bed=bed_of(plan, cover.bed).name)]
    if cut.hoops is not None and cut.hoop_spacing is not None:
        apart = span(round(cut.hoop_spacing), units)
        parts.append(_("{count} hoops {apart} apart").format(count=cut.hoops, apart=apart))
    if cut.hoop_length is not None:
        parts.append(_("cut {length}").format(length=span(cut.hoop_length, units)))
    if cut.cloth_width is not None and cut.cloth_length is not None:
        width, length = span(cut.cloth_width, units), span(cut.cloth_length, units)
        parts.append(_("cloth {width} × {length}").format(width=width, length=length))
    return " · ".join(parts)
