"""The array of all places: the plants of each run of each row in turn, and nothing that can be written to."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from tests.layout.any_ground import PLAIN, Found, grounds, only, packets, rows, some_length
from tests.layout.ground import Fields

sizes = some_length() | st.fixed_dictionaries({"plants": st.integers(1, 200)})
blocks = rows().flatmap(lambda one: sizes.map(one.__or__))


def one_by_one(layout: Layout) -> list[list[int]]:
    """Tape reading and offset of each plant, from the rows themselves."""
    places = [
        (run.first + number * run.step, row.offset)
        for row in layout.rows
        for run in row.runs
        for number in range(run.count)
    ]
    return [[y, x] if layout.grid.runs_across else [x, y] for x, y in places]


@settings(max_examples=max(300, settings().max_examples))
@given(st.tuples(st.one_of(PLAIN, grounds()), packets(), blocks))
def test_places_are_those_of_the_rows_in_their_order(found: Found) -> None:
    (layout,) = only(found).layouts
    places = positions(layout)
    assert places.shape == (layout.plants, 2)
    assert places.tolist() == one_by_one(layout)


@pytest.mark.parametrize("pattern", ["straight", "staggered"])
def test_rows_of_full_blocks_come_by_turns_and_lie_at_the_offsets_of_their_grid(pattern: str) -> None:
    bed: Fields = {"length": "10 m", "width": "75 cm"}
    (layout,) = only((bed, {"in_row": "20 cm", "row_spacing": "15 cm"}, {"pattern": pattern})).layouts
    assert len(layout.rows) == layout.grid.rows == 5
    assert len(layout.fills) == len(layout.grid.kinds) == (2 if pattern == "staggered" else 1)
    assert [row.offset for row in layout.rows] == [line.offset for line in layout.grid.lines]
    assert [row.runs[0].first for row in layout.rows] == [line.first for line in layout.grid.lines]


def test_places_cannot_be_written_to() -> None:
    (layout,) = only(({"length": "3 m", "width": "75 cm"}, {"in_row": "20 cm", "row_spacing": "25 cm"}, {})).layouts
    with pytest.raises(ValueError, match="read-only"):
        positions(layout)[0, 0] = 1
