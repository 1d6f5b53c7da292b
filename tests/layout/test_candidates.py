"""Candidates for a block: really laid out, told against what is planted now, and as the scenarios were worked."""

from fractions import Fraction
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.files import sample
from gardenplot.layout import followers_of, lay_out_bed
from gardenplot.layout.candidate import Candidate, Reading, Reason, comparison
from gardenplot.layout.compare import candidates
from gardenplot.layout.positions import positions
from gardenplot.layout.proposals import best_of, proposals
from gardenplot.layout.reserved import in_the_way
from gardenplot.plan import Direction, Pattern, Plan, Reserved, bed_of, planting_of
from gardenplot.plan.edits import change_planting, suppose_planting
from gardenplot.plan.file import read_plan
from gardenplot.plan.find import only
from gardenplot.plan.valid import faults
from gardenplot.units import CM, INCH, M, parse_length
from tests.drawing.hand_worked import hand_worked
from tests.layout.ground import blocks, nm, plan_with
from tests.plans import plans

S3, S4, S5, S6 = (hand_worked(name) for name in ("s3", "s4", "s5", "s6"))
OUTLINES = (
    {"outline": [["0 m", "0 m"], ["8 m", "0 m"], ["8 m", "1.3 m"], ["5 m", "1.3 m"], ["5 m", "80 cm"],
                 ["0 m", "1 m"]]},
    {"diameter": "3 m"},
    {"length": "6 m", "width": "1.2 m",
     "obstacles": [{"name": "post", "x": "3 m", "y": "60 cm", "diameter": "10 cm"}]},
)  # fmt: skip


def in_beds(bed: dict[str, Any], **planting: Any) -> Plan:
    """A plan of one planting in one bed."""
    return plan_with(bed, {"in_row": "20 cm", "row_spacing": "25 cm"}, {"from": "0 m", "length": "6 m"} | planting)


def any_plan() -> st.SearchStrategy[Plan]:
    """Any valid plan with a planting: of any shape of bed, or of one block, or in an outline."""
    alone = blocks(tuple(Pattern(one) for one in ("straight", "staggered", "triangular"))).map(
        lambda block: Plan(beds=(block.bed,), crops=(block.crop,), plantings=(block.planting,))
    )
    shaped = st.builds(
        lambda bed, pattern, phase: in_beds(bed, pattern=pattern, phase=phase),
        st.sampled_from(OUTLINES),
        st.sampled_from(["straight", "staggered", "triangular", "twin"]),
        st.sampled_from(["centred", "best"]),
    )
    return st.one_of(plans(least_plantings=1), alone, shaped)


def of(found: tuple[Candidate, ...], reason: Reason, **changes: Any) -> Candidate:
    """The first candidate for a reason that changes fields so."""
    return next(one for one in found if one.reason is reason and set(changes.items()) <= set(one.changes))


@settings(max_examples=60)
@given(any_plan())
def test_every_proposal_is_a_valid_plan_in_which_the_plants_stand_as_shown(plan: Plan) -> None:
    planting = plan.plantings[0].id
    for one in proposals(plan, planting):
        assert not list(faults(one.plan))
        after = lay_out_bed(one.plan, bed_of(plan, plan.plantings[0].bed)).layout_of(planting)
        assert np.array_equal(positions(after), positions(one.layout))
        assert after.plants == one.layout.plants
        assert suppose_planting(plan, planting, **dict(one.changes)) == one.plan


@settings(max_examples=60)
@given(any_plan())
def test_the_first_is_as_it_is_and_no_two_stand_in_the_same_places(plan: Plan) -> None:
    found = proposals(plan, plan.plantings[0].id)
    assert found[0].plan is plan
    assert found[0].reason is Reason.AS_IT_IS
    rowed = [one for one in found if one.layout.grid.pattern is not Pattern.BROADCAST]
    stands = [frozenset(map(tuple, positions(one.layout).tolist())) for one in rowed]
    assert len(set(stands)) == len(stands)
    assert all(one.layout.plants for one in found[1:])


@settings(max_examples=60)
@given(any_plan())
def test_the_other_reading_has_the_same_length_or_as_many_plants(plan: Plan) -> None:
    found = proposals(plan, plan.plantings[0].id)
    now = found[0].layout
    for one in found:
        assert one.reading is found[0].reading
        if one.other is None:
            continue
        if one.reading is Reading.PLANTS:
            assert one.other.length == now.length
        else:
            held = one.other.plants >= now.plants
            assert held or one.other.end > one.laid.bed.zone[1] or one.other.start < one.laid.bed.zone[0]


@settings(max_examples=40)
@given(any_plan())
def test_the_best_keeps_all_and_leaves_most(plan: Plan) -> None:
    found = proposals(plan, plan.plantings[0].id)
    best = best_of(found)
    keeping = [one for one in found if one.keeps_all and one.over is not None]
    assert (best is None) == (not keeping)
    if best is not None:
        assert best.fits
        assert (best.over or 0) >= 0
        assert best.piece == max(one.piece for one in keeping)


@settings(max_examples=40)
@given(plans())
def test_a_bed_by_itself_makes_a_plan_whatever_else_there_is(plan: Plan) -> None:
    """Feeds, jugs, wishes and all else that names other beds is no reason to find nothing to compare."""
    for bed in plan.beds:
        assert not list(faults(only(plan, bed.id)))


def test_patterns_are_compared_beside_feeds_of_other_beds() -> None:
    """13.75 m of lettuce every 25 cm: 3 rows of 55, of which the middle one moved by half holds 54."""
    plan = read_plan(sample("kestrel-howe.gardenplot")).plan
    found = candidates(plan, "lettuce-1")
    assert [one.layout.grid.pattern for one in found] == [one.pattern for one in found]
    assert [(one.layout.plants, one.more) for one in found[:2]] == [(165, 0), (164, -1)]


def test_s4_staggered_rows_need_what_the_order_needs_and_no_more() -> None:
    """137 cabbages every 40 cm are 46, 45 and 46 in 18.40 m (worked by hand); straight rows there hold 138."""
    straight = suppose_planting(S4, "p1", pattern=Pattern.STRAIGHT)
    for plan in (straight, S4):
        found = candidates(plan, "p1")
        assert [one.wanted for one in found] == [137, 137, 137]
        assert [one.length for one in found] == [nm("18.4 m")] * 3
    assert [one.layout.plants for one in candidates(straight, "p1")] == [138, 137, 137]


def test_s3_the_three_answers_and_rows_that_avoid_the_centre() -> None:
    found = proposals(S3, "p1")
    empty, row = (
        of(found, Reason.ANSWER, reserved=Reserved.PLACES_EMPTY),
        of(found, Reason.ANSWER, reserved=Reserved.ROW_EMPTY),
    )
    assert [(one.layout.plants, one.in_the_way) for one in (found[0], empty, row)] == [(207, 23), (184, 0), (138, 0)]
    assert [one.over for one in (found[0], empty, row)] == [207 - 174, 184 - 174, 138 - 174]
    assert (empty.other, row.other) == (None, None)
    staggered = of(found, Reason.PATTERN, pattern=Pattern.STAGGERED)
    assert staggered.other is not None
    assert staggered.other.length == nm("46 ft 4 in")
    assert candidates(S3, "p1")[1].length == nm("46 ft 4 in")
    beside = of(found, Reason.AVOIDS, pattern=Pattern.OFFSETS)
    assert (beside.layout.plants, beside.in_the_way, beside.closer_rows) == (138, 0, 0)
    assert [row.offset for row in beside.layout.rows] == [7 * INCH, 23 * INCH]
    assert best_of(found) is empty


def test_s4_triangular_rows_gain_nothing() -> None:
    found = proposals(S4, "p1")
    triangular = of(found, Reason.PATTERN, pattern=Pattern.TRIANGULAR)
    assert (triangular.layout.grid.rows, triangular.layout.plants) == (3, 137)
    assert triangular.layout.length == found[0].layout.length == nm("18.4 m")
    assert (found[0].piece, triangular.piece) == (60 * CM, 60 * CM)


def test_s4_a_full_bed_holds_141_in_either_pattern() -> None:
    full = change_planting(S4, "p1", length=parse_length("19 m"))
    found = proposals(full, "p1")
    assert found[0].layout.plants == 141
    assert of(found, Reason.PATTERN, pattern=Pattern.STRAIGHT).layout.plants == 141
    assert of(found, Reason.PATTERN, pattern=Pattern.TRIANGULAR).layout.plants == 141


def test_s5_choice_1_against_choice_4() -> None:
    rest = change_planting(S5, "p1", start=parse_length("18 ft 9 in"), length=parse_length("20 ft 3 in"))
    found = proposals(rest, "p1")
    assert (found[0].layout.grid.rows, found[0].layout.plants) == (2, 32)
    three = of(found, Reason.MORE_ROWS, row_spacing=(parse_length("1'"),))
    assert [row.offset for row in three.layout.rows] == [6 * INCH, 18 * INCH, 30 * INCH]
    assert (three.layout.plants, three.closer_in_row, three.closer_rows) == (48, 0, 3 * INCH)
    assert (three.over, found[0].over) == (48 - 57, 32 - 57)
    assert not three.keeps_all


def test_s5_choice_5_still_does_not_fit() -> None:
    three = of(proposals(S5, "p1"), Reason.MORE_ROWS, row_spacing=(parse_length("1'"),))
    assert (three.layout.plants, three.layout.length) == (57, nm("23 ft 9 in"))
    assert not three.fits
    assert best_of(proposals(S5, "p1")) is None


def test_s6_both_answers_for_the_edge() -> None:
    wide = change_planting(S6, "p1", edge=parse_length("15 cm"))
    assert (wide.plantings[0].edge, comparison(wide, "p1").now.grid.rows) == (parse_length("15 cm"), 2)
    found = proposals(S6, "p1")
    assert (found[0].layout.grid.rows, found[0].layout.plants, found[0].layout.length) == (3, 168, 14 * M)
    assert (found[0].piece, found[0].per_metre) == (94 * CM, Fraction(12))
    narrow = found[0].layout.grid
    assert narrow.edge == nm("8.1 cm")
    half = comparison(S6, "p1").candidate((("edge", parse_length("15 cm")),), Reason.EDGE)
    assert (half.layout.grid.rows, half.layout.length, half.fits) == (2, 21 * M, False)


@settings(max_examples=60)
@given(
    width=st.integers(30, 120), apart=st.integers(5, 40), clear=st.integers(0, 40), after=st.integers(1, 4),
    edge=st.integers(0, 20),
)  # fmt: skip
def test_rows_that_avoid_the_places_kept_have_nothing_in_the_way_and_keep_their_distances(
    width: int, apart: int, clear: int, after: int, edge: int
) -> None:
    plan = plan_with(
        {"length": "6 m", "width": f"{width} cm"},
        {"in_row": "20 cm", "row_spacing": f"{apart} cm", "edge": f"{edge} cm"},
        {"from": "0 m", "length": "6 m", "in_ground": "2027-03-01", "out": "2027-06-01"},
        {"from": "0 m", "length": "6 m", "rows": after, "row_spacing": "30 cm", "edge": "0 cm", "in_row": "50 cm",
         "in_ground": "2027-05-10", "keep_clear": f"{clear} cm"},
    )  # fmt: skip
    found = proposals(plan, "p1")
    followers = followers_of(found[0].laid, "p1")
    for one in (each for each in found if each.reason is Reason.AVOIDS):
        assert in_the_way(one.layout, followers) == 0
        offsets = [row.offset for row in one.layout.rows]
        assert all(later - earlier >= apart * CM for earlier, later in pairwise(offsets))
        assert all(edge * CM <= at <= (width - edge) * CM for at in offsets)
        assert one.near_edge == 0


def test_what_cannot_be_marked_is_told_with_the_nearest_and_proposed() -> None:
    place: dict[str, Any] = {"markable_rows": (parse_length("20 cm"), parse_length("30 cm"))}
    bare = in_beds({"length": "6 m", "width": "1.2 m"})
    plan = Plan(**{name: getattr(bare, name) for name in ("beds", "crops", "plantings")} | {"place": _marking(place)})
    found = proposals(plan, "p1")
    marked = [one for one in found if one.reason is Reason.MARKABLE]
    rows = found[0].marking.rows
    assert rows is not None
    assert (rows.spacing, rows.nearest) == (25 * CM, 30 * CM)
    assert [one.layout.grid.between for one in marked] == [30 * CM, 20 * CM]
    assert [one.marking.rows for one in marked] == [None, None]
    assert [one.closer_rows for one in marked] == [0, 5 * CM]


def _marking(fields: dict[str, Any]) -> Any:
    return type(Plan().place)(**fields)


def test_an_order_is_met_by_all_its_plantings_together() -> None:
    split = change_planting(S3, "p1", length=parse_length("23 ft"))
    two = Plan(**{
        name: getattr(split, name) for name in ("place", "beds", "crops", "orders")
    }, plantings=(*split.plantings, _moved(split)))  # fmt: skip
    found = proposals(two, "p1")
    assert found[0].layout.plants == 102
    assert found[0].over == 102 + 102 - 174


def _moved(plan: Plan) -> Any:
    one = plan.plantings[0]
    return type(one)(
        id="p3",
        bed=one.bed,
        crop=one.crop,
        start=parse_length("24 ft"),
        length=one.length,
        order=one.order,
        out=one.out,
    )


def test_rows_across_the_bed_are_measured_from_rank_to_rank() -> None:
    plan = in_beds({"length": "6 m", "width": "1.2 m"}, pattern="staggered", direction="across")
    assert planting_of(plan, "p1").direction is Direction.ACROSS
    assert comparison(plan, "p1").candidate((), Reason.AS_IT_IS).closer_rows == 0


POST = {"name": "post", "x": "3 m", "y": "60 cm", "diameter": "10 cm"}


@pytest.mark.parametrize("obstacles", [[], [POST]])
def test_all_for_2000_plants_are_proposed_at_once(obstacles: list[dict[str, str]]) -> None:
    bed = {"length": "50 m", "width": "1.2 m", "obstacles": obstacles}
    found = proposals(plan_with(bed, {"in_row": "10 cm", "row_spacing": "25 cm"}, {"from": "0 m"}), "p1")
    assert len(found) > 6
    assert found[0].layout.plants >= 1999
