"""Sums of lengths in any mix of units: exact, kept as typed, and refused with the part that is wrong."""

import re
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import LengthError
from gardenplot.plan import bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.units import CM, FOOT, INCH, MM, Length, M, parse_length, unit_of
from tests.plans import feet_plan, lengths

SUMS = [
    ("46' 8\" + 16 in", 48 * FOOT),
    ("2 m - 15 cm", 185 * CM),
    ("2 m − 15 cm", 185 * CM),
    ("2m-15cm", 185 * CM),
    ("1 m + 1 ft", M + FOOT),
    ("1 yd + 2 ft + 3 in", 63 * INCH),
    ("2½ in + ½ in", 3 * INCH),
    ("1/3 in + 2/3 in", INCH),
    ('6\' 0" - 2"', 70 * INCH),
    ("6' - 14\"", 58 * INCH),
    ("2-1/2 in + 1 in", INCH * 7 // 2),
    ("1 m - 100 cm", 0),
    ("20 m + 5 mm - 19 m", M + 5 * MM),
]


@pytest.mark.parametrize(("typed", "nm"), SUMS)
def test_a_sum_is_read_exactly_and_kept_as_typed(typed: str, nm: int) -> None:
    assert parse_length(typed) == Length(nm, typed)


terms = st.lists(lengths(0, 100 * M), min_size=2, max_size=6)


@given(terms)
def test_lengths_in_any_spelling_add_up(some: Sequence[Length]) -> None:
    typed = " + ".join(one.text for one in some)
    assert parse_length(typed) == Length(sum(one.nm for one in some), typed)


@given(lengths(0, 100 * M), lengths(0, 100 * M))
def test_what_is_added_can_be_taken_away_again(one: Length, other: Length) -> None:
    total = parse_length(f"{one.text} + {other.text}")
    assert parse_length(f"{total.text} - {one.nm} nm".replace(f"{one.nm} nm", f"{one.nm / MM:.6f} mm")).nm == other.nm


@pytest.mark.parametrize(
    ("typed", "unit", "nm", "kept"),
    [("46 + 16", "cm", 62 * CM, "46 cm + 16 cm"), ("46 - 16", "in", 30 * INCH, "46 in - 16 in"),
     ("1/2 + 2½", "in", 3 * INCH, "1/2 in + 2 1/2 in")],
)  # fmt: skip
def test_numbers_alone_take_the_unit_of_their_field(typed: str, unit: str, nm: int, kept: str) -> None:
    assert parse_length(typed, bare=unit) == Length(nm, kept)
    assert parse_length(kept) == Length(nm, kept)


@pytest.mark.parametrize(
    ("typed", "wrong"),
    [
        ("2 m + 15", "15 has no unit"),
        ("30 + 15 cm", "30 has no unit"),
        ("1 m + abc", "“abc” is no length"),
        ("1 m + 1,000 ft", "“1,000 ft” can be read in two ways"),
        ("5 cm + -3 cm", "“-3 cm” is no length"),
        ("5 cm +", "“5 cm +” is no length"),
        ("+ 5 cm", "“+ 5 cm” is no length"),
        ("5 cm ++ 3 cm", "“5 cm ++ 3 cm” is no length"),
        ("1 m - 2 m", "“1 m - 2 m” comes to less than nothing"),
        ("9 km + 1 m", "“9 km” is no length"),
        ("9999 m + 2 m", "longer than 10 km"),
        ("1/3 in + 1 in", "finer than a nanometre"),
        (" + ".join(["1 cm"] * 13), "is no length"),
    ],
)
def test_the_part_that_is_wrong_is_named(typed: str, wrong: str) -> None:
    with pytest.raises(LengthError, match=re.escape(wrong)):
        parse_length(typed, bare="cm")


@pytest.mark.parametrize(
    ("typed", "together", "less"),
    [
        ("6'-2\"", "6' 2\"", "6' 0 in - 2\""),
        ("6 ft - 2 in", "6 ft 2 in", "6 ft 0 in - 2 in"),
        ("1 m + 6' - 2 1/2\"", "6' 2 1/2\"", "6' 0 in - 2 1/2\""),
        ("3 - 1/2 in", "3 1/2 in", "3 in - 1/2 in"),
    ],
)
def test_a_dash_that_may_be_no_minus_is_not_guessed(typed: str, together: str, less: str) -> None:
    with pytest.raises(LengthError, match=re.escape(f"in two ways: write {together} or {less}")):
        parse_length(typed)
    assert parse_length(together).nm > parse_length(less).nm


PIECES = ["1", "40", "1/2", " ", " ", "+", "-", " - ", " + ", "½", "'", '"', "ft", "in", "cm", "m", "."]


@given(st.lists(st.sampled_from(PIECES), max_size=10).map("".join), st.sampled_from([None, "cm", "in"]))
def test_any_text_is_a_sum_of_sense_or_refused(typed: str, bare: str | None) -> None:
    try:
        length = parse_length(typed, bare=bare)
    except LengthError:
        return
    assert parse_length(length.text) == length


def test_a_sum_is_stored_as_it_was_typed() -> None:
    plan = change_bed(feet_plan(), "t1", length=parse_length("46' 8\" + 16 in"))
    kept = plan_of_text(text_of(plan)).plan
    assert bed_of(kept, "t1").length == Length(48 * FOOT, "46' 8\" + 16 in")


@pytest.mark.parametrize(("typed", "unit"), [("30 cm + 15 cm", "cm"), ("2 m - 15 cm", None)])
def test_a_sum_in_one_unit_has_that_unit(typed: str, unit: str | None) -> None:
    assert unit_of(typed) == unit
