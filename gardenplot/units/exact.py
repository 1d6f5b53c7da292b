"""Computed lengths as exact text, so that reading it back gives the very same length."""

from enum import StrEnum
from fractions import Fraction

from gardenplot.units.lengths import CM, FOOT, INCH, MM, Length, M


class Units(StrEnum):
    """How a plan shows its lengths."""

    METRIC = "metric"
    FEET_AND_INCHES = "feet and inches"
    DECIMAL_FEET = "decimal feet"


def length_of(nm: int, units: Units) -> Length:
    """Write a computed length as exact text in the plan's units, so that reading it gives `nm` again.

    Feet and inches are used where the length is a whole number of 1/64 in; where no text in the plan's own
    units would be exact, millimetres are. What is less than nothing has a minus before it.
    """
    if nm < 0:
        return Length(nm, f"-{length_of(-nm, units).text}")
    match units:
        case Units.METRIC:
            return Length(nm, _metric_text(nm))
        case Units.FEET_AND_INCHES:
            return Length(nm, _exact_feet_and_inches(nm))
        case Units.DECIMAL_FEET:
            feet = Fraction(nm, FOOT)
            text = _finite_decimal(feet)
            return Length(nm, f"{text} ft" if text else f"{_finite_decimal(Fraction(nm, MM))} mm")


def _metric_text(nm: int) -> str:
    return f"{_finite_decimal(Fraction(nm, M))} m" if nm >= M else f"{_finite_decimal(Fraction(nm, CM))} cm"


def _exact_feet_and_inches(nm: int) -> str:
    if (nm * 64) % INCH:
        return f"{_finite_decimal(Fraction(nm, MM))} mm"
    feet, rest = divmod(nm, FOOT)
    inches, part = divmod(rest, INCH)
    fraction = Fraction(part, INCH)
    words = [f"{inches}"] if inches or not fraction else []
    words += [f"{fraction.numerator}/{fraction.denominator}"] if fraction else []
    if not feet:
        return f"{' '.join(words)} in"
    return f"{feet}'" if not rest else f"{feet}' {' '.join(words)}\""


def _finite_decimal(value: Fraction) -> str | None:
    """The decimal text of a value if it ends, else None."""
    for places in range(10):
        scaled = value * 10**places
        if scaled.denominator == 1:
            digits = str(scaled.numerator).rjust(places + 1, "0")
            return f"{digits[:-places]}.{digits[-places:]}" if places else digits
    return None
