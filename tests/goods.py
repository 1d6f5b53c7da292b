"""Goods, feeds, jugs and watering to test with: hypothesis strategies for any valid ones."""

from collections.abc import Callable, Sequence
from functools import cache
from typing import Any

from hypothesis import strategies as st

from gardenplot.plan import Feed, Good, GoodKind, Jugs, Watering
from gardenplot.units import (
    parse_amount,
    parse_flow,
    parse_heat_loss,
    parse_length,
    parse_line_flow,
    parse_mass_rate,
    parse_price,
    parse_share,
    parse_temperature,
    parse_volume,
)
from tests.seasons import some_of

ids = st.text("abcdefgh-123", min_size=1, max_size=8)


def typed(parse: Callable[[str], Any], *texts: str) -> st.SearchStrategy[Any]:
    """Measures from texts as they could be typed."""
    return st.sampled_from(texts).map(parse)


_OF_CROPS = (GoodKind.SEED, GoodKind.PLANT)


@st.composite
def goods(draw: st.DrawFn, crop_ids: Sequence[str]) -> Good:
    """Goods of any kind; seed and plants only where there are crops."""
    kinds = [kind for kind in GoodKind if crop_ids or kind not in _OF_CROPS]
    kind = draw(st.sampled_from(kinds))
    crop = draw(st.sampled_from(crop_ids)) if kind in _OF_CROPS else None
    return Good(draw(ids), kind, crop=crop, **draw(_said_of_goods()))


@cache
def _said_of_goods() -> st.SearchStrategy[dict[str, Any]]:
    return some_of(
        {
            "name": st.sampled_from(["", "Fleece", "Füllung & Co", "<b>mix</b>"]),
            "pack": typed(parse_amount, "50", "250 seeds", "10 g", "20 m", "40 l", "100 ft"),
            "in_store": typed(parse_amount, "0", "7", "3.5 g", "12 m", "15 l"),
            "price": typed(parse_price, "0", "3.50", "€ 12,90"),
            "year": st.integers(2015, 2030),
            "germination": typed(parse_share, "1 %", "62.9%", "100 %"),
            "cells": st.integers(1, 300),
            "length": typed(parse_length, "28 cm", "21.4 in"),
            "width": typed(parse_length, "54 cm", "2.1 m", "8 ft"),
            "mix": typed(parse_volume, "4 l", "1/8 cu ft"),
        }
    )


@st.composite
def feeds(draw: st.DrawFn, bed_ids: Sequence[str]) -> Feed:
    """What is given to beds, by weight or to a depth."""
    given = draw(
        st.fixed_dictionaries({"rate": typed(parse_mass_rate, "50 g / m2", "3 lb / 100 sq ft")})
        | st.fixed_dictionaries({"depth": typed(parse_length, "2 cm", "1/4 in")})
    )
    some = tuple(draw(st.lists(st.sampled_from(bed_ids), unique=True))) if bed_ids else ()
    return Feed(draw(ids), "Feather meal", beds=some, **given)


@st.composite
def jugs(draw: st.DrawFn, bed_ids: Sequence[str]) -> Jugs:
    """Water jugs round a stretch of a known bed."""
    start = draw(typed(parse_length, "0 m", "30 cm", "2 ft"))
    end = draw(typed(parse_length, "2 m", "7 m", "12 ft"))
    volume = draw(typed(parse_volume, "1 gal", "5 l"))
    said = some_of(
        {
            "count": st.integers(1, 40),
            "warm": typed(parse_temperature, "55 F", "18 °C"),
            "cold": typed(parse_temperature, "40 F", "0 °C"),
            "loss": typed(parse_heat_loss, "60 W / m2", "20 Btu / sq ft h"),
        }
    )
    across = draw(typed(parse_length, "16 cm", "6 in"))
    return Jugs(draw(ids), draw(st.sampled_from(bed_ids)), start, end, volume, across, **draw(said))


@cache
def waterings() -> st.SearchStrategy[Watering]:
    """How a place waters."""
    return some_of(
        {
            "line_flow": typed(parse_line_flow, "5 l/h / m", "30 gal/h / 100 ft"),
            "supply": typed(parse_flow, "600 l/h", "4 gal/min"),
            "tank": typed(parse_volume, "1 m3", "275 gal"),
            "weekly_depth": typed(parse_length, "25 mm", "1 in"),
            "efficiency": typed(parse_share, "1 %", "62.9%", "100 %"),
        }
    ).map(lambda said: Watering(**said))
