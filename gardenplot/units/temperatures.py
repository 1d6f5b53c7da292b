"""Temperatures as people write them, exact inside and kept as typed."""

import re
from fractions import Fraction

from attrs import frozen

from gardenplot.errors import LengthError
from gardenplot.words import _


@frozen(cache_hash=True)
class Temperature:
    """A temperature in degrees Fahrenheit together with the text that a person typed for it."""

    fahrenheit: Fraction
    text: str

    def __str__(self) -> str:
        return self.text

    @property
    def celsius(self) -> Fraction:
        """The same in degrees Celsius."""
        return (self.fahrenheit - 32) * 5 / 9


_TEMPERATURE = re.compile(
    r"(?P<sign>[-−])?\s*(?P<number>\d{1,3}(?:[.,]\d{1,3})?)\s*(?:°|deg)?\s*(?P<unit>[CF])", re.I
)


def parse_temperature(text: str) -> Temperature:
    """Read "50 F", "10 °C", "-2.5C"; raises LengthError for anything else, a number without its scale too."""
    match = _TEMPERATURE.fullmatch(text.strip()) if isinstance(text, str) else None
    if match is None:
        typed = text if isinstance(text, str) else str(text)
        raise LengthError(
            _("“{typed}” is no temperature: write it with its scale, like 10 °C or 50 °F").format(typed=typed[:40])
        )
    number = Fraction(match["number"].replace(",", ".")) * (-1 if match["sign"] else 1)
    return Temperature(number * 9 / 5 + 32 if match["unit"].upper() == "C" else number, text.strip())
