"""Plants in a row by what is kept free at its ends, and plants to cover an area, against printed answers.

Three conventions are told apart: a plant on the mark at both ends (intervals + 1), half a spacing at both ends
(length / spacing), and none at the ends (intervals - 1). Weights and distances of a table are multiplied out here,
the counts come from plans. Of the published cases on counting and on triangles one is left out: T2-LG-49, the least
number of circles whose least-area rectangle is no plain grid, says something about a number and asks for no layout.
"""

from math import floor

import pytest
from hypothesis import given

from gardenplot.layout import Layout
from gardenplot.units import MM, M
from tests.layout.ground import Fields, laid_out, lengths, long, nm
from tests.published.cases import Case, each
from tests.published.test_plants_per_area import ACRE

SQ_FT_PER_ACRE = 43_560
OUNCES_PER_CWT = 1600


def row(length: str, spacing: str, end_margin: str | None = None) -> Layout:
    """One row down the middle of a bed; without an end margin it keeps half a spacing at both ends."""
    ends: Fields = {} if end_margin is None else {"end_margin": end_margin}
    return laid_out({"length": length, "width": "1 m"}, {"in_row": spacing, "row_spacing": "1 m"}, ends).layouts[0]


def sown(length: str, width: str, spacings: tuple[str, str], **crop: str) -> int:
    """Plants that an area holds with no thought of its sides: one in each spacing by spacing."""
    packet = {"in_row": spacings[0], "row_spacing": spacings[1]} | crop
    return laid_out({"length": length, "width": width}, packet, {"pattern": "broadcast"}).layouts[0].plants


def on_an_acre(in_row: float, row_spacing: float, unit: str) -> int:
    return sown(ACRE["length"], ACRE["width"], (f"{in_row} {unit}", f"{row_spacing} {unit}"))


@each("plants_in_a_row", "T1-FENCE-100")
def test_a_fence_of_a_hundred_feet_has_as_many_posts_as_its_ends_say(case: Case) -> None:
    spacing = f"{case.inputs['spacing']} ft"
    margin = {"both_ends": "0 ft", "one_end": None, "neither_end": spacing}[case.inputs["ends"]]
    assert row(f"{case.inputs['length']} ft", spacing, margin).plants == case.expected


@each("plants_in_a_row", "T1-FENCE-WIDEPOST")
def test_wide_posts_with_clear_gaps_fill_a_fence_from_end_to_end(case: Case) -> None:
    wide, gap = case.inputs["item_width_ft"], case.inputs["gap_ft"]
    layout = row(f"{case.inputs['length_ft']} ft", f"{wide + gap} ft", f"{wide / 2} ft")
    assert layout.plants == case.expected["items"]
    assert layout.plants - 1 == case.expected["gaps"]


@each("plants_in_a_row", "T1-ROW")
def test_a_row_holds_what_its_end_margin_leaves(case: Case) -> None:
    unit = "in" if "length_in" in case.inputs else "m"
    length, spacing, margin = (
        f"{case.inputs.get(f'{name}_in', case.inputs.get(name))} {unit}"
        for name in ("length", "spacing", "end_inset")
    )
    assert row(length, spacing, margin).plants == case.expected


@pytest.mark.parametrize(
    ("length", "spacing", "margin", "plants"),
    [
        ("0.7 m", "0.1 m", "0.05 m", 7),  # (0.7 - 0.1) / 0.1 is 5.999999999999999
        ("21 m", "0.7 m", "0 m", 31),  # 21 / 0.7 is 30.000000000000004
        ("21 m", "0.7 m", None, 30),
        ("55 m", "1.1 m", None, 50),  # 50 * 1.1 is 55.00000000000001
        ("0.3 m", "0.1 m", "0 m", 4),  # 0.3 / 0.1 is 2.9999999999999996
        ("1.20 m", "0.40 m", "0.20 m", 3),  # (1.20 - 0.40) / 0.40 is 1.9999999999999998
    ],
)
def test_lengths_that_trip_floating_point_are_counted_exactly(
    length: str, spacing: str, margin: str | None, plants: int
) -> None:
    """Plain arithmetic; each sum is whole in decimals and not in binary."""
    assert row(length, spacing, margin).plants == plants
    assert row(long(nm(length) - 1).text, spacing, margin).plants == plants - 1


@given(lengths(MM, 5 * M), lengths(MM, M))
def test_both_ends_hold_one_more_and_neither_one_fewer_than_intervals(length: int, spacing: int) -> None:
    """Intervals n = floor(length / spacing): n + 1, n - 1, and n with half a spacing at both ends (the fence post
    error, Jargon File)."""
    intervals = length // spacing
    texts = long(length).text, long(spacing).text
    assert row(*texts, "0 m").plants == intervals + 1
    assert row(*texts, None).plants == intervals
    assert row(*texts, texts[1]).plants == max(0, intervals - 1)


@each("plants_to_cover", "T1-BAILEY-ACRE-SIDE")
def test_a_square_acre_measures_between_208_and_209_feet_a_side(case: Case) -> None:
    low, high = (sown(f"{side} ft", f"{side} ft", ("1 ft", "1 ft")) for side in case.expected)
    assert low < SQ_FT_PER_ACRE == on_an_acre(1, 1, "ft") < high


@each("plants_to_cover", "T1-POTATOSEED")
def test_an_acre_takes_the_printed_weight_of_seed_potatoes(case: Case) -> None:
    pieces = on_an_acre(case.inputs["in_row_in"], case.inputs["row_in"], "in")
    assert pieces * case.inputs["piece_oz"] / OUNCES_PER_CWT == pytest.approx(case.expected, abs=case.within)


@each("plants_to_cover", "T1-CODER")
def test_an_acre_holds_trees_by_their_spacings(case: Case) -> None:
    trees = on_an_acre(case.inputs["in_row_ft"], case.inputs["row_ft"], "ft")
    assert trees == pytest.approx(case.expected, abs=case.within)
    assert trees == floor(case.expected)


@each("plants_to_cover", "T1-LBF")
def test_an_acre_has_its_feet_of_bed(case: Case) -> None:
    """One plant to each foot of bed counts the feet."""
    assert on_an_acre(1, case.inputs["bed_centre_ft"], "ft") == pytest.approx(case.expected, abs=case.within)


@each("plants_to_cover", "T1-THOUSANDTH")
def test_a_thousandth_of_an_acre_of_row_goes_a_thousand_times_into_an_acre(case: Case) -> None:
    rows = f"{case.inputs['row_in']} in"
    assert sown(ACRE["length"], ACRE["width"], (f"{case.expected} ft", rows)) == 1000


@each("plants_to_cover", "T2-GLOVER")
def test_an_area_takes_the_plants_of_a_nursery_chart(case: Case) -> None:
    """The chart's rounded multipliers are up to 1.2 % off (0.44 for 4/9 at 18 in)."""
    spacing = f"{case.inputs['spacing_in']} in"
    held = sown(f"{case.inputs['area_sqft']} ft", "1 ft", (spacing, spacing))
    assert held == pytest.approx(case.expected, abs=case.within)


@each("plants_to_cover", "T2-300")
def test_three_hundred_square_feet_hold_the_printed_plants(case: Case) -> None:
    spacing = f"{case.inputs['spacing_in']} in"
    held = sown(f"{case.inputs['area_sqft']} ft", "1 ft", (spacing, spacing))
    assert held == pytest.approx(case.expected, abs=case.within)


@each("plants_to_cover", "T2-MULT")
def test_plants_to_the_square_foot_are_the_printed_multiplier(case: Case) -> None:
    spacing = f"{case.inputs['spacing_in']} in"
    assert sown("100 ft", "10 ft", (spacing, spacing)) == 1000 * case.expected


@each("plants_to_cover", "T2-SC")
def test_a_small_bed_in_squares_holds_its_area_by_the_square(case: Case) -> None:
    spacing = f"{case.inputs['spacing_in']} in"
    ground = {"length": f"{case.inputs['length_ft']} ft", "width": f"{case.inputs['width_ft']} ft"}
    assert laid_out(ground, {"in_row": spacing, "row_spacing": spacing}, {}).layouts[0].plants == case.expected


@each("plants_to_cover", "T2-TRAP-ROUNDMULT")
def test_the_plant_that_an_area_rounds_up_to_needs_more_than_that_area(case: Case) -> None:
    """172.8 plants: 172 stand on 120 sq ft, and the length for 173 is more. A rounded multiplier prints 174."""
    spacing = f"{case.inputs['spacing_in']} in"
    packet, area = {"in_row": spacing, "row_spacing": spacing}, case.inputs["area_sqft"]
    held, rounded_up = (
        laid_out({"length": "1000 ft", "width": "1 ft"}, packet, {"pattern": "broadcast", "plants": n}).layouts[0]
        for n in (case.expected - 1, case.expected)
    )
    assert sown(f"{area} ft", "1 ft", (spacing, spacing)) == held.plants == case.expected - 1
    assert held.length < nm(f"{area} ft") < rounded_up.length


@each("plants_to_cover", "T2-GG-CIRCLE")
def test_a_round_bed_has_the_printed_area(case: Case) -> None:
    """A thousand plants to the square foot measure it; the source takes 3.14 for pi."""
    ground = {"diameter": f"{case.inputs['diameter_ft']} ft"}
    packet = {"in_row": "1 ft", "row_spacing": "1 ft", "plants_per_area": "1000 / sq ft"}
    held = laid_out(ground, packet, {"pattern": "broadcast"}).layouts[0].plants
    assert held / 1000 == pytest.approx(case.expected, abs=case.within)
