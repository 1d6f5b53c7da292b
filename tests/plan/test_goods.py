"""What is bought says how many seeds or plants it is, and is no packet that would be taken for one."""

import pytest

from gardenplot.errors import PlanError
from gardenplot.plan import Good, GoodKind
from gardenplot.plan.goods_edits import add_supply
from gardenplot.units import parse_amount
from tests.plans import metric_plan


@pytest.mark.parametrize(
    ("kind", "typed", "is_told"),
    [
        (GoodKind.SEED, "2 packets", True),
        (GoodKind.SEED, "1 bag of seed", True),
        (GoodKind.SEED, "250 seeds", False),
        (GoodKind.SEED, "250", False),
        (GoodKind.SEED, "10 g", False),
        (GoodKind.PLANT, "3 trays", True),
        (GoodKind.PLANT, "24 plants", False),
        (GoodKind.TRAY, "7 trays", False),
        (GoodKind.WEIGHT, "2 bags", False),
    ],
)
def test_packets_are_not_counted_as_seeds_nor_trays_as_plants(kind: GoodKind, typed: str, is_told: bool) -> None:
    plan, amount = metric_plan(), parse_amount(typed)
    crop = plan.crops[0].id if kind in (GoodKind.SEED, GoodKind.PLANT) else None
    for good in (Good("g", kind, crop=crop, in_store=amount), Good("g", kind, crop=crop, pack=amount)):
        if is_told:
            with pytest.raises(PlanError, match=f"“{typed}” does not say how many"):
                add_supply(plan, good)
        else:
            assert add_supply(plan, good).goods[-1] == good
