"""Counts against printed tables of plants to the acre and of plants in a row and in a bed."""

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout import Layout
from tests.layout.ground import Fields, laid_out, nm
from tests.published.cases import Case, each

# An acre is a furlong by a chain (customary measures, from memory): 43,560 sq ft, as the tables say.
ACRE: Fields = {"length": "660 ft", "width": "66 ft"}


def spaced(in_row: float, row_spacing: float) -> Fields:
    return {"in_row": f"{in_row} in", "row_spacing": f"{row_spacing} in"}


def bed(length: float, width: float, unit: str = "in") -> Fields:
    return {"length": f"{length} {unit}", "width": f"{width} {unit}"}


def laid(ground: Fields, crop: Fields, **planting: str) -> Layout:
    """The ground filled with a crop, half the row spacing at its sides."""
    return laid_out(ground, crop, planting).layouts[0]


@each("plants_per_area", "T1-BAILEY")
def test_an_acre_holds_what_a_rule_book_of_1911_prints(case: Case) -> None:
    crop = spaced(case.inputs["in_row_in"], case.inputs["row_in"])
    assert abs(laid(ACRE, crop, pattern="broadcast").plants - case.expected) <= case.within


@each("plants_per_area", "T1-POTATO")
def test_an_acre_of_potatoes_holds_what_a_trade_table_prints(case: Case) -> None:
    crop = spaced(case.inputs["in_row_in"], case.inputs["row_in"])
    assert abs(laid(ACRE, crop, pattern="broadcast").plants - case.expected) <= case.within


@each("plants_per_area", "T1-BAILEY")
def test_rows_on_an_acre_hold_the_printed_number_but_for_a_rank_and_a_row_that_do_not_fit(case: Case) -> None:
    layout = laid(ACRE, spaced(case.inputs["in_row_in"], case.inputs["row_in"]))
    rows, ranks = len(layout.rows), layout.per_row[0]
    assert layout.plants <= case.expected + case.within
    assert (rows + 1) * (ranks + 1) > case.expected
    if 792 % case.inputs["row_in"] == 7920 % case.inputs["in_row_in"] == 0:
        assert layout.plants == case.expected


@each("plants_per_area", "T1-CMG713")
def test_a_long_row_holds_as_many_carrots_as_a_small_block(case: Case) -> None:
    row = laid(bed(case.inputs["row_ft"], 0.25, "ft"), spaced(case.inputs["spacing_in"], case.inputs["spacing_in"]))
    block = laid(bed(*case.inputs["bed_in"]), spaced(case.inputs["spacing_in"], case.inputs["spacing_in"]))
    assert (row.plants, block.plants) == (case.expected["row"], case.expected["bed"])


@each("plants_per_area", "T1-ROW")
def test_one_row_holds_its_length_by_the_spacing(case: Case) -> None:
    unit = "in" if "length_in" in case.inputs else "m"
    length, spacing = (case.inputs.get(f"{name}_in", case.inputs.get(name)) for name in ("length", "spacing"))
    crop = {"in_row": f"{spacing} {unit}", "row_spacing": f"{spacing} {unit}"}
    assert laid({"length": f"{length} {unit}", "width": f"{spacing} {unit}"}, crop).plants == case.expected


@each("plants_per_area", "T1-BED")
def test_a_bed_holds_its_rows_by_their_plants(case: Case) -> None:
    inputs = case.inputs
    crop = spaced(inputs["in_row_in"], inputs["between_rows_in"])
    layout = laid(bed(inputs["length_in"], inputs["width_in"]), crop, edge=f"{inputs['side_inset_in']} in")
    found = {"per_row": layout.per_row[0], "rows": len(layout.rows), "plants": layout.plants}
    assert found == case.expected
    assert layout.first_plant == nm(f"{inputs['end_inset_in']} in")


@given(st.integers(1, 60), st.integers(1, 60))
def test_no_spacing_plants_an_acre_denser_than_its_area_by_the_spacings(in_row: int, row_spacing: int) -> None:
    """Plants = area / (in-row x row spacing), the rule behind all of these tables."""
    assert laid(ACRE, spaced(in_row, row_spacing)).plants <= 6_272_640 // (in_row * row_spacing)
