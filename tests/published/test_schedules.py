"""Schedules counted back: an extension service's worked example, a common rule, and plain calendar sums."""

from datetime import date

import pytest
from attrs import evolve

from gardenplot.plan import Crop, Establish, Order, Planting
from gardenplot.season import dates_for
from gardenplot.units import parse_length

CROP = Crop("c", "Crop", parse_length("10 cm"), (parse_length("30 cm"),))


def test_a_crop_of_65_days_takes_close_to_80_in_the_autumn() -> None:
    """A. McDaniel, Virginia Tech, clarification of the fall planting formula, 29 August 2011: with the fall factor of
    14 days "a 65-day crop may actually require close to 80 days"; 78 to 81 are close to it."""
    crop = evolve(CROP, establish=Establish.DIRECT, field_days=65, cool_days=14)
    dates = dates_for(Planting("p", "b", "c", in_ground=date(2026, 8, 1)), crop, None)
    assert dates.ready is not None
    assert 78 <= (dates.ready - date(2026, 8, 1)).days <= 81


@pytest.mark.parametrize(
    ("frost", "days", "added", "sow"),
    [
        (date(2026, 10, 15), 60, 14, date(2026, 8, 2)),
        (date(2027, 10, 10), 60, 21, date(2027, 7, 21)),
    ],
)
def test_a_sowing_day_is_counted_back_from_the_first_frost(frost: date, days: int, added: int, sow: date) -> None:
    """Ready by the first frost, with a fall factor of two weeks (Virginia Tech, as above) or three (a popular rule).

    The days are plain calendar sums of ours.
    """
    crop = evolve(CROP, establish=Establish.DIRECT, field_days=days, cool_days=added)
    assert dates_for(Planting("p", "b", "c", ready=frost), crop, None).sow == sow


@pytest.mark.parametrize(
    ("market", "days", "hardening", "raising", "set_out", "harden", "sow"),
    [
        (date(2028, 3, 15), 45, 10, 42, date(2028, 1, 30), date(2028, 1, 20), date(2027, 12, 19)),
        (date(2026, 4, 18), 28, 7, 28, date(2026, 3, 21), date(2026, 3, 14), date(2026, 2, 21)),
        (date(2028, 3, 1), 1, 0, 1, date(2028, 2, 29), date(2028, 2, 29), date(2028, 2, 28)),
    ],
)
def test_raised_plants_are_counted_back_from_the_market_over_leap_days(
    market: date, days: int, hardening: int, raising: int, set_out: date, harden: date, sow: date
) -> None:
    """Plain calendar sums of ours; that hardening is the last part of the raising time: University of Maryland
    Extension on hardening off."""
    crop = evolve(CROP, field_days=days, hardening_days=hardening, raising_days=raising)
    order = Order("o", "c", 10, market, lead_days=0)
    dates = dates_for(Planting("p", "b", "c", order="o"), crop, order)
    assert (dates.set_out, dates.harden, dates.sow) == (set_out, harden, sow)
