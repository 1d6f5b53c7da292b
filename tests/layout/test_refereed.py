"""Plants of every pattern in every shape of bed, judged by shapely: inside, clear, none missing, none too many."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.layout import Layout
from gardenplot.layout.cells import sub_rows
from gardenplot.layout.positions import positions
from gardenplot.layout.value import Line
from gardenplot.plan import Pattern
from tests.layout.any_ground import RINGS, Found, grounds, only, packets, rows, some_length
from tests.layout.ground import Fields, nm
from tests.layout.referee import MICROMETRE, body_of, bounds, clear_of, ground_of

found_blocks = st.tuples(
    grounds(), packets(), st.one_of(rows(), RINGS).flatmap(lambda one: some_length().map(one.__or__))
)
found_rows = st.tuples(grounds(), packets(), rows().flatmap(lambda one: some_length().map(one.__or__)))


@settings(max_examples=max(100, settings().max_examples))
@given(found_blocks)
def test_every_plant_stands_in_its_bed_and_block_and_clear_of_all_obstacles(found: Found) -> None:
    laid = only(found)
    layout, bed = laid.layouts[0], laid.bed
    places = positions(layout)
    plants = shapely.points(places)
    assert layout.plants == len(places)
    assert shapely.covers(ground_of(bed).buffer(MICROMETRE), plants).all()
    for one in bed.obstacles:
        assert (shapely.distance(body_of(one), plants) >= clear_of(one) - MICROMETRE).all()
    first, last = bed.zone
    readings = places[:, 0]
    assert ((max(first, layout.start) <= readings) & (readings <= min(last, layout.end))).all()


@settings(max_examples=max(150, settings().max_examples))
@given(found_rows)
def test_every_row_line_holds_the_places_that_the_referee_finds(found: Found) -> None:
    laid = only(found)
    layout = laid.layouts[0]
    start, end = max(layout.start, laid.bed.zone[0]), min(layout.end, laid.bed.zone[1])
    across = layout.grid.runs_across
    held = bounds(laid.bed, across=across)
    lines = lines_of(layout, start, end)
    for line, planted in zip(lines, planted_on(layout, len(lines)), strict=True):
        phase = (0 if across else start) + line.first if line.keeps_phase else None
        readings = (0, laid.bed.width.nm) if across else (start, end)
        least, most = held(line, *readings, phase)
        assert least <= planted <= most


@given(grounds(), packets(), some_length())
def test_rings_keep_their_edge_from_the_nearest_side(bed: Fields, crop: Fields, size: Fields) -> None:
    laid = only((bed, crop, {"pattern": "rings"} | size))
    layout = laid.layouts[0]
    away = shapely.distance(ground_of(laid.bed).boundary, shapely.points(positions(layout)))
    assert (away >= layout.grid.edge_least - MICROMETRE).all()


@given(grounds(most=0), packets(), some_length())
def test_a_band_without_an_edge_covers_the_area_that_shapely_measures(
    bed: Fields, crop: Fields, size: Fields
) -> None:
    packet = {name: value for name, value in crop.items() if name != "edge"}
    laid = only((bed, packet, {"pattern": "broadcast"} | size))
    layout, ground = laid.layouts[0], ground_of(laid.bed)
    start, end = max(layout.start, laid.bed.zone[0]), min(layout.end, laid.bed.zone[1])
    area = ground.intersection(shapely.box(start, -1, end, laid.bed.width.nm + 1)).area if start < end else 0
    each = layout.grid.in_row * layout.grid.between_least
    assert layout.plants == pytest.approx(area / each, abs=1 + 1e-6 * area / each)


def lines_of(layout: Layout, start: int, end: int) -> list[Line]:
    """The row lines of a block; of rows across, one for each rank that fits, kinds by turns."""
    grid = layout.grid
    if not grid.runs_across or not grid.kinds:
        return list(grid.lines)
    head, foot = grid.ends
    found: list[Line] = []
    offset = start + head
    while offset + foot <= end:
        line = grid.kinds[len(found) % len(grid.kinds)]
        found.append(line._replace(offset=offset, low=offset + line.low, high=offset + line.high))
        offset += grid.rank
    return found


def planted_on(layout: Layout, lines: int) -> list[int]:
    """Places taken on each line: plants of a row, cells of a row of cells."""
    if layout.grid.pattern is not Pattern.CELLS:
        return [*layout.per_row, *[0] * (lines - len(layout.per_row))]
    inside = len(sub_rows(layout.grid.per_cell))
    sums = [sum(layout.per_row[at : at + inside]) for at in range(0, len(layout.per_row), inside)]
    assert all(one % layout.grid.per_cell == 0 for one in sums)
    return [one // layout.grid.per_cell for one in sums]


def test_a_peg_in_a_row_across_takes_no_place_that_it_leaves_free() -> None:
    """Places at 0, 30, 60 and 90 cm keep clear of a peg at 50 cm; centring two must not push out the others."""
    peg = {"name": "peg", "x": "50 cm", "y": "50 cm", "diameter": "1 cm", "keep_clear": "5 mm"}
    bed = {"length": "1 m", "width": "95 cm", "obstacles": [peg]}
    row = {"in_row": "30 cm", "row_spacing": "1 m", "edge": "0 cm"}
    (only_row,) = only((bed, row, {"direction": "across"})).layouts[0].rows
    assert [(run.first, run.count) for run in only_row.runs] == [(nm("2.5 cm"), 2), (nm("62.5 cm"), 2)]
