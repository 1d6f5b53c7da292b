"""Every number can show its working: the sums of S1 and S2, and that sums say what is so."""

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.conventions import convention
from gardenplot.drawing.number_words import in_short, name_words, results_whole, sources_line
from gardenplot.drawing.planting_words import order_met_words
from gardenplot.drawing.workings import counted_numbers, trays_line
from gardenplot.layout import Grown, Layout, lay_out_plan
from gardenplot.plan import Bed, Plan
from gardenplot.units import Units
from gardenplot.working import Number, Source, Trust, numbers_in
from tests.drawing.hand_worked import hand_worked, only_bed, plan_from
from tests.layout.ground import Fields
from tests.plans import plans


def grown(plan: Plan) -> list[tuple[Bed, Grown, Layout]]:
    """Each planting of a plan with its bed and its layout."""
    return [(laid.bed, *pair) for laid in lay_out_plan(plan) for pair in zip(laid.grown, laid.layouts, strict=True)]


def numbers(plan: Plan, number: int) -> tuple[Number, ...]:
    """The numbers of a planting."""
    return counted_numbers(*grown(plan)[number])


def sums(plan: Plan, number: int) -> list[tuple[str, str, str]]:
    """The numbers of a planting as name, sum and value."""
    found = []
    for one in numbers(plan, number):
        name, rest = in_short(one, plan.place.units).replace("\u2009", " ").split(":  ", 1)
        sum_, value = rest.rsplit("  (", 1)[0].split("  →  ")
        found.append((name, sum_, value))
    return found


def test_the_workings_of_the_pak_choi_of_s1() -> None:
    assert sums(hand_worked("s1"), 0) == [
        ("stand", "120 ÷ (1 − 10 %)", "134, up"),
        ("rows", "(75 cm − 2 × 7.5 cm) ÷ 20 cm + 1", "4"),
        ("edge", "(75 cm − (4 − 1) × 20 cm) ÷ 2", "7.5 cm"),
        ("plants in a row", "134 ÷ 4", "34, up"),
        ("planted", "4 × 34", "136"),
        ("length of block", "34 × 20 cm", "6.80 m"),
        ("raise", "136 × (1 + 15 %)", "157, up"),
        ("cells", "157 ÷ 90 %", "175, up"),
        ("trays", "175 ÷ 84", "3, up"),
        ("one tray less gives", "(3 − 1) × 84 × 90 %", "151, whole part"),
    ]


def test_the_workings_of_the_beets_of_s2() -> None:
    assert sums(hand_worked("s2"), 1)[:6] == [
        ("stand", "40 × 5 ÷ (1 − 20 %)", "250"),
        ("rows", "(48″ − 2 × 6″) ÷ 12″ + 1", "4"),
        ("edge", "(48″ − (4 − 1) × 12″) ÷ 2", "6″"),
        ("plants in a row", "250 ÷ 4", "63, up"),
        ("planted", "4 × 63", "252"),
        ("length of block", "63 × 3″", "15′ 9″"),
    ]


def test_the_moved_row_of_s4_holds_one_less() -> None:
    found = sums(hand_worked("s4"), 0)
    assert ("in a moved row", "(137 − 2) ÷ 3", "45") in found
    assert ("planted", "2 × 46 + 1 × 45", "137") in found
    assert ("length of block", "the larger of (46 × 40 cm, (45 + ½) × 40 cm)", "18.40 m") in found


def test_seed_sown_direct_shows_its_sum_too() -> None:
    found = {name: (working, value) for name, working, value in sums(hand_worked("s2"), 1)}
    assert "832" in found["seeds"][1]


def test_several_seeds_to_a_cell_show_what_share_of_cells_is_usable() -> None:
    assert ("cells", "120 ÷ (1 − (1 − 80 %)²)", "125") in sums(beds_of({"plants": 100}), 0)
    ((_bed, one, layout),) = grown(beds_of({"plants": 100}))
    assert trays_line(one, layout) == "120 plants, 125 cells, 2 trays of 72, thin out about 80"


@pytest.mark.parametrize(
    ("scenario", "number", "line"),
    [
        ("s1", 0, "157 plants, 175 cells, 3 trays of 84; 2 trays still give about 151"),
        ("s1", 1, "52 plants, 58 cells, 1 tray of 84"),
        ("s2", 1, "832 seeds"),
        ("s3", 1, "23 plants"),
        ("s2", 0, "120 plants, 131 cells, 2 trays of 128; 1 tray still gives about 117"),
        ("s4", 1, "348 plants, 435 cells, 2 trays of 240"),
    ],
)
def test_what_to_raise_is_said_in_a_line(scenario: str, number: int, line: str) -> None:
    assert trays_line(*grown(hand_worked(scenario))[number][1:]) == line


def test_geometry_is_exact_and_trays_are_good() -> None:
    found = numbers(hand_worked("s1"), 0)
    exact = ["stand", "rows", "edge", "a_row", "planted", "block"]
    assert [one.name for one in found if one.trust is Trust.EXACT] == exact
    assert [one.name for one in found if one.trust is Trust.GOOD] == ["raised", "cells", "trays", "still"]


def test_typed_rows_are_not_said_to_come_from_a_sum() -> None:
    assert sums(hand_worked("s3"), 1)[0] == ("rows", "typed", "1")


def test_what_the_packet_does_not_tell_has_no_sum() -> None:
    names = [name for name, _sum, _value in sums(hand_worked("s3"), 1)]
    assert names == ["rows", "edge", "plants in a row", "planted", "length of block"]


def test_plants_that_were_typed_are_shared_out_to_the_rows_and_a_length_is_divided() -> None:
    found = sums(beds_of({"plants": 45, "slack": "1 m"}), 0)
    assert ("plants in a row", "45 ÷ 3", "15") in found
    assert ("planted", "typed", "45") in found
    assert ("length of block", "3.00 m + 1.00 m", "4.00 m") in found
    assert ("plants in a row", "2.00 m ÷ 20 cm", "10") in sums(beds_of({"from": "10 m", "length": "4 m"}), 0)


def test_a_length_up_to_a_step_says_so() -> None:
    """23 plants in 3 rows are 8 in a row, 8 x 20 cm = 1.60 m, up to steps of 50 cm: 4 x 50 cm = 2 m, by hand."""
    assert ("length of block", "4 × 50 cm", "2.00 m") in sums(beds_of({"plants": 23, "round_up_to": "50 cm"}), 0)


def test_a_sown_band_shows_its_band() -> None:
    """2 m x 55 cm at one plant on 20 x 25 cm: 22, by hand."""
    plan = beds_of({"length": "2 m", "pattern": "broadcast"})
    assert sums(plan, 0)[0] == ("width of the band", "75 cm − 2 × 10 cm", "55 cm")
    assert sums(plan, 0)[1][::2] == ("planted", "22")


@settings(max_examples=25)
@given(plans())
def test_every_number_of_a_planting_is_told_with_its_sum(plan: Plan) -> None:
    for one in grown(plan):
        for number in counted_numbers(*one):
            name, rest = in_short(number, plan.place.units).split(":  ", 1)
            sum_, value = rest.split("  →  ")
            assert name == name_words(number.name)
            assert sum_.strip()
            assert value.strip()


@pytest.mark.parametrize(
    ("margin", "words"),
    [
        ({}, "half a spacing at both ends"),
        ({"end_margin": "0 cm"}, "plant on the mark at both ends"),
        ({"end_margin": "12 cm"}, "12\u2009cm at both ends"),
    ],
)
def test_the_convention_is_named(margin: Fields, words: str) -> None:
    layout = only_bed(beds_of({"length": "2 m"} | margin)).layouts[0]
    assert convention(layout.grid, Units.METRIC) == words


def beds_of(planting: Fields) -> Plan:
    """A bed of 12 m with one block."""
    crop: Fields = {"id": "chard", "name": "Chard", "in_row": "20 cm", "row_spacing": "25 cm", "edge": "10 cm",
                    "spare": "20 %", "germination": "80 %", "seeds_per_cell": 2, "tray_cells": 72}  # fmt: skip
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "12 m", "width": "75 cm"}],
        crops=[crop],
        plantings=[{"id": "p1", "bed": "b1", "crop": "chard"} | planting],
    )
    assert only_bed(plan).layouts
    return plan


OWN: Fields = {"in_row": "20 cm", "row_spacing": "60 cm", "edge": "15 cm"}


@pytest.mark.parametrize(
    ("bed", "crop", "planting", "lines"),
    [
        (
            {},
            OWN,
            {"pattern": "twin", "twin_spacing": "20 cm"},
            [
                ("rows", "2 × 2", "4"),
                ("plants in a row", "6.00 m ÷ 20 cm", "30"),
                ("planted", "4 × 30", "120"),
            ],
        ),
        (
            {},
            OWN,
            {"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4},
            [
                ("cells across", "(120 cm − 2 × 7.5 cm) ÷ 30 cm", "3, whole part"),
                ("cells along", "6.00 m ÷ 30 cm", "20"),
                ("plants in a cell", "typed", "4"),
                ("planted", "3 × 20 × 4", "240"),
            ],
        ),
        (
            {},
            OWN,
            {"direction": "across"},
            [
                ("plants in a row", "(120 cm − 2 × 15 cm) ÷ 20 cm + 1", "5, whole part"),
                ("rows", "6.00 m ÷ 60 cm", "10"),
                ("planted", "10 × 5", "50"),
            ],
        ),
        (
            {},
            OWN,
            {"remainder": "spread", "length": "5.9 m", "in_row": "27 cm"},
            [
                ("rows", "(120 cm − 2 × 15 cm) ÷ 60 cm + 1", "2, whole part"),
                ("edge", "(120 cm − (2 − 1) × 60 cm) ÷ 2", "30 cm"),
                ("could be spread to", "5.90 m ÷ 21", "28.1 cm"),
                ("plants in a row", "5.90 m ÷ 28 cm", "21, whole part"),
                ("planted", "2 × 21", "42"),
            ],
        ),
        (
            {"diameter": "3 m"},
            {"in_row": "30 cm", "row_spacing": "60 cm", "edge": "30 cm"},
            {"pattern": "rings"},
            [
                ("rings", "2 + 1", "3"),
                ("row spacing", "seed packet", "60 cm"),
                ("planted", "25 + 12 + 1", "38"),
            ],
        ),
        (
            {"outline": [["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "0.5 m"], ["3 m", "0.5 m"], ["3 m", "1.0 m"],
                         ["0 m", "1.0 m"]]},
            {"in_row": "20 cm", "row_spacing": "30 cm", "edge": "10 cm"},
            {"phase": "best"},
            [
                ("rows", "(100 cm − 2 × 10 cm) ÷ 30 cm + 1", "3, whole part"),
                ("edge", "found by trying all shifts", "10 cm"),
                ("planted", "2 × 30 + 15", "75"),
                ("more by shifting", "75 − 60", "15"),
            ],
        ),
    ],
    ids=["twin", "cells", "across", "spread", "rings", "shifted"],
)  # fmt: skip
def test_each_pattern_shows_its_own_sums(
    bed: Fields, crop: Fields, planting: Fields, lines: list[tuple[str, str, str]]
) -> None:
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed"} | (bed or {"length": "6 m", "width": "1.2 m"})],
        crops=[{"id": "c", "name": "Chard"} | crop],
        plantings=[{"id": "p1", "bed": "b1", "crop": "c"} | planting],
    )
    assert sums(plan, 0)[: len(lines)] == lines


def test_every_sum_names_where_its_formula_comes_from_and_each_source_is_said_once() -> None:
    found = numbers(hand_worked("s1"), 0)
    assert all(one.source for one in found)
    assert sources_line(found) == "Formulas: common practice, no source"
    triangles = numbers(beds_of({"pattern": "triangular"}), 0)
    assert any("√3" in sources_line(one.terms) for one in triangles)


def test_a_crop_in_clumps_tells_the_plants_of_all_of_them() -> None:
    """By hand: 100 places and 20 % spare; 2 seeds at 80 % for a clump of 2: a cell lacks both once in 25."""
    plan = beds_of({"plants": 100})
    clumps = evolve(plan, crops=tuple(evolve(crop, clump=2) for crop in plan.crops))
    ((_bed, one, layout),) = grown(clumps)
    assert trays_line(one, layout) == "120 clumps of 2, 125 cells, 2 trays of 72, 200 plants in the end"


def test_an_order_of_a_crop_in_clumps_is_met_by_clumps() -> None:
    """By hand: 40 bunches of 5 and 20 % loss are 250 plants, 63 clumps of 4; 60 stand, 3 are lacking."""
    crop = {"id": "c", "name": "Beet", "in_row": "25 cm", "row_spacing": "30 cm", "field_loss": "20 %", "clump": 4}
    order = {"id": "o", "crop": "c", "units": 40, "plants_per_unit": 5, "on": "2027-07-03"}
    planting = {"id": "p", "bed": "b", "crop": "c", "from": "0 m", "plants": 60, "order": "o"}
    bed = {"id": "b", "name": "Tunnel", "length": "9 m", "width": "90 cm"}
    plan = plan_from(beds=[bed], crops=[crop], orders=[order], plantings=[planting])
    ((_bed, one, layout),) = grown(plan)
    assert order_met_words(plan, one, layout) == "3 clumps short of 63"


def with_clumps(*clumps: int | None) -> Plan:
    """40 bunches of 5 beetroots from a packet with clumps of 4: a bed of 30 places for each of some plantings."""
    crop = {"id": "c", "name": "Beet", "in_row": "25 cm", "row_spacing": "30 cm", "field_loss": "20 %", "clump": 4}
    order = {"id": "o", "crop": "c", "units": 40, "plants_per_unit": 5, "on": "2027-07-03"}
    planting = {"crop": "c", "from": "0 m", "plants": 30, "order": "o"}
    mine = [planting | {"id": f"p{at}", "bed": f"b{at}"} | ({"clump": one} if one else {})
            for at, one in enumerate(clumps)]  # fmt: skip
    beds = [
        {"id": f"b{at}", "name": f"Bed {at}", "length": "9 m", "width": "90 cm"} for at, _one in enumerate(clumps)
    ]
    return plan_from(beds=beds, crops=[crop], orders=[order], plantings=mine)


@pytest.mark.parametrize(
    ("clumps", "words"),
    [
        ((None,), "33 clumps short of 63"),  # 250 plants: 62.5 clumps of 4
        ((5,), "20 clumps short of 50"),
        ((1,), "220 plants short of 250"),
        ((None, 5), "met, 4 to spare of 60"),  # 120 plants and 150, 4.5 a place: 55.6
        ((None, 2), "24 clumps short of 84"),  # 120 and 60, 3 a place: 83.3
    ],
)
def test_plantings_have_clumps_of_their_own_and_count_for_their_order_by_their_plants(
    clumps: tuple[int | None, ...], words: str
) -> None:
    plan = with_clumps(*clumps)
    (_bed, one, layout) = grown(plan)[0]
    assert order_met_words(plan, one, layout).startswith(words)


def test_a_planting_thinned_otherwise_than_its_packet_says_is_raised_so_and_says_where_that_comes_from() -> None:
    """By hand, as of a crop in clumps: 100 places and 20 % spare, 2 seeds at 80 %, none in a cell once in 25."""
    plan = beds_of({"plants": 100, "clump": 2, "seeds_per_cell": 2})
    ((_bed, one, layout),) = grown(plan)
    assert trays_line(one, layout) == "120 clumps of 2, 125 cells, 2 trays of 72, 200 plants in the end"
    found = {each.name: each for number in numbers(plan, 0) for each in numbers_in(number)}
    assert found["clump"].source is found["seeds_per_cell"].source is Source.OF_PLANTING
    assert all(crop.clump is None for crop in plan.crops)


def test_a_short_result_is_never_broken_from_its_arrow_or_its_unit() -> None:
    edge = "edge:  (75 cm − (4 − 1) × 20 cm) ÷ 2  →  7.5 cm  (exact)"
    assert results_whole(edge).endswith("÷ 2  →\u00a0\u00a07.5\u00a0cm  (exact)")
    assert results_whole(edge).replace("\u00a0", " ") == edge
    for other in ("Counts: half a spacing at both ends.", "", f"what:  a  →  {'very ' * 6}long  (weak)"):
        assert results_whole(other) == other
