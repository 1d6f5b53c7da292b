"""Trays are set out to harden off in the middle of a bed that is free on their days, and moved as blocks are."""

from typing import Any

import pytest
from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.hardening import try_trays
from gardenplot.gestures.kept import layout_in
from gardenplot.plan import Good, GoodKind, Plan, planting_of
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.units import CM, M, parse_length
from tests.layout.ground import Fields, plan_with

BED: Fields = {"length": "10 m", "width": "75 cm"}
CROP: Fields = {
    "in_row": "20 cm", "row_spacing": "20 cm", "raising_days": 28, "hardening_days": 7, "germination": "90 %",
    "spare": "15 %", "tray_cells": 84,
}  # fmt: skip
GROWN: Fields = {"from": "0 m", "plants": 136, "in_ground": "2027-05-10"}
OTHER: Fields = {"id": "b2", "name": "Other", "length": "3 m", "width": "60 cm"}


def plan_of(*others: Fields, crop: Fields | None = None, **grown: Any) -> Plan:
    return plan_with(BED, CROP | (crop or {}), GROWN | grown, *others)


def test_175_cells_are_three_trays_in_the_middle_of_the_bed() -> None:
    """136 plants, 15 % spare, 90 % germination: 175 cells, 3 trays of 84 (scenario by hand), two abreast."""
    plan = plan_of()
    trial = try_trays(plan, "p1")
    assert trial.can_be
    assert trial.planting is not None
    block = layout_in(trial.plan, trial.planting)
    assert (block.plants, block.length) == (3, 108 * CM)
    assert block.start == (10 * M - 108 * CM) // 2
    assert plan_of_text(text_of(trial.plan)).plan == trial.plan


def test_the_trays_of_the_place_take_their_own_sides() -> None:
    """By hand: 3 trays of 60 x 36 cm in 75 cm, two abreast of 36 each: 2 x 60 cm; of the usual size 2 x 54 cm."""
    own = Good("t", GoodKind.TRAY, cells=84, length=parse_length("60 cm"), width=parse_length("36 cm"))
    other = evolve(own, id="u", cells=104, length=parse_length("1 m"))
    trial = try_trays(evolve(plan_of(), goods=(other, own)), "p1")
    block = layout_in(trial.plan, "p1-trays")
    assert (block.plants, block.length, block.start) == (3, 120 * CM, (10 * M - 120 * CM) // 2)
    assert [offset // CM for offset in block.offsets] == [19, 55]  # (75 - 2 x 36) / 2 + 36 / 2 = 19.5, and 36 on


def test_what_stands_in_the_middle_is_gone_round() -> None:
    there: Fields = {"from": "4 m", "length": "2 m", "in_ground": "2027-03-01", "out": "2027-05-05"}
    block = layout_in(try_trays(plan_of(there), "p1").plan, "p1-trays")
    assert block.end == 4 * M or block.start == 6 * M


def test_a_bed_that_is_full_sends_them_to_another_one() -> None:
    full: Fields = {"from": "0 m", "length": "10 m", "in_ground": "2027-03-01", "out": "2027-05-05"}
    plan = plan_of(full)
    with pytest.raises(PlanError, match="no bed has room for 3 trays"):
        try_trays(plan, "p1")
    two = plan_of_text(text_of(plan)).plan
    other = plan_with(OTHER, CROP).beds[0]
    roomy = evolve(two, beds=(*two.beds, other))
    trial = try_trays(roomy, "p1")
    assert trial.bed == "b2"
    assert planting_of(trial.plan, "p1-trays").hardens == "p1"


@pytest.mark.parametrize(
    ("crop", "says"),
    [
        ({"establish": "direct"}, "is sown in its bed"),
        ({"tray_cells": None}, "no germination or no cells"),
        ({"hardening_days": None}, "not known from when"),
        ({"hardening_days": 0}, "not known from when"),
    ],
)
def test_what_is_not_known_is_said(crop: Fields, says: str) -> None:
    plan = plan_of(crop=crop)
    with pytest.raises(PlanError, match=says):
        try_trays(plan, "p1")


def test_trays_of_trays_are_refused() -> None:
    with pytest.raises(PlanError, match="trays already"):
        try_trays(try_trays(plan_of(), "p1").plan, "p1-trays")
