"""An order taken away leaves its plantings as they stand, in length, plants and days."""

from typing import Any

import pytest
from attrs import evolve

from gardenplot.gestures.orders import drop_order
from gardenplot.layout import lay_out_plan
from gardenplot.plan import planting_of
from gardenplot.plan.edits import change_planting
from gardenplot.season import dates_of
from gardenplot.units import parse_length
from tests.plans import feet_plan


def test_a_removed_order_leaves_as_many_plants_in_as_long_a_block_on_the_same_days() -> None:
    plan = feet_plan()
    after = drop_order(plan, "o1")
    assert after.orders == ()
    before, left = (
        {layout.planting: layout for laid in lay_out_plan(one) for layout in laid.layouts} for one in (plan, after)
    )
    assert {name: (one.plants, one.length) for name, one in left.items()} == {
        name: (one.plants, one.length) for name, one in before.items()
    }
    for planting in plan.plantings:
        assert dates_of(after, planting_of(after, planting.id)) == dates_of(plan, planting)


@pytest.mark.parametrize("own", [{"plants": 70}, {"length": parse_length("2 ft")}])
def test_a_removed_order_leaves_a_plantings_own_size_alone(own: dict[str, Any]) -> None:
    plan = change_planting(feet_plan(), "p2", **own)
    before, after = planting_of(plan, "p2"), planting_of(drop_order(plan, "o1"), "p2")
    assert evolve(after, in_ground=before.in_ground) == evolve(before, order=None)


def test_a_block_that_does_not_fit_keeps_what_it_wanted() -> None:
    plan = feet_plan()
    wanted = {layout.planting: layout.wanted for laid in lay_out_plan(plan) for layout in laid.layouts}["p2"]
    outside = change_planting(plan, "p2", start=parse_length("900 ft"))
    assert planting_of(drop_order(outside, "o1"), "p2").plants == wanted
