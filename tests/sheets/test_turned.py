"""Sheets of turned grids: strings from edge to edge, and plants along them, that lead to where the plants stand."""

import re
from math import dist

import pytest
from attrs import evolve

from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from gardenplot.units import CM, Units
from tests.drawing.hand_worked import only_bed
from tests.drawing.test_turned import BLOCKS, turned
from tests.layout.ground import Fields
from tests.sheets.printed import printed, said

STRING = re.compile(r"(\d+\.\d\d) · ([\d.]+) (\d+\.\d\d) · ([\d.]+) (\d+\.\d\d) (\d+\.\d\d) (\d+)")


@pytest.mark.parametrize("block", BLOCKS)
def test_strings_lead_to_the_plants(block: Fields) -> None:
    plan = turned(**block)
    (layout,) = only_bed(plan).layouts
    text = said(plan).replace("\u2009", " ")
    strings = STRING.findall(text)
    assert "rows turned" in text
    assert len(strings) == len(layout.rows)
    for row, found in zip(rows_of(layout), strings, strict=True):
        x1, y1, x2, y2, first, last = (float(number) for number in found[:6])
        begin, end = (100 * x1, y1), (100 * x2, y2)
        for place, along in ((row[0], first), (row[int(found[6]) - 1], last)):
            share = 100 * along / dist(begin, end)
            there = tuple(one + share * (other - one) for one, other in zip(begin, end, strict=True))
            assert dist(there, place) < 2.5


def rows_of(layout: Layout) -> list[list[tuple[float, float]]]:
    """The plants of each row, in cm."""
    places = iter([(x / CM, y / CM) for x, y in positions(layout).tolist()])
    return [[next(places) for _plant in range(count)] for count in layout.per_row]


@pytest.mark.parametrize("units", [Units.FEET_AND_INCHES, Units.DECIMAL_FEET])
def test_other_units_have_room(units: Units) -> None:
    plan = turned(pattern="staggered")
    found = [
        page for page in printed(evolve(plan, place=evolve(plan.place, units=units))) if "string from" in page.text
    ]
    assert found
    for page in found:
        right = [word for word in page.words if word.box[0] > 560]
        assert not any("…" in word.text for word in right)
        for number, one in enumerate(right):
            on_its_line = (other for other in right[:number] if abs(other.box[1] - one.box[1]) < 2)
            assert all(one.box[2] <= other.box[0] or other.box[2] <= one.box[0] for other in on_its_line)
