"""Broadcast bands in beds that are no plain rectangle: as large as shapely says, and never less for more length."""

from math import pi
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Polygon, box, union_all
from shapely.geometry.base import BaseGeometry

from gardenplot.layout.band import band_area
from gardenplot.layout.zone import corners_of
from gardenplot.plan import Bed
from gardenplot.units import CM, M
from tests.layout.test_zone import beds, only, plan_of

Fields = dict[str, Any]
SOWN: Fields = {"pattern": "broadcast"}
RADISH: Fields = {"in_row": "10 cm", "row_spacing": "10 cm", "edge": "20 cm"}
BOX: Fields = {"length": "4 m", "width": "1 m"}
DRAWN: Fields = {"outline": [["0 m", "0 m"], ["4 m", "0 m"], ["4 m", "1 m"], ["0 m", "1 m"]]}


def post(x: str, y: str, diameter: str, clear: str = "0 cm") -> Fields:
    return {"name": "post", "x": x, "y": y, "diameter": diameter, "keep_clear": clear}


def test_a_band_keeps_its_edge_distance_in_a_rectangle_drawn_as_an_outline() -> None:
    # 4 m x (1 m - 2 x 20 cm) at one plant in each 10 x 10 cm
    assert only(plan_of(BOX, SOWN, RADISH)).plants == 240
    assert only(plan_of(DRAWN, SOWN, RADISH)).plants == 240


def test_what_stands_outside_takes_no_ground() -> None:
    beside = BOX | {"obstacles": [post("2 m", "3 m", "1 m", "50 cm")]}
    assert only(plan_of(beside, SOWN, RADISH | {"edge": "0 cm"})).plants == 400


def test_a_post_takes_the_ground_round_it() -> None:
    bed = plan_of(BOX | {"obstacles": [post("2 m", "50 cm", "20 cm", "10 cm")]}, SOWN).beds[0]
    assert band_area(bed, 0, 0, 4 * M) == pytest.approx(4 * M * M - pi * (20 * CM) ** 2, rel=1e-3)


@given(st.integers(20, 500))
def test_a_disc_is_pi_times_the_square_of_its_radius(diameter: int) -> None:
    bed = plan_of({"diameter": f"{diameter} cm"}, SOWN).beds[0]
    assert band_area(bed, 0, 0, diameter * CM) == pytest.approx(pi * (diameter * CM) ** 2 / 4, rel=3e-3)


@settings(max_examples=60)
@given(beds(), st.integers(0, 20), st.integers(0, 900), st.integers(1, 300))
def test_more_length_never_holds_less_nor_more_than_is_there(drawn: Fields, edge: int, end: int, more: int) -> None:
    bed = plan_of(drawn, SOWN).beds[0]
    less, longer = (band_area(bed, edge * CM, 0, at * CM) for at in (end, end + more))
    assert 0 <= less <= longer
    reach = box(0, 0, (end + more) * CM, 10 * M)
    ground = _kept(bed, edge * CM).intersection(reach)
    assert longer == pytest.approx(ground.area, abs=0.02 * bed.length.nm * bed.width.nm)


def _kept(bed: Bed, edge: int) -> BaseGeometry:
    """The outline less its edge distance, measured across, as shapely sees it; obstacles are left out of account."""
    corners = corners_of(bed)
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    edges = [MultiPoint([(x, y + away) for x, y in side for away in (-edge, edge)]).convex_hull for side in sides]
    blocked = [_round(one) for one in bed.obstacles]
    return Polygon(corners).difference(union_all([*edges, *blocked]))


def _round(obstacle: Any) -> BaseGeometry:
    clear = obstacle.keep_clear.nm if obstacle.keep_clear else 0
    middle = MultiPoint([(obstacle.x.nm, obstacle.y.nm)])
    if obstacle.diameter is not None:
        return middle.buffer(obstacle.diameter.nm / 2 + clear, quad_segs=64)
    half, beside = obstacle.length.nm / 2, obstacle.width.nm / 2
    x, y = obstacle.x.nm, obstacle.y.nm
    return box(x - half, y - beside, x + half, y + beside).buffer(clear, quad_segs=64)
