"""Lengths, shares and rates are read as people write them, and refused with what was typed."""

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import LengthError
from gardenplot.units import (
    CM,
    FOOT,
    INCH,
    LONGEST,
    MM,
    Length,
    M,
    Share,
    parse_area_rate,
    parse_length,
    parse_place,
    parse_rate,
    parse_share,
    unit_of,
)
from tests.plans import lengths

YARD = 3 * FOOT

METRIC = [
    ("14.6 m", 14_600 * MM),
    ("14,6 m", 14_600 * MM),
    ("14.6m", 14_600 * MM),
    ("75cm", 75 * CM),
    ("7.5 cm", 75 * MM),
    ("7,5cm", 75 * MM),
    (".5 m", 50 * CM),
    (",5 m", 50 * CM),
    ("0,500 m", 50 * CM),
    ("1.000 m", M),
    ("1 m 50 cm", 150 * CM),
    ("1m50cm", 150 * CM),
    ("3 dm", 30 * CM),
    ("2 metres", 2 * M),
    ("1 meter", M),
    ("5 mm", 5 * MM),
    ("50 centimetres", 50 * CM),
    ("35 millimeters", 35 * MM),
    ("0.000001 mm", 1),
    ("0 cm", 0),
    ("10000 m", LONGEST),
]
INCHES = [
    ('8"', 8 * INCH),
    ("8 in", 8 * INCH),
    ("8 in.", 8 * INCH),
    ("8 inches", 8 * INCH),
    ("8 IN", 8 * INCH),
    ("8''", 8 * INCH),
    ("8″", 8 * INCH),
    ("8”", 8 * INCH),
    ("1/2 in", INCH // 2),
    ('1/2"', INCH // 2),
    ("½ in", INCH // 2),
    ("1⁄2 in", INCH // 2),
    ("2 1/2 in", INCH * 5 // 2),
    ("2-1/2 in", INCH * 5 // 2),
    ("2½ in", INCH * 5 // 2),
    ("2 ½″", INCH * 5 // 2),
    ("2.5 in", INCH * 5 // 2),
    ("3⅜ in", INCH * 27 // 8),
    ("1/64 in", INCH // 64),
]
FEET = [
    ("2' 6 1/2\"", INCH * 61 // 2),
    ("2'6½\"", INCH * 61 // 2),
    ("2′ 6½″", INCH * 61 // 2),
    ("2′\u20096½″", INCH * 61 // 2),
    ("2’ 6 1⁄2”", INCH * 61 // 2),
    ("2ft 6in", 30 * INCH),
    ("2ft. 6in.", 30 * INCH),
    ("2 feet 6 inches", 30 * INCH),
    ("2' .5\"", 24 * INCH + INCH // 2),
    ("1 ft .5 in", 12 * INCH + INCH // 2),
    ("53.5 ft", 53 * FOOT + 6 * INCH),
    ("53' 6\"", 53 * FOOT + 6 * INCH),
    ("53 1/2 ft", 53 * FOOT + 6 * INCH),
    ("⅓ ft", 4 * INCH),
    ("45.93 ft", 4593 * FOOT // 100),
    ("5 yd", 5 * YARD),
    ("1 yd 2 ft 3 in", 63 * INCH),
]


@pytest.mark.parametrize(("typed", "nm"), METRIC + INCHES + FEET)
def test_a_length_is_read_exactly_and_kept_as_typed(typed: str, nm: int) -> None:
    assert parse_length(typed) == Length(nm, typed)


@given(lengths(0, 100 * M))
def test_every_spelling_is_read_exactly_and_kept_as_typed(length: Length) -> None:
    assert parse_length(length.text) == length


@given(lengths(0, 100 * M), st.sampled_from([" ", "  ", "\t", "\u00a0", "\u202f"]))
def test_blanks_and_capitals_change_no_length(length: Length, blank: str) -> None:
    assert parse_length(blank + length.text.upper().replace(" ", blank) + blank).nm == length.nm


@pytest.mark.parametrize(
    ("typed", "unit", "nm", "kept"),
    [("25", "cm", 25 * CM, "25 cm"), (" 2 1/2 ", "in", INCH * 5 // 2, "2 1/2 in"), ("7,5", "m", 7500 * MM, "7,5 m")],
)
def test_a_number_alone_takes_the_unit_of_its_field(typed: str, unit: str, nm: int, kept: str) -> None:
    assert parse_length(typed, bare=unit) == Length(nm, kept)


def test_a_length_with_a_unit_does_not_take_that_of_its_field() -> None:
    assert parse_length("8 in", bare="cm") == Length(8 * INCH, "8 in")


@pytest.mark.parametrize(
    ("typed", "unit"),
    [("20 cm", "cm"), ("20CM", "cm"), ("2½ in", "in"), ("8″", '"'), ("2' 6\"", None), ("5", None), ("abc", None)],
)
def test_the_unit_of_a_length_is_known_where_it_is_one(typed: str, unit: str | None) -> None:
    assert unit_of(typed) == unit


@pytest.mark.parametrize(
    "typed",
    ["abc", "-5 cm", "−5 cm", "1e30 m", "NaN", "nan m", "inf", "5", "1,000 ft", "1/0 in", "1/3 in", "20000 m",
     "10000.001 m", "5.", "5 furlongs", "8 in x 4", "2' 6", "6\" 2'", "5 cm 1 m", "1.5/2 in", "8 in 8 in", "cm",
     "5 5 cm", "0x10 cm", "1'500 mm", "1’000 cm", "5;cm", "²", "0.0000001 mm", "+5 cm", "5 - 6 cm"],
)  # fmt: skip
def test_what_is_no_length_is_refused_with_what_was_typed(typed: str) -> None:
    with pytest.raises(LengthError, match=re.escape(f"“{typed}”")):
        parse_length(typed)


@pytest.mark.parametrize("typed", ["", " ", "\u00a0"])
def test_nothing_is_no_length(typed: str) -> None:
    with pytest.raises(LengthError, match="is no length: write it like 30 cm"):
        parse_length(typed)


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("abc", "write it like 30 cm"),
        ("5", "write it like 30 cm"),
        ("-5 cm", "less than nothing"),
        ("1,000 ft", "in two ways"),
        ("1/3 in", "finer than a nanometre"),
        ("20000 m", "longer than 10 km"),
    ],
)
def test_the_refusal_says_what_is_wrong(typed: str, hint: str) -> None:
    with pytest.raises(LengthError, match=hint):
        parse_length(typed)


@pytest.mark.parametrize(
    ("typed", "nm", "text"),
    [
        ("-2 m", -2 * M, "-2 m"),
        ("− 30", -30 * CM, "− 30 cm"),
        ("-6' 3\"", -75 * INCH, "-6' 3\""),
        ("2", 2 * CM, "2 cm"),
    ],
)
def test_a_place_may_lie_on_the_other_side_of_its_mark(typed: str, nm: int, text: str) -> None:
    assert parse_place(typed, bare="cm") == Length(nm, text)


@pytest.mark.parametrize("typed", ["--2 m", "- −2 m", "-1 m + 3 m", "1 m - 2 m", "-", "-x"])
def test_a_place_is_no_riddle(typed: str) -> None:
    with pytest.raises(LengthError):
        parse_place(typed)


def test_a_point_that_may_end_a_unit_or_begin_a_number_is_not_guessed() -> None:
    with pytest.raises(LengthError, match=re.escape("“2ft.6in”")):
        parse_length("2ft.6in")


@pytest.mark.parametrize("typed", ["9" * 5000 + " m", "1/" + "9" * 5000 + " in", "9" * 5000 + "/1 in", "x" * 5000])
def test_endless_text_is_refused_in_a_short_sentence(typed: str) -> None:
    with pytest.raises(LengthError) as refused:
        parse_length(typed)
    assert typed[:30] in str(refused.value)
    assert len(str(refused.value)) < 200


PIECES = [
    "1",
    "2",
    "40",
    "007",
    "1/2",
    "0",
    " ",
    " ",
    ".",
    ",",
    "-",
    "½",
    "'",
    '"',
    "″",
    "ft",
    "in",
    "cm",
    "m",
    "e",
    "x",
]


@given(st.text() | st.lists(st.sampled_from(PIECES), max_size=8).map("".join))
def test_any_text_is_a_length_of_sense_or_refused(typed: str) -> None:
    try:
        length = parse_length(typed)
    except LengthError:
        return
    assert 0 <= length.nm <= LONGEST
    assert parse_length(length.text) == length


@pytest.mark.parametrize(
    ("typed", "part"),
    [("10 %", Fraction(1, 10)), ("10%", Fraction(1, 10)), ("12,5 %", Fraction(1, 8)), ("0 %", 0), ("100 %", 1)],
)
def test_a_share_is_read_exactly(typed: str, part: Fraction) -> None:
    assert parse_share(typed) == Share(Fraction(part), typed)


@pytest.mark.parametrize("typed", ["", "10", "0.1", "-1 %", "101 %", "100.1 %", "1000 %", "ten %", "10 % 5 %"])
def test_what_is_no_share_is_refused_with_what_was_typed(typed: str) -> None:
    with pytest.raises(LengthError, match=re.escape(f"“{typed}” is no share")):
        parse_share(typed)


@pytest.mark.parametrize(
    ("typed", "per_metre"),
    [("40 / m", Fraction(40)), ("12 / ft", 12 / Fraction("0.3048")), ("12/ft", 12 / Fraction("0.3048")),
     ("1/2 / cm", Fraction(50)), ("2,5 / m", Fraction("2.5"))],
)  # fmt: skip
def test_a_rate_along_the_row_is_read_exactly(typed: str, per_metre: Fraction) -> None:
    rate = parse_rate(typed)
    assert (rate.per_nm * M, rate.text) == (per_metre, typed)


@pytest.mark.parametrize(
    ("typed", "per_square_metre"),
    [("400 / m2", Fraction(400)), ("400 / m²", Fraction(400)), ("40 / sq ft", 40 / Fraction("0.3048") ** 2),
     ("40 / square foot", 40 / Fraction("0.3048") ** 2), ("9 / sq. yd", 9 / Fraction("0.9144") ** 2)],
)  # fmt: skip
def test_a_rate_over_ground_is_read_exactly(typed: str, per_square_metre: Fraction) -> None:
    rate = parse_area_rate(typed)
    assert (rate.per_nm2 * M * M, rate.text) == (per_square_metre, typed)


NO_RATES = ["12", "12 ft", "/ ft", "12 / acre", "-1 / m", "1/0 / m", "1,000 / m", "1/" + "9" * 5000 + " / m"]


@pytest.mark.parametrize("typed", [*NO_RATES, "12 / m2"])
def test_what_is_no_rate_along_the_row_is_refused_with_what_was_typed(typed: str) -> None:
    with pytest.raises(LengthError, match=re.escape(f"“{typed[:30]}")):
        parse_rate(typed)


@pytest.mark.parametrize("typed", [*NO_RATES, "12 / m"])
def test_what_is_no_rate_over_ground_is_refused_with_what_was_typed(typed: str) -> None:
    with pytest.raises(LengthError, match=re.escape(f"“{typed[:30]}")):
        parse_area_rate(typed)
