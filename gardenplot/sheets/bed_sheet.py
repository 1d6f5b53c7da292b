"""The bed sheets of a plan: one bed, one page where it can be, landscape, in black."""

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.stakes import Stake, stakes
from gardenplot.drawing.turns import turns
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Plan
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.sheets.bed_columns import draw_sections, sections, sections_in
from gardenplot.sheets.bed_drawing import LEAST_HEIGHT, SCALE_LINE, draw_to_scale, is_compact
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices, chosen
from gardenplot.sheets.page_parts import (
    FOOT_AT,
    GUTTER,
    MARGIN,
    SIDE_WIDTH,
    Head,
    draw_foot,
    draw_head,
    stakes_width,
)
from gardenplot.sheets.section import Section
from gardenplot.sheets.stake_table import draw_table, fitting, height_of
from gardenplot.units import Units
from gardenplot.words import _

_BELOW = 12.0
"""Points between the stakes and what stands below them."""


@frozen
class BedTurn:
    """What one sheet is about: a bed with the plantings of one turn."""

    laid: LaidOut
    layouts: tuple[Layout, ...]
    turn: int
    turns: int


def add_bed_sheets(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the bed sheets of a plan; raises NothingToPrintError where there is no bed."""
    look = looks(plan)
    to_print = bed_turns(plan, choices)
    if not to_print:
        raise NothingToPrintError(_("there is no bed in the plan, so there is no bed sheet"))
    for number, bed_turn in enumerate(to_print):
        told(number, len(to_print))
        _sheet(book, plan, bed_turn, look, head_of(plan, bed_turn, said), choices.string)


def bed_turns(plan: Plan, choices: Choices) -> list[BedTurn]:
    """The beds to print, each with the plantings of one turn."""
    found = []
    for laid in chosen(plan, choices):
        in_turn = turns(laid.without_trays)
        found += [
            BedTurn(laid.without_trays, layouts, number, len(in_turn)) for number, layouts in enumerate(in_turn)
        ]
    return found


def head_of(plan: Plan, bed_turn: BedTurn, said: About) -> Head:
    """What stands in the heading of a bed's sheets."""
    shown = {layout.planting for layout in bed_turn.layouts}
    grown = [one for one in bed_turn.laid.grown if one.planting.id in shown]
    begins = min((one.dates.in_ground for one in grown if one.dates.in_ground), default=None)
    return Head(
        bed=bed_turn.laid.bed,
        about=said,
        begins=begins,
        is_planted=all(is_in_ground(one.planting) for one in grown),
        turn=(bed_turn.turn, bed_turn.turns),
        units=plan.place.units,
    )


def _sheet(book: Book, plan: Plan, bed_turn: BedTurn, look: dict[str, Look], head: Head, string: int) -> None:
    """One sheet, continued on further pages where stakes or rows are too many for one."""
    page = book.lying()
    rows: tuple[Stake, ...] = stakes(plan, bed_turn.laid, bed_turn.layouts, look)
    beside: tuple[Section, ...] = sections(plan, bed_turn.laid, bed_turn.layouts, look, len(rows), string)
    first = True
    while rows or beside or first:
        top = draw_head(book, head, continued=not first) - (0 if first else _BELOW / 2)
        tops = top, top
        if first:
            compact = is_compact(page, bed_turn.laid, plan.place.units)
            needed = room_for(rows, beside, LEAST_HEIGHT if compact else 0.0)
            below = draw_to_scale(page, plan, bed_turn.laid, bed_turn.layouts, look, top, needed)
            tops = below, top - SCALE_LINE if compact else below
        rows, beside = _columns(page, rows, beside, plan.place.units, tops)
        draw_foot(book, more=bool(rows or beside))
        book.end_page()
        first = False


def _columns(
    page: Canvas, rows: tuple[Stake, ...], beside: tuple[Section, ...], units: Units, tops: tuple[float, float]
) -> tuple[tuple[Stake, ...], tuple[Section, ...]]:
    """The stakes left and all else right of them; what does not fit there goes below the stakes. Gives the rest.

    Both columns begin at a height of their own.
    """
    top, side_top = tops
    room, table_width = top - FOOT_AT, stakes_width(page)
    taken = fitting(rows, room)
    fit = sections_in(beside, side_top - FOOT_AT)
    over = beside[fit:]
    below = taken == len(rows) > 0 and bool(over)
    if below:
        room = max(height_of(rows), room - _BELOW - _height_below(over))
    bottom = draw_table(page, rows[:taken], units, (MARGIN, top), table_width, room) - _BELOW
    draw_sections(page, beside[:fit], (MARGIN + table_width + GUTTER, side_top))
    for left in (MARGIN, MARGIN + SIDE_WIDTH + GUTTER) if below else ():
        fit = sections_in(over, bottom - FOOT_AT, 0)
        draw_sections(page, over[:fit], (left, bottom))
        over = over[fit:]
    return rows[taken:], over


def room_for(rows: tuple[Stake, ...], beside: tuple[Section, ...], higher: float = 0.0) -> float:
    """The least height in points in which the stakes and all else stand, in steps of 8.

    The side column may be higher by so much.
    """
    table, whole = height_of(rows), sum(section.height for section in beside)
    room = table
    while room + higher < whole and not _stand(beside, (room + higher, room - table - _BELOW, room - table - _BELOW)):
        room += 8
    return room


def _height_below(over: tuple[Section, ...]) -> float:
    """The height in points of two columns in which some sections stand, in steps of 4."""
    high = 1.0
    while not _stand(over, (high, high)):
        high += 4
    return high + 1


def _stand(beside: tuple[Section, ...], columns: tuple[float, ...]) -> bool:
    """Whether all sections stand in columns so high, one after another."""
    left = list(beside)
    for column in columns:
        free = column
        while left and left[0].height <= free:
            free -= left.pop(0).height
    return not left
