"""Days as they are typed: any that the program shows is read back, and what is none says how to write one."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.drawing.days import day_words
from gardenplot.errors import PlanError
from gardenplot.gestures.actual_typed import ACTUAL_FIELDS
from gardenplot.gestures.dates_typed import DATE_FIELDS
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.reading import text_of


@given(st.dates(date(1000, 1, 1)))
def test_a_day_is_read_as_it_is_shown_and_as_it_is_printed(day: date) -> None:
    assert date_from(text_of(day)) == day
    assert date_from(day_words(day)) == day


def test_a_typed_day_stands_in_its_line_in_words_of_which_each_can_be_typed_over() -> None:
    shown = text_of(date(2027, 5, 15))
    assert shown == "15 May 2027"
    assert [date_from(shown.replace("15", str(day))) for day in (14, 16)] == [date(2027, 5, 14), date(2027, 5, 16)]


@pytest.mark.parametrize(
    "example", [field.example for field in (*DATE_FIELDS, *ACTUAL_FIELDS) if "2027" in field.example]
)
def test_an_example_of_a_day_is_written_as_days_are_shown(example: str) -> None:
    assert text_of(date_from(example)) == example


@pytest.mark.parametrize(
    "typed",
    [
        "9 Apr 2027",
        "9 april 2027",
        "Fri 9 Apr 2027",
        "Friday, 9 April 2027",
        "April 9, 2027",
        "apr. 9 2027",
        "09 Apr 2027",
    ],
)
def test_the_month_may_be_written_in_letters_before_or_behind_the_day(typed: str) -> None:
    assert date_from(typed) == date(2027, 4, 9)


def test_an_empty_line_is_no_day() -> None:
    assert date_from("") is None


@pytest.mark.parametrize(
    "typed",
    [
        "9 Apr 2027 noon", "2027-02-29", "29 Feb 2027", "04/09/2027", "9.4.2027", "2027-13-01", "2027-W15-5",
        "9 April", "Ap 9 2027", "9 Apr 27", "0 Apr 2027", "9 9 2027", "Apr Apr 2027", "Fri 9 2027", "９ Apr 2027",
        "tomorrow", " ",
    ],
)  # fmt: skip
def test_what_is_no_date_says_how_to_write_one(typed: str) -> None:
    with pytest.raises(PlanError, match="write it like 2027-04-09 or 9 Apr 2027"):
        date_from(typed)


def test_a_day_of_the_week_that_it_is_not_is_told() -> None:
    with pytest.raises(PlanError, match="“Sun 3 Jul 2027” is no Sunday but a Saturday"):
        date_from("Sun 3 Jul 2027")
