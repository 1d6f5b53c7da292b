"""Series laid into a plan: none over another on its days, those without ground told, five hundred in good time."""

from datetime import date, timedelta

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.findings import Kind, find_in_bed
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.series import other_markets, repeat_every, repeat_for_markets
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Order, Plan, bed_of, planting_of
from gardenplot.plan.edits import add_bed, add_order, change_crop, change_planting, remove_planting
from gardenplot.plan.series import series_of
from gardenplot.season import dates_of, market_days
from gardenplot.units import CM
from tests.plans import beds, metric_plan

JUNE = date(2027, 6, 5)


def ordered(times: int = 4, units: int = 40) -> Plan:
    """The tunnel's pak choi for the first of several weekly markets; it is ready 48 days after setting out."""
    plan = add_order(metric_plan(), Order("o1", "pak-choi", units, JUNE, times=times, every_days=7))
    return change_planting(plan, "p1", order="o1", plants=None, in_ground=None, out=None)


def test_every_other_market_day_gets_its_planting_counted_back_from_it() -> None:
    plan = ordered()
    assert other_markets(plan, "p1") == (2, 3, 4)
    found = repeat_for_markets(plan, "p1", 3)
    assert found.without_ground == ()
    days = market_days(plan.orders[0])
    for number, one in enumerate(series_of(found.plan, "p1")):
        assert (one.order, one.market or 1) == ("o1", number + 1)
        assert dates_of(found.plan, one).ready == days[number] - timedelta(days=1)
        assert layout_in(found.plan, one.id).plants >= 40
    assert other_markets(found.plan, "p1") == ()
    with pytest.raises(PlanError, match="no market day"):
        repeat_for_markets(found.plan, "p1", 1)


def test_only_so_many_market_days_as_are_asked_for_and_none_that_is_planted() -> None:
    plan = change_planting(ordered(), "p3", order="o1", market=2)
    found = repeat_for_markets(plan, "p1", 1)
    assert [planting_of(found.plan, one).market for one in found.made] == [3]


def test_the_same_bed_comes_first_then_those_below_it() -> None:
    found = repeat_for_markets(remove_planting(ordered(times=6), "p3"), "p1", 5)
    placed = [(layout_in(found.plan, one).bed, layout_in(found.plan, one).start // CM) for one in found.made]
    assert placed == [("b1", 380), ("b1", 730), ("b1", 1080), ("b2", 1215), ("b2", 1465)]


def test_what_is_repeated_every_so_many_days_keeps_its_plants_and_no_order() -> None:
    plan = metric_plan()
    found = repeat_every(plan, "p1", 3, 60)
    days = [(one.in_ground, one.out, one.plants, one.order) for one in series_of(found.plan, "p1")]
    april, may = date(2027, 4, 9), date(2027, 5, 28)
    assert days == [
        (april + timedelta(days=60 * number), may + timedelta(days=60 * number), 120, None) for number in range(4)
    ]
    assert {planting_of(found.plan, one).bed for one in found.made} == {"b1"}
    assert {layout_in(found.plan, one).start for one in found.made} == {30 * CM}


def test_what_fills_its_gap_is_repeated_as_long_as_it_is() -> None:
    plan = metric_plan()
    found = repeat_every(plan, "p3", 1, 60)
    assert layout_in(found.plan, found.made[0]).length == layout_in(plan, "p3").length


def test_those_without_ground_are_left_out_and_told() -> None:
    found = repeat_every(metric_plan(), "p1", 3, 1)
    april = date(2027, 4, 9)
    assert found.without_ground == tuple(april + timedelta(days=number) for number in (1, 2, 3))
    assert found.plan == metric_plan()


def test_a_series_needs_a_first_day_and_ends_with_the_calendar() -> None:
    plan = change_planting(metric_plan(), "p1", in_ground=None, out=None)
    with pytest.raises(PlanError, match="needs a first day"):
        repeat_every(plan, "p1", 2, 7)
    late = change_planting(metric_plan(), "p1", in_ground=date(9999, 10, 1), out=date(9999, 12, 1))
    with pytest.raises(PlanError, match="calendar ends"):
        repeat_every(late, "p1", 9, 30)


@settings(max_examples=40, deadline=None)
@given(st.lists(beds(), max_size=3), st.integers(1, 12), st.integers(1, 40), st.sampled_from(["p1", "p2", "p3"]))
def test_nothing_that_is_placed_stands_over_anything_else(
    more: list[object], times: int, days: int, planting: str
) -> None:
    plan = metric_plan()
    for bed in more:
        plan = add_bed(plan, bed)  # type: ignore[arg-type]  # a bed of the strategy
    before = evolve(plan)
    found = repeat_every(plan, planting, times, days)
    assert plan == before
    assert len(found.made) + len(found.without_ground) == times
    members = {one.id for one in series_of(found.plan, planting)}
    assert members == ({planting, *found.made} if found.made else set())
    for bed_id in {planting_of(found.plan, one).bed for one in found.made}:
        against = find_in_bed(lay_out_bed(found.plan, bed_of(found.plan, bed_id)))
        impossible = {Kind.OVERLAP, Kind.OUTSIDE, Kind.NO_ROW} & {one.kind for one in against}
        assert not [one for one in against if one.kind in impossible and one.planting in found.made]


def test_five_hundred_successions_are_placed() -> None:
    plan = change_crop(metric_plan(), "pak-choi", field_days=20)
    plan = change_planting(plan, "p1", plants=12, out=None)
    found = repeat_every(plan, "p1", 500, 7)
    assert len(found.made) == 500
    assert len({one.series for one in found.plan.plantings if one.id in found.made}) == 1
