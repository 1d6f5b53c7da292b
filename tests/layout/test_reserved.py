"""Places kept for a following crop: one lettuce stands in the way of each tomato, and three answers to that."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.turns import turns
from gardenplot.findings import Kind, find_all
from gardenplot.layout import LaidOut, followers_of, lay_out_plan
from gardenplot.layout.compare import answers
from gardenplot.layout.positions import positions
from gardenplot.layout.reserved import in_the_way
from gardenplot.plan import Plan, Reserved
from gardenplot.plan.edits import change_planting
from gardenplot.plan.file import plan_of_text, read_plan

S3 = read_plan(Path(__file__).parents[1] / "scenarios" / "s3.gardenplot").plan


def only(plan: Plan) -> LaidOut:
    """The one bed of a plan."""
    (laid,) = lay_out_plan(plan)
    return laid


def test_s3_has_exactly_one_lettuce_in_the_way_of_each_tomato() -> None:
    laid = only(S3)
    lettuce, tomato = laid.layouts
    assert (lettuce.plants, tomato.plants) == (207, 23)
    assert in_the_way(lettuce, followers_of(laid, "p1")) == 23
    (finding,) = [one for one in find_all(S3) if one.kind is Kind.IN_THE_WAY]
    assert (finding.planting, finding.other, finding.amount, finding.cannot_be_done) == ("p1", "p2", 23, False)
    assert not [one for one in find_all(S3) if one.kind is Kind.OVERLAP]


def test_s3_the_three_answers_and_whether_they_meet_the_order() -> None:
    assert [(one.reserved, one.plants) for one in answers(S3, "p1")] == [
        (Reserved.CUT_FIRST, 207),
        (Reserved.PLACES_EMPTY, 184),
        (Reserved.ROW_EMPTY, 138),
    ]
    assert answers(S3, "p2") == ()
    kinds = {
        answer: {one.kind for one in find_all(change_planting(S3, "p1", reserved=answer))} for answer in Reserved
    }
    assert not {Kind.IN_THE_WAY, Kind.ORDER_SHORT} & kinds[Reserved.PLACES_EMPTY]
    assert Kind.ORDER_SHORT in kinds[Reserved.ROW_EMPTY]


def test_what_is_out_before_the_crop_that_follows_is_in_nobodys_way() -> None:
    early = change_planting(S3, "p1", out=S3.plantings[1].in_ground, reserved=Reserved.PLACES_EMPTY)
    assert only(early).layouts[0].plants == 207
    assert answers(early, "p1") == ()


def test_without_a_keep_clear_distance_the_two_crops_overlap() -> None:
    assert Kind.OVERLAP in {one.kind for one in find_all(change_planting(S3, "p2", keep_clear=None))}


def test_spring_and_summer_have_a_sheet_each() -> None:
    assert [[layout.planting for layout in turn] for turn in turns(only(S3))] == [["p1"], ["p2"]]


def relay(in_row: int, after: int, clear: int, pattern: str, answer: str) -> Plan:
    """A spring crop in three rows with a following crop on the centre line."""
    parts: dict[str, Any] = {
        "beds": [{"id": "b", "name": "Bed", "length": "8 m", "width": "75 cm"}],
        "crops": [
            {"id": "a", "name": "Leek", "in_row": f"{in_row} cm", "row_spacing": "25 cm", "edge": "10 cm"},
            {"id": "z", "name": "Marrow", "in_row": f"{after} cm", "row_spacing": "75 cm"},
        ],
        "plantings": [
            {"id": "p", "bed": "b", "crop": "a", "length": "8 m", "from": "0 m", "pattern": pattern,
             "reserved": answer, "in_ground": "2027-03-01", "out": "2027-06-01"},
            {"id": "q", "bed": "b", "crop": "z", "length": "8 m", "from": "0 m", "rows": 1,
             "keep_clear": f"{clear} cm", "in_ground": "2027-05-10"},
        ],
    }  # fmt: skip
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


@settings(max_examples=100)
@given(
    st.integers(5, 50),
    st.integers(30, 120),
    st.integers(0, 60),
    st.sampled_from(["straight", "staggered", "triangular"]),
)
def test_just_the_plants_nearer_than_the_distance_are_given_up(
    in_row: int, after: int, clear: int, pattern: str
) -> None:
    before, after_places = (
        [tuple(place) for place in positions(layout).tolist()]
        for layout in only(relay(in_row, after, clear, pattern, "cut first")).layouts
    )
    near = (clear * 10_000_000) ** 2
    free = [(x, y) for x, y in before if all((x - tx) ** 2 + (y - ty) ** 2 >= near for tx, ty in after_places)]
    kept = only(relay(in_row, after, clear, pattern, "leave places empty")).layouts[0]
    assert [tuple(place) for place in positions(kept).tolist()] == free
    assert kept.plants == len(free)


@pytest.mark.parametrize("pattern", ["straight", "staggered"])
def test_a_row_left_empty_is_empty_and_the_others_are_full(pattern: str) -> None:
    full = only(relay(20, 60, 15, pattern, "cut first")).layouts[0]
    kept = only(relay(20, 60, 15, pattern, "leave row empty")).layouts[0]
    assert kept.per_row == (full.per_row[0], 0, full.per_row[2])
