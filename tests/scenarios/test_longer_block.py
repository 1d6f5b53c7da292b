"""A block that leaves places empty is offered longer, so that all that is ordered stands beside them.

Worked by hand from the rules of rows, ranks and places that are kept; place, crops and days are invented.
"""

import json
from typing import Any

import pytest

from gardenplot.drawing.ways_words import shortage_words, way_words
from gardenplot.filling.giving_way import WayKind
from gardenplot.filling.ways_out import Shortage, shortages
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, read_plan
from tests.scenarios.again_plans import SCENARIOS
from tests.scenarios.planned_again import Again, again, the_answer, the_setback
from tests.scenarios.test_commands import assert_holds, cm

__all__ = ["again"]


def relay(length: str, reserved: str = "leave places empty", **more: Any) -> dict[str, Any]:
    """236 lettuces: 236 / 0.9 = 262.2, 263; (100 - 24) / 25 = 3.04, 4 rows; 66 ranks of 25 cm, 264 in 16.50 m.

    Cucumbers in the middle of its first 5 m, 10 at 50 cm; within 20 cm of each stand 4 lettuces, 12.5 cm away along
    and across: 40 of 264, so 224 stand, 39 short.
    """
    return {
        "gardenplot": 1,
        "place": {"name": "Weir Bank", "units": "metric"},
        "beds": [{"id": "b1", "name": "Tunnel", "length": length, "width": "100 cm", "head_margin": "50 cm",
                  "foot_margin": "50 cm"}],
        "crops": [
            {"id": "c", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "25 cm", "edge": "12 cm",
             "field_loss": "10 %", "germination": "90 %", "tray_cells": 84, "field_days": 45, "raising_days": 28},
            {"id": "t", "name": "Cucumber", "in_row": "50 cm", "row_spacing": "50 cm"},
        ],
        "orders": [{"id": "o", "crop": "c", "units": 236, "on": "2027-06-05"}],
        "plantings": [
            {"id": "p", "bed": "b1", "crop": "c", "from": "50 cm", "order": "o", "reserved": reserved,
             "out": "2027-06-10"} | more,
            {"id": "q", "bed": "b1", "crop": "t", "from": "50 cm", "length": "5 m", "rows": 1,
             "in_ground": "2027-05-20", "keep_clear": "20 cm"},
        ],
    }  # fmt: skip


def read(parts: dict[str, Any]) -> Plan:
    return plan_of_text(json.dumps(parts)).plan


def short(parts: dict[str, Any]) -> Shortage:
    (found,) = shortages(read(parts))
    return found


def test_a_block_beside_kept_places_is_offered_longer_by_what_it_lacks() -> None:
    """263 and 40 places that are left empty are 303, 76 ranks of 4: 304 in 19.00 m, 264 lettuces, 2.50 m more.

    23.50 - 19.50 = 4.00 m are left. 0.9 x 264 = 237, as many as are wanted.
    """
    found = short(relay("24 m"))
    assert (found.plants, found.units, found.length) == (39, 35, 0)
    words = "236 Lettuce for Sat 5 Jun 2027: 39 plants short beside the places that are left empty, 35 of the order"
    assert shortage_words(read(relay("24 m")), found) == words
    way = found.ways[0]
    assert (way.kind, way.left, way.more) == (WayKind.LONGER, 4_000_000_000, 2_500_000_000)
    assert way_words(way).replace("\u2009", " ") == (
        "Lettuce in a longer block, 264 plants in 19.00 m: 236 of 236 Lettuce; 2.50 m more of bed; "
        "4.00 m of bed left; 1 change"
    )
    assert not shortages(way.plan)


def test_where_a_row_is_left_empty_it_grows_as_well() -> None:
    """Rows 2 and 3 are left empty: 2 x 66 = 132 stand. 132 ranks, 33.00 m, have 264 in two rows; 131 have 262."""
    way = short(relay("40 m", "leave row empty")).ways[0]
    assert (way.kind, way.more) == (WayKind.LONGER, 16_500_000_000)
    assert [part.end - part.start for part in way.parts] == [33_000_000_000]


@pytest.mark.parametrize("length", ["19 m", "20.4 m"])
def test_no_longer_block_is_offered_without_room_behind_it(length: str) -> None:
    """It needs 0.50 to 19.50 m and the margin of 0.50 m behind that: 20.00 m of bed."""
    kinds = [one.kind for one in short(relay(length)).ways]
    assert (WayKind.LONGER in kinds) == (length == "20.4 m")


def test_s3_has_no_room_for_a_longer_block_and_none_is_needed() -> None:
    """B of S3: 184 of 174 needed stand with the places left empty, in all the bed. C: 36 plants, 34 heads short."""
    text = (SCENARIOS / "s3.gardenplot").read_text(encoding="utf-8")
    assert not shortages(read_plan(SCENARIOS / "s3.gardenplot").plan)
    plan = json.loads(text)
    plan["plantings"][0]["reserved"] = "leave places empty"
    assert not shortages(read(plan))
    plan["plantings"][0]["reserved"] = "leave row empty"
    found = short(plan)
    assert (found.plants, found.units) == (174 - 138, 160 - 126)
    assert WayKind.LONGER not in [one.kind for one in found.ways]


def test_what_is_sown_for_it_is_planted_in_the_longer_block(again: Again) -> None:
    """39 short with 224 planned: in 19.00 m stand 264. 263 places alone would have left 223."""
    found = the_setback(again(relay("24 m", actual={"sown": "2027-03-24"}), "2027-03-30"), "more is ordered")
    assert_holds(the_answer(found, "longer block"), plants=264, length_mm=cm(1900), units=237, units_short=0)
