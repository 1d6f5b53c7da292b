"""What of a bed's shape lies under a point, and what is said about it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.handle_words import corner_line, handle_words, obstacle_line, side_length
from gardenplot.drawing.handles import (
    Grip,
    Handle,
    Zoom,
    handles_of,
    middles,
    obstacle_at,
    outline_of,
    shape_handle_at,
)
from gardenplot.drawing.strips import HEADROOM, Part, arranged, under, with_ground
from gardenplot.layout import lay_out_plan
from gardenplot.units import MM, Units
from tests.gestures.shaped import ELL, POST, box, ell, written

ZOOM = Zoom(0.1, 0.2)
zooms = st.builds(Zoom, st.floats(0.05, 2), st.floats(0.05, 2))


@given(zooms, st.integers(0, 5), st.floats(-5, 5), st.floats(-5, 5))
def test_a_corner_is_found_within_a_few_pixels(zoom: Zoom, number: int, right: float, down: float) -> None:
    bed = ell().beds[0]
    x, y = zoom.pixels(outline_of(bed)[number])
    assert shape_handle_at(bed, zoom, x + right, y + down) == Handle(Grip.CORNER, number)


@given(zooms, st.integers(0, 5))
def test_the_middle_of_a_side_is_found_where_it_can_be_told_from_the_corners(zoom: Zoom, side: int) -> None:
    bed = ell().beds[0]
    middle = middles(outline_of(bed), zoom).get(side)
    if middle is not None:
        assert shape_handle_at(bed, zoom, *zoom.pixels(middle)) == Handle(Grip.SIDE, side)


def test_a_rectangle_has_no_corners_to_take_hold_of() -> None:
    bed = box().beds[0]
    assert outline_of(bed) == ()
    assert handles_of(bed) == ()
    assert shape_handle_at(bed, ZOOM, 0, 0) is None


@pytest.mark.parametrize(
    ("right", "down", "found"), [(0, 0, True), (7, 0, True), (0, 12, True), (9, 0, False), (0, 13, False)]
)
def test_an_obstacle_is_found_on_it_and_within_a_few_pixels(right: float, down: float, found: bool) -> None:
    """The post is 12 px long and 24 px wide at this scale."""
    x, y = ZOOM.pixels(written("5 m by 50 cm")[0])
    handle = obstacle_at(ell().beds[0], ZOOM, x + right, y + down)
    assert handle == (Handle(Grip.OBSTACLE, 0) if found else None)


def test_corners_show_only_while_their_bed_is_selected_and_ends_of_blocks_go_before_posts() -> None:
    plan = ell(post=POST | {"x": "8 m"})
    strips = arranged(lay_out_plan(plan), 0.1, true_scale=True)
    top = strips.strips[0].top
    corner = under(strips, None, 300, top + 100, None, "b1")
    assert corner is not None
    assert corner.handle == Handle(Grip.CORNER, 3)
    soil = under(strips, None, 300, top + 100)
    assert soil is not None
    assert (soil.handle, soil.planting) == (None, "p1")
    end = under(strips, None, 800, top + 50, "p1")
    assert end is not None
    assert (end.handle, end.part) == (None, Part.FOOT_END)
    post = under(strips, None, 800, top + 50)
    assert post is not None
    assert (post.handle, post.planting) == (Handle(Grip.OBSTACLE, 0), None)


def test_empty_ground_lies_below_all_beds_at_their_scale() -> None:
    strips = arranged(lay_out_plan(ell()), 0.1, true_scale=False, room=600)
    laid = with_ground(strips)
    assert laid.ground is not None
    assert laid.ground.top == strips.height + HEADROOM
    assert laid.ground.height == pytest.approx(3 * 2000 * strips.across)
    bare = with_ground(arranged((), 0.1, true_scale=False))
    assert bare.ground is not None
    assert bare.ground.height == 300


@pytest.mark.parametrize(
    ("held", "units", "words"),
    [
        (2, Units.METRIC, "tape 8.00 m, 100 cm from the base line   sides 1.00 m and 5.00 m"),
        (5, Units.METRIC, "tape 0.00 m, 200 cm from the base line   sides 3.00 m and 2.00 m"),
        (2, Units.DECIMAL_FEET, "tape 26.25 ft, 3.28 ft from the base line   sides 3.28 ft and 16.40 ft"),
    ],
)
def test_a_corner_says_its_reading_its_offset_and_both_its_sides(held: int, units: Units, words: str) -> None:
    assert corner_line(written(*ELL), held, units).replace("\u2009", " ") == words


def test_a_corner_that_is_being_traced_says_the_side_that_leads_to_it() -> None:
    points = written("0 m by 0 m", "3 m by 4 m")
    assert corner_line(points, 1, Units.METRIC, closed=False).endswith("side 5.00\u2009m")
    assert "side" not in corner_line(points[:1], 0, Units.METRIC, closed=False)
    assert side_length((0, 0), (3 * MM, 4 * MM)) == 5 * MM


def test_what_is_chosen_is_told_in_words() -> None:
    plan = ell()
    count = lay_out_plan(plan)[0].layouts[0].plants
    corner = handle_words(plan, "b1", Handle(Grip.CORNER, 1)).replace("\u2009", " ")
    assert corner == "North: corner 2 of 6, tape 8.00 m, 0 cm from the base line   sides 8.00 m and 1.00 m"
    post = handle_words(plan, "b1", Handle(Grip.OBSTACLE, 0)).replace("\u2009", " ")
    assert post == "North: post at 5.00 m by 50 cm"
    line = obstacle_line(plan, "b1", 0, None).replace("\u2009", " ")
    assert line == f"post at 5.00 m by 50 cm · {count} plants"
