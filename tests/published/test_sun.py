"""Sunrise, sunset and day length against printed tables, and against a second library.

Sources: United States Naval Observatory, Astronomical Applications Department, "Rise and Set for the Sun" of Fredonia
AZ 2023 (`tables/usno_fredonia_2023.txt`), Toronto ON 2001 and San Francisco 2012; National Renewable Energy
Laboratory, Solar Position Algorithm (Reda and Andreas 2004), its worked example at Golden CO and its web calculator;
the library astral as a second opinion. FAO Irrigation and Drainage Paper 56, equation 34, for days without
refraction.
"""

import math
import re
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import astral
import astral.sun
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.season.sun import Site, sun_over

USNO = Path(__file__).parent / "tables" / "usno_fredonia_2023.txt"
FREDONIA = Site(36 + 57 / 60, -(112 + 31 / 60))
TORONTO = Site(43 + 40 / 60, -(79 + 25 / 60))
GOLDEN = Site(39.742476, -105.1786)


def clock(moment: datetime | None, hours: int) -> str:
    """A moment as tables print it: to the nearest minute, so many hours from universal time."""
    assert moment is not None
    local = moment.astimezone(timezone(timedelta(hours=hours))) + timedelta(seconds=30)
    return f"{local:%H%M}"


def printed(path: Path) -> dict[date, tuple[str, str]]:
    """The year's sunrises and sunsets of a table as the observatory prints it: a day a line, a month a column."""
    found = {}
    for line in path.read_text(encoding="utf-8").splitlines():
        if not re.match(r"\d\d ", line):
            continue
        for month in range(12):
            times = line[4 + 11 * month : 13 + 11 * month].split()
            if len(times) == 2:
                found[date(2023, month + 1, int(line[:2]))] = (times[0], times[1])
    return found


def minutes(text: str) -> int:
    return int(text[:2]) * 60 + int(text[2:])


def test_a_years_table_is_met_to_the_minute() -> None:
    table = printed(USNO)
    assert len(table) == 365
    off = []
    for day, times in table.items():
        sun = sun_over(FREDONIA, day)
        off += [
            minutes(clock(moment, -7)) - minutes(text)
            for moment, text in zip((sun.rise, sun.set), times, strict=True)
        ]
    assert set(off) <= {-1, 0, 1}
    assert off.count(0) >= 0.99 * len(off)


@pytest.mark.parametrize(
    ("day", "rise", "sets"), [(1, "0659", "1945"), (10, "0643", "1955"), (15, "0635", "2001"), (30, "0611", "2019")]
)
def test_toronto_in_april_2001_on_the_clock_of_summer(day: int, rise: str, sets: str) -> None:
    sun = sun_over(TORONTO, date(2001, 4, day))
    assert abs(minutes(clock(sun.rise, -4)) - minutes(rise)) <= 1
    assert abs(minutes(clock(sun.set, -4)) - minutes(sets)) <= 1


@pytest.mark.parametrize(
    ("day", "seconds", "which"),
    [
        (date(2003, 10, 17), 62330, "set"),
        (date(2015, 1, 2), 26515, "rise"),
        (date(2015, 8, 2), 18027, "rise"),
    ],
)
def test_golden_has_the_sunset_of_its_own_day(day: date, seconds: int, which: str) -> None:
    """The algorithm's printed sunset of 17 October, 17:20:19, is that of the evening before by the place's clock."""
    moment = getattr(sun_over(GOLDEN, day), which)
    midnight = datetime(day.year, day.month, day.day, 7, tzinfo=UTC)
    assert abs((moment - midnight).total_seconds() - seconds) <= 30


def test_35_degrees_south_in_december() -> None:
    sun = sun_over(Site(-35, 0), date(2004, 12, 4))
    assert sun.rise is not None
    assert sun.set is not None
    assert abs((sun.rise - datetime(2004, 12, 4, 4, 38, 57, tzinfo=UTC)).total_seconds()) <= 30
    assert abs((sun.set - datetime(2004, 12, 4, 19, 2, 2, tzinfo=UTC)).total_seconds()) <= 30


@pytest.mark.parametrize(("day", "light"), [(date(2012, 3, 16), 720), (date(2012, 3, 20), 730)])
def test_the_day_of_twelve_hours_comes_before_the_equinox(day: date, light: int) -> None:
    assert abs(sun_over(Site(37.77, -122.42), day).light / timedelta(minutes=1) - light) <= 1


@pytest.mark.parametrize("latitude", [-20, 0, 20, 45])
def test_a_day_is_some_minutes_longer_than_by_geometry_alone(latitude: int) -> None:
    """FAO-56 leaves out refraction and the sun's disk, some 7 minutes at the equator and more towards the poles."""
    for number in range(1, 366, 13):
        turn = 0.409 * math.sin(2 * math.pi * number / 365 - 1.39)
        bare = 24 / math.pi * math.acos(-math.tan(math.radians(latitude)) * math.tan(turn))
        light = sun_over(Site(latitude, 0), date(2026, 1, 1) + timedelta(days=number - 1)).light / timedelta(hours=1)
        assert 2 <= (light - bare) * 60 <= 30


@given(st.floats(-60, 60), st.floats(-180, 180), st.dates(date(1950, 1, 1), date(2090, 1, 1)))
def test_a_second_library_agrees(latitude: float, longitude: float, day: date) -> None:
    site = Site(latitude, longitude)
    sun, zone = sun_over(site, day), timezone(timedelta(hours=round(longitude / 15)))
    watcher = astral.Observer(latitude, longitude, 0)
    assert sun.rise is not None
    assert sun.set is not None
    for ours, theirs in (
        (sun.rise, astral.sun.sunrise(watcher, day, tzinfo=zone)),
        (sun.set, astral.sun.sunset(watcher, day, tzinfo=zone)),
    ):
        assert abs((ours - theirs).total_seconds()) < 240
    assert sun.rise < datetime(day.year, day.month, day.day, 12, tzinfo=zone) + timedelta(hours=2)
    assert abs(sun.light - (sun.set - sun.rise)) < timedelta(seconds=1)
