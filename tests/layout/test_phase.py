"""Rows shifted so that their ground holds the most plants: never fewer than unshifted, and no sampling finds more."""

from typing import Any

from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.layout import Layout
from gardenplot.layout.filled import zone_rows
from gardenplot.layout.phase import best_phase
from gardenplot.layout.value import Grid
from gardenplot.plan import Bed, Pattern
from tests.layout.test_zone import beds, only, plan_of

Fields = dict[str, Any]
STEP = [["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "0.5 m"], ["3 m", "0.5 m"], ["3 m", "1.0 m"], ["0 m", "1.0 m"]]


def both(bed: Fields, planting: Fields, crop: Fields) -> tuple[Layout, Layout]:
    """A block with its rows centred and with its rows shifted."""
    centred = only(plan_of(bed, planting, crop))
    return centred, only(plan_of(bed, planting | {"phase": "best"}, crop))


def test_rows_move_to_where_both_halves_of_a_step_hold_most() -> None:
    # centred, rows lie at 20, 50 and 80 cm, and beyond the step at 50 cm only the first goes on; shifted to 10, 40
    # and 70 cm, the second lies 10 cm from the step and goes on as well: 15 plants more
    crop = {"in_row": "20 cm", "row_spacing": "30 cm", "edge": "10 cm"}
    centred, best = both({"outline": STEP}, {}, crop)
    assert [row.offset // 10**7 for row in centred.rows] == [20, 50, 80]
    assert centred.per_row == (30, 15, 15)
    assert [row.offset // 10**7 for row in best.rows] == [10, 40, 70]
    assert (best.per_row, best.gain) == ((30, 30, 15), 15)


def test_a_plain_bed_has_nothing_to_gain() -> None:
    centred, best = both({"length": "6 m", "width": "1 m"}, {"pattern": "staggered"}, {})
    assert best.rows == centred.rows
    assert best.gain is None


blocks = st.fixed_dictionaries(
    {
        "in_row": st.integers(7, 60).map("{} cm".format),
        "row_spacing": st.integers(10, 60).map("{} cm".format),
        "edge": st.integers(0, 30).map("{} cm".format),
    }
)
patterns = st.one_of(
    st.sampled_from([{"pattern": "straight"}, {"pattern": "staggered"}, {"pattern": "triangular"}]),
    st.just({"pattern": "twin", "twin_spacing": "9 cm"}),
    st.just({"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4}),
)


@settings(max_examples=120)
@given(beds(), blocks, patterns, st.none() | st.integers(1, 3))
def test_the_best_phase_is_never_worse_and_no_sample_beats_it(
    bed: Fields, crop: Fields, pattern: Fields, rows: int | None
) -> None:
    plan = plan_of(bed, pattern | ({"rows": rows} if rows else {}), crop)
    ground, grid = plan.beds[0], only(plan).grid
    end = ground.length.nm
    best = best_phase(ground, grid, 0, end)
    held = _held(ground, best, end)
    assert held >= _held(ground, grid, end)
    if grid.offsets and not rows and best.edge_least <= best.edge:
        sampled = max(_held(ground, one, end) for one in _samples(grid))
        assert held >= sampled


def _held(bed: Bed, grid: Grid, end: int) -> int:
    return sum(row.count for row in zone_rows(bed, grid, 0, end))


def _samples(grid: Grid) -> list[Grid]:
    """The grid shifted by eighths of its spacing both ways, as somebody would try it who knows no better."""
    reach = grid.kinds[0].reach
    strip = grid.kinds[0].high if not reach else 0
    found = []
    for part in range(8):
        first = strip + grid.between * part // 8
        offsets = [first + row * grid.between for row in range(grid.rows + 1)]
        offsets = [one for one in offsets if one + max(strip, reach) <= grid.width]
        if grid.pattern is Pattern.TWIN or not offsets or (reach and grid.edge_least):
            continue
        for along in range(8):
            by = grid.kinds[0].step * along // 8
            kinds = tuple(kind._replace(first=kind.first + by) for kind in grid.kinds)
            found.append(evolve(grid, offsets=tuple(offsets), kinds=kinds))
    return found or [grid]
