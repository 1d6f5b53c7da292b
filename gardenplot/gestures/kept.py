"""What a planting keeps when it loses what its size or its days came from: its order, or the gap that it filled."""

from typing import Any

from attrs import evolve

from gardenplot.layout import Layout, lay_out_bed
from gardenplot.plan import Plan, Planting, bed_of, crop_of, planting_of
from gardenplot.season import dates_of
from gardenplot.units import MM, Length, Units, length_of


def layout_in(plan: Plan, planting_id: str) -> Layout:
    """The layout of one planting of a plan."""
    return lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed)).layout_of(planting_id)


def fills_gap(planting: Planting) -> bool:
    """Whether a planting has no size of its own."""
    return planting.length is None and planting.plants is None and planting.order is None


def size_kept(planting: Planting, length: int, units: Units) -> dict[str, Any]:
    """The field that keeps a block of so many nm as long as it is once it leaves the gap that it filled."""
    return {"length": length_of(length, units)} if fills_gap(planting) else {}


def kept_without_order(plan: Plan, planting: Planting) -> dict[str, Any]:
    """The fields that keep a planting's plants and its days in the ground once it has no order."""
    if planting.order is None:
        return {}
    meant = dates_of(plan, evolve(planting, actual=None))
    kept: dict[str, Any] = {"in_ground": meant.in_ground, "out": planting.out}
    if planting.length is None and planting.plants is None:
        layout = layout_in(plan, planting.id)
        kept["plants"] = layout.wanted or layout.plants or 1
    return kept


def kept_in_ground(plan: Plan, planting: Planting) -> dict[str, Any]:
    """The fields that keep a block and its rows as they are, whatever becomes of its order, crop, bed and neighbours.

    Its length rules, since that is what is staked out.
    """
    crop, bed, units = crop_of(plan, planting.crop), bed_of(plan, planting.bed), plan.place.units
    layout = layout_in(plan, planting.id)
    kept: dict[str, Any] = {
        "start": start_of(planting, layout.start, units),
        "in_row": planting.in_row or crop.in_row,
        "row_spacing": planting.row_spacing or crop.row_spacing,
        "edge": planting.edge or crop.edge or bed.edge,
    }
    if planting.length is None and layout.length >= MM:
        kept |= {"length": length_of(layout.length, units), "plants": None, "slack": None, "round_up_to": None}
    return kept


def start_of(planting: Planting, at: int, units: Units) -> Length:
    """A tape reading in nm, as it was typed where the planting begins there already."""
    given = planting.start
    return given if given is not None and given.nm == at else length_of(at, units)
