"""Copies by key: the first gap after the first that holds them all, their distances kept, no order carried."""

import pytest

from gardenplot.errors import PlanError
from gardenplot.gestures.copies import try_next_gap
from gardenplot.plan import planting_of
from gardenplot.season import dates_of
from tests.gestures.hand import block, block_of, ground, spot
from tests.plans import feet_plan


def test_a_copy_stands_in_the_next_gap_that_holds_it() -> None:
    plan = ground(block("0.3 m", "2 m"), block("3 m", "2 m"), block("5.3 m", "1 m"))
    trial = try_next_gap(plan, ["p1"])
    assert block_of(trial.plan, "p1-2") == spot("6.5 m", "8.5 m")
    assert (trial.can_be, trial.copies, trial.chosen) == (True, True, ("p1-2",))


def test_without_a_gap_after_it_goes_to_the_next_bed_and_last_to_what_lies_before() -> None:
    full = ground(block("4 m", "7.7 m"))
    assert block_of(try_next_gap(full, ["p1"]).plan, "p1-2") == spot("0 m", "7.7 m", "b2")
    short = ground(block("9 m", "2.7 m"), block("0 m", "20 m", bed="b2"))
    assert block_of(try_next_gap(short, ["p1"]).plan, "p1-2") == spot("0.3 m", "3 m")


def test_several_keep_their_distances() -> None:
    plan = ground(block("0.3 m", "1 m"), block("2 m", "1 m"), block("3.2 m", "1 m", crop="leek"))
    trial = try_next_gap(plan, ["p2", "p1"])
    assert (block_of(trial.plan, "p1-2"), block_of(trial.plan, "p2-2")) == (
        spot("4.4 m", "5.4 m"),
        spot("6.1 m", "7.1 m"),
    )


def test_copied_again_it_goes_on_to_the_gap_after_that() -> None:
    plan = try_next_gap(ground(block("0.3 m", "2 m")), ["p1"]).plan
    assert block_of(plan, "p1-2") == spot("2.5 m", "4.5 m")
    assert block_of(try_next_gap(plan, ["p1"]).plan, "p1-3") == spot("4.7 m", "6.7 m")


def test_where_no_gap_holds_it_its_length_is_said() -> None:
    plan = ground(block("0.3 m", "11.4 m"), block("0 m", "20 m", bed="b2"))
    with pytest.raises(PlanError, match=r"no gap holds a copy of 11\.40"):
        try_next_gap(plan, ["p1"])


def test_an_order_is_planted_once() -> None:
    plan = feet_plan()
    trial = try_next_gap(plan, ["p2"])
    copy = planting_of(trial.plan, trial.planting or "")
    assert planting_of(plan, "p2").order == "o1"
    assert (copy.order, copy.plants, copy.in_ground) == (None, 200, dates_of(plan, planting_of(plan, "p2")).in_ground)
