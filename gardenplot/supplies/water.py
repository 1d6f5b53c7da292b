"""Drip lines, what they give, what a depth of water comes to, and how many days a tank lasts.

Volume = area x depth: 1 mm on 1 m² is 1 l, 1 in on 1,000 sq ft is 623.4 US gallons (231 in³ each). Net water over
efficiency is what must be given. Hours = volume / (lines x length x flow of a line). Formulas: irrigation guides of
extension services, whose printed examples the tests repeat.
"""

from attrs import frozen

from gardenplot.plan import Bed, Place, Watering
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, worked

_TYPED = Source.OF_PLACE
_DAYS = 7


@frozen
class BedWater:
    """What a bed's drip lines and a week's water come to."""

    lines: Number
    line_length: Number
    flow: Number
    share: Number
    weekly: Number
    hours: Number
    tank_days: Number

    @property
    def numbers(self) -> tuple[Number, ...]:
        """All of them, in their order; of a bed without drip lines what it takes a week."""
        if self.lines.value is None:
            return self.weekly, self.tank_days
        return self.lines, self.line_length, self.flow, self.share, self.weekly, self.hours, self.tank_days


def bed_water(place: Place, bed: Bed, area: int) -> BedWater:
    """The water of a bed with so many nm² to water."""
    watering = place.watering or Watering()
    lines = known("lines", len(bed.drip_lines) or None, Unit.COUNT, source=Source.OF_BED)
    long = known("bed_length", bed.length.nm, Unit.LENGTH, source=Source.SIZE_OF_BED)
    length = worked("line_length", Unit.LENGTH, "lines × bed_length", lines, long, source=RULES)
    each = known("line_flow", watering.line_flow.nm2_per_hour if watering.line_flow else None, Unit.FLOW_PER_LENGTH,
                 source=_TYPED)  # fmt: skip
    flow = worked("flow", Unit.FLOW, "line_length × line_flow", length, each, source=RULES)
    supply = known("supply", watering.supply.nm3_per_hour if watering.supply else None, Unit.FLOW, source=_TYPED)
    weekly = weekly_water(watering, area)
    hours = worked("hours", Unit.HOURS, "weekly ÷ flow", weekly, flow, source=RULES)
    return BedWater(
        lines, length, flow,
        worked("share_of_supply", Unit.SHARE, "flow ÷ supply", flow, supply, source=RULES),
        weekly, hours, tank_days(watering, weekly),
    )  # fmt: skip


def weekly_water(watering: Watering, area: int) -> Number:
    """What a week's depth over an area in nm² comes to."""
    ground = known("area", area, Unit.AREA, source=Source.SIZE_OF_BED)
    deep = known("depth", watering.weekly_depth.nm if watering.weekly_depth else None, Unit.LENGTH, source=_TYPED)
    part = watering.efficiency.part if watering.efficiency else 1
    reaches = known("efficiency", part, Unit.SHARE, source=_TYPED if watering.efficiency else Source.NOT_TYPED)
    return worked("weekly", Unit.VOLUME, "area × depth ÷ efficiency", ground, deep, reaches, trust=Trust.GOOD,
                  source=RULES)  # fmt: skip


def tank_days(watering: Watering, weekly: Number) -> Number:
    """How many days a full tank waters what takes so much a week."""
    tank = known("tank", watering.tank.nm3 if watering.tank else None, Unit.VOLUME, source=_TYPED)
    days = known("days_of_week", _DAYS, Unit.DAYS, source=Source.WEEK)
    return worked(
        "tank_days", Unit.DAYS, "tank ÷ weekly × days_of_week", tank, weekly, days, rounding=Rounding.DOWN,
        source=RULES,
    )  # fmt: skip
