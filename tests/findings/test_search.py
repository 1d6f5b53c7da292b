"""Each kind of finding at its place and with its amount, and none on a plan that is sound."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.findings import Finding, Kind, find_all
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.units import CM
from tests.layout.ground import Fields, nm, plan_with, several
from tests.plans import feet_plan, metric_plan, plans

BED: Fields = {"length": "10 m", "width": "75 cm", "head_margin": "50 cm", "foot_margin": "50 cm"}
LEEKS: Fields = {"in_row": "20 cm", "row_spacing": "25 cm", "edge": "10 cm"}
SPRING: Fields = {"in_ground": "2027-04-09", "out": "2027-05-28"}
SUMMER: Fields = {"in_ground": "2027-05-28", "out": "2027-08-20"}


def block(start: str, end: str) -> Fields:
    return {"from": start, "length": f"{(nm(end) - nm(start)) // CM} cm"}


def found(*plantings: Fields, bed: Fields = BED, crop: Fields = LEEKS, **more: list[Fields]) -> list[Finding]:
    """The findings of a bed with those plantings, what is left of it apart."""
    plan = plan_with(bed, crop, *plantings, **more)
    return [finding for finding in find_all(plan) if finding.kind is not Kind.LEFTOVER]


def finding(kind: Kind, start: str, end: str, amount: int, limit: int = 0, other: str | None = None) -> Finding:
    """A finding about the last of the plantings that there are."""
    planting = "p2" if other else "p1"
    return Finding(kind, "b1", planting, other, start=nm(start), end=nm(end), amount=amount, limit=limit)


def test_a_sound_plan_has_no_findings() -> None:
    assert find_all(plan_with(BED, LEEKS, {})) == ()
    assert find_all(Plan()) == ()


@pytest.mark.parametrize("plan", [metric_plan(), feet_plan()], ids=["metric", "feet"])
def test_the_small_plans_hold_nothing_that_cannot_be_done(plan: Plan) -> None:
    assert [one.kind for one in find_all(plan) if one.cannot_be_done] == []


def test_rows_on_drip_lines_are_noted() -> None:
    """Rows at 12.5, 37.5 and 62.5 cm: 2 cm away is beside, 19 mm is on."""
    lines = ["10.5 cm", "39.4 cm"]
    on = finding(Kind.ON_DRIP_LINE, "1 m", "3 m", 1, nm("2 cm"))
    assert found(block("1 m", "3 m"), bed=BED | {"drip_lines": lines}) == [on]
    assert on.is_note
    across = block("1 m", "3 m") | {"direction": "across"}
    assert found(across, bed=BED | {"drip_lines": lines}) == []


def test_blocks_that_share_ground_and_days_overlap_by_what_they_share() -> None:
    expected = finding(Kind.OVERLAP, "3 m", "3.5 m", nm("50 cm"), other="p1")
    assert found(block("1 m", "3.5 m"), block("3 m", "6 m")) == [expected]
    assert expected.cannot_be_done


def test_the_block_nearer_to_the_head_is_the_one_that_is_run_into() -> None:
    (overlap,) = found(block("3 m", "6 m"), block("1 m", "3.5 m"))
    assert (overlap.planting, overlap.other) == ("p1", "p2")


def test_a_block_inside_another_overlaps_with_all_its_length() -> None:
    assert found(block("1 m", "9 m"), block("3 m", "4 m")) == [
        finding(Kind.OVERLAP, "3 m", "4 m", nm("1 m"), other="p1")
    ]


def test_three_blocks_on_the_same_ground_overlap_in_three_pairs() -> None:
    pairs = found(block("1 m", "4 m"), block("2 m", "5 m"), block("3 m", "6 m"))
    assert [(one.other, one.planting) for one in pairs] == [("p1", "p2"), ("p1", "p3"), ("p2", "p3")]


def test_blocks_that_touch_do_not_overlap() -> None:
    assert found(block("1 m", "3 m"), block("3 m", "6 m")) == []


def test_a_crop_may_follow_on_the_same_ground() -> None:
    assert found(block("1 m", "3 m") | SPRING, block("1 m", "3 m") | SUMMER) == []


def test_a_crop_that_goes_in_a_day_too_early_overlaps() -> None:
    early = SUMMER | {"in_ground": "2027-05-27"}
    assert [one.kind for one in found(block("1 m", "3 m") | SPRING, block("1 m", "3 m") | early)] == [Kind.OVERLAP]


def test_a_block_before_the_head_margin_lies_outside_by_what_sticks_out() -> None:
    assert found(block("0.2 m", "3 m")) == [finding(Kind.OUTSIDE, "0.2 m", "0.5 m", nm("30 cm"), nm("50 cm"))]


def test_a_block_past_the_foot_margin_lies_outside_by_what_sticks_out() -> None:
    (outside,) = found(block("9 m", "9.7 m"))
    assert outside == finding(Kind.OUTSIDE, "9.5 m", "9.7 m", nm("20 cm"), nm("9.5 m"))
    assert outside.cannot_be_done


def test_a_block_off_the_bed_lies_outside_from_its_start_and_is_short_by_all_of_it() -> None:
    assert found(block("11 m", "12 m")) == [finding(Kind.OUTSIDE, "11 m", "12 m", nm("2.5 m"), nm("9.5 m"))]


def test_a_block_longer_than_its_bed_lies_outside_at_both_ends() -> None:
    assert [one.start for one in found(block("0 m", "10 m"))] == [nm("0 m"), nm("9.5 m")]


def test_a_block_that_reaches_just_to_both_margins_is_inside() -> None:
    assert found(block("0.5 m", "9.5 m")) == []


def test_a_bed_narrower_than_both_edge_distances_has_no_row() -> None:
    (no_row,) = found(block("1 m", "3 m") | {"edge": "40 cm"})
    assert no_row == finding(Kind.NO_ROW, "1 m", "3 m", nm("75 cm"), nm("80 cm"))
    assert no_row.cannot_be_done


def test_more_rows_than_the_bed_is_wide_are_too_many() -> None:
    (rows,) = found(block("1 m", "3 m") | {"rows": 5})
    assert rows == finding(Kind.ROWS, "1 m", "3 m", amount=5, limit=4)
    assert rows.cannot_be_done


def test_a_row_more_than_the_edge_distance_allows_stands_near_the_edge() -> None:
    (edge,) = found(block("1 m", "3 m") | {"rows": 4})
    assert edge == finding(Kind.EDGE, "1 m", "3 m", amount=0, limit=nm("10 cm"))
    assert not edge.cannot_be_done


def test_plants_closer_than_the_packet_says_are_found() -> None:
    assert found(block("1 m", "3 m") | {"in_row": "15 cm"}) == [
        finding(Kind.CLOSER_IN_ROW, "1 m", "3 m", nm("15 cm"), nm("20 cm"))
    ]
    assert found(block("1 m", "3 m") | {"row_spacing": "20 cm"}) == [
        finding(Kind.CLOSER_ROWS, "1 m", "3 m", nm("20 cm"), nm("25 cm"))
    ]


def test_plants_as_close_as_the_packet_says_or_wider_are_sound() -> None:
    assert found(block("1 m", "3 m") | {"in_row": "20 cm", "row_spacing": "25 cm"}) == []
    assert found(block("1 m", "3 m") | {"in_row": "30 cm", "row_spacing": "30 cm"}) == []


def test_a_single_row_is_close_to_no_other() -> None:
    assert found(block("1 m", "3 m") | {"row_spacing": "20 cm", "rows": 1}) == []


def test_triangular_rows_may_be_closer_where_the_plants_are_not() -> None:
    triangular = block("1 m", "3 m") | {"pattern": "triangular"}
    assert found(triangular | {"in_row": "25 cm"}) == []
    assert [one.kind for one in found(triangular)] == [Kind.CLOSER_ROWS]


def test_a_broadcast_band_has_no_rows_to_complain_of() -> None:
    assert found(block("1 m", "3 m") | {"pattern": "broadcast", "rows": 9}) == []


def test_a_broadcast_band_between_edge_distances_that_meet_has_no_room() -> None:
    band = {"from": "1 m", "plants": 100, "pattern": "broadcast", "edge": "40 cm"}
    assert [one.kind for one in found(band)] == [Kind.NO_ROW]


def test_an_order_that_nothing_is_planted_for_is_found() -> None:
    order = {"id": "o1", "crop": "crop", "units": 48, "on": "2027-06-19"}
    unplanted = Finding(Kind.ORDER_UNPLANTED, order="o1", amount=0, limit=57, pieces=1)
    assert found(crop=LEEKS | {"field_loss": "15 %"}, orders=[order]) == [unplanted]
    assert not unplanted.cannot_be_done


def test_an_order_with_too_few_plants_is_short_by_the_plants_of_all_its_blocks() -> None:
    order = {"id": "o1", "crop": "crop", "units": 48, "on": "2027-06-19"}
    crop = LEEKS | {"field_loss": "15 %"}
    short = found({"plants": 30, "order": "o1"}, {"plants": 26, "order": "o1"}, crop=crop, orders=[order])
    assert short == [Finding(Kind.ORDER_SHORT, order="o1", amount=56, limit=57)]
    assert found({"plants": 30, "order": "o1"}, {"plants": 27, "order": "o1"}, crop=crop, orders=[order]) == []


TWICE_FOR = {"id": "o1", "crop": "crop", "units": 48, "on": "2027-06-19", "times": 2, "every_days": 7}


@pytest.mark.parametrize(
    ("beside", "planted"),
    [
        ({"plants": 20}, 77),  # worked by hand: 48 / 0.85 = 56.5, 57 must stand, 19 ranks of 3
        ({"length": "1 m"}, 72),  # 5 ranks of 3
        ({}, 114),
        ({"plants": 20, "market": 2}, None),
        ({"plants": 20, "actual": {"set_out": "2027-04-01", "standing": 0}}, None),
    ],
)
def test_a_planting_that_takes_all_of_an_order_beside_another_for_it_is_noted(
    beside: Fields, planted: int | None
) -> None:
    """Its block is sized by the order alone, whatever else stands for it, so more is planted than was ordered."""
    crop, bed = LEEKS | {"field_loss": "15 %"}, BED | {"length": "30 m"}
    plantings = {"order": "o1"} | beside, {"order": "o1"}
    noted = [one for one in found(*plantings, bed=bed, crop=crop, orders=[TWICE_FOR]) if one.kind is Kind.ORDER_TWICE]
    assert [(one.planting, one.other, one.amount, one.limit) for one in noted] == (
        [("p2", "p1", planted, 57)] if planted else []
    )
    assert all(one.is_note for one in noted)


def test_several_plantings_of_typed_sizes_may_well_stand_for_more_than_was_ordered() -> None:
    """What is kept in hand on purpose is typed; a block whose size was written down when it was set out stays."""
    crop, order = LEEKS | {"field_loss": "15 %"}, TWICE_FOR | {"times": 1}
    assert found({"plants": 57, "order": "o1"}, {"plants": 57, "order": "o1"}, crop=crop, orders=[order]) == []
    gone = {"order": "o1", "actual": {"set_out": "2027-04-01"}}
    assert Kind.ORDER_TWICE not in {
        one.kind for one in found({"plants": 20, "order": "o1"}, gone, crop=crop, orders=[order])
    }


def test_what_is_left_over_is_only_a_note_about_the_largest_piece() -> None:
    (left,) = find_all(plan_with(BED, LEEKS, block("1 m", "3 m"), block("5 m", "9 m")))
    assert left == Finding(
        Kind.LEFTOVER, "b1", start=nm("3 m"), end=nm("5 m"), amount=nm("3 m"), limit=nm("2 m"), pieces=3
    )
    assert left.is_note
    assert not left.cannot_be_done


def test_what_cannot_be_done_comes_first() -> None:
    kinds = [one.kind for one in find_all(plan_with(BED, LEEKS, block("1 m", "3 m") | {"in_row": "5 cm", "rows": 9}))]
    assert kinds == [Kind.ROWS, Kind.CLOSER_IN_ROW, Kind.LEFTOVER]


spans = st.builds(lambda start, more: (start, start + more), st.integers(50, 900), st.integers(1, 50))
seasons = st.builds(
    lambda day, more: (date(2027, 4, 1) + timedelta(days=day), date(2027, 4, 1) + timedelta(days=day + more)),
    st.integers(0, 40),
    st.integers(1, 40),
)


@several
@given(spans, spans, seasons, seasons)
def test_two_blocks_overlap_if_and_only_if_they_share_ground_and_days(
    one: tuple[int, int], other: tuple[int, int], early: tuple[date, date], late: tuple[date, date]
) -> None:
    first, second = (
        {"from": f"{ground[0]} cm", "length": f"{ground[1] - ground[0]} cm"}
        | {"in_ground": days[0].isoformat(), "out": days[1].isoformat()}
        for ground, days in ((one, early), (other, late))
    )
    ground_shared = set(range(*one)) & set(range(*other))
    days_shared = max(early[0], late[0]) < min(early[1], late[1])
    overlaps = found(first, second)
    assert [overlap.amount for overlap in overlaps] == (
        [len(ground_shared) * CM] if ground_shared and days_shared else []
    )
    swapped = found(second, first)
    assert [(each.start, each.end, each.amount) for each in swapped] == [
        (each.start, each.end, each.amount) for each in overlaps
    ]


@given(plans())
def test_findings_of_any_plan_name_what_is_in_it(plan: Plan) -> None:
    layouts = {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.layouts}
    for one in find_all(plan):
        assert (one.bed is None) == (one.order is not None or one.kind is Kind.ODDS)
        assert one.bed is None or one.bed in {bed.id for bed in plan.beds}
        assert one.planting is None or layouts[one.planting].bed == one.bed
        assert (
            one.planting is None or layouts[one.planting].start <= one.start <= one.end <= layouts[one.planting].end
        )
        assert one.amount >= 0


@given(plans())
def test_a_plan_without_what_cannot_be_done_plants_all_that_is_wanted(plan: Plan) -> None:
    if not any(one.cannot_be_done for one in find_all(plan)):
        for laid in lay_out_plan(plan):
            for layout in laid.layouts:
                assert layout.wanted is None or layout.plants == layout.wanted


@pytest.mark.parametrize("pattern", ["straight", "staggered", "cells", "rings"])
def test_an_obstacle_that_takes_all_of_a_bed_leaves_no_plant_and_says_so(pattern: str) -> None:
    slab = {"name": "slab", "x": "2 m", "y": "50 cm", "length": "5 m", "width": "2 m"}
    bed: Fields = {"length": "4 m", "width": "1 m", "obstacles": [slab]}
    crop: Fields = {"in_row": "20 cm", "row_spacing": "30 cm"}
    assert Kind.NO_PLANT in [one.kind for one in found({"pattern": pattern}, bed=bed, crop=crop)]


def test_own_offsets_beside_the_bed_are_told_from_no_room_for_a_row() -> None:
    bed: Fields = {"length": "4 m", "width": "1 m"}
    crop: Fields = {"in_row": "20 cm", "row_spacing": "30 cm"}
    (one,) = found({"pattern": "offsets", "offsets": ["2 m", "3 m"]}, bed=bed, crop=crop)
    assert (one.kind, one.amount, one.limit) == (Kind.ROWS, 2, 0)
