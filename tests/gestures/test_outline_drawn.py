"""Corners moved, added and taken away by hand: the plan before, the hand, the plan after."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.gestures.outline_drawn import (
    add_corner,
    move_corner,
    outlined,
    try_corner,
    try_corner_after,
    try_corner_by,
    try_without_corner,
)
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Pointer
from gardenplot.gestures.typed import BED_FIELDS
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.valid import faults
from gardenplot.units import CM, MM, M
from tests.gestures.hand import KeptStage, drag, hold
from tests.gestures.shaped import ELL, box, corners_typed, ell, over, places, reach_of, written

hands = st.builds(
    Pointer,
    bed=st.sampled_from(["b1", "b2", None]),
    x=st.integers(-M, 12 * M) | st.integers(-5, 90).map((10 * CM).__mul__),
    y=st.integers(-M, 4 * M) | st.integers(-5, 30).map((10 * CM).__mul__),
    reach=st.integers(0, M // 2),
    free=st.booleans(),
    reach_across=st.integers(0, M // 4),
)
ways = st.lists(hands, min_size=1, max_size=4)
corners = st.integers(0, len(ELL) - 1)


def moved(number: int, *way: str, plan: Plan | None = None, press: str | None = None) -> KeptStage:
    """A stage on which a corner of the L was taken hold of and brought along a way."""
    stage = KeptStage(plan or ell())
    start = over(press or corners_typed(stage.plan)[number])
    drag(move_corner(stage, "b1", number, start), *map(over, way))
    return stage


def test_a_corner_goes_with_the_hand_and_the_bed_reaches_as_far() -> None:
    stage = moved(2, "7.5 m by 1.03 m", "9.48 m by 1.28 m")
    assert places(stage.after) == written(*ELL[:2], "9.5 m by 1.3 m", *ELL[3:])
    assert [length.nm for length in reach_of(stage.after)] == [9500 * MM, 2000 * MM]
    assert stage.verbs == ["Reshape bed {bed}"]
    (trial,) = stage.committed
    assert (trial.bed, trial.planting) == ("b1", None)


def test_the_hand_holds_a_corner_by_the_place_where_it_took_it() -> None:
    stage = moved(1, "7.05 m by 3 cm", press="8.05 m by 3 cm")
    assert places(stage.after)[1] == (7 * M, 0)


def test_readings_that_stay_are_kept_as_they_were_typed() -> None:
    plan = ell("0 m by 0 m", "800 cm by 0 mm", "8.00 m by 100 cm", "0 m by 1000 mm")
    assert corners_typed(moved(1, "7 m by 1 cm", plan=plan).after) == (
        "0 m by 0 m", "7 m by 0 mm", "8.00 m by 100 cm", "0 m by 1000 mm",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("hand", "along", "across"),
    [
        ("8.06 m by 1.43 m", Pull.KEPT, Pull.READING),
        ("3.07 m by 1.43 m", Pull.CORNER, Pull.READING),
        ("5.52 m by 97 cm", Pull.READING, Pull.KEPT),
        ("5.52 m by 4 cm", Pull.READING, Pull.CORNER),
        ("5.52 m by 24 cm", Pull.READING, Pull.READING),
    ],
)
def test_a_corner_is_drawn_to_its_neighbours_and_to_where_it_was(hand: str, along: Pull, across: Pull) -> None:
    trial = try_corner(ell(), "b1", 2, over(hand))
    assert trial.snap is not None
    assert trial.across is not None
    assert (trial.snap.pull, trial.across.pull) == (along, across)


def test_alt_suspends_the_snaps_down_to_what_can_be_read_off_a_tape() -> None:
    trial = try_corner(ell(), "b1", 2, over("8.06 m by 1.434 m", free=True))
    assert places(trial.plan)[2] == (806 * CM, 143 * CM)


def test_a_corner_stops_at_the_head_and_at_the_base_line() -> None:
    assert places(moved(0, "-60 cm by -30 cm").after)[0] == (0, 0)
    assert places(moved(5, "-60 cm by 2.4 m").after)[5] == (0, 240 * CM)


@pytest.mark.parametrize("units", ["metric", "feet and inches", "decimal feet"])
def test_round_readings_are_round_in_the_plans_units(units: str) -> None:
    plan = ell("0 ft by 0 ft", "20 ft by 0 ft", "20 ft by 4 ft", "0 ft by 4 ft", post=None, units=units)
    trial = try_corner(plan, "b1", 2, over("6.7 m by 1.4 m", reach="16 cm", across="8 cm"))
    step_along, step_across = {
        "metric": ("10 cm", "5 cm"),
        "feet and inches": ("6 in", "3 in"),
        "decimal feet": ("0.5 ft", "0.1 ft"),
    }[units]
    x, y = places(trial.plan)[2]
    ((wide, high),) = written(f"{step_along} by {step_across}")
    assert (x % wide, y % high) == (0, 0)


def test_an_outline_that_would_cross_itself_is_shown_with_the_reason_and_refused() -> None:
    stage = moved(2, "1 m by 2.5 m")
    assert stage.committed == []
    (trial,) = stage.refused
    assert trial.refusal == "the outline crosses or touches itself"
    assert trial.plan is stage.plan
    assert trial.sketch is not None
    assert trial.sketch.points[2] == (1 * M, 250 * CM)


def test_a_corner_brought_onto_its_neighbour_is_taken_away() -> None:
    stage = moved(3, "3.04 m by 1.97 m")
    assert places(stage.after) == written(*ELL[:3], *ELL[4:])


def test_three_corners_stay() -> None:
    plan = ell("0 m by 0 m", "8 m by 0 m", "0 m by 1 m", post=None)
    (trial,) = moved(2, "1 cm by 1 cm", plan=plan).refused
    assert trial.refusal == "an outline needs three points or more"
    assert try_without_corner(plan, "b1", 0).refusal == trial.refusal


def test_a_corner_is_drawn_out_of_a_side() -> None:
    stage = KeptStage(ell())
    drag(add_corner(stage, "b1", 0), over("4 m by 10 cm"), over("4.02 m by 28 cm"))
    assert places(stage.after) == written(ELL[0], "4 m by 30 cm", *ELL[1:])
    (trial,) = stage.committed
    assert trial.handle is not None
    assert trial.handle.number == 1


def test_a_new_corner_let_go_on_a_corner_leaves_the_very_same_plan() -> None:
    stage = KeptStage(ell())
    drag(add_corner(stage, "b1", 0), over("4 m by 50 cm"), over("7.97 m by 2 cm"))
    assert stage.after is stage.plan


def test_a_rectangle_becomes_an_outline_with_its_four_corners_and_keeps_its_plants() -> None:
    plan = box()
    after = outlined(plan, "b1")
    assert corners_typed(after) == ("0 cm by 0 cm", "8 m by 0 cm", "8 m by 1 m", "0 cm by 1 m")
    assert lay_out_plan(after)[0].layouts[0].per_row == lay_out_plan(plan)[0].layouts[0].per_row
    assert outlined(after, "b1") is after


@pytest.mark.parametrize(("field", "text"), [("diameter", "3 m"), ("box", "2.4 m by 1.2 m, boards 4 cm")])
def test_a_round_or_a_boarded_bed_stays_as_it_is_typed(field: str, text: str) -> None:
    typed = next(one for one in BED_FIELDS if one.name == field)
    with pytest.raises(PlanError, match="North: its shape is typed"):
        outlined(typed.apply(box(), "b1", text), "b1")


@pytest.mark.parametrize(("number", "middle"), [(0, "4 m by 0 m"), (3, "3 m by 1.5 m"), (5, "0 m by 1 m")])
def test_a_corner_is_added_in_the_middle_of_the_side_that_follows(number: int, middle: str) -> None:
    after = try_corner_after(ell(), "b1", number).plan
    assert places(after) == written(*ELL[: number + 1], middle, *ELL[number + 1 :])


@settings(max_examples=60)
@given(corners, ways)
def test_a_hand_that_gives_up_has_changed_nothing(number: int, way: list[Pointer]) -> None:
    stage = KeptStage(ell())
    press = over(ELL[number])
    hold(move_corner(stage, "b1", number, press), *way).close()
    hold(add_corner(stage, "b1", number), *way).close()
    assert stage.committed == stage.refused == []
    assert stage.plan == ell()


@settings(max_examples=100)
@given(corners, ways, st.booleans())
def test_what_is_committed_is_a_valid_plan_in_which_only_the_outline_is_another(
    number: int, way: list[Pointer], adds: bool
) -> None:
    stage = KeptStage(ell())
    begun = add_corner(stage, "b1", number) if adds else move_corner(stage, "b1", number, over(ELL[number]))
    drag(begun, *way)
    assert len(stage.committed) + len(stage.refused) == 1
    for trial in stage.committed:
        assert list(faults(trial.plan)) == []
        assert min(min(point) for point in places(trial.plan)) >= 0
        assert trial.plan.plantings is stage.plan.plantings
        assert set(written(*ELL)) - set(places(trial.plan)) <= {written(ELL[number])[0]}


@settings(max_examples=60)
@given(corners, hands)
def test_a_corner_brought_back_before_the_hand_lets_go_gives_the_very_same_plan(number: int, hand: Pointer) -> None:
    stage = KeptStage(ell())
    press = over(ELL[number])
    drag(move_corner(stage, "b1", number, press), hand, press)
    assert stage.after is stage.plan


@settings(max_examples=60)
@given(corners, st.integers(-40, 40), st.integers(-40, 40))
def test_a_corner_moved_there_and_back_gives_an_equal_plan(number: int, along: int, across: int) -> None:
    plan = ell()
    x, y = places(plan)[number]
    there = try_corner_by(plan, "b1", number, (along * 5 * CM, across * 5 * CM))
    if there.can_be:
        to_x, to_y = places(there.plan)[number]
        assert try_corner_by(there.plan, "b1", number, (x - to_x, y - to_y)).plan == plan
