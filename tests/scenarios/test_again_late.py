"""Planning again when a day is past or a bed is late: no answer begins in the past, and a part goes where it fits.

Worked by hand from the rules of dates, rows and ranks; place, crop and days are invented.
"""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from gardenplot.drawing.again_table import trouble_of
from gardenplot.filling.again import plan_again
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text
from tests.scenarios.planned_again import Again, again, kinds, the_answer, the_setback
from tests.scenarios.test_commands import assert_holds, cm

__all__ = ["again"]
Fields = dict[str, Any]
LETTUCE: Fields = {
    "id": "c", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "30 cm", "edge": "15 cm", "field_loss": "10 %",
    "spare": "10 %", "germination": "90 %", "tray_cells": 84, "field_days": 45, "raising_days": 28,
}  # fmt: skip
CARROT: Fields = {
    "id": "d", "name": "Carrot", "in_row": "5 cm", "row_spacing": "30 cm", "edge": "15 cm", "field_days": 60,
    "establish": "direct",
}  # fmt: skip


def late(actual: Fields | None = None, usable: str | None = "2027-05-22", **more: Any) -> Fields:
    """108 lettuces for Sat 3 July: 108 / 0.9 = 120, 3 rows of 40 in 10 m; ready 2 July, out 18 May, sown 20 April.

    Its bed of 12 m can be used from 22 May on, 4 days late; the other one, of 8 m, holds 3 rows of 32.
    """
    return {
        "gardenplot": 1,
        "place": {"name": "Weir Bank", "units": "metric"},
        "beds": [
            {"id": "b1", "name": "Low bed", "length": "12 m", "width": "90 cm"}
            | ({"usable_from": usable} if usable else {}),
            {"id": "b2", "name": "High bed", "length": "8 m", "width": "90 cm"},
        ],
        "crops": [LETTUCE, CARROT],
        "orders": [{"id": "o", "crop": "c", "units": 108, "on": "2027-07-03"}],
        "plantings": [
            {"id": "p", "bed": "b1", "crop": "c", "from": "0 m", "order": "o"}
            | ({"actual": actual} if actual else {})
        ],
    } | more  # fmt: skip


def test_no_answer_begins_before_the_day_that_is_asked(again: Again) -> None:
    """On 15 June nothing is recorded since the count: set out then, it is ready in 45 days, on 30 July, for the 31st.

    100 of 168 cells: 20 short. What is sown on 15 June is set out on 13 July, ready on 27 August, for 28 August, 4
    market days after 31 July.
    """
    found = the_setback(again(late({"sown": "2027-04-20", "stand": 100}), "2027-06-15"), "seedlings or bed")
    assert_holds(
        found, bed_late_days=4, past_days=24, set_out="2027-06-15", age_days=56, market="2027-07-31", short=20
    )
    assert "to be set out Tue 18 May 2027, 28 days ago, and nothing is recorded" in " ".join(found["says"])
    assert "Low bed can be used from Sat 22 May 2027, 4 days late" in found["says"][1]
    for kind in ("buy in", "plant short", "spread out"):
        assert_holds(
            the_answer(found, kind), set_out="2027-06-15", ready="2027-07-30", market="2027-07-31",
            missed=["2027-07-03", "2027-07-10", "2027-07-17", "2027-07-24"],
        )  # fmt: skip
    sown = the_answer(found, "sow again")
    assert_holds(sown, set_out="2027-07-13", ready="2027-08-27", market="2027-08-28", costs_markets=4)


@pytest.mark.parametrize(("today", "market"), [("2027-05-18", None), ("2027-05-19", "2027-07-10")])
def test_plants_whose_day_is_past_are_held_for_the_next_market(again: Again, today: str, market: str | None) -> None:
    """Without a late bed: ready on 2 July where they go in by 18 May, a day later too late for the 3rd."""
    said = again(late({"sown": "2027-04-20"}, None), today)["setbacks"]
    assert [one["market"] for one in said] == ([market] if market else [])
    if market:
        (later,) = said[0]["answers"]
        assert_holds(later, kind="later market", set_out=today, missed=["2027-07-03"])


def test_a_planting_of_which_nothing_is_recorded_may_have_been_done(again: Again) -> None:
    assert again(late(None, None), "2027-06-15")["setbacks"] == []


def test_what_was_sown_by_its_day_is_as_old_as_it_then_is(again: Again) -> None:
    """Sown on 20 April by the plan, set out on 22 May: 32 days old. Asked on 19 April it is sown 28 days before that.

    Twelve days later, on 1 May, that would be past: whoever sowed did so on the 20th.
    """
    assert_holds(the_setback(again(late(), "2027-05-01"), "seedlings or bed"), age_days=32, set_out="2027-05-22")
    assert_holds(the_setback(again(late(), "2027-04-19"), "seedlings or bed"), age_days=28, set_out="2027-05-22")


def test_a_bed_that_is_late_is_late_for_what_is_sown_in_it(again: Again) -> None:
    """Carrots typed for 18 May, ready in 60 days: in on 22 May, ready on 21 July; or elsewhere on the 18th."""
    carrots = {"id": "p", "bed": "b1", "crop": "d", "from": "0 m", "length": "3 m", "in_ground": "2027-05-18"}
    found = the_setback(again(late(plantings=[carrots]), "2027-05-01"), "seedlings or bed")
    assert_holds(found, bed_late_days=4, set_out="2027-05-22", ready="2027-07-21")
    assert kinds(found) == ["later market", "another bed"]
    assert_holds(the_answer(found, "another bed"), set_out="2027-05-18", ready="2027-07-17")


def test_a_part_that_fits_another_bed_goes_in_on_its_day(again: Again) -> None:
    """96 of 120 in High bed, 86 heads for 3 July, 22 short; 24, 8 ranks in 2 m, wait and make the 10th."""
    found = the_setback(again(late({"sown": "2027-04-20"}), "2027-05-10"), "seedlings or bed")
    assert kinds(found) == ["later market", "another bed"]
    parted = the_answer(found, "another bed")
    assert_holds(parted, plants=120, units=108, units_short=0, market="2027-07-10", length_mm=cm(200))
    assert_holds(parted["part"], bed="b2", plants=96, from_mm=0, to_mm=cm(800), in_ground="2027-05-18")
    words = (
        "Plant 96 plants in High bed on the day as planned, the other 24 late in Low bed: 86 for Sat 3 Jul 2027, 22"
    )
    assert parted["says"].startswith(f"{words} short; ")
    assert [(one["bed"], one["end"], one["old_mm"], one["new_mm"]) for one in parted["stakes"]] == [
        ("b1", "ends", cm(1000), cm(200)), ("b2", "begins", None, 0), ("b2", "ends", None, cm(800))
    ]  # fmt: skip


def beside(*lengths: str, **bed: Any) -> Fields:
    """High bed, and further ones as wide."""
    beds = late()["beds"]
    further = ({"id": f"f{number}", "name": f"Bed {number}", "length": length, "width": "90 cm"} | bed
               for number, length in enumerate(lengths, 1))  # fmt: skip
    return {"beds": [*beds, *further]}


def test_what_one_other_bed_does_not_hold_goes_into_several(again: Again) -> None:
    """96 of 120 in High bed, 8 m; 3 rows of 3 and of 4 in 80 cm and 1.10 m: 9 and 12; what is left, 3, waits.

    117 x 0.9 = 105.3, 105 heads for 3 July, 3 short. Bed 2 comes before Bed 1, since it holds more.
    """
    plan = late({"sown": "2027-04-20", "stand": 168}, **beside("80 cm", "1.1 m"))
    found = the_setback(again(plan, "2027-05-10"), "seedlings or bed")
    parted = next(one for one in found["answers"] if one["part"] and one["part"]["more"])
    assert [parted["part"]["bed"], *(one["bed"] for one in parted["part"]["more"])] == ["b2", "f2", "f1"]
    assert [one["plants"] for one in parted["part"]["more"]] == [12, 9]
    assert_holds(parted["part"], units=105, units_short=3, market="2027-07-03")
    assert_holds(parted, plants=120, market="2027-07-10", length_mm=cm(25))
    assert parted["says"].startswith(
        "Plant 96 plants in High bed and 12 plants in Bed 2 and 9 plants in Bed 1 on the day as planned, the other 3 "
        "late in Low bed: 105 for Sat 3 Jul 2027, 3 short; "
    )


def test_what_several_other_beds_hold_whole_does_not_wait_at_all(again: Again, tmp_path: Path) -> None:
    """8 ranks of 3 in 2.00 m: 24, all that High bed does not hold. Of 168 that came up 134 and 34 are for them."""
    out = str(tmp_path / "out.gardenplot")
    plan = late({"sown": "2027-04-20", "stand": 168}, **beside("2.2 m"))
    answers = the_setback(again(plan, "2027-05-10"), "seedlings or bed")["answers"]
    (number,) = [number for number, one in enumerate(answers, 1) if one["part"] and one["part"]["more"]]
    parted = answers[number - 1]
    assert_holds(parted, plants=120, units=108, units_short=0, market="2027-07-03", set_out="2027-05-18", missed=[])
    assert parted["says"].startswith(
        "Plant 96 plants in High bed and 24 plants in Bed 1 on the day as planned: 108 for Sat 3 Jul 2027; "
    )
    again(plan, "2027-05-10", out, "--take", str(number))
    after = json.loads(Path(out).read_text(encoding="utf-8"))
    stands = [(one["bed"], one["plants"], one["actual"]["stand"]) for one in after["plantings"]]
    assert stands == [("b2", 96, 134), ("f1", 24, 34)]
    assert again(after, "2027-05-10")["setbacks"] == []


def test_several_other_beds_take_it_on_one_day_alone(again: Again) -> None:
    """Bed 1 from 19 May on is a day late, so that what it would hold is told on its own: 24 there, the other 96 late.

    Low bed can be used from 1 June on; on 19 May what is set out is ready on 3 July, for the market of that day.
    """
    beds = beside("2.2 m", usable_from="2027-05-19")["beds"]
    beds[0] = beds[0] | {"usable_from": "2027-06-01"}
    plan = late({"sown": "2027-04-20"}, beds=beds)
    plan["orders"][0] |= {"lead_days": 0}
    parts = [
        one["part"] for one in the_setback(again(plan, "2027-05-10"), "seedlings or bed")["answers"] if one["part"]
    ]
    assert sorted((one["bed"], one["plants"], one["more"]) for one in parts) == [("b2", 96, []), ("f1", 24, [])]


def test_a_part_has_its_share_of_what_was_counted(again: Again) -> None:
    """110 of 168 stand, 104 without the 5 % that are lost: 102 in 34 ranks of 8.50 m, of which 8 m hold 96.

    96 of them would take 96 / 0.95 = 101.05, so 102 of those counted, and leave 8 for 8, of which 7.6 would be left;
    95 take 100 and leave 10 for 9, of which 9.5 are left.
    """
    plan = late({"sown": "2027-04-20", "stand": 110})
    found = the_setback(again(plan, "2027-05-10", "--loss", "5 %"), "seedlings or bed")
    parted = the_answer(found, "another bed")
    assert_holds(found, to_set_out=104, short=16)
    assert_holds(parted, plants=104, units=93, units_short=15)
    assert_holds(parted["part"], plants=95)


def test_both_parts_share_the_seedlings_and_the_cells_that_they_stand_in(again: Again, tmp_path: Path) -> None:
    """168 of 168 for 96 and 24: 134 of 134 and 34 of 34. 110 of 168, 5 % lost: 100 for 95, in 152.7 cells, 153.

    So neither part is short when it is asked of again: 104 can be set out, 95 and 9.
    """
    out = str(tmp_path / "out.gardenplot")
    shares = {168: [(34, 34), (134, 134)], 110: [(10, 15), (100, 153)]}
    for stand, share in shares.items():
        plan = late({"sown": "2027-04-20", "stand": stand})
        answers = the_setback(again(plan, "2027-05-10", "--loss", "5 %"), "seedlings or bed")["answers"]
        (number,) = [number for number, one in enumerate(answers, 1) if one["part"]]
        again(plan, "2027-05-10", "--loss", "5 %", out, "--take", str(number))
        after = json.loads(Path(out).read_text(encoding="utf-8"))
        assert [(one["actual"]["stand"], one["actual"]["cells"]) for one in after["plantings"]] == share
        later = again(after, "2027-05-10", "--loss", "5 %")["setbacks"]
        assert not [one for one in later if one["why"] == "seedlings or bed" and one["short"]]


def test_what_is_sown_with_two_seeds_in_a_cell_is_sown_so_again(again: Again) -> None:
    """132 to raise / (1 - 0.1²) are 134 cells, 2 trays of 84; 110 of these 168 came up, each with two seeds.

    16 short: 16 / 0.95 = 16.8, 17; 17 x 168 / 110 = 25.96, so 26 cells with two seeds each, as those that came up.
    """
    plan = late({"sown": "2027-04-20", "stand": 110}, usable=None, crops=[LETTUCE | {"seeds_per_cell": 2}, CARROT])
    found = the_setback(again(plan, "2027-05-10", "--loss", "5 %"), "seedlings or bed")
    sown = the_answer(found, "sow again")
    assert sown["sow"] == {"plants": 17, "cells": 26, "seeds": 52}
    assert sown["says"].startswith("Sow 26 cells again today for 17 plants, 52 seeds; ")


def test_a_place_with_a_clump_is_no_plant(again: Again) -> None:
    """108 bunches of 4 in clumps of 4: 120 clumps, of which 104 are there: 16 are bought, or 17 sown again."""
    crops = [LETTUCE | {"clump": 4, "seeds_per_cell": 4}, CARROT]
    orders = [{"id": "o", "crop": "c", "units": 108, "plants_per_unit": 4, "on": "2027-07-03"}]
    plan = late({"sown": "2027-04-20", "stand": 110, "cells": 168}, usable=None, crops=crops, orders=orders)
    found = the_setback(again(plan, "2027-05-10", "--loss", "5 %"), "seedlings or bed")
    assert the_answer(found, "buy in")["says"].startswith("Buy in 16 clumps of 4; 108 to sell; ")
    assert the_answer(found, "sow again")["says"].startswith(
        "Sow 26 cells again today for 17 clumps of 4, 104 seeds; "
    )


def test_no_part_is_moved_for_a_market_that_it_makes_where_it_is(again: Again) -> None:
    """Set out on 20 May the part is ready on 4 July, for the same 10 July as what waits until the 22nd."""
    found = the_setback(again(late({"sown": "2027-04-20"}), "2027-05-20"), "seedlings or bed")
    assert kinds(found) == ["later market"]


def test_another_bed_that_is_late_too_is_said_with_its_day(again: Again) -> None:
    """Low bed from 1 June, ready on 16 July; the other, long enough, from 20 May, ready on 4 July for the 10th."""
    beds = late(usable="2027-06-01")["beds"]
    beds[1] |= {"length": "11 m", "usable_from": "2027-05-20"}
    found = the_setback(again(late({"sown": "2027-04-20"}, beds=beds), "2027-05-10"), "seedlings or bed")
    other = the_answer(found, "another bed")
    assert_holds(other, set_out="2027-05-20", ready="2027-07-04", market="2027-07-10", part=None)
    assert other["says"].startswith("Plant in High bed on Thu 20 May 2027; ")
    assert_holds(found, market="2027-07-17")


def late_and_followed() -> Fields:
    """The bed later still, 90 more lettuces on the same ground, and the other bed longer."""
    plan = late({"sown": "2027-04-20"}, "2027-06-10")
    plan["beds"][1]["length"] = "11 m"
    plan["orders"].append({"id": "o2", "crop": "c", "units": 90, "on": "2027-08-28"})
    plan["plantings"].append({"id": "q", "bed": "b1", "crop": "c", "from": "0 m", "order": "o2"})
    return plan


def test_an_answer_that_takes_the_ground_of_what_follows_says_so_and_comes_last(again: Again) -> None:
    """From 10 June on it is ready on 25 July and cut for the 31st; 90 more for 28 August go in there on 13 July.

    In the other bed, 11 m, it stands from 18 May until 3 July, as planned.
    """
    plan = late_and_followed()
    found = the_setback(again(plan, "2027-05-10"), "seedlings or bed")
    assert kinds(found) == ["another bed", "later market"]
    other, held = found["answers"]
    assert_holds(other, crowds=[], market="2027-07-03")
    assert_holds(held, crowds=["q"], market="2027-07-31", stakes=[])
    assert held["says"].endswith("; Lettuce then has no ground on Tue 13 Jul 2027, where it was planned")
    assert "no ground" not in other["says"]
    everything = again(plan, "2027-05-10", "--take", "most met")
    assert [one["answer"]["kind"] for one in everything["taken"]] == ["another bed"]


def test_what_was_sown_late_and_not_set_out_is_asked_of_once(again: Again) -> None:
    """Sown on 24 April, out on 22 May, ready on 6 July, 4 days after the 2nd; not set out by the 25th, on 9 July."""
    plan = late({"sown": "2027-04-24"}, None)
    before = the_setback(again(plan, "2027-05-22"), "not ready for its market")
    assert_holds(before, days=4, ready="2027-07-06", market="2027-07-10")
    (found,) = again(plan, "2027-05-25")["setbacks"]
    assert_holds(found, why="seedlings or bed", past_days=3, ready="2027-07-09", market="2027-07-10")


def test_what_is_sown_in_its_bed_is_not_called_set_out(again: Again) -> None:
    """Carrots for 10 May, nothing recorded of them while lettuces are: sown on 25 May they are ready on 24 July."""
    carrots = {"id": "q", "bed": "b2", "crop": "d", "from": "0 m", "length": "3 m", "in_ground": "2027-05-10"}
    plan = late({"sown": "2027-04-20", "set_out": "2027-05-18"}, None)
    plan["plantings"].append(carrots)
    (found,) = again(plan, "2027-05-25")["setbacks"]
    assert found["says"] == [
        "Carrot: to be sown Mon 10 May 2027, 15 days ago, and nothing is recorded; it cannot go in before today"
    ]
    (later,) = found["answers"]
    assert later["says"].startswith("Sow Carrot later; ")
    assert "sown 25 May, ready 24 Jul" in later["says"]
    (trouble,) = [trouble_of(read(plan), one) for one in plan_again(read(plan), date(2027, 5, 25))]
    assert trouble.remedies[0].cells[0] == "Sow Carrot later"


def read(plan: Fields) -> Plan:
    return plan_of_text(json.dumps(plan)).plan
