"""What stands where on the first page of a bed sheet: stakes below the bed, all else in columns beside and below it.

What has all of it on one page and draws the bed largest is taken: with no column beside the bed, with one or with
two. Where the usual columns cannot hold all of it, rows of stakes are closer.
"""

from attrs import evolve, frozen

from gardenplot.sheets.bed_columns import sections_in
from gardenplot.sheets.bed_spot import Spot
from gardenplot.sheets.section import Section
from gardenplot.sheets.stake_table import MOST_STAKES, StakeTable

BELOW = 12.0
"""Points between the stakes and what stands below or above them."""
_STEP = 4
"""Points by which heights are tried."""

_Sections = tuple[Section, ...]


@frozen
class Arranged:
    """The stakes, and all else in the order in which it stands.

    So many columns stand beside the bed, the one next to it with the `middle` first sections, and so many points of
    height are needed below it.
    """

    table: StakeTable
    beside: _Sections
    columns: int
    needed: float
    middle: int = 0


def arranged(spot: Spot, table: StakeTable, parts: tuple[_Sections, _Sections, _Sections]) -> Arranged:
    """What stands where with a bed at its spot; in `parts` its shape, what else is told of it and what is carried."""
    shape, told, carry = parts
    usual = _usual(spot, table, (*shape, *told, *carry))
    if len(table.rows) <= MOST_STAKES:
        ratio = spot.ratio(usual.needed, usual.columns)
        if ratio is not None and ratio == spot.ratio(table.height, 0):
            # With the whole width and nothing but the stakes below it, the bed would be no larger.
            return usual
        ways, rows = ([], table.closer()) if ratio is None else ([(ratio, usual)], table)
        for beside in ((*shape, *told, *carry), (*carry, *shape, *told), (*told, *shape, *carry)):
            ways += _ways(spot, rows, beside)
        if ways:
            return min(ways, key=lambda way: way[0])[1]
    # What is carried is looked up before anybody goes to the bed, so not on the last of several pages.
    return evolve(usual, beside=(*carry, *told, *shape))


def _usual(spot: Spot, table: StakeTable, beside: _Sections) -> Arranged:
    """The bed over its columns, or beside the side column where that draws it no smaller."""
    slim = room_for(table.height, beside, spot.side)
    needed = room_for(table.height, beside)
    if spot.is_compact() or spot.is_larger_beside(needed, slim):
        return Arranged(table, beside, 1, slim)
    return Arranged(table, beside, 0, needed)


def _ways(spot: Spot, table: StakeTable, beside: _Sections) -> list[tuple[int, Arranged]]:
    """What has all on one page, each with one to how many the bed is drawn there."""
    one, two = room_for(table.height, beside), room_for(table.height, beside, spot.side)
    middle, three = _with_middle(table.height, beside, spot.side)
    ways = (
        Arranged(table, beside, 0, one),
        Arranged(table, beside, 1, two),
        *([Arranged(table, beside, 2, three, middle)] if middle else []),
    )
    found = ((spot.ratio(way.needed, way.columns), way) for way in ways)
    return [(ratio, way) for ratio, way in found if ratio is not None]


def room_for(table: float, beside: _Sections, side: float | None = None) -> float:
    """The least height in points in which the stakes, themselves so high, and all else stand, in steps of 4.

    The side column is as high as that or, where it begins beside the bed, has a height of its own.
    """
    whole = sum(section.height for section in beside)
    room = table
    while room < whole and not _stand(beside, (side or room, room - table - BELOW, room - table - BELOW)):
        room += _STEP
    return room


def _with_middle(table: float, beside: _Sections, side: float) -> tuple[int, float]:
    """How many sections stand in a column between the bed and the side column, and the height needed below the bed.

    None where all of it has no room.
    """
    room = table
    while room < side:
        below = room - table - BELOW
        middle = sections_in(beside, side - room - BELOW, 0)
        if _stand(beside[middle:], (side, below, below)):
            return middle, room
        room += _STEP
    return 0, room


def height_below(over: _Sections) -> float:
    """The height in points of two columns in which some sections stand, in steps of 4."""
    high = 1.0
    while not _stand(over, (high, high)):
        high += _STEP
    return high + 1


def _stand(beside: _Sections, columns: tuple[float, ...]) -> bool:
    """Whether all sections stand in columns so high, one after another."""
    left = list(beside)
    for column in columns:
        free = column
        while left and left[0].height <= free:
            free -= left.pop(0).height
    return not left
