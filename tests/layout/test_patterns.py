"""Twin rows, own offsets, cells, rings and rows across: counts by hand, and the laws that hold for all of them."""

import json
from itertools import pairwise
from math import dist, isqrt, pi, sin
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from gardenplot.errors import FileError
from gardenplot.layout import Layout, lay_out_plan
from gardenplot.layout.cells import sub_rows
from gardenplot.layout.positions import positions
from gardenplot.layout.rings import on_ring
from gardenplot.plan.file import plan_of_text
from gardenplot.units import CM
from tests.layout.any_ground import cm
from tests.layout.ground import nm, several
from tests.plans import maybe

Fields = dict[str, Any]


def block(bed: Fields, crop: Fields, planting: Fields, place: Fields | None = None) -> Layout:
    """The layout of one block that has its bed to itself."""
    parts = {
        "place": place or {},
        "beds": [{"id": "b", "name": "Bed"} | bed],
        "crops": [{"id": "c", "name": "Crop"} | crop],
        "plantings": [{"id": "p", "bed": "b", "crop": "c"} | planting],
    }
    (laid,) = lay_out_plan(plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan)
    return laid.layouts[0]


def offsets_cm(layout: Layout) -> list[float]:
    return [row.offset / CM for row in layout.rows]


BED: Fields = {"length": "6 m", "width": "1.2 m"}
BEAN: Fields = {"in_row": "20 cm", "row_spacing": "60 cm", "edge": "15 cm"}


def test_twin_rows_are_pairs_centred_on_the_bed() -> None:
    # 120 - 2 x 15 - 20 = 70 cm: two pairs 60 cm apart, 80 cm in all, 20 cm to either edge
    layout = block(BED, BEAN, {"pattern": "twin", "twin_spacing": "20 cm"})
    assert offsets_cm(layout) == [20, 40, 80, 100]
    assert layout.per_row == (30, 30, 30, 30)


def test_an_odd_number_of_twin_rows_leaves_the_last_without_its_pair() -> None:
    # 0, 20 and 60 cm, centred on 120 cm
    assert offsets_cm(block(BED, BEAN, {"pattern": "twin", "twin_spacing": "20 cm", "rows": 3})) == [30, 50, 90]


def test_own_offsets_are_taken_as_they_are() -> None:
    layout = block(BED, BEAN | {"edge": "10 cm"}, {"pattern": "offsets", "offsets": ["12 cm", "50 cm", "95 cm"]})
    assert offsets_cm(layout) == [12, 50, 95]
    assert layout.plants == 90


@pytest.mark.parametrize(
    ("plants", "way"),
    [(1, (1,)), (2, (2,)), (3, (1, 2)), (4, (2, 2)), (5, (2, 1, 2)), (6, (3, 3)), (8, (3, 2, 3)), (9, (3, 3, 3)),
     (16, (4, 4, 4, 4))],
)  # fmt: skip
def test_plants_of_a_cell_stand_as_far_apart_as_they_can(plants: int, way: tuple[int, ...]) -> None:
    assert sub_rows(plants) in (way, way[::-1])


def test_cells_are_whole_both_ways() -> None:
    # 6.10 m hold 20 cells of 30 cm, 1.25 m hold 4: 80 cells, 4 plants in each; 2.5 cm stay free at either side
    layout = block({"length": "6.1 m", "width": "1.25 m"}, {"in_row": "15 cm", "row_spacing": "15 cm"},
                   {"pattern": "cells", "cell": "30 cm"})  # fmt: skip
    assert layout.plants == 80 * 4
    assert offsets_cm(layout) == [10, 25, 40, 55, 70, 85, 100, 115]
    assert layout.first_plant == nm("7.5 cm")


def test_thirty_plants_take_as_many_cells_as_they_need() -> None:
    cells = {"pattern": "cells", "cell": "12 in", "plants_per_cell": 4, "plants": 30}
    layout = block({"length": "8 ft", "width": "4 ft"}, {"in_row": "6 in", "row_spacing": "6 in"}, cells)
    assert (layout.length, layout.plants) == (nm("2 ft"), 30)


def test_rows_across_are_ranks_of_the_block() -> None:
    # 6 m hold 10 rows 60 cm apart, 1.2 m less 2 x 15 cm hold 5 plants 20 cm apart, 20 cm from either edge
    layout = block(BED, BEAN, {"direction": "across"})
    assert [row.offset / CM for row in layout.rows] == [30 + 60 * rank for rank in range(10)]
    assert layout.per_row == (5,) * 10
    assert positions(layout)[:5].tolist() == [[30 * CM, (20 + 20 * n) * CM] for n in range(5)]


def test_staggered_rows_across_alternate() -> None:
    layout = block(BED, BEAN | {"edge": "20 cm"}, {"direction": "across", "pattern": "staggered", "plants": 13})
    assert layout.per_row == (5, 4, 4)
    assert layout.length == 3 * nm("60 cm")


def test_rings_stand_round_the_middle() -> None:
    octagon = [["1 m", "0 m"], ["2 m", "0 m"], ["3 m", "1 m"], ["3 m", "2 m"], ["2 m", "3 m"], ["1 m", "3 m"],
               ["0 m", "2 m"], ["0 m", "1 m"]]  # fmt: skip
    layout = block({"outline": octagon}, {"in_row": "30 cm", "row_spacing": "40 cm", "edge": "20 cm"},
                   {"pattern": "rings"})  # fmt: skip
    # the slanted sides are the nearest, 1.5 x sqrt 2 - 0.5 / sqrt 2 ... = 1.4142 m from the middle
    assert [ring.radius // 10**7 for ring in layout.rings] == [121, 81, 41, 0]
    assert layout.per_row == tuple(on_ring(ring.radius, nm("30 cm")) for ring in layout.rings) == (25, 16, 8, 1)


@several
@given(st.integers(1, 3_000), st.integers(1, 500))
def test_a_ring_holds_the_most_plants_whose_chord_is_their_spacing(radius: int, in_row: int) -> None:
    count = on_ring(radius, in_row)
    if count > 1:
        assert 2 * radius * sin(pi / count) >= in_row - 1e-6
        assert 2 * radius * sin(pi / (count + 1)) < in_row
    else:
        assert 2 * radius < in_row


def test_a_ring_of_its_own_spacing_holds_six() -> None:
    # a regular hexagon's side is its radius (Euclid, Elements IV 15)
    assert [on_ring(radius, radius) for radius in (1, 7, nm("30 cm"), nm("13 3/8 in"))] == [6] * 4


@pytest.mark.parametrize(
    ("planting", "field"),
    [
        ({"pattern": "offsets"}, "offsets"),
        ({"pattern": "offsets", "offsets": ["20 cm", "20 cm"]}, "offsets"),
        ({"pattern": "twin", "twin_spacing": "60 cm"}, "twin_spacing"),
        ({"pattern": "cells", "cell": "0 cm"}, "cell"),
        ({"pattern": "cells", "cell": "30 cm", "plants_per_cell": 0}, "plants_per_cell"),
        ({"pattern": "rings", "direction": "across"}, "direction"),
    ],
)
def test_a_pattern_that_cannot_be_names_its_field(planting: Fields, field: str) -> None:
    with pytest.raises(FileError, match=rf"plantings\[0\]\.{field}: "):
        block(BED, BEAN, planting)


PATTERNS: st.SearchStrategy[Fields] = st.one_of(
    st.fixed_dictionaries({"pattern": st.just("twin"), "twin_spacing": cm(3, 19)}),
    st.fixed_dictionaries({"pattern": st.just("cells"), "cell": cm(10, 50), "plants_per_cell": st.integers(1, 9)}),
    st.just({"pattern": "rings"}),
    st.fixed_dictionaries(
        {"pattern": st.sampled_from(["straight", "staggered", "triangular"]), "direction": st.just("across")}
    ),
)
SIZES: st.SearchStrategy[Fields] = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"plants": st.integers(1, 60)}),
    st.fixed_dictionaries({"length": cm(5, 400)}),
)


@st.composite
def any_block(draw: st.DrawFn) -> tuple[Fields, Fields, Fields]:
    """Any block of a newer pattern in a plain bed."""
    bed = {"length": draw(cm(50, 400)), "width": draw(cm(20, 200))}
    edge = draw(maybe(cm(0, 30)))
    crop = {"in_row": draw(cm(9, 60)), "row_spacing": draw(cm(20, 60))} | ({"edge": edge} if edge else {})
    return bed, crop, draw(PATTERNS) | draw(SIZES)


def least_apart(layout: Layout) -> float:
    """What the pattern promises between any two of its plants, in nm; a rounding of 2 nm for what is not whole."""
    grid = layout.grid
    match grid.pattern:
        case "twin":
            return min(grid.in_row, grid.twin, grid.between - grid.twin)
        case "cells":
            return min(grid.cell // max(sub_rows(grid.per_cell)), _between_sub_rows(grid.cell, grid.per_cell)) - 2
        case "staggered":
            return min(grid.in_row, isqrt((grid.in_row // 2) ** 2 + grid.between**2))
        case "triangular":
            return grid.in_row
        case _:
            return min(grid.in_row, grid.between) - 2


def _between_sub_rows(cell: int, plants: int) -> int:
    """The least distance between sub-rows; plants of sub-rows that differ do not stand above one another."""
    return cell // len(sub_rows(plants))


@several
@given(any_block())
def test_every_plant_is_inside_and_apart_enough(found: tuple[Fields, Fields, Fields]) -> None:
    bed, crop, planting = found
    layout = block(bed, crop, planting)
    places = positions(layout).tolist()
    length, width = nm(bed["length"]), nm(bed["width"])
    assert len(places) == layout.plants == sum(layout.per_row)
    assert all(max(0, layout.start) <= x <= min(layout.end, length) and 0 <= y <= width for x, y in places)
    if layout.grid.pattern != "cells":
        least = min(layout.grid.edge_least, layout.grid.edge)
        assert all(least <= y + 1 and y <= width - least + 1 for _x, y in places)
    apart = least_apart(layout)
    assert all(
        dist(one, other) >= apart for number, one in enumerate(places[:80]) for other in places[number + 1 : 81]
    )


@several
@given(any_block(), st.integers(1, 60))
def test_the_block_is_the_shortest_that_holds_its_plants(found: tuple[Fields, Fields, Fields], plants: int) -> None:
    bed, crop, planting = found
    assume(planting["pattern"] != "rings")
    pattern = {name: value for name, value in planting.items() if name not in ("plants", "length")}
    long = bed | {"length": "100 m"}
    layout = block(long, crop, pattern | {"plants": plants})
    assume(layout.grid.rows)
    assert layout.plants == plants
    if layout.length > nm("1 mm"):
        shorter = block(long, crop, pattern | {"length": f"{(layout.length - 1) / 1e6:.6f} mm"})
        assert shorter.plants < plants


@several
@given(any_block(), st.integers(1, 100))
def test_more_length_never_holds_fewer(found: tuple[Fields, Fields, Fields], more: int) -> None:
    bed, crop, planting = found
    pattern = {name: value for name, value in planting.items() if name not in ("plants", "length")}
    counts = [block(bed, crop, pattern | {"length": f"{length} cm"}).plants for length in (100, 100 + more)]
    assert counts[0] <= counts[1]


@several
@given(any_block())
def test_a_rectangle_drawn_as_an_outline_counts_like_a_rectangle(found: tuple[Fields, Fields, Fields]) -> None:
    bed, crop, planting = found
    length, width = bed["length"], bed["width"]
    drawn = {"outline": [["0 cm", "0 cm"], [length, "0 cm"], [length, width], ["0 cm", width]]}
    plain, outlined = block(bed, crop, planting), block(drawn, crop, planting)
    assert outlined.plants == plain.plants
    if "plants" not in planting:
        assert positions(outlined).tolist() == positions(plain).tolist()


def test_the_remainder_is_spread_onto_what_can_be_marked() -> None:
    # 51 ranks in 14.94 m: 29.3 cm each, which no tape marks; 29 cm does (whole centimetres)
    bed, fennel = (
        {"length": "14.94 m", "width": "76.2 cm"},
        {"in_row": "25 cm", "row_spacing": "30 cm", "edge": "7.5 cm"},
    )
    spread = {"remainder": "spread", "length": "14.94 m"}
    assert block(bed, fennel, spread).grid.in_row == nm("25 cm")  # 59 ranks: 25.3 cm is no whole centimetre
    shorter = block(bed, fennel, spread | {"length": "12.9 m"})
    assert (shorter.grid.in_row, shorter.per_row) == (nm("25 cm"), (51, 51, 51))
    tools = {"markable_in_row": ["25 cm", "28 cm", "29 cm", "30 cm"]}
    wide = block(bed, fennel | {"in_row": "29 cm"}, spread | {"in_row": "28 cm"}, tools)
    assert (wide.grid.in_row, wide.per_row) == (nm("28 cm"), (53, 53, 53))


@several
@given(st.integers(100, 900), st.integers(9, 40), st.sampled_from(["straight", "staggered", "twin"]), st.booleans())
def test_spreading_the_remainder_keeps_every_plant(length: int, in_row: int, pattern: str, on_mark: bool) -> None:
    planting: Fields = {"pattern": pattern} | ({"end_margin": "0 cm"} if on_mark else {})
    crop = {"in_row": f"{in_row} cm", "row_spacing": "30 cm", "edge": "5 cm"}
    bed = {"length": f"{length} cm", "width": "80 cm"}
    near, wide = block(bed, crop, planting), block(bed, crop, planting | {"remainder": "spread"})
    assert wide.plants == near.plants
    assert wide.grid.in_row >= near.grid.in_row
    assert wide.grid.in_row % CM == 0
    for row in wide.rows:
        readings = [run.first + step * run.step for run in row.runs for step in range(run.count)]
        assert all(after - one == wide.grid.in_row for one, after in pairwise(readings))
        assert not readings or readings[-1] + wide.grid.ends[1] <= wide.end
