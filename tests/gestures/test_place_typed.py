"""A place and a bed's history typed and read back: days of the year, degrees, zones, families by season."""

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.history_typed import HISTORY, history_text, type_history
from gardenplot.gestures.place_typed import (
    FROST_FIELDS,
    PLACE_FIELDS,
    month_day_from,
    month_day_text,
)
from gardenplot.plan import MonthDay, Past, Plan, bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.units import parse_share
from tests.plans import metric_plan

FIELDS = {field.name: field for field in (*PLACE_FIELDS, *FROST_FIELDS)}


@given(st.dates())
def test_a_day_of_the_year_is_typed_in_either_way_and_read_back(day: object) -> None:
    one = MonthDay(day.month, day.day)  # type: ignore[attr-defined]  # a date
    written = month_day_text(one)
    number, month = written.split()
    for text in (written, f"{month} {number}", f"{one.month:02}-{one.day:02}", written.upper(), f"{number}. {month}"):
        assert month_day_from(text) == one


@pytest.mark.parametrize(
    "text", ["31 Jun", "02-30", "mid May", "Ma 5", "5", "May", "13-40", "2027-05-18", "-", "18 mayhem", "٣-٣", "0-5"]
)
def test_what_is_no_day_of_the_year_is_refused(text: str) -> None:
    with pytest.raises(PlanError):
        month_day_from(text)


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("latitude", "57.2", 57.2),
        ("latitude", "36,8 S", -36.8),
        ("latitude", "89 N", 89.0),
        ("longitude", "4.1 W", -4.1),
        ("longitude", "−4.1°", -4.1),
        ("longitude", "174.7 e", 174.7),
        ("longitude", "", None),
        ("time_zone", "Pacific/Auckland", "Pacific/Auckland"),
        ("time_zone", "", None),
        ("family_gap", "4", 4),
        ("family_gap", "0", 0),
        ("family_gap", "", None),
        ("cover_before", "45", 45),
        ("cover_before", "", None),
    ],
)
def test_a_place_takes_what_is_typed(name: str, text: str, value: object) -> None:
    after = FIELDS[name].apply(metric_plan(), "", text)
    assert getattr(after.place, name) == value
    assert FIELDS[name].apply(after, "", FIELDS[name].shown(after, "")) is after


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("latitude", "north"),
        ("latitude", "91"),
        ("latitude", "57 W"),
        ("latitude", "nan"),
        ("latitude", "-36.8 S"),
        ("latitude", "3_6"),
        ("longitude", "1e1"),
        ("longitude", "181 E"),
        ("longitude", "4.1 N"),
        ("time_zone", "Europe/Upper Sill"),
        ("time_zone", "../../etc/passwd"),
        ("family_gap", "some"),
        ("family_gap", "101"),
        ("cover_before", "721"),
        ("last_freeze_50", "late in May"),
    ],
)
def test_what_a_place_cannot_have_is_refused_in_a_sentence(name: str, text: str) -> None:
    with pytest.raises(GardenplotError) as told:
        FIELDS[name].apply(metric_plan(), "", text)
    assert len(told.value.says) > 20


def test_the_odds_of_a_freeze_stand_by_themselves_and_others_are_kept() -> None:
    odd = (parse_share("90 %"), MonthDay(4, 2))
    plan = metric_plan()
    plan = evolve(plan, place=evolve(plan.place, last_freeze=(odd, (parse_share("50%"), MonthDay(5, 18)))))
    assert FIELDS["last_freeze_50"].shown(plan, "") == "18 May"
    plan = FIELDS["last_freeze_10"].apply(plan, "", "1 June")
    plan = FIELDS["last_freeze_50"].apply(plan, "", "05-20")
    assert [(str(share), day) for share, day in plan.place.last_freeze] == [
        ("90 %", MonthDay(4, 2)),
        ("50%", MonthDay(5, 20)),
        ("10%", MonthDay(6, 1)),
    ]
    assert FIELDS["last_freeze_50"].apply(plan, "", "").place.last_freeze == (odd, plan.place.last_freeze[2])


families = st.sampled_from(["Brassicaceae", "Solanaceae", "Beets and chard"])


@settings(max_examples=30)
@given(
    st.lists(st.builds(Past, st.integers(1, 9999), families, st.sampled_from(["", "kale, curly"[:4]])), max_size=4)
)
def test_a_history_typed_as_it_is_shown_is_the_same(history: list[Past]) -> None:
    plan = change_bed(metric_plan(), "b1", history=tuple(history))
    again = type_history(change_bed(plan, "b1", history=()), "b1", history_text(plan, "b1"))
    assert bed_of(again, "b1").history == tuple(history)


def test_a_season_that_stays_keeps_what_this_version_does_not_know_of_it() -> None:
    past = Past(2025, "Solanaceae", unknown=(("soil", "1"),))
    plan: Plan = change_bed(metric_plan(), "b1", history=(past,))
    after = HISTORY.apply(plan, "b1", "2024 Apiaceae; 2025 Solanaceae")
    assert bed_of(after, "b1").history == (Past(2024, "Apiaceae"), past)


@pytest.mark.parametrize("text", ["Solanaceae", "2025", "2025 ()", "2025 A (b", "last year Apiaceae", "0 Apiaceae"])
def test_what_is_no_season_with_a_family_is_refused(text: str) -> None:
    with pytest.raises(PlanError):
        type_history(metric_plan(), "b1", text)
