"""A block taken hold of and moved along its bed or to another: plan before, what the hand does, plan after."""

from collections.abc import Callable

import pytest
from attrs import evolve

from gardenplot.gestures.drags import move_block, place_crop, resize_block
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Gesture, Pointer
from gardenplot.plan import Plan, crop_of, planting_of
from gardenplot.plan.edits import remove_planting
from gardenplot.units import Length
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import KeptStage, Spot, at, block, block_of, drag, ground, hold, let_go, spot
from tests.layout.ground import nm


def moved(plan: Plan, *way: Pointer, taken_at: str = "5.5 m", bed: str = "b1") -> KeptStage:
    """A stage on which p1 was taken at a reading, carried along a way and let go."""
    stage = KeptStage(plan)
    drag(move_block(stage, "p1", at(taken_at, bed)), *way)
    return stage


@pytest.mark.parametrize(
    ("hand", "lies"),
    [
        (at("7.5 m"), spot("7 m", "10 m")),
        (at("1.5 m"), spot("1 m", "4 m")),
        (at("6.5 m", "b2"), spot("6 m", "9 m", "b2")),
    ],
)
def test_a_block_keeps_its_size_and_its_place_under_the_hand(hand: Pointer, lies: Spot) -> None:
    stage = moved(ground(block("5 m", "3 m")), at("1 m"), hand)
    assert block_of(stage.after, "p1") == lies
    assert planting_of(stage.after, "p1").length == Length(nm("3 m"), "3 m")
    assert stage.verbs == ["Move {crop}"]


def test_a_block_moved_to_where_it_stood_leaves_the_very_same_plan() -> None:
    plan = ground(block("5 m", "3 m"))
    assert moved(plan, at("9 m"), at("5.5 m")).after is plan


def test_all_else_of_the_plan_stays_what_it_was() -> None:
    plan = ground(block("5 m", "3 m", note="by hand"), block("9 m", "1 m"))
    after = moved(plan, at("3.5 m", "b2")).after
    start = Length(nm("3 m"), "3 m")
    expected = evolve(plan.plantings[0], bed="b2", start=start)
    assert after == evolve(plan, plantings=(expected, plan.plantings[1]))


def test_an_order_still_decides_how_long_a_block_is_after_it_was_moved() -> None:
    before = remove_planting(hand_worked("s1"), "p1")
    stage = KeptStage(before)
    drag(move_block(stage, "p2", at("8 m", "b2")), at("3.7 m", "b2"))
    planting = planting_of(stage.after, "p2")
    assert (planting.order, planting.length) == ("o2", None)
    assert block_of(stage.after, "p2") == spot("3 m", "6.75 m", "b2")


def test_a_block_that_filled_its_gap_keeps_its_length() -> None:
    stage = moved(ground({"from": "5 m"}, block("8.2 m", "1 m")), at("5.6 m", "b2"))
    assert block_of(stage.after, "p1") == spot("5.1 m", "8.1 m", "b2")


@pytest.mark.parametrize(
    ("hand", "start", "pull"),
    [
        ("0.83 m", "0.30 m", Pull.HEAD_MARGIN),
        ("10.15 m", "9.70 m", Pull.FOOT_MARGIN),
        ("4.77 m", "4.20 m", Pull.NEIGHBOUR),
        ("5.23 m", "4.70 m", Pull.READING),
    ],
)
def test_a_block_is_drawn_to_margins_neighbours_and_round_readings(hand: str, start: str, pull: Pull) -> None:
    plan = ground(block("5 m", "2 m"), block("2.6 m", "1.4 m"))
    (trial,) = moved(plan, at(hand, reach=nm("10 cm"))).committed
    assert layout_in(trial.plan, "p1").start == nm(start)
    assert trial.snap is not None
    assert trial.snap.pull is pull


def test_a_block_is_drawn_to_end_a_gap_before_its_neighbour() -> None:
    plan = ground(block("5 m", "3 m"), block("10 m", "1 m"))
    assert block_of(moved(plan, at("7.25 m", reach=nm("10 cm"))).after, "p1") == spot("6.8 m", "9.8 m")


@pytest.mark.parametrize(("hand", "start"), [("0.83 m", "0.33 m"), ("10.15 m", "9.65 m"), ("4.77 m", "4.27 m")])
def test_a_free_hand_is_drawn_to_nothing(hand: str, start: str) -> None:
    plan = ground(block("5 m", "2 m"), block("2.6 m", "1.4 m"))
    (trial,) = moved(plan, at(hand, reach=nm("10 cm"), free=True)).committed
    assert layout_in(trial.plan, "p1").start == nm(start)


def test_a_free_hand_still_stops_at_what_a_tape_can_show() -> None:
    plan = ground(block("5 m", "3 m"))
    assert block_of(moved(plan, at("6504 mm", free=True)).after, "p1") == spot("6 m", "9 m")


@pytest.mark.parametrize("hand", ["3.5 m", "0.4 m", "9.5 m"])
def test_over_its_neighbour_or_past_a_margin_it_is_refused(hand: str) -> None:
    stage = moved(ground(block("5 m", "3 m"), block("2 m", "2 m")), at("6 m"), at(hand))
    assert stage.committed == []
    assert stage.refused[0].against[0].kind in ("overlap", "outside")


def test_the_foot_of_another_bed_draws_a_block_by_the_length_that_it_has_there() -> None:
    plan = ground({"bed": "b2", "from": "5 m", "plants": 40})
    assert block_of(plan, "p1") == spot("5 m", "8 m", "b2")
    stage = moved(plan, at("6.05 m", reach=nm("30 cm")), bed="b2")
    assert block_of(stage.after, "p1") == spot("5.7 m", "11.7 m")


Hand = Callable[[KeptStage], Gesture]
HANDS: dict[str, Hand] = {
    "place": lambda stage: place_crop(stage, crop_of(stage.plan, "chard")),
    "move": lambda stage: move_block(stage, "p1", at("5.5 m")),
    "resize at the foot": lambda stage: resize_block(stage, "p1", foot=True),
    "resize at the head": lambda stage: resize_block(stage, "p1", foot=False),
}
each_hand = pytest.mark.parametrize("hand", HANDS.values(), ids=HANDS)


@each_hand
def test_giving_up_changes_nothing(hand: Hand) -> None:
    stage = KeptStage(ground(block("5 m", "3 m")))
    gesture = hold(hand(stage), at("6 m", "b2"), at("9 m"))
    assert any(stage.shown)
    gesture.close()
    assert (stage.committed, stage.refused) == ([], [])


@each_hand
def test_letting_go_beside_all_beds_changes_nothing(hand: Hand) -> None:
    stage = KeptStage(ground(block("5 m", "3 m")))
    drag(hand(stage), at("9 m"), at("0 m", None))
    assert (stage.committed, stage.refused) == ([], [])
    assert stage.shown[-1] is None


@each_hand
def test_letting_go_without_moving_changes_nothing(hand: Hand) -> None:
    stage = KeptStage(ground(block("5 m", "3 m")))
    drag(hand(stage))
    assert (stage.committed, stage.refused) == ([], [])


@each_hand
def test_the_hand_works_on_the_plan_at_the_press(hand: Hand) -> None:
    undisturbed, disturbed = (KeptStage(ground(block("5 m", "3 m"))) for _ in range(2))
    drag(hand(undisturbed), at("8.2 m"))
    gesture = hold(hand(disturbed), at("6 m"))
    disturbed.plan = ground()
    gesture.send(at("8.2 m"))
    let_go(gesture)
    assert disturbed.after == undisturbed.after
