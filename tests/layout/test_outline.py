"""Rows cut from outlines in whole numbers: the very same as in fractions, whatever the outline."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.layout.outline import Interval, runs_across, without
from tests.layout.fractions_of_an_outline import runs_in_fractions
from tests.layout.ground import several
from tests.layout.outlines import Outline, outlines, scatters, slabs, stairs, stars

SQUARE_ON_TIP = ((5, 0), (10, 5), (5, 10), (0, 5))
NOTCHED = ((0, 0), (12, 0), (12, 6), (8, 6), (6, 2), (4, 6), (0, 6))


@pytest.mark.parametrize(
    ("low", "high", "runs"),
    [
        (5, 5, ((0, 10),)),
        (0, 0, ((5, 5),)),
        (2, 8, ((3, 7),)),
        (0, 10, ((5, 5),)),
        (-1, 5, ()),
        (5, 11, ()),
    ],
)
def test_a_point_on_the_outline_belongs_to_it(low: int, high: int, runs: tuple[Interval, ...]) -> None:
    assert runs_across(SQUARE_ON_TIP, low, high) == runs


def test_a_notch_parts_a_row_only_where_it_reaches_into_it() -> None:
    assert runs_across(NOTCHED, 0, 2) == ((0, 12),)
    assert runs_across(NOTCHED, 0, 4) == ((0, 5), (7, 12))
    assert runs_across(NOTCHED, 2, 3) == ((0, 5), (7, 12))
    assert runs_across(NOTCHED, 6, 6) == ((0, 4), (8, 12))


@several
@given(stars(), st.data())
def test_a_star_has_the_runs_that_fractions_say(outline: Outline, data: st.DataObject) -> None:
    _assert_as_in_fractions(outline, data)


@several
@given(stairs(), st.data())
def test_level_and_upright_sides_have_the_runs_that_fractions_say(outline: Outline, data: st.DataObject) -> None:
    _assert_as_in_fractions(outline, data)


@several
@given(scatters(), st.data())
def test_any_outline_has_the_runs_that_fractions_say(outline: Outline, data: st.DataObject) -> None:
    _assert_as_in_fractions(outline, data)


def _assert_as_in_fractions(outline: Outline, data: st.DataObject) -> None:
    for low, high in data.draw(st.lists(slabs(outline), min_size=1, max_size=4)):
        assert runs_across(outline, low, high) == runs_in_fractions(outline, low, high)


@settings(max_examples=200)
@given(outlines(), st.data())
def test_where_an_outline_begins_and_which_way_it_goes_is_all_one(outline: Outline, data: st.DataObject) -> None:
    low, high = data.draw(slabs(outline))
    begin = data.draw(st.integers(0, len(outline) - 1))
    turned = (*outline[begin:], *outline[:begin])
    assert runs_across(turned, low, high) == runs_across(turned[::-1], low, high) == runs_across(outline, low, high)


_readings = st.integers(0, 30)


@settings(max_examples=300)
@given(st.lists(_readings, max_size=8, unique=True).map(sorted), _readings, _readings)
def test_without_a_stretch_all_but_its_inside_is_left(ends: list[int], first: int, more: int) -> None:
    runs = list(zip(ends[::2], ends[1::2], strict=False))
    kept = without(runs, first, first + more)
    for twice in range(-2, 130):
        inside = any(2 * left <= twice <= 2 * right for left, right in runs)
        taken = 2 * first < twice < 2 * (first + more)
        assert any(2 * left <= twice <= 2 * right for left, right in kept) == (inside and not taken)
