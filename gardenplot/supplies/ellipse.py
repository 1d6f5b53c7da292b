"""The perimeter of an ellipse, by the arithmetic-geometric mean.

Perimeter = 2 pi (a² − Σ 2^(n−1) c_n²) / M(a, b), with a_0 = a, b_0 = b, c_n² = a_n² − b_n² and M the
arithmetic-geometric mean (Gauss; Abramowitz and Stegun 17.6 for the complete integral of the second kind).
"""

from decimal import Context, Decimal, localcontext
from fractions import Fraction

PI = Fraction("3.14159265358979323846264338327950288419716939937510")
"""To fifty places (OEIS A000796): a nanometre on any length that a person grows on needs fourteen."""

_DIGITS = 40


def half_perimeter(half_width: Fraction, rise: Fraction) -> Fraction:
    """Half the perimeter of an ellipse with two half axes, in their unit, to thirty digits or more."""
    with localcontext(Context(prec=_DIGITS)):
        a, b = sorted((_decimal(half_width), _decimal(rise)), reverse=True)
        if not b:
            return Fraction(2 * a)
        squares, weight, start = Decimal(0), Decimal("0.5"), a * a
        c2 = a * a - b * b
        while weight * c2 > start * Decimal(10) ** (4 - _DIGITS):
            squares += weight * c2
            a, b = (a + b) / 2, (a * b).sqrt()
            c2, weight = a * a - b * b, 2 * weight
        return Fraction(_decimal(PI) * (start - squares) / ((a + b) / 2))


def _decimal(number: Fraction) -> Decimal:
    return Decimal(number.numerator) / Decimal(number.denominator)
