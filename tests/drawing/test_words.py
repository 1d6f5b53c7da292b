"""Words beside the fields, under the pointer and at the foot of the window; a packet's swatch."""

import re
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.days import day_words
from gardenplot.drawing.planting_words import (
    dates_words,
    order_met_words,
    order_words,
    rows_words,
    source_words,
    spacing_words,
    spare_words,
)
from gardenplot.drawing.strips import Under, arranged
from gardenplot.drawing.swatch import swatch
from gardenplot.drawing.tables import order_rows
from gardenplot.drawing.tape_words import scale_words, under_words
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Crop, Establish, Plan
from gardenplot.plan.catalogue import search
from gardenplot.plan.edits import change_planting
from gardenplot.units import MM, Length, Units, parse_length
from tests.drawing.hand_worked import hand_worked, only_bed
from tests.layout.ground import Fields, laid_out, nm, plan_with
from tests.plans import plans

S1, S6 = hand_worked("s1"), hand_worked("s6")
BED: Fields = {"length": "12 m", "width": "75 cm"}
CHARD: Fields = {"in_row": "20 cm", "row_spacing": "25 cm", "edge": "10 cm"}


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


def test_a_day_is_said_as_people_say_it() -> None:
    assert day_words(date(2027, 4, 9)) == "Fri 9 Apr 2027"


def test_where_and_when_a_planting_is() -> None:
    one = only_bed(S1).grown[0]
    assert dates_words(S1, one) == "Tunnel, second bed · in ground Fri 11 Apr – Sat 17 May 2025"
    undated = plan_with(BED, CHARD, {"plants": 3})
    assert dates_words(undated, only_bed(undated).grown[0]) == "Bed · no dates yet"
    open_end = change_planting(undated, "p1", in_ground=date(2025, 5, 12))
    assert dates_words(open_end, only_bed(open_end).grown[0]) == "Bed · in ground from Mon 12 May 2025"


def test_an_order_in_short() -> None:
    assert order_words(S1.orders[0], Units.METRIC) == "120 for Sat 17 May 2025"
    assert plain(order_words(hand_worked("s2").orders[1], Units.METRIC)) == "40 × 5 for Sat 5 Jul 2025"


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"row_per_unit": parse_length("30 cm")}, "120 of 30 cm of row for Sat 17 May 2025"),
        ({"units_per_plant": 4}, "120, 4 from a plant, for Sat 17 May 2025"),
        ({"times": 6}, "120 for Sat 17 May 2025, 6 times every 7 days"),
        ({"times": 2, "every_days": 1}, "120 for Sat 17 May 2025, 2 times every day"),
        ({"plants_per_unit": 5, "times": 3, "every_days": 14},
         "120 × 5 for Sat 17 May 2025, 3 times every 14 days"),
    ],
)  # fmt: skip
def test_an_order_says_what_its_unit_is_and_on_which_days_it_is_wanted(fields: Fields, words: str) -> None:
    assert plain(order_words(evolve(S1.orders[0], **fields), Units.METRIC)) == words


@pytest.mark.parametrize(
    ("scenario", "number", "words"),
    [("s1", 0, "met, 2 to spare of 136"), ("s2", 0, "met, 0 to spare of 100"), ("s5", 1, "382 plants short of 400")],
)
def test_whether_an_order_is_met(scenario: str, number: int, words: str) -> None:
    plan = hand_worked(scenario)
    laid = only_bed(plan)
    assert order_met_words(plan, laid.grown[number], laid.layouts[number]) == words


def met_words(order: Fields, *plantings: Fields) -> list[str]:
    """What is said of each planting for an order of 20 on Sat 12 July 2025, in a bed with chard."""
    wanted = {"id": "o1", "crop": "crop", "units": 20, "on": "2025-07-12"} | order
    plan = plan_with(BED, CHARD, *({"order": "o1"} | one for one in plantings), orders=[wanted])
    laid = only_bed(plan)
    return [order_met_words(plan, one, layout) for one, layout in zip(laid.grown, laid.layouts, strict=True)]


@pytest.mark.parametrize(
    ("order", "planting", "words"),
    [
        ({}, {"plants": 21}, "met, 1 to spare of 21"),
        ({"units_per_plant": 4}, {"plants": 6}, "met, 1 to spare of 6"),
        # 20 times 30 cm of row is 6 m: at 20 cm in the row 30 plants, at 10 cm 60.
        ({"row_per_unit": "30 cm"}, {"plants": 30}, "met, 0 to spare of 30"),
        ({"row_per_unit": "30 cm"}, {"plants": 30, "in_row": "10 cm"}, "30 plants short of 60"),
        ({"times": 3}, {"plants": 15, "market": 2}, "Sat 19 Jul 2025, market day 2 of 3: 5 plants short of 20"),
        ({"times": 3}, {"plants": 20}, "Sat 12 Jul 2025, market day 1 of 3: met, 0 to spare of 20"),
    ],
)
def test_whether_it_is_met_is_counted_in_its_own_units_on_its_own_day(
    order: Fields, planting: Fields, words: str
) -> None:
    assert met_words(order, planting) == [words]


def test_plantings_for_one_market_day_are_counted_together() -> None:
    both = "met, 1 to spare of 21; 2 plantings are for it"
    assert met_words({}, {"plants": 9}, {"plants": 12}) == [both, both]
    apart = met_words({"times": 2}, {"plants": 9}, {"plants": 20, "market": 2})
    assert [words.partition(": ")[2] for words in apart] == ["11 plants short of 20", "met, 0 to spare of 20"]


@given(plans())
def test_the_panel_and_the_list_of_orders_agree_on_what_is_met(plan: Plan) -> None:
    rows = {(row.order, row.market): row for row in order_rows(plan)}
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            words, order = order_met_words(plan, one, layout), one.order
            row = rows.get((order.id, one.planting.market or 1)) if order is not None else None
            if row is not None:
                assert bool(re.search(r"(plants?|clumps?) short", words)) == (row.planted < row.stand)


def test_both_answers_for_rows_are_in_sight() -> None:
    assert plain(rows_words(only_bed(S6).layouts[0], Units.METRIC)) == "8.1 cm at the edge; or 2 with 23.1 cm"
    assert plain(rows_words(only_bed(S1).layouts[0], Units.METRIC)) == "7.5 cm at the edge; or 3 with 17.5 cm"


def test_no_row_is_offered_on_the_very_edge() -> None:
    beets = {"in_row": "3 in", "row_spacing": ["6 in"]}
    laid = laid_out({"length": "20 ft", "width": "48 in"}, beets, {"length": "16 ft"})
    assert plain(rows_words(laid.layouts[0], Units.FEET_AND_INCHES)) == "3″ at the edge"


@pytest.mark.parametrize(
    ("planting", "words"),
    [
        ({"length": "2.95 m"}, "15 cm over at the foot end"),
        ({"length": "3 m"}, ""),
        ({"plants": 45, "slack": "40 cm"}, "40 cm over at the foot end"),
        ({"length": "2.95 m", "pattern": "broadcast"}, ""),
    ],
)
def test_what_no_rank_fills_is_said(planting: Fields, words: str) -> None:
    assert plain(spare_words(laid_out(BED, CHARD, planting).layouts[0], Units.METRIC)) == words


@pytest.mark.parametrize(
    ("along", "across", "establish", "units", "words"),
    [
        ("20 cm", "30 cm", Establish.TRANSPLANT, Units.METRIC, "20 × 30 cm · set out"),
        ("3 in", "1 ft", Establish.DIRECT, Units.METRIC, "7.6 × 30.5 cm · sow"),
        ("3 in", "1 ft", Establish.DIRECT, Units.FEET_AND_INCHES, "3″ × 12″ · sow"),
        ("10 in", "2 1/2 in", Establish.DIRECT, Units.DECIMAL_FEET, "10 × 2 1/2 in · sow"),
        ("10 in", "15 in", Establish.DIRECT, Units.FEET_AND_INCHES, "10″ × 15″ · sow"),
        ("25 cm", "12 in", Establish.DIRECT, Units.DECIMAL_FEET, "0.82 × 1.00 ft · sow"),
    ],
)
def test_a_packets_spacing_is_shown_in_the_plans_units(
    along: str, across: str, establish: Establish, units: Units, words: str
) -> None:
    crop = Crop("c", "C", parse_length(along), (parse_length(across),), establish=establish)
    assert plain(spacing_words(crop, units)) == words


def test_a_crop_in_a_plan_in_metres_tells_its_spacing_as_its_sources_have_it_too() -> None:
    (broccoli,) = search("broccoli")
    assert plain(spacing_words(broccoli.crop, Units.METRIC)).startswith("45.7 × 45.7 cm")
    told = {line.partition(":")[0] for line in source_words(broccoli.crop).split("\n")}
    assert told >= {"in row 18 in", "row spacing 18 in to 24 in"}


@pytest.mark.parametrize(
    ("x", "y", "words"),
    [
        ("4.2 m", "31 cm", "Tunnel, second bed · tape 4.20 m · 31 cm from the base line"),
        ("4.2 m", "80 cm", "Tunnel, second bed · tape 4.20 m"),
        ("12.01 m", "31 cm", "Tunnel, second bed"),
    ],
)
def test_the_place_under_the_pointer(x: str, y: str, words: str) -> None:
    assert plain(under_words(S1, Under("b2", nm(x), nm(y)))) == words


@pytest.mark.parametrize(
    ("along", "true_scale", "words"),
    [
        (96 / 25.4 / 20, True, "metres · scale 1 : 20"),
        (96 / 25.4 / 2.5, True, "metres · scale 1 : 2.5"),
        (96 / 25.4 / 100, False, "metres · scale 1 : 100, across enlarged × 3"),
    ],
)
def test_the_scale_of_the_drawing(along: float, true_scale: bool, words: str) -> None:
    strips = arranged(lay_out_plan(S1), along, true_scale=true_scale)
    assert scale_words(Units.METRIC, strips, 96) == words


spacings = st.integers(20, 900).map(lambda mm: parse_length(f"{mm} mm"))


@given(spacings, spacings)
def test_plants_of_a_swatch_stand_at_true_spacing_and_do_not_touch(along: Length, across: Length) -> None:
    crop = Crop("c", "C", along, (across,))
    width, height = 820.0, 582.0
    plants = list(swatch(crop, width, height))
    assert plants
    step_x, step_y = crop.in_row.nm / MM, crop.row_spacing[0].nm / MM
    first_x, first_y, _radius = plants[0]
    for x, y, radius in plants:
        assert 0 <= x < width
        assert 0 <= y < height
        assert 2 * radius < min(step_x, step_y)
        for distance, step in ((x - first_x, step_x), (y - first_y, step_y)):
            assert abs(distance / step - round(distance / step)) < 1e-6
