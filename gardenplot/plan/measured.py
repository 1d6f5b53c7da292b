"""The measures that a plan keeps as they were typed, each with what reads its text."""

from collections.abc import Callable, Mapping
from typing import Any

from gardenplot.plan.lying import FromPeg
from gardenplot.units import (
    Amount,
    AreaRate,
    Degrees,
    Flow,
    HeatLoss,
    Length,
    LineFlow,
    MassRate,
    Price,
    Rate,
    Share,
    Temperature,
    Volume,
    parse_amount,
    parse_area_rate,
    parse_degrees,
    parse_flow,
    parse_heat_loss,
    parse_length,
    parse_line_flow,
    parse_mass_rate,
    parse_place,
    parse_price,
    parse_rate,
    parse_share,
    parse_temperature,
    parse_volume,
)

PARSERS: Mapping[Any, Callable[[str], Any]] = {
    Length: parse_length,
    FromPeg: parse_place,
    Share: parse_share,
    Rate: parse_rate,
    AreaRate: parse_area_rate,
    Degrees: parse_degrees,
    Temperature: parse_temperature,
    Amount: parse_amount,
    Flow: parse_flow,
    HeatLoss: parse_heat_loss,
    LineFlow: parse_line_flow,
    MassRate: parse_mass_rate,
    Price: parse_price,
    Volume: parse_volume,
}
"""By the type of a field."""

MEASURES = (
    Length, Share, Rate, AreaRate, Degrees, Temperature, Amount, Flow, HeatLoss, LineFlow, MassRate, Price, Volume
)  # fmt: skip
"""Whatever has a text that it is written by."""
