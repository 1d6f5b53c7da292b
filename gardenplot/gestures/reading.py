"""Typed text into the values of a plan, with the words of an error for the field."""

from datetime import date

from gardenplot.errors import PlanError
from gardenplot.gestures.days_read import day_text
from gardenplot.units import Length, Units, parse_length, parse_place, unit_of
from gardenplot.words import _

_BARE = {Units.METRIC: "cm", Units.FEET_AND_INCHES: "in", Units.DECIMAL_FEET: "ft"}


def length_from(text: str, shown: str, units: Units) -> Length | None:
    """A typed length, None for an empty line; a number alone takes the unit of the text that stood there."""
    return parse_length(text, bare=unit_of(shown) or _BARE[units]) if text else None


def needed_length(text: str, shown: str, units: Units) -> Length:
    """A typed length that may not be left out."""
    length = length_from(text, shown, units)
    if length is None:
        raise PlanError(_("a length is needed, for example 30 cm or 12 in"))
    return length


def place_from(text: str, shown: str, units: Units) -> Length:
    """How far something typed lies from the peg, which may not be left out; with a minus left of it or above."""
    if not text:
        raise PlanError(_("a distance is needed, for example 2 m, or -2 m for the other side of the peg"))
    return parse_place(text, bare=unit_of(shown.lstrip("-−")) or _BARE[units])


def spacing_from(text: str, shown: str, units: Units) -> tuple[Length, ...]:
    """One length, or the least and the most as "30 cm to 45 cm" or "30 to 45 cm": both are in the unit of the one."""
    parts = [part.strip() for part in text.replace("–", " to ").split(" to ")]
    before = _with_unit(parts) or shown.partition(" to ")[0]
    return tuple(needed_length(part, before, units) for part in parts) if text else ()


def _with_unit(parts: list[str]) -> str:
    """The first of some texts that has one unit; nothing where none has."""
    return next((part for part in parts if unit_of(part) is not None), "")


def spacing_text(spacing: tuple[Length, ...]) -> str:
    """A row spacing as it is typed."""
    return " to ".join(length.text for length in spacing)


def list_from(text: str, units: Units) -> tuple[Length, ...]:
    """Lengths apart by semicolons, as "20 cm; 25 cm"; a number alone takes the unit of the one before it.

    Where none is before it, it takes that of the next one that has a unit.
    """
    parts = [part.strip() for part in text.split(";") if part.strip()]
    before, lengths = _with_unit(parts), list[Length]()
    for part in parts:
        lengths.append(needed_length(part, before, units))
        before = lengths[-1].text
    return tuple(lengths)


def list_text(lengths: tuple[Length, ...]) -> str:
    """Lengths as they are typed into a list."""
    return "; ".join(length.text for length in lengths)


def whole_from(text: str) -> int | None:
    """A typed whole number, None for an empty line."""
    if not text:
        return None
    plain = text.replace("\u2009", "").replace(" ", "")
    if not plain.isascii() or not plain.isdigit() or len(plain) > 9:
        raise PlanError(_("“{typed}” is no whole number: write it like 120").format(typed=text[:40]))
    return int(plain)


def text_of(value: object) -> str:
    """A value as it is typed; nothing for None."""
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    if isinstance(value, date):
        return day_text(value)
    return "" if value is None else str(value)
