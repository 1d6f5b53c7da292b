"""The numbers of rows, plants, blocks and dates are those of the layout, for all patterns and beds."""

from collections import Counter
from collections.abc import Iterator
from datetime import date

import pytest
from hypothesis import given, settings

from gardenplot.layout import Grown, Layout, lay_out_plan
from gardenplot.layout.row_numbers import plants_number, row_numbers
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Actual, Bed, Crop, Pattern, Plan, Planting, Reserved
from gardenplot.season import stand_for
from gardenplot.season.date_numbers import date_numbers
from gardenplot.units import CM, parse_length
from gardenplot.working import RULES, Number, Source, numbers_in
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import plans


def grown(plan: Plan) -> Iterator[tuple[Bed, Grown, Layout]]:
    """Each planting of a plan with its bed and its layout."""
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            yield laid.bed, one, layout


def by_name(bed: Bed, one: Grown, layout: Layout) -> dict[str, Number]:
    return {number.name: number for number in row_numbers(bed, one, layout)}


@settings(max_examples=40)
@given(plans())
def test_each_number_is_the_layouts_own_and_says_where_it_comes_from(plan: Plan) -> None:
    for bed, one, layout in grown(plan):
        found = by_name(bed, one, layout)
        assert_true(one, layout, found)
        if one.planting.reserved is Reserved.CUT_FIRST:
            # A bed too short for any row across has none, however many plants one would hold.
            if layout.per_row and "a_row" in found:
                assert max(layout.per_row) == found["a_row"].value
            assert found.get("moved_row") is None or found["moved_row"].value in (*layout.per_row, 0)
        for number in (each for top in found.values() for each in numbers_in(top)):
            assert number.value is not None
            assert number.source, number.name


def assert_true(one: Grown, layout: Layout, found: dict[str, Number]) -> None:
    """Fail where a number is not what the layout has."""
    assert found["trays_there" if layout.holds_trays else "planted"].value == layout.plants
    for name, value in (("block", layout.length), ("more_by_phase", layout.gain)):
        assert name not in found or found[name].value == value
    if not layout.grid.runs_across and layout.grid.pattern is not Pattern.CELLS and "rows" in found:
        assert found["rows"].value == len(layout.per_row)
    if "stand" in found:
        assert one.order is not None
        narrow = layout.grid.in_row_least or layout.grid.in_row
        assert found["stand"].value == stand_for(one.order, one.crop, narrow)
    if "edge" in found:
        assert found["edge"].value == layout.grid.edge


@settings(max_examples=40)
@given(plans())
def test_each_date_is_the_plantings_own_and_none_is_left_out(plan: Plan) -> None:
    for _bed, one, _layout in grown(plan):
        if one.hardened is not None:
            continue
        found = date_numbers(one.planting, one.crop, one.order, one.site)
        for name in ("sow", "pot_up", "harden", "set_out", "ready", "out"):
            day = getattr(one.dates, name)
            assert (name in found) == (day is not None), (name, day, one.planting, one.crop)
            if day is not None:
                assert found[name].value == day.toordinal()


def test_what_came_about_in_trays_is_told_where_no_other_day_is_known() -> None:
    came = Actual(potted_up=date(2027, 3, 1), hardened=date(2027, 4, 12))
    kale = Crop("kale", "Kale", parse_length("40 cm"), (parse_length("50 cm"),))
    told = date_numbers(Planting("p", "b", "kale", actual=came), kale, None)
    assert {name: number.source for name, number in told.items()} == dict.fromkeys(
        ("pot_up", "harden"), Source.CAME_ABOUT
    )


def test_in_plain_beds_a_formula_tells_the_plants_and_a_count_only_what_it_cannot() -> None:
    """Of all plantings in rectangles four in five have a formula at least; obstacles and cut blocks have none."""
    told: Counter[bool] = Counter()

    @settings(max_examples=100)
    @given(plans())
    def look(plan: Plan) -> None:
        for bed, one, layout in grown(plan):
            if is_plain(bed) and layout.plants and layout.gain is None and layout.grid.turn is None:
                told[plants_number(bed, one, layout).source is not Source.COUNTED] += 1

    look()
    assert told[True] > 4 * told[False]
    assert told[True] > 5


@pytest.mark.parametrize(
    ("scenario", "number", "values"),
    [
        ("s1", 0, {"stand": 134, "rows": 4, "a_row": 34, "planted": 136, "block": 6_800_000_000}),
        ("s1", 1, {"stand": 43, "rows": 3, "a_row": 15, "planted": 45, "block": 3_750_000_000}),
        ("s2", 0, {"stand": 100, "rows": 2, "a_row": 50, "planted": 100, "block": 900 * 25_400_000}),
        ("s2", 1, {"stand": 250, "rows": 4, "a_row": 63, "planted": 252, "block": 189 * 25_400_000}),
        ("s3", 1, {"rows": 1, "a_row": 23, "planted": 23}),
        ("s4", 0, {"stand": 137, "rows": 3, "a_row": 46, "moved_row": 45, "planted": 137, "block": 18_400_000_000}),
        ("s4", 1, {"stand": 316, "rows": 4, "a_row": 79, "planted": 316, "block": 11_850_000_000}),
    ],
)
def test_the_numbers_of_the_scenarios_come_from_formulas(scenario: str, number: int, values: dict[str, int]) -> None:
    """The numbers that were worked by hand in the scenarios S1 to S4."""
    found = by_name(*list(grown(hand_worked(scenario)))[number])
    assert {name: found[name].value for name in values} == values
    assert all(found[name].terms for name in values if name not in ("rows", "block") or scenario != "s3")


def test_rings_come_from_the_size_of_their_bed() -> None:
    """By hand: (140 − 12.5) / 30 + 1 = 5.25, 5 rings; inside 65 and 35 cm the middle is left for a plant."""
    crop = {"id": "l", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "30 cm", "edge": "10 cm"}
    ground = {"diameter": "3 m"}, {"length": "3 m", "width": "1.5 m"}
    told = []
    for size in ground:
        plan = plan_from(
            beds=[{"id": "b1", "name": "Round"} | size], crops=[crop],
            plantings=[{"id": "p1", "bed": "b1", "crop": "l", "pattern": "rings"}],
        )  # fmt: skip
        (found,) = (by_name(*one) for one in grown(plan))
        told.append(found["rings"])
        radii = [one for one in numbers_in(found["planted"]) if one.name == "ring_radius"]
        assert all(one.source is not Source.MEASURED for one in radii)
        assert [one.terms != () for one in radii] == [one.value != 0 for one in radii]
    assert [one.value for one in told] == [5, 3]
    assert [one.name for one in told[1].terms] == ["rings_round", "in_middle"]
    assert told[1].terms[0].value == 2


@pytest.mark.parametrize(
    ("size", "wanted", "source"), [({}, 25, RULES), ({"twin_spacing": "20 cm"}, 20, Source.OF_PLANTING)]
)
def test_how_far_apart_a_pair_stands_is_typed_or_follows_from_the_spacings(
    size: dict[str, str], wanted: int, source: Source
) -> None:
    """By hand: plants stand 25 cm apart, which is less than half of 60 cm."""
    crop = {"id": "l", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "60 cm"}
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "3 m", "width": "1 m"}], crops=[crop],
        plantings=[{"id": "p1", "bed": "b1", "crop": "l", "pattern": "twin"} | size],
    )  # fmt: skip
    (found,) = (by_name(*one) for one in grown(plan))
    twin = next(one for one in numbers_in(found["rows"]) if one.name == "twin_spacing")
    assert twin.value == wanted * CM
    assert twin.source == source


def test_days_that_came_about_are_numbers_where_no_other_day_is_known() -> None:
    crop = {"id": "l", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "30 cm", "establish": "transplant"}
    came = {"potted_up": "2027-03-20", "hardened": "2027-04-02"}
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "3 m", "width": "1 m"}], crops=[crop],
        plantings=[{"id": "p1", "bed": "b1", "crop": "l", "actual": came}],
    )  # fmt: skip
    ((_bed, one, _layout),) = grown(plan)
    found = date_numbers(one.planting, one.crop, one.order, one.site)
    assert {name: found[name].value for name in found} == {
        "pot_up": date(2027, 3, 20).toordinal(), "harden": date(2027, 4, 2).toordinal(),
    }  # fmt: skip


def test_a_block_too_short_for_a_row_across_has_none_to_tell_plants_of() -> None:
    crop = {"id": "l", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "30 cm", "edge": "10 cm"}
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "3 m", "width": "1 m"}], crops=[crop],
        plantings=[{"id": "p1", "bed": "b1", "crop": "l", "length": "10 cm", "direction": "across"}],
    )  # fmt: skip
    ((bed, one, layout),) = grown(plan)
    found = by_name(bed, one, layout)
    assert not layout.rows
    assert "a_row" not in found
    assert not found["rows"].value
    assert not found["planted"].value
