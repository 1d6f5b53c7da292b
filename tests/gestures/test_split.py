"""Blocks split onto a whole rank and joined again: lengths and plants add up, orders stay, refusals say why."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.push import FOOT, HEAD
from gardenplot.gestures.split import try_join, try_split
from gardenplot.layout import planted_for_orders
from gardenplot.layout.bed import lay_out_plan
from gardenplot.plan import Pattern, Plan, planting_of
from gardenplot.plan.file import text_of
from gardenplot.plan.valid import faults
from gardenplot.units import CM
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import block, block_of, ground, spot
from tests.layout.ground import Fields, nm
from tests.plans import plans


@pytest.mark.parametrize(
    ("at", "ends"),
    [(None, "6.5 m"), ("6 m", "5.9 m"), ("6.1 m", "6.2 m"), ("5.01 m", "5.3 m"), ("7.99 m", "7.7 m")],
)
def test_a_block_is_split_at_the_whole_rank_nearest_to_the_reading(at: str | None, ends: str) -> None:
    parts = try_split(ground(block("5 m", "3 m")), "p1", nm(at) if at else None)
    assert parts.trial.can_be
    assert block_of(parts.trial.plan, "p1") == spot("5 m", ends)
    assert block_of(parts.trial.plan, "p1-2") == spot(ends, "8 m")
    assert parts.first + parts.rest == parts.whole


SIZES: list[Fields] = [
    {"from": "5 m", "length": "3.1 m"},
    {"from": "5 m", "plants": 19},
    {"from": "5 m", "plants": 19, "slack": "35 cm"},
    {"from": "5 m", "plants": 20, "round_up_to": "1 m"},
    {"from": "5 m"},
    {"from": "5 m", "length": "3 m", "end_margin": "0 cm"},
    {"from": "5 m", "plants": 24, "end_margin": "0 cm"},
]


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("at", ["5.4 m", "6 m", "6.7 m"])
def test_lengths_and_plants_add_up_and_the_ends_stay(size: Fields, at: str) -> None:
    plan = ground(size)
    whole = layout_in(plan, "p1")
    parts = try_split(plan, "p1", nm(at))
    first, rest = (layout_in(parts.trial.plan, one) for one in ("p1", "p1-2"))
    assert (first.start, rest.end) == (whole.start, whole.end)
    assert first.end <= rest.start <= first.end + whole.grid.rank
    assert first.plants + rest.plants == whole.plants == parts.whole
    places = {
        at for layout in (first, rest) for run in layout.runs for at in range(run.first, run.last + 1, run.step)
    }
    assert places == {at for run in whole.runs for at in range(run.first, run.last + 1, run.step)}


def test_an_order_stays_with_both_parts_and_is_met_as_before() -> None:
    plan = hand_worked("s1")
    planting = planting_of(plan, "p2")
    parts = try_split(plan, "p2")
    after = parts.trial.plan
    assert planting.order is not None
    assert {one.order for one in after.plantings if one.id in ("p2", "p2-2")} == {planting.order}
    assert planted_for_orders(lay_out_plan(after)) == planted_for_orders(lay_out_plan(plan))
    assert parts.trial.can_be


def test_each_part_has_its_share_of_what_was_sown_and_bought_in_and_they_are_joined_to_all_of_it() -> None:
    """20 chard, worked by hand: at 6 m 3 ranks of 2 are 6 plants; 33 x 6/20 is 9.9: 10 are 1.67 a plant and 23 are
    1.64, while 9 would be 1.5. They stood in 10/33 of 40 cells, 12.1 up to 13. Of 45 cells to sow 6/20 are 13.5: 14
    are 2.3 a plant and 31 are 2.2, while 13 would be 2.17.
    """
    came: Fields = {"sown": "2027-03-01", "cells": 40, "stand": 33}
    plan = ground({"from": "5 m", "plants": 20, "actual": came, "sow_cells": 45})
    split = try_split(plan, "p1", nm("6 m")).trial.plan
    assert [one.plants for one in split.plantings] == [6, 14]
    records = [one.actual for one in split.plantings]
    assert [(one.stand, one.cells) for one in records if one] == [(10, 13), (23, 27)]
    assert [one.sow_cells for one in split.plantings] == [14, 31]
    joined = try_join(split, "p1", FOOT).trial.plan
    assert joined.plantings[0].actual == plan.plantings[0].actual
    assert joined.plantings[0].sow_cells == 45


def test_both_parts_are_whole_where_a_loss_on_the_way_leaves_enough_for_both() -> None:
    """11 seedlings of which one in ten is lost: 5 x 0.9 = 4.5 for 4 plants and 6 x 0.9 = 5.4 for 5, by hand."""
    plan = ground({"from": "5 m", "plants": 9, "rows": 1, "actual": {"sown": "2027-03-01", "stand": 11}})
    block = layout_in(plan, "p1")
    split = try_split(plan, "p1", block.start + 4 * block.grid.rank).trial.plan
    assert [(one.plants, one.actual.stand) for one in split.plantings if one.actual] == [(4, 5), (5, 6)]


@pytest.mark.parametrize(
    ("came", "shares"),
    [
        ({"stand": 16, "bought": 4}, [(6, None), (10, 4)]),  # 16 x 6/20 = 4.8, but 6 for 6 plants
        ({"bought": 10}, [(None, 3), (None, 7)]),  # nobody counted: 10 x 6/20 = 3
        ({"stand": 4, "bought": 16}, [(4, 2), (None, 14)]),
    ],
)
def test_plants_that_are_bought_in_go_where_seedlings_lack(came: Fields, shares: list[tuple[int, int]]) -> None:
    plan = ground({"from": "5 m", "plants": 20, "actual": {"sown": "2027-03-01"} | came})
    split = try_split(plan, "p1", nm("6 m")).trial.plan
    assert [(one.actual.stand or None, one.actual.bought) for one in split.plantings if one.actual] == shares
    assert try_join(split, "p1", FOOT).trial.plan.plantings[0].actual == plan.plantings[0].actual


def test_of_staggered_rows_a_length_holds_one_plant_fewer_and_the_parts_say_so() -> None:
    parts = try_split(ground(block("5 m", "3 m", pattern="staggered")), "p1")
    assert (parts.whole, parts.first, parts.rest) == (19, 9, 9)


@pytest.mark.parametrize("at", ["5 m", "8 m", "4 m", "11 m", "0 m"])
def test_a_reading_outside_the_block_is_refused_and_named(at: str) -> None:
    with pytest.raises(PlanError, match="does not lie inside Chard, from 5 m to 8 m"):
        try_split(ground(block("5 m", "3 m")), "p1", nm(at))


def test_one_rank_cannot_be_split() -> None:
    with pytest.raises(PlanError, match="nothing to split"):
        try_split(ground(block("5 m", "45 cm")), "p1")


def test_a_band_is_split_anywhere_a_tape_can_show() -> None:
    parts = try_split(ground(block("5 m", "3 m", pattern="broadcast")), "p1", nm("6234 mm"))
    assert block_of(parts.trial.plan, "p1") == spot("5 m", "6.23 m")


@given(plans(least_plantings=1), st.data())
def test_any_split_leaves_the_plan_alone_and_gives_a_valid_one(plan: Plan, data: st.DataObject) -> None:
    planting = data.draw(st.sampled_from(plan.plantings))
    before, whole = text_of(plan), layout_in(plan, planting.id)
    try:
        parts = try_split(plan, planting.id, data.draw(st.none() | st.integers(0, 8000).map(CM.__mul__)))
    except PlanError:
        return
    assert text_of(plan) == before
    assert list(faults(parts.trial.plan)) == []
    if parts.trial.can_be and whole.grid.pattern is Pattern.STRAIGHT and not whole.grid.runs_across:
        assert parts.first + parts.rest <= parts.whole


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_what_was_split_is_joined_to_what_it_was(size: Fields) -> None:
    plan = ground(size)
    whole = layout_in(plan, "p1")
    split = try_split(plan, "p1").trial.plan
    for planting, way in (("p1", FOOT), ("p1-2", HEAD)):
        joined = try_join(split, planting, way)
        after = layout_in(joined.trial.plan, "p1")
        assert (after.start, after.end, after.plants) == (whole.start, whole.end, whole.plants)
        assert len(joined.trial.plan.plantings) == 1


def test_blocks_a_gap_apart_are_joined_over_the_gap() -> None:
    joined = try_join(ground(block("5 m", "90 cm"), block("6.1 m", "90 cm")), "p1", FOOT)
    assert block_of(joined.trial.plan, "p1") == spot("5 m", "7 m")
    assert (joined.first, joined.rest, joined.whole) == (6, 6, 12)


def test_nothing_that_was_written_is_lost() -> None:
    joined = try_join(ground(block("5 m", "90 cm", note="wet"), block("5.9 m", "90 cm", note="dry")), "p2", HEAD)
    assert planting_of(joined.trial.plan, "p1").note == "wet\ndry"


UNLIKE = [
    (block("5.9 m", "90 cm", crop="leek"), "Chard cannot be joined with Leek"),
    (block("5.9 m", "90 cm", pattern="staggered"), "not stand in the same pattern"),
    (block("5.9 m", "90 cm", rows=1), "not stand in the same pattern"),
    (block("5.9 m", "90 cm", out="2027-09-01"), "their dates differ"),
    (block("6.5 m", "90 cm"), "do not touch"),
    (block("5.9 m", "90 cm", actual={"emerged": "2027-04-01"}), "not the same is recorded of them"),
    (block("5.9 m", "90 cm", sow_cells=9), "so many cells are to be sown for one of them alone"),
    (block("5.9 m", "90 cm", bed="b2"), "has no neighbour towards the foot"),
]


@pytest.mark.parametrize(("other", "why"), UNLIKE, ids=[why for _, why in UNLIKE])
def test_what_is_not_alike_or_not_near_is_not_joined(other: Fields, why: str) -> None:
    with pytest.raises(PlanError, match=why):
        try_join(ground(block("5 m", "90 cm"), other), "p1", FOOT)
