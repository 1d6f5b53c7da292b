"""Planning again over any counts, losses and late beds: valid plans, truly counted, nothing in the ground touched."""

import json
from datetime import date
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.again_words import answer_words, moved_words, setback_words
from gardenplot.filling.again import AnswerKind, plan_again
from gardenplot.filling.moved import moved
from gardenplot.findings import Kind, find_all
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.valid import faults

Fields = dict[str, Any]
TODAY = date(2027, 4, 19)


def plan_of(actual: Fields, usable: str | None = None, beds: int = 1, germination: str = "80 %") -> Plan:
    """150 fennel for 10 July from trays, in beds of 15 m, with beside it something in the ground."""
    first: Fields = {"id": "b1", "name": "Bed 1", "length": "15 m", "width": "80 cm"}
    parts: Fields = {
        "beds": [first | ({"usable_from": usable} if usable else {}),
                 *({"id": f"b{number}", "name": f"Bed {number}", "length": "15 m", "width": "80 cm"}
                   for number in range(2, beds + 1))],
        "crops": [
            {"id": "f", "name": "Fennel", "in_row": "25 cm", "row_spacing": "30 cm", "edge": "10 cm",
             "field_loss": "10 %", "spare": "20 %", "germination": germination, "tray_cells": 128,
             "field_days": 60, "raising_days": 35}
        ],
        "orders": [{"id": "o", "crop": "f", "units": 120, "on": "2027-07-10"}],
        "plantings": [
            {"id": "g", "bed": "b1", "crop": "f", "from": "13 m", "length": "1 m",
             "actual": {"set_out": "2027-04-01"}},
            {"id": "p", "bed": "b1", "crop": "f", "from": "0 m", "order": "o", "actual": actual},
        ],
    }  # fmt: skip
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


@settings(max_examples=40)
@given(
    st.integers(0, 200), st.integers(0, 60), st.integers(0, 40),
    st.sampled_from((None, "2027-05-01", "2027-05-20", "2027-06-20")), st.integers(1, 2),
)  # fmt: skip
def test_every_answer_is_a_valid_plan_that_says_what_stands(
    stand: int, loss: int, today: int, usable: str | None, beds: int
) -> None:
    plan = plan_of({"stand": stand}, usable, beds)
    before = {(one.kind, one.planting) for one in find_all(plan) if one.cannot_be_done}
    day = date.fromordinal(TODAY.toordinal() + today)
    found = plan_again(plan, day, Fraction(loss, 100))
    assert found == plan_again(plan, day, Fraction(loss, 100))
    for setback in found:
        assert setback.lacks == max(0, setback.planned - int(stand * (1 - Fraction(loss, 100))))
        assert setback_words(plan, setback)
        assert [len(one.moved) for one in setback.answers] == sorted(len(one.moved) for one in setback.answers)
        for answer in setback.answers:
            assert not list(faults(answer.plan))
            assert {(one.kind, one.planting) for one in find_all(answer.plan) if one.cannot_be_done} <= before
            assert not [one for one in find_all(answer.plan) if one.kind is Kind.BED_LATE]
            stands = sum(
                each.plants for laid in lay_out_plan(answer.plan) for each in laid.layouts if each.planting != "g"
            )
            assert stands == answer.plants
            assert answer.moved == moved(plan, answer.plan)
            assert "g" not in {one.planting for one in answer.moved}
            assert answer_words(answer)
            assert len(moved_words(answer)) == len(answer.moved)
            if answer.kind is AnswerKind.BUY_IN:
                assert not [one for one in plan_again(answer.plan, day, Fraction(loss, 100)) if one.lacks]


def test_what_is_bought_in_is_set_out_beside_what_came_up() -> None:
    """100 of some stand, 90 with a tenth lost on the way, and 20 bought ones with none: 110 of 120 to set out."""
    (setback,) = plan_again(plan_of({"stand": 100, "bought": 20}), TODAY, Fraction(1, 10))
    assert (setback.settable, setback.lacks) == (110, setback.planned - 110)
    (said, *_rest) = setback_words(plan_of({"stand": 100, "bought": 20}), setback)
    assert "20 bought in" in said


def test_a_late_bed_alone_holds_the_plants_for_a_later_market_or_finds_another_bed() -> None:
    (setback,) = plan_again(plan_of({"sown": "2027-04-05"}, "2027-05-20", beds=2), TODAY)
    assert (setback.late, setback.lacks, setback.age, setback.is_over_age) == (10, 0, 45, True)
    later, other = setback.answers
    assert (later.kind, later.market, later.missed) == (
        AnswerKind.LATER, date(2027, 7, 24), (date(2027, 7, 10), date(2027, 7, 17)),
    )  # fmt: skip
    assert (other.kind, other.layout.bed, other.market, other.missed) == (
        AnswerKind.OTHER_BED, "b2", date(2027, 7, 10), (),
    )  # fmt: skip


def test_the_two_deviations_combine() -> None:
    """Sown again on 19 April it is ready on 23 July, two markets late; in a late bed the rest is no earlier."""
    on_time = _sown_again(plan_of({"stand": 100}))
    late = _sown_again(plan_of({"stand": 100}, "2027-05-20"))
    assert (on_time, late) == (2, 0)


def _sown_again(plan: Plan) -> int:
    (setback,) = plan_again(plan, TODAY)
    (sown,) = [one for one in setback.answers if one.kind is AnswerKind.SOW_AGAIN]
    return sown.costs


@pytest.mark.parametrize("actual", [{"stand": 200}, {}])
def test_nothing_is_asked_where_nothing_deviates(actual: Fields) -> None:
    assert plan_again(plan_of(actual), TODAY) == ()


def test_a_bed_that_is_late_is_told_until_the_planting_went_in_and_is_kept_in_the_file() -> None:
    plan = plan_of({}, "2027-05-20")
    (told,) = [one for one in find_all(plan) if one.kind is Kind.BED_LATE]
    assert (told.planting, told.amount, told.cannot_be_done) == ("p", 10, False)
    assert plan_of_text(text_of(plan)).plan == plan
    went_in = plan_of({"set_out": "2027-05-10"}, "2027-05-20")
    assert not [one for one in find_all(went_in) if one.kind is Kind.BED_LATE]


@pytest.mark.parametrize("stand", [90, 6])
def test_spread_out_is_offered_only_where_as_many_plants_find_a_place_inside_the_bed(
    stand: int,
) -> None:
    """Leek in an L of which one arm is half as wide: 90 plants in ranks of both arms would leave 28 outside it."""
    parts: Fields = {
        "beds": [{"id": "b", "name": "Corner", "head_margin": "20 cm", "outline": [
            ["0 m", "0 m"], ["7.2 m", "0 m"], ["7.2 m", "80 cm"], ["3.4 m", "80 cm"], ["3.4 m", "1.6 m"],
            ["0 m", "1.6 m"],
        ]}],
        "crops": [{"id": "l", "name": "Leek", "in_row": "15 cm", "row_spacing": "30 cm", "tray_cells": 240}],
        "plantings": [{"id": "p", "bed": "b", "crop": "l", "from": "20 cm", "plants": 127,
                       "actual": {"sown": "2027-03-15", "cells": 175, "stand": stand}}],
    }  # fmt: skip
    (setback,) = plan_again(plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan, TODAY)
    (spread,) = [one for one in setback.answers if one.kind is AnswerKind.SPREAD]
    assert spread.plants == stand
    assert spread.layout.end <= 7_200_000_000
    assert spread.layout.grid.in_row > 150_000_000
