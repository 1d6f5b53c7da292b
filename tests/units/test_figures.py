"""Figures are rounded once, half up, from the exact length, and look like a tape."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.units import CM, FOOT, INCH, LONGEST, MM, M, Units, parse_length
from gardenplot.units.figures import Figure, apart, as_measured, grouped, offset, span, tape

Shown = Callable[[int, Units], Figure]

FEET_AND_INCHES, DECIMAL_FEET, METRIC = Units.FEET_AND_INCHES, Units.DECIMAL_FEET, Units.METRIC

STEPS = [
    (tape, METRIC, CM),
    (tape, DECIMAL_FEET, FOOT // 100),
    (tape, FEET_AND_INCHES, INCH // 4),
    (offset, METRIC, MM),
    (offset, DECIMAL_FEET, FOOT // 100),
    (offset, FEET_AND_INCHES, INCH // 8),
]
"""To what each figure is rounded."""

every_step = pytest.mark.parametrize(("shown", "units", "step"), STEPS)


def plain(figure: Figure) -> str:
    """A figure with the blanks of a typewriter."""
    return str(figure).replace("\u2009", " ")


@pytest.mark.parametrize(
    ("typed", "units", "text"),
    [
        ("29 13/16 in", FEET_AND_INCHES, "2′ 5 13/16″"), ("7 3/16 in", FEET_AND_INCHES, "7 3/16″"),
        ("30 in", FEET_AND_INCHES, "2′ 6″"), ("1/3 ft", FEET_AND_INCHES, "4″"), ("7.425 m", METRIC, "7.425 m"),
        ("76.2 cm", METRIC, "76.2 cm"), ("15 m", METRIC, "15.00 m"), ("10 ft", METRIC, "3.048 m"),
        ("7 3/16 ft", METRIC, "2.19 m"), ("4.125 ft", DECIMAL_FEET, "4.125 ft"), ("2 m", DECIMAL_FEET, "6.56 ft"),
    ],
)  # fmt: skip
def test_a_size_is_told_as_it_was_typed_as_far_as_a_tape_goes(typed: str, units: Units, text: str) -> None:
    assert plain(as_measured(parse_length(typed).nm, units)) == text


@pytest.mark.parametrize(
    ("typed", "units", "text"),
    [
        ("53.5 ft", FEET_AND_INCHES, "53′ 6″"),
        ("53.5 ft", DECIMAL_FEET, "53.50 ft"),
        ("53.5 ft", METRIC, "16.31 m"),
        ("2' 6 1/2\"", FEET_AND_INCHES, "2′ 6½″"),
        ('30"', FEET_AND_INCHES, "2′ 6″"),
        ("8 in", FEET_AND_INCHES, "0′ 8″"),
        ("1/4 in", FEET_AND_INCHES, "0′ 0¼″"),
        ("14.6 m", METRIC, "14.60 m"),
        ("7.425 m", METRIC, "7.43 m"),
        ("10.925 m", METRIC, "10.93 m"),
        ("14 m", FEET_AND_INCHES, "45′ 11¼″"),
        ("14 m", DECIMAL_FEET, "45.93 ft"),
        ("12 ft 11.9 in", FEET_AND_INCHES, "13′ 0″"),
        ("0 m", METRIC, "0.00 m"),
        ("0 m", FEET_AND_INCHES, "0′ 0″"),
    ],
)
def test_a_tape_reading_looks_like_the_tape(typed: str, units: Units, text: str) -> None:
    assert plain(tape(parse_length(typed).nm, units)) == text


@pytest.mark.parametrize(
    ("typed", "units", "text"),
    [
        ("7.5 cm", METRIC, "7.5 cm"),
        ("25 cm", METRIC, "25 cm"),
        ("1.20 m", METRIC, "120 cm"),
        ("0 cm", METRIC, "0 cm"),
        ("0.45 mm", METRIC, "0 cm"),
        ("0.5 mm", METRIC, "0.1 cm"),
        ("2 1/2 in", FEET_AND_INCHES, "2½″"),
        ("30 in", FEET_AND_INCHES, "30″"),
        ("1/8 in", FEET_AND_INCHES, "⅛″"),
        ("8 in", DECIMAL_FEET, "0.67 ft"),
    ],
)
def test_an_offset_is_short(typed: str, units: Units, text: str) -> None:
    assert plain(offset(parse_length(typed).nm, units)) == text


@pytest.mark.parametrize(
    ("typed", "units", "text"),
    [
        ("7 3/16 in", FEET_AND_INCHES, "7 3/16″"),  # 7¼″ would be 4 in more after 64 plants
        ("1 5/32 in", FEET_AND_INCHES, "1 5/32″"),
        ("7 1/8 in", FEET_AND_INCHES, "7⅛″"),
        ("25 cm", FEET_AND_INCHES, "9⅞″"),  # 9.8425 in is told exactly by no such part of an inch
        ("7.5 in", DECIMAL_FEET, "0.625 ft"),
        ("7 in", DECIMAL_FEET, "0.58 ft"),
        ("12.55 cm", METRIC, "12.55 cm"),
        ("12.5 cm", METRIC, "12.5 cm"),
        ("5 in", METRIC, "12.7 cm"),
        ("3 in", METRIC, "7.6 cm"),
    ],
)
def test_from_plant_to_plant_is_told_exactly_where_it_can_be(typed: str, units: Units, text: str) -> None:
    assert plain(apart(parse_length(typed).nm, units)) == text


@pytest.mark.parametrize(
    ("typed", "parts", "text"),
    [
        ("3' 11 3/8\"", 4, "3′ 11½″"),
        ("3' 11 3/8\"", 8, "3′ 11⅜″"),
        ("3' 11 23/64\"", 4, "3′ 11¼″"),
        ("3' 11 7/8\"", 4, "4′ 0″"),
        ("1/8 in", 4, "0′ 0¼″"),
    ],
)
def test_half_a_part_of_an_inch_goes_up(typed: str, parts: int, text: str) -> None:
    assert plain(tape(parse_length(typed).nm, FEET_AND_INCHES, inch_parts=parts)) == text


def test_a_nineteenth_of_75_feet_is_rounded_from_its_exact_length() -> None:
    assert plain(tape(75 * FOOT // 19, FEET_AND_INCHES)) == "3′ 11¼″"
    assert plain(tape(75 * FOOT // 19, FEET_AND_INCHES, inch_parts=8)) == "3′ 11⅜″"


@every_step
@given(count=st.integers(0, 1000))
def test_a_half_goes_up_and_a_hair_less_goes_down(shown: Shown, units: Units, step: int, count: int) -> None:
    half = count * step + step // 2
    assert shown(half, units) == shown((count + 1) * step, units)
    assert shown(half - 1, units) == shown(count * step, units)


@every_step
@given(nm=st.integers(0, LONGEST - M))
def test_what_is_shown_reads_back_to_the_nearest_step(shown: Shown, units: Units, step: int, nm: int) -> None:
    nearest = (2 * nm + step) // (2 * step) * step
    assert parse_length(str(shown(nm, units))).nm == nearest


@every_step
@given(nm=st.integers(1, LONGEST))
def test_less_than_nothing_is_the_same_figure_with_a_minus(shown: Shown, units: Units, step: int, nm: int) -> None:
    positive, negative = str(shown(nm, units)), str(shown(-nm, units))
    assert negative == (f"−{positive}" if 2 * nm >= step else positive)


@every_step
def test_nothing_never_has_a_minus(shown: Shown, units: Units, step: int) -> None:
    almost_nothing = -(step // 2) + 1
    assert str(shown(almost_nothing, units)) == str(shown(0, units))
    assert "−" not in str(shown(0, units))


@pytest.mark.parametrize(
    ("nm", "units", "text"),
    [
        (M, METRIC, "1.00 m"),
        (M - MM, METRIC, "99.9 cm"),
        (-2 * M, METRIC, "−2.00 m"),
        (FOOT, FEET_AND_INCHES, "1′ 0″"),
        (FOOT - INCH // 8, FEET_AND_INCHES, "11⅞″"),
        (FOOT, DECIMAL_FEET, "1.00 ft"),
    ],
)
def test_a_length_of_ground_is_a_tape_reading_from_one_metre_or_foot_on(nm: int, units: Units, text: str) -> None:
    assert plain(span(nm, units)) == text


def test_the_unit_stands_apart_from_the_number_so_that_it_can_be_set_smaller() -> None:
    assert tape(M, METRIC) == Figure("1.00", "m")
    assert tape(FOOT, FEET_AND_INCHES) == Figure("1′\u20090″", "")


@pytest.mark.parametrize(
    ("count", "words"),
    [(0, "0"), (999, "999"), (1000, "1\u2009000"), (1_234_567, "1\u2009234\u2009567"), (-1620, "−1\u2009620")],
)
def test_a_count_has_its_thousands_apart(count: int, words: str) -> None:
    assert grouped(count) == words
