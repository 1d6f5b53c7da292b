"""What came about otherwise and what does not fit: every figure that is told of it is a number with its working."""

from collections.abc import Callable, Iterator
from datetime import date
from fractions import Fraction
from json import dumps
from typing import Any

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.again_table import trouble_of
from gardenplot.drawing.number_words import workings_of
from gardenplot.drawing.remedies import Trouble
from gardenplot.drawing.ways_table import ways_trouble
from gardenplot.filling.again import plan_again
from gardenplot.filling.setbacks import Setback
from gardenplot.filling.ways_out import lacks
from gardenplot.plan import Actual, Plan
from gardenplot.plan.file import plan_of_text
from gardenplot.working import Number, numbers_in
from tests.drawing.figures_told import figures, without_names
from tests.filling.test_again_in_bed import AFTER, plan_of
from tests.scenarios.again_plans import late_and_short
from tests.scenarios.planned_again import changed_order, failed_row
from tests.scenarios.test_again_late import beside, late, late_and_followed
from tests.scenarios.test_longer_block import relay

MAY, JULY = date(2027, 5, 10), date(2027, 7, 11)


def read(plan: dict[str, Any]) -> Plan:
    return plan_of_text(dumps(plan)).plan


def followed(units: int) -> Plan:
    """Lettuce that holds the ground of the beetroot that follows."""
    orders = [{"id": "o", "crop": "c", "units": 60, "on": "2027-06-19"},
              {"id": "o2", "crop": "d", "units": units, "on": "2027-08-28"}]  # fmt: skip
    return plan_of({"harvested": "2027-07-10"}, AFTER, orders=orders)


def few_cells() -> Plan:
    """70 cells for the 80 that are wanted."""
    plan = changed_order(80, is_out=False)
    plan["plantings"][0] |= {"plants": 80, "actual": {"sown": "2027-04-06", "cells": 70}}
    return read(plan)


def with_some_bought() -> Plan:
    """Ten plants were bought in already."""
    plan = late_and_short()
    (one,) = plan.plantings
    return evolve(plan, plantings=(evolve(one, actual=evolve(one.actual or Actual(), bought=10)),))


CASES: dict[str, tuple[Callable[[], Plan], date]] = {
    "late and short": (late_and_short, date(2025, 4, 21)),
    "short": (lambda: late_and_short(is_late=False), date(2025, 4, 21)),
    "some bought in": (with_some_bought, date(2025, 4, 21)),
    "a row failed": (lambda: read(failed_row()), date(2027, 5, 7)),
    "more": (lambda: read(changed_order()), MAY),
    "more, in trays": (lambda: read(changed_order(is_out=False)), MAY),
    "more, no room": (lambda: read(changed_order(length="6 m")), MAY),
    "fewer": (lambda: read(changed_order(45, is_out=False)), MAY),
    "withdrawn": (lambda: read(changed_order(0, is_out=False)), MAY),
    "too late": (lambda: read(changed_order(60, "2027-06-12")), MAY),
    "too early": (lambda: read(changed_order(60, "2027-07-03", is_out=False)), MAY),
    "few cells": (few_cells, MAY),
    "free early": (lambda: plan_of({"harvested": "2027-06-10", "cleared": "2027-06-12"}, AFTER), date(2027, 6, 13)),
    "sooner": (lambda: plan_of({"harvested": "2027-06-10", "cleared": "2027-06-12"}, AFTER), date(2027, 6, 22)),
    "late, in part": (lambda: read(late({"sown": "2027-04-20"})), date(2027, 5, 10)),
    "late, in several beds": (
        lambda: read(late({"sown": "2027-04-20"}, **beside("80 cm", "1.1 m"))),
        date(2027, 5, 10),
    ),
    "late, all in other beds": (lambda: read(late({"sown": "2027-04-20"}, **beside("2.2 m"))), date(2027, 5, 10)),
    "late, followed": (lambda: read(late_and_followed()), date(2027, 5, 10)),
    "day past": (lambda: read(late({"sown": "2027-04-20", "stand": 100})), date(2027, 6, 15)),
    "held longer": (lambda: followed(200), JULY),
    "held, other beds": (lambda: followed(100), JULY),
    "few stand": (lambda: plan_of({"standing": 40, "counted": "2027-05-20"}), date(2027, 5, 21)),
}


SUMS = frozenset(("too_long", "still_too_long", "markets_missed"))
"""What is never told without its sum."""


def told(plan: Plan, trouble: Trouble) -> Iterator[tuple[str, set[str]]]:
    """What is told of a trouble and of each remedy, with the figures of the numbers that explain it."""
    for one in trouble.remedies:
        numbers = (*one.numbers(), *trouble.numbers())
        assert all(number.terms for number in numbers if number.value and number.name in SUMS)
        lines = workings_of(numbers, plan.place.units, plan.place.money)
        values = {figure for line in lines for figure in figures(line.value)}
        for words in (*trouble.says, trouble.title, *trouble.columns, *one.cells, one.says, *one.stakes):
            yield without_names(words, plan), values


@pytest.mark.parametrize("name", CASES)
def test_all_that_is_told_of_planning_again_has_its_working(name: str) -> None:
    make, today = CASES[name]
    plan = make()
    troubles = [trouble_of(plan, one) for one in plan_again(plan, today, Fraction(1, 20))]
    assert [one for one in troubles if one.remedies]
    for trouble in troubles:
        for words, values in told(plan, trouble):
            assert not figures(words) - values, (words, sorted(figures(words) - values))


def counts(one: Setback) -> dict[str, int | None]:
    """Counts of a setback beside the names of the numbers that they come from."""
    return {
        "short": one.lacks or None, "settable": one.settable, "cells_sown": one.sown, "planted": one.planned,
        "bed_late": one.late or None, "age": one.age, "empty_row": one.empty or None,
        "ready": one.ready.toordinal() if one.ready else None,
        "market_made": one.market.toordinal() if one.market else None,
    }  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_the_counts_of_a_setback_are_those_of_its_numbers(name: str) -> None:
    make, today = CASES[name]
    for one in plan_again(make(), today, Fraction(1, 20)):
        found: dict[str, Number] = {number.name: number for number in reversed(one.numbers)}
        for key, value in counts(one).items():
            if key in found and value is not None and (key, name) != ("settable", "few cells"):
                assert found[key].value == value, key
        for number in one.numbers:
            assert all(each.value is not None for each in numbers_in(number))


@settings(max_examples=max(4, settings().max_examples // 10), deadline=None)
@given(st.integers(100, 700), st.integers(1, 60))
def test_all_that_is_told_of_ways_out_has_its_working(beetroot: int, lettuce: int) -> None:
    orders = [{"id": "o", "crop": "c", "units": lettuce, "on": "2027-06-19"},
              {"id": "o2", "crop": "d", "units": beetroot, "on": "2027-07-03"}]  # fmt: skip
    plan = plan_of({}, AFTER, orders=orders)
    for lack in lacks(plan):
        for words, values in told(plan, ways_trouble(plan, lack)):
            assert not figures(words) - values, (words, sorted(figures(words) - values))


def assert_explained(plan: Plan, kind: str) -> None:
    """Of the ways out that are of a kind, of which there are some, all figures have their working."""
    (lack,) = lacks(plan)
    trouble = ways_trouble(plan, lack)
    some = tuple(one for one in trouble.remedies if kind in one.says)
    assert some
    for words, values in told(plan, evolve(trouble, remedies=some)):
        assert not figures(words) - values, (words, sorted(figures(words) - values))


@pytest.mark.parametrize(("length", "keep_clear"), [("24 m", "20 cm"), ("16 m", "20 cm"), ("12 m", "45 cm")])
def test_rows_that_stand_closer_beside_kept_places_have_their_counts_explained(length: str, keep_clear: str) -> None:
    """As "4 × 53 + 33 = 245": in the row with kept places 20 of its 53 places are left empty."""
    parts = relay(length)
    parts["plantings"][1] |= {"keep_clear": keep_clear}
    assert_explained(read(parts), "closer")


def test_all_that_is_told_of_a_longer_block_has_its_working() -> None:
    assert_explained(read(relay("24 m")), "longer block")
