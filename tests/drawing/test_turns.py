"""The turns of a bed: what stands side by side, until ground is cleared and replanted."""

from itertools import combinations, pairwise

from hypothesis import given, settings

from gardenplot.drawing.turns import turns, walked
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.season import share_days
from tests.drawing.hand_worked import hand_worked, only_bed
from tests.layout.ground import Fields, laid_out
from tests.plans import plans

BED: Fields = {"length": "10 m", "width": "75 cm"}
CROP: Fields = {"in_row": "20 cm", "row_spacing": "25 cm"}
SPRING: Fields = {"in_ground": "2027-03-01", "out": "2027-05-15"}
SUMMER: Fields = {"in_ground": "2027-05-15", "out": "2027-08-15"}
AUTUMN: Fields = {"in_ground": "2027-08-15"}


def in_turns(*plantings: Fields) -> list[list[str]]:
    """The turns of a bed with those plantings, p1, p2 ..."""
    return [[layout.planting for layout in turn] for turn in turns(laid_out(BED, CROP, *plantings))]


def block(start: str, length: str = "2 m") -> Fields:
    return {"from": start, "length": length}


def test_a_summer_crop_on_the_ground_of_a_spring_crop_is_a_second_turn() -> None:
    assert in_turns(block("1 m") | SPRING, block("1 m") | SUMMER) == [["p1"], ["p2"]]


def test_a_part_of_the_same_ground_is_enough() -> None:
    assert in_turns(block("1 m") | SPRING, block("2.99 m") | SUMMER) == [["p1"], ["p2"]]


def test_a_summer_crop_beside_a_spring_crop_is_in_the_same_turn() -> None:
    assert in_turns(block("1 m") | SPRING, block("3 m") | SUMMER) == [["p1", "p2"]]


def test_what_still_stands_belongs_to_both_turns() -> None:
    long_lived = {"in_ground": "2027-03-01", "out": "2027-09-01"}
    assert in_turns(block("5 m") | long_lived, block("1 m") | SPRING, block("1 m") | SUMMER) == [
        ["p2", "p1"],
        ["p3", "p1"],
    ]


def test_three_crops_one_after_another_are_three_turns() -> None:
    assert in_turns(block("1 m") | AUTUMN, block("1 m") | SPRING, block("1 m") | SUMMER) == [["p2"], ["p3"], ["p1"]]


def test_two_crops_on_the_same_ground_on_the_same_days_are_one_turn_however_wrong() -> None:
    assert in_turns(block("1 m") | SPRING, block("1 m") | SPRING) == [["p1", "p2"]]


def test_crops_without_dates_stand_side_by_side_from_the_head_on() -> None:
    assert in_turns(block("5 m"), block("1 m")) == [["p2", "p1"]]


def test_a_bed_without_plantings_has_one_empty_turn() -> None:
    assert in_turns() == [[]]


def test_the_tomatoes_of_s3_follow_the_lettuce() -> None:
    laid = only_bed(hand_worked("s3"))
    assert [[layout.crop for layout in turn] for turn in turns(laid)] == [["lettuce"], ["tomato"]]


@settings(max_examples=25)
@given(plans())
def test_every_planting_is_in_a_turn_and_no_turn_has_the_same_ground_one_after_another(plan: Plan) -> None:
    for laid in lay_out_plan(plan):
        found = turns(laid)
        dates = {one.planting.id: one.dates for one in laid.grown}
        assert {layout for turn in found for layout in turn} == set(laid.layouts)
        for turn in found:
            assert [layout.start for layout in turn] == sorted(layout.start for layout in turn)
            for one, other in combinations(turn, 2):
                same_ground = max(one.start, other.start) < min(one.end, other.end)
                assert not same_ground or share_days(dates[one.planting], dates[other.planting])


@settings(max_examples=25)
@given(plans())
def test_each_turn_brings_something_new_and_a_walk_meets_each_planting_once(plan: Plan) -> None:
    for laid in lay_out_plan(plan):
        assert all(set(after) - set(before) for before, after in pairwise(turns(laid)))
        assert sorted(layout.planting for layout in walked(laid)) == sorted(one.planting.id for one in laid.grown)
