"""Outlines and obstacles are typed as they are shown, and what makes no sense is said at the field."""

import json
from typing import Any

import pytest

from gardenplot.errors import GardenplotError
from gardenplot.gestures.outline_typed import obstacles_text, outline_text
from gardenplot.gestures.typed import BED_FIELDS
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, text_of

OUTLINE = "0 m by 0 m; 6 m by 0 m; 6 m by 80 cm; 2 m by 80 cm; 2 m by 1.6 m; 0 m by 1.6 m"
POST = "post at 3 m by 20 cm, 10 cm round, 15 cm clear; tap at 1 m by 1 m, 30 cm by 20 cm, rows 3"


def box() -> Plan:
    """One plain bed with a block that fills it."""
    parts: dict[str, Any] = {
        "beds": [{"id": "b", "name": "Bed", "length": "6 m", "width": "80 cm"}],
        "crops": [{"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}],
        "plantings": [{"id": "p", "bed": "b", "crop": "c"}],
    }
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def typed(plan: Plan, name: str, text: str) -> Plan:
    """The plan with a text typed into a field of its bed."""
    (field,) = [one for one in BED_FIELDS if one.name == name]
    return field.apply(plan, "b", text)


def per_row(plan: Plan) -> tuple[int, ...]:
    """Plants in each row of the one block."""
    return lay_out_plan(plan)[0].layouts[0].per_row


def test_a_typed_outline_is_planted_at_once_and_kept_as_typed() -> None:
    plan = typed(box(), "outline", OUTLINE)
    assert per_row(plan) == (30, 30, 10, 10)
    assert outline_text(plan, "b") == OUTLINE
    saved = plan_of_text(text_of(plan)).plan
    assert saved == plan
    assert "length" not in json.loads(text_of(plan))["beds"][0]


def test_an_outline_taken_away_leaves_the_rectangle_that_it_reached() -> None:
    plan = typed(typed(box(), "outline", OUTLINE), "outline", "")
    assert per_row(plan) == (30, 30, 30, 30)
    assert (plan.beds[0].length.text, plan.beds[0].width.text) == ("6 m", "1.6 m")


def test_typed_obstacles_are_kept_clear_of_and_shown_as_typed() -> None:
    plan = typed(box(), "obstacles", POST)
    assert per_row(plan) == (28, 30)
    assert obstacles_text(plan, "b") == POST
    assert plan_of_text(text_of(plan)).plan == plan


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("outline", "0 m, 0 m", "no point"),
        ("outline", "0 m by 0 m; 1 m by 1 m", "three points"),
        ("outline", "0 m by 0 m; 2 m by 2 m; 2 m by 0 m; 0 m by 1 m", "crosses"),
        ("outline", "0 m by 0 m; 1 m by 0 m; 2 m by 0 m", "no area"),
        ("outline", "0 m by 0 m; 1 m by 0 m; 1 m by x", "no length"),
        ("obstacles", "post", "no obstacle"),
        ("obstacles", "post at 1 m by 1 m, 20 cm clear", "diameter"),
        ("obstacles", "post at 1 m by 1 m, thick", "no point"),
        ("obstacles", "post at 1 m by 1 m, 10 cm round, rows 0", "counted from 1"),
    ],
)
def test_what_makes_no_sense_is_said_and_changes_nothing(name: str, text: str, says: str) -> None:
    with pytest.raises(GardenplotError, match=says):
        typed(box(), name, text)
