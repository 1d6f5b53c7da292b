"""What stands where on the first page of a bed sheet: stakes below the bed, all else in columns beside and below it.

Where the usual columns cannot hold all of it, rows of stakes are close, and a small bed has two columns beside it.
"""

from attrs import evolve, frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.layout import LaidOut
from gardenplot.sheets.bed_columns import sections_in
from gardenplot.sheets.bed_drawing import SCALE_LINE, drawn_at, has_room, is_compact, is_larger_beside
from gardenplot.sheets.page_parts import FOOT_AT
from gardenplot.sheets.section import Section
from gardenplot.sheets.stake_table import MOST_STAKES, StakeTable
from gardenplot.units import Units

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


def arranged(
    page: Canvas, laid: LaidOut, units: Units, table: StakeTable, parts: tuple[_Sections, _Sections], top: float
) -> Arranged:
    """What stands where below y `top`, in `parts` what is told of the bed and what is carried to it."""
    told, carry = parts
    usual = _usual(page, laid, units, table, (*told, *carry), top)
    if len(table.rows) <= MOST_STAKES:
        if has_room(laid.bed, top, usual.needed):
            return usual
        close = [
            one for beside in ((*told, *carry), (*carry, *told))
            for one in _close(page, laid, units, table.closer(), beside, top)
        ]  # fmt: skip
        if close:
            return min(close, key=lambda one: one[0])[1]
    # What is carried is looked up before anybody goes to the bed, so not on the last of several pages.
    return evolve(usual, beside=(*carry, *told))


def _usual(
    page: Canvas, laid: LaidOut, units: Units, table: StakeTable, beside: _Sections, top: float
) -> Arranged:  # fmt: skip
    """The bed over its columns, or beside the side column where that draws it no smaller."""
    slim = room_for(table.height, beside, top - SCALE_LINE - FOOT_AT)
    needed = room_for(table.height, beside)
    if is_compact(page, laid, units) or is_larger_beside(page, laid, units, top, needed, slim):
        return Arranged(table, beside, 1, slim)
    return Arranged(table, beside, 0, needed)


def _close(
    page: Canvas, laid: LaidOut, units: Units, table: StakeTable, beside: _Sections, top: float
) -> list[tuple[int, Arranged]]:
    """What has all on one page, each with one to how many the bed is drawn there."""
    side = top - SCALE_LINE - FOOT_AT
    one, two = room_for(table.height, beside), room_for(table.height, beside, side)
    middle, three = _with_middle(table.height, beside, side)
    ways = (
        Arranged(table, beside, 0, one),
        Arranged(table, beside, 1, two),
        *([Arranged(table, beside, 2, three, middle)] if middle else []),
    )
    found = ((drawn_at(page, laid, units, top, way.needed, way.columns), way) for way in ways)
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
