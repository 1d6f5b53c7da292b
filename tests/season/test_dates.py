"""Dates counted back from the market day, and who has the ground when."""

from datetime import date, timedelta
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.plan import Actual, Establish, Order, Plan, crop_of
from gardenplot.season import Dates, dates_of, grown_on, market_days, share_days, stand_for
from gardenplot.season.dates import field_days
from gardenplot.season.orders import units_from, units_to_grow
from gardenplot.units import Length, parse_length
from tests.layout.ground import Fields, many, plan_with
from tests.plans import plans
from tests.seasons import days

BED: Fields = {"length": "10 m", "width": "75 cm"}
SPACED: Fields = {"in_row": "20 cm", "row_spacing": "25 cm"}


def planned(crop: Fields, market: str | None = None, lead_days: int = 1, **planting: Any) -> Dates:
    """The dates of one planting, for an order on a market day or for none."""
    order = {"id": "o1", "crop": "crop", "units": 100, "on": market, "lead_days": lead_days}
    wanted: Fields = {"order": "o1"} if market else {}
    plan = plan_with(BED, SPACED | crop, wanted | planting, orders=[order] if market else [])
    return dates_of(plan, plan.plantings[0])


def shown(day: date | None) -> str | None:
    return f"{day:%a} {day.isoformat()}" if day else None


@pytest.mark.parametrize(
    ("market", "field", "raising", "hardening", "sow", "harden", "set_out", "ready"),
    [
        ("2025-05-17", 35, 24, 7, "Tue 2025-03-18", "Fri 2025-04-04", "Fri 2025-04-11", "Fri 2025-05-16"),
        ("2025-05-17", 42, 28, 7, "Fri 2025-03-07", "Fri 2025-03-28", "Fri 2025-04-04", "Fri 2025-05-16"),
        ("2025-07-05", 58, 35, 8, "Wed 2025-04-02", "Tue 2025-04-29", "Wed 2025-05-07", "Fri 2025-07-04"),
        ("2025-05-10", 45, 28, 6, "Tue 2025-02-25", "Wed 2025-03-19", "Tue 2025-03-25", "Fri 2025-05-09"),
        ("2028-07-08", 65, 42, 8, "Wed 2028-03-22", "Tue 2028-04-25", "Wed 2028-05-03", "Fri 2028-07-07"),
        ("2025-06-21", 50, 30, 7, "Tue 2025-04-01", "Thu 2025-04-24", "Thu 2025-05-01", "Fri 2025-06-20"),
        ("2025-07-12", 60, 35, 7, "Mon 2025-04-07", "Mon 2025-05-05", "Mon 2025-05-12", "Fri 2025-07-11"),
    ],
    ids=["pak choi", "kohlrabi", "broccoli", "lettuce", "cabbage", "Chinese cabbage", "fennel"],
)
def test_a_transplanted_crop_is_counted_back_from_its_market_day(
    market: str, field: int, raising: int, hardening: int, sow: str, harden: str, set_out: str, ready: str
) -> None:
    dates = planned({"field_days": field, "raising_days": raising, "hardening_days": hardening}, market)
    assert [shown(day) for day in (dates.sow, dates.harden, dates.set_out, dates.ready)] == [
        sow, harden, set_out, ready,
    ]  # fmt: skip
    assert dates.in_ground == dates.set_out


@pytest.mark.parametrize(
    ("market", "field", "sow"),
    [("2025-07-05", 65, "Wed 2025-04-30"), ("2025-06-21", 45, "Tue 2025-05-06")],
    ids=["beets", "coriander"],
)
def test_a_crop_sown_direct_is_never_set_out(market: str, field: int, sow: str) -> None:
    dates = planned({"establish": "direct", "field_days": field, "raising_days": 20, "hardening_days": 7}, market)
    assert (shown(dates.sow), dates.harden, dates.set_out) == (sow, None, None)
    assert dates.in_ground == dates.sow


@pytest.mark.parametrize(("year", "sow"), [(2028, "Fri 2028-02-18"), (2027, "Wed 2027-02-17")])
def test_leeks_are_sown_a_day_later_where_a_leap_day_lies_between(year: int, sow: str) -> None:
    dates = planned({"raising_days": 75}, in_ground=f"{year}-05-03")
    assert (shown(dates.sow), dates.set_out) == (sow, date(year, 5, 3))


def test_a_plug_sown_today_for_setting_out_in_35_days_makes_the_market_of_26_july() -> None:
    sown_again = date(2025, 4, 21)
    dates = planned({"field_days": 60, "raising_days": 35}, in_ground="2025-05-26")
    assert (dates.sow, shown(dates.ready)) == (sown_again, "Fri 2025-07-25")


def test_the_day_that_was_typed_stands_and_the_rest_follows_it() -> None:
    dates = planned({"field_days": 60, "raising_days": 35}, "2025-07-12", in_ground="2025-05-22")
    assert (dates.set_out, shown(dates.ready)) == (date(2025, 5, 22), "Mon 2025-07-21")


def test_the_ground_is_free_the_day_after_the_crop_is_ready_unless_another_day_was_typed() -> None:
    assert planned({"field_days": 35}, "2025-05-17").out == date(2025, 5, 17)
    assert planned({"field_days": 35}, "2025-05-17", out="2025-05-24").out == date(2025, 5, 24)


def test_heads_that_are_late_stand_until_they_are_cut_for_the_market_that_they_make() -> None:
    """By hand: ready Mon 21 Jul, too late for 12 and 19 Jul; cut Fri 25 for Sat 26 Jul, and the ground is free.

    What can be cut for longer stays for longer; what was cut, or has its day typed, is not held.
    """
    crop: Fields = {"field_days": 60}
    late: dict[str, Any] = {"in_ground": "2025-05-22"}
    assert (planned(crop, "2025-07-12", **late).ready, planned(crop, "2025-07-12", **late).out) == (
        date(2025, 7, 21), date(2025, 7, 26),
    )  # fmt: skip
    assert planned(crop, "2025-07-12", 3, **late).out == date(2025, 7, 24)
    assert planned(crop | {"harvest_days": 14}, "2025-07-12", **late).out == date(2025, 8, 5)
    assert planned(crop, "2025-07-12", **late, out="2025-07-22").out == date(2025, 7, 22)
    assert planned(crop, "2025-07-12", **late, actual={"harvested": "2025-07-21"}).out == date(2025, 7, 22)
    assert planned(crop, **late).out == date(2025, 7, 22)


def test_heads_that_are_ready_early_stand_until_they_are_cut_for_their_market() -> None:
    early = planned({"field_days": 60}, "2025-07-12", in_ground="2025-05-05")
    assert (early.ready, early.last, early.out) == (date(2025, 7, 4), date(2025, 7, 4), date(2025, 7, 12))


@given(st.dates(date(2025, 4, 1), date(2025, 7, 31)), st.integers(0, 5), st.integers(0, 21))
def test_ground_is_free_the_day_after_the_last_cut_whenever_a_crop_goes_in(
    day: date, lead: int, harvest: int
) -> None:
    """Compared with weeks counted one by one from the market day on, each cut so many days before."""
    crop: Fields = {"field_days": 60, "harvest_days": harvest}
    dates, cut = (
        planned(crop, "2025-07-12", lead, in_ground=day.isoformat()),
        date(2025, 7, 12) - timedelta(days=lead),
    )
    assert dates.ready is not None
    assert dates.last is not None
    while cut < dates.ready:
        cut += timedelta(days=7)
    assert dates.out == max(dates.last, cut) + timedelta(days=1) == max(dates.stays or cut, cut) + timedelta(days=1)


def test_the_lead_is_taken_off_the_market_day() -> None:
    assert planned({"field_days": 35}, "2025-05-17", lead_days=0).ready == date(2025, 5, 17)
    assert planned({"field_days": 35}, "2025-05-17", lead_days=3).ready == date(2025, 5, 14)


def test_what_the_crop_does_not_tell_stays_open() -> None:
    assert planned({}, "2025-05-17") == Dates()
    assert planned({"raising_days": 24}, "2025-05-17") == Dates()
    april = date(2025, 4, 11)
    assert planned({}, in_ground="2025-04-11") == Dates(set_out=april, in_ground=april)


def test_days_before_the_calendar_begins_stay_open() -> None:
    assert planned({"field_days": 35, "raising_days": 24}, in_ground="0001-01-10").sow is None


@given(plans())
def test_dates_that_follow_from_one_day_come_in_order(plan: Plan) -> None:
    for planting in plan.plantings:
        said = (planting.sow, planting.in_ground, planting.ready, planting.order)
        if len([one for one in said if one is not None]) > 1 or planting.actual is not None:
            continue
        dates = dates_of(plan, planting)
        crop = crop_of(plan, planting.crop)
        hardens_last = (crop.hardening_days or 0) <= (crop.raising_days or 0)
        steps = (dates.sow, dates.harden if hardens_last else None, dates.set_out, dates.ready, dates.last)
        known = [day for day in steps if day is not None]
        assert known == sorted(known)


@given(plans())
def test_a_day_that_came_about_or_was_typed_stands(plan: Plan) -> None:
    for planting in plan.plantings:
        dates, came = dates_of(plan, planting), planting.actual or Actual()
        raised = crop_of(plan, planting.crop).establish is Establish.TRANSPLANT
        pairs = {
            "in_ground": came.set_out or (planting.in_ground if raised or came.sown is None else came.sown),
            "ready": came.harvested or (planting.ready if came.set_out is None else None),
            "out": came.cleared or planting.out,
        }
        if raised:
            pairs |= {"sow": came.sown or planting.sow, "harden": came.hardened}
        for name, day in pairs.items():
            assert day is None or getattr(dates, name) == day


@given(plans())
def test_without_short_days_ready_is_the_days_of_the_crop_after_it_went_in(plan: Plan) -> None:
    plan = evolve(plan, place=evolve(plan.place, short_days_count=True))
    for planting in plan.plantings:
        dates, days = dates_of(plan, planting), field_days(planting, crop_of(plan, planting.crop))
        if planting.ready is None and planting.actual is None and dates.in_ground is not None and days is not None:
            assert dates.ready == dates.in_ground + timedelta(days=days)


dated = st.builds(Dates, in_ground=st.none() | days(), out=st.none() | days())


@many
@given(dated, dated)
def test_sharing_days_is_the_same_from_both_sides(one: Dates, other: Dates) -> None:
    assert share_days(one, other) == share_days(other, one)


month = st.integers(1, 27).map(lambda day: date(2027, 6, day))
a_while = st.builds(
    lambda day, more: Dates(in_ground=day, out=day + timedelta(days=more)), month, st.integers(1, 20)
)  # fmt: skip


@many
@given(a_while, a_while)
def test_two_plantings_share_days_if_there_is_a_day_on_which_both_are_grown(one: Dates, other: Dates) -> None:
    all_days = [date(2027, 6, 1) + timedelta(days=number) for number in range(60)]
    assert share_days(one, other) == any(grown_on(one, day) and grown_on(other, day) for day in all_days)


def test_ground_is_taken_from_the_first_day_to_the_one_before_it_is_free() -> None:
    dates = Dates(in_ground=date(2027, 4, 9), out=date(2027, 5, 28))
    days_near = [date(2027, 4, 8), date(2027, 4, 9), date(2027, 5, 27), date(2027, 5, 28)]
    assert [grown_on(dates, day) for day in days_near] == [False, True, True, False]


def test_one_crop_may_follow_another_on_the_day_that_it_is_out() -> None:
    change = date(2027, 5, 28)
    assert not share_days(Dates(out=change), Dates(in_ground=change))
    assert share_days(Dates(out=change), Dates(in_ground=change - timedelta(days=1)))


def test_without_dates_the_ground_is_always_taken() -> None:
    assert grown_on(Dates(), date(2027, 5, 28))
    assert share_days(Dates(), Dates(in_ground=date(2027, 5, 28)))


@pytest.mark.parametrize(
    ("units", "each", "loss", "stand"),
    [
        (120, 1, "10 %", 134),
        (40, 1, "5 %", 43),
        (90, 1, "10 %", 100),
        (40, 5, "20 %", 250),
        (160, 1, "8 %", 174),
        (120, 1, "12 %", 137),
        (300, 1, "5 %", 316),
        (48, 1, "15 %", 57),
        (150, 1, "10 %", 167),
        (7, 1, None, 7),
    ],
)
def test_the_stand_makes_up_for_what_the_field_takes(units: int, each: int, loss: str | None, stand: int) -> None:
    crop = plan_with(BED, SPACED | {"field_loss": loss}).crops[0]
    assert stand_for(Order("o1", "crop", units, date(2025, 5, 17), each), crop) == stand


@pytest.mark.parametrize(
    ("said", "places", "units"),
    [({"plants_per_unit": 5}, 63, 40), ({"units_per_plant": 2}, 7, 44), ({}, 13, 41), ({"row": "1.5 ft"}, 50, 40)],
)
def test_a_crop_in_clumps_stands_as_a_place_for_each(said: dict[str, Any], places: int, units: int) -> None:
    """By hand: 40 units of 5, 20 % lost: 250 plants, 62.5 clumps of 4; 63 leave 201.6 plants, 40 units.

    Two from a plant: 25 plants, 6.25 clumps; 7 leave 44.8. One each: 50 plants, 12.5; 13 leave 41.6. A length of row
    is what it is, whatever stands in its places.
    """
    crop = plan_with(BED, SPACED | {"field_loss": "20 %", "clump": 4}).crops[0]
    order = Order("o1", "crop", 40, date(2025, 5, 17))
    row = said.pop("row", None)
    if row is not None:
        order = evolve(order, row_per_unit=Length(crop.in_row.nm, ""))
    order = evolve(order, **said)
    assert stand_for(order, crop) == places
    assert units_from(order, crop, places) == units


SOWN_DIRECT: Fields = {"establish": "direct", "field_days": 55}


def test_beets_of_55_days_with_10_for_the_cool_are_sown_65_days_before() -> None:
    """Scenario by hand: the packet says 55 days, a cool spring adds 10, and the market is on Sat 5 July 2025."""
    assert shown(planned(SOWN_DIRECT | {"cool_days": 10}, "2025-07-05").sow) == "Wed 2025-04-30"
    assert planned(SOWN_DIRECT | {"cool_days": 3}, "2025-07-05", cool_days=10).sow == date(2025, 4, 30)


@pytest.mark.parametrize(
    ("establish", "counted", "in_field"),
    [
        ("transplant", "setting out", 60),
        ("transplant", "sowing", 25),
        ("direct", "sowing", 60),
        ("direct", "setting out", 95),
    ],
)
def test_a_packet_counts_from_where_it_says(establish: str, counted: str, in_field: int) -> None:
    """Raised for 35 days: taken off where the packet counts from sowing, added where what it would raise is sown."""
    crop = {"establish": establish, "days_from": counted, "field_days": 60, "raising_days": 35}
    dates = planned(crop, in_ground="2025-05-01")
    assert dates.ready == date(2025, 5, 1) + timedelta(days=in_field)


def test_without_raising_days_a_packet_that_counts_from_the_other_end_claims_nothing() -> None:
    assert planned({"days_from": "sowing", "field_days": 60}, in_ground="2025-05-01").ready is None


def test_forward_from_the_day_of_sowing_or_back_from_the_day_it_should_be_ready() -> None:
    crop: Fields = {"field_days": 60, "raising_days": 35, "hardening_days": 7, "pot_up_days": 14}
    dates = planned(crop, sow="2025-04-07")
    assert [shown(day) for day in (dates.pot_up, dates.harden, dates.set_out, dates.ready)] == [
        "Mon 2025-04-21", "Mon 2025-05-05", "Mon 2025-05-12", "Fri 2025-07-11",
    ]  # fmt: skip
    assert planned(crop, ready="2025-07-11").sow == date(2025, 4, 7)
    assert planned(crop, "2025-07-12", sow="2025-04-21").ready == date(2025, 7, 25)


def test_a_harvest_of_14_days_after_the_first_ends_on_23_may_and_frees_the_ground_on_the_24th() -> None:
    """Lettuce that is ready on 9 May and can be cut for 14 days more (scenario by hand)."""
    dates = planned({"field_days": 45, "harvest_days": 14}, "2025-05-10")
    assert (shown(dates.last), dates.out) == ("Fri 2025-05-23", date(2025, 5, 24))


def test_what_came_about_moves_what_follows_and_leaves_the_past() -> None:
    crop: Fields = {"field_days": 60, "raising_days": 35}
    dates = planned(crop, "2025-07-12", actual={"sown": "2025-04-07", "set_out": "2025-05-22"})
    assert (dates.sow, dates.set_out, shown(dates.ready)) == (date(2025, 4, 7), date(2025, 5, 22), "Mon 2025-07-21")
    late = planned(crop, "2025-07-12", actual={"sown": "2025-04-14"})
    assert (shown(late.set_out), shown(late.ready)) == ("Mon 2025-05-19", "Fri 2025-07-18")


@given(st.dates(date(2025, 4, 7), date(2025, 6, 30)), st.booleans())
def test_a_day_of_potting_up_stands_and_moves_nothing_else(day: date, has_days: bool) -> None:
    crop: Fields = {"field_days": 60, "raising_days": 35, "hardening_days": 7}
    crop |= {"pot_up_days": 14} if has_days else {}
    meant = planned(crop, sow="2025-04-07")
    came = planned(crop, sow="2025-04-07", actual={"potted_up": day.isoformat()})
    assert came == evolve(meant, pot_up=day)


def test_a_crop_set_out_before_winter_stands_still_until_the_days_are_long_enough() -> None:
    """At 57.2 degrees north days are under ten hours from 20 October to 21 February (test_short_days.py)."""
    crop: Fields = {"field_days": 30}
    plan = plan_with(BED, SPACED | crop, {"in_ground": "2026-10-10"})
    north = evolve(plan, place=evolve(plan.place, latitude=57.2))
    assert dates_of(plan, plan.plantings[0]).ready == date(2026, 11, 9)
    # Nine days count before the winter, the other 21 from 22 February on.
    assert dates_of(north, north.plantings[0]).ready == date(2027, 3, 14)
    counted = evolve(north, place=evolve(north.place, short_days_count=True))
    assert dates_of(counted, counted.plantings[0]).ready == date(2026, 11, 9)


def test_an_order_for_four_weeks_has_four_market_days_and_each_planting_its_own() -> None:
    order = Order("o1", "crop", 20, date(2028, 2, 15), times=4)
    assert [shown(day) for day in market_days(order)] == [
        "Tue 2028-02-15", "Tue 2028-02-22", "Tue 2028-02-29", "Tue 2028-03-07",
    ]  # fmt: skip
    plan = plan_with(
        BED, SPACED | {"field_days": 30}, {"order": "o1", "market": 3},
        orders=[{"id": "o1", "crop": "crop", "units": 20, "on": "2028-02-15", "times": 4, "every_days": 7}],
    )  # fmt: skip
    assert dates_of(plan, plan.plantings[0]).ready == date(2028, 2, 28)


def test_a_market_past_the_calendar_is_left_out() -> None:
    assert len(market_days(Order("o1", "crop", 20, date(9999, 12, 20), times=500))) == 2


def test_bunches_from_a_length_of_row_need_so_much_row() -> None:
    """60 bunches of 1.5 ft of row each, a tenth lost: 67 bunches, 100.5 ft of row (scenario by hand)."""
    crop = plan_with(BED, SPACED | {"field_loss": "10 %"}).crops[0]
    order = Order("o1", "crop", 60, date(2025, 6, 21), row_per_unit=parse_length("1.5 ft"))
    each = parse_length("1.5 in").nm
    assert units_to_grow(order, crop) == 67
    assert stand_for(order, crop, each) == 804
    assert units_from(order, crop, 804, each) == 60


@given(st.integers(1, 500), st.integers(0, 90), st.sampled_from(["plants", "units", "row"]), st.integers(1, 30))
def test_the_stand_for_an_order_gives_its_units_and_a_plant_less_does_not(
    units: int, loss: int, way: str, each: int
) -> None:
    crop = plan_with(BED, SPACED | {"field_loss": f"{loss} %"}).crops[0]
    said: dict[str, dict[str, Any]] = {
        "plants": {"plants_per_unit": each},
        "units": {"units_per_plant": each},
        "row": {"row_per_unit": Length(each * 10_000_000, f"{each} cm")},
    }
    order = evolve(Order("o1", "crop", units, date(2025, 6, 21)), **said[way])
    stand = stand_for(order, crop)
    assert units_from(order, crop, stand) >= units
    assert units_from(order, crop, stand - 1) < units
