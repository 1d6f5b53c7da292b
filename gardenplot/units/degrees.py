"""Directions in degrees as people write them, exact inside and kept as typed."""

import re
from fractions import Fraction

from attrs import frozen

from gardenplot.errors import LengthError
from gardenplot.words import _

WHOLE_TURN = 360


@frozen(cache_hash=True)
class Degrees:
    """A turn clockwise, from 0 to less than 360 degrees, together with the text that a person typed for it."""

    turn: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


_DEGREES = re.compile(r"(?P<sign>[-−])?(?P<number>\d{1,3}(?:[.,]\d{1,6})?)\s*(?:°|deg(?:rees?)?)?", re.IGNORECASE)


def parse_degrees(text: str) -> Degrees:
    """Read "90", "22.5°", "-15 degrees", clockwise; raises LengthError for anything else."""
    match = _DEGREES.fullmatch(text.strip()) if isinstance(text, str) else None
    turn = Fraction(match["number"].replace(",", ".")) if match else Fraction(WHOLE_TURN + 1)
    if match is None or turn > WHOLE_TURN:
        typed = text if isinstance(text, str) else str(text)
        raise LengthError(
            _("“{typed}” is no direction: write degrees clockwise like 90° or 22.5°").format(typed=typed[:40])
        )
    return Degrees((-turn if match["sign"] else turn) % WHOLE_TURN, text.strip())


def degrees_of(turn: Fraction) -> Degrees:
    """Write a turn that was computed, to a millionth of a degree: "22.5°"."""
    scaled = round(turn * 10**6) % (WHOLE_TURN * 10**6)
    whole, part = divmod(scaled, 10**6)
    return Degrees(Fraction(scaled, 10**6), f"{whole}.{part:06}".rstrip("0").rstrip(".") + "°")
