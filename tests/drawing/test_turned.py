"""Turned rows and cells are drawn where their plants stand, and said in words."""

from math import dist

import pytest
from shapely import LineString, Point, Polygon

from gardenplot.commands.count import counts
from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.letters import looks
from gardenplot.drawing.marks import Line, Weight
from gardenplot.drawing.number_words import value_words
from gardenplot.drawing.planting_words import rows_words, spare_words
from gardenplot.exports.places import drawn as csv
from gardenplot.layout import lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.layout.row_numbers import row_numbers
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.working import Source
from tests.drawing.hand_worked import only_bed, plan_from
from tests.layout.ground import Fields

SKEWED = [["0 m", "0.6 m"], ["5 m", "0 m"], ["5.2 m", "1.4 m"], ["2.2 m", "1.75 m"], ["2.35 m", "2.9 m"],
          ["0.3 m", "3.1 m"]]  # fmt: skip
CELLS: Fields = {"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4}


def turned(**planting: str | int) -> Plan:
    """A block of leeks in a skewed L, turned where that holds most."""
    return plan_from(
        beds=[{"id": "b", "name": "Bed", "outline": SKEWED}],
        crops=[{"id": "c", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm", "edge": "8 cm"}],
        plantings=[{"id": "p", "bed": "b", "crop": "c", "phase": "best, turned"} | planting],
    )


def lines_of(plan: Plan) -> list[LineString]:
    """The lines on which plants stand, or the sides of cells, as they are drawn in mm."""
    figure = draw_bed(only_bed(plan), None, looks(plan), plan.place.units)
    return [
        LineString([mark.start, mark.end])
        for mark in figure.marks
        if isinstance(mark, Line) and mark.pen.weight is Weight.ROW
    ]


BLOCKS: list[Fields] = [CELLS, {"pattern": "staggered"}, {"pattern": "triangular", "from": "1 m", "length": "2 m"}]


@pytest.mark.parametrize("block", BLOCKS)
def test_lines_lie_in_the_bed_and_plants_on_or_between_them(block: Fields) -> None:
    plan = turned(**block)
    (layout,) = only_bed(plan).layouts
    assert layout.grid.turn is not None
    bed = Polygon([(x.nm / MM, y.nm / MM) for x, y in plan.beds[0].outline]).buffer(1e-5)
    lines = lines_of(plan)
    assert all(bed.covers(line) for line in lines)
    away = 75.0 if block is CELLS else 0.0
    for x, y in positions(layout).tolist():
        assert min(line.distance(Point(x / MM, y / MM)) for line in lines) == pytest.approx(away, abs=1e-5)


def test_a_cell_is_drawn_square() -> None:
    lengths = {round(line.length, 3) % 300 for line in lines_of(turned(**CELLS))}
    assert all(min(one, 300 - one) < 0.01 for one in lengths)


def test_the_working_says_to_which_edge_rows_are_turned_and_what_it_brings() -> None:
    plan = turned(**CELLS)
    laid = only_bed(plan)
    (layout,) = laid.layouts
    sums = {one.name: one for one in row_numbers(laid.bed, laid.grown[0], layout)}
    assert value_words(sums["rows_turned"], plan.place.units) == "6.8\u2009°"
    assert sums["more_by_phase"].value == layout.gain
    assert sums["planted"].value == layout.plants
    assert sums["planted"].source is Source.COUNTED
    assert rows_words(layout, plan.place.units) == spare_words(layout, plan.place.units) == ""


def test_counts_and_the_csv_tell_turned_rows_and_their_places() -> None:
    plan = turned(pattern="staggered")
    (layout,) = lay_out_plan(plan)[0].layouts
    (count,) = counts(plan)["plantings"]
    # the edge falls 0.6 m in 5 m: atan(0.12) = 6.8428 degrees, towards the base line
    assert count["turned_degrees"] == -6.84
    assert count["rows"] == len(count["plants_per_row"])
    assert all(count["plants_per_row"])
    assert counts(turned())["plantings"][0]["turned_degrees"] is None
    rows = [line.split(",") for line in csv(plan).decode().splitlines()[1:]]
    places = [(float(x), float(y)) for *_names, x, y in rows]
    assert places == [(x / MM, y / MM) for x, y in positions(layout).tolist()]
    first = [place for place, row in zip(places, rows, strict=True) if row[2] == "1"]
    assert dist(first[0], first[1]) == pytest.approx(150, abs=1e-5)
