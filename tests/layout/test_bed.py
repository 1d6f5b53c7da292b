"""Whole beds: every plant inside and apart enough, counts that agree, and where blocks begin and end."""

from fractions import Fraction
from math import floor

import numpy as np
import pytest
import shapely
from attrs import evolve
from hypothesis import given

from gardenplot.layout import Layout, Row, Run, lay_out_bed, lay_out_plan
from gardenplot.layout.positions import Places, positions
from gardenplot.plan import Pattern, Plan
from gardenplot.plan.file import plan_of_text, text_of
from tests.layout.ground import Block, Fields, blocks, laid_out, nm, plan_with, several
from tests.plans import plans

TUNNEL: Fields = {"length": "12 m", "width": "75 cm", "head_margin": "30 cm", "foot_margin": "30 cm", "gap": "20 cm"}
PAK_CHOI: Fields = {"in_row": "20 cm", "row_spacing": "20 cm", "edge": "7.5 cm"}


def block_of(layout: Layout) -> tuple[int, int, int]:
    return layout.start, layout.end, layout.plants


def apart(places: Places) -> tuple[Places, Places]:
    """How far each pair of plants stands apart along and across the bed; nothing comes twice."""
    first, second = np.triu_indices(len(places), k=1)
    along, across = np.abs(places[first] - places[second]).T
    return along, across


@several
@given(blocks())
def test_every_plant_is_covered_by_its_zone(block: Block) -> None:
    grid = block.layout.grid
    first, last = block.bed.zone
    start = max(first, block.layout.start)
    end = min(last, block.layout.end)
    half = grid.in_row // 2
    zone = shapely.box(start + half, grid.edge_least, end - half, grid.width - grid.edge_least)
    plants = shapely.points(positions(block.layout).astype(float))
    assert shapely.covers(zone, plants).all()


@several
@given(blocks(patterns=(Pattern.STRAIGHT,)))
def test_straight_plants_keep_their_spacing_in_the_row_and_between_rows(block: Block) -> None:
    along, across = apart(positions(block.layout))
    same_row = across == 0
    assert (along[same_row] >= block.crop.in_row.nm).all()
    assert (across[~same_row] >= block.crop.row_spacing[0].nm).all()


@several
@given(blocks(patterns=(Pattern.STAGGERED,)))
def test_staggered_plants_stand_half_a_spacing_off_their_neighbours_in_the_next_row(block: Block) -> None:
    along, across = apart(positions(block.layout))
    in_row, between = block.crop.in_row.nm, block.layout.grid.between
    assert (along[across == 0] >= in_row).all()
    assert (along[across == between] >= in_row // 2).all()
    assert set(np.unique(across)) <= {between * rows for rows in range(block.layout.grid.rows)}


@several
@given(blocks(patterns=(Pattern.TRIANGULAR,)))
def test_triangular_plants_are_never_nearer_than_their_spacing(block: Block) -> None:
    along, across = apart(positions(block.layout))
    assert (along**2 + across**2 >= block.crop.in_row.nm**2).all()


@several
@given(blocks())
def test_rows_and_places_add_up_to_the_plants(block: Block) -> None:
    layout = block.layout
    assert sum(layout.per_row) == layout.plants == len(positions(layout))


@several
@given(blocks(patterns=(Pattern.STRAIGHT,)))
def test_straight_rows_fill_a_rectangle_by_the_closed_formula(block: Block) -> None:
    filled = evolve(block, planting=evolve(block.planting, start=None, plants=None, length=None))
    first, last = filled.bed.zone
    grid = filled.layout.grid
    across = Fraction(grid.width - 2 * grid.edge_least, grid.between_least)
    ranks = floor(Fraction(last - first, grid.in_row))
    assert filled.layout.plants == ranks * max(0, floor(across) + 1)


@given(plans())
def test_every_planting_of_any_plan_stands_in_its_block_inside_the_margins(plan: Plan) -> None:
    for laid in lay_out_plan(plan):
        assert [layout.planting for layout in laid.layouts] == [one.planting.id for one in laid.grown]
        for layout in laid.layouts:
            first, last = max(laid.bed.zone[0], layout.start), min(laid.bed.zone[1], layout.end)
            along, across = positions(layout).T
            assert ((along >= first) & (along <= last) & (across >= 0) & (across <= laid.bed.width.nm)).all()
            assert len(along) == (0 if layout.grid.pattern is Pattern.BROADCAST else layout.plants)


@several
@given(blocks())
def test_what_is_wanted_and_fits_is_planted_in_full(block: Block) -> None:
    layout, (first, last) = block.layout, block.bed.zone
    if layout.wanted is not None and layout.grid.rows and first <= layout.start and layout.end <= last:
        assert layout.plants == layout.wanted


@several
@given(blocks())
def test_first_and_last_plant_are_the_outermost_places(block: Block) -> None:
    layout = block.layout
    along: list[int] = positions(layout)[:, 0].tolist()
    assert layout.first_plant == min(along, default=None)
    assert layout.last_plant == max(along, default=None)


def test_places_are_listed_row_by_row_and_cannot_be_written_to() -> None:
    places = positions(laid_out({"length": "60 cm", "width": "40 cm"}, PAK_CHOI, {}).layouts[0])
    expected = [[nm(x), nm(y)] for y in ("10 cm", "30 cm") for x in ("10 cm", "30 cm", "50 cm")]
    assert places.tolist() == expected
    with pytest.raises(ValueError, match="read-only"):
        places[0, 0] = 0


def test_the_same_plan_read_again_gives_the_very_same_layouts() -> None:
    plan = plan_with(TUNNEL, PAK_CHOI, {"from": "30 cm", "plants": 136})
    again = plan_of_text(text_of(plan)).plan
    assert again is not plan
    assert lay_out_bed(again, again.beds[0]) is lay_out_bed(plan, plan.beds[0])
    assert positions(lay_out_plan(again)[0].layouts[0]) is positions(lay_out_plan(plan)[0].layouts[0])


def test_a_change_in_one_bed_leaves_the_other_beds_layouts_the_very_same() -> None:
    plan = plan_with(TUNNEL, PAK_CHOI, {"from": "30 cm"}, {"from": "30 cm", "bed": "b2"}, beds=[
        {"id": name, "name": "Bed"} | TUNNEL for name in ("b1", "b2")
    ])  # fmt: skip
    moved = evolve(plan, plantings=(plan.plantings[0], evolve(plan.plantings[1], rows=2)))
    before, after = lay_out_plan(plan), lay_out_plan(moved)
    assert after[0] is before[0]
    assert after[1] is not before[1]


def test_a_layout_is_found_by_its_planting() -> None:
    laid = laid_out(TUNNEL, PAK_CHOI, {"plants": 4}, {"plants": 8})
    assert laid.layout_of("p2").plants == 8
    with pytest.raises(KeyError):
        laid.layout_of("p3")


def test_210_heads_in_3_rows_at_8_inches_with_a_foot_of_slack_take_48_feet() -> None:
    """Common practice, no source."""
    bed = {"length": "100 ft", "width": "30 in", "edge": "5 in"}
    heads = {"in_row": "8 in", "row_spacing": "10 in"}
    plain = laid_out(bed, heads, {"plants": 210}).layouts[0]
    assert (plain.per_row, plain.length) == ((70, 70, 70), nm("46' 8\""))
    slack = laid_out(bed, heads, {"plants": 210, "slack": "12 in", "round_up_to": "1 ft"}).layouts[0]
    assert (slack.plants, slack.length) == (210, nm("48 ft"))


def test_an_order_sizes_its_block_and_the_last_rank_is_filled() -> None:
    orders = [{"id": "o1", "crop": "crop", "units": 120, "on": "2025-05-17"}]
    laid = laid_out(TUNNEL, PAK_CHOI | {"field_loss": "10 %"}, {"from": "30 cm", "order": "o1"}, orders=orders)
    assert block_of(laid.layouts[0]) == (nm("30 cm"), nm("7.1 m"), 136)


def test_a_number_of_plants_is_kept_and_the_last_rank_stays_part_filled() -> None:
    fennel = {"in_row": "25 cm", "row_spacing": "30 cm", "edge": "7.5 cm"}
    layout = laid_out({"length": "50 ft", "width": "30 in"}, fennel, {"plants": 152}).layouts[0]
    assert (layout.per_row, layout.length) == ((51, 51, 50), nm("12.75 m"))


def test_a_planting_without_a_place_follows_the_others_at_the_beds_gap() -> None:
    laid = laid_out(TUNNEL, PAK_CHOI, {"plants": 40}, {"plants": 40}, {"length": "1 m"})
    assert [(one.start, one.end) for one in laid.layouts] == [
        (nm("0.3 m"), nm("2.3 m")), (nm("2.5 m"), nm("4.5 m")), (nm("4.7 m"), nm("5.7 m")),
    ]  # fmt: skip


def test_a_planting_without_a_place_does_not_wait_for_one_that_has_left_the_ground() -> None:
    spring = {"plants": 40, "in_ground": "2027-04-09", "out": "2027-05-28"}
    summer = {"plants": 40, "in_ground": "2027-05-28"}
    assert [one.start for one in laid_out(TUNNEL, PAK_CHOI, spring, summer).layouts] == [nm("0.3 m")] * 2


def test_a_planting_without_a_size_fills_the_ground_behind_the_others() -> None:
    """Coriander behind pak choi and kohlrabi: 0.45 m hold three in each of four rows."""
    laid = laid_out(
        TUNNEL, PAK_CHOI, {"from": "0.3 m", "length": "6.8 m"}, {"from": "7.3 m", "length": "3.75 m"},
        {"in_row": "15 cm"},
    )  # fmt: skip
    assert block_of(laid.layouts[2]) == (nm("11.25 m"), nm("11.7 m"), 12)


@pytest.mark.parametrize(
    ("closer", "rows", "plants"), [({}, 2, 32), ({"row_spacing": "12 in", "edge": "6 in"}, 3, 48)]
)
def test_cabbage_takes_what_a_whole_crop_of_coriander_leaves(closer: Fields, rows: int, plants: int) -> None:
    bed = {"length": "40 ft", "width": "36 in", "head_margin": "1 ft", "foot_margin": "1 ft", "gap": "12 in"}
    cabbage = {"in_row": "15 in", "row_spacing": "15 in", "edge": "7.5 in"}
    layout = laid_out(bed, cabbage, {"from": "1 ft", "length": "16' 9\""}, closer).layouts[1]
    assert (len(layout.rows), layout.plants, layout.length) == (rows, plants, nm("20' 3\""))
    assert (layout.first_plant, layout.last_plant) == (nm("19' 4 1/2\""), nm("38' 1 1/2\""))


def test_a_planting_without_a_size_fills_its_gap_between_two_others() -> None:
    laid = laid_out(
        TUNNEL, PAK_CHOI, {"from": "1 m", "length": "1 m"}, {"from": "4 m", "length": "1 m"}, {"from": "2.5 m"}
    )
    assert block_of(laid.layouts[2]) == (nm("2.5 m"), nm("3.8 m"), 24)


def test_a_planting_without_size_and_place_fills_the_first_gap() -> None:
    laid = laid_out(TUNNEL, PAK_CHOI, {"from": "0.3 m", "length": "1 m"}, {"from": "4 m", "length": "1 m"}, {})
    assert block_of(laid.layouts[2]) == (nm("1.5 m"), nm("3.8 m"), 44)


def test_two_plantings_without_a_size_do_not_share_ground() -> None:
    first, second = laid_out(TUNNEL, PAK_CHOI, {}, {}).layouts
    assert block_of(first) == (nm("0.3 m"), nm("11.7 m"), 4 * 57)
    assert second.plants == 0


def test_a_gap_is_filled_only_by_what_shares_its_days() -> None:
    spring = {"from": "0.3 m", "length": "5 m", "in_ground": "2027-04-09", "out": "2027-05-28"}
    assert laid_out(TUNNEL, PAK_CHOI, spring, {"in_ground": "2027-05-28"}).layouts[1].length == nm("11.4 m")
    assert laid_out(TUNNEL, PAK_CHOI, spring, {"in_ground": "2027-05-27"}).layouts[1].length == nm("6.2 m")


def test_a_broadcast_band_holds_area_times_rate() -> None:
    spinach = {"in_row": "3 cm", "row_spacing": "20 cm", "plants_per_area": "400 / m2"}
    band = laid_out({"length": "10 m", "width": "75 cm"}, spinach, {"length": "2.5 m", "pattern": "broadcast"})
    assert (band.layouts[0].plants, band.layouts[0].rows) == (750, ())
    inside = laid_out(
        {"length": "10 m", "width": "75 cm"}, spinach, {"length": "2.5 m", "pattern": "broadcast", "edge": "5 cm"}
    )
    assert inside.layouts[0].plants == 650


def test_a_broadcast_band_is_as_long_as_its_plants_need() -> None:
    spinach = {"in_row": "3 cm", "row_spacing": "20 cm", "plants_per_area": "400 / m2"}
    band = laid_out({"length": "10 m", "width": "75 cm"}, spinach, {"plants": 750, "pattern": "broadcast"}).layouts[0]
    assert (band.length, band.plants) == (nm("2.5 m"), 750)


def test_a_broadcast_band_without_a_rate_gives_each_plant_its_spacings() -> None:
    cress = {"in_row": "10 cm", "row_spacing": "20 cm"}
    band = laid_out({"length": "10 m", "width": "1 m"}, cress, {"length": "2 m", "pattern": "broadcast"})
    assert band.layouts[0].plants == 100


def test_a_broadcast_band_whose_edge_distances_meet_takes_no_length() -> None:
    cress = {"in_row": "10 cm", "row_spacing": "20 cm", "edge": "16 in"}
    band = laid_out({"length": "10 m", "width": "30 1/64 in"}, cress, {"plants": 100, "pattern": "broadcast"})
    assert (band.layouts[0].plants, band.layouts[0].length) == (0, 0)


@pytest.mark.parametrize(("pattern", "plants"), [("straight", 141), ("staggered", 141), ("triangular", 141)])
def test_triangular_gains_nothing_on_the_cabbage_bed(pattern: str, plants: int) -> None:
    bed = {"length": "20 m", "width": "1.2 m", "head_margin": "50 cm", "foot_margin": "50 cm"}
    cabbage = {"in_row": "40 cm", "row_spacing": "40 cm", "edge": "20 cm"}
    layout = laid_out(bed, cabbage, {"pattern": pattern}).layouts[0]
    assert (layout.plants, len(layout.rows)) == (plants, 3)


def test_staggered_cabbages_stand_where_the_tape_says() -> None:
    bed = {"length": "20 m", "width": "1.2 m"}
    cabbage = {"in_row": "40 cm", "row_spacing": "40 cm", "edge": "20 cm"}
    planting = {"from": "50 cm", "plants": 137, "pattern": "staggered"}
    outer, shifted = Run(nm("0.7 m"), nm("40 cm"), 46), Run(nm("0.9 m"), nm("40 cm"), 45)
    assert (outer.last, shifted.last) == (nm("18.7 m"), nm("18.5 m"))
    assert laid_out(bed, cabbage, planting).layouts[0].rows == (
        Row(nm("20 cm"), (outer,)), Row(nm("60 cm"), (shifted,)), Row(nm("1 m"), (outer,)),
    )  # fmt: skip


def test_plants_stand_only_where_the_block_lies_inside_the_margins() -> None:
    ahead = laid_out(TUNNEL, PAK_CHOI, {"from": "0 m", "length": "1.3 m"}).layouts[0]
    assert (ahead.per_row, ahead.first_plant, ahead.last_plant) == ((5,) * 4, nm("40 cm"), nm("1.2 m"))
    past = laid_out(TUNNEL, PAK_CHOI, {"from": "11.1 m", "plants": 40}).layouts[0]
    assert (past.end, past.per_row, past.last_plant) == (nm("13.1 m"), (3,) * 4, nm("11.6 m"))
