"""Beds as strips one under another: where they lie, and what lies under a point."""

from datetime import date
from itertools import pairwise

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.strips import (
    CAPTIONS,
    HEADROOM,
    Part,
    Strips,
    Under,
    all_in_sight,
    arranged,
    laid_otherwise,
    stacked,
    under,
)
from gardenplot.layout import lay_out_plan, standing
from gardenplot.plan import Bed, Plan
from gardenplot.units import MM, parse_length
from tests.drawing.hand_worked import hand_worked
from tests.layout.ground import nm
from tests.plans import metric_plan, plans

ALONG = 0.1
"""Pixels per mm: a bed of 12 m is 1200 px long."""
any_scale = st.floats(0.005, 3)


def strips_of(plan: Plan, along: float = ALONG, *, true_scale: bool = True) -> Strips:
    return arranged(lay_out_plan(plan), along, true_scale=true_scale)


def many(count: int) -> Plan:
    """So many beds of 20 m by 80 cm."""
    size = parse_length("20 m"), parse_length("80 cm")
    return Plan(beds=tuple(Bed(f"b{number}", f"Bed {number + 1}", *size) for number in range(count)))


def point(strips: Strips, bed: str, reading: str, offset: str) -> tuple[float, float]:
    """The canvas point of a place in a bed."""
    strip = strips.strip_of(bed)
    assert strip is not None
    return nm(reading) / MM * strips.along, strip.top + nm(offset) / MM * strips.across


@settings(max_examples=25)
@given(plans(), any_scale)
def test_true_to_scale_nothing_is_stretched(plan: Plan, along: float) -> None:
    strips = strips_of(plan, along)
    assert strips.stretch == 1
    assert strips.across == strips.along == along
    for strip in strips.strips:
        assert strip.height == max(2, strip.laid.bed.width.nm / MM * along)


@settings(max_examples=25)
@given(plans(), any_scale)
def test_stretched_beds_keep_their_proportions_to_one_another(plan: Plan, along: float) -> None:
    strips = strips_of(plan, along, true_scale=False)
    assert strips.stretch >= 1
    for strip in strips.strips:
        assert strip.height == max(2, strip.laid.bed.width.nm / MM * along * strips.stretch)


@settings(max_examples=25)
@given(plans(), any_scale, st.booleans())
def test_strips_lie_one_under_another_with_room_for_flag_and_captions(
    plan: Plan, along: float, true_scale: bool
) -> None:
    strips = strips_of(plan, along, true_scale=true_scale)
    assert [strip.bed for strip in strips.strips] == [bed.id for bed in plan.beds]
    bottom = 0.0
    for strip in strips.strips:
        assert strip.top == pytest.approx(bottom + HEADROOM)
        bottom = strip.top + strip.height + CAPTIONS
    assert strips.height >= bottom
    assert strips.longest == max((bed.length.nm / MM for bed in plan.beds), default=0)


@settings(max_examples=25)
@given(plans(least_plantings=1), any_scale, st.data())
def test_strips_laid_out_otherwise_are_those_that_are_stacked_anew(
    plan: Plan, along: float, data: st.DataObject
) -> None:
    gone = data.draw(st.sampled_from(plan.plantings))
    other = evolve(plan, plantings=tuple(one for one in plan.plantings if one is not gone))
    strips, laid = strips_of(plan, along, true_scale=False), lay_out_plan(other)
    now = laid_otherwise(strips, laid)
    assert now == stacked(laid, along, strips.stretch, strips.headroom, strips.captions)
    for before, after in zip(strips.strips, now.strips, strict=True):
        assert (before is after) == (before.laid is after.laid)


def test_a_long_slim_bed_is_stretched_until_it_can_be_worked_on() -> None:
    assert strips_of(hand_worked("s2"), 0.03).strips[0].height < 40
    stretched = strips_of(hand_worked("s2"), 0.03, true_scale=False)
    assert stretched.stretch > 1
    assert stretched.strips[0].height >= 64
    assert strips_of(hand_worked("s2"), 0.2, true_scale=False).stretch == 1


@settings(max_examples=40)
@given(plans(), any_scale, st.floats(200, 3000))
def test_all_beds_are_in_sight_at_once_in_their_order_and_their_proportions(
    plan: Plan, along: float, room: float
) -> None:
    strips = all_in_sight(lay_out_plan(plan), along, true_scale=False, room=room)
    assert [strip.bed for strip in strips.strips] == [bed.id for bed in plan.beds]
    widened = sum(2.0 for strip in strips.strips if strip.height == 2.0)
    assert strips.height <= room + widened + 1e-6 or not strips.strips
    bottom = max(0.0, 7.0 - strips.headroom)
    for strip in strips.strips:
        assert strip.top == pytest.approx(bottom + strips.headroom)
        assert strip.height == pytest.approx(max(2.0, strip.laid.bed.width.nm / MM * strips.across))
        bottom = strip.top + strip.height + strips.captions


@pytest.mark.parametrize(
    ("beds", "room", "stretch", "sees_all"),
    [
        (4, 1200, 6, True),
        (4, 640, 3, True),
        (4, 600, 2.65, True),
        (4, 540, 2, True),
        (4, 510, 3, False),
        (9, 900, 3, False),
    ],
)
def test_beds_are_enlarged_less_than_usual_where_that_brings_all_of_them_into_sight(
    beds: int, room: float, stretch: float, sees_all: bool
) -> None:
    strips = arranged(lay_out_plan(many(beds)), 0.03, true_scale=False, room=room)
    assert strips.stretch == stretch
    assert (strips.height <= room) is sees_all


@settings(max_examples=40)
@given(plans(), st.booleans(), st.floats(200, 3000), st.data())
def test_names_never_lie_on_one_another_and_the_chosen_bed_is_always_named(
    plan: Plan, close: bool, room: float, data: st.DataObject
) -> None:
    arrange = all_in_sight if close else arranged
    strips = arrange(lay_out_plan(plan), 0.05, true_scale=False, room=room)
    chosen = data.draw(st.sampled_from([None, *(bed.id for bed in plan.beds)]))
    named = strips.named(chosen)
    middles = [strip.top + strip.height / 2 for strip in strips.strips if strip.bed in named]
    assert all(after - before >= 13 for before, after in pairwise(middles))
    assert chosen is None or chosen in named
    assert not strips.has_captions or len(named) == len(plan.beds)


@pytest.mark.parametrize(("beds", "named"), [(4, 1), (40, 1), (80, 2), (200, 5)])
def test_of_many_beds_every_so_many_th_is_named(beds: int, named: int) -> None:
    strips = all_in_sight(lay_out_plan(many(beds)), 0.03, true_scale=False, room=570)
    assert strips.named(None) == {f"b{number}" for number in range(0, beds, named)}


def test_where_there_is_room_all_beds_at_once_lie_as_ever() -> None:
    laid = lay_out_plan(hand_worked("s2"))
    assert all_in_sight(laid, 0.03, true_scale=False, room=900) == arranged(laid, 0.03, true_scale=False, room=900)


@pytest.mark.parametrize("room", [-46, 0, 5, 20])
@pytest.mark.parametrize("beds", [1, 2, 4, 40])
def test_in_a_window_that_is_too_low_all_beds_at_once_keep_a_height(beds: int, room: int) -> None:
    strips = all_in_sight(lay_out_plan(many(beds)), 0.03, true_scale=False, room=room)
    assert strips.across > 0
    assert all(strip.height >= 2 for strip in strips.strips)
    assert all(one.top + one.height < other.top for one, other in pairwise(strips.strips))


@settings(max_examples=25)
@given(plans(), any_scale, st.booleans(), st.floats(-50, 3000), st.floats(0, 500))
def test_the_strips_between_two_heights_are_those_of_which_something_lies_there(
    plan: Plan, along: float, close: bool, top: float, height: float
) -> None:
    arrange = all_in_sight if close else arranged
    strips = arrange(lay_out_plan(plan), along, true_scale=False, room=300)
    lying = {
        strip.bed
        for strip in strips.strips
        if strip.top + strip.height + strips.captions >= top and strip.top - strips.headroom <= top + height
    }
    assert {strip.bed for strip in strips.lying(top, top + height)} == lying
    for strip in strips.strips:
        assert strips.nearest(strip.top + strip.height / 2) is strip


def test_a_plan_without_beds_has_no_strips_and_nothing_lies_anywhere() -> None:
    strips = strips_of(Plan(), true_scale=False)
    assert (strips.strips, strips.longest, strips.stretch) == ((), 0, 1)
    assert under(strips, None, 10, 40) is None
    assert strips.strip_of("b1") is None


@pytest.mark.parametrize(
    ("reading", "offset", "part", "planting"),
    [
        ("0.10 m", "20 cm", Part.SOIL, None),
        ("0.30 m", "20 cm", Part.BLOCK, "p1"),
        ("7.10 m", "75 cm", Part.BLOCK, "p1"),
        ("7.20 m", "20 cm", Part.SOIL, None),
        ("7.31 m", "0 cm", Part.BLOCK, "p2"),
        ("11.5 m", "20 cm", Part.SOIL, None),
        ("13 m", "20 cm", Part.SOIL, None),
    ],
)
def test_what_lies_under_a_point_of_a_bed(reading: str, offset: str, part: Part, planting: str | None) -> None:
    strips = strips_of(hand_worked("s1"))
    expected = Under("b2", nm(reading), nm(offset), part, planting)
    assert under(strips, None, *point(strips, "b2", reading, offset)) == expected


@pytest.mark.parametrize(
    ("reading", "selected", "part", "planting"),
    [
        ("11.05 m", "p2", Part.FOOT_END, "p2"),
        ("11.11 m", "p2", Part.FOOT_END, "p2"),
        ("11.13 m", "p2", Part.SOIL, None),
        ("11.05 m", None, Part.BLOCK, "p2"),
        ("11.05 m", "p1", Part.BLOCK, "p2"),
        ("7.30 m", "p2", Part.HEAD_END, "p2"),
        ("7.24 m", "p2", Part.HEAD_END, "p2"),
        ("9 m", "p2", Part.BLOCK, "p2"),
        ("7.15 m", "p1", Part.FOOT_END, "p1"),
    ],
)
def test_the_ends_of_the_selected_block_can_be_taken_hold_of(
    reading: str, selected: str | None, part: Part, planting: str | None
) -> None:
    strips = strips_of(hand_worked("s1"))
    found = under(strips, None, *point(strips, "b2", reading, "20 cm"), selected)
    assert found is not None
    assert (found.part, found.planting) == (part, planting)


@pytest.mark.parametrize(("above", "hit"), [(4, "p1"), (5, None)])
def test_a_block_is_hit_a_few_pixels_beside_it_and_no_farther(above: int, hit: str | None) -> None:
    strips = strips_of(hand_worked("s1"))
    (strip,) = strips.strips
    for y in (strip.top - above, strip.top + strip.height + above):
        found = under(strips, None, 300, y)
        assert found is not None
        assert (found.bed, found.planting) == ("b2", hit)


def test_captions_belong_to_the_bed_above_them_and_flags_to_the_bed_below() -> None:
    strips = strips_of(metric_plan())
    first, second = strips.strips
    below, over = (under(strips, None, 10, y) for y in (first.top + first.height + CAPTIONS - 1, second.top - 1))
    assert below is not None
    assert over is not None
    assert (below.bed, over.bed) == ("b1", "b2")
    assert under(strips, None, 10, strips.strips[-1].top + strips.strips[-1].height + CAPTIONS) is None
    assert under(strips, None, 10, -1) is None


def test_only_what_stands_on_the_day_lies_under_a_point() -> None:
    strips = strips_of(metric_plan())
    spot = point(strips, "b1", "1 m", "20 cm")
    on = {day: under(strips, day, *spot) for day in (None, date(2027, 4, 8), date(2027, 4, 9), date(2027, 5, 28))}
    assert [found and found.planting for found in on.values()] == ["p1", None, "p1", None]


@settings(max_examples=25)
@given(plans(least_plantings=1), any_scale, st.booleans(), st.data())
def test_the_middle_of_a_block_is_hit_unless_another_lies_over_it(
    plan: Plan, along: float, true_scale: bool, data: st.DataObject
) -> None:
    strips = strips_of(plan, along, true_scale=true_scale)
    strip = data.draw(st.sampled_from([one for one in strips.strips if one.laid.layouts]))
    layout = data.draw(st.sampled_from(standing(strip.laid, None)))
    middle = (layout.start + layout.end) // 2
    found = under(strips, None, middle / MM * along, strip.top + strip.height / 2, layout.planting)
    assert found is not None
    assert (found.bed, found.planting) == (strip.bed, layout.planting)
    assert abs(found.x - middle) <= MM
