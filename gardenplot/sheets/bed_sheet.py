"""The bed sheets of a plan: one bed, one page where it can be, landscape, in black."""

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.compass import head_words
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.stakes import stakes
from gardenplot.drawing.turns import turns
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Plan
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.sheets.bed_columns import draw_sections, sections, sections_in
from gardenplot.sheets.bed_drawing import SCALE_LINE, draw_to_scale, has_room, is_compact, is_larger_beside
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.carry_section import carry_sections
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
from gardenplot.sheets.stake_table import MOST_STAKES, StakeTable, stake_table
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
        lies=head_words(plan, bed_turn.laid.bed.id),
    )


def _sheet(book: Book, plan: Plan, bed_turn: BedTurn, look: dict[str, Look], head: Head, string: int) -> None:
    """One sheet, continued on further pages where stakes or rows are too many for one."""
    page = book.lying()
    units, driven = plan.place.units, stakes(plan, bed_turn.laid, bed_turn.layouts, look)
    table = stake_table(driven, units, stakes_width(page))
    told: tuple[Section, ...] = sections(plan, bed_turn.laid, bed_turn.layouts, look, string)
    carry = carry_sections(plan, bed_turn.laid, bed_turn.layouts, look)
    beside, first = (*told, *carry), True
    while table.rows or beside or first:
        top = draw_head(book, head, continued=not first) - (0 if first else _BELOW / 2)
        tops = top, top
        if first:
            compact, needed = _below(page, bed_turn.laid, units, table, beside, top)
            if not has_room(top, needed) or len(driven) > MOST_STAKES:
                # What is carried is looked up before anybody goes to the bed, so not on the last of several pages.
                beside = (*carry, *told)
            below = draw_to_scale(page, plan, bed_turn.laid, bed_turn.layouts, look, driven, top, needed,
                                  compact=compact, asks_head=not head.lies)  # fmt: skip
            tops = below, top - SCALE_LINE if compact else below
        table, beside = _columns(page, table, beside, tops)
        draw_foot(book, more=bool(table.rows or beside))
        book.end_page()
        first = False


def _below(
    page: Canvas, laid: LaidOut, units: Units, table: StakeTable, beside: tuple[Section, ...], top: float
) -> tuple[bool, float]:
    """Whether a bed stands beside its side column, and the height in points that is needed below it."""
    slim = room_for(table.height, beside, top - SCALE_LINE - FOOT_AT)
    needed = room_for(table.height, beside)
    if is_compact(page, laid, units) or is_larger_beside(page, laid, units, top, needed, slim):
        return True, slim
    return False, needed


def _columns(
    page: Canvas, table: StakeTable, beside: tuple[Section, ...], tops: tuple[float, float]
) -> tuple[StakeTable, tuple[Section, ...]]:
    """The stakes left and all else right of them; what does not fit there goes below the stakes. Gives the rest.

    Both columns begin at a height of their own.
    """
    top, side_top = tops
    room, table_width = top - FOOT_AT, stakes_width(page)
    taken = table.fitting(room)
    fit = sections_in(beside, side_top - FOOT_AT)
    over = beside[fit:]
    below = taken == len(table.rows) > 0 and bool(over)
    if below:
        room = max(table.height, room - _BELOW - _height_below(over))
    bottom = table.first(taken).draw(page, (MARGIN, top), room) - _BELOW
    draw_sections(page, beside[:fit], (MARGIN + table_width + GUTTER, side_top))
    for left in (MARGIN, MARGIN + SIDE_WIDTH + GUTTER) if below else ():
        fit = sections_in(over, bottom - FOOT_AT, 0)
        draw_sections(page, over[:fit], (left, bottom))
        over = over[fit:]
    return table.without(taken), over


def room_for(table: float, beside: tuple[Section, ...], side: float | None = None) -> float:
    """The least height in points in which the stakes, themselves so high, and all else stand, in steps of 4.

    The side column is as high as that or, where it begins beside the bed, has a height of its own.
    """
    whole = sum(section.height for section in beside)
    room = table
    while room < whole and not _stand(beside, (side or room, room - table - _BELOW, room - table - _BELOW)):
        room += 4
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
