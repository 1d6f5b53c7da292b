"""Tall crops shade shorter ones at noon: how far is geometry, with a second opinion on the sun."""

from datetime import date, timedelta
from math import radians, tan
from typing import Any

import pytest
from astral import Observer
from astral.sun import elevation, noon
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import Finding, Kind, find_all
from gardenplot.plan import Plan
from gardenplot.season import Site, Span
from gardenplot.season.shade import noon_shadow, telling_days
from gardenplot.season.sun import noon_lean
from gardenplot.units import CM, M
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]
STRAIGHT_UP, NORTH_AT_THE_FOOT = "0°", "90°"


@given(st.floats(-60, 60), st.floats(-170, 170), st.integers(0, 3000))
def test_the_noon_sun_is_as_high_as_the_second_opinion_has_it(latitude: float, longitude: float, day: int) -> None:
    """astral, whose own accuracy is some hundredths of a degree."""
    when = date(2024, 1, 1) + timedelta(days=day)
    observer = Observer(latitude, longitude, 0)
    lean = noon_lean(Site(latitude, longitude), when)
    assert 90 - abs(lean) == pytest.approx(elevation(observer, noon(observer, when), with_refraction=False), abs=0.1)


def test_a_shadow_at_the_solstices_is_what_the_tropics_say() -> None:
    """The obliquity of the ecliptic is 23.44 degrees (IAU): at 50 degrees north the sun leans 26.56 and 73.44."""
    site = Site(50.0)
    for day, lean in ((date(2027, 6, 21), 26.56), (date(2027, 12, 22), 73.44)):
        assert noon_shadow(site, day, 1000) == pytest.approx(1000 * tan(radians(lean)), rel=0.01)
    assert noon_shadow(Site(-50.0), date(2027, 12, 22), 1000) == pytest.approx(-500, abs=2)
    assert noon_shadow(Site(10.0), date(2027, 6, 21), 1000) < 0
    assert noon_shadow(Site(70.0), date(2027, 12, 22), 1000) == 0


@given(st.floats(-66, 66), st.integers(0, 900), st.integers(0, 500))
def test_no_day_of_a_span_has_a_longer_shadow_than_those_that_are_looked_at(
    lat: float, begin: int, long: int
) -> None:
    first = date(2027, 1, 1) + timedelta(days=begin)
    span = Span(first, first + timedelta(days=long))
    site = Site(lat)
    looked = [noon_lean(site, day) for day in telling_days(span)]
    every = [noon_lean(site, first + timedelta(days=number)) for number in range(0, long + 1, 3)]
    assert min(looked) - 0.01 <= min(every)
    assert max(every) <= max(looked) + 0.01


def bed_with(low_at: str, north: str | None = NORTH_AT_THE_FOOT, latitude: float = 50.0, turn: str = "0°") -> Plan:
    """Tomatoes of 1.80 m from 4 m to 6 m, and lettuce of 30 cm on the same days of June and July at some reading."""
    crop: Fields = {"in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}
    days: Fields = {"bed": "b", "length": "2 m", "in_ground": "2027-06-01", "out": "2027-07-20"}
    return plan_from(
        {"latitude": latitude, "longitude": 0.0} | ({"north": north} if north else {}),
        beds=[{"id": "b", "name": "Bed", "length": "10 m", "width": "80 cm"}],
        crops=[
            crop | {"id": "tomato", "name": "Tomato", "height": "1.8 m"},
            crop | {"id": "lettuce", "name": "Lettuce", "height": "30 cm"},
        ],
        plantings=[
            days | {"id": "t", "crop": "tomato", "from": "4 m"},
            days | {"id": "l", "crop": "lettuce", "from": low_at},
        ],
        ground=[{"bed": "b", "x": "0 m", "y": "0 m", "turn": turn}],
    )  # fmt: skip


def shadows(plan: Plan) -> list[Finding]:
    return [one for one in find_all(plan) if one.kind is Kind.SHADE]


def test_lettuce_to_the_north_of_tomatoes_has_their_shadow_and_is_told_how_much() -> None:
    """North lies at the foot. On 19 July the sun's declination is 20.8 degrees: 1.5 m x tan 29.2 = 84 cm."""
    (found,) = shadows(bed_with("6 m"))
    assert (found.planting, found.other, found.start) == ("l", "t", 6 * M)
    assert found.amount == pytest.approx(84 * CM, abs=2 * CM)
    assert found.is_note
    words = says(bed_with("6 m"), found, looks(bed_with("6 m"))).replace("\u2009", " ")
    assert words.endswith("at noon on Mon 19 Jul 2027")
    assert "of it lie in the shadow of" in words


@pytest.mark.parametrize(
    ("plan", "count"),
    [
        (bed_with("2 m"), 0),
        (bed_with("2 m", north="270°"), 1),
        (bed_with("6 m", north="270°"), 0),
        (bed_with("2 m", latitude=-50.0), 1),
        (bed_with("6 m", latitude=-50.0), 0),
        (bed_with("6 m", north=None), 0),
        (bed_with("6 m", north="0°"), 0),
        (bed_with("6 m", north="180°", turn="90°"), 1),
        (bed_with("6.7 m"), 0),
    ],
)
def test_the_side_away_from_the_sun_is_that_of_the_pole(plan: Plan, count: int) -> None:
    """Across a bed that lies from east to west the shadow falls on the path; 70 cm away all but 14 cm are spent."""
    assert len(shadows(plan)) == count
