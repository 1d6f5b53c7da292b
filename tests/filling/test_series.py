"""Repeated orders and wishes stand on all of their days or on none, and the bound is none that they are above."""

import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.__main__ import main
from gardenplot.drawing.filling_words import found_rows
from gardenplot.drawing.wish_table import lacks_anything, wish_rows
from gardenplot.filling import Filling, Weights, fill
from gardenplot.filling.offers import WhyNot
from gardenplot.plan import Plan
from gardenplot.plan.file import text_of
from gardenplot.plan.series import series_of
from gardenplot.plan.valid import faults
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]
LETTUCE: Fields = {
    "id": "c", "name": "Lettuce", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm", "field_days": 40,
}  # fmt: skip
ORDER: Fields = {"id": "o", "crop": "c", "units": 10, "on": "2027-07-01", "times": 3, "every_days": 14}


def plan_with(
    places: int, orders: list[Fields], wishes: list[Fields] | None = None, plantings: list[Fields] | None = None,
    place: Fields | None = None,
) -> Plan:  # fmt: skip
    """A bed with one row of so many places, for lettuce that stands for 40 days."""
    return plan_from(
        place,
        beds=[{"id": "b", "name": "Bed", "length": f"{20 * places} cm", "width": "40 cm"}],
        crops=[LETTUCE],
        orders=orders,
        wishes=wishes or [],
        plantings=plantings or [],
    )


def days(filling: Filling, order: str = "o") -> int:
    return sum(one.wanted == order for one in filling.placed)


def test_a_series_of_which_a_day_finds_no_ground_stands_on_none_and_says_so() -> None:
    """Three sowings two weeks apart stand together: 30 places are needed, 25 are there."""
    filling = fill(plan_with(25, [ORDER]))
    assert days(filling) == 0
    assert {one.why for one in filling.lacking} == {WhyNot.SERIES}
    assert {row.cells[1] for row in found_rows(filling)} == {"not all of its days found ground, so none has any"}
    assert filling.worth == 0
    assert not filling.proven


def test_it_stands_on_all_of_them_where_they_fit_as_one_series() -> None:
    filling = fill(plan_with(30, [ORDER]))
    assert (days(filling), filling.proven, filling.lacking) == (3, True, ())
    (first, *_others) = filling.placed
    assert len(series_of(filling.plan, first.planting)) == 3


def test_a_grower_may_have_as_many_days_as_find_ground() -> None:
    filling = fill(plan_with(25, [ORDER]), weights=Weights(apart=True))
    assert days(filling) == 3
    assert sorted(one.plants for one in filling.placed) == [5, 10, 10]


def test_a_series_is_placed_before_what_is_worth_less_than_all_of_it() -> None:
    """An order counts ten times as much as the wish, which would leave its third day without ground."""
    wish = {"id": "w", "crop": "c", "least": 20, "most": 20, "days": 200, "earliest": "2027-05-01"}
    for places, found in ((30, (3, 0)), (25, (0, 1)), (50, (3, 1))):
        filling = fill(plan_with(places, [ORDER], [wish]))
        assert (days(filling), days(filling, "w")) == found


def test_a_series_of_which_a_day_is_in_the_frost_stands_on_none() -> None:
    order = ORDER | {"on": "2027-05-27"}
    filling = fill(plan_with(60, [order], place={"last_freeze": {"50%": "04-20"}}))
    assert days(filling) == 0
    assert [one.why for one in filling.lacking] == [WhyNot.FROST, WhyNot.SERIES, WhyNot.SERIES]
    assert filling.bound == 0


def test_the_command_says_why_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    old, why = tmp_path / "old.gardenplot", "not all of its days found ground, so none has any"
    old.write_text(text_of(plan_with(25, [ORDER])), encoding="utf-8")
    assert main(["fill", str(old)]) == 0
    assert f"Lettuce: 0 of 10 plants have ground; {why}" in capsys.readouterr().out
    assert main(["fill", str(old), "--json"]) == 0
    assert [one["why"] for one in json.loads(capsys.readouterr().out)["lacking"]] == [why] * 3


def test_what_is_planted_of_it_already_counts_as_its_days() -> None:
    stands = {"id": "p", "bed": "b", "crop": "c", "from": "0 m", "order": "o", "market": 2}
    assert days(fill(plan_with(30, [ORDER], plantings=[stands]))) == 2
    assert days(fill(plan_with(25, [ORDER], plantings=[stands]))) == 0


def test_the_last_day_that_lacks_is_not_said_to_go_without_for_others() -> None:
    """Two of the three days stand, 20 of 25 places; the third finds 5 of its 10, and the others have theirs."""
    stand = [
        {"id": f"p{market}", "bed": "b", "crop": "c", "order": "o", "market": market, "plants": 10}
        for market in (1, 2)
    ]
    filling = fill(plan_with(25, [ORDER], plantings=stand))
    assert [(one.plants, one.lacks, one.why) for one in filling.lacking] == [(0, 10, WhyNot.WHOLE)]
    whole = "not all of it found ground, and it is planted whole or not at all"
    assert [row.cells[1] for row in found_rows(filling)] == [whole]


class Told:
    """Keeps the fillings that it is told of, and goes on or does not."""

    def __init__(self, *, goes_on: bool) -> None:
        self.fillings: list[Filling] = []
        self._goes_on = goes_on

    def __call__(self, filling: Filling) -> bool:
        self.fillings.append(filling)
        return self._goes_on


@st.composite
def seasons(draw: st.DrawFn) -> Plan:
    """One to three repeated orders and up to three wishes in a bed that is mostly too short for them."""
    orders = [
        {
            "id": f"o{number}", "crop": "c", "units": draw(st.integers(2, 9)), "times": draw(st.integers(1, 4)),
            "on": (date(2027, 6, 10) + timedelta(days=draw(st.integers(0, 40)))).isoformat(),
            "every_days": draw(st.sampled_from((7, 14, 30))),
        }
        for number in range(draw(st.integers(1, 3)))
    ]  # fmt: skip
    wishes = [
        {"id": f"w{number}", "crop": "c", "least": 3, "most": draw(st.integers(3, 12)), "days": 60,
         "earliest": "2027-05-10", "latest": "2027-08-01", "piece": draw(st.sampled_from((3, 2))),
         "worth": draw(st.sampled_from((1, 30))), "times": draw(st.sampled_from((1, 1, 2))), "every_days": 20}
        for number in range(draw(st.integers(0, 3)))
    ]  # fmt: skip
    return plan_with(draw(st.integers(8, 30)), orders, wishes)


@settings(max_examples=50)
@given(seasons())
def test_a_whole_is_whole_and_no_filling_is_above_its_bound(plan: Plan) -> None:
    told = Told(goes_on=True)
    filling = fill(plan, turns=60, told=told)
    for found in (filling, *told.fillings):
        assert not list(faults(found.plan))
        for order in plan.orders:
            assert days(found, order.id) in (0, order.times)
        for wish in plan.wishes:
            assert len({one.in_ground for one in found.placed if one.wanted == wish.id}) in (0, wish.times)
            plants = [one.plants for one in found.placed if one.wanted == wish.id]
            assert not plants or min(plants) >= (wish.piece or 1)
        assert found.worth <= found.bound
    assert fill(plan, turns=60) == filling


@pytest.mark.parametrize("turns", [1, 300])
def test_more_turns_are_never_worth_less_than_a_stop_at_once(turns: int) -> None:
    plan = plan_with(40, [ORDER, ORDER | {"id": "q", "units": 12}], [{"id": "w", "crop": "c", "most": 20}])
    first = Told(goes_on=False)
    stopped = fill(plan, turns=turns, told=first)
    assert stopped.worth <= fill(plan, turns=turns).worth
    assert all(days(one) in (0, 3) for one in (stopped, *first.fillings))


SOWN: Fields = {
    "id": "w", "crop": "c", "least": 8, "most": 10, "days": 40, "earliest": "2027-05-01", "times": 3,
    "every_days": 14,
}  # fmt: skip


@pytest.mark.parametrize(("places", "found"), [(30, [10, 10, 10]), (24, [8, 8, 8]), (23, [])])
def test_a_wish_for_several_times_has_all_of_them_or_none(places: int, found: list[int]) -> None:
    """Sown every two weeks for 40 days, all three stand together for a while."""
    filling = fill(plan_with(places, [], [SOWN]))
    assert [one.plants for one in filling.placed] == found
    assert [one.in_ground for one in filling.placed] == [date(2027, 5, day) for day in (1, 15, 29)][: len(found)]
    assert {filling.plan.plantings[number].market for number in range(len(found))} == {*range(1, len(found) + 1)}
    if found:
        assert len({one.series for one in filling.plan.plantings}) == 1
        assert fill(filling.plan).worth <= 30 - sum(found)
    else:
        assert {one.why for one in filling.lacking} == {WhyNot.SERIES}
    apart = fill(plan_with(23, [], [SOWN]), weights=Weights(apart=True))
    assert sum(one.plants for one in apart.placed) == 20


def test_a_time_of_a_wish_that_is_planted_already_is_not_planted_again() -> None:
    plan = plan_with(60, [], [SOWN])
    filling = fill(plan)
    without = evolve(filling.plan, plantings=tuple(one for one in filling.plan.plantings if one.market != 2))
    (again,) = fill(without).placed
    assert again.in_ground == date(2027, 5, 15)
    assert wish_rows(filling.plan)[0].cells[3:5] == ("30", "met")
    assert wish_rows(without)[0].cells[3:5] == ("20", "short by 10 plants")
    assert lacks_anything(without)
    assert not lacks_anything(filling.plan)
