"""The ground round a planting: which blocks count, and what room they leave."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.gestures.snap import Pull, snaps_of
from gardenplot.layout import Ground, ground_for
from gardenplot.plan import planting_of
from gardenplot.units import CM, M
from tests.gestures.hand import block, ground
from tests.layout.ground import Fields, nm

D = 10 * CM
TWO_BLOCKS = Ground((M, 9 * M), ((2 * M, 3 * M), (5 * M, 6 * M)), 20 * CM)
SPRING: Fields = {"in_ground": "2027-03-01", "out": "2027-05-01"}
SUMMER: Fields = {"in_ground": "2027-05-01", "out": "2027-08-01"}


@pytest.mark.parametrize(
    ("start", "end"), [("1 m", "1.8 m"), ("3.2 m", "4.8 m"), ("5 m", "4.8 m"), ("6.2 m", "9 m"), ("8 m", "9 m")]
)
def test_the_room_of_a_start_ends_a_gap_before_the_next_block(start: str, end: str) -> None:
    assert TWO_BLOCKS.end_of_room(nm(start)) == nm(end)


@pytest.mark.parametrize(("end", "start"), [("1.8 m", "1 m"), ("4.8 m", "3.2 m"), ("9 m", "6.2 m"), ("2.5 m", "1 m")])
def test_the_room_of_an_end_begins_a_gap_after_the_block_before(end: str, start: str) -> None:
    assert TWO_BLOCKS.start_of_room(nm(end)) == nm(start)


def test_gaps_run_from_the_head_on() -> None:
    assert TWO_BLOCKS.gaps() == ((nm("1 m"), nm("1.8 m")), (nm("3.2 m"), nm("4.8 m")), (nm("6.2 m"), nm("9 m")))


def test_a_bed_without_blocks_is_one_gap() -> None:
    assert Ground((M, 9 * M), (), 0).gaps() == ((M, 9 * M),)


def test_a_full_bed_has_no_gap() -> None:
    assert Ground((M, 9 * M), ((M, 9 * M),), 20 * CM).gaps() == ()


@st.composite
def grounds(draw: st.DrawFn) -> Ground:
    """Any blocks in and beside a zone, overlapping or not."""
    tenths = st.integers(0, 120)
    blocks = draw(st.lists(st.tuples(tenths, st.integers(1, 50)), max_size=5))
    gap = draw(st.integers(0, 5))
    return Ground((M, 9 * M), tuple(sorted((at * D, (at + long) * D) for at, long in blocks)), gap * D)


@given(grounds())
def test_every_gap_lies_in_the_zone_and_keeps_the_gap_to_every_block(free: Ground) -> None:
    for start, end in free.gaps():
        assert free.zone[0] <= start < end <= free.zone[1]
        for first, last in free.blocks:
            assert end <= first - free.gap or last + free.gap <= start


@given(grounds(), st.integers(10, 90).map((10 * CM).__mul__))
def test_what_lies_in_no_gap_lies_in_a_block_or_nearer_to_one_than_the_gap(free: Ground, reading: int) -> None:
    in_gap = any(start <= reading <= end for start, end in free.gaps())
    near = any(first - free.gap <= reading <= last + free.gap for first, last in free.blocks)
    assert in_gap or near


@given(grounds(), st.integers(10, 90).map((10 * CM).__mul__))
def test_no_room_reaches_out_of_the_zone(free: Ground, reading: int) -> None:
    assert free.end_of_room(reading) <= free.zone[1]
    assert free.start_of_room(reading) >= free.zone[0]


def test_a_block_is_drawn_to_both_margins_and_to_both_sides_of_its_neighbours() -> None:
    drawn_to = {(snap.pull, snap.at) for snap in snaps_of(TWO_BLOCKS, nm("1.5 m"))}
    assert drawn_to == {
        (Pull.HEAD_MARGIN, nm("1 m")),
        (Pull.FOOT_MARGIN, nm("7.5 m")),
        (Pull.NEIGHBOUR, nm("30 cm")),
        (Pull.NEIGHBOUR, nm("3.2 m")),
        (Pull.NEIGHBOUR, nm("3.3 m")),
        (Pull.NEIGHBOUR, nm("6.2 m")),
    }


def test_the_ground_of_a_planting_counts_the_others_that_share_its_days() -> None:
    plan = ground(block("1 m", "1 m", **SPRING), block("3 m", "1 m", **SUMMER), block("5 m", "1 m"))
    blocks = {planting.id: ground_for(plan, planting, "b1").blocks for planting in plan.plantings}
    assert blocks == {
        "p1": ((5 * M, 6 * M),),
        "p2": ((5 * M, 6 * M),),
        "p3": ((M, 2 * M), (3 * M, 4 * M)),
    }


def test_the_ground_in_another_bed_has_that_beds_zone_and_blocks() -> None:
    plan = ground(block("1 m", "1 m"), block("3 m", "1 m", bed="b2"))
    assert ground_for(plan, planting_of(plan, "p1"), "b2") == Ground((0, 20 * M), ((3 * M, 4 * M),), 0)
    assert ground_for(plan, planting_of(plan, "p1"), "b1") == Ground((nm("30 cm"), nm("11.7 m")), (), nm("20 cm"))
