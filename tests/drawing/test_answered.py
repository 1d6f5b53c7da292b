"""The plan after an answer of planning again: every list says what it said, and no done job is reckoned anew."""

from datetime import date
from fractions import Fraction

import pytest

from gardenplot.drawing.count_list import count_turns
from gardenplot.drawing.date_list import Job, date_rows
from gardenplot.drawing.days import missing_words
from gardenplot.drawing.label_words import tray_labels
from gardenplot.drawing.sowing_list import SowRow, sow_days
from gardenplot.filling.again import Answer, AnswerKind, plan_again
from gardenplot.plan import GoodKind, Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.supplies.shopping import shopping
from tests.scenarios.again_plans import late_and_short

TODAY, LOSS = date(2025, 4, 21), Fraction(5, 100)


def answer(kind: AnswerKind, *, is_late: bool = False) -> Answer:
    """An answer to the setbacks of S6 on 21 April."""
    (setback,) = plan_again(late_and_short(is_late=is_late), TODAY, LOSS)
    (found,) = [one for one in setback.answers if one.kind is kind]
    return found


def sowing(plan: Plan, planting: str) -> SowRow:
    (found,) = [row for day in sow_days(plan) for row in day.rows if row.planting == planting]
    return found


def test_what_is_sown_again_is_so_many_cells_as_the_answer_said_everywhere() -> None:
    """28 cells for 16 places, and not the 24 that the packet's 85 % and 20 % spare would make."""
    plan = answer(AnswerKind.SOW_AGAIN).plan
    row = sowing(plan, "p1-2")
    assert row.amount == "28 cells in 1 tray of 128"
    assert row.more[0] == "for 16 places · 1 seed in a cell, 28 seeds"
    (label,) = [one for one in tray_labels(plan) if one.planting == "p1-2"]
    assert label.lines[0] == "tray 1 of 1 · 28 cells"
    assert [one.amount for one in date_rows(plan) if one.about == "p1-2" and one.job is Job.SOW] == [
        "28 seeds, 1 tray"
    ]
    assert [one.needed.whole for one in shopping(plan) if one.kind is GoodKind.SEED] == [28]
    assert plan_of_text(text_of(plan)).plan == plan


@pytest.mark.parametrize("kind", [AnswerKind.SHORT, AnswerKind.SPREAD, AnswerKind.SOW_AGAIN])
def test_what_was_sown_stays_as_it_was_sown_whatever_is_set_out(kind: AnswerKind) -> None:
    """Two whole trays of 128 were filled for 168 plants; that 152 are set out makes them no fewer."""
    plan = answer(kind).plan
    row = sowing(plan, "p1")
    assert row.is_done
    assert row.amount == "256 cells in 2 trays of 128"
    assert row.more[0] == "for 152 places · 1 seed in a cell, 256 seeds"
    labels = [one.lines[0] for one in tray_labels(plan) if one.planting == "p1"]
    assert labels == ["tray 1 of 2 · 128 cells", "tray 2 of 2 · 128 cells"]


LATE, ALLOWED = (
    "150 ordered for Sat 26 Jul, too late for 12 Jul, 19 Jul,", "167 must be planted with 10 % loss, 1 to spare"
)  # fmt: skip


@pytest.mark.parametrize(
    ("is_late", "first", "second"),
    [
        (False, "150 ordered for Sat 12 Jul: 167 must be planted with 10 % loss, 15 plants short, B is late",
         "14 of 150 ordered for Sat 26 Jul, too late for 12 Jul, 19 Jul, the rest from A: "
         "16 must be planted with 10 % loss, none to spare"),
        (True, f"{LATE} with B: {ALLOWED}", f"{LATE} with A: {ALLOWED}"),
    ],
)  # fmt: skip
def test_what_is_ready_too_late_is_told_for_the_market_that_it_makes(is_late: bool, first: str, second: str) -> None:
    """16 plants that are ready on 25 July make Sat 26 July; for 12 July 152 of 167 stand, which leave 136 of 150
    heads (152 x 0.9 = 136.8): 14 heads and 15 plants are left to be made up, and none of the others stands then."""
    plan = answer(AnswerKind.SOW_AGAIN, is_late=is_late).plan
    ready = {row.about: f"{row.day:%d %b}: {row.amount_told}" for row in date_rows(plan) if row.job is Job.READY}
    in_time = (
        "21 Jul: 152 plants for Sat 26 Jul, too late for 12 Jul, 19 Jul"
        if is_late
        else "11 Jul: 152 plants for Sat 12 Jul"
    )
    assert ready == {"p1": in_time, "p1-2": "25 Jul: 16 plants for Sat 26 Jul, too late for 12 Jul, 19 Jul"}
    (turn,) = count_turns(plan)
    assert [block.needs for block in turn.blocks] == [first, second]


def test_a_market_day_says_what_is_too_late_for_it_and_the_later_one_what_is_left_of_its_order() -> None:
    """By hand, as above: 16 plants make 26 July, where 14 heads are left of 150; the ground is free on that day."""
    plan = answer(AnswerKind.SOW_AGAIN).plan
    rows = [row for row in date_rows(plan) if row.job is Job.MARKET]
    assert [(row.day_words, row.name, row.amount_told) for row in rows] == [
        ("Sat 12 Jul", "A Bulb fennel", "150 ordered, B is late"),
        ("Sat 26 Jul", "B Bulb fennel", "14 of 150 ordered, the rest from A"),
    ]
    assert len({row.about for row in rows}) == 2
    late = answer(AnswerKind.SOW_AGAIN, is_late=True).plan
    assert [row.day_words for row in date_rows(late) if row.job is Job.FREE] == ["Sat 26 Jul", "Sat 26 Jul"]


def test_many_market_days_that_are_missed_are_told_by_their_number() -> None:
    days = [date(2025, 7, 5 + number) for number in range(4)]
    assert missing_words(days[:3]) == "too late for 5 Jul, 6 Jul, 7 Jul"
    assert missing_words(days) == "too late for 4 market days from 5 Jul on"
