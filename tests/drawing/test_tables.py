"""Counts as rows of words agree with one another and with the layouts."""

import pytest
from hypothesis import given, settings

from gardenplot.drawing.letters import looks
from gardenplot.drawing.tables import CountRow, counts_by_bed, counts_by_crop, order_rows, summary
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
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
    assert not plan.beds or f" · {total:,} plant".replace(",", " ") in plain(summary(plan))


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
    for row in rows:
        short = row.stand - row.planted
        expected = "met" if short <= 0 else f"{grouped(short)} short" if row.planted else "not planted"
        assert row.met == expected


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
        CountRow("Kohlrabi", "", "", 45),
        CountRow("Pak choi", "", "", 136),
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
    assert cilantro.met == f"{cilantro.stand - cilantro.planted} short"
