"""A changed order planned again as worked by hand; sums are common practice, no source.

Cos lettuce, 60 wanted for Sat 19 June 2027. The bed is 1 m wide with 15 cm kept at its edges: (100 - 30) / 30 = 2.3,
so 3 rows; 60 / 3 = 20 ranks, 20 x 30 cm = 6.00 m from the head. Ready Fri 18 June, 45 days in the field: set out Tue
4 May; 28 days in trays: sown Tue 6 April. On Mon 10 May 80 are wanted: 20 more, 20 / 3 = 6.7, so 7 ranks, 2.10 m.
"""

import pytest

from tests.scenarios.planned_again import Again, again, changed_order, kinds, the_answer, the_setback
from tests.scenarios.test_commands import assert_holds, cm

__all__ = ["again"]
TODAY = "2027-05-10"


def test_what_stands_stays_and_a_second_block_or_fewer_heads_are_left(again: Again) -> None:
    found = the_setback(again(changed_order(), TODAY), "more is ordered")
    assert_holds(found, planned=60, short=20, order="o", units_wanted=80)
    assert kinds(found) == ["harvest less", "buy in", "second block"]
    assert_holds(the_answer(found, "harvest less"), units=60, units_short=20, stakes=[])


def test_20_bought_in_are_set_out_at_once_and_a_market_late(again: Again) -> None:
    """10 May + 45 days = Thu 24 June, for Sat 26 June."""
    bought = the_answer(the_setback(again(changed_order(), TODAY), "more is ordered"), "buy in")
    assert_holds(
        bought, buy=20, units=80, units_short=0, set_out=TODAY, ready="2027-06-24", market="2027-06-26",
        missed=["2027-06-19"], costs_markets=1, leftover_mm=cm(190),
    )  # fmt: skip
    assert [(one["end"], one["old_mm"], one["new_mm"]) for one in bought["stakes"]] == [
        ("begins", None, cm(600)), ("ends", None, cm(810))
    ]  # fmt: skip


def test_20_sown_again_come_five_markets_later(again: Again) -> None:
    """20 / 0.9 = 22.2: 23 cells; two seeds 1 - 0.1^2 = 0.99, 20 / 0.99 = 20.2: 21 cells.

    10 May + 28 days = Mon 7 June, + 45 days = Thu 22 July.
    """
    second = the_answer(the_setback(again(changed_order(), TODAY), "more is ordered"), "second block")
    assert_holds(second["sow"], plants=20, cells=23, cells_with_two_seeds=21, seeds_for_these=42)
    assert_holds(second, set_out="2027-06-07", ready="2027-07-22", market="2027-07-24", costs_markets=5, units=80)


def test_a_block_that_is_not_set_out_grows_and_one_stake_moves(again: Again) -> None:
    """80 / 3 = 26.7, so 27 ranks, 27 x 30 cm = 8.10 m."""
    found = the_setback(again(changed_order(is_out=False), TODAY), "more is ordered")
    longer = the_answer(found, "longer block")
    assert_holds(longer, plants=80, plants_per_row=[27, 27, 26], length_mm=cm(810), units_short=0, costs_markets=0)
    assert longer["stakes"] == [
        {"bed": "b1", "planting": "p", "end": "ends", "old_mm": cm(600), "new_mm": cm(810)}
    ]  # fmt: skip


def test_where_no_bed_has_room_the_ways_out_are_told_on_days_that_can_still_be(again: Again) -> None:
    found = the_setback(again(changed_order(length="6 m"), TODAY), "more is ordered")
    ways = [one for one in found["answers"] if one["kind"] == "way out"]
    assert ways
    assert all(one["set_out"] >= "2027-06-07" for one in ways)
    assert "a further bed of 2.10\u2009m" in ways[0]["says"]


def test_of_fewer_15_are_spare_or_the_block_is_shorter(again: Again) -> None:
    """45 wanted: 45 / 3 = 15 ranks, 4.50 m, 1.50 m shorter. Set out, nothing can be shorter."""
    found = the_setback(again(changed_order(45, is_out=False), TODAY), "less is ordered")
    assert kinds(found) == ["keep as spare", "shorter block"]
    shorter = the_answer(found, "shorter block")
    assert_holds(shorter, plants=45, length_mm=cm(450), leftover_mm=cm(550), units_short=0)
    assert [one["new_mm"] for one in shorter["stakes"]] == [cm(450)]
    assert kinds(the_setback(again(changed_order(45), TODAY), "less is ordered")) == ["keep as spare"]


def test_less_than_a_rank_fewer_is_no_change(again: Again) -> None:
    assert again(changed_order(58), TODAY)["setbacks"] == []
    assert again(changed_order(57), TODAY)["setbacks"] != []


def test_an_order_withdrawn_leaves_spare_plants_or_free_ground(again: Again) -> None:
    """Radish: (100 - 15) / 15 = 5.7, so 6 rows of 10.00 m / 5 cm = 200; 1,200 plants."""
    plan = changed_order(0)
    plan["wishes"] = [{"id": "wr", "crop": "r"}]
    found = the_setback(again(plan, TODAY), "order withdrawn")
    assert kinds(found) == ["keep as spare", "fill the gap"]
    filled = the_answer(found, "fill the gap")
    assert_holds(filled["filled"][0], plants=1200, from_mm=0, to_mm=cm(1000), in_ground=TODAY)
    assert filled["units"] == 0
    in_trays = the_setback(again(changed_order(0, is_out=False), TODAY), "order withdrawn")
    assert kinds(in_trays) == ["keep as spare", "do not plant"]
    assert [one["new_mm"] for one in the_answer(in_trays, "do not plant")["stakes"]] == [None, None]


@pytest.mark.parametrize(
    ("on", "days", "kind"), [("2027-06-12", 7, "later market"), ("2027-07-03", -14, "keep as spare")]
)
def test_another_market_day_is_missed_by_so_many_days(again: Again, on: str, days: int, kind: str) -> None:
    """Ready on 18 June: wanted on 11 June it is 7 days late; wanted on 2 July it is over 14 days before."""
    found = the_setback(again(changed_order(60, on), TODAY), "not ready for its market")
    assert_holds(found, days=days, order="o")
    assert kinds(found) == [kind]


def test_in_trays_it_waits_for_a_later_market_day(again: Again) -> None:
    """Wanted on 2 July, it goes in 45 days before, on Tue 18 May, 42 days old."""
    found = the_setback(again(changed_order(60, "2027-07-03", is_out=False), TODAY), "not ready for its market")
    later = the_answer(found, "later market")
    assert_holds(later, set_out="2027-05-18", ready="2027-07-02", market="2027-07-03", missed=[], stakes=[])


def test_cells_too_few_for_the_order_are_told_before_anything_is_counted(again: Again) -> None:
    """70 cells x 90 % = 63 plants; 80 must stand: 17 short."""
    plan = changed_order(80, is_out=False)
    plan["plantings"][0] |= {"plants": 80, "actual": {"sown": "2027-04-06", "cells": 70}}
    found = the_setback(again(plan, TODAY), "more is ordered")
    assert_holds(found, cells_sown=70, to_set_out=63, short=17)
    assert kinds(found) == ["buy in", "plant short", "spread out", "sow again"]


def test_more_of_what_is_sown_with_two_seeds_in_a_cell_is_sown_so(again: Again) -> None:
    """20 more; 20 / 0.95 = 21.05, 22; of two seeds at 90 % one comes up in 99 %: 22.2, 23 cells, 46 seeds."""
    plan = changed_order()
    plan["crops"][0] = plan["crops"][0] | {"seeds_per_cell": 2}
    found = again(plan, "2027-05-10", "--loss", "5 %")["setbacks"][0]
    sown = the_answer(found, "second block")
    assert sown["sow"] == {"plants": 22, "cells": 23, "seeds": 46}
    assert sown["says"].startswith("Sow 23 cells for 22 plants, 46 seeds")
