"""The bed sheets of a plan: one bed, one page where it can be, landscape, in black."""

from collections.abc import Iterator

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.compass import head_words
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.stakes import stakes
from gardenplot.drawing.turns import turns
from gardenplot.layout import LaidOut, Layout
from gardenplot.layout.staked import beyond
from gardenplot.plan import Plan
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.sheets.bed_arranged import BELOW, arranged, height_below
from gardenplot.sheets.bed_columns import draw_sections, sections, sections_in, shape_sections
from gardenplot.sheets.bed_drawing import draw_to_scale
from gardenplot.sheets.bed_spot import SCALE_LINE, columns_left, spot_of
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.carry_section import carry_sections
from gardenplot.sheets.choices import USUAL, Choices, chosen
from gardenplot.sheets.kept_letters import BELOW_KEPT, with_kept
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
from gardenplot.sheets.stake_table import StakeTable, stake_table
from gardenplot.units.figures import span
from gardenplot.words import _


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
        _sheet(book, plan, bed_turn, look, head_of(plan, bed_turn, look, said), choices.string)


def bed_turns(plan: Plan, choices: Choices) -> list[BedTurn]:
    """The beds to print, each with the plantings of one turn."""
    found = []
    for laid in chosen(plan, choices):
        in_turn = turns(laid.without_trays)
        found += [
            BedTurn(laid.without_trays, layouts, number, len(in_turn)) for number, layouts in enumerate(in_turn)
        ]
    return found


def head_of(plan: Plan, bed_turn: BedTurn, look: dict[str, Look], said: About) -> Head:
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
        lacks=tuple(_lacking(plan, bed_turn, look)),
    )


def _lacking(plan: Plan, bed_turn: BedTurn, look: dict[str, Look]) -> Iterator[str]:
    """How much of each planting does not fit the bed."""
    for layout in bed_turn.layouts:
        length = sum(beyond(bed_turn.laid.bed, layout))
        if length:
            words = _("{length} of {planting} do not fit this bed: the crosshatched ground")
            yield words.format(length=span(length, plan.place.units), planting=titled(plan, layout.planting, look))


def _sheet(book: Book, plan: Plan, bed_turn: BedTurn, look: dict[str, Look], head: Head, string: int) -> None:
    """One sheet, continued on further pages where stakes or rows are too many for one."""
    page = book.lying()
    units, driven = plan.place.units, stakes(plan, bed_turn.laid, bed_turn.layouts, look)
    table = stake_table(driven, units, stakes_width(page))
    shape = shape_sections(bed_turn.laid, units)
    told = sections(plan, bed_turn.laid, bed_turn.layouts, look, string)
    carry = carry_sections(plan, bed_turn.laid, bed_turn.layouts, look)
    top = draw_head(book, head, continued=False)
    letters = BELOW_KEPT if with_kept(bed_turn.laid, bed_turn.layouts) else 0.0
    spot = spot_of(page, plan, bed_turn.laid.bed, driven, top, letters)
    here = arranged(spot, table, (shape, told, carry))
    below = draw_to_scale(spot, plan, bed_turn.laid, bed_turn.layouts, look, here.needed,
                          columns=here.columns, asks_head=not head.lies)  # fmt: skip
    side_top, beside = top - SCALE_LINE if here.columns else below, here.beside
    if here.middle:
        draw_sections(page, beside[: here.middle], (MARGIN + columns_left(page, 2) + GUTTER, side_top))
        below = min(below, side_top - sum(one.height for one in beside[: here.middle]) - BELOW)
    table, beside = _columns(page, here.table, beside[here.middle :], (below, side_top))
    while table.rows or beside:
        draw_foot(book, more=True)
        book.end_page()
        page = book.lying()
        top = draw_head(book, head, continued=True) - BELOW / 2
        table, beside = _columns(page, table, beside, (top, top))
    draw_foot(book, more=False)
    book.end_page()


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
        room = max(table.height, room - BELOW - height_below(over))
    bottom = table.first(taken).draw(page, (MARGIN, top), room) - BELOW
    draw_sections(page, beside[:fit], (MARGIN + table_width + GUTTER, side_top))
    for left in (MARGIN, MARGIN + SIDE_WIDTH + GUTTER) if below else ():
        fit = sections_in(over, bottom - FOOT_AT, 0)
        draw_sections(page, over[:fit], (left, bottom))
        over = over[fit:]
    return table.without(taken), over
