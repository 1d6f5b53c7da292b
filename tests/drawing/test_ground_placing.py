"""Whether turned boxes keep clear of one another, with shapely as the referee."""

from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon

from gardenplot.drawing.ground_placing import Corners, Taken, are_apart, box_of, turned_box

place = st.integers(-50, 50).map(float)
boxes = st.builds(
    turned_box, st.tuples(place, place), st.floats(-180, 180), place, place, st.floats(1, 40), st.floats(1, 40)
)
lines = st.tuples(st.tuples(place, place), st.tuples(place, place)).filter(lambda ends: ends[0] != ends[1])


def shared(one: Corners, other: Corners) -> float:
    """How much ground two things share: an area, or a length for a line."""
    shapes = [Polygon(corners) if len(corners) > 2 else LineString(corners) for corners in (one, other)]
    found = shapes[0].intersection(shapes[1])
    return float(found.area or found.length)


@given(boxes, boxes | lines)
def test_boxes_are_apart_where_they_share_no_ground(one: Corners, other: Corners) -> None:
    if are_apart(one, other):
        assert shared(one, other) < 1e-6
    else:
        assert shared(one, other) > 0


@given(st.lists(boxes | lines, max_size=6), boxes)
def test_what_is_taken_is_taken(things: list[Corners], one: Corners) -> None:
    taken = Taken(things)
    assert taken.is_free(one) == all(are_apart(one, thing) for thing in things)
    taken.take(one)
    assert not taken.is_free(one)


def test_a_box_is_turned_about_its_place_clockwise() -> None:
    corners = turned_box((10.0, 20.0), 90.0, 0.0, 0.0, 4.0, 2.0)
    assert [round(value, 9) for value in box_of(corners)] == [8, 20, 10, 24]
