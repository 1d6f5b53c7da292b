"""Room is offered to one crop also where plantings stand for orders."""

import pytest

from gardenplot.files import sample
from gardenplot.filling.offers import offers_for
from gardenplot.plan.file import read_plan


@pytest.mark.parametrize("name", ["kestrel-howe", "larch-bend", "otter-steep", "tarn-garth"])
def test_a_crop_is_offered_room_beside_plantings_that_stand_for_orders(name: str) -> None:
    plan = read_plan(sample(f"{name}.gardenplot")).plan
    assert any(one.order for one in plan.plantings)
    crop = plan.crops[0].id
    offers = offers_for(plan, plan.beds[0].id, None, crop)
    assert {one.crop.id for one in (*(offer.one for offer in offers.some), *dict(offers.none))} == {crop}
