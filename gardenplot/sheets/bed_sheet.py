"""The bed sheets of a plan: one bed, one page where it can be, landscape, in black."""

from datetime import date
from io import BytesIO

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot import __version__
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.stakes import Stake, stakes
from gardenplot.drawing.turns import turns
from gardenplot.errors import PlanError
from gardenplot.layout import LaidOut, Layout, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.sheets.bed_columns import draw_sections, sections, sections_in
from gardenplot.sheets.bed_drawing import LEAST_HEIGHT, SCALE_LINE, draw_to_scale, is_compact
from gardenplot.sheets.page_parts import (
    FOOT_AT,
    GUTTER,
    MARGIN,
    SIDE_WIDTH,
    Head,
    draw_foot,
    draw_head,
    stakes_width,
    version_of,
)
from gardenplot.sheets.paper import FACE, SIZES, Paper, Sheets, load_face
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


def bed_sheets(
    plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None, told: Told = untold
) -> Sheets:
    """The bed sheets of a plan; the same plan, paper and day give the same bytes.

    Raises PlanError for a plan without beds.
    """
    if not plan.beds:
        raise PlanError(_("there is no bed in the plan, so there is no bed sheet"))
    load_face()
    content = BytesIO()
    page = Canvas(content, pagesize=SIZES[paper], invariant=1, pageCompression=1, lang="en", initialFontName=FACE)
    page.setTitle(_("Bed sheets: {name}").format(name=name or plan.place.name))
    page.setCreator(f"gardenplot {__version__}")
    version = version_of(plan)
    look = looks(plan)
    first_page: dict[str, int] = {}
    bed_turns = _bed_turns(plan)
    for number, bed_turn in enumerate(bed_turns):
        told(number, len(bed_turns))
        first_page.setdefault(bed_turn.laid.bed.id, page.getPageNumber() - 1)
        _sheet(page, plan, bed_turn, look, _head(plan, bed_turn, number, name, version, printed))
    page.save()
    return Sheets(content.getvalue(), first_page)


def _bed_turns(plan: Plan) -> list[BedTurn]:
    found = []
    for laid in lay_out_plan(plan):
        in_turn = turns(laid.without_trays)
        found += [
            BedTurn(laid.without_trays, layouts, number, len(in_turn)) for number, layouts in enumerate(in_turn)
        ]
    return found


def _head(plan: Plan, bed_turn: BedTurn, number: int, name: str, version: str, printed: date | None) -> Head:
    shown = {layout.planting for layout in bed_turn.layouts}
    grown = [one for one in bed_turn.laid.grown if one.planting.id in shown]
    begins = min((one.dates.in_ground for one in grown if one.dates.in_ground), default=None)
    return Head(
        bed=bed_turn.laid.bed,
        plan_name=name or plan.place.name,
        version=version,
        printed=printed,
        begins=begins,
        is_planted=all(is_in_ground(one.planting) for one in grown),
        turn=(bed_turn.turn, bed_turn.turns),
        units=plan.place.units,
        anchor=f"sheet-{number}",
    )


def _sheet(page: Canvas, plan: Plan, bed_turn: BedTurn, look: dict[str, Look], head: Head) -> None:
    """One sheet, continued on further pages where stakes or rows are too many for one."""
    rows: tuple[Stake, ...] = stakes(plan, bed_turn.laid, bed_turn.layouts, look)
    beside: tuple[Section, ...] = sections(plan, bed_turn.laid, bed_turn.layouts, look, len(rows))
    first = True
    while rows or beside or first:
        top = draw_head(page, head, continued=not first)
        tops = top, top
        if first:
            compact = is_compact(page, bed_turn.laid, bed_turn.layouts, plan.place.units)
            needed = room_for(rows, beside, LEAST_HEIGHT if compact else 0.0)
            below = draw_to_scale(page, plan, bed_turn.laid, bed_turn.layouts, look, top, needed)
            tops = below, top - SCALE_LINE if compact else below
        rows, beside = _columns(page, rows, beside, plan.place.units, tops)
        draw_foot(page, more=bool(rows or beside))
        page.showPage()
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
