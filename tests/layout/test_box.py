"""A boarded box is planted inside its boards and round its posts."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from gardenplot.layout.zone import is_plain
from gardenplot.units import CM, Units, length_of
from tests.layout.ground import laid_out

Fields = dict[str, Any]
PACKET: Fields = {"in_row": "10 cm", "row_spacing": "20 cm", "edge": "6 cm"}


def only(bed: Fields, crop: Fields = PACKET, **planting: Any) -> Layout:
    """The one layout of a bed."""
    return laid_out(bed, crop, planting).layouts[0]


def box(**more: str) -> Fields:
    """A box of 2.4 by 1.2 m outside, 2.32 by 1.12 m inside."""
    return {"box": {"length": "2.4 m", "width": "1.2 m", "board": "4 cm"} | more}


def test_a_box_without_posts_counts_as_the_rectangle_inside_it() -> None:
    inside, plain = laid_out(box(), PACKET, {}), laid_out({"length": "2.32 m", "width": "1.12 m"}, PACKET, {})
    assert is_plain(inside.bed)
    assert inside.layouts == plain.layouts
    assert inside.layouts[0].per_row == (23,) * 6


def test_posts_take_places_from_the_outer_rows_only() -> None:
    # rows at 6, 26 ... 106 cm; the outer ones lose 9 cm at both ends: 232 - 18 = 214, 21 places
    layout = only(box(post="9 cm"))
    assert layout.per_row == (21, 23, 23, 23, 23, 21)
    assert layout.rows[0].runs[0].first == (9 + 5) * CM


@st.composite
def boxes(draw: st.DrawFn) -> Fields:
    """Boxes with posts of any size that leaves something."""
    length, width = draw(st.integers(60, 400)), draw(st.integers(40, 200))
    board, post = draw(st.integers(1, 8)), draw(st.integers(1, 11))
    sizes = {"length": length, "width": width, "board": board, "post": post}
    return {"box": {name: f"{size} cm" for name, size in sizes.items()}}


@given(boxes(), st.integers(2, 20), st.integers(8, 40), st.integers(0, 12))
def test_no_plant_is_nearer_to_a_post_than_its_edge_distance_across(
    bed: Fields, half: int, between: int, edge: int
) -> None:
    crop = {"in_row": f"{2 * half} cm", "row_spacing": f"{between} cm", "edge": f"{edge} cm"}
    layout = only(bed, crop)
    post = int(bed["box"]["post"].split()[0]) * CM
    length = layout.end
    clear = max(0, min(layout.grid.edge, layout.grid.edge_least))
    for x, y in positions(layout).tolist():
        assert half * CM <= x <= length - half * CM
        beside_a_post = x < post or x > length - post
        assert not beside_a_post or post + clear <= y <= layout.grid.width - post - clear
    assert list(layout.per_row) == list(layout.per_row)[::-1]


@given(boxes())
def test_a_box_with_posts_counts_like_its_outline_drawn_by_hand(bed: Fields) -> None:
    found = laid_out(bed, PACKET, {})
    post = int(bed["box"]["post"].split()[0]) * CM
    length, width = found.bed.length.nm, found.bed.width.nm
    xs, ys = (0, post, length - post, length), (0, post, width - post, width)
    turns = [(1, 0), (2, 0), (2, 1), (3, 1), (3, 2), (2, 2), (2, 3), (1, 3), (1, 2), (0, 2), (0, 1), (1, 1)]
    outline = [[length_of(one, Units.METRIC).text for one in (xs[x], ys[y])] for x, y in turns]
    assert found.layouts == laid_out({"outline": outline}, PACKET, {}).layouts
