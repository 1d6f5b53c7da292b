"""Round beds are cut exactly, by whole numbers and by shapely as an independent referee, the same from either end."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point

from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from gardenplot.layout.round import CORNERS, chord, corners, strip_held
from gardenplot.layout.zone import corners_of, held, is_plain
from gardenplot.units import CM, MM, M
from tests.layout.ground import Fields, laid_out, lengths, long, many

QUARTER = 2048
"""Segments of a quarter of shapely's circle; it lies within 1 - cos(pi / 4096) = 3e-7 of the radius."""


def holds(diameter: int, x: int, y: int) -> bool:
    """Whether a point lies in the disc, exactly."""
    return (2 * x - diameter) ** 2 + (2 * y - diameter) ** 2 <= diameter**2


@st.composite
def cuts(draw: st.DrawFn) -> tuple[int, int]:
    """A diameter and an offset, also just beside it."""
    diameter = draw(st.integers(1, 60) | lengths(MM, 30 * M))
    return diameter, draw(st.integers(-2, diameter + 2))


@many
@given(cuts())
def test_a_chord_holds_all_whole_readings_and_not_a_nanometre_more(cut: tuple[int, int]) -> None:
    diameter, offset = cut
    held = chord(diameter, offset)
    if not held:
        assert not any(holds(diameter, diameter // 2 + more, offset) for more in (0, 1))
        return
    ((first, last),) = held
    assert holds(diameter, first, offset)
    assert holds(diameter, last, offset)
    assert not holds(diameter, first - 1, offset)
    assert not holds(diameter, last + 1, offset)


@many
@given(cuts())
def test_a_disc_is_the_same_from_either_end_and_either_side(cut: tuple[int, int]) -> None:
    diameter, offset = cut
    held = chord(diameter, offset)
    assert held == chord(diameter, diameter - offset)
    assert held == tuple((diameter - last, diameter - first) for first, last in held)


@many
@given(cuts(), st.integers(0, 400), st.integers(-3, 200))
def test_a_strip_is_held_where_each_offset_of_it_is(cut: tuple[int, int], more: int, x: int) -> None:
    diameter, low = cut
    between = range(low, low + more + 1, max(1, more // 7))
    held = any(first <= x <= last for first, last in strip_held(diameter, low, low + more))
    assert held == all(holds(diameter, x, y) for y in (*between, low + more))


@given(st.integers(10, 400), st.integers(0, 100), st.integers(0, 30), st.integers(0, 100))
def test_a_strip_is_held_where_shapely_says_so(across: int, low: int, more: int, along: int) -> None:
    diameter, bottom, x = across * CM, across * CM * low // 100, across * CM * along // 100
    disc = Point(diameter / 2, diameter / 2).buffer(diameter / 2, quad_segs=QUARTER)
    strip = LineString([(x, bottom), (x, bottom + more * CM + 0.5)])
    ends = [((x - diameter / 2) ** 2 + (y - diameter / 2) ** 2) ** 0.5 for y in (bottom, bottom + more * CM)]
    held = any(first <= x <= last for first, last in strip_held(diameter, bottom, bottom + more * CM))
    if abs(max(ends) - diameter / 2) > 1e-6 * diameter:  # nearer than that, shapely's circle is no circle
        assert held == disc.covers(strip)


def test_it_is_drawn_as_a_polygon_that_touches_all_four_sides() -> None:
    points = corners(3 * M)
    assert len(points) == CORNERS
    assert {min(x for x, _y in points), min(y for _x, y in points)} == {0}
    assert {max(x for x, _y in points), max(y for _x, y in points)} == {3 * M}


PACKET: Fields = {"in_row": "20 cm", "row_spacing": "30 cm", "edge": "15 cm"}


def only(bed: Fields, crop: Fields, planting: Fields) -> Layout:
    """The one layout of a bed."""
    return laid_out(bed, crop, planting).layouts[0]


def test_a_round_bed_of_three_metres_by_hand() -> None:
    # rows (300 - 30) / 30 + 1 = 10, at 15, 45 ... 285 cm; the outermost strip of row 1 is the edge itself, a point;
    # row 5 at 135: chord at 120 = 2 sqrt(150^2 - 30^2) = 293.9 cm, 14 places; 4: at 90, 274.9, 13; 3: at 60, 240, 12;
    # 2: at 30, 180, 9
    layout = only({"diameter": "3 m"}, PACKET, {})
    assert layout.per_row == (0, 9, 12, 13, 14, 14, 13, 12, 9, 0)


def test_a_plant_on_the_limit_is_allowed_and_one_a_nanometre_beyond_is_not() -> None:
    # 3-4-5: at 30 cm above the base line of a disc of 3 m the chord is 2 x 90 cm
    on_the_mark: Fields = {"end_margin": "0 cm", "rows": 1, "edge": "0 cm"}
    crop: Fields = {"in_row": "180 cm", "row_spacing": "30 cm"}
    middle = only({"diameter": "1.8 m"}, crop, on_the_mark)
    assert middle.plants == 2
    assert only({"diameter": "1.799999999 m"}, crop, on_the_mark).plants == 1


@st.composite
def plantings(draw: st.DrawFn) -> tuple[Fields, Fields, Fields]:
    """A round bed, a crop and a block of it."""
    crop: Fields = {
        "in_row": f"{draw(st.integers(7, 60))} cm",
        "row_spacing": f"{draw(st.integers(10, 60))} cm",
        "edge": f"{draw(st.integers(0, 30))} cm",
    }
    pattern = draw(st.sampled_from(["straight", "staggered", "triangular"]))
    block: Fields = draw(st.sampled_from([{}, {"from": "0.3 m", "length": "1 m"}, {"plants": 12}]))
    return {"diameter": long(draw(lengths(50 * CM, 5 * M))).text}, crop, {"pattern": pattern, **block}


@given(plantings())
def test_every_plant_stands_in_the_disc_with_its_edge_distance_across(found: tuple[Fields, Fields, Fields]) -> None:
    layout = only(*found)
    diameter, edge = layout.grid.width, max(0, min(layout.grid.edge, layout.grid.edge_least))
    for x, y in positions(layout).tolist():
        assert holds(diameter, round(x), round(y) - edge)
        assert holds(diameter, round(x), round(y) + edge)


@given(st.integers(60, 400), st.integers(4, 30), st.integers(0, 400), st.integers(0, 400), st.integers(0, 40))
def test_a_mirrored_bed_counts_the_same(across: int, half: int, x: int, y: int, clear: int) -> None:
    def counted(x: int, y: int) -> list[int]:
        post = {"name": "post", "diameter": "10 cm", "keep_clear": f"{clear} cm", "x": f"{x} cm", "y": f"{y} cm"}
        bed: Fields = {"diameter": f"{across} cm", "obstacles": [post]}
        return list(only(bed, {"in_row": f"{2 * half} cm", "row_spacing": "20 cm"}, {}).per_row)

    x, y = x % across, y % across
    assert counted(x, y) == counted(across - x, y) == counted(x, across - y)[::-1]


def test_a_broadcast_crop_covers_the_disc() -> None:
    sown = only(
        {"diameter": "2 m"}, PACKET | {"plants_per_area": "1000 / m2", "edge": "0 cm"}, {"pattern": "broadcast"}
    )
    assert sown.plants == pytest.approx(3141, rel=3e-3)


def test_a_round_bed_is_not_plain_and_lies_between_its_chords() -> None:
    bed = laid_out({"diameter": "3 m"}, PACKET).bed
    assert not is_plain(bed)
    assert held(bed, 30 * CM, 30 * CM, across=True) == ((60 * CM, 240 * CM),)
    assert held(bed, 0, 0, across=True) == ((150 * CM, 150 * CM),)
    assert held(bed, -1, -1, across=True) == ()
    assert corners_of(bed) == corners(3 * M)
