"""The nights of covers: sunset on the place's clock, an hour before it, and no time where nobody knows one.

Sunset 19:00 covered by 18:00, 17:07 by 16:07 with an hour, 18:14 by 17:29 with 45 minutes: plain arithmetic, the
sunsets as printed by the United States Naval Observatory (Fredonia AZ 10 April 2023, San Francisco 4 November and
11 March 2012, the days on which clocks were changed there).
"""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from attrs import evolve

from gardenplot.plan import Cover, Place, Plan
from gardenplot.season import Span
from gardenplot.season.nights import NoSunset, cover_by, covered_span, nights, stays_on
from gardenplot.units import parse_length
from tests.plans import metric_plan

CLOCK = ZoneInfo("Etc/GMT+8")
FREDONIA = Place(latitude=36 + 57 / 60, longitude=-(112 + 31 / 60), time_zone="Etc/GMT+7")
ARCTIC = Place(latitude=78.2, longitude=15.6, time_zone="Europe/Oslo")


def covered(place: Place, *days: tuple[date | None, date | None]) -> Plan:
    """The plan of two beds with covers of the first, on from a day to another."""
    start, end = parse_length("1 m"), parse_length("3 m")
    covers = tuple(Cover(f"c{number}", "b1", start, end, on, off) for number, (on, off) in enumerate(days, 1))
    return evolve(metric_plan(), place=place, covers=covers)


def one_night(place: Place, day: date) -> tuple[str, str]:
    """Sunset and time to cover by of a day, as a clock shows them."""
    (night,) = nights(covered(place, (day, day + timedelta(days=1))), Span(day, day))
    assert night.sunset is not None
    assert night.cover_by is not None
    return f"{night.sunset:%H:%M}", f"{night.cover_by:%H:%M}"


@pytest.mark.parametrize(
    ("sunset", "ahead", "by"),
    [
        (datetime(2023, 4, 10, 19, 0, tzinfo=CLOCK), 60, "18:00"),
        (datetime(2012, 11, 4, 17, 7, tzinfo=CLOCK), 60, "16:07"),
        (datetime(2012, 3, 11, 18, 14, tzinfo=CLOCK), 45, "17:29"),
    ],
)
def test_the_time_to_cover_by_is_so_long_before_sunset(sunset: datetime, ahead: int, by: str) -> None:
    moment = cover_by(sunset, timedelta(minutes=ahead))
    assert f"{moment:%H:%M}" == by


def test_the_table_of_the_naval_observatory_is_met_on_the_clock_of_the_place() -> None:
    assert one_night(FREDONIA, date(2023, 4, 10)) == ("19:00", "18:00")


def test_the_hour_is_a_habit_that_a_place_may_change() -> None:
    assert one_night(evolve(FREDONIA, cover_before=45), date(2023, 4, 10)) == ("19:00", "18:15")
    assert one_night(evolve(FREDONIA, cover_before=0), date(2023, 4, 10)) == ("19:00", "19:00")


def test_sunsets_follow_the_clock_when_it_is_changed() -> None:
    """Over the night of 27 March 2027 clocks in Britain go on by an hour, the sun by two minutes."""
    place = Place(latitude=54.7, longitude=-2.8, time_zone="Europe/London")
    before, after = (one_night(place, date(2027, 3, day))[0] for day in (27, 28))
    assert (before[:2], after[:2]) == ("18", "19")
    assert 60 < minutes(after) - minutes(before) < 65


def test_an_hour_is_an_hour_also_across_a_change_of_the_clock() -> None:
    moment = datetime(2027, 3, 28, 2, 30, tzinfo=ZoneInfo("Europe/London"))
    assert f"{cover_by(moment, timedelta(hours=1)):%H:%M}" == "00:30"
    late = datetime(2027, 10, 31, 1, 30, tzinfo=ZoneInfo("Europe/London"), fold=1)
    assert f"{cover_by(late, timedelta(hours=1)):%H:%M %Z}" == "01:30 BST"


def test_no_time_is_claimed_without_a_place_a_clock_or_a_sunset() -> None:
    day = date(2027, 4, 20)
    whys = {
        Place(): NoSunset.NO_PLACE,
        Place(latitude=50.0, time_zone="Europe/London"): NoSunset.NO_PLACE,
        Place(latitude=50.0, longitude=0.0): NoSunset.NO_CLOCK,
        Place(latitude=50.0, longitude=0.0, time_zone="Nowhere/Now"): NoSunset.NO_CLOCK,
        evolve(ARCTIC, latitude=89.0): NoSunset.LIGHT_ALL_DAY,
    }
    for place, why in whys.items():
        (night,) = nights(covered(place, (day, None)), Span(day, day))
        assert (night.sunset, night.cover_by, night.why) == (None, None, why)
    (dark,) = nights(covered(ARCTIC, (date(2026, 12, 20), None)), Span(date(2026, 12, 20), date(2026, 12, 20)))
    assert dark.why is NoSunset.DARK_ALL_DAY


def test_a_sunset_after_midnight_is_told_with_its_own_day() -> None:
    """Tromsø a few days before the midnight sun: the clock there is ahead of the sun, so that it sets on the next."""
    place = Place(latitude=69.0, longitude=10.0, time_zone="Europe/Helsinki")
    found = list(nights(covered(place, (date(2027, 5, 1), None)), Span(date(2027, 5, 10), date(2027, 5, 20))))
    late = [one for one in found if one.sunset is not None and one.sunset.date() != one.day]
    assert late
    assert all(one.cover_by == one.sunset - timedelta(hours=1) for one in late if one.sunset is not None)


def test_a_cover_stands_from_its_first_day_until_it_is_off() -> None:
    plan = covered(FREDONIA, (date(2027, 4, 14), date(2027, 4, 17)), (date(2027, 4, 16), date(2027, 4, 16)))
    found = list(nights(plan, Span(date(2027, 4, 1), date(2027, 4, 30))))
    assert [one.day.day for one in found] == [14, 15, 16]
    assert {tuple(cover.id for cover in one.covers) for one in found} == {("c1",)}
    assert covered_span(plan) == Span(date(2027, 4, 14), date(2027, 4, 16))


def test_open_ends_are_bounded_by_what_stands_in_the_bed_else_by_the_season() -> None:
    """Its plantings go in on 9 April 2027 and the last is out on 28 May; that of the other bed on 20 August."""
    plan = covered(FREDONIA, (None, None), (None, date(2027, 4, 11)), (date(2027, 5, 20), None))
    assert [stays_on(plan, cover) for cover in plan.covers] == [
        Span(date(2027, 4, 9), date(2027, 5, 27)),
        Span(date(2027, 4, 9), date(2027, 4, 10)),
        Span(date(2027, 5, 20), date(2027, 5, 27)),
    ]
    assert covered_span(plan) == Span(date(2027, 4, 9), date(2027, 5, 27))
    elsewhere = evolve(plan, plantings=tuple(one for one in plan.plantings if one.bed != plan.covers[0].bed))
    assert stays_on(elsewhere, plan.covers[0]) == Span(date(2027, 4, 2), date(2027, 8, 27))  # a week more each way
    undated = evolve(plan, plantings=(), orders=())
    assert covered_span(undated) is None
    assert list(nights(undated, Span(date(2027, 1, 1), date(2027, 12, 31)))) == []


def test_covers_at_the_ends_of_the_calendar_give_no_error() -> None:
    plan = covered(FREDONIA, (date(9999, 12, 31), None), (None, date.min), (date(9999, 12, 30), date(9999, 12, 31)))
    (night,) = nights(plan, Span(date(9999, 12, 28), date(9999, 12, 31)))
    assert (night.day, night.why) == (date(9999, 12, 30), NoSunset.OUT_OF_REACH)


def minutes(text: str) -> int:
    return int(text[:2]) * 60 + int(text[3:])
