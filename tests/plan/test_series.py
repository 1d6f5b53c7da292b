"""Laws of series: alike while they are together, never of one, and what is in the ground stands by itself."""

from collections.abc import Callable
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.plan import Actual, Pattern, Plan, edits, planting_of, several
from gardenplot.plan.series import leave_series, repeat, series_of
from gardenplot.units import parse_length
from tests.plans import metric_plan

METRE = parse_length("1 m")


def a_series(members: int = 3) -> Plan:
    """The pak choi of the tunnel with so many plantings more."""
    return repeat(metric_plan(), "p1", [{"bed": "b2", "start": METRE}] * members)


def lone(plan: Plan) -> list[str]:
    """Plantings that are of a series of one."""
    return [one.id for one in plan.plantings if len(series_of(plan, one.id)) == 1]


def test_copies_are_new_plantings_of_one_series_behind_all_others() -> None:
    plan = a_series()
    assert [one.id for one in plan.plantings] == ["p1", "p2", "p3", "p1-2", "p1-3", "p1-4"]
    assert [one.id for one in series_of(plan, "p1-3")] == ["p1", "p1-2", "p1-3", "p1-4"]
    assert series_of(plan, "p2") == ()
    assert plan.plantings[1:3] == metric_plan().plantings[1:3]
    assert repeat(plan, "p1", []) is plan
    assert len(series_of(repeat(plan, "p1-2", [{"start": METRE}]), "p1")) == 5


def test_a_copy_that_cannot_be_makes_no_series() -> None:
    with pytest.raises(PlanError):
        repeat(metric_plan(), "p1", [{"bed": "b9"}])


@pytest.mark.parametrize(
    "change",
    [
        {"pattern": Pattern.STAGGERED},
        {"rows": 2},
        {"in_row": parse_length("20 cm")},
        {"row_spacing": (parse_length("35 cm"),)},
        {"plants": 60},
        {"length": parse_length("4 m")},
        {"slack": parse_length("10 cm")},
    ],
    ids=lambda change: next(iter(change)),
)
def test_how_one_is_planted_changes_all_that_are_not_in_the_ground(change: dict[str, object]) -> None:
    plan = edits.change_planting(a_series(), "p1-2", actual=Actual(set_out=date(2027, 4, 20)))
    stood = planting_of(plan, "p1-2")
    after = edits.change_planting(plan, "p1-3", **change)
    for one in series_of(after, "p1"):
        if one.id != "p1-2":
            assert {name: getattr(one, name) for name in change} == change
            assert (one.plants is None) != (one.length is None)
    assert planting_of(after, "p1-2") == stood
    assert after.plantings[1:3] == plan.plantings[1:3]


def test_where_and_when_are_each_ones_own() -> None:
    plan = a_series()
    after = edits.move_planting(plan, "p1-2", "b1", METRE)
    after = edits.change_planting(after, "p1-2", in_ground=date(2027, 4, 12), note="by the door", bed="b1")
    assert [one for one in after.plantings if one.id != "p1-2"] == [one for one in plan.plantings if one.id != "p1-2"]


def test_what_is_in_the_ground_stays_and_what_came_about_is_its_own() -> None:
    plan = edits.change_planting(a_series(), "p1", actual=Actual(set_out=date(2027, 4, 9)))
    with pytest.raises(PlanError, match="in the ground"):
        edits.change_planting(plan, "p1", plants=118)
    assert [one.actual is None for one in series_of(plan, "p1")] == [False, True, True, True]


def test_one_that_has_left_is_changed_alone_and_changes_no_other() -> None:
    plan = leave_series(a_series(), "p1-2")
    assert planting_of(plan, "p1-2").series is None
    assert [one.plants for one in edits.change_planting(plan, "p1-2", plants=9).plantings] == [
        120, None, None, 9, 120, 120,
    ]  # fmt: skip
    assert planting_of(edits.change_planting(plan, "p1", plants=9), "p1-2").plants == 120
    assert leave_series(plan, "p1-2") is plan


def test_an_order_of_ones_own_leaves_the_sizes_of_the_others() -> None:
    plan = a_series()
    after = edits.change_planting(plan, "p1", order=None, plants=None, length=None)
    assert [one.plants for one in series_of(after, "p1")] == [None, 120, 120, 120]


TEN, FIVE = {"plants": 10, "length": None}, {"plants": 5, "length": None}
STEPS: dict[str, Callable[[Plan, str, str], Plan]] = {
    "remove": lambda plan, one, _other: edits.remove_planting(plan, one),
    "remove several": lambda plan, one, other: several.remove_plantings(plan, {one, other}),
    "leave": lambda plan, one, _other: leave_series(plan, one),
    "split": lambda plan, one, _other: several.split_planting(plan, one, TEN, FIVE),
    "join": lambda plan, one, other: plan if one == other else several.join_plantings(plan, one, other, {}),
    "remove bed": lambda plan, one, _other: edits.remove_bed(plan, planting_of(plan, one).bed),
    "copy": lambda plan, one, _other: several.copy_plantings(plan, {one: {}}),
    "change": lambda plan, one, _other: edits.change_planting(plan, one, plants=len(plan.plantings)),
}


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 4), st.lists(st.tuples(st.sampled_from([*STEPS]), st.integers(0, 9)), max_size=6))
def test_no_series_is_ever_left_with_one_and_all_of_one_are_alike(members: int, steps: list[tuple[str, int]]) -> None:
    plan = a_series(members)
    for step, number in steps:
        ids = [one.id for one in plan.plantings]
        if not ids:
            break
        copied = evolve(plan)
        after = STEPS[step](plan, ids[number % len(ids)], ids[(number + 1) % len(ids)])
        assert plan == copied
        assert lone(after) == []
        for each in after.plantings:
            assert len({(member.plants, member.length) for member in series_of(after, each.id)}) <= 1
        plan = after
