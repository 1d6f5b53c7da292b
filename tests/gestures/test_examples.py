"""Every example that stands in an empty field is one that its field would take."""

import re

import pytest
from attrs import evolve

from gardenplot.errors import GardenplotError
from gardenplot.gestures.dates_typed import DATE_FIELDS
from gardenplot.gestures.examples import IN_FEET, example_for
from gardenplot.gestures.ground_typed import GROUND_FIELDS
from gardenplot.gestures.packet import PACKET
from gardenplot.gestures.typed import BED_FIELDS, PLANTING_FIELDS, TypedField
from gardenplot.plan import Pattern, Plan, planting_of
from gardenplot.units import Units
from tests.plans import feet_plan, metric_plan

FIELDS = {field.name: field for field in (*BED_FIELDS, *GROUND_FIELDS, *PLANTING_FIELDS, *DATE_FIELDS)}
OF_BEDS = (*BED_FIELDS, *GROUND_FIELDS)
PACKETS = {field.attribute: field for field in PACKET}


@pytest.mark.parametrize("name", IN_FEET)
def test_an_example_in_feet_is_read_in_a_plan_in_feet(name: str) -> None:
    plan = feet_plan()
    if name in PACKETS:
        assert PACKETS[name].read(IN_FEET[name], plan.place.units)
    else:
        part = "f1" if FIELDS[name] in OF_BEDS else "p3"
        planted = plan if FIELDS[name] in DATE_FIELDS else evolve(plan, plantings=())
        ready = with_offsets(plan, part) if name == "offsets" else planted
        assert FIELDS[name].apply(ready, part, IN_FEET[name]) != ready


def with_offsets(plan: Plan, planting: str) -> Plan:
    other = evolve(planting_of(plan, planting), pattern=Pattern.OFFSETS)
    return evolve(plan, plantings=(other,))


@pytest.mark.parametrize("field", FIELDS.values(), ids=lambda field: str(field.name))
def test_in_a_plan_in_feet_no_example_is_metric(field: TypedField) -> None:
    part = "f1" if field in OF_BEDS else "p3"
    assert not re.search(r"\d (mm|cm|m|°C|l)\b", field.grey(feet_plan(), part))


@pytest.mark.parametrize("name", ["box", "outline", "obstacles"])
def test_an_example_in_metres_is_read_in_a_plan_in_metres(name: str) -> None:
    plan = evolve(metric_plan(), plantings=())
    try:
        assert FIELDS[name].apply(plan, "b2", FIELDS[name].example) != plan
    except GardenplotError as error:
        pytest.fail(str(error))


def test_words_and_metric_examples_stay_as_they_are() -> None:
    assert example_for("in_row", "25 cm", Units.METRIC) == "25 cm"
    assert example_for("in_row", "25 cm", Units.DECIMAL_FEET) == "10 in"
    assert example_for("in_row", "", Units.FEET_AND_INCHES) == ""
    assert example_for("gap", "none", Units.FEET_AND_INCHES) == "none"
