"""Trays that harden off stand in a bed as plantings do, on the days that follow from what they are raised for."""

from datetime import date
from typing import Any

import pytest

from gardenplot.commands.count import counts
from gardenplot.drawing.letters import looks, looks_in_hand
from gardenplot.drawing.sayings import counted, name_of
from gardenplot.drawing.tables import counts_by_bed, summary
from gardenplot.errors import FileError
from gardenplot.findings import Kind, find_all
from gardenplot.layout import lay_out_plan
from gardenplot.layout.trays import trays_across
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_planting, remove_planting
from gardenplot.plan.several import remove_plantings
from gardenplot.season import dates_of
from gardenplot.units import CM
from tests.layout.ground import Fields, plan_with

BED: Fields = {"length": "10 m", "width": "75 cm", "edge": "7.5 cm"}
CROP: Fields = {
    "in_row": "30 cm", "row_spacing": "30 cm", "field_days": 35, "raising_days": 28, "hardening_days": 7,
    "germination": "90 %", "tray_cells": 84, "frost": "very tender", "family": "Solanaceae",
}  # fmt: skip
GROWN: Fields = {"from": "0 m", "plants": 20, "in_ground": "2027-05-10"}
TRAYS: Fields = {"from": "4.5 m", "plants": 3, "hardens": "p1"}


def plan_of(trays: Fields | None = None, **more: Any) -> Plan:
    return plan_with(BED, CROP, GROWN, TRAYS | (trays or {}), **more)


def test_trays_stand_from_hardening_off_until_they_are_set_out() -> None:
    plan = plan_of()
    dates = dates_of(plan, plan.plantings[1])
    assert (dates.in_ground, dates.out) == (date(2027, 5, 3), date(2027, 5, 10))
    assert lay_out_plan(plan)[0].grown[1].dates == dates
    later = change_planting(plan, "p1", in_ground=date(2027, 5, 12))
    assert dates_of(later, later.plantings[1]).out == date(2027, 5, 12)


def test_a_tray_covers_its_own_ground_and_no_more() -> None:
    """28 x 54 cm outside: in a bed of 75 cm they lie across it one behind another, 28 cm of its length each."""
    layout = lay_out_plan(plan_of())[0].layout_of("p2")
    assert (layout.plants, layout.end - layout.start) == (3, 84 * CM)
    turned = lay_out_plan(plan_of({"in_row": "54 cm", "row_spacing": "28 cm", "plants": 4}))[0].layout_of("p2")
    assert (len(turned.per_row), turned.plants, turned.end - turned.start) == (2, 4, 108 * CM)


@pytest.mark.parametrize(("width", "along"), [(75, 54), (60, 54), (54, 28), (28, 54), (120, 54), (20, 28)])
def test_trays_lie_the_way_that_takes_the_least_of_a_bed(width: int, along: int) -> None:
    """75 cm: two abreast take 27 cm of bed each, one across 28; 54 cm: one across takes 28, one along 54."""
    assert trays_across(width * CM)[0].nm == along * CM


def test_trays_are_no_plants_in_any_sum_and_need_none_of_the_packet() -> None:
    plan = plan_of()
    assert counts(plan)["plants"] == 20
    assert "20 plants" in summary(plan)
    (bed,) = counts_by_bed(plan)
    assert [row.plants for row in (bed, *bed.inner)] == [20, 20, 0]
    assert bed.inner[1].rows == "3 trays"
    assert name_of(plan, "p2") == "Crop, trays"
    assert counted(lay_out_plan(plan)[0].layout_of("p2")) == "3 trays"
    kinds = {one.kind for one in find_all(plan) if one.planting == "p2"}
    assert not kinds & {Kind.FAMILY, Kind.FROST, Kind.CLOSER_ROWS, Kind.CLOSER_IN_ROW, Kind.EDGE}


def test_trays_take_ground_on_their_days() -> None:
    before = {"from": "4 m", "plants": 10, "in_ground": "2027-03-01", "out": "2027-05-04"}
    plan = plan_with(BED, CROP, GROWN, TRAYS, before)
    assert [(one.planting, one.other) for one in find_all(plan) if one.kind is Kind.OVERLAP] == [("p2", "p3")]
    gone = change_planting(plan, "p3", out=date(2027, 5, 3))
    assert not [one for one in find_all(gone) if one.kind is Kind.OVERLAP]


def test_trays_go_with_what_they_are_raised_for() -> None:
    assert remove_planting(plan_of(), "p1").plantings == ()
    assert remove_plantings(plan_of(), ["p1"]).plantings == ()
    assert len(remove_planting(plan_of(), "p2").plantings) == 1


@pytest.mark.parametrize(
    ("trays", "says"),
    [
        ({"hardens": "p9"}, "no planting “p9” whose trays"),
        ({"hardens": "p2"}, "no planting “p2” whose trays"),
        ({"out": "2027-05-20"}, "follows from the planting"),
    ],
)
def test_trays_of_nothing_or_with_days_of_their_own_are_refused(trays: Fields, says: str) -> None:
    with pytest.raises(FileError, match=says):
        plan_of(trays)


def test_trays_have_the_letter_of_what_they_are_raised_for_and_take_none_from_others() -> None:
    later = {"from": "8 m", "plants": 10, "in_ground": "2027-05-20"}
    plain, plan = plan_with(BED, CROP, GROWN, later), plan_with(BED, CROP, GROWN, TRAYS, later)
    assert [looks(plan)[one].letter for one in ("p1", "p2", "p3")] == ["A", "A", "B"]
    assert looks(plan)["p3"].ink == looks(plain)["p2"].ink
    assert looks_in_hand(plan_with(BED, CROP, GROWN), plan_with(BED, CROP, GROWN, TRAYS))["p2"].letter == "A"
