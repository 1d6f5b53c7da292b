"""Lengths, shares and rates: exact inside, kept as typed, shown in the plan's units."""

from gardenplot.units.amounts import (
    BTU,
    GALLON,
    LITRE,
    OUNCE,
    POUND,
    Amount,
    Flow,
    HeatLoss,
    LineFlow,
    Mass,
    MassRate,
    Price,
    Volume,
    parse_amount,
    parse_flow,
    parse_heat_loss,
    parse_line_flow,
    parse_mass,
    parse_mass_rate,
    parse_price,
    parse_volume,
)
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
    number_in,
    parse_area_rate,
    parse_length,
    parse_place,
    parse_rate,
    parse_share,
    unit_of,
)
from gardenplot.units.temperatures import Temperature, parse_temperature

__all__ = [
    "BTU", "CM", "FOOT", "GALLON", "INCH", "LITRE", "LONGEST", "MM", "OUNCE", "POUND", "Amount", "AreaRate",
    "Degrees", "Flow", "HeatLoss", "Length", "LineFlow", "M", "Mass", "MassRate", "Price", "Rate", "Share",
    "Temperature", "Units", "Volume", "degrees_of", "length_of", "number_in", "parse_amount", "parse_area_rate",
    "parse_degrees", "parse_flow", "parse_heat_loss", "parse_length", "parse_line_flow", "parse_mass",
    "parse_mass_rate", "parse_place", "parse_price", "parse_rate", "parse_share", "parse_temperature",
    "parse_volume", "unit_of",
]  # fmt: skip
