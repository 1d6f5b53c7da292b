"""Days of less than ten hours do not count, in either hemisphere and at the poles."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.plan import Place
from gardenplot.season.short_days import after, before, counting_site, days_that_count, short_days
from gardenplot.season.span import Span
from gardenplot.season.sun import Site, sun_over

DAY = timedelta(days=1)
SITES = st.builds(Site, st.floats(-90, 90), st.floats(-180, 180))
DAYS = st.dates(date(1900, 1, 1), date(2100, 1, 1))


@given(SITES, DAYS)
def test_a_day_is_short_where_the_sun_says_so(site: Site, day: date) -> None:
    short = bool(short_days(site, Span(day, day)))
    light = sun_over(site, day).light
    assert short == (light < timedelta(hours=10)) or abs(light - timedelta(hours=10)) < timedelta(minutes=1)


@given(SITES, DAYS, st.integers(0, 400))
def test_so_many_days_that_count_go_by_and_no_more(site: Site, day: date, days: int) -> None:
    ready, begun = after(site, day, days), before(site, day, days)
    assert ready is not None
    assert begun is not None
    assert days_that_count(site, day + DAY, ready) == days == days_that_count(site, begun + DAY, day)
    if days:
        assert days_that_count(site, day + DAY, ready - DAY) == days - 1
        assert days_that_count(site, begun + 2 * DAY, day) == days - 1


@given(DAYS, st.integers(0, 400))
def test_where_all_days_count_it_is_the_calendar_alone(day: date, days: int) -> None:
    assert after(None, day, days) == day + days * DAY
    assert before(None, day, days) == day - days * DAY


def test_winter_stands_still_in_the_north_and_summer_in_the_south_does_not() -> None:
    """Day lengths at 57.2 degrees north by the sun's own check (tests/published/test_sun.py)."""
    (winter,) = short_days(Site(57.2, -4.1), Span(date(2026, 7, 1), date(2027, 6, 30)))
    assert (winter.first, winter.last) == (date(2026, 10, 20), date(2027, 2, 21))
    assert after(Site(57.2, -4.1), date(2026, 10, 19), 1) == date(2027, 2, 22)
    assert short_days(Site(-45.0, 170.0), Span(date(2026, 9, 1), date(2027, 3, 31))) == ()
    (south,) = short_days(Site(-45.0, 170.0), Span(date(2026, 3, 1), date(2026, 9, 30)))
    assert (south.first.month, south.last.month) == (5, 8)


@pytest.mark.parametrize("latitude", [89.0, -89.0, 90.0, -90.0])
def test_a_polar_night_is_one_short_winter(latitude: float) -> None:
    year = Span(date(2027, 1, 1), date(2027, 12, 31))
    assert 170 <= sum(each.days for each in short_days(Site(latitude, 0), year)) <= 185


def test_at_the_ends_of_the_calendar_nothing_is_claimed() -> None:
    for site in (None, Site(57.2, -4.1)):
        assert after(site, date(9999, 12, 1), 100) is None
        assert before(site, date(1, 1, 5), 10) is None


def test_a_place_can_switch_it_off_or_leave_it_unsaid() -> None:
    assert counting_site(Place(latitude=57.2)) == Site(57.2)
    assert counting_site(Place(latitude=57.2, short_days_count=True)) is None
    assert counting_site(Place()) is None
