"""The plan of S5 with a market day more, and that of S6 as it came about: few seedlings, and a bed that is late."""

import json
from datetime import date
from pathlib import Path

from attrs import evolve

from gardenplot.plan import Actual, Plan
from gardenplot.plan.file import plan_of_text, read_plan

SCENARIOS = Path(__file__).parent


def two_short() -> Plan:
    """Coriander that does not fit, and cabbage that is ordered for a second day and not planted for it."""
    plan = read_plan(SCENARIOS / "s5.gardenplot").plan
    cabbage, coriander = plan.orders
    return evolve(plan, orders=(evolve(cabbage, times=2, every_days=7), coriander))


def late_and_short(*, is_late: bool = True) -> Plan:
    """161 of 256 cells usable on 21 April, and the bed ten days late or not."""
    plan = json.loads((SCENARIOS / "s6.gardenplot").read_text(encoding="utf-8"))
    plan["plantings"][0]["actual"] = {"sown": "2025-04-07", "stand": 161}
    if is_late:
        plan["beds"][0]["usable_from"] = "2025-05-22"
    return plan_of_text(json.dumps(plan)).plan


def two_deviate() -> Plan:
    """The fennel of S6 and the same in a second bed, both late."""
    plan = late_and_short()
    bed = evolve(plan.beds[0], id="f2", name="Second bed")
    other = evolve(
        plan.plantings[0], id="p2", bed="f2", order=None, plants=90, in_ground=date(2025, 5, 12), actual=None
    )
    return evolve(plan, beds=(*plan.beds, bed), plantings=(*plan.plantings, other))


def both_short() -> Plan:
    """The fennel of S6, and as much in a second bed for an order of its own, of which 120 of 256 cells are usable."""
    plan = two_deviate()
    (first, other), (order,) = plan.plantings, plan.orders
    other = evolve(
        other, plants=None, order="second", in_ground=None, actual=Actual(sown=date(2025, 4, 7), stand=120)
    )
    return evolve(plan, orders=(order, evolve(order, id="second")), plantings=(first, other))
