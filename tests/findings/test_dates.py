"""A block that is out of the ground before it goes in is found, whoever gives the dates."""

import json

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import Kind, find_all
from gardenplot.plan.file import plan_of_text


def test_a_typed_day_out_before_the_orders_day_in_cannot_be_done() -> None:
    plan = plan_of_text(
        json.dumps(
            {
                "gardenplot": 1,
                "beds": [{"id": "b", "name": "Bed", "length": "10 m", "width": "1 m"}],
                "crops": [{"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "30 cm", "field_days": 30}],
                "orders": [{"id": "o", "crop": "c", "units": 20, "on": "2027-06-21"}],
                "plantings": [{"id": "p", "bed": "b", "crop": "c", "order": "o", "out": "2027-05-01"}],
            }
        )
    ).plan
    (finding,) = [one for one in find_all(plan) if one.cannot_be_done]
    assert (finding.kind, finding.planting) == (Kind.DATES, "p")
    assert says(plan, finding, looks(plan)) == "is out of the ground before it goes in"
