"""Ways out of what does not fit: valid, truly counted, ranked, and never at the cost of what is in the ground."""

import json
from typing import Any

from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.ways_words import shortage_words, way_words
from gardenplot.filling import fill
from gardenplot.filling.giving_way import WayKind
from gardenplot.filling.ways_out import Shortage, shortages
from gardenplot.findings import find_all
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.plan.valid import faults

Fields = dict[str, Any]
LEEK: Fields = {
    "id": "leek", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm",
    "field_days": 60, "raising_days": 30,
}  # fmt: skip
BEET: Fields = LEEK | {"id": "beet", "name": "Beetroot", "in_row": "10 cm", "row_spacing": "30 cm", "edge": "10 cm"}


def plan_of(orders: list[Fields], plantings: list[Fields], beds: tuple[str, ...] = ("10 m",)) -> Plan:
    """Beds of those lengths, 80 cm wide, with a gap of 20 cm."""
    parts: Fields = {
        "beds": [
            {"id": f"b{number}", "name": f"Bed {number}", "length": length, "width": "80 cm", "gap": "20 cm"}
            for number, length in enumerate(beds, start=1)
        ],
        "crops": [LEEK, BEET],
        "orders": [{"on": "2027-07-01"} | order for order in orders],
        "plantings": [{"bed": "b1"} | planting for planting in plantings],
    }
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def cannot_be_done(plan: Plan) -> set[object]:
    return {(one.kind, one.planting, one.other) for one in find_all(plan) if one.cannot_be_done}


def test_what_is_split_shares_out_what_was_sown_for_it() -> None:
    """Leeks: (80 - 40) / 40 = 1, 2 rows; 90 in 45 ranks of 20 cm, 9.00 m, and 60 beetroots: 3 rows, 20 ranks, 2.00 m.

    Of 10.00 m the gap and the beetroots leave 7.80: 39 ranks, 78. 100 of 120 cells came up: 100 x 78/90 = 86.7, 86 go
    along, in 120 x 86/100 = 103.2, up to 104 cells; 14 in 16 are for the other 12. Of 110 cells that were to be sown
    110 x 78/90 = 95.3 are theirs: 95 are 1.22 a plant and 15 are 1.25, while of 96 and 14 those would be 1.17.
    """
    sown: Fields = {"actual": {"sown": "2027-04-01", "cells": 120, "stand": 100}, "sow_cells": 110}
    plan = plan_of(
        [{"id": "o", "crop": "leek", "units": 90}, {"id": "p", "crop": "beet", "units": 60}],
        [{"id": "a", "crop": "leek", "order": "o"} | sown, {"id": "b", "crop": "beet", "order": "p"}],
    )
    splits = [
        way for found in shortages(plan) for way in found.ways if way.kind is WayKind.SPLIT and way.planting == "a"
    ]
    assert splits
    for way in splits:
        parts = [one for one in way.plan.plantings if one.crop == "leek"]
        assert [one.plants for one in parts] == [78, 12]
        assert [(one.actual.stand, one.actual.cells) for one in parts if one.actual] == [(86, 104), (14, 16)]
        assert [one.sow_cells for one in parts] == [95, 15]


def test_what_an_order_lacks_is_told_where_a_way_out_does_without_its_planting() -> None:
    """In 4 m stand 20 ranks of 2 leeks, 37 are wanted on two days, so nothing is planted for the second."""
    orders: list[Fields] = [{"id": f"o{number}", "crop": "leek", "units": units, "times": times}
                            for number, (units, times) in enumerate(((10, 1), (37, 2), (10, 1)))]  # fmt: skip
    plan = plan_of(orders, [{"id": f"p-{order}", "crop": "leek", "order": order} for order in ("o1", "o2")], ("4 m",))
    without = [one for one in shortages(plan) if one.ways and not any(
        each.id == one.planting for each in (*plan.plantings, *one.ways[0].plan.plantings))]  # fmt: skip
    assert without
    assert all("plants short" in shortage_words(plan, one) for one in without)


@st.composite
def crowded(draw: st.DrawFn) -> Plan:
    """A bed or two, two or three orders, each planted in the first bed or not at all, one perhaps in the ground."""
    count = draw(st.integers(2, 3))
    orders = [
        {
            "id": f"o{number}", "crop": draw(st.sampled_from(("leek", "beet"))), "units": draw(st.integers(10, 160)),
            "on": draw(st.sampled_from(("2027-07-01", "2027-07-15"))), "times": draw(st.integers(1, 2)),
        }
        for number in range(count)
    ]  # fmt: skip
    plantings: list[Fields] = []
    for order in orders:
        if draw(st.booleans()):
            plantings.append({"id": f"p-{order['id']}", "crop": order["crop"], "order": order["id"]})
            if draw(st.booleans()):
                plantings[-1]["from"] = f"{draw(st.integers(0, 60))}0 cm"
    if plantings and draw(st.sampled_from((True, False))):
        plantings[0] |= {"from": "1 m", "length": "2 m", "actual": {"set_out": "2027-05-01"}}
    lengths = draw(st.lists(st.sampled_from(("4 m", "8 m", "12 m")), min_size=1, max_size=2))
    return plan_of(orders, plantings, tuple(lengths))


@settings(max_examples=25)
@given(crowded())
def test_every_way_is_a_valid_plan_that_keeps_what_is_in_the_ground(plan: Plan) -> None:
    before, ground = cannot_be_done(plan), [one for one in plan.plantings if is_in_ground(one)]
    stood = {each.planting: each for laid in lay_out_plan(plan) for each in laid.layouts}
    for short in shortages(plan):
        for way in short.ways:
            assert not list(faults(way.plan))
            stand = {each.planting: each for laid in lay_out_plan(way.plan) for each in laid.layouts}
            assert [stand[one.id] for one in ground] == [stood[one.id] for one in ground]
            if way.fits:
                assert cannot_be_done(way.plan) <= before
            for part in way.parts:
                layout = stand[part.planting]
                assert (part.bed, part.plants, part.start, part.end) == (
                    layout.bed, layout.plants, layout.start, layout.end,
                )  # fmt: skip
            assert way_words(way)
        assert shortage_words(plan, short)


@settings(max_examples=15)
@given(crowded())
def test_ways_are_ranked_and_come_out_the_same_again(plan: Plan) -> None:
    for short in shortages(plan):
        ranks = [
            (not way.fits, -sum(one.is_whole and one.order is not None for one in way.met)) for way in short.ways
        ]
        assert ranks == sorted(ranks)
    copy = evolve(plan, plantings=tuple(evolve(one) for one in plan.plantings))
    assert shortages(copy) == shortages(plan)


def only_short(plan: Plan) -> Shortage:
    (short,) = shortages(plan)
    return short


def test_nothing_is_short_where_all_fits() -> None:
    plan = plan_of([{"id": "o", "crop": "leek", "units": 80}], [{"id": "p", "crop": "leek", "order": "o"}])
    assert shortages(plan) == ()


def test_a_free_bed_of_the_plan_is_offered_before_a_further_one() -> None:
    orders = [{"id": name, "crop": "leek", "units": 60} for name in ("o", "q")]
    plantings: list[Fields] = [{"id": f"p{one['id']}", "crop": "leek", "order": one["id"]} for one in orders]
    short = only_short(plan_of(orders, plantings, ("10 m", "6 m")))
    # 6 m + 20 cm + 6 m in 10 m.
    assert (short.planting, short.length) == ("pq", 2_200_000_000)
    best = short.ways[0]
    assert (best.kind, best.new_bed, best.changes) == (WayKind.BED, None, 1)
    assert {(part.planting, part.bed) for part in best.parts} == {("po", "b1"), ("pq", "b2")}


def test_a_market_day_that_lacks_plants_is_offered_where_ground_is_free_then() -> None:
    orders: list[Fields] = [
        {"id": "q", "crop": "leek", "units": 80},
        {"id": "o", "crop": "leek", "units": 60, "times": 2, "every_days": 70},
    ]
    plantings: list[Fields] = [
        {"id": "pq", "crop": "leek", "order": "q", "from": "0 m"},
        {"id": "po", "crop": "leek", "order": "o", "market": 1},
    ]
    short = shortages(plan_of(orders, plantings))[0]
    (later,) = [one for one in short.ways if one.kind is WayKind.DATE and one.planting == "po" and
                any(met.market == 2 for met in one.met)]  # fmt: skip
    assert [met.late for met in later.met if met.order == "o"] == [70]
    assert "for the market on Thu 9 Sep 2027 instead" in way_words(later)


def test_a_block_for_no_order_lacks_ground_for_itself() -> None:
    blocks: list[Fields] = [
        {"id": "p", "crop": "leek", "plants": 60, "from": "0 m"},
        {"id": "q", "crop": "beet", "plants": 130, "from": "5 m"},
    ]
    short = only_short(plan_of([], blocks))
    # 6 m of leeks, 20 cm, 44 ranks of 3 beetroots in 4.40 m; the bed leaves 3.80 m, 38 ranks.
    assert (short.order, short.planting, short.length) == (None, "q", 600_000_000)
    assert short.plants == 130 - 3 * 38
    assert {way.planting for way in short.ways} == {"p", "q"}


def test_a_block_that_fits_beside_where_it_stands_is_not_short_of_ground() -> None:
    blocks: list[Fields] = [
        {"id": "p", "crop": "leek", "plants": 40, "from": "0 m"},
        {"id": "q", "crop": "leek", "plants": 40, "from": "2 m"},
    ]
    plan = plan_of([], blocks)
    short = only_short(plan)
    assert short.has_ground
    assert "no ground where they stand, elsewhere in Bed 1 there is" in shortage_words(plan, short)
    best = short.ways[0]
    assert [(part.bed, part.plants) for part in best.parts] == [("b1", 40), ("b1", 40)]


def test_what_is_in_the_ground_does_not_give_way() -> None:
    orders = [{"id": name, "crop": "leek", "units": 60} for name in ("o", "q")]
    stands = {"id": "po", "crop": "leek", "order": "o", "from": "0 m", "length": "6 m", "in_row": "20 cm",
              "row_spacing": ["40 cm"], "edge": "20 cm", "actual": {"set_out": "2027-05-01"}}  # fmt: skip
    short = only_short(plan_of(orders, [stands]))
    assert {way.planting for way in short.ways} == {short.planting}
    (less,) = [way for way in short.ways if way.kind is WayKind.LESS]
    # 10 m less 6.20 m is 3.80 m: 19 ranks of two rows.
    assert [part.plants for part in less.parts] == [38]


def test_a_bed_that_the_filling_finds_room_in_is_not_short() -> None:
    plan = plan_of([{"id": "o", "crop": "leek", "units": 80}], [])
    assert shortages(fill(plan).plan) == ()


def test_what_stands_in_another_bed_already_is_not_asked_for_again() -> None:
    """120 leeks are 60 ranks of two, 12 m: the filling puts 20 into the second bed, so 10 m are enough."""
    plan = plan_of([{"id": "o", "crop": "leek", "units": 120}], [{"id": "p", "crop": "leek", "order": "o"}],
                   beds=("10 m", "4 m"))  # fmt: skip
    short = only_short(plan)
    assert (short.plants, short.length, short.units) == (20, 2_000_000_000, 20)
    filled = fill(plan).plan
    short = only_short(filled)
    assert (short.plants, short.length, short.units) == (0, 0, 0)
    assert shortage_words(filled, short).endswith("too long a block, what is still needed has ground in Bed 1")
    assert [(part.planting, part.plants) for part in short.ways[0].parts] == [("p", 100)]


def test_a_block_that_nothing_is_needed_of_any_more_may_go() -> None:
    """80 leeks fill 8 m; 7 ranks of beetroot end 20 + 70 cm behind them. All 20 go into the second bed."""
    orders = [{"id": "o", "crop": "leek", "units": 80}, {"id": "q", "crop": "beet", "units": 20}]
    plantings = [{"id": f"p{one['id']}", "crop": one["crop"], "order": one["id"]} for one in orders]
    filled = fill(plan_of(orders, plantings, beds=("8 m", "4 m"))).plan
    short = only_short(filled)
    assert short.planting == "pq"
    words = ": a block is 90 cm too long for Bed 1, but all that is ordered stands without that"
    assert shortage_words(filled, short).replace("\u2009", " ").endswith(words)
    way = next(way for way in short.ways if way.kind is WayKind.LESS and not way.parts[1:])
    assert way_words(way).startswith("Without this block of Beetroot: 80 of 80 Leek, 20 of 20 Beetroot")


def test_who_gives_way_is_named_and_not_who_stands_as_before() -> None:
    """60 leeks take 6 m; 30 ranks of beetroot end 60 cm behind 8.60 m, 24 stand there and 18 plants elsewhere."""
    orders = [{"id": "o", "crop": "leek", "units": 60}, {"id": "q", "crop": "beet", "units": 90}]
    plantings = [{"id": f"p{one['id']}", "crop": one["crop"], "order": one["id"]} for one in orders]
    filled = fill(plan_of(orders, plantings, beds=("8.6 m", "2.5 m"))).plan
    best = only_short(filled).ways[0]
    assert (best.planting, [(part.planting, part.plants) for part in best.parts]) == ("pq", [("po", 60), ("pq", 72)])
    assert way_words(best).replace("\u2009", " ") == (
        "Beetroot in Bed 1, 6.20 – 8.60 m: 60 of 60 Leek, 90 of 90 Beetroot; nothing left; 1 change"
    )


def test_units_that_are_cut_from_a_length_of_row_are_not_sown_closer_in_it() -> None:
    """40 of 50 cm are 20 m of row, 3 rows of 6.67 m; 6 m hold 18 m, 36, however close its plants stand in the row."""
    order = {"id": "o", "crop": "beet", "units": 40, "row_per_unit": "50 cm"}
    short = only_short(plan_of([order], [{"id": "p", "crop": "beet", "order": "o"}], beds=("6 m",)))
    assert short.units == 4
    closer = [way for way in short.ways if way.kind is WayKind.CLOSER]
    assert closer
    for way in closer:
        (layout,) = [one for laid in lay_out_plan(way.plan) for one in laid.layouts if one.planting == "p"]
        assert layout.grid.in_row == 100_000_000
    by_plants = only_short(
        plan_of(
            [order | {"row_per_unit": None, "units": 200}], [{"id": "p", "crop": "beet", "order": "o"}], beds=("6 m",)
        )
    )
    assert any(way.kind is WayKind.CLOSER and "in the row" in way_words(way) for way in by_plants.ways)


def test_an_order_that_is_left_out_by_its_first_way_out_is_told_all_the_same() -> None:
    """37 leeks take 19 ranks of 4 m, 10 behind them 5; 29 more take 15, 3.00 m, for which no ground is left."""
    orders = [{"id": name, "crop": "leek", "units": units} for name, units in (("o", 29), ("p", 37), ("q", 10))]
    plantings = [{"id": f"a{name}", "crop": "leek", "order": name} for name in ("p", "q")]
    plan = plan_of(orders, plantings, beds=("4 m",))
    told = [shortage_words(plan, short).replace("\u2009", " ") for short in shortages(plan)]
    assert told[0].startswith("29 Leek for Thu 1 Jul 2027 do not fit Bed 1: 29 plants short")
    assert told[1].startswith("10 Leek for Thu 1 Jul 2027 do not fit Bed 1: 10 plants short")
