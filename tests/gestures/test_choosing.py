"""Several plantings chosen together: added and taken away, walked through, framed, all of them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.strips import stacked
from gardenplot.gestures.choosing import all_of, extended, framed, toggled, walk
from gardenplot.layout import lay_out_plan
from tests.gestures.hand import block, ground

PLAN = ground(block("6 m", "1 m"), block("1 m", "1 m"), block("3 m", "1 m", bed="b2"), block("8 m", "1 m", bed="b2"))
ORDER = ("p2", "p1", "p3", "p4")


def test_plantings_are_walked_bed_by_bed_from_the_head() -> None:
    assert walk(PLAN, None) == ORDER


@given(st.lists(st.sampled_from(ORDER), unique=True).map(tuple), st.sampled_from(ORDER))
def test_what_is_toggled_twice_is_chosen_as_before(chosen: tuple[str, ...], planting: str) -> None:
    assert set(toggled(toggled(chosen, planting), planting)) == set(chosen)
    assert toggled(chosen, planting)[:1] == (planting,) or planting in chosen


@pytest.mark.parametrize(
    ("ways", "chosen"),
    [
        ([1], ("p2",)),
        ([-1], ("p4",)),
        ([1, 1], ("p1", "p2")),
        ([1, 1, 1], ("p3", "p1", "p2")),
        ([1, 1, -1], ("p2",)),
        ([1, -1], ("p2",)),
        ([1, 1, 1, 1, 1], ("p4", "p3", "p1", "p2")),
    ],
)
def test_walking_on_adds_and_walking_back_takes_away(ways: list[int], chosen: tuple[str, ...]) -> None:
    found: tuple[str, ...] = ()
    for way in ways:
        found = extended(ORDER, found, way)
    assert found == chosen
    assert extended((), found, 1) == ()


def test_all_of_the_bed_and_then_all_of_the_plan() -> None:
    bed = all_of(PLAN, None, ("p1",), "b1")
    assert bed == ("p1", "p2")
    assert all_of(PLAN, None, bed, "b1") == ("p1", "p2", "p3", "p4")
    assert all_of(PLAN, None, (), None) == ORDER
    assert all_of(ground(), None, (), "b1") == ()


@pytest.mark.parametrize(
    ("one", "other", "inside"),
    [
        ((1500.0, 0.0), (6500.0, 500.0), ("p2", "p1")),
        ((6500.0, 500.0), (1500.0, 0.0), ("p2", "p1")),
        ((2500.0, 0.0), (5500.0, 500.0), ()),
        ((0.0, 0.0), (3500.0, 9000.0), ("p2", "p3")),
        ((-900.0, -900.0), (90000.0, 90000.0), ORDER),
        ((0.0, -500.0), (90000.0, -1.0), ()),
    ],
)
def test_a_frame_takes_in_all_that_it_touches(
    one: tuple[float, float], other: tuple[float, float], inside: tuple[str, ...]
) -> None:
    strips = stacked(lay_out_plan(PLAN), along=1.0, stretch=1.0)
    assert framed(strips, None, one, other) == inside
