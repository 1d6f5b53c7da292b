"""Beds of any outline with obstacles in them: the laws of every layout, with shapely as an independent referee."""

import json
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon

from gardenplot.layout import Layout, lay_out_plan
from gardenplot.layout.outline import runs_across
from gardenplot.layout.positions import positions
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text
from gardenplot.plan.simple import fault_of, twice_area
from tests.layout.ground import nm

Fields = dict[str, Any]
CM = 10_000_000
L_SHAPE = [["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "0.8 m"], ["2 m", "0.8 m"], ["2 m", "1.6 m"], ["0 m", "1.6 m"]]


def plan_of(bed: Fields, planting: Fields, crop: Fields | None = None) -> Plan:
    """A plan with one bed and one block in it."""
    leek = {"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"} | (crop or {})
    parts = {
        "beds": [{"id": "b", "name": "Bed"} | bed],
        "crops": [leek],
        "plantings": [{"id": "p", "bed": "b", "crop": "c"} | planting],
    }
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def only(plan: Plan) -> Layout:
    """The one layout of a plan."""
    (laid,) = lay_out_plan(plan)
    return laid.layouts[0]


def test_an_l_has_four_rows_to_its_corner_and_two_beyond() -> None:
    layout = only(plan_of({"outline": L_SHAPE}, {}))
    assert layout.per_row == (30, 30, 10, 10)
    assert [row.offset // CM for row in layout.rows] == [20, 60, 100, 140]


def test_a_tapered_bed_loses_plants_where_the_row_would_leave_it() -> None:
    tapered = [["0 m", "0 m"], ["10 m", "0 m"], ["10 m", "0.4 m"], ["0 m", "1.2 m"]]
    layout = only(plan_of({"outline": tapered}, {}))
    # the upper side falls 8 cm a metre, so 20 cm above the rows at 20, 60 and 100 cm it is met at 10, 5 and 0 m
    assert layout.per_row == (50, 25, 0)


def test_a_post_takes_the_places_within_its_keep_clear_distance() -> None:
    post = {"name": "post", "x": "2 m", "y": "20 cm", "diameter": "10 cm", "keep_clear": "15 cm"}
    layout = only(plan_of({"length": "4 m", "width": "80 cm", "obstacles": [post]}, {}))
    first, second = layout.rows
    assert second.count == 20
    places = [run.first + step * run.step for run in first.runs for step in range(run.count)]
    assert max(at for at in places if at < 200 * CM) == 170 * CM
    assert min(at for at in places if at > 200 * CM) == 220 * CM


@pytest.mark.parametrize(("rows", "counts"), [([1], (18, 20)), ([2], (20, 18)), ([], (18, 18))])
def test_an_obstacle_may_be_in_the_way_of_certain_rows_only(rows: list[int], counts: tuple[int, int]) -> None:
    tap: Fields = {
        "name": "tap",
        "x": "2 m",
        "y": "40 cm",
        "length": "20 cm",
        "width": "60 cm",
        "keep_clear": "20 cm",
    }
    bed: Fields = {"length": "4 m", "width": "80 cm", "obstacles": [tap | {"rows": rows}]}
    assert only(plan_of(bed, {})).per_row == counts


points = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 16)), min_size=3, max_size=7, unique=True)


@st.composite
def beds(draw: st.DrawFn) -> Fields:
    """Any simple outline on a grid of 25 cm, perhaps with a post and a box in it."""
    corners = [(x * 25, y * 25) for x, y in draw(points)]
    assume(fault_of(corners) is None)
    left, low = min(x for x, _y in corners), min(y for _x, y in corners)
    spot: Fields = {"x": f"{draw(st.integers(0, 1000))} cm", "y": f"{draw(st.integers(0, 400))} cm"}
    clear = f"{draw(st.integers(0, 60))} cm"
    obstacles = [
        {"name": "post", "diameter": f"{draw(st.integers(1, 40))} cm", "keep_clear": clear} | spot,
        {"name": "box", "length": "50 cm", "width": f"{draw(st.integers(1, 90))} cm", "keep_clear": clear} | spot,
    ]
    outline = [[f"{x - left} cm", f"{y - low} cm"] for x, y in corners]
    return {"outline": outline, "obstacles": draw(st.lists(st.sampled_from(obstacles), max_size=2))}


@st.composite
def blocks(draw: st.DrawFn) -> Plan:
    """A bed with one block, its spacings and its pattern."""
    pattern = draw(st.sampled_from(["straight", "staggered", "triangular"]))
    crop: Fields = {
        "in_row": f"{draw(st.integers(7, 60))} cm",
        "row_spacing": f"{draw(st.integers(10, 60))} cm",
        "edge": f"{draw(st.integers(0, 30))} cm",
    }
    size: Fields = draw(st.sampled_from([{}, {"length": f"{draw(st.integers(10, 900))} cm"}, {"plants": 12}]))
    return plan_of(draw(beds()), {"pattern": pattern, **size}, crop)


def zone_of(plan: Plan) -> Polygon:
    """The outline as shapely sees it, in nm."""
    return Polygon([(x.nm, y.nm) for x, y in plan.beds[0].outline])


@settings(max_examples=150)
@given(blocks())
def test_every_plant_is_inside_with_its_edge_distance_across_the_bed(plan: Plan) -> None:
    layout, zone = only(plan), zone_of(plan).buffer(1)
    edge = max(0, min(layout.grid.edge, layout.grid.edge_least))
    for x, y in positions(layout).tolist():
        assert zone.covers(LineString([(x, y - edge), (x, y + edge + 0.5)]))
        assert layout.start <= x <= layout.end


@settings(max_examples=150)
@given(blocks())
def test_no_two_plants_are_nearer_than_the_pattern_allows(plan: Plan) -> None:
    layout = only(plan)
    for row in layout.rows:
        readings = sorted(run.first + step * run.step for run in row.runs for step in range(run.count))
        assert all(after - before >= layout.grid.in_row for before, after in pairwise(readings))
    if layout.grid.pattern == "triangular":
        places = positions(layout).tolist()
        least = layout.grid.in_row**2
        assert all(
            (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 >= least for n, a in enumerate(places) for b in places[n + 1 :]
        )


@settings(max_examples=150)
@given(blocks())
def test_every_plant_keeps_clear_of_every_obstacle(plan: Plan) -> None:
    layout = only(plan)
    for obstacle in plan.beds[0].obstacles:
        clear = obstacle.keep_clear.nm if obstacle.keep_clear else 0
        for x, y in positions(layout).tolist():
            dx, dy = abs(x - obstacle.x.nm), abs(y - obstacle.y.nm)
            if obstacle.diameter:
                assert 4 * (dx * dx + dy * dy) >= (obstacle.diameter.nm + 2 * clear) ** 2
            elif obstacle.length and obstacle.width:
                beside = max(0, 2 * dx - obstacle.length.nm), max(0, 2 * dy - obstacle.width.nm)
                assert beside[0] ** 2 + beside[1] ** 2 >= (2 * clear) ** 2


@settings(max_examples=100)
@given(beds(), st.integers(1, 60), st.sampled_from(["straight", "staggered"]))
def test_the_block_of_so_many_plants_is_the_shortest_that_holds_them(bed: Fields, plants: int, pattern: str) -> None:
    layout = only(plan_of(bed, {"plants": plants, "pattern": pattern}))
    assume(layout.plants == plants and layout.length > nm("1 mm"))
    shorter = only(plan_of(bed, {"length": f"{(layout.length - 1) / 1e6:.6f} mm", "pattern": pattern}))
    assert shorter.plants < plants


@settings(max_examples=100)
@given(beds(), st.integers(10, 900), st.integers(1, 300))
def test_more_length_never_holds_fewer(bed: Fields, length: int, more: int) -> None:
    shorter, longer = (only(plan_of(bed, {"length": f"{one} cm"})).plants for one in (length, length + more))
    assert longer >= shorter


@settings(max_examples=100)
@given(st.integers(50, 900), st.integers(20, 300), st.integers(7, 60), st.integers(10, 60), st.booleans())
def test_a_rectangle_drawn_as_an_outline_counts_like_a_rectangle(
    length: int, width: int, in_row: int, between: int, staggered: bool
) -> None:
    crop = {"in_row": f"{in_row} cm", "row_spacing": f"{between} cm", "edge": "5 cm"}
    pattern = {"pattern": "staggered" if staggered else "straight"}
    corners = [[x, y] for x, y in (("0 cm", "0 cm"), (f"{length} cm", "0 cm"),
                                   (f"{length} cm", f"{width} cm"), ("0 cm", f"{width} cm"))]  # fmt: skip
    drawn = only(plan_of({"outline": corners}, pattern, crop))
    plain = only(plan_of({"length": f"{length} cm", "width": f"{width} cm"}, pattern, crop))
    assert [(row.offset, row.count) for row in drawn.rows] == [(row.offset, row.count) for row in plain.rows]
    assert positions(drawn).tolist() == positions(plain).tolist()


@settings(max_examples=300)
@given(points, st.integers(0, 400), st.integers(0, 120))
def test_lines_across_an_outline_hold_what_shapely_says(corners: list[tuple[int, int]], low: int, more: int) -> None:
    outline = [(x * 25, y * 25) for x, y in corners]
    assume(fault_of(outline) is None)
    polygon = Polygon(outline)
    assert polygon.is_valid
    assert twice_area(outline) == round(2 * polygon.area)
    held = runs_across(outline, low, low + more)
    grown = polygon.buffer(1e-7)
    for x in range(0, 1001, 35):
        segment = LineString([(x, low), (x, low + more + 1e-9)])
        assert any(first <= x <= last for first, last in held) == grown.covers(segment)


@settings(max_examples=500)
@given(points)
def test_an_outline_is_simple_where_shapely_says_so(corners: list[tuple[int, int]]) -> None:
    assert (fault_of(corners) is None) == (Polygon(corners).is_valid and Polygon(corners).area > 0)
