"""What a day has to say of a plan: jobs past and not recorded, market days past, records of days still to come."""

from datetime import date, timedelta
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says, where
from gardenplot.files import samples
from gardenplot.findings import Finding, Kind, find_all
from gardenplot.findings.today import last_day
from gardenplot.plan import Actual, Plan
from gardenplot.plan.file import read_plan
from gardenplot.plan.value import CAME
from gardenplot.season import dates_of
from tests.findings.test_timing import ordered, planned
from tests.plans import plans
from tests.seasons import days

JOBS = (Kind.SOWING_PAST, Kind.POTTING_PAST, Kind.SETTING_PAST)
OF_A_DAY = (*JOBS, Kind.NOT_YET, Kind.ORDER_PAST, Kind.PLAN_PAST)
RAISED: dict[str, Any] = {"raising_days": 35, "pot_up_days": 14, "field_days": 60, "oldest_days": 200}
"""For the market of Sat 12 July 2025: sown on 7 April, potted up on 21 April, set out on 12 May (by hand, S6)."""
APRIL, YEAR = date(2025, 4, 20), timedelta(days=365)


def found(plan: Plan, today: date, *kinds: Kind) -> list[Finding]:
    return [one for one in find_all(plan, today) if one.kind in (kinds or OF_A_DAY)]


def said(plan: Plan, today: date) -> list[str]:
    return [says(plan, one, looks(plan)) for one in found(plan, today)]


@pytest.mark.parametrize(
    ("today", "came", "kind"),
    [
        ("2025-04-07", {}, None),
        ("2025-04-08", {}, Kind.SOWING_PAST),
        ("2025-05-30", {}, Kind.SOWING_PAST),
        ("2025-04-20", {"sown": "2025-04-09"}, None),
        ("2025-05-01", {"sown": "2025-04-07"}, Kind.POTTING_PAST),
        ("2025-05-01", {"potted_up": "2025-04-21"}, None),
        ("2025-05-13", {"sown": "2025-04-07"}, Kind.SETTING_PAST),
        ("2025-05-13", {"hardened": "2025-05-05"}, Kind.SETTING_PAST),
        ("2025-06-30", {"set_out": "2025-05-12"}, None),
        ("2025-04-20", {"stand": 120}, None),
        ("2025-06-30", {"planted": 118}, None),
    ],
)
def test_a_job_whose_day_is_past_and_that_nobody_recorded_is_told(today: str, came: Any, kind: Kind | None) -> None:
    plan = ordered(RAISED, {}, actual=came or None)
    assert [one.kind for one in found(plan, date.fromisoformat(today))] == ([] if kind is None else [kind])


def test_what_is_sown_in_its_bed_is_told_once_and_not_when_it_has_emerged() -> None:
    direct: dict[str, Any] = {"establish": "direct", "field_days": 60}
    bare = ordered(direct, {})
    assert said(bare, date(2025, 5, 22)) == [
        "sowing day Mon 12 May 2025, 10 days ago, is not recorded; "
        "sown today, it is ready 10 days too late for the market on Sat 12 Jul 2025"
    ]
    for came in ({"set_out": "2025-05-12"}, {"emerged": "2025-05-20"}):
        assert not found(ordered(direct, {}, actual=came), date(2025, 5, 22))


def test_the_day_and_how_long_ago_it_was_are_named() -> None:
    plan = ordered(RAISED, {}, actual={"sown": "2025-04-07"})
    assert said(plan, date(2025, 4, 22)) == ["potting-up day Mon 21 Apr 2025, 1 day ago, is not recorded"]
    assert said(plan, date(2025, 5, 14)) == [
        "setting-out day Mon 12 May 2025, 2 days ago, is not recorded; "
        "set out today, it is ready 2 days too late for the market on Sat 12 Jul 2025"
    ]
    assert not any(one.cannot_be_done or one.is_note for one in found(plan, date(2025, 5, 14)))


@given(plans(), days())
def test_the_days_by_which_a_market_is_missed_are_those_of_a_plan_that_begins_today(plan: Plan, today: date) -> None:
    for one in found(plan, today, Kind.SOWING_PAST):
        planting = next(each for each in plan.plantings if each.id == one.planting)
        begun = evolve(planting, sow=today, in_ground=None, ready=None)
        after = evolve(plan, plantings=tuple(begun if each is planting else each for each in plan.plantings))
        late = [each.amount for each in find_all(after) if each.kind is Kind.LATE and each.planting == one.planting]
        assert [one.limit] == (late or [0])


@given(plans(), days())
def test_a_day_adds_findings_of_its_own_and_takes_none_but_bare_orders_away(plan: Plan, today: date) -> None:
    kept = [one for one in find_all(plan, today) if one.kind not in (*OF_A_DAY, Kind.ORDER_UNPLANTED)]
    assert kept == [one for one in find_all(plan) if one.kind is not Kind.ORDER_UNPLANTED]
    assert not [one for one in find_all(plan) if one.kind in OF_A_DAY]
    for one in find_all(plan, today):
        assert says(plan, one, looks(plan))
        assert where(plan, one, looks(plan))


@given(plans(), days())
def test_every_job_told_lies_before_today_and_is_told_of_one_planting_once(plan: Plan, today: date) -> None:
    told = found(plan, today, *JOBS)
    assert len({one.planting for one in told}) == len(told)
    names = {Kind.SOWING_PAST: "sow", Kind.POTTING_PAST: "pot_up", Kind.SETTING_PAST: "set_out"}
    for one in told:
        planting = next(each for each in plan.plantings if each.id == one.planting)
        day = getattr(dates_of(plan, planting), names[one.kind])
        assert one.amount == (today - day).days > 0
        came = planting.actual or Actual()
        assert not any(getattr(came, name) for name in CAME[CAME.index(one.came or "") :])


@given(plans(), st.integers(1, 4000))
def test_a_plan_that_is_past_has_one_quiet_line(plan: Plan, later: int) -> None:
    last = last_day(plan)
    if last is None or last > date(2090, 1, 1):
        return
    (one,) = found(plan, last + timedelta(days=later))
    assert one.kind is Kind.PLAN_PAST
    assert one.is_note
    assert not found(plan, last, Kind.PLAN_PAST)


def test_last_years_sample_says_that_it_is_past_and_nothing_more() -> None:
    for path in sorted(samples().glob("*.gardenplot")):
        plan = read_plan(path).plan
        (words,) = said(plan, date(2029, 7, 1))
        assert words.startswith("all days of this plan are past, the last was ")
        assert words.endswith(f"; nothing is recorded of {len(plan.plantings)} plantings")
        assert not said(plan, date(2026, 1, 1))
    (one,) = found(plan, date(2029, 7, 1))
    assert where(plan, one, looks(plan)) == "plan"


def test_whoever_records_nothing_has_one_line_and_whoever_does_has_one_for_each() -> None:
    days = [{"sow": f"2025-04-{day:02}", "from": f"{day} m", "plants": 2} for day in (11, 3, 7)]
    plan = planned(RAISED, *days)
    assert [(one.planting, one.amount, one.pieces) for one in found(plan, APRIL)] == [("p2", 17, 3)]
    assert said(plan, APRIL)[0].endswith(
        "; 2 plantings more are past their days, and nothing is recorded in this plan"
    )
    recorded = planned(RAISED, *days[:2], days[2] | {"actual": {"sown": "2025-04-08"}})
    assert [(one.planting, one.amount, one.pieces) for one in found(recorded, APRIL)] == [("p1", 9, 0), ("p2", 17, 0)]


def test_an_order_for_yesterday_is_told() -> None:
    later = {"sow": "2025-08-01", "plants": 3}
    wanted = [{"id": "o1", "crop": "crop", "units": 10, "on": "2025-07-12", "times": 4}]
    plan = planned(RAISED, later, orders=wanted)
    assert [one.kind for one in found(plan, date(2025, 7, 12), *OF_A_DAY, Kind.ORDER_UNPLANTED)] == [
        Kind.ORDER_UNPLANTED
    ]
    assert [says(plan, one, looks(plan)) for one in find_all(plan, date(2025, 7, 20)) if one.order] == [
        "10 Crop for Sat 12 Jul 2025: that market day is past, and nothing is recorded for it; "
        "nor for 1 later market day",
        "10 Crop for Sat 26 Jul 2025: not planted yet, 10 plants must stand; nor for 1 later market day",
    ]
    (one,) = found(plan, date(2025, 7, 20), Kind.ORDER_PAST)
    assert where(plan, one, looks(plan)) == "orders"


def test_a_market_that_is_past_is_not_told_where_something_came_about_for_it() -> None:
    wanted = [{"id": "o1", "crop": "crop", "units": 10, "on": "2025-07-12"}]
    for_it, later = {"order": "o1"}, {"sow": "2025-09-01", "from": "20 m", "plants": 3}
    grown = planned(RAISED, for_it | {"actual": {"set_out": "2025-05-14"}}, later, orders=wanted)
    assert not found(grown, date(2025, 7, 20))
    bare = planned(RAISED, for_it, later, orders=wanted)
    assert [one.kind for one in found(bare, date(2025, 7, 20))] == [Kind.SOWING_PAST]
    without_days = planned({"field_days": None}, for_it, later, orders=wanted)
    assert [one.kind for one in found(without_days, date(2025, 7, 20))] == [Kind.ORDER_PAST]


@pytest.mark.parametrize("name", CAME)
def test_what_is_recorded_for_a_day_to_come_is_told_until_that_day(name: str) -> None:
    plan = ordered(RAISED, {}, actual={name: "2025-07-01"})
    (one,) = found(plan, date(2025, 6, 30), Kind.NOT_YET)
    assert (one.came, one.amount) == (name, 1)
    assert says(plan, one, looks(plan)).endswith(" Tue 1 Jul 2025, which is 1 day from now")
    assert not found(plan, date(2025, 7, 1), Kind.NOT_YET)


def test_where_nobody_says_when_a_crop_is_out_its_ground_is_taken_for_a_year() -> None:
    plan = planned({"field_days": None}, {"in_ground": "2025-05-12"})
    assert last_day(plan) == date(2025, 5, 12) + YEAR
    assert last_day(Plan()) is None
    assert find_all(Plan(), APRIL) == ()
