"""Other fillings differ from the first in what is met, not in where it stands."""

from datetime import date

from attrs import evolve
from hypothesis import given, settings

from gardenplot.filling import Weights, fill
from gardenplot.filling.others import Kind, others
from gardenplot.plan import Order, Plan, Wish
from tests.plans import metric_plan, plans

TURNS = 60


def torn() -> Plan:
    """One bed with room for an order's leeks or for wishes, not for both: 15 m between its margins less nothing."""
    plan = metric_plan()
    tunnel = plan.beds[0]
    leeks = Order("o1", "leek", units=380, on=date(2027, 9, 4))
    wish = Wish("w1", "pak-choi", least=60, most=170, earliest=date(2027, 4, 9), latest=date(2027, 9, 1), worth=1.0)
    return evolve(plan, beds=(tunnel,), plantings=(), orders=(leeks,), wishes=(wish,))


def test_an_order_that_takes_all_the_ground_or_the_wish_in_its_place_is_offered() -> None:
    plan = torn()
    first = fill(plan, TURNS, Weights())
    found = others(plan, first, Weights(), TURNS)
    assert found
    assert {one.kind for one in found} <= {*Kind}
    assert all(one.filling.plan != first.plan for one in found)


def test_where_all_is_met_there_is_no_other() -> None:
    plan = evolve(torn(), orders=())
    first = fill(plan, TURNS, Weights())
    assert not first.lacking
    assert others(plan, first, Weights(), TURNS) == ()


@settings(max_examples=15)
@given(plans())
def test_others_are_told_apart_by_what_they_meet(plan: Plan) -> None:
    first = fill(plan, 10, Weights())
    met = [
        {(one.wanted, bool(one.plants)) for one in each.lacking} | {(one.wanted, None) for one in each.placed}
        for each in (first, *(one.filling for one in others(plan, first, Weights(), 10)))
    ]
    assert all(one not in met[:number] for number, one in enumerate(met))
