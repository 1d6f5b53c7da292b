"""Counts as rows of words agree with one another and with the layouts."""

import re
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.letters import looks
from gardenplot.drawing.tables import CountRow, counts_by_bed, counts_by_crop, order_rows, summary
from gardenplot.findings import Kind, find_all
from gardenplot.layout import lay_out_plan, stood
from gardenplot.plan import Order, Plan, Planting, crop_of
from gardenplot.plan.edits import add_order, add_planting, change_crop
from gardenplot.units import parse_length
from gardenplot.units.figures import grouped
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import feet_plan, metric_plan, plans


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


@settings(max_examples=25)
@given(plans())
def test_beds_and_crops_add_up_to_the_plan(plan: Plan) -> None:
    layouts = [layout for laid in lay_out_plan(plan) for layout in laid.layouts]
    total = sum(layout.plants for layout in layouts)
    assert sum(row.plants for row in counts_by_bed(plan)) == total
    assert sum(row.plants for row in counts_by_crop(plan)) == total
    if plan.beds:
        planted = plain(summary(plan)).split(" · ")[1].replace(" and ", "|")
        counts = [int(re.sub("[^0-9]", "", part)) for part in planted.split("|")]
        assert sum(counts) == total
        assert all(part.strip("0123456789 ").rstrip("s") in ("plant", "clump") for part in planted.split("|"))


@settings(max_examples=25)
@given(plans())
def test_each_bed_adds_up_its_plantings_each_of_which_counts_what_its_layout_does(plan: Plan) -> None:
    rows = counts_by_bed(plan)
    assert [row.bed for row in rows] == [bed.id for bed in plan.beds]
    look = looks(plan)
    for row, laid in zip(rows, lay_out_plan(plan), strict=True):
        assert row.plants == sum(inner.plants for inner in row.inner)
        assert {inner.planting: inner.plants for inner in row.inner} == {
            layout.planting: layout.plants for layout in laid.layouts
        }
        assert [inner.name.split("  ")[0] for inner in row.inner] == [
            look[inner.planting or ""].letter for inner in row.inner
        ]


@settings(max_examples=25)
@given(plans())
def test_each_order_is_met_or_short_by_what_is_missing(plan: Plan) -> None:
    rows = order_rows(plan)
    assert [(row.order, row.market) for row in rows] == [
        (order.id, market) for order in plan.orders for market in range(1, order.times + 1)
    ]
    days_late = {one.planting: one.amount for one in find_all(plan) if one.kind is Kind.LATE}
    standing = {
        layout.planting: stood(one, layout)
        for laid in lay_out_plan(plan)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
    }
    for row in rows:
        for_it = [one.id for one in plan.plantings if (one.order, one.market or 1) == (row.order, row.market)]
        assert row.planted == sum(standing[one] for one in for_it)
        in_time = sum(standing[one] for one in for_it if one not in days_late)
        words = row.met.split(", ")
        assert (words == ["met"]) == (in_time >= row.stand)
        assert (words == ["not planted"]) == (row.planted == 0 and row.stand > 0)
        short = [word for word in words if word.startswith("short by")]
        assert bool(short) == (0 < row.planted < row.stand)
        assert all(grouped(row.stand - row.planted) in word for word in short)
        late = max((days_late.get(one, 0) for one in for_it), default=0)
        if row.planted and words != ["met"]:
            assert any(word.startswith(f"late by {late} day") for word in words) == bool(late)


def test_a_market_day_says_by_how_much_it_is_short_and_how_late() -> None:
    early = metric_plan()
    plan = add_order(early, Order("o1", "leek", 30, date(2027, 6, 1), times=3, every_days=7))
    plan = change_crop(plan, "leek", field_days=40)
    for market, (plants, day) in enumerate(((30, "2027-04-20"), (20, "2027-05-01")), start=1):
        planting = Planting(f"m{market}", "b1", "leek", order="o1", market=market, plants=plants)
        plan = add_planting(plan, evolve(planting, in_ground=date.fromisoformat(day)))
    assert [(row.day, row.met) for row in order_rows(plan)] == [
        ("Tue 1 Jun 2027", "met"),
        ("Tue 8 Jun 2027", "short by 10 plants, late by 3 days"),
        ("Tue 15 Jun 2027", "not planted"),
    ]


def test_a_row_that_is_planted_closer_than_the_packet_says_needs_more_plants() -> None:
    plan = add_order(metric_plan(), Order("o1", "leek", 10, date(2027, 6, 1), row_per_unit=parse_length("1 m")))
    usual = order_rows(plan)[0].stand
    plan = add_planting(plan, Planting("m1", "b1", "leek", order="o1", in_row=parse_length("5 cm"), plants=200))
    (row,) = order_rows(plan)
    assert (row.stand, row.met) == (200, "met")
    assert usual == -(-1000 // round(crop_of(plan, "leek").in_row.nm / 1e7))


def test_the_counts_of_s1() -> None:
    (bed,) = counts_by_bed(hand_worked("s1"))
    assert (bed.name, bed.readings, bed.plants) == (
        "Tunnel, second bed",
        "65\u2009cm left in 1 piece at its fullest",
        181,
    )
    assert [(row.name, plain(row.readings), plain(row.rows), row.plants) for row in bed.inner] == [
        ("A  Pak choi", "0.30 – 7.10 m", "4 × 34", 136),
        ("B  Kohlrabi", "7.30 – 11.05 m", "3 × 15", 45),
    ]
    assert counts_by_crop(hand_worked("s1")) == (
        CountRow("Kohlrabi", "", "", 45, crop="kohlrabi"),
        CountRow("Pak choi", "", "", 136, crop="pak-choi"),
    )


@pytest.mark.parametrize(
    ("plan", "words"),
    [
        (hand_worked("s1"), "1 bed · 181 plants · 65 cm left in 1 piece at its fullest"),
        (hand_worked("s2"), "1 bed · 352 plants · 4′ 3″ left in 1 piece at its fullest"),
        (Plan(), "no bed yet"),
    ],
)
def test_a_plan_in_one_line(plan: Plan, words: str) -> None:
    assert plain(summary(plan)) == words


def test_thousands_are_parted_by_a_thin_space() -> None:
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "60 m", "width": "1.2 m"}],
        crops=[{"id": "leek", "name": "Leek", "in_row": "10 cm", "row_spacing": "20 cm"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "leek"}],
    )
    assert "3\u2009600 plants" in summary(plan)


def test_a_full_bed_has_nothing_left() -> None:
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bed", "length": "6 m", "width": "1.2 m"}],
        crops=[{"id": "leek", "name": "Leek", "in_row": "10 cm", "row_spacing": "20 cm"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "leek", "length": "6 m"}],
    )
    assert [row.readings for row in counts_by_bed(plan)] == ["nothing left"]


@pytest.mark.parametrize("plan", [metric_plan(), feet_plan()], ids=["metric", "feet"])
def test_crops_are_listed_by_name_and_only_if_they_are_planted(plan: Plan) -> None:
    names = [row.name for row in counts_by_crop(plan)]
    assert names == sorted(names)
    assert set(names) == {crop.name for crop in plan.crops}
    assert counts_by_crop(Plan(plan.place, plan.beds, plan.crops)) == ()


def test_the_orders_of_s1_are_met_and_those_of_s5_are_short() -> None:
    pak_choi, kohlrabi = order_rows(hand_worked("s1"))
    assert (pak_choi.stand, pak_choi.planted, pak_choi.met, pak_choi.day) == (134, 136, "met", "Sat 17 May 2025")
    assert (kohlrabi.stand, kohlrabi.planted, kohlrabi.met) == (43, 45, "met")
    _cabbage, cilantro = order_rows(hand_worked("s5"))
    assert cilantro.met == f"short by {cilantro.stand - cilantro.planted} plants"
