"""The season map of a bed: its blocks, its clashes, its cold days and its months."""

from datetime import date, timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.letters import looks
from gardenplot.drawing.season_bands import Quiet, cold, dark, frosty, months
from gardenplot.drawing.season_map import SeasonMap, draw_season
from gardenplot.findings import Kind, find_in_bed
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Place, Plan
from gardenplot.season import Span, season_of
from gardenplot.units import MM
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import plans

days = st.dates(date(1990, 1, 1), date(2100, 1, 1))
spans = st.builds(lambda first, length: Span(first, first + timedelta(days=length)), days, st.integers(0, 900))


def maps(plan: Plan) -> list[SeasonMap]:
    span = season_of(plan)
    assert span is not None
    return [draw_season(laid, looks(plan), span, plan.place) for laid in lay_out_plan(plan)]


@settings(max_examples=40)
@given(plans())
def test_every_planting_is_on_its_beds_map_once_between_its_readings_and_its_days(plan: Plan) -> None:
    span = season_of(plan)
    if span is None:
        return
    for laid in lay_out_plan(plan):
        drawn = draw_season(laid, looks(plan), span, plan.place)
        assert [block.planting for block in drawn.blocks] == [layout.planting for layout in laid.layouts]
        for block, layout, one in zip(drawn.blocks, laid.layouts, laid.grown, strict=True):
            assert (block.start, block.end) == (layout.start / MM, layout.end / MM)
            assert (block.first, block.last) == (one.dates.in_ground, one.dates.out)
            assert all(span.first <= day <= span.last for day in (block.first, block.last) if day)


@settings(max_examples=40)
@given(plans())
def test_there_are_as_many_clashes_as_findings_of_overlap(plan: Plan) -> None:
    span = season_of(plan)
    if span is None:
        return
    for laid in lay_out_plan(plan):
        overlaps = [one for one in find_in_bed(laid) if one.kind is Kind.OVERLAP]
        clashes = draw_season(laid, looks(plan), span, plan.place).clashes
        assert sorted((one.start / MM, one.end / MM) for one in overlaps) == sorted((c.start, c.end) for c in clashes)


@given(spans)
def test_months_follow_one_another_from_the_first_that_begins_in_the_span(span: Span) -> None:
    found = [first for first, _name in months(span)]
    assert all(first.day == 1 and span.first <= first <= span.last for first in found)
    assert all((after - one).days in (28, 29, 30, 31) for one, after in pairwise(found))
    assert len(found) == sum((span.first + timedelta(days=n)).day == 1 for n in range(span.days))


def test_the_relay_of_lettuce_and_tomatoes_is_no_clash_on_the_map() -> None:
    (drawn,) = maps(hand_worked("s3"))
    lettuce, tomatoes = sorted(drawn.blocks, key=lambda block: block.first or date.min)
    assert lettuce.first == date(2025, 3, 25)
    assert tomatoes.first == date(2025, 5, 12)
    assert lettuce.line[-1] == "24 May"
    assert all(len(one) >= len(after) for words in (lettuce.line, *lettuce.lines) for one, after in pairwise(words))
    assert drawn.clashes == ()


def test_two_crops_on_the_same_feet_clash_for_the_days_they_share() -> None:
    plan = plan_from(
        beds=[{"id": "b", "name": "B", "length": "10 m", "width": "80 cm"}],
        crops=[{"id": "c", "name": "C", "in_row": "20 cm", "row_spacing": "20 cm"}],
        plantings=[
            {"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "3 m",
             "in_ground": "2027-04-01", "out": "2027-06-01"},
            {"id": "q", "bed": "b", "crop": "c", "from": "3 m", "length": "3 m",
             "in_ground": "2027-05-20", "out": "2027-08-01"},
        ],
    )  # fmt: skip
    ((clash,),) = [one.clashes for one in maps(plan)]
    assert (clash.start, clash.end, clash.first, clash.last) == (3000, 4000, date(2027, 5, 20), date(2027, 6, 1))


def test_cold_lasts_until_the_last_freeze_of_each_year_on_both_halves_of_the_earth() -> None:
    north = plan_from({"last_freeze": {"50%": "05-09", "10%": "05-27"}}).place
    span = Span(date(2027, 3, 1), date(2027, 9, 1))
    assert [(one.first, one.last) for one in cold(north, span)] == [
        (date(2027, 3, 1), date(2027, 5, 27)),
        (date(2027, 3, 1), date(2027, 5, 9)),
    ]
    south = plan_from({"last_freeze": {"50%": "10-15"}}).place
    assert [one.last for one in cold(south, Span(date(2026, 8, 1), date(2027, 12, 1)))] == [
        date(2027, 10, 15),
        date(2026, 10, 15),
    ]
    assert cold(Place(), span) == []


def test_the_last_freeze_on_a_leap_day_is_the_28th_in_other_years() -> None:
    place = plan_from({"last_freeze": {"50%": "02-29"}}).place
    assert [one.last for one in cold(place, Span(date(2027, 1, 1), date(2028, 12, 1)))] == [
        date(2028, 2, 29),
        date(2027, 2, 28),
    ]


@settings(max_examples=25)
@given(plans())
def test_the_same_values_give_the_very_same_map(plan: Plan) -> None:
    if season_of(plan) is not None:
        assert all(one is other for one, other in zip(maps(plan), maps(plan), strict=True))


def test_from_the_first_freeze_on_it_is_cold_again() -> None:
    place = plan_from({"first_freeze": {"10%": "09-25", "50%": "10-10"}}).place
    span = Span(date(2027, 3, 15), date(2027, 12, 1))
    assert [(one.first, one.last, one.words) for one in frosty(place, span)] == [
        (date(2027, 9, 25), date(2027, 12, 1), "frost before 25 Sep: 10%"),
        (date(2027, 10, 10), date(2027, 12, 1), "frost before 10 Oct: 50%"),
    ]
    assert [one.turns for one in frosty(place, span)] == [date(2027, 9, 25), date(2027, 10, 10)]


def test_days_of_little_light_are_a_band_where_they_do_not_count() -> None:
    """Day length of 10 h at 57.2 degrees north: 21 October and 20 February, within days (from memory)."""
    at = {"latitude": 57.2, "longitude": -4.1, "time_zone": "Europe/London"}
    span = Span(date(2026, 9, 1), date(2027, 6, 1))
    (band,) = dark(plan_from(at).place, span)
    assert band.quiet is Quiet.DARK
    assert date(2026, 10, 10) < band.first < date(2026, 11, 1)
    assert date(2027, 2, 10) < band.last < date(2027, 3, 1)
    assert dark(plan_from(at | {"short_days_count": True}).place, span) == []
    assert dark(Place(), span) == []


def test_covers_lie_over_their_stretch_of_their_own_bed_and_what_came_about_is_told_from_what_is_planned() -> None:
    plan = plan_from(
        beds=[{"id": b, "name": b, "length": "10 m", "width": "80 cm"} for b in ("b", "c")],
        crops=[{"id": "c", "name": "C", "in_row": "20 cm", "row_spacing": "20 cm", "field_days": 30,
                "raising_days": 20}],
        plantings=[
            {"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "3 m", "in_ground": "2027-04-01",
             "actual": {"set_out": "2027-04-02"}},
            {"id": "q", "bed": "b", "crop": "c", "from": "5 m", "length": "3 m", "in_ground": "2027-04-01"},
        ],
        covers=[{"id": "k", "bed": "b", "from": "1 m", "to": "4 m", "on": "2027-04-02"},
                {"id": "l", "bed": "c", "from": "1 m", "to": "4 m"}],
    )  # fmt: skip
    span = season_of(plan)
    assert span is not None
    drawn, other = (draw_season(laid, looks(plan), span, plan.place, plan.covers) for laid in lay_out_plan(plan))
    assert [(one.start, one.end, one.first, one.last) for one in drawn.covers] == [
        (1000, 4000, date(2027, 4, 2), None)
    ]
    assert len(other.covers) == 1
    begun, planned = drawn.blocks
    assert (begun.begun, begun.ready, begun.sow) == (True, date(2027, 5, 2), date(2027, 3, 13))
    assert (planned.begun, planned.ready, planned.cleared) == (False, date(2027, 5, 1), False)


def test_places_kept_for_what_follows_are_on_the_map_until_it_goes_in() -> None:
    """Tomatoes every 60 cm from 1.30 m on, of which those at 1.30, 1.90 and 2.50 m lie in the lettuce (by hand)."""
    plan = plan_from(
        beds=[{"id": "b", "name": "b", "length": "10 m", "width": "80 cm"}],
        crops=[{"id": "c", "name": "C", "in_row": "20 cm", "row_spacing": "20 cm"},
               {"id": "t", "name": "T", "in_row": "60 cm", "row_spacing": "80 cm"}],
        plantings=[
            {"id": "p", "bed": "b", "crop": "c", "from": "1 m", "length": "2 m", "in_ground": "2027-04-01",
             "out": "2027-06-10"},
            {"id": "q", "bed": "b", "crop": "t", "from": "1 m", "length": "6 m", "in_ground": "2027-05-25",
             "keep_clear": "15 cm"},
        ],
    )  # fmt: skip
    (drawn,) = maps(plan)
    (kept,) = drawn.blocks[0].kept
    assert (kept.readings, kept.until, kept.look) == ((1300, 1900, 2500), date(2027, 5, 25), looks(plan)["q"])
    assert not drawn.blocks[1].kept
    assert not drawn.clashes
