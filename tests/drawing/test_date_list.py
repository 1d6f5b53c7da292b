"""What is to be done by week: every job from sowing until the ground is free, in weeks as ISO 8601 counts them."""

from datetime import date, timedelta

import pytest
from attrs import evolve
from hypothesis import given

from gardenplot.drawing.date_list import DateRow, Job, Week, by_week, date_rows
from gardenplot.plan import Actual, Plan, Planting, Reserved, planting_of
from gardenplot.plan.edits import record_actual
from gardenplot.season import dates_of
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import plans


def told(plan: Plan) -> list[tuple[str, ...]]:
    """All rows of a plan as words."""
    return [(row.day_words, row.what, row.name, row.amount, row.bed_name) for row in date_rows(plan)]


def test_the_jobs_of_s1_stand_on_the_days_that_were_worked_by_hand() -> None:
    bed = "Tunnel, second bed"
    assert told(hand_worked("s1"))[:8] == [
        ("Fri 7 Mar", "sow in trays", "B Kohlrabi", "58 seeds, 1 tray", bed),
        ("Tue 18 Mar", "sow in trays", "A Pak choi", "175 seeds, 3 trays", bed),
        ("Fri 28 Mar", "harden off", "B Kohlrabi", "1 tray", bed),
        ("Fri 4 Apr", "harden off", "A Pak choi", "3 trays", bed),
        ("Fri 4 Apr", "set out", "B Kohlrabi", "45 plants", bed),
        ("Fri 11 Apr", "set out", "A Pak choi", "136 plants", bed),
        ("Fri 16 May", "ready to harvest", "A Pak choi", "136 plants for Sat 17 May", bed),
        ("Fri 16 May", "ready to harvest", "B Kohlrabi", "45 plants for Sat 17 May", bed),
    ]


def test_covers_go_on_and_come_off_among_the_other_jobs_of_s2() -> None:
    rows = [row for row in date_rows(hand_worked("s2")) if row.planting is None]
    assert [(row.day_words, row.what, row.name, row.amount) for row in rows][:2] == [
        ("Wed 7 May", "cover on", "2′\u20090″ – 77′\u20090″", "16 hoops"),
        ("Wed 4 Jun", "cover off", "2′\u20090″ – 77′\u20090″", "16 hoops"),
    ]
    sown = next(row for row in date_rows(hand_worked("s2")) if row.what == "sow in the bed")
    assert (sown.day_words, sown.name, sown.amount) == ("Wed 30 Apr", "B Beets", "832 seeds, 13.9\u2009g")


def test_what_stands_on_kept_places_is_cut_the_day_before_these_are_planted() -> None:
    """S3, worked by hand: tomatoes are set out on May 12, and 23 of the lettuces stand where they go."""
    (row,) = (row for row in date_rows(hand_worked("s3")) if row.job is Job.CUT_BY)
    assert (row.day_words, row.name, row.amount) == ("Sun 11 May", "A Cos lettuce, small", "23 plants, for B")
    left_empty = evolve(hand_worked("s3").plantings[0], reserved=Reserved.PLACES_EMPTY)
    plan = evolve(hand_worked("s3"), plantings=(left_empty, *hand_worked("s3").plantings[1:]))
    assert not [row for row in date_rows(plan) if row.job is Job.CUT_BY]


def test_places_with_clumps_are_no_plants() -> None:
    """40 places with 4 in each are 160 plants to set out and to harvest."""
    plan = one_planting({"in_ground": "2027-05-14"}, raising_days=30, clump=4, field_days=60)
    said = {row.what: row.amount for row in date_rows(plan)}
    assert said["set out"] == said["ready to harvest"] == "40 clumps of 4"
    assert said["sow in trays"] == "for 40 clumps of 4"


def test_what_is_sown_thicker_than_it_stands_is_thinned_when_its_true_leaves_show() -> None:
    """Three weeks after sowing, two after it came up: common practice, no source. S2 sows 12 to the foot."""
    (row,) = (row for row in date_rows(hand_worked("s2")) if row.job is Job.THIN)
    assert (row.day_words, row.name, row.amount) == ("Wed 21 May", "B Beets", "to one every 3″")
    came = record_actual(hand_worked("s2"), "p2", {"sown": date(2025, 4, 30), "emerged": date(2025, 5, 14)}, {})
    (row,) = (row for row in date_rows(came) if row.job is Job.THIN)
    assert row.day_words == "Wed 28 May"
    leeks = one_planting({"in_ground": "2027-05-14"}, raising_days=30, hardening_days=14, seeds_per_cell=3)
    (row,) = (row for row in date_rows(leeks) if row.job is Job.THIN)
    assert (row.day_words, row.amount) == ("Fri 30 Apr", "to one in each cell")
    assert next(row.day for row in date_rows(leeks) if row.job is Job.HARDEN) == row.day
    potted = one_planting({"in_ground": "2027-05-14"}, raising_days=30, pot_up_days=12, seeds_per_cell=3)
    (row,) = (row for row in date_rows(potted) if row.job is Job.THIN)
    assert (row.day_words, row.amount) == ("Mon 26 Apr", "to one in each cell")  # 14 Apr + 12 days, not + 21


@pytest.mark.parametrize(
    ("day", "year", "number", "days"),
    [
        (date(2026, 12, 31), 2026, 53, "28 Dec 2026 – 3 Jan 2027"),
        (date(2027, 1, 1), 2026, 53, "28 Dec 2026 – 3 Jan 2027"),
        (date(2028, 12, 31), 2028, 52, "25 – 31 Dec 2028"),
        (date(2028, 2, 29), 2028, 9, "28 Feb – 5 Mar 2028"),
        (date(9999, 12, 31), 9999, 52, "27 – 31 Dec 9999"),
    ],
)
def test_weeks_are_those_of_iso_8601(day: date, year: int, number: int, days: str) -> None:
    """The first three are plain arithmetic with the rule of ISO 8601: weeks 53, 53 and 52."""
    (week,) = by_week(one_planting({"in_ground": day.isoformat()}))
    assert (week.year, week.number, week.days) == (year, number, days)


def test_what_came_about_is_told_as_done() -> None:
    plan = one_planting({"in_ground": "2027-05-14"}, raising_days=30, hardening_days=7, field_days=40)
    came = Actual(sown=date(2027, 4, 12), hardened=date(2027, 5, 8))
    plan = evolve(plan, plantings=(evolve(plan.plantings[0], actual=came),))
    assert [(row.day_words, row.job, row.done) for row in date_rows(plan)] == [
        ("Mon 12 Apr", Job.SOW, True),
        ("Sat 8 May", Job.HARDEN, True),
        ("Fri 14 May", Job.SET_OUT, False),
        ("Wed 23 Jun", Job.READY, False),
        ("Thu 24 Jun", Job.FREE, False),
    ]


def test_potting_up_is_told_as_done_on_its_day() -> None:
    plan = one_planting({"in_ground": "2027-05-14"}, raising_days=30, pot_up_days=12)
    (meant,) = (row for row in date_rows(plan) if row.job is Job.POT_UP)
    came = record_actual(plan, "p1", {"sown": date(2027, 4, 14), "potted_up": date(2027, 4, 29)}, {})
    (row,) = (row for row in date_rows(came) if row.job is Job.POT_UP)
    assert (meant.day, meant.done) == (date(2027, 4, 26), False)
    assert (row.day, row.done) == (date(2027, 4, 29), True)


def test_jobs_of_several_days_say_when_they_are_over() -> None:
    days = {"raising_days": 30, "hardening_days": 7, "field_days": 40, "harvest_days": 10, "pot_up_days": 12}
    found = {row.job: (row.day, row.until) for row in date_rows(one_planting({"in_ground": "2027-05-14"}, **days))}
    assert found[Job.HARDEN] == (date(2027, 5, 7), date(2027, 5, 14))
    assert found[Job.READY] == (date(2027, 6, 23), date(2027, 7, 4))
    assert found[Job.LAST] == (date(2027, 7, 3), None)
    assert found[Job.POT_UP] == (date(2027, 4, 26), None)


def test_trays_harden_off_in_the_bed_in_which_they_stand() -> None:
    plan = one_planting({"in_ground": "2027-05-14"}, raising_days=30, hardening_days=7)
    tunnel = evolve(plan.beds[0], id="b2", name="Tunnel")
    trays = Planting("t1", "b2", "leek", plants=3, hardens="p1")
    plan = evolve(plan, beds=(*plan.beds, tunnel), plantings=(*plan.plantings, trays))
    (row,) = (row for row in date_rows(plan) if row.job is Job.HARDEN)
    assert (row.day_words, row.name, row.amount, row.bed_name) == ("Fri 7 May", "A Leek", "3 trays", "Tunnel")
    assert (row.planting, row.until) == ("t1", date(2027, 5, 14))
    assert [row.job for row in date_rows(plan) if row.planting == "t1"] == [Job.HARDEN]


def test_a_plan_without_days_has_nothing_to_do() -> None:
    assert by_week(one_planting({})) == ()
    assert by_week(Plan()) == ()


@given(plans())
def test_every_date_of_any_plan_stands_in_its_week_once(plan: Plan) -> None:
    weeks = by_week(plan)
    assert [(week.year, week.number) for week in weeks] == sorted({(week.year, week.number) for week in weeks})
    for week in weeks:
        assert {row.day.isocalendar()[:2] for row in week.rows} == {(week.year, week.number)}
        assert all(row.until is None or row.until > row.day for row in week.rows)
        assert all(is_among_dates(plan, row) for row in week.rows if row.job is Job.THIN)
    assert [job for job in jobs_in(weeks) if job[2] not in BESIDE_DATES] == jobs_of(plan)


BESIDE_DATES = (Job.THIN, Job.CUT_BY)
"""What is done on no date of its planting; tests of their own hold these."""


def jobs_in(weeks: tuple[Week, ...]) -> list[tuple[date, str, str]]:
    return sorted((row.day, row.about, row.job) for week in weeks for row in week.rows if row.planting is not None)


def is_among_dates(plan: Plan, row: DateRow) -> bool:
    """Whether it is after sowing, and before its planting leaves its cells or is ready, where these are later."""
    dates = dates_of(plan, planting_of(plan, row.about))
    leaves = (dates.pot_up, dates.harden, dates.set_out, dates.ready)
    ends = [day for day in leaves if day and dates.sow and day > dates.sow]
    return dates.sow is not None and dates.sow <= row.day <= min(ends, default=date.max)


def jobs_of(plan: Plan) -> list[tuple[date, str, str]]:
    """The days of the plantings, straight from their dates."""
    found: list[tuple[date, str, str]] = []
    in_beds = {planting.hardens for planting in plan.plantings}
    for planting in plan.plantings:
        dates = dates_of(plan, planting)
        if planting.hardens is not None or planting.id in in_beds:
            found += [(dates.harden, planting.id, Job.HARDEN)] if planting.hardens and dates.harden else []
            dates = evolve(dates, harden=None, **({"out": None} if planting.hardens else {}))
        named = {
            Job.SOW: dates.sow, Job.POT_UP: dates.pot_up, Job.HARDEN: dates.harden, Job.SET_OUT: dates.set_out,
            Job.READY: dates.ready, Job.LAST: dates.last if dates.last != dates.ready else None, Job.FREE: dates.out,
        }  # fmt: skip
        found += [(day, planting.id, job) for job, day in named.items() if day is not None]
    return sorted(found)


def one_planting(planting: dict[str, str], **crop: int) -> Plan:
    """A bed with leeks, and what their packet says of days."""
    leek = {"id": "leek", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm"} | crop
    return plan_from(
        {"units": "metric"},
        beds=[{"id": "b1", "name": "Long bed", "length": "12 m", "width": "75 cm"}],
        crops=[leek],
        plantings=[{"id": "p1", "bed": "b1", "crop": "leek", "plants": 40} | planting],
    )


def test_a_week_ends_six_days_after_its_monday() -> None:
    (week,) = by_week(one_planting({"in_ground": "2027-04-14"}))
    assert (week.name, week.days) == ("Week 15", "12 – 18 Apr 2027")
    assert date.fromisocalendar(week.year, week.number, 1) + timedelta(days=6) == date(2027, 4, 18)


def test_every_market_day_stands_among_the_dates_with_what_is_ordered() -> None:
    """S4: 120 cabbages for Sat 8 July 2028; 300 leeks for Sat 30 September, of which no day of harvest is known."""
    rows = [row for row in date_rows(hand_worked("s4")) if row.job is Job.MARKET]
    assert [(row.day_words, row.what, row.name, row.amount_told, row.bed_name) for row in rows] == [
        ("Sat 8 Jul", "market", "A Summer cabbage", "120 ordered", ""),
        ("Sat 30 Sep", "market", "B Leeks", "300 ordered", ""),
    ]


def test_bunches_are_ordered_as_so_many_of_so_many() -> None:
    """S2: 40 bunches of 5 beets for Sat 5 July."""
    rows = [row for row in date_rows(hand_worked("s2")) if row.job is Job.MARKET]
    assert [(row.name, row.amount) for row in rows] == [
        ("A Broccoli", "90 ordered"),
        ("B Beets", "40\u2009×\u20095 plants ordered"),
    ]
