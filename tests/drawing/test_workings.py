"""Every number can show its working: the sums of S1 and S2, and that sums say what is so."""

from math import ceil, prod

import pytest
from hypothesis import given, settings

from gardenplot.drawing.row_workings import convention
from gardenplot.drawing.workings import sources_line, trays_line, workings
from gardenplot.layout import Grown, Layout, lay_out_plan
from gardenplot.plan import Pattern, Plan, bed_of
from gardenplot.units import Units
from gardenplot.units.figures import offset, span
from gardenplot.working import Trust, Working
from tests.drawing.hand_worked import hand_worked, only_bed, plan_from
from tests.layout.ground import Fields
from tests.plans import plans


def grown(plan: Plan) -> list[tuple[Grown, Layout]]:
    """Each planting of a plan with its layout."""
    return [pair for laid in lay_out_plan(plan) for pair in zip(laid.grown, laid.layouts, strict=True)]


def by_name(plan: Plan, one: Grown, layout: Layout) -> dict[str, Working]:
    return {working.name: working for working in workings(plan, one, layout)}


def sums(plan: Plan, number: int) -> list[tuple[str, str, str]]:
    """The workings of a planting as name, sum and value."""
    found = workings(plan, *grown(plan)[number])
    return [tuple(words.replace("\u2009", " ") for words in (one.name, one.sum, one.value)) for one in found]  # type: ignore[misc]  # always three


def test_the_workings_of_the_pak_choi_of_s1() -> None:
    assert sums(hand_worked("s1"), 0) == [
        ("stand", "120 ÷ (1 − 10 %)", "134, up"),
        ("rows", "(75 − 2 × 7.5) ÷ 20 + 1", "4, whole part"),
        ("edge", "(75 − 3 × 20) ÷ 2", "7.5 cm"),
        ("a row", "6.80 m ÷ 20 cm", "34, whole part"),
        ("plants", "34 + 34 + 34 + 34", "136"),
        ("raise", "136 × (1 + 15 %)", "157, up"),
        ("cells", "157 ÷ 90 %", "175, up"),
        ("trays", "175 ÷ 84", "3, up"),
    ]


def test_the_workings_of_the_beets_of_s2() -> None:
    assert sums(hand_worked("s2"), 1)[:5] == [
        ("stand", "40 × 5 ÷ (1 − 20 %)", "250, up"),
        ("rows", "(48″ − 2 × 6″) ÷ 12″ + 1", "4, whole part"),
        ("edge", "(48″ − 3 × 12″) ÷ 2", "6″"),
        ("a row", "15′ 9″ ÷ 3″", "63, whole part"),
        ("plants", "63 + 63 + 63 + 63", "252"),
    ]


def test_the_moved_row_of_s4_holds_one_less() -> None:
    assert ("moved row", "18.40 m ÷ 40 cm − ½", "45, whole part") in sums(hand_worked("s4"), 0)


def test_seed_sown_direct_shows_its_sum_too() -> None:
    found = {name: (working, value) for name, working, value in sums(hand_worked("s2"), 1)}
    assert "832" in found["seeds"][1]


def test_several_seeds_to_a_cell_show_what_share_of_cells_is_usable() -> None:
    assert ("cells", "120 ÷ (1 − (1 − 80 %)^2)", "125, up") in sums(beds_of({"plants": 100}), 0)
    (pair,) = grown(beds_of({"plants": 100}))
    assert trays_line(*pair) == "120 plants, 125 cells, 2 trays of 72"


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
    assert trays_line(*grown(hand_worked(scenario))[number]) == line


def test_geometry_is_exact_and_trays_are_good() -> None:
    found = workings(hand_worked("s1"), *grown(hand_worked("s1"))[0])
    assert [one.name for one in found if one.trust is Trust.EXACT] == ["stand", "rows", "edge", "a row", "plants"]
    assert [one.name for one in found if one.trust is Trust.GOOD] == ["raise", "cells", "trays"]


def test_typed_rows_are_not_said_to_come_from_a_sum() -> None:
    assert sums(hand_worked("s3"), 1)[0] == ("rows", "typed", "1")


def test_what_the_packet_does_not_tell_has_no_sum() -> None:
    assert [name for name, _sum, _value in sums(hand_worked("s3"), 1)] == ["rows", "edge", "a row", "plants"]


def test_plants_that_were_asked_for_are_shared_out_to_the_rows() -> None:
    assert ("a row", "45 ÷ 3", "15, up") in sums(beds_of({"plants": 45, "slack": "1 m"}), 0)
    assert ("a row", "2.00 m ÷ 20 cm", "10, whole part") in sums(beds_of({"from": "10 m", "length": "4 m"}), 0)


def test_a_sown_band_shows_its_band() -> None:
    plan = beds_of({"length": "2 m", "pattern": "broadcast"})
    assert [name for name, _sum, _value in sums(plan, 0)[:2]] == ["band", "plants"]
    assert sums(plan, 0)[0] == ("band", "75 cm − 2 × 10 cm", "55 cm")


@pytest.mark.parametrize(
    "planting",
    [
        {"plants": 45},
        {"plants": 45, "slack": "1 m"},
        {"plants": 45, "round_up_to": "1 m"},
        {"plants": 44},
        {"from": "10 m", "length": "4 m"},
        {"from": "10 m", "plants": 60},
        {"length": "2.9 m"},
        {"plants": 45, "pattern": "staggered", "slack": "1 m"},
        {"length": "2.9 m", "pattern": "staggered"},
    ],
    ids=str,
)
def test_what_a_row_holds_is_what_its_sum_gives(planting: Fields) -> None:
    assert_true_rows(beds_of(planting))


@settings(max_examples=25)
@given(plans())
def test_what_a_row_holds_is_what_its_sum_gives_in_any_plan(plan: Plan) -> None:
    assert_true_rows(plan)


@settings(max_examples=25)
@given(plans())
def test_rows_add_up_and_every_working_is_filled_in(plan: Plan) -> None:
    for one, layout in grown(plan):
        found = by_name(plan, one, layout)
        assert all(working.sum and working.value for working in found.values())
        if "plants" in found and layout.grid.pattern is not Pattern.BROADCAST:
            terms = found["plants"].sum.split(" + ")
            assert sum(prod(int(factor) for factor in term.split("×")) for term in terms) == layout.plants


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


def assert_true_rows(plan: Plan) -> None:
    """Fail where ground divided by a spacing, or plants shared out to rows, are said to give another number."""
    units = plan.place.units
    for one, layout in grown(plan):
        grid, found = layout.grid, by_name(plan, one, layout)
        first, last = bed_of(plan, layout.bed).zone
        inside = max(0, min(layout.end, last) - max(layout.start, first))
        for name, half, less in (("a row", 0, ""), ("moved row", 1, " − ½")):
            true = {f"{layout.plants} ÷ {grid.rows}": ceil(layout.plants / max(1, grid.rows))}
            for length in (layout.length, inside):
                holds = max(0, 2 * length - half * grid.in_row) // (2 * grid.in_row)
                true[f"{span(length, units)} ÷ {offset(grid.in_row, units)}{less}"] = holds
            if name in found and found[name].sum in true:
                assert int(found[name].value.split(",")[0]) == true[found[name].sum]


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
                ("pairs", "(120 − 2 × 15 − 20) ÷ 60 + 1", "2, whole part"),
                ("a row", "6.00 m ÷ 20 cm", "30, whole part"),
                ("plants", "30 + 30 + 30 + 30", "120"),
            ],
        ),
        (
            {},
            OWN,
            {"pattern": "cells", "cell": "30 cm", "plants_per_cell": 4},
            [
                ("cells across", "(120 − 2 × 7.5) ÷ 30", "3, whole part"),
                ("cells along", "6.00 m ÷ 30 cm", "20, whole part"),
                ("cells", "4 plants in each", "60"),
                ("plants", "60 × 4", "240"),
            ],
        ),
        (
            {},
            OWN,
            {"direction": "across"},
            [
                ("a row", "(120 − 2 × 15) ÷ 20 + 1", "5, whole part"),
                ("rows", "6.00 m ÷ 60 cm", "10, whole part"),
                ("plants", "10 × 5", "50"),
            ],
        ),
        (
            {},
            OWN,
            {"remainder": "spread", "length": "5.9 m", "in_row": "27 cm"},
            [
                ("rows", "(120 − 2 × 15) ÷ 60 + 1", "2, whole part"),
                ("edge", "(120 − 1 × 60) ÷ 2", "30 cm"),
                ("spread", "5.90 m ÷ 21, of what can be marked; at least 27 cm", "28 cm"),
                ("a row", "5.90 m ÷ 28 cm", "21, whole part"),
                ("plants", "21 + 21", "42"),
            ],
        ),
        (
            {"diameter": "3 m"},
            {"in_row": "30 cm", "row_spacing": "60 cm", "edge": "30 cm"},
            {"pattern": "rings"},
            [
                ("rings", "60 cm apart", "3"),
                ("ring of 120 cm", "180° ÷ asin(30 ÷ (2 × 120))", "25, whole part"),
                ("ring of 60 cm", "180° ÷ asin(30 ÷ (2 × 60))", "12, whole part"),
                ("plants", "25 + 12 + 1", "38"),
            ],
        ),
        (
            {"outline": [["0 m", "0 m"], ["6 m", "0 m"], ["6 m", "0.5 m"], ["3 m", "0.5 m"], ["3 m", "1.0 m"],
                         ["0 m", "1.0 m"]]},
            {"in_row": "20 cm", "row_spacing": "30 cm", "edge": "10 cm"},
            {"phase": "best"},
            [
                ("rows", "(100 − 2 × 10) ÷ 30 + 1", "3, whole part"),
                ("edge", "rows shifted", "10 cm"),
                ("a row", "its own ground ÷ 20 cm", "each its whole part"),
                ("plants", "30 + 30 + 15", "75"),
                ("rows shifted", "60 where they are centred", "15 plants more"),
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
    plan = hand_worked("s1")
    found = workings(plan, *grown(plan)[0])
    assert all(working.source for working in found)
    assert sources_line(found) == "Formulas: common practice, no source"
    rings = beds_of({"pattern": "rings"})
    geometry = "geometry: n chords of a circle are each its diameter × sin(180° ÷ n) long"
    assert sources_line(workings(rings, *grown(rings)[0])) == f"Formulas: {geometry}; common practice, no source"
