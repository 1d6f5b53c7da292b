"""Dates sheet and door card: every job and every night once, boxes to tick, nothing printed over or off the page."""

import re
from datetime import date, timedelta
from itertools import combinations

import pytest
from attrs import evolve

from gardenplot.drawing.date_list import by_week, date_rows
from gardenplot.errors import PlanError
from gardenplot.files import sample
from gardenplot.filling.ways_out import shortages
from gardenplot.plan import Actual, Cover, Place, Plan
from gardenplot.plan.edits import change_bed, change_crop, change_planting
from gardenplot.plan.file import read_plan
from gardenplot.sheets.door_card import card_for
from gardenplot.sheets.paper import Paper
from gardenplot.units import parse_length
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import metric_plan
from tests.sheets.made import dates_sheet, door_cards
from tests.sheets.pdf_pages import Page, pages_of, plain

each_paper = pytest.mark.parametrize("paper", Paper)
UPRIGHT = {Paper.A4: (595.3, 841.9), Paper.LETTER: (612.0, 792.0)}
LONG = "Brassica of the very long name, kept for years by the family " * 5
ODD = "Rue \U0001f331, b\u00eates;\nand <b>so</b> on"


def example() -> Plan:
    """The plan that the program opens with at first."""
    return read_plan(sample("kestrel-howe.gardenplot")).plan


def covered(count: int, first: date = date(2027, 4, 14), days: int = 9, place: Place | None = None) -> Plan:
    """The plan of two beds with so many covers over the first."""
    plan = metric_plan()
    covers = tuple(
        Cover(f"c{number}", "b1", parse_length(f"{number} cm"), parse_length("3 m"), first, first + timedelta(days))
        for number in range(1, count + 1)
    )
    return evolve(plan, covers=covers, place=place or plan.place)


def boxes(page: Page, side: float) -> int:
    """How many squares of that side in points a page has."""
    return sum(path.closed and all(abs(one - side) < 0.01 for one in path.size) for path in page.paths)


def assert_legible(page: Page, paper: Paper) -> None:
    """Upright, faces in the file, no words smaller than 8 pt, outside the margins or over others."""
    assert page.size == pytest.approx(UPRIGHT[paper], abs=0.1)
    for words in page.words:
        left, bottom, right, top = words.box
        assert words.embedded
        assert words.size >= 8
        assert left > 25
        assert right < page.size[0] - 25
        assert bottom > 20
        assert top < page.size[1] - (15 if "stands for a sign" in words.text else 25)
    for one, other in combinations(page.words, 2):
        assert not _overlap(one.box, other.box), (one.text, other.text)


def _overlap(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide > 0.5 and high > 0.5


@each_paper
@pytest.mark.parametrize("plan", [example(), hand_worked("s2")], ids=["example", "s2"])
def test_every_job_stands_on_the_dates_sheet_with_its_box(plan: Plan, paper: Paper) -> None:
    pages = pages_of(dates_sheet(plan, paper, name="Upper Sill", printed=date(2027, 2, 1)).pdf)
    text = " ".join(page.text for page in pages)
    rows = [row for week in by_week(plan) for row in week.rows]
    assert sum(boxes(page, 12) for page in pages) == len(rows)
    for row in rows:
        assert plain(f"{row.day_words} {row.what} {row.name} {row.amount}").strip() in text
    for week in by_week(plan):
        assert plain(week.days) in text
    for number, page in enumerate(pages, 1):
        assert_legible(page, paper)
        for words in ("Dates by week", "Upper Sill", "printed Mon 1 Feb 2027", f"page {number} of {len(pages)}"):
            assert words in page.text
        assert re.search(r"version [0-9a-f]{4}", page.text)
        assert "local extension service" in page.text
        assert "frost dates are odds" in page.text


def test_days_are_the_largest_in_their_line() -> None:
    (page,) = pages_of(dates_sheet(hand_worked("s1"), Paper.A4).pdf)
    assert {words.text for words in page.words if words.size == 14} >= {
        "7 Mar",
        "18 Mar",
        "4 Apr",
        "11 Apr",
        "16 May",
    }


def test_what_came_about_is_ticked_already() -> None:
    plan = hand_worked("s1")
    done = change_planting(plan, "p1", actual=Actual(sown=date(2025, 3, 18)))
    before, after = (pages_of(dates_sheet(one, Paper.A4).pdf)[0] for one in (plan, done))
    assert boxes(after, 12) == boxes(before, 12)
    assert len(after.paths) == len(before.paths) + 2


def test_a_week_is_kept_on_one_page_where_that_can_hold_it() -> None:
    plan = example()
    texts = [page.text for page in pages_of(dates_sheet(plan, Paper.LETTER).pdf)]
    assert len(texts) > 1
    assert not any("continued" in text for text in texts)
    for week in by_week(plan):
        assert sum(week.days in text for text in texts) == 1


def test_rows_stand_closer_where_the_last_page_would_hold_hardly_any() -> None:
    """Two jobs more than a page holds at its usual pitch: its rows stand closer, and none over another."""
    plan = change_crop(read_plan(sample("tarn-garth.gardenplot")).plan, "kale", hardening_days=None)
    (page,) = pages_of(dates_sheet(plan, Paper.A4).pdf)
    assert boxes(page, 12) == sum(len(week.rows) for week in by_week(plan))
    assert_legible(page, Paper.A4)
    for page in pages_of(dates_sheet(example(), Paper.A4).pdf):
        assert_legible(page, Paper.A4)


def test_a_harvest_says_how_many_must_stand_beside_how_many_are_planted() -> None:
    """S1: orders for 120 pak choi and 40 kohlrabi need 134 and 43 plants, as the count sheet has it."""
    (page,) = pages_of(dates_sheet(hand_worked("s1"), Paper.A4).pdf)
    lines = [plain(words.text) for words in page.words]
    assert lines[lines.index("136 plants for Sat 17 May") + 1] == "120 ordered"
    assert lines[lines.index("45 plants for Sat 17 May") + 1] == "40 ordered"
    assert_legible(page, Paper.A4)


def test_a_week_that_no_page_can_hold_goes_on_over_pages() -> None:
    plan = metric_plan()
    block = plan.plantings[0]
    many = tuple(evolve(block, id=f"p{number}", plants=1, start=None) for number in range(70))
    crowded = evolve(plan, plantings=many, covers=())
    pages = pages_of(dates_sheet(crowded, Paper.A4).pdf)
    assert sum(boxes(page, 12) for page in pages) == sum(len(week.rows) for week in by_week(crowded))
    assert any("Week 14, continued" in page.text for page in pages)
    for page in pages:
        assert_legible(page, Paper.A4)


@each_paper
@pytest.mark.parametrize("name", [LONG, ODD], ids=["long", "odd"])
def test_names_of_any_kind_stay_on_their_line(name: str, paper: Paper) -> None:
    plan = change_crop(change_bed(covered(3), "b1", name=name), "pak-choi", name=name)
    for sheets in (dates_sheet(plan, paper, name=name), door_cards(plan, paper, name=name)):
        for page in pages_of(sheets.pdf):
            assert_legible(page, paper)


def test_without_a_day_there_is_no_dates_sheet_and_without_a_cover_no_card() -> None:
    with pytest.raises(PlanError, match="no day is known"):
        dates_sheet(Plan(), Paper.A4)
    with pytest.raises(PlanError, match="no cover stands"):
        door_cards(metric_plan(), Paper.A4)
    with pytest.raises(PlanError, match="two years at most"):
        door_cards(covered(1, date(2027, 1, 1), 3000), Paper.A4)


@each_paper
def test_a_door_card_has_a_line_for_each_night_of_a_week(paper: Paper) -> None:
    """Covers on from Wed 14 to Fri 23 April 2027: five nights of one week, four of the next."""
    made = door_cards(covered(1), paper, name="Upper Sill", printed=date(2027, 2, 1))
    pages = pages_of(made.pdf)
    assert made.first_page == {"2027-04-12": 0, "2027-04-19": 1}
    assert [boxes(page, 18) for page in pages] == [5, 4]
    assert [boxes(page, 13) for page in pages] == [5, 4]
    for page in pages:
        assert_legible(page, paper)
        for words in (
            "Door card",
            "open if it is sunny",
            "leave shut if it is overcast",
            "vent missed on a sunny day",
            "1 hour before sunset, by the clock at",
            "local extension service",
        ):
            assert page.text.count(words) == 1
    large = [words.text for words in pages[0].words if words.size == 22][1:]
    assert all(re.fullmatch(r"1[89]:\d\d", time) for time in large)
    assert len(large) == 5
    assert "Wed 14 Apr" in pages[0].text
    assert "Tunnel, east, 0.01 – 3.00 m" in pages[0].text


def test_sunset_and_cover_by_are_an_hour_apart_on_the_card() -> None:
    (page, _second) = pages_of(door_cards(covered(1), Paper.A4).pdf)
    found = re.findall(r"(\d\d):(\d\d) (\d\d):(\d\d)", page.text)
    assert len(found) == 5
    assert {(int(a) - int(c), int(b) - int(d)) for a, b, c, d in found} == {(1, 0)}


@pytest.mark.parametrize(("count", "boxed"), [(2, 2), (3, 3), (12, 12), (13, 1), (60, 1)])
def test_each_cover_has_a_box_until_they_are_too_many(count: int, boxed: int) -> None:
    for page in pages_of(door_cards(covered(count), Paper.LETTER).pdf):
        assert boxes(page, 13) == boxed * boxes(page, 18)
        assert_legible(page, Paper.LETTER)


@pytest.mark.parametrize(
    ("place", "says"),
    [
        (Place("Nowhere"), "no latitude and longitude"),
        (Place("Clockless", 57.0, -4.0), "no time zone"),
        (Place("Polar", 89.0, 0.0, "Europe/London"), "the sun does not go down"),
    ],
)
def test_a_card_without_sun_times_says_why(place: Place, says: str) -> None:
    page = pages_of(door_cards(covered(1, place=place), Paper.A4).pdf)[0]
    assert says in page.text
    assert not re.search(r"\d\d:\d\d", page.text)


def test_a_card_without_a_place_says_what_to_type_and_has_lines_to_write_on() -> None:
    page, known = (
        pages_of(door_cards(covered(1, place=place), Paper.A4).pdf)[0]
        for place in (Place(), Place(latitude=54.0, longitude=-2.0, time_zone="Europe/London"))
    )
    for words in ("Type latitude and longitude into the place of the plan", "Write the sunset of each night"):
        assert words in page.text
        assert words not in known.text
    nights = sum(re.fullmatch(r"\d+ Apr", words.text) is not None for words in page.words if words.size == 17)
    assert nights > 1
    assert len(_lines_to_write_on(page)) == 2 * nights
    assert not _lines_to_write_on(known)
    assert not any(words.text == "–" for words in page.words)


def _lines_to_write_on(page: Page) -> list[tuple[float, ...]]:
    return [path.box for path in page.paths if path.size[1] < 0.1 and 40 < path.size[0] < 100]


def test_the_card_of_a_day_is_found() -> None:
    made = door_cards(covered(1), Paper.A4)
    days = (None, date(2027, 1, 1), date(2027, 4, 18), date(2027, 4, 19), date(2027, 12, 1))
    assert [card_for(made, day) for day in days] == [0, 0, 0, 1, 1]


def test_the_same_plan_gives_the_same_bytes() -> None:
    plan = example()
    assert dates_sheet(plan, Paper.A4) == dates_sheet(plan, Paper.A4)
    assert door_cards(plan, Paper.A4).pdf == door_cards(plan, Paper.A4).pdf


def test_words_that_lack_room_on_the_dates_sheet_go_on_below_and_none_is_cut() -> None:
    """S5 with coriander sown after the cabbage: it is too late for seven market days, and no word is made smaller."""
    (short,) = shortages(hand_worked("s5"))
    late = [way.plan for way in short.ways if any("too late for 7" in row.amount_told for row in date_rows(way.plan))]
    assert late
    for plan in late:
        (page,) = pages_of(dates_sheet(plan, Paper.A4).pdf)
        assert "…" not in page.text
        assert "too late for 7 market days from 21 Jun on" in " ".join(page.text.split())
        assert {round(words.size) for words in page.words} <= {9, 10, 11, 12, 14, 22}
        assert_legible(page, Paper.A4)


def test_cards_after_the_first_do_not_ask_for_what_is_typed_into_the_plan() -> None:
    first, *others = pages_of(door_cards(covered(1, days=20, place=Place()), Paper.A4).pdf)
    assert len(others) > 1
    for page in (first, *others):
        assert ("Type latitude and longitude" in page.text) is (page is first)
        assert "Write the sunset of each night on its line" in page.text
        assert "opened next morning" in page.text


def test_the_dates_sheet_says_how_a_day_in_the_ground_lies_to_the_last_freeze() -> None:
    """S2 by hand: broccoli goes out on 7 May, 13 days before the day after which half of all years have a freeze."""
    (page,) = pages_of(dates_sheet(hand_worked("s2"), Paper.A4).pdf)
    said = plain(" ".join(page.text.split()))
    assert (
        said.count("13 days before Tue 20 May 2025; in 50% of years a freeze comes later still: keep the cover on")
        == 1
    )
    assert_legible(page, Paper.A4)


def test_the_dates_sheet_says_at_the_harvest_how_its_last_day_lies_to_the_first_freeze() -> None:
    """Ready on 19 August, and cut until 8 September (by hand)."""
    crop = {"id": "a", "name": "Bean", "in_row": "20 cm", "row_spacing": "40 cm", "frost": "tender", "field_days": 70,
            "harvest_days": 20}  # fmt: skip
    plan = plan_from(
        {"first_freeze": {"50%": "09-20", "10%": "09-05"}},
        beds=[{"id": "b1", "name": "Bed 1", "length": "9 m", "width": "75 cm", "edge": "7.5 cm"}],
        crops=[crop], plantings=[{"id": "p1", "bed": "b1", "crop": "a", "in_ground": "2025-06-10"}],
    )  # fmt: skip
    (page,) = pages_of(dates_sheet(plan, Paper.A4).pdf)
    said = plain(" ".join(page.text.split()))
    assert said.count("by Fri 5 Sep 2025 it has frozen in 10% of years, in up to 50% by its last day") == 1
    assert_legible(page, Paper.A4)


def test_a_cover_without_a_last_day_says_up_to_when_the_cards_tell_it() -> None:
    """S3's cover has no days: the cards end with its lettuce, though tomatoes stand on, of which no end is known."""
    for plan, is_open in ((hand_worked("s3"), True), (covered(1), False)):
        for page in pages_of(door_cards(plan, Paper.A4).pdf):
            said = " ".join(page.text.split())
            assert ("does not say when a cover comes off for good" in said) is is_open
            assert_legible(page, Paper.A4)
