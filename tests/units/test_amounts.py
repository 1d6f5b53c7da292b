"""Weights, volumes, counts and prices are read as people write them or refused, and never as something else."""

from fractions import Fraction

import pytest

from gardenplot.errors import LengthError
from gardenplot.units import CM, INCH, LITRE, M, parse_amount, parse_length, parse_price
from gardenplot.units.amounts import parse_flow, parse_line_flow, parse_mass, parse_mass_rate, parse_volume


@pytest.mark.parametrize(
    ("typed", "money"),
    [("3.50", "3.5"), ("3,50 €", "3.5"), ("€ 3.50", "3.5"), (".50", "0.5"), (",50", "0.5"), ("$.50", "0.5"),
     ("US$ 3", "3"), ("Fr. 5", "5"), ("5 kr.", "5"), ("5,-", "5"), ("5.– Fr", "5"), ("4 zł", "4"), ("¥500", "500")],
)  # fmt: skip
def test_a_price_is_read_with_or_without_the_sign_of_its_money(typed: str, money: str) -> None:
    price = parse_price(typed)
    assert (price.money, price.text) == (Fraction(money), typed)


@pytest.mark.parametrize(
    "typed",
    ["-3.50", "$-5", "−5", "(5)", "3½", "1/2", "10%", "50p", "50 ct", "50 ¢", "kr.50", "1,000", "1.000", "1'000",
     "1 000", "1e3", "5.", ".", "€", "5 each", ""],
)  # fmt: skip
def test_what_is_no_price_or_perhaps_another_one_is_refused(typed: str) -> None:
    """A minus, half a unit, a hundredth of the money or a sign for thousands would be passed over."""
    with pytest.raises(LengthError, match="no price"):
        parse_price(typed)


@pytest.mark.parametrize(
    ("typed", "part", "value"),
    [("500", "pieces", 500), ("500 seeds", "pieces", 500), ("3 rolls", "pieces", 3), ("10 g", "grams", 10),
     ("10 grams", "grams", 10), ("2 kilos", "grams", 2000), ("1 pound", "grams", Fraction("453.59237")),
     ("2 ounces", "grams", Fraction("56.69904625")), ("50 centimetres", "nm", 50 * CM), ("3 meters", "nm", 3 * M),
     ("500 millilitres", "nm3", LITRE // 2), ("2 cubic metres", "nm3", 2 * M**3)],
)  # fmt: skip
def test_a_measure_in_full_words_is_no_count_of_things(typed: str, part: str, value: Fraction) -> None:
    """1 lb = 453.592 37 g, 1 oz a sixteenth of it (NIST SP 811, appendix B.8); the rest by the prefixes of the SI."""
    amount = parse_amount(typed)
    measured = {name: getattr(amount, name) for name in ("pieces", "nm", "nm3", "grams")}
    assert {name: found for name, found in measured.items() if found is not None} == {part: value}


@pytest.mark.parametrize("half", ["2½", "2 ½", "2 1/2", "2-1/2", "2 1⁄2", "2\u00a0½", "2\u2009½", "2.5", "2,5"])
def test_fractions_are_read_of_volumes_weights_and_flows_as_they_are_of_lengths(half: str) -> None:
    """1 US gallon = 231 cubic inches, 1 lb = 453.592 37 g (NIST SP 811, appendix B.8)."""
    gallons, pounds = Fraction(5, 2) * 231 * INCH**3, Fraction(5, 2) * Fraction("453.59237")
    assert (parse_volume(f"{half} gal").nm3, parse_volume(f"{half} gal").text) == (gallons, f"{half} gal")
    assert parse_volume(f"{half}gal").nm3 == gallons
    assert parse_mass(f"{half} lb").grams == pounds
    assert parse_amount(f"{half} gal").nm3 == gallons
    assert parse_amount(f"{half} lb").grams == pounds
    assert parse_flow(f"{half} gal/min").nm3_per_hour == gallons * 60
    assert parse_line_flow(f"{half} gal/h / {half} in").nm2_per_hour == gallons / (Fraction(5, 2) * INCH)
    assert parse_length(f"{half} in").nm == Fraction(5, 2) * INCH


def test_less_than_one_is_read_too_and_a_length_below_the_stroke_is_no_more_than_it_says() -> None:
    assert parse_volume("½ gal").nm3 == Fraction(231, 2) * INCH**3
    assert parse_line_flow("1 l/h / ½ m").nm2_per_hour == Fraction(2 * LITRE, M)
    assert parse_mass_rate("½ lb / 1000 sq ft").per_nm2 == parse_mass_rate("0.5 lb / 1000 sq ft").per_nm2


@pytest.mark.parametrize("typed", ["2 - 1/2 gal", "2 -1/2 gal", "2- 1/2 gal", "1/0 gal", "½½ gal", "2½", "½/2 gal"])
def test_a_fraction_that_may_be_read_in_two_ways_or_is_none_is_refused(typed: str) -> None:
    with pytest.raises(LengthError, match="no volume"):
        parse_volume(typed)


@pytest.mark.parametrize(
    "typed", ["2 pints", "1 km", "2 sq m", "2 square feet", "5 ha", "100 gr", "2 fl oz", "3 tons"]
)
def test_a_measure_that_is_not_known_is_refused_and_not_counted(typed: str) -> None:
    with pytest.raises(LengthError, match="no amount"):
        parse_amount(typed)
