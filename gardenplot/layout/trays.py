"""Trays that harden off, laid out as plants are: each stands in the middle of the ground that it covers."""

from collections.abc import Iterable

from attrs import evolve

from gardenplot.plan import Crop, Good, GoodKind, Planting
from gardenplot.units import Length, parse_length
from gardenplot.words import _

TRAY_WIDTH, TRAY_LENGTH = parse_length("28 cm"), parse_length("54 cm")
"""What a tray of the usual size measures outside, about 11 x 21 3/8 in: common practice, no source."""


def tray_crop(crop: Crop, planting: Planting) -> Crop:
    """What a crop in trays takes of a bed: the trays' own size both ways, nothing beyond, and nothing of its packet.

    `in_row` of the planting is how much of the bed's length a tray covers, `row_spacing` how much of its width.
    """
    across = (planting.row_spacing or (TRAY_LENGTH,))[0]
    trays = Crop(crop.id, trays_name(crop), planting.in_row or TRAY_WIDTH, (across,), establish=crop.establish)
    return evolve(trays, edge=Length(across.nm // 2, ""))


def trays_name(crop: Crop) -> str:
    """What the trays of a crop are called."""
    return _("{crop}, trays").format(crop=crop.name)


def tray_sides(goods: Iterable[Good], cells: int | None) -> tuple[Length, Length] | None:
    """What the place's own trays of so many cells measure outside, as they were typed; None where nobody says."""
    sides = (
        (good.length, good.width)
        for good in goods
        if good.kind is GoodKind.TRAY and good.cells == cells and good.length is not None and good.width is not None
    )
    return next(((long, wide) for long, wide in sides if long is not None and wide is not None), None)


def trays_across(width: int, sides: tuple[Length, Length] | None = None) -> tuple[Length, Length]:
    """How a tray best lies in a bed so wide, in nm: its sides along and across, those that take the least length.

    Its `sides` are those of a tray of the usual size where they are not given.
    """
    short, long = sorted(sides or (TRAY_WIDTH, TRAY_LENGTH), key=lambda side: side.nm)
    ways = ((short, long), (long, short))
    fitting = [way for way in ways if way[1].nm <= width] or [ways[0]]
    return min(fitting, key=lambda way: way[0].nm / max(1, width // way[1].nm))
