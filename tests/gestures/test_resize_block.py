"""An end of a block drawn to another reading, in whole ranks: plan before, what the hand does, plan after."""

import pytest

from gardenplot.gestures.drags import resize_block
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.stage import Pointer
from gardenplot.plan import Plan, planting_of
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import KeptStage, Spot, at, block, block_of, drag, ground, spot
from tests.layout.ground import Fields, nm

CHARD_5_TO_8 = block("5 m", "3 m")
NEIGHBOURS = (block("2 m", "2 m"), block("10 m", "1 m"))


def resized(plan: Plan, *way: Pointer, end: str, planting: str = "p1") -> KeptStage:
    """A stage on which the head or the foot of a planting was taken along a way and let go."""
    stage = KeptStage(plan)
    drag(resize_block(stage, planting, foot=end == "foot"), *way)
    return stage


@pytest.mark.parametrize(
    ("end", "hand", "lies"),
    [
        ("foot", "8.61 m", spot("5 m", "8.6 m")),
        ("foot", "8.14 m", spot("5 m", "8.0 m")),
        ("foot", "8.15 m", spot("5 m", "8.3 m")),
        ("foot", "6.21 m", spot("5 m", "6.2 m")),
        ("head", "4.38 m", spot("4.4 m", "8 m")),
        ("head", "4.86 m", spot("5.0 m", "8 m")),
        ("head", "4.85 m", spot("4.7 m", "8 m")),
        ("head", "6.82 m", spot("6.8 m", "8 m")),
    ],
)
def test_an_end_goes_to_the_nearest_whole_rank_and_the_other_end_stays(end: str, hand: str, lies: Spot) -> None:
    stage = resized(ground(CHARD_5_TO_8), at("7 m"), at(hand), end=end)
    assert block_of(stage.after, "p1") == lies
    assert stage.verbs == ["Resize {crop}"]


@pytest.mark.parametrize(
    ("end", "hand", "lies"),
    [
        ("foot", "10.5 m", spot("5 m", "9.8 m")),
        ("foot", "40 m", spot("5 m", "9.8 m")),
        ("head", "3 m", spot("4.4 m", "8 m")),
        ("head", "-2 m", spot("4.4 m", "8 m")),
    ],
)
def test_an_end_stops_a_gap_before_its_neighbour(end: str, hand: str, lies: Spot) -> None:
    assert block_of(resized(ground(CHARD_5_TO_8, *NEIGHBOURS), at(hand), end=end).after, "p1") == lies


@pytest.mark.parametrize(
    ("end", "hand", "lies"),
    [("foot", "14 m", spot("5 m", "11.6 m")), ("head", "0 m", spot("0.5 m", "8 m"))],
)
def test_an_end_stops_at_the_margin(end: str, hand: str, lies: Spot) -> None:
    assert block_of(resized(ground(CHARD_5_TO_8), at(hand), end=end).after, "p1") == lies


@pytest.mark.parametrize(
    ("end", "hand", "lies"),
    [
        ("foot", "5.1 m", spot("5 m", "5.3 m")),
        ("foot", "2 m", spot("5 m", "5.3 m")),
        ("head", "9 m", spot("7.7 m", "8 m")),
    ],
)
def test_one_rank_stays(end: str, hand: str, lies: Spot) -> None:
    assert block_of(resized(ground(CHARD_5_TO_8), at(hand), end=end).after, "p1") == lies


@pytest.mark.parametrize(
    ("end", "hand", "lies"),
    [("foot", "8.14 m", spot("5 m", "8.14 m")), ("head", "4.86 m", spot("4.86 m", "8 m"))],
)
def test_a_free_end_goes_to_any_reading_of_the_tape(end: str, hand: str, lies: Spot) -> None:
    stage = resized(ground(CHARD_5_TO_8, *NEIGHBOURS), at(hand, reach=nm("10 cm"), free=True), end=end)
    assert block_of(stage.after, "p1") == lies


@pytest.mark.parametrize(("end", "hand"), [("foot", "9.9 m"), ("head", "4.1 m")])
def test_a_free_end_may_use_the_gap_to_its_neighbour(end: str, hand: str) -> None:
    stage = resized(ground(CHARD_5_TO_8, *NEIGHBOURS), at(hand, free=True), end=end)
    assert nm(hand) in block_of(stage.after, "p1")


@pytest.mark.parametrize(("end", "hand"), [("foot", "10.1 m"), ("head", "3.9 m")])
def test_a_free_end_in_its_neighbour_is_refused(end: str, hand: str) -> None:
    stage = resized(ground(CHARD_5_TO_8, *NEIGHBOURS), at(hand, free=True), end=end)
    assert [finding.amount for trial in stage.refused for finding in trial.against] == [nm("10 cm")]
    assert stage.committed == []


def test_a_free_head_end_past_the_tapes_zero_leaves_the_foot_end_where_it_is() -> None:
    plan = ground(block("5 m", "3 m", bed="b2"))
    stage = resized(plan, at("-50 cm", "b2", free=True), end="head")
    assert block_of(stage.after, "p1") == spot("0 m", "8 m", "b2")


def test_what_was_sized_by_its_order_is_sized_by_length_from_then_on() -> None:
    plan = hand_worked("s1")
    stage = resized(plan, at("9.8 m", "b2"), end="foot", planting="p2")
    planting = planting_of(stage.after, "p2")
    assert block_of(stage.after, "p2") == spot("7.3 m", "9.8 m", "b2")
    assert (planting.order, planting.length and planting.length.text) == ("o2", "2.5 m")
    assert layout_in(stage.after, "p2").per_row == (10, 10, 10)


def test_slack_becomes_part_of_the_block() -> None:
    slack: Fields = {"from": "5 m", "plants": 10, "slack": "40 cm"}
    stage = resized(ground(slack), at("7.1 m"), end="foot")
    planting = planting_of(stage.after, "p1")
    assert (planting.slack, planting.plants) == (None, None)
    assert block_of(stage.after, "p1") == spot("5 m", "7.1 m")


def test_an_end_drawn_over_another_bed_still_follows_the_tape() -> None:
    assert block_of(resized(ground(CHARD_5_TO_8), at("8.6 m", "b2"), end="foot").after, "p1") == spot("5 m", "8.6 m")


def test_a_block_beyond_the_foot_margin_does_not_widen_the_bed() -> None:
    plan = ground(block("5.15 m", "3 m"), block("11.95 m", "5 cm", crop="leek"))
    assert block_of(resized(plan, at("11.9 m"), end="foot").after, "p1") == spot("5.15 m", "11.45 m")


def test_inches_go_by_whole_ranks_too() -> None:
    lettuce: Fields = {"id": "lettuce", "name": "Lettuce", "in_row": "8 in", "row_spacing": "10 in"}
    plan = ground(block("2 ft", "4 ft", crop="lettuce"), units="feet and inches", crops=[lettuce])
    stage = resized(plan, at("7 ft"), end="foot")
    assert block_of(stage.after, "p1") == spot("2 ft", "7 ft 4 in")
