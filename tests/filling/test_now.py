"""A gap filled on one day: nothing overlaps or is touched, nothing single is better, nor what a referee finds."""

from datetime import date, timedelta
from itertools import permutations, product
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.filling.now import GapNow, fill_now
from gardenplot.filling.offers import WhyNot, gaps_on
from gardenplot.findings import find_all
from gardenplot.layout import Layout, lay_out_bed, lay_out_plan
from gardenplot.layout.sizes import block_sizes
from gardenplot.plan import Plan, Planting, bed_of, crop_of
from gardenplot.season import share_days
from gardenplot.units import M
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]
DAY = date(2027, 4, 10)


def bed_with(
    wishes: list[Fields], plantings: list[Fields] | None = None, gap: str = "0 m", orders: list[Fields] | None = None
) -> Plan:
    """A bed of 3 m with two rows at 20 cm, a round bed, and a crop of a family."""
    crop = {"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}
    return plan_from(
        beds=[
            {"id": "b", "name": "Bed", "length": "3 m", "width": "80 cm", "gap": gap},
            {"id": "r", "name": "Round", "diameter": "3 m"},
        ],
        crops=[crop, crop | {"id": "d", "name": "Beet", "in_row": "50 cm", "field_days": 30}],
        plantings=plantings or [],
        wishes=wishes,
        orders=orders or [],
    )


def filled(plan: Plan, at: float = 0, bed: str = "b", crop: str | None = None, day: date | None = DAY) -> GapNow:
    found = fill_now(plan, bed, round(at * M), day, crop)
    assert found is not None
    return found


def _days(first: int, long: int) -> Fields:
    begin = DAY + timedelta(days=first)
    return {"in_ground": begin.isoformat(), "out": (begin + timedelta(days=long)).isoformat()}


@st.composite
def small_plans(draw: st.DrawFn) -> Plan:
    """Up to three wishes of a few sizes, and up to two blocks that stand before the day, on it or later."""
    wishes = [
        {
            "id": f"w{number}", "crop": draw(st.sampled_from(("c", "d"))), "least": draw(st.integers(1, 8)),
            "most": draw(st.sampled_from((8, 12, 20))), "days": draw(st.sampled_from((20, 50, 100))),
            "worth": draw(st.sampled_from((1, 1.5, 2, 0.3))),
        }
        for number in range(draw(st.integers(0, 3)))
    ]  # fmt: skip
    plantings = []
    for number in range(draw(st.integers(0, 2))):
        start = draw(st.integers(0, 5)) / 2
        long = {"from": f"{start} m", "length": "0.5 m", **_days(draw(st.sampled_from((-60, -20, 10, 40))), 50)}
        plantings.append({"id": f"p{number}", "bed": "b", "crop": "c"} | long)
    return bed_with(wishes, plantings, draw(st.sampled_from(("0 m", "10 cm"))))


def blocks_of(plan: Plan) -> dict[str, Layout]:
    return {one.planting: one for laid in lay_out_plan(plan) for one in laid.layouts}


def cannot(plan: Plan) -> set[object]:
    return {one for one in find_all(plan) if one.cannot_be_done}


@given(small_plans(), st.integers(0, 30))
def test_blocks_keep_off_all_that_stands_and_nothing_that_stands_is_touched(plan: Plan, at: int) -> None:
    found = fill_now(plan, "b", at * M // 10, DAY)
    if found is None:
        return
    assert found.plan.plantings[: len(plan.plantings)] == plan.plantings
    before, after = blocks_of(plan), blocks_of(found.plan)
    assert {one: after[one] for one in before} == before
    assert cannot(found.plan) <= cannot(plan)
    laid = lay_out_bed(found.plan, bed_of(found.plan, "b"))
    dates = {one.planting.id: one.dates for one in laid.grown}
    kept = laid.bed.gap.nm if laid.bed.gap else 0
    for block in found.blocks:
        assert found.gap[0] <= block.start < block.end <= found.gap[1]
        assert block.in_ground == DAY
        for other in laid.layouts:
            if other.planting != block.planting and share_days(dates[block.planting], dates[other.planting]):
                assert block.start - other.end >= kept or other.start - block.end >= kept


@settings(max_examples=60)
@given(small_plans(), st.integers(0, 30))
def test_it_is_never_worse_than_one_wish_and_where_proven_what_the_referee_says(plan: Plan, at: int) -> None:
    found = fill_now(plan, "b", at * M // 10, DAY)
    if found is None:
        return
    alone = [fill_now(_only(plan, one.id), "b", at * M // 10, DAY) for one in plan.wishes]
    assert found.worth >= max((one.worth for one in alone if one is not None), default=0) - 1e-9
    best = referee(plan, found.gap)
    assert found.worth <= best + 1e-9
    assert not found.proven or found.worth == pytest.approx(best)
    assert len({one.wanted for one in found.blocks} | {one.wanted for one in found.without}) == len(plan.wishes)
    later = any(one.in_ground and one.in_ground > DAY for one in plan.plantings)
    assert later or found.proven


def _only(plan: Plan, wish: str) -> Plan:
    return evolve(plan, wishes=tuple(one for one in plan.wishes if one.id == wish))


def referee(plan: Plan, gap: tuple[int, int]) -> float:
    """The most worth of all sizes and all orders, each block as near to the head as it can stand."""
    bed, laid = bed_of(plan, "b"), lay_out_bed(plan, bed_of(plan, "b"))
    kept = bed.gap.nm if bed.gap else 0
    options = []
    for wish in plan.wishes:
        taken = [
            (layout.start - kept, layout.end + kept)
            for one, layout in zip(laid.grown, laid.layouts, strict=True)
            if one.dates.in_ground is not None
            and one.dates.out is not None
            and one.dates.in_ground < DAY + timedelta(days=wish.days or 0)
            and one.dates.out > DAY
        ]
        trial = Planting("", "", wish.crop)
        sizes = block_sizes(bed, crop_of(plan, wish.crop), trial, wish.least, wish.most)
        counts = [min(count, wish.most or count) * wish.worth for count in sizes.plants]
        options.append([None, *((length, worth, taken) for length, worth in zip(sizes.lengths, counts, strict=True))])
    best = 0.0
    for choice in product(*options):
        stand = [one for one in choice if one is not None]
        worth = sum(one[1] for one in stand)
        if worth > best and any(_fit(order, gap, kept) for order in permutations(stand)):
            best = worth
    return best


def _fit(order: tuple[Any, ...], gap: tuple[int, int], kept: int) -> bool:
    at = gap[0]
    for length, _worth, taken in order:
        while hit := next((end for start, end in taken if start < at + length and at < end), None):
            at = hit
        if at + length > gap[1]:
            return False
        at += length + kept
    return True


def test_a_block_is_out_before_what_comes_later_or_stands_beside_it() -> None:
    later = [{"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "1 m", **_days(40, 50)}]
    short = {"id": "short", "crop": "c", "most": 20, "days": 20}
    long = {"id": "long", "crop": "c", "most": 20, "days": 60}
    found = filled(bed_with([short, long], later))
    assert [(one.wanted, one.plants, one.start / M, one.end / M) for one in found.blocks] == [
        ("long", 10, 0, 1),
        ("short", 20, 1, 3),
    ]
    assert found.proven


def test_why_a_wish_does_not_stand_is_said() -> None:
    later = [{"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "1 m", **_days(40, 50)}]
    wishes: list[Fields] = [
        {"id": "elsewhere", "crop": "c", "beds": ["r"]},
        {"id": "autumn", "crop": "c", "earliest": "2027-08-01", "days": 30},
        {"id": "many", "crop": "c", "least": 31, "days": 20},
        {"id": "wide", "crop": "c", "rows": 9},
        {"id": "stays", "crop": "c", "least": 12, "days": 60},
        {"id": "cheap", "crop": "c", "least": 20, "worth": 0.1, "days": 20},
        {"id": "dear", "crop": "c", "least": 30, "days": 20},
    ]
    found = filled(bed_with(wishes, later))
    assert [one.wanted for one in found.blocks] == ["dear"]
    assert {one.wanted: one.why for one in found.without} == {
        "elsewhere": WhyNot.BED, "autumn": WhyNot.DAY, "many": WhyNot.LONG, "wide": WhyNot.ROWS,
        "stays": WhyNot.LATER, "cheap": WhyNot.OTHERS,
    }  # fmt: skip


def test_a_crop_without_a_wish_takes_as_much_as_fits() -> None:
    (block,) = filled(bed_with([]), crop="d").blocks
    assert (block.plants, block.start, block.end / M) == (12, 0, 3)
    assert (block.in_ground, block.out) == (DAY, date(2027, 5, 11))


def test_in_a_round_bed_the_plants_are_those_that_really_stand() -> None:
    plan = bed_with([{"id": "a", "crop": "c", "most": 12}, {"id": "b", "crop": "d", "most": 9}])
    found = filled(plan, 1, bed="r")
    assert sum(one.plants for one in found.blocks) > 0
    assert cannot(found.plan) == set()
    assert {one.planting: one.plants for one in found.blocks} == {
        planting: layout.plants for planting, layout in blocks_of(found.plan).items()
    }


def test_what_an_order_lacks_is_planted_where_its_days_allow_it() -> None:
    order = {"id": "o", "crop": "d", "units": 6, "on": "2027-05-05"}
    found = filled(bed_with([], orders=[order]))
    assert [(one.wanted, one.plants) for one in found.blocks] == [("o", 6)]
    assert found.plan.plantings[-1].order == "o"
    assert filled(bed_with([], orders=[order | {"on": "2027-09-05"}])).blocks == ()


def test_what_a_wish_has_met_already_is_not_wished_for_again() -> None:
    plan = bed_with([{"id": "a", "crop": "c", "most": 12, "days": 20}])
    first = filled(plan)
    again = fill_now(first.plan, "b", 2 * M, DAY)
    assert again is not None
    assert again.blocks == ()


def test_over_a_block_there_is_no_gap() -> None:
    plan = bed_with([], [{"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "1 m"}], gap="10 cm")
    assert gaps_on(plan, "b", DAY) == ((0, 900_000_000), (2_100_000_000, 3 * M))
    assert fill_now(plan, "b", M + M // 2, DAY) is None
