"""What all answers together come to, as sums of what each of them does.

Worked by hand as S6: of 168 in one bed 152 stand, 16 short; in the other 114, 54 short.
"""

from datetime import date
from fractions import Fraction

from gardenplot.drawing.again_together import Picks, answered
from gardenplot.filling.together import Aim
from gardenplot.working import Number
from tests.scenarios.again_plans import both_short


def totals(aim: Aim | None) -> dict[str, Number]:
    """The first three numbers of all answers together, by their names."""
    remedy = answered(both_short(), date(2025, 4, 21), Fraction(1, 20), Picks(aim=aim)).remedy
    assert remedy.numbers is not None
    found = [*remedy.numbers()]
    return {number.name: number for number in found[:3]}


def test_plants_to_buy_for_several_answers_are_added_up_each_with_its_name() -> None:
    buy = totals(None)["buy"]
    assert (buy.whole, buy.formula) == (70, "buy_1 + buy_2")
    assert [(term.whole, term.label) for term in buy.terms] == [
        (16, "A Bulb fennel"),
        (54, "B Bulb fennel"),
    ]


def test_units_that_are_short_are_added_up_by_order() -> None:
    short = totals(Aim.NOTHING_BOUGHT)["units_short"]
    assert short.formula == "units_short_1 + units_short_2"
    assert short.value == sum(term.value or 0 for term in short.terms)
    assert {term.formula for term in short.terms} == {"larger(ordered − to_sell, 0)"}
