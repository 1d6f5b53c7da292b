"""Hypothesis strategies for the days of a plan: what packets, orders, places and plantings say of them."""

from datetime import date, timedelta
from functools import cache
from typing import Any

from hypothesis import strategies as st

from gardenplot.plan import Actual, DaysFrom, Frost, MonthDay, Odds, Past
from gardenplot.units import CM, M, length_of, parse_share, parse_temperature
from gardenplot.units.exact import Units

Fields = st.SearchStrategy[dict[str, Any]]


@st.composite
def some_of(draw: st.DrawFn, said: dict[str, st.SearchStrategy[Any]]) -> dict[str, Any]:
    """Some of several fields: one number says which, so that what is left out costs no drawing."""
    chosen = draw(st.integers(0, 2 ** len(said) - 1))
    return {name: draw(said[name]) for number, name in enumerate(said) if chosen >> number & 1}


@cache
def days() -> st.SearchStrategy[date]:
    """Days of some twenty years, leap days among them."""
    first, count = date(2019, 1, 1), (date(2040, 12, 31) - date(2019, 1, 1)).days
    return st.integers(0, count).map(lambda later: first + timedelta(days=later)) | st.just(date(2028, 2, 29))


@cache
def odds() -> st.SearchStrategy[Odds]:
    """Chances with their days, leap days among them, in any order."""
    some = st.dictionaries(st.sampled_from(["10%", "50%", "90 %"]), st.dates(date(2000, 1, 1), date(2000, 12, 31)))
    return some.map(
        lambda each: tuple((parse_share(share), MonthDay(day.month, day.day)) for share, day in each.items())
    )


@cache
def place_seasons() -> Fields:
    """What a place says of its year."""
    return some_of(
        {
            "last_freeze": odds(),
            "last_hard_freeze": odds(),
            "first_freeze": odds(),
            "first_hard_freeze": odds(),
            "short_days_count": st.just(True),
            "family_gap": st.integers(0, 8),
            "cover_before": st.integers(0, 240),
        }
    )


@cache
def crop_seasons() -> Fields:
    """What a packet says of days and frost."""
    return some_of(
        {
            "field_days": st.integers(0, 250),
            "raising_days": st.integers(0, 90),
            "hardening_days": st.integers(0, 14),
            "days_from": st.sampled_from(DaysFrom),
            "cool_days": st.integers(0, 30),
            "harvest_days": st.integers(0, 90),
            "pot_up_days": st.integers(0, 60),
            "oldest_days": st.integers(0, 120),
            "frost": st.sampled_from(Frost),
            "emerges_like": st.sampled_from(["Carrot", "Lettuce", "Nothing there"]),
        }
    )


@cache
def order_seasons() -> Fields:
    """When an order is wanted, how often, and what its unit is."""
    units: Fields = st.one_of(
        st.fixed_dictionaries({"plants_per_unit": st.integers(1, 6)}),
        st.fixed_dictionaries({"units_per_plant": st.integers(1, 30)}),
        st.fixed_dictionaries({"row_per_unit": st.integers(CM, M).map(lambda nm: length_of(nm, Units.METRIC))}),
    )
    when: Fields = st.fixed_dictionaries(
        {
            "on": days(),
            "lead_days": st.integers(0, 7),
            "times": st.integers(1, 4),
            "every_days": st.integers(1, 21),
        }
    )
    return st.builds(lambda one, other: one | other, units, when)


@cache
def planting_seasons() -> Fields:
    """Days typed for a planting and days that came about, in order, and what else it says of its season."""
    more = some_of(
        {
            "actual": actuals(),
            "cool_days": st.integers(0, 30),
            "soil": st.sampled_from(["10 °C", "50 F", "-2.5C"]).map(parse_temperature),
            "market": st.integers(1, 5),
            "sow_cells": st.integers(1, 300),
            "series": st.sampled_from(["s1", "s2"]),
        }
    )
    return st.builds(lambda typed, said: typed | said, _typed(), more)


@cache
def _typed() -> Fields:
    return _in_order(("sow", "in_ground", "ready", "out"), least=1)


@cache
def actuals() -> st.SearchStrategy[Actual]:
    """What came about, in order."""
    number = st.none() | st.integers(0, 500)
    counts = st.fixed_dictionaries(
        {"stand": number, "planted": number, "standing": number, "cells": number,
         "failed_rows": st.lists(st.integers(1, 5), max_size=3).map(tuple)}
    )  # fmt: skip
    names = ("sown", "emerged", "potted_up", "hardened", "set_out", "harvested", "cleared")
    return st.builds(lambda came, counted: Actual(**came, **counted), _in_order(names, least=0), counts)


@cache
def _in_order(names: tuple[str, ...], least: int) -> Fields:
    """Some of several days, each as many days after the one before as is asked for at least."""
    steps = st.tuples(*[st.integers(least, 90)] * len(names))
    some = st.integers(0, 2 ** len(names) - 1)

    def filled(first: date, apart: tuple[int, ...], chosen: int) -> dict[str, date]:
        day, found = first, {}
        for number, (name, more) in enumerate(zip(names, apart, strict=True)):
            day += timedelta(days=more)
            if chosen >> number & 1:
                found[name] = day
        return found

    return st.builds(filled, days(), steps, some)


@cache
def pasts() -> st.SearchStrategy[tuple[Past, ...]]:
    """What grew in a bed in earlier seasons."""
    family = st.sampled_from(["Brassicaceae", "Solanaceae", "Apiaceae"])
    return st.lists(st.builds(Past, st.integers(2010, 2026), family), max_size=4).map(tuple)
