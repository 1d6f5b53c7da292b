"""Weights, volumes, counts and prices are read as people write them or refused, and never as something else."""

from fractions import Fraction

import pytest

from gardenplot.errors import LengthError
from gardenplot.units import CM, LITRE, M, parse_amount, parse_price


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


@pytest.mark.parametrize(
    "typed", ["2 pints", "1 km", "2 sq m", "2 square feet", "5 ha", "100 gr", "2 fl oz", "3 tons"]
)
def test_a_measure_that_is_not_known_is_refused_and_not_counted(typed: str) -> None:
    with pytest.raises(LengthError, match="no amount"):
        parse_amount(typed)
