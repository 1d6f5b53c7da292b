"""Where the hand is drawn to: candidates within reach first, then round tape readings."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.gestures.snap import Pull, Snap, grain, snap, stride
from gardenplot.units import FOOT, INCH, M, Units
from tests.layout.ground import nm

MARGIN, NEIGHBOUR = Snap(nm("30 cm"), Pull.HEAD_MARGIN), Snap(nm("40 cm"), Pull.NEIGHBOUR)
readings = st.integers(-M, 100 * M)
reaches = st.integers(0, 3 * M)
each_units = pytest.mark.parametrize("units", Units)


@pytest.mark.parametrize(
    ("hand", "reach", "drawn_to"),
    [
        ("33 cm", "10 cm", MARGIN),
        ("36 cm", "10 cm", NEIGHBOUR),
        ("35 cm", "10 cm", MARGIN),
        ("40 cm", "0 cm", NEIGHBOUR),
        ("20 cm", "10 cm", MARGIN),
        ("19 cm", "10 cm", Snap(nm("20 cm"), Pull.READING)),
    ],
)
def test_the_nearest_candidate_within_reach_draws_the_hand(hand: str, reach: str, drawn_to: Snap) -> None:
    assert snap(nm(hand), (NEIGHBOUR, MARGIN), Units.METRIC, nm(reach)) == drawn_to


@pytest.mark.parametrize(
    ("units", "reach", "reading"),
    [
        (Units.METRIC, "1 mm", "4.22 m"),
        (Units.METRIC, "1 cm", "4.22 m"),
        (Units.METRIC, "5 cm", "4.20 m"),
        (Units.METRIC, "12 cm", "4.2 m"),
        (Units.METRIC, "60 cm", "4 m"),
        (Units.FEET_AND_INCHES, "1 mm", "166 1/4 in"),
        (Units.FEET_AND_INCHES, "1 in", "166 in"),
        (Units.FEET_AND_INCHES, "6 in", "14 ft"),
        (Units.DECIMAL_FEET, "1 mm", "13.85 ft"),
        (Units.DECIMAL_FEET, "2 in", "13.8 ft"),
        (Units.DECIMAL_FEET, "1 ft", "14 ft"),
    ],
)
def test_the_farther_the_reach_the_rounder_the_reading(units: Units, reach: str, reading: str) -> None:
    assert snap(nm("4.22 m"), (), units, nm(reach)) == Snap(nm(reading), Pull.READING)


def test_a_free_hand_is_drawn_to_the_finest_reading_alone() -> None:
    assert snap(nm("301 mm"), (MARGIN,), Units.METRIC, M, free=True) == Snap(nm("30 cm"), Pull.READING)
    assert snap(nm("312 mm"), (MARGIN,), Units.METRIC, M, free=True) == Snap(nm("31 cm"), Pull.READING)


@each_units
@given(hand=readings, reach=reaches)
def test_no_reading_is_farther_away_than_the_reach_or_half_the_finest(units: Units, hand: int, reach: int) -> None:
    found = snap(hand, (), units, reach)
    assert abs(found.at - hand) <= max(reach, grain(units) / 2)
    assert found.at % grain(units) == 0


@given(hand=readings, reach=reaches, at=readings)
def test_a_candidate_draws_the_hand_if_and_only_if_it_is_within_reach(hand: int, reach: int, at: int) -> None:
    candidate = Snap(at, Pull.NEIGHBOUR)
    assert (snap(hand, (candidate,), Units.METRIC, reach) == candidate) == (abs(at - hand) <= reach)


def test_arrow_keys_go_by_what_a_person_reads_off_a_tape() -> None:
    assert [(grain(units), stride(units)) for units in Units] == [
        (nm("1 cm"), nm("5 cm")),
        (INCH // 4, INCH),
        (FOOT // 100, FOOT // 20),
    ]
