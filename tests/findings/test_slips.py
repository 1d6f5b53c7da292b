"""What contradicts itself in a plan is found and said, though each part alone is in order."""

from typing import Any

import pytest

from gardenplot.drawing.letters import looks
from gardenplot.drawing.opened import of_finding
from gardenplot.drawing.sayings import says, where
from gardenplot.drawing.slip_words import SLIPS
from gardenplot.findings import find_all, find_of_planting
from gardenplot.plan import Plan
from gardenplot.working import Unit
from tests.drawing.hand_worked import plan_from

Fields = dict[str, Any]
CROP: Fields = {
    "id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm", "field_days": 60,
    "raising_days": 40, "hardening_days": 8,
}  # fmt: skip


def plan_with(
    crop: Fields | None = None, place: Fields | None = None, planting: Fields | None = None, **parts: list[Fields]
) -> Plan:
    """Ten leeks in a bed of 6 m, set out on 1 June."""
    bed = {"id": "b", "name": "Bed", "length": "6 m", "width": "80 cm", "foot_margin": "50 cm"}
    one = {"id": "p", "bed": "b", "crop": "c", "plants": 10, "in_ground": "2027-06-01"}
    crops = [CROP | (crop or {}), CROP | {"id": "d", "name": "Beet"}]
    return plan_from(place, beds=[bed], crops=crops, plantings=[one | (planting or {})], **parts)


def slips(plan: Plan) -> list[str]:
    """The sentences of all slips, with their places."""
    look = looks(plan)
    return [
        f"{where(plan, one, look)}: {says(plan, one, look)}".replace("\u2009", " ")
        for one in find_all(plan)
        if one.kind in SLIPS
    ]


@pytest.mark.parametrize("name", ["last_freeze", "last_hard_freeze", "first_freeze", "first_hard_freeze"])
def test_odds_that_turn_back_as_days_go_by_are_found(name: str) -> None:
    """A freeze after a day grows rarer, one before it likelier; the year's turn may lie in between."""
    falls = name.startswith("last")
    likely, rare = ("50%", "10%") if falls else ("10%", "50%")
    for days in (("04-20", "05-11"), ("12-28", "01-15"), ("05-11", "05-11")):
        assert slips(plan_with(place={name: dict(zip((likely, rare), days, strict=True))})) == []
    grows = "still freezes falls" if falls else "has frozen grows"
    words = f"{name.replace('_', ' ')}: {likely} on 11 May, but {rare} on 20 Apr already; the chance that it {grows}"
    plan = plan_with(place={name: {likely: "05-11", rare: "04-20"}})
    assert slips(plan) == [f"plan: {words} as days go by"]
    (back,) = [number for one in find_all(plan) if one.kind in SLIPS for number in of_finding(plan, one).numbers]
    assert (back.whole, back.unit) == (21, Unit.DAYS)


def test_covers_and_jugs_beyond_their_bed_are_found() -> None:
    cover = {"id": "k", "bed": "b", "from": "1 m", "to": "6 m"}
    jugs = {"id": "j", "bed": "b", "from": "1 m", "to": "6 m", "volume": "5 l", "diameter": "16 cm"}
    assert slips(plan_with(covers=[cover], jugs=[jugs])) == []
    further = {"to": "7.25 m"}
    assert slips(plan_with(covers=[cover | further], jugs=[jugs | further])) == [
        "Bed, 6.00 – 7.25 m: a cover runs 1.25 m past the foot of the bed",
        "Bed, 6.00 – 7.25 m: water jugs stand up to 1.25 m past the foot of the bed",
    ]


@pytest.mark.parametrize(
    ("crop", "says_it"),
    [
        ({"hardening_days": 40}, ""),
        ({"hardening_days": 43}, "is hardened off 3 days before it is sown"),
        ({"clump": 3, "seeds_per_cell": 3}, ""),
        (
            {"clump": 3, "seeds_per_cell": 2},
            "a cell can give 2 plants, 3 are meant in each place: sow more seeds in it",
        ),
        ({"clump": 3}, "a cell can give 1 plant, 3 are meant in each place: sow more seeds in it"),
        ({"clump": 3, "seeds_per_cell": 2, "seedlings_per_seed": 1.5}, ""),
        ({"clump": 3, "establish": "direct"}, ""),
    ],
)
def test_days_and_seeds_that_cannot_be_are_found(crop: Fields, says_it: str) -> None:
    plan = plan_with(crop)
    assert slips(plan) == ([f"A Leek, Bed, 0.00 – 1.00 m: {says_it}"] if says_it else [])
    assert bool(find_of_planting(plan, "p")) is bool(says_it)
    assert slips(plan_with(crop, planting={"actual": {"set_out": "2027-06-01"}})) == []


def test_a_planting_for_an_order_of_another_crop_is_noted() -> None:
    """Kinds of one crop may well stand for one order, so it is no risk."""
    order = {"id": "o", "units": 10, "on": "2027-08-01"}
    assert slips(plan_with(planting={"order": "o"}, orders=[order | {"crop": "c"}])) == []
    plan = plan_with(planting={"order": "o"}, orders=[order | {"crop": "d"}])
    assert slips(plan) == ["A Leek, Bed, 0.00 – 1.00 m: stands for an order of Beet"]
    assert all(one.is_note for one in find_all(plan) if one.kind in SLIPS)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("Beet", "so that none are told; nearest: “Beets”"),
        ("beets", "so that none are told; nearest: “Beets”"),
        ("Bean", "so that none are told; nearest: “Bean, Lima”, “Bean, Snap”"),
        ("Leaf beet", "so that none are told; nearest: “Beets”"),
        ("French beans", "so that none are told; nearest: “Bean, Snap”, “Bean, Lima”"),
        ("Sweet pepper", "so that none are told; nearest: “Pepper”, “Sweet Corn”"),
        ("Spring onions", "so that none are told; nearest: “Onion”"),
        ("Kale", "nor is a name like it, so that none are told"),
        ("Beets", None),
        ("Bean, Snap", None),
    ],
)
def test_a_name_that_the_table_of_days_to_emerge_does_not_have_is_told_with_the_nearest(
    typed: str, said: str | None
) -> None:
    """The names are those of the table (Harrington and Minges 1954). It is no reason not to carry out the plan."""
    plan = plan_with({"emerges_like": typed})
    words = f"A Leek, Bed, 0.00 – 1.00 m: “{typed}” is not in the table of days to emerge, {said}"
    assert slips(plan) == ([words] if said else [])
    assert all(one.is_note for one in find_all(plan) if one.kind in SLIPS)
    gone = plan_with({"emerges_like": typed}, planting={"actual": {"set_out": "2027-06-01"}})
    assert slips(gone) == []
