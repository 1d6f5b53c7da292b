"""Edits of several plantings: one whole, nothing else touched, copies without orders."""

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.plan import Plan, several
from gardenplot.units import parse_length
from tests.plans import feet_plan, metric_plan, plans


def test_all_or_nothing_is_changed() -> None:
    plan = metric_plan()
    with pytest.raises(PlanError, match=r"plantings\[1\]\.length"):
        several.change_plantings(plan, {"p1": {"note": "one"}, "p2": {"length": parse_length("0 m")}})
    after = several.change_plantings(plan, {"p1": {"note": "one"}, "p2": {"note": "two"}})
    assert [one.note for one in after.plantings] == ["one", "two", ""]
    assert after.plantings[2] is plan.plantings[2]
    assert after.beds is plan.beds


@given(plans(), st.data())
def test_copies_stand_behind_all_others_and_carry_no_order(plan: Plan, data: st.DataObject) -> None:
    ids = [one.id for one in plan.plantings]
    chosen = set(data.draw(st.lists(st.sampled_from(ids), unique=True))) if ids else set()
    after = several.copy_plantings(plan, {one: {} for one in chosen})
    copies = after.plantings[len(ids) :]
    assert after.plantings[: len(ids)] == plan.plantings
    assert [evolve(one, id="") for one in copies] == [
        evolve(one, id="", order=None, market=None, series=None, actual=None)
        for one in plan.plantings
        if one.id in chosen
    ]


@given(plans(), st.data())
def test_what_is_copied_or_split_off_and_removed_again_leaves_an_equal_plan(plan: Plan, data: st.DataObject) -> None:
    if not plan.plantings:
        return
    plan = evolve(plan, plantings=tuple(evolve(one, series=None, actual=None) for one in plan.plantings))
    one = data.draw(st.sampled_from(plan.plantings)).id
    for after in (several.copy_plantings(plan, {one: {}}), several.split_planting(plan, one, {}, {})):
        new = after.plantings[-1].id
        assert several.remove_plantings(after, [new]) == plan
        assert several.join_plantings(after, one, new, {}) == plan


def test_both_parts_of_a_split_stay_with_the_order() -> None:
    plan = feet_plan()
    after = several.split_planting(plan, "p2", {"plants": 100}, {"plants": 100, "start": parse_length("40 ft")})
    assert [(one.id, one.order, one.plants) for one in after.plantings] == [
        ("p1", None, 180), ("p2", "o1", 100), ("p3", None, None), ("p2-2", "o1", 100)
    ]  # fmt: skip
