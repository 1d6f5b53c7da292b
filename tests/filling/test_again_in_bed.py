"""Planning again what is in the ground, over any losses, days and orders: it stays; every answer is a valid plan."""

import json
from datetime import date
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.again_words import answer_words, moved_words, setback_words
from gardenplot.drawing.together_words import together_words
from gardenplot.errors import PlanError
from gardenplot.filling.again import AnswerKind, Setback, Why, plan_again
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.moved import moved
from gardenplot.filling.together import all_together, answer_all, by_number
from gardenplot.findings import find_all
from gardenplot.layout import Layout, lay_out_plan, planted_for_orders
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.plan.valid import faults
from tests.plans import plans

Fields = dict[str, Any]
CROPS: list[Fields] = [
    {"id": "c", "name": "Cos lettuce", "in_row": "30 cm", "row_spacing": "30 cm", "edge": "15 cm",
     "germination": "90 %", "field_days": 45, "raising_days": 28, "harvest_days": 6},
    {"id": "d", "name": "Beetroot", "in_row": "10 cm", "row_spacing": "30 cm", "edge": "15 cm", "establish": "direct",
     "field_days": 60, "field_loss": "10 %", "seeds_per_row": "30 / m", "seeder_slack": "10 %", "harvest_days": 20},
    {"id": "r", "name": "Radish", "in_row": "5 cm", "row_spacing": "15 cm", "establish": "direct", "field_days": 28},
]  # fmt: skip
BEDS: list[Fields] = [
    {"id": "b1", "name": "Upper bed", "length": "10 m", "width": "1 m"},
    {"id": "b2", "name": "Lower bed", "length": "7 m", "width": "1 m"},
]


def plan_of(actual: Fields, *more: Fields, units: int = 60, **fields: Any) -> Plan:
    """60 Cos lettuce in 6 m for 19 June, set out on 4 May, with what came about; and further plantings."""
    first = {"id": "p", "bed": "b1", "crop": "c", "from": "0 m", "length": "6 m", "order": "o"}
    came = {"sown": "2027-04-06", "set_out": "2027-05-04", "planted": 60} | actual
    parts: Fields = {
        "beds": BEDS, "crops": CROPS,
        "orders": [{"id": "o", "crop": "c", "units": units, "on": "2027-06-19"},
                   {"id": "o2", "crop": "d", "units": 200, "on": "2027-09-11"}],
        "wishes": [{"id": "wr", "crop": "r", "least": 100, "most": 300}],
        "plantings": [first | {"actual": came}, *more],
    }  # fmt: skip
    return plan_of_text(json.dumps({"gardenplot": 1} | parts | fields)).plan


AFTER: Fields = {"id": "q", "bed": "b1", "crop": "d", "from": "0 m", "order": "o2"}


def the(plan: Plan, why: Why, today: date) -> Setback:
    (found,) = [one for one in plan_again(plan, today) if one.why is why]
    return found


def layout_of(plan: Plan, planting: str) -> Layout:
    return next(one for laid in lay_out_plan(plan) for one in laid.layouts if one.planting == planting)


_COUNTS = st.none() | st.integers(0, 70)


@settings(max_examples=60)
@given(
    st.fixed_dictionaries({}, optional={
        "standing": st.integers(0, 70), "failed_rows": st.lists(st.integers(1, 4), max_size=3),
        "harvested": st.sampled_from(("2027-06-10", "2027-06-25", "2027-07-10")),
        "cleared": st.sampled_from(("2027-07-10", "2027-07-30")),
    }),
    st.sampled_from((0, 30, 59, 60, 61, 120)), st.integers(0, 120), st.integers(0, 30), st.booleans(), st.booleans(),
)  # fmt: skip
def test_what_is_in_the_ground_stays_in_every_answer_which_is_a_valid_plan(
    came: Fields, units: int, later: int, loss: int, follows: bool, sits: bool
) -> None:
    beside: Fields = {"id": "g", "bed": "b1", "crop": "c", "from": "7 m", "length": "1 m",
                      "actual": {"set_out": "2027-05-01"}}  # fmt: skip
    plan = plan_of(came, *([AFTER] if follows else []), *([beside] if sits else []), units=units)
    today = date.fromordinal(date(2027, 5, 6).toordinal() + later)
    staked = as_staked(plan)
    there = [one.id for one in plan.plantings if is_in_ground(one)]
    before = {(one.kind, one.planting) for one in find_all(plan) if one.cannot_be_done}
    before |= {(one.kind, one.planting) for one in find_all(staked) if one.cannot_be_done}
    found = plan_again(plan, today, Fraction(loss, 100))
    assert found == plan_again(plan_of_text(text_of(plan)).plan, today, Fraction(loss, 100))
    for setback in found:
        assert all(setback_words(plan, setback))
        assert [len(one.moved) for one in setback.answers] == sorted(len(one.moved) for one in setback.answers)
        for answer in setback.answers:
            assert not list(faults(answer.plan))
            assert {(one.kind, one.planting) for one in find_all(answer.plan) if one.cannot_be_done} <= before
            assert [layout_of(answer.plan, one) for one in there] == [layout_of(plan, one) for one in there]
            assert answer.moved in (moved(plan, answer.plan), moved(staked, answer.plan))
            assert len(moved_words(answer, plan)) == len(answer.moved)
            assert answer_words(answer)
            assert plan_of_text(text_of(answer.plan)).plan == answer.plan
    for aim, one in all_together(plan, today):
        assert not list(faults(one.plan))
        assert together_words(aim, one)


def test_plants_lost_here_and_there_are_put_back_among_the_others() -> None:
    """51 of 60 stand: 9 gaps, anywhere in the 6 m that the block has."""
    lost = the(plan_of({"standing": 51}), Why.LOST, date(2027, 5, 10))
    bought = next(one for one in lost.answers if one.kind is AnswerKind.BUY_IN)
    gaps = layout_of(bought.plan, bought.new or "")
    assert (gaps.start, gaps.end, gaps.plants) == (*_ends(bought.plan, "p"), 9)
    assert planted_for_orders(lay_out_plan(bought.plan)) == {("o", 1): 60}
    assert not bought.moved
    assert not [one for one in plan_again(bought.plan, date(2027, 5, 10)) if one.why is Why.LOST]


def _ends(plan: Plan, planting: str) -> tuple[int, int]:
    layout = layout_of(plan, planting)
    return layout.start, layout.end


def test_rows_that_were_replanted_and_the_rest_fill_each_place_once() -> None:
    lost = the(plan_of({"failed_rows": [1, 3]}), Why.LOST, date(2027, 5, 10))
    assert (lost.standing, lost.lacks, lost.empty) == (20, 40, 12_000_000_000)
    bought = next(one for one in lost.answers if one.kind is AnswerKind.BUY_IN)
    rows, gaps = layout_of(bought.plan, "p").rows, layout_of(bought.plan, bought.new or "").rows
    assert [(one.offset, one.count) for one in gaps] == [(one.offset, one.count) for one in (rows[0], rows[2])]


def test_where_all_is_lost_the_ground_is_filled_with_something_else() -> None:
    lost = the(plan_of({"standing": 0}), Why.LOST, date(2027, 5, 10))
    filled = next(one for one in lost.answers if one.kind is AnswerKind.FILL_GAP)
    assert [(one.wanted, one.plants) for one in filled.filled] == [("wr", 300)]
    assert planting_of(filled.plan, "p").actual.cleared == date(2027, 5, 10)  # type: ignore[union-attr]  # recorded


def test_what_is_cut_already_is_not_counted_as_lost() -> None:
    plan = plan_of({"standing": 10, "harvested": "2027-06-18"})
    assert not [one for one in plan_again(plan, date(2027, 6, 20)) if one.why is Why.LOST]


# sown in its bed


def sown(**actual: Any) -> Plan:
    """225 places of beetroot in 7.50 m, sown on 12 July for 11 September: 200 / 0.9 = 222.2, so 3 rows of 75."""
    came = {"sown": "2027-07-12", "set_out": "2027-07-12"} | actual
    beet = AFTER | {"length": "7.5 m", "actual": came}
    return plan_of({"cleared": "2027-06-22"}, beet)


def test_a_stand_counted_in_two_metres_of_row_stands_for_all() -> None:
    """14 in 2 m where 20 were meant: 225 x 14 / 20 = 157.5, so 157; 68 short, 6.80 m; 6.8 x 30 x 1.1 = 224.4."""
    thin = the(sown(stand=14, stand_row="2 m"), Why.LOST, date(2027, 7, 26))
    assert (thin.planned, thin.standing, thin.lacks) == (225, 157, 68)
    again, less, second = thin.answers
    assert [one.kind for one in thin.answers] == [AnswerKind.SOW_AGAIN, AnswerKind.LESS, AnswerKind.SECOND_BLOCK]
    assert (less.units, less.short) == (141, 59)
    assert again.sowing is not None
    assert (again.sowing.row, again.sowing.seeds, again.sowing.cells) == (6_800_000_000, 225, 0)
    assert (again.ready, again.market, again.costs) == (date(2027, 9, 24), date(2027, 9, 25), 2)
    assert [one.new for one in second.moved] == [7_500_000_000, 9_800_000_000]


def test_a_stand_counted_in_all_or_thick_enough() -> None:
    assert the(sown(stand=200), Why.LOST, date(2027, 7, 26)).lacks == 25
    assert not [one for one in plan_again(sown(stand=25, stand_row="2 m"), date(2027, 7, 26)) if one.why is Why.LOST]


# ground that is free early, or held longer


def test_ground_that_is_free_early_lets_the_next_crop_come_sooner_or_is_filled() -> None:
    """Ready 18 June, cut until the 24th, it was to be out on the 25th; cleared on 12 June its 6 m are free 13 days.

    Beetroot for 11 September, ready on the 10th, goes in on 12 July; ready 20 days sooner, on 21 August, it could
    still be cut, so it may go in on 22 June at the earliest; on 13 June it would be over.
    """
    plan = plan_of({"harvested": "2027-06-10", "cleared": "2027-06-12"}, AFTER)
    early = the(plan, Why.EARLY, date(2027, 6, 13))
    assert early.freed is not None
    assert (early.days, early.freed.first, early.freed.until) == (13, date(2027, 6, 13), date(2027, 6, 25))
    assert [one.kind for one in early.answers] == [AnswerKind.FILL_GAP]
    sooner = the(plan, Why.EARLY, date(2027, 6, 22)).answers[0]
    assert (sooner.kind, sooner.set_out, sooner.ready) == (AnswerKind.SOONER, date(2027, 6, 22), date(2027, 8, 21))
    assert not [one for one in plan_again(plan, date(2027, 6, 25)) if one.why is Why.EARLY]


def test_ground_that_is_held_longer_pushes_what_follows() -> None:
    """Cut from 10 to 16 July it is out on the 17th; beetroot for 28 August was to go in on 28 June, 19 days before.

    In on 17 July it is ready 60 days later, on 15 September. Only 4.00 m are free beside it: 3 rows of 40. The other
    bed, 7.00 m, holds 3 rows of 70 of the 225: 189 to sell, sown on the day that is asked, ready on 9 September.
    """
    orders = [{"id": "o", "crop": "c", "units": 60, "on": "2027-06-19"},
              {"id": "o2", "crop": "d", "units": 200, "on": "2027-08-28"}]  # fmt: skip
    plan = plan_of({"harvested": "2027-07-10"}, AFTER, orders=orders)
    held = the(plan, Why.HELD, date(2027, 7, 11))
    assert (held.planting, held.by, held.days) == ("q", "p", 19)
    later, shorter, parted = held.answers
    assert (later.kind, later.set_out, later.market) == (AnswerKind.LATER, date(2027, 7, 17), date(2027, 9, 18))
    assert (shorter.kind, shorter.plants, shorter.moved[0].new) == (AnswerKind.SHORTER, 120, 6_000_000_000)
    assert (shorter.set_out, shorter.market) == (date(2027, 7, 11), date(2027, 9, 11))
    assert parted.part is not None
    placed = parted.part.placed
    assert (parted.kind, placed.bed, placed.plants, parted.part.units) == (AnswerKind.OTHER_BED, "b2", 210, 189)
    assert "Plant 210 plants in Lower bed on Sun 11 Jul 2027, the other 15 late" in answer_words(parted)
    assert "189 for Sat 11 Sep 2027, 11 short; 202 to sell" in answer_words(parted)
    assert not [one for one in plan_again(later.plan, date(2027, 7, 11)) if one.why is Why.HELD]


def test_what_follows_goes_into_another_bed_whole_where_that_has_room() -> None:
    orders = [{"id": "o", "crop": "c", "units": 60, "on": "2027-06-19"},
              {"id": "o2", "crop": "d", "units": 100, "on": "2027-08-28"}]  # fmt: skip
    held = the(plan_of({"harvested": "2027-07-10"}, AFTER, orders=orders), Why.HELD, date(2027, 7, 11))
    kinds = {one.kind: one for one in held.answers}
    assert set(kinds) == {AnswerKind.LATER, AnswerKind.OTHER_PLACE, AnswerKind.OTHER_BED}
    assert kinds[AnswerKind.OTHER_BED].layout.bed == "b2"
    assert kinds[AnswerKind.OTHER_PLACE].layout.start == 6_000_000_000


# all together


def two_that_deviate() -> Plan:
    """9 lost of 60, 80 now wanted; and for 26 June 30 more, of which 20 have come up."""
    other: Fields = {"id": "s", "bed": "b2", "crop": "c", "from": "0 m", "order": "o3",
                     "actual": {"sown": "2027-04-13", "stand": 20}}  # fmt: skip
    orders = [{"id": "o", "crop": "c", "units": 80, "on": "2027-06-19"},
              {"id": "o3", "crop": "c", "units": 30, "on": "2027-06-26"}]  # fmt: skip
    return plan_of({"standing": 51}, other, orders=orders, wishes=[])


def test_each_answer_taken_is_the_ground_for_the_next() -> None:
    """With 9 put back and 20 in a second block 80 stand; the 20 of the other order are planted short in 2.10 m."""
    plan, today = two_that_deviate(), date(2027, 5, 10)
    one = answer_all(plan, today, Fraction(0), by_number([1, 2, 2]))
    assert [(each.setback.planting, each.setback.why) for each in one.taken] == [
        ("p", Why.LOST), ("p", Why.MORE), ("s", Why.RAISED)
    ]  # fmt: skip
    assert one.taken[1].answer is not None
    assert (one.taken[1].answer.units, one.short, one.buy, one.costs) == (80, 10, 29, 1)
    assert [(each.bed, each.old, each.new) for each in one.moved] == [
        ("b1", None, 6_000_000_000), ("b1", None, 8_100_000_000), ("b2", 3_000_000_000, 2_100_000_000)
    ]  # fmt: skip


def test_room_that_one_answer_took_is_not_offered_to_the_next() -> None:
    """9 plants and then 40 in the 4.00 m behind: 14 ranks, 4.20 m, have no room there but do in the other bed."""
    plan, today = plan_of({}, units=100), date(2027, 5, 10)
    block = next(one for one in the(plan, Why.MORE, today).answers if one.kind is AnswerKind.SECOND_BLOCK)
    assert planting_of(block.plan, block.new or "").bed == "b2"
    assert not [one for one in plan_again(block.plan, today) if one.why is Why.MORE]


def test_the_aims_choose_what_they_say() -> None:
    found = dict(all_together(two_that_deviate(), date(2027, 5, 10)))
    assert [len(one.moved) for one in found.values()] == [0, 2, 5]
    assert [one.short for one in found.values()] == [20, 0, 0]
    assert [one.buy for one in found.values()] == [19, 39, 0]


def test_an_answer_that_is_not_there_is_no_choice() -> None:
    with pytest.raises(PlanError, match="no answer 9"):
        answer_all(two_that_deviate(), date(2027, 5, 10), Fraction(0), by_number([9]))


@settings(max_examples=40)
@given(plans(), st.dates(date(2026, 12, 1), date(2028, 1, 31)))
def test_any_plan_is_answered_with_valid_plans_that_leave_what_is_in_the_ground(plan: Plan, today: date) -> None:
    there = [one.id for one in plan.plantings if is_in_ground(one)]
    for setback in plan_again(plan, today, Fraction(1, 10)):
        assert all(setback_words(plan, setback))
        for answer in setback.answers:
            assert not list(faults(answer.plan))
            kept = [one for one in there if any(each.id == one for each in answer.plan.plantings)]
            assert [layout_of(answer.plan, one) for one in kept] == [layout_of(plan, one) for one in kept]
            assert answer_words(answer)
            assert all(moved_words(answer, plan))
