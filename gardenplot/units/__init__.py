"""Lengths, shares and rates: exact inside, kept as typed, shown in the plan's units."""

from gardenplot.units.degrees import Degrees, degrees_of, parse_degrees
from gardenplot.units.exact import Units, length_of
from gardenplot.units.lengths import (
    CM,
    FOOT,
    INCH,
    LONGEST,
    MM,
    AreaRate,
    Length,
    M,
    Rate,
    Share,
    parse_area_rate,
    parse_length,
    parse_place,
    parse_rate,
    parse_share,
    unit_of,
)
from gardenplot.units.temperatures import Temperature, parse_temperature

__all__ = [
    "CM", "FOOT", "INCH", "LONGEST", "MM", "AreaRate", "Degrees", "Length", "M", "Rate", "Share",
    "Temperature", "Units", "degrees_of", "length_of", "parse_area_rate", "parse_degrees", "parse_length",
    "parse_place", "parse_rate", "parse_share", "parse_temperature", "unit_of",
]  # fmt: skip
