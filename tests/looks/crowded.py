"""A plan with as many beds as anybody plans in one place."""

from datetime import date

from gardenplot.plan import Bed, Crop, Establish, Place, Plan, Planting
from gardenplot.units import parse_length

_CROPS = (("Leek", "15 cm", "30 cm"), ("Beetroot", "10 cm", "25 cm"), ("Kale", "45 cm", "45 cm"))
_BLOCKS = (("30 cm", "9 m"), ("10 m", "7 m"), ("18 m", "11 m"))


def crowded_plan() -> Plan:
    """Two hundred beds of 30 m with three plantings each."""
    beds = tuple(
        Bed(id=f"b{number}", name=f"Bed {number + 1}", length=parse_length("30 m"), width=parse_length("80 cm"))
        for number in range(200)
    )
    crops = tuple(
        Crop(
            id=name.lower(),
            name=name,
            in_row=parse_length(in_row),
            row_spacing=(parse_length(between), parse_length(between)),
            establish=Establish.TRANSPLANT,
        )
        for name, in_row, between in _CROPS
    )
    plantings = tuple(
        Planting(
            id=f"p{number}-{place}",
            bed=bed.id,
            crop=crops[(number + place) % len(crops)].id,
            start=parse_length(start),
            length=parse_length(length),
            in_ground=date(2027, 4, 1),
        )
        for number, bed in enumerate(beds)
        for place, (start, length) in enumerate(_BLOCKS)
    )
    return Plan(place=Place(name="Two hundred beds"), beds=beds, crops=crops, plantings=plantings)
