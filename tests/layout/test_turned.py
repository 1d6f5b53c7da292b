"""Grids turned to an edge of their bed: never fewer plants than unturned, and all laws as shapely sees them."""

from math import cos, dist, isqrt, radians, sin
from time import perf_counter
from typing import Any

import pytest
from attrs import evolve
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, box

from gardenplot.layout import Layout, lay_out_plan
from gardenplot.layout.cells import sub_rows
from gardenplot.layout.filled import zone_rows
from gardenplot.layout.positions import positions
from gardenplot.layout.turned import bed_for, string_of
from gardenplot.plan import Obstacle, Plan
from tests.layout.test_zone import L_SHAPE, beds, only, plan_of, zone_of

Fields = dict[str, Any]
TAPERED = [["0 m", "0 m"], ["6 m", "1 m"], ["6 m", "2.4 m"], ["0 m", "2.4 m"]]
CELLS: Fields = {"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4}
TURNED: Fields = {"phase": "best, turned"}
slowly = settings(
    max_examples=max(30, settings().max_examples),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
"""For laws of which each try lays a block out along every edge of its bed, a tenth of a second and more."""

crops = st.fixed_dictionaries(
    {
        "in_row": st.integers(12, 60).map("{} cm".format),
        "row_spacing": st.integers(12, 60).map("{} cm".format),
        "edge": st.integers(0, 30).map("{} cm".format),
    }
)
patterns = st.sampled_from([{"pattern": "staggered"}, {"pattern": "triangular"}, CELLS])
sizes: st.SearchStrategy[Fields] = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"plants": st.integers(1, 40)}),
    st.fixed_dictionaries({"from": st.integers(0, 300).map("{} cm".format), "length": st.just("150 cm")}),
)


@st.composite
def blocks(draw: st.DrawFn) -> Plan:
    """A block that may be turned, in a bed of any outline."""
    return plan_of(draw(beds()), draw(patterns) | draw(sizes) | TURNED, draw(crops))


def in_phase(plan: Plan, phase: str) -> Plan:
    """The same plan with its block in another phase."""
    (planting,) = plan.plantings
    return evolve(plan, plantings=(evolve(planting, phase=type(planting.phase)(phase)),))


def turned_by(degrees: float, length: float, width: float) -> list[list[str]]:
    """The outline of a rectangle of metres, turned and moved to where nothing is negative."""
    angle = radians(degrees)
    corners = [(x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle))
               for x, y in ((0, 0), (length, 0), (length, width), (0, width))]  # fmt: skip
    left, low = (min(side) for side in zip(*corners, strict=True))
    return [[f"{1000 * (x - left):.6f} mm", f"{1000 * (y - low):.6f} mm"] for x, y in corners]


@pytest.mark.parametrize("degrees", [1, 12, 30, 44, -7, -20, 36.87])
@pytest.mark.parametrize("pattern", [CELLS, {"pattern": "staggered"}, {"pattern": "triangular"}])
def test_a_bed_drawn_at_an_angle_holds_what_it_holds_straight(degrees: float, pattern: Fields) -> None:
    crop = {"in_row": "20 cm", "row_spacing": "30 cm", "edge": "7.5 cm"}
    straight = only(plan_of({"length": "4 m", "width": "1.2 m"}, pattern, crop))
    aslant = only(plan_of({"outline": turned_by(degrees, 4 + 1e-8, 1.2 + 1e-8)}, pattern | TURNED, crop))
    assert aslant.plants >= straight.plants
    assert aslant.grid.turn is not None


def test_a_bed_of_three_four_five_keeps_its_whole_corners() -> None:
    # 4 m x 1.2 m along the direction 4:3; every corner is whole in both frames, and 13 x 4 cells fit to the nanometre
    outline = [["0.72 m", "0 m"], ["3.92 m", "2.4 m"], ["3.2 m", "3.36 m"], ["0 m", "0.96 m"]]
    layout = only(
        plan_of({"outline": outline}, CELLS | TURNED, {"in_row": "15 cm", "row_spacing": "15 cm", "edge": "7.5 cm"})
    )
    assert layout.plants == 13 * 4 * 4
    assert layout.gain is not None
    assert layout.gain > 0


def test_triangular_rows_may_run_straight_across() -> None:
    # 1.2 m less 2 x 10 cm hold 6 and 5 plants 20 cm apart by turns, 4 m less 2 x 8.66 cm hold 22 rows 17.32 cm apart
    # and one more; along the bed there are 6 rows of 20 and 19
    outline = [["0 m", "0 m"], ["4 m", "0 m"], ["4 m", "1.2 m"], ["0 m", "1.2 m"]]
    crop = {"in_row": "20 cm", "row_spacing": "20 cm", "edge": "10 cm"}
    layout = only(plan_of({"outline": outline}, {"pattern": "triangular"} | TURNED, crop))
    assert layout.per_row == (6, 5) * 11 + (6,)
    assert layout.gain == 127 - 117


def test_what_cannot_be_turned_is_shifted() -> None:
    for bed, pattern in (({"outline": L_SHAPE}, {}), ({"length": "6 m", "width": "1.2 m"}, CELLS)):
        plan = plan_of(bed, pattern | TURNED)
        assert only(plan) == only(in_phase(plan, "best"))


@slowly
@given(blocks())
def test_turning_never_holds_fewer(plan: Plan) -> None:
    turned, shifted, centred = only(plan), only(in_phase(plan, "best")), only(in_phase(plan, "centred"))
    assert turned.plants >= shifted.plants
    if turned.wanted is None:
        assert turned.plants == centred.plants + (turned.gain or 0)


@slowly
@given(blocks())
def test_every_plant_is_inside_with_its_edge_distance(plan: Plan) -> None:
    layout, zone = only(plan), zone_of(plan).buffer(1)
    places, turn = positions(layout).tolist(), layout.grid.turn
    assert len(places) == layout.plants == sum(layout.per_row)
    assert all(layout.start <= x <= layout.end and zone.covers(Point(x, y)) for x, y in places)
    if turn is None or layout.grid.cell:
        return
    cosine, sine = turn.cosine_and_sine
    beside = layout.grid.kinds[0].high
    for x, y in places:
        across = [(x - side * sine, y + side * cosine) for side in (-beside, beside)]
        along = [(x + end * cosine, y + end * sine) for end in (-layout.grid.ends[0], layout.grid.ends[1])]
        assert zone.buffer(1).covers(LineString(across))
        assert zone.buffer(1).covers(LineString(along))


@slowly
@given(blocks())
def test_plants_stand_as_far_apart_as_their_pattern_says(plan: Plan) -> None:
    layout = only(plan)
    places = positions(layout).tolist()[:120]
    least = least_apart(layout) - 2
    assert all(dist(one, other) >= least for number, one in enumerate(places) for other in places[:number])


def least_apart(layout: Layout) -> float:
    """What a pattern promises between any two plants, in nm, before rounding."""
    grid = layout.grid
    if grid.cell:
        return grid.cell // max(sub_rows(grid.per_cell)) - 1
    between = isqrt((grid.in_row // 2) ** 2 + grid.between**2)
    return min(grid.in_row, between, 2 * grid.between)


@slowly
@given(blocks())
def test_every_plant_keeps_clear_of_obstacles(plan: Plan) -> None:
    layout = only(plan)
    for obstacle in plan.beds[0].obstacles:
        clear = obstacle.keep_clear.nm if obstacle.keep_clear else 0
        for place in positions(layout).tolist():
            assert away_from(obstacle, place) >= clear - 1e-3


def away_from(obstacle: Obstacle, place: tuple[int, int]) -> float:
    """How far a place lies from an obstacle in nm, as shapely says."""
    x, y = obstacle.x.nm, obstacle.y.nm
    if obstacle.diameter is not None:
        return dist((x, y), place) - obstacle.diameter.nm / 2
    assert obstacle.length is not None
    assert obstacle.width is not None
    length, width = obstacle.length.nm / 2, obstacle.width.nm / 2
    return float(box(x - length, y - width, x + length, y + width).distance(Point(place)))


@slowly
@given(blocks())
def test_first_and_last_plant_are_those_that_stand_there(plan: Plan) -> None:
    layout = only(plan)
    readings = positions(layout)[:, 0].tolist()
    assert (layout.first_plant, layout.last_plant) == (min(readings, default=None), max(readings, default=None))


@slowly
@given(beds(), st.sampled_from([{"pattern": "staggered"}, {"pattern": "triangular"}]), crops, st.integers(1, 40))
def test_plants_that_are_wanted_stand_nearest_to_the_head(
    bed: Fields, pattern: Fields, crop: Fields, wanted: int
) -> None:
    plan = plan_of(bed, pattern | TURNED | {"plants": wanted}, crop)
    some = only(plan)
    ground = bed_for(plan.beds[0], some.grid.turn)
    rows = zone_rows(ground, some.grid, some.start, min(some.end, plan.beds[0].length.nm))
    whole = evolve(some, offsets=tuple(row.offset for row in rows), fills=tuple(row.runs for row in rows))
    places = sorted(map(tuple, positions(whole).tolist()))
    assert some.plants == min(wanted, len(places))
    assert sorted(map(tuple, positions(some).tolist())) == places[: some.plants]


@slowly
@given(beds(), patterns, crops, st.integers(1, 40))
def test_what_is_wanted_is_turned_only_where_it_does_not_fit_otherwise(
    bed: Fields, pattern: Fields, crop: Fields, wanted: int
) -> None:
    plan = plan_of(bed, pattern | TURNED | {"plants": wanted}, crop)
    turned, shifted = only(plan), only(in_phase(plan, "best"))
    assert turned.plants > shifted.plants if turned.grid.turn else turned == shifted


@slowly
@given(blocks())
def test_a_string_over_a_row_spans_its_plants_from_edge_to_edge(plan: Plan) -> None:
    layout = only(plan)
    turn = layout.grid.turn
    if turn is None:
        return
    rim = zone_of(plan).boundary
    for row in layout.rows:
        string = string_of(plan.beds[0], turn, row.offset, (row.runs[0].first, row.runs[-1].last))
        assert string[0] <= row.runs[0].first
        assert row.runs[-1].last <= string[1]
        assert all(rim.distance(Point(turn.place(at, row.offset))) < 4 for at in string)


def test_reserved_places_are_kept_at_their_places_in_the_bed() -> None:
    bed: Fields = {"id": "b", "name": "Bed", "outline": TAPERED}
    plan = plan_of(bed, {"pattern": "triangular", "in_ground": "2027-04-01", "out": "2027-08-01"} | TURNED)
    first = plan.plantings[0]
    later = plan_of(
        bed,
        {"id": "q", "pattern": "staggered", "in_ground": "2027-06-01", "keep_clear": "25 cm", "plants": 5} | TURNED,
    )
    kept = later.plantings[0]
    for answer in type(first.reserved):
        both = evolve(plan, plantings=(evolve(first, reserved=answer), kept))
        laid = lay_out_plan(both)[0]
        stands, follows = (positions(one).tolist() for one in laid.layouts)
        whole = positions(only(plan)).tolist()
        near = [place for place in whole if any(dist(place, one) < 250_000_000 for one in follows)]
        assert laid.layouts[0].plants == len(stands)
        assert near
        if answer.value == "leave places empty":
            assert stands == [place for place in whole if place not in near]
        elif answer.value == "leave row empty":
            assert len(stands) < len(whole) - len(near) or not stands


def test_turning_takes_no_more_than_ten_times_the_shifting_of_an_edge() -> None:
    crop = {"in_row": "20 cm", "row_spacing": "30 cm", "edge": "10 cm"}
    seconds = {}
    for phase in ("best", "best, turned"):
        plans = [plan_of({"outline": turned_by(degrees, 8, 1.2)}, {"pattern": "staggered", "phase": phase}, crop)
                 for degrees in (11, 23, 31)]  # fmt: skip
        before = perf_counter()
        for plan in plans:
            only(plan)
        seconds[phase] = perf_counter() - before
    assert seconds["best, turned"] < 10 * 2 * (seconds["best"] + 0.02)
