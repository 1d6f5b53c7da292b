"""Posts and other obstacles by hand: the rows fill anew around them."""

from contextlib import suppress

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.handles import Grip, Handle
from gardenplot.errors import PlanError
from gardenplot.gestures.obstacle_moved import move_obstacle, try_obstacle_by, try_post, try_without_obstacle
from gardenplot.gestures.stage import Pointer
from gardenplot.layout import lay_out_plan
from gardenplot.layout.zone import held
from gardenplot.plan import Plan
from gardenplot.plan.edits import remove_planting
from gardenplot.plan.valid import faults
from gardenplot.units import CM, M
from tests.gestures.hand import KeptStage, drag, hold
from tests.gestures.shaped import box, ell, over
from tests.gestures.test_outline_drawn import hands
from tests.layout.ground import nm


def plants(plan: Plan) -> int:
    """All plants of the one bed."""
    return sum(layout.plants for layout in lay_out_plan(plan)[0].layouts)


def post_of(plan: Plan, number: int = 0) -> tuple[int, int]:
    """Where an obstacle is."""
    post = plan.beds[0].obstacles[number]
    return post.x.nm, post.y.nm


def test_a_post_goes_with_the_hand_to_round_readings_and_the_rows_fill_anew() -> None:
    stage = KeptStage(ell())
    press = over("5.01 m by 51 cm")
    drag(move_obstacle(stage, "b1", 0, press), over("4 m by 1.22 m"), over("7.98 m by 98 cm"))
    assert post_of(stage.after) == (nm("8 m"), nm("95 cm"))
    trials = [trial.plan for trial in stage.shown if trial]
    assert plants(stage.after) > plants(stage.plan)
    assert [plants(plan) for plan in trials][-1] == plants(stage.after)
    assert stage.committed[0].handle == Handle(Grip.OBSTACLE, 0)


def test_a_post_out_of_the_way_leaves_all_places_to_plants() -> None:
    assert plants(try_without_obstacle(ell(), "b1", 0).plan) == plants(ell(post=None)) > plants(ell())


def test_an_obstacle_does_not_leave_its_bed() -> None:
    stage = KeptStage(ell())
    drag(move_obstacle(stage, "b1", 0, over("5 m by 50 cm")), over("60 m by -4 m"))
    assert post_of(stage.after) == (8 * M, 0)


def test_only_what_moves_is_written_anew() -> None:
    post = {"name": "tap", "x": "500 cm", "y": "0.5 m", "length": "30 cm", "width": "20 cm", "rows": [1], "x-key": 1}
    (moved,) = try_obstacle_by(ell(post=post), "b1", 0, (0, 10 * CM)).plan.beds[0].obstacles
    assert (moved.x.text, moved.y.text, moved.rows) == ("500 cm", "60 cm", (1,))
    assert moved.unknown == ell(post=post).beds[0].obstacles[0].unknown != ()


@settings(max_examples=50)
@given(st.lists(hands, min_size=1, max_size=3))
def test_any_drag_of_a_post_gives_a_valid_plan_and_giving_up_none(way: list[Pointer]) -> None:
    stage, press = KeptStage(ell()), over("5 m by 50 cm")
    hold(move_obstacle(stage, "b1", 0, press), *way).close()
    assert stage.committed == []
    drag(move_obstacle(stage, "b1", 0, press), *way)
    assert list(faults(stage.after)) == []
    stage.committed.clear()
    drag(move_obstacle(stage, "b1", 0, press), *way, press)
    assert stage.after is stage.plan


@settings(max_examples=50)
@given(st.integers(-20, 20), st.integers(-6, 6))
def test_a_post_nudged_there_and_back_gives_an_equal_plan(along: int, across: int) -> None:
    plan, by = ell(), (along * 5 * CM, across * 5 * CM)
    there = try_obstacle_by(plan, "b1", 0, by).plan
    assert try_obstacle_by(there, "b1", 0, (-by[0], -by[1])).plan == plan


@pytest.mark.parametrize(
    ("units", "size", "clear"),
    [
        ("metric", "12 cm", "10 cm"),
        ("feet and inches", "4 1/2 in", "4 in"),
        ("decimal feet", "4 1/2 in", "4 in"),
    ],
)
def test_a_post_is_as_thick_as_posts_are_where_the_plan_measures_so(units: str, size: str, clear: str) -> None:
    (post,) = try_post(box(units=units), "b1", None).plan.beds[0].obstacles
    assert post.diameter is not None
    assert post.keep_clear is not None
    assert (post.name, post.diameter.text, post.keep_clear.text) == ("post", size, clear)


def test_a_post_stands_where_nothing_grows_yet() -> None:
    (post,) = try_post(remove_planting(box(), "p1"), "b1", None).plan.beds[0].obstacles
    assert (post.x.nm, post.y.nm) == (2 * M, 50 * CM)


def test_posts_keep_clear_of_one_another_and_inside_until_there_is_no_room() -> None:
    plan = ell()
    with suppress(PlanError):
        for _number in range(60):
            plan = try_post(plan, "b1", None).plan
    obstacles = plan.beds[0].obstacles
    assert 10 < len(obstacles) < 60
    with pytest.raises(PlanError, match="North has no room for a post"):
        try_post(plan, "b1", None)
    assert len({one.name for one in obstacles}) == len(obstacles)
    for number, one in enumerate(obstacles):
        assert any(low <= one.y.nm <= high for low, high in held(plan.beds[0], one.x.nm, one.x.nm, across=True))
        for other in obstacles[:number]:
            apart = ((one.x.nm - other.x.nm) ** 2 + (one.y.nm - other.y.nm) ** 2) ** 0.5
            assert apart >= nm("32 cm") - 1
