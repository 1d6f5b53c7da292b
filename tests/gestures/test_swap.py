"""Two neighbours exchange their turn along the bed; the gap between them and all others stay."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.gestures.push import FOOT, HEAD
from gardenplot.gestures.swap import try_swap
from gardenplot.plan import Plan
from gardenplot.plan.file import text_of
from gardenplot.plan.valid import faults
from tests.gestures.hand import block, block_of, ground, spot
from tests.plans import plans

ROW = ground(block("1 m", "1 m"), block("2.5 m", "3 m", crop="leek"), block("6 m", "2 m"))


@pytest.mark.parametrize(("planting", "way"), [("p1", FOOT), ("p2", HEAD)])
def test_the_gap_stays_between_them(planting: str, way: int) -> None:
    trial = try_swap(ROW, planting, way)
    assert trial.can_be
    assert trial.planting == planting
    assert [block_of(trial.plan, one) for one in ("p1", "p2", "p3")] == [
        spot("4.5 m", "5.5 m"), spot("1 m", "4 m"), spot("6 m", "8 m")
    ]  # fmt: skip


@pytest.mark.parametrize(("planting", "way", "other"), [("p1", FOOT, HEAD), ("p2", FOOT, HEAD), ("p3", HEAD, FOOT)])
def test_swapped_back_they_stand_as_before(planting: str, way: int, other: int) -> None:
    there = try_swap(ROW, planting, way).plan
    back = try_swap(there, planting, other).plan
    assert [block_of(back, one.id) for one in back.plantings] == [block_of(ROW, one.id) for one in ROW.plantings]


@pytest.mark.parametrize(("planting", "way", "end"), [("p1", HEAD, "head"), ("p3", FOOT, "foot")])
def test_without_a_neighbour_it_is_said(planting: str, way: int, end: str) -> None:
    with pytest.raises(PlanError, match=f"Chard has no neighbour towards the {end}"):
        try_swap(ROW, planting, way)


def test_a_neighbour_is_one_of_the_same_days() -> None:
    early, late = {"in_ground": "2027-03-01", "out": "2027-05-01"}, {"in_ground": "2027-06-01", "out": "2027-09-01"}
    plan = ground(block("1 m", "1 m", **early), block("2 m", "1 m", **late), block("4 m", "2 m", **early))
    trial = try_swap(plan, "p1", FOOT)
    assert block_of(trial.plan, "p2") == spot("2 m", "3 m")
    assert block_of(trial.plan, "p3") == spot("1 m", "3 m")


def test_a_block_that_filled_its_gap_keeps_its_length() -> None:
    plan = ground({"from": "1 m"}, block("4.2 m", "1 m"))
    trial = try_swap(plan, "p1", FOOT)
    assert (block_of(trial.plan, "p2"), block_of(trial.plan, "p1")) == (spot("1 m", "2 m"), spot("2.2 m", "5.2 m"))


@given(plans(least_plantings=2), st.data())
def test_any_swap_leaves_the_plan_alone_and_all_others_where_they_are(plan: Plan, data: st.DataObject) -> None:
    planting, before = data.draw(st.sampled_from(plan.plantings)).id, text_of(plan)
    try:
        trial = try_swap(plan, planting, data.draw(st.sampled_from([FOOT, HEAD])))
    except PlanError:
        return
    assert text_of(plan) == before
    assert list(faults(trial.plan)) == []
    changed = [one.id for one, was in zip(trial.plan.plantings, plan.plantings, strict=True) if one != was]
    assert len(changed) <= 2
