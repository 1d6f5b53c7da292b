"""What is planned for a day that does not suit it is found: frost, market, age, families that come back."""

import json
from typing import Any

import pytest

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import Finding, Kind, find_all
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text

Fields = dict[str, Any]
BED: Fields = {"id": "b1", "name": "Bed", "length": "30 m", "width": "75 cm"}
SPRING: Fields = {"last_freeze": {"50%": "05-20", "10%": "06-04"}}
TOMATO: Fields = {
    "id": "crop",
    "name": "Crop",
    "in_row": "50 cm",
    "row_spacing": "75 cm",
    "field_days": 70,
    "frost": "very tender",
}


def planned(crop: Fields, *plantings: Fields, bed: Fields | None = None, **parts: Any) -> Plan:
    """A plan of one bed and one crop; each planting has 20 plants unless it says otherwise."""
    raw = {
        "gardenplot": 1,
        "beds": [BED | (bed or {})],
        "crops": [TOMATO | crop],
        "plantings": [
            {"id": f"p{number}", "bed": "b1", "crop": "crop", "from": "1 m"} | one
            for number, one in enumerate(plantings, start=1)
        ],
    }
    return plan_of_text(json.dumps(raw | parts)).plan


def planted(crop: Fields, place: Fields | None = None, **planting: Any) -> Plan:
    """A plan with one planting of 20 plants, at a place with odds of frost in spring if none is given."""
    parts = {name: planting.pop(name) for name in ("bed", "covers") if name in planting}
    return planned(crop, {"plants": 20} | planting, place=SPRING if place is None else place, **parts)


def found(plan: Plan, *kinds: Kind) -> list[Finding]:
    return [one for one in find_all(plan) if one.kind in kinds]


def said(plan: Plan, kind: Kind) -> list[str]:
    return [says(plan, one, looks(plan)) for one in found(plan, kind)]


@pytest.mark.parametrize(
    ("frost", "in_ground", "is_told"),
    [
        ("very tender", "2025-05-07", True),
        ("very tender", "2025-05-25", True),
        ("very tender", "2025-06-04", False),
        ("tender", "2025-06-03", True),
        ("half-hardy", "2025-05-19", True),
        ("half-hardy", "2025-05-20", False),
        (None, "2025-05-07", True),
        ("hardy", "2025-04-07", False),
    ],
)
def test_who_is_out_while_it_may_still_freeze(frost: str | None, in_ground: str, is_told: bool) -> None:
    assert bool(found(planted({"frost": frost}, in_ground=in_ground), Kind.FROST)) == is_told


def test_the_odds_are_named_with_their_day() -> None:
    """Set out on 7 May, 13 days before the 50 % date of 20 May (scenario by hand)."""
    (words,) = said(planted({"frost": "tender"}, in_ground="2025-05-07"), Kind.FROST)
    assert words == (
        "tender, 13 days before Tue 20 May 2025; in 50% of years a freeze comes later still: "
        "have a cover at hand, or wait"
    )
    (rarer,) = said(planted({"frost": "tender"}, in_ground="2025-05-25"), Kind.FROST)
    assert (
        "10 days before Wed 4 Jun 2025; in 10% of years a freeze comes later still, in up to 50% once it is" in rarer
    )


@pytest.mark.parametrize(
    ("day", "most"), [("2027-04-20", "90%"), ("2027-05-04", "90%"), ("2027-05-05", "50%"), ("2027-05-19", "50%")]
)
def test_between_three_odds_a_freeze_is_no_likelier_than_the_last_that_is_over(day: str, most: str) -> None:
    """A freeze after a later day is never likelier (by what the odds are): past the 50 % day it is 50 % at most."""
    three = {"last_freeze": {"90%": "04-20", "50%": "05-05", "10%": "05-20"}}
    (words,) = said(planted({}, place=three, in_ground=day), Kind.FROST)
    assert f"of years a freeze comes later still, in up to {most} once it is out" in words


def test_a_cover_that_stays_on_until_then_makes_it_a_note() -> None:
    for off, kind in (("2025-06-04", Kind.FROST_NOTE), ("2025-05-15", Kind.FROST), (None, Kind.FROST_NOTE)):
        cover = {"id": "c", "bed": "b1", "from": "0 m", "to": "30 m", "on": "2025-05-01", "off": off}
        covered = planted({}, in_ground="2025-05-07", covers=[cover])
        assert [one.kind for one in found(covered, Kind.FROST, Kind.FROST_NOTE)] == [kind]
    beside = {"id": "c", "bed": "b1", "from": "2 m", "to": "30 m"}
    bare = planted({}, in_ground="2025-05-07", covers=[beside])
    assert [one.kind for one in found(bare, Kind.FROST, Kind.FROST_NOTE)] == [Kind.FROST]


def test_a_cover_off_on_the_average_day_is_off_too_early_for_what_frost_kills() -> None:
    """Half of all years freeze after 20 May, one in ten after 4 June; covers may follow one another."""
    cover = {"id": "c", "bed": "b1", "from": "0 m", "to": "30 m", "on": "2025-05-01", "off": "2025-05-20"}
    assert said(planted({}, in_ground="2025-05-07", covers=[cover]), Kind.FROST) == [
        "very tender, its cover comes off 15 days before Wed 4 Jun 2025; in 10% of years a freeze comes later still, "
        "in up to 50% once it is off: leave it on for longer, or have it at hand"
    ]
    next_one = cover | {"id": "d", "on": "2025-05-20", "off": "2025-06-04"}
    assert not found(planted({}, in_ground="2025-05-07", covers=[cover, next_one]), Kind.FROST)
    assert not found(planted({"frost": "half-hardy"}, in_ground="2025-05-07", covers=[cover]), Kind.FROST)


def test_covers_that_meet_along_a_bed_cover_what_stands_across_their_seam() -> None:
    """The block runs from 1 m on; a gap of 1 cm between two cloths, or days of their own, leave it in the open."""
    first = {"id": "c", "bed": "b1", "from": "0 m", "to": "6 m", "on": "2025-05-01", "off": "2025-06-04"}
    for start, on, kind in (
        ("6 m", "2025-05-01", Kind.FROST_NOTE), ("5.5 m", "2025-05-01", Kind.FROST_NOTE),
        ("6.01 m", "2025-05-01", Kind.FROST), ("6 m", "2025-05-10", Kind.FROST),
    ):  # fmt: skip
        second = first | {"id": "d", "from": start, "to": "30 m", "on": on}
        plan = planted({}, in_ground="2025-05-07", covers=[second, first])
        assert [one.kind for one in found(plan, Kind.FROST, Kind.FROST_NOTE)] == [kind]


@pytest.mark.parametrize(
    ("covers", "bare"),
    [
        ([("1.4 m", "30 m")], "its cover leaves 1.00 – 1.40 m bare"),
        ([("0 m", "5.4 m"), ("5.8 m", "8 m")], "its cover leaves 5.40 – 5.80 m, 8.00 – 11.00 m bare"),
        ([("0 m", "1 m"), ("11 m", "30 m")], "have a cover at hand, or wait"),
    ],
)
def test_a_cover_that_is_too_short_says_where_it_leaves_plants_bare(covers: list[tuple[str, str]], bare: str) -> None:
    """20 plants in one row of 50 cm stand from 1 to 11 m."""
    over = [{"id": f"c{start}", "bed": "b1", "from": start, "to": end, "on": "2025-05-01", "off": "2025-06-04"}
            for start, end in covers]  # fmt: skip
    (words,) = said(planted({}, in_ground="2025-05-07", covers=over), Kind.FROST)
    assert words.replace("\u2009", " ").endswith(f"comes later still: {bare}")


def test_seeds_below_the_ground_fear_no_frost_unless_they_are_tender() -> None:
    for frost, told in (("half-hardy", 0), (None, 0), ("very tender", 1)):
        sown = planted({"frost": frost, "establish": "direct"}, in_ground="2025-05-07")
        assert len(found(sown, Kind.FROST)) == told


def test_hardy_crops_are_noted_before_the_last_hard_freeze_where_a_place_knows_it() -> None:
    place = SPRING | {"last_hard_freeze": {"50%": "04-25"}}
    assert said(planted({"frost": "hardy"}, place, in_ground="2025-04-20"), Kind.FROST_NOTE) == [
        "hardy, 5 days before Fri 25 Apr 2025; in 50% of years a hard freeze comes later still"
    ]
    assert not found(planted({"frost": "hardy"}, place, in_ground="2025-04-25"), Kind.FROST_NOTE)


def test_the_spring_of_the_south_is_in_october() -> None:
    place: Fields = {"last_freeze": {"50%": "10-20", "10%": "11-12"}, "latitude": -43.6}
    assert found(planted({}, place, in_ground="2027-11-01"), Kind.FROST)
    assert not found(planted({}, place, in_ground="2027-11-12"), Kind.FROST)
    assert not found(planted({}, place, in_ground="2028-02-01"), Kind.FROST)


@pytest.mark.parametrize(
    ("odds", "days"),
    [
        # A mild winter: the likeliest last freeze falls before the turn of the year, the others after it.
        ({"90%": "12-15", "50%": "01-20", "10%": "02-25"}, {"2027-02-01": "24 days before Thu 25 Feb 2027",
                                                           "2026-12-20": "31 days before Wed 20 Jan 2027",
                                                           "2027-02-25": "", "2027-08-01": ""}),
        # A valley high up in the south.
        ({"50%": "12-28", "10%": "01-15"}, {"2027-12-20": "8 days before Tue 28 Dec 2027",
                                            "2028-01-05": "10 days before Sat 15 Jan 2028", "2028-01-15": ""}),
    ],
)  # fmt: skip
def test_odds_may_lie_on_both_sides_of_the_turn_of_the_year(odds: dict[str, str], days: dict[str, str]) -> None:
    """Days counted by hand on a calendar; places are invented."""
    for day, told in days.items():
        words = said(planted({"frost": "tender"}, {"last_freeze": odds}, in_ground=day), Kind.FROST)
        assert bool(words) is bool(told)
        assert all(told in one for one in words)


def test_what_is_still_to_be_cut_when_it_has_likely_frozen_is_told() -> None:
    place: Fields = {"first_freeze": {"50%": "09-20", "10%": "09-05"}}
    plan = planted({"harvest_days": 60}, place, in_ground="2025-06-10")
    assert said(plan, Kind.AUTUMN_FROST) == [
        "very tender, and to be cut until Sat 18 Oct 2025: by Sat 20 Sep 2025 it has frozen in half of all years"
    ]
    assert not found(planted({"harvest_days": 16}, place, in_ground="2025-06-10"), Kind.AUTUMN_FROST)


@pytest.mark.parametrize(
    ("harvest_days", "words"),
    [
        (16, None),
        (17, "Fri 5 Sep 2025: by Fri 5 Sep 2025 it has frozen in 10% of years, in up to 50% by its last day"),
        (31, "Fri 19 Sep 2025: by Fri 5 Sep 2025 it has frozen in 10% of years, in up to 50% by its last day"),
        (32, "Sat 20 Sep 2025: by Sat 20 Sep 2025 it has frozen in half of all years, in up to 90% by its last day"),
        (60, "Sat 18 Oct 2025: by Wed 8 Oct 2025 it has frozen in 90% of years"),
    ],
)
def test_the_odds_of_the_first_freeze_are_named_with_their_day_as_those_of_the_last_are(
    harvest_days: int, words: str | None
) -> None:
    """Ready on 19 August, cut for so many days (by hand). One year in twenty is rarer than is worth a word, in spring
    too."""
    place: Fields = {"first_freeze": {"90%": "10-08", "50%": "09-20", "10%": "09-05", "5%": "08-30"}}
    plan = planted({"harvest_days": harvest_days}, place, in_ground="2025-06-10")
    assert said(plan, Kind.AUTUMN_FROST) == ([f"very tender, and to be cut until {words}"] if words else [])
    assert not found(planted({"harvest_days": 60, "frost": "half-hardy"}, place, in_ground="2025-06-10"))


def test_a_cover_that_goes_on_on_the_average_day_is_on_too_late_for_what_frost_kills() -> None:
    place: Fields = {"first_freeze": {"50%": "09-20", "10%": "09-05"}}
    cover = {"id": "c", "bed": "b1", "from": "0 m", "to": "30 m", "on": "2025-09-19", "off": "2025-10-18"}
    late = planted({"harvest_days": 60}, place, in_ground="2025-06-10", covers=[cover])
    assert said(late, Kind.AUTUMN_FROST) == [
        "very tender, and to be cut until Sat 18 Oct 2025, its cover goes on Fri 19 Sep 2025: "
        "by Fri 5 Sep 2025 it has frozen in 10% of years, in up to 50% by then"
    ]
    in_time = cover | {"on": "2025-09-05"}
    assert not found(
        planted({"harvest_days": 60}, place, in_ground="2025-06-10", covers=[in_time]), Kind.AUTUMN_FROST
    )


def test_covers_that_follow_one_another_keep_what_is_still_to_be_cut_from_the_first_freeze() -> None:
    """In the ground until 18 October, and a freeze by 5 September in one year of ten (by hand)."""
    place: Fields = {"first_freeze": {"50%": "09-20", "10%": "09-05"}}
    first = {"id": "c", "bed": "b1", "from": "0 m", "to": "30 m", "on": "2025-09-04", "off": "2025-10-01"}
    for on, off, told in (("2025-10-01", "2025-10-18", 0), ("2025-10-02", "2025-10-18", 1),
                          ("2025-10-01", "2025-10-17", 1)):  # fmt: skip
        covers = [first, first | {"id": "d", "on": on, "off": off}]
        plan = planted({"harvest_days": 60}, place, in_ground="2025-06-10", covers=covers)
        assert len(found(plan, Kind.AUTUMN_FROST)) == told


def test_ground_that_was_typed_to_be_held_over_the_first_freeze_is_told_where_nobody_says_how_long_it_is_cut() -> (
    None
):
    """Ready on 19 Aug 2025 (70 days, by hand); held until 15 October it is still cut, where nobody says otherwise."""
    place: Fields = {"first_freeze": {"50%": "09-20"}}
    assert said(planted({}, place, in_ground="2025-06-10", out="2025-10-15"), Kind.AUTUMN_FROST) == [
        "very tender, and in the ground until Tue 14 Oct 2025: by Sat 20 Sep 2025 it has frozen in half of all years"
    ]
    cut = {"harvest_days": 20}
    assert not found(planted(cut, place, in_ground="2025-06-10", out="2025-10-15"), Kind.AUTUMN_FROST)


def ordered(crop: Fields, order: Fields, **planting: Any) -> Plan:
    """A plan with one planting for an order of 10 on Sat 12 July 2025."""
    wanted = {"id": "o1", "crop": "crop", "units": 10, "on": "2025-07-12"} | order
    return planned(crop, {"order": "o1"} | planting, orders=[wanted])


def test_ten_days_late_misses_the_market_by_ten_days() -> None:
    """Set out on 22 May instead of 12 May, ready on 21 July: the market of 12 July is missed (scenario by hand)."""
    plan = ordered({"field_days": 60}, {}, in_ground="2025-05-22")
    assert said(plan, Kind.LATE) == ["is ready 10 days too late for the market on Sat 12 Jul 2025"]
    assert not found(ordered({"field_days": 60}, {}, in_ground="2025-05-12"), Kind.LATE)


def test_a_market_day_that_the_order_does_not_have_is_told() -> None:
    assert said(ordered({}, {"times": 3}, market=4), Kind.NO_MARKET) == ["is for market day 4 of an order that has 3"]
    assert not found(ordered({}, {"times": 4}, market=4), Kind.NO_MARKET)


def test_each_market_day_that_is_short_or_bare_is_told() -> None:
    plan = ordered({}, {"times": 4}, market=2, plants=8)
    assert [(one.kind, one.market, one.amount, one.pieces) for one in found(plan, Kind.ORDER_SHORT)] == [
        (Kind.ORDER_SHORT, 2, 8, 0)
    ]
    assert said(plan, Kind.ORDER_UNPLANTED) == [
        "10 Crop for Sat 12 Jul 2025: not planted yet, 10 plants must stand; nor for 2 later market days"
    ]


@pytest.mark.parametrize(
    ("sow", "oldest", "told"),
    [("2025-04-07", None, 1), ("2025-04-11", None, 0), ("2025-04-07", 45, 0), ("2025-04-07", 44, 1)],
)
def test_plants_of_45_days_that_were_to_be_35_are_over_age(sow: str, oldest: int | None, told: int) -> None:
    """A week's grace where nobody says: common practice, no source; 45 days is the scenario's (by hand)."""
    crop: Fields = {"raising_days": 35, "oldest_days": oldest}
    assert len(found(planted(crop, {}, sow=sow, in_ground="2025-05-22"), Kind.OVER_AGE)) == told


def test_what_is_set_out_before_it_is_sown_cannot_be_done() -> None:
    plan = planted({}, {}, in_ground="2025-05-22", actual={"sown": "2025-05-24"})
    (one,) = found(plan, Kind.SOWN_AFTER)
    assert one.cannot_be_done
    assert said(plan, Kind.SOWN_AFTER) == ["is sown 2 days after it is set out"]


def test_what_is_out_before_it_is_ready_is_told_unless_it_came_about_so() -> None:
    """70 days in the field: ready on 31 July 2025 (by hand); the ground is free when it is cut that very day."""
    plan = planted({}, {}, in_ground="2025-05-22", out="2025-07-29")
    assert said(plan, Kind.OUT_UNREADY) == ["is out 2 days before it is ready"]
    assert not found(plan, Kind.OUT_UNREADY)[0].cannot_be_done
    assert not found(planted({}, {}, in_ground="2025-05-22", out="2025-07-31"), Kind.OUT_UNREADY)
    came = {"set_out": "2025-05-22", "cleared": "2025-06-10"}
    assert not found(planted({}, {}, in_ground="2025-05-22", actual=came), Kind.OUT_UNREADY)


@pytest.mark.parametrize(
    ("last", "gap", "between"), [(2024, None, 0), (2022, None, 2), (2021, None, None), (2022, 2, None)]
)
def test_a_family_that_comes_back_too_soon_is_told_in_seasons_in_between(
    last: int, gap: int | None, between: int | None
) -> None:
    history = [{"season": last, "family": " solanaceae "}, {"season": 2015, "family": "Solanaceae"}]
    place = {} if gap is None else {"family_gap": gap}
    plan = planted({"family": "Solanaceae"}, place, bed={"history": history}, in_ground="2025-06-10")
    assert [one.amount for one in found(plan, Kind.FAMILY)] == ([] if between is None else [between])
    assert not any(one.cannot_be_done for one in found(plan, Kind.FAMILY))


def test_a_succession_in_one_season_is_no_matter_of_rotation() -> None:
    family: Fields = {"family": "Solanaceae"}
    first = {"plants": 20, "in_ground": "2025-04-10", "out": "2025-06-10"}
    assert not found(planned(family, first, {"plants": 20, "in_ground": "2025-06-10"}), Kind.FAMILY)
    (back,) = found(planned(family, first, {"plants": 20, "in_ground": "2027-04-10"}), Kind.FAMILY)
    assert (back.planting, back.amount) == ("p2", 1)


def test_without_dates_nothing_is_claimed() -> None:
    times = (Kind.FROST, Kind.FROST_NOTE, Kind.LATE, Kind.OVER_AGE, Kind.FAMILY, Kind.AUTUMN_FROST)
    assert not found(planted({"field_days": None}), *times)
