"""Typed text into the values of a plan, and the words where it is none."""

import pytest

from gardenplot.errors import GardenplotError, LengthError, PlanError
from gardenplot.gestures.reading import (
    length_from,
    list_from,
    needed_length,
    spacing_from,
    spacing_text,
    text_of,
    whole_from,
)
from gardenplot.units import Units, parse_length, parse_share


@pytest.mark.parametrize(
    ("typed", "shown", "units", "text"),
    [
        ("40", "", Units.METRIC, "40 cm"),
        ("40", "", Units.FEET_AND_INCHES, "40 in"),
        ("40", "", Units.DECIMAL_FEET, "40 ft"),
        ("1.5", "3 m", Units.METRIC, "1.5 m"),
        ("90", "75 mm", Units.METRIC, "90 mm"),
        ("8", "12 in", Units.METRIC, "8 in"),
        ("30", "2' 6\"", Units.FEET_AND_INCHES, "30 in"),
        ("1 m", "75 cm", Units.METRIC, "1 m"),
        ("2' 6\"", "75 cm", Units.METRIC, "2' 6\""),
    ],
)
def test_a_number_alone_takes_the_unit_that_stood_there(typed: str, shown: str, units: Units, text: str) -> None:
    length = length_from(typed, shown, units)
    assert length == parse_length(text)
    assert str(length) == text


def test_an_empty_line_is_nothing() -> None:
    assert (whole_from(""), length_from("", "", Units.METRIC)) == (None, None)


def test_a_length_that_is_needed_may_not_be_left_out() -> None:
    with pytest.raises(PlanError, match="a length is needed"):
        needed_length("", "", Units.METRIC)


@pytest.mark.parametrize(
    ("typed", "texts"),
    [
        ("", []),
        ("30 cm", ["30 cm"]),
        ("30 cm to 45 cm", ["30 cm", "45 cm"]),
        ("30 cm – 45 cm", ["30 cm", "45 cm"]),
        ("30–45", ["30 cm", "45 cm"]),
        ("1 ft to 18 in", ["1 ft", "18 in"]),
    ],
)
def test_a_row_spacing_is_one_length_or_the_least_and_the_most(typed: str, texts: list[str]) -> None:
    assert spacing_from(typed, "", Units.METRIC) == tuple(parse_length(text) for text in texts)


@pytest.mark.parametrize(
    ("typed", "shown"), [("25 to 40 cm", "10 in"), ("25 cm to 40", "10 in to 15 in"), ("25–40 cm", "")]
)
def test_the_unit_of_one_end_of_a_row_spacing_is_that_of_the_other(typed: str, shown: str) -> None:
    """In a plan in feet and inches 25 would be inches beside 40 cm, or 40 beside 25 cm."""
    spacing = spacing_from(typed, shown, Units.FEET_AND_INCHES)
    assert spacing == (parse_length("25 cm"), parse_length("40 cm"))


def test_the_first_numbers_of_a_list_take_the_unit_of_the_next_that_has_one() -> None:
    for typed in ("20; 25 cm; 30", "20 cm; 25; 30", "20; 25; 30 cm"):
        assert list_from(typed, Units.FEET_AND_INCHES) == tuple(map(parse_length, ("20 cm", "25 cm", "30 cm")))
    assert list_from("8; 10", Units.FEET_AND_INCHES) == (parse_length("8 in"), parse_length("10 in"))


def test_a_row_spacing_is_read_as_it_is_shown() -> None:
    spacing = (parse_length("1' 6\""), parse_length("60 cm"))
    assert spacing_from(spacing_text(spacing), spacing_text(spacing), Units.FEET_AND_INCHES) == spacing


@pytest.mark.parametrize("typed", ["30 cm to", "to 45 cm", "30 cm to wide", "30 cm and 45 cm", "-30 cm to 45 cm"])
def test_what_is_no_row_spacing_says_so(typed: str) -> None:
    with pytest.raises(GardenplotError):
        spacing_from(typed, "", Units.METRIC)


@pytest.mark.parametrize(("typed", "number"), [("120", 120), ("0", 0), ("1\u2009200", 1200), ("10 000", 10_000)])
def test_whole_numbers_may_have_spaces_for_thousands(typed: str, number: int) -> None:
    assert whole_from(typed) == number


@pytest.mark.parametrize("typed", ["-1", "1.5", "1,200", "½", "²", "١٢", "twelve", "1e3", "9999999999"])
def test_what_is_no_whole_number_says_how_to_write_one(typed: str) -> None:
    with pytest.raises(PlanError, match="write it like 120"):
        whole_from(typed)


@pytest.mark.parametrize("typed", ["wide", "30 parsecs", "1/0 in", "-3 cm", "10.5 km", "1,000 cm", "11000 m"])
def test_what_is_no_length_says_so(typed: str) -> None:
    with pytest.raises(LengthError):
        length_from(typed, "", Units.METRIC)


def test_words_of_an_error_stay_short_however_much_was_typed() -> None:
    with pytest.raises(PlanError) as caught:
        whole_from("x" * 10_000)
    assert len(str(caught.value)) < 120


@pytest.mark.parametrize(
    ("value", "text"), [(None, ""), (0, "0"), (12.5, "12.5"), (parse_share("10 %"), "10 %"), ("Leek", "Leek")]
)
def test_values_are_shown_as_they_are_typed(value: object, text: str) -> None:
    assert text_of(value) == text
