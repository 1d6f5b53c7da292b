"""The bed to a stated scale with its check bar and its tape; a slim bed also enlarged across, not to scale."""

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.bed import BedFigure, draw_turn
from gardenplot.drawing.covers import on_paper
from gardenplot.drawing.letters import Look
from gardenplot.drawing.marks import Mark
from gardenplot.drawing.tape import ticks
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Plan
from gardenplot.sheets.bed_spot import Spot
from gardenplot.sheets.block_names import draw_names
from gardenplot.sheets.corner_marks import draw_corners
from gardenplot.sheets.drip_drawn import DRIP_KEY, drip_drawn
from gardenplot.sheets.kept_letters import BELOW_KEPT, draw_below, with_kept
from gardenplot.sheets.obstacle_names import draw_obstacle_names
from gardenplot.sheets.page_parts import FOOT_AT, MARGIN
from gardenplot.sheets.paper import BOLD, FACE, DrawingScale, check_length
from gardenplot.sheets.render import Frame, render
from gardenplot.sheets.stake_row import StakeRow
from gardenplot.units import MM
from gardenplot.units.figures import tape
from gardenplot.words import _

_STICKS_OUT = 4.0
"""Points by which marks of plants and stakes at the ends of a bed may stand out of it."""
_FREE = 6.0
"""Points that stay free below a bed."""
_SLIM = 13 * mm
_ENLARGED = 15 * mm
_HEAD_AT = 190.0
"""Points for the words and the line on which it is written where the head is."""
THICK = 2.2
"""Points of width of the base line, thicker than all else, so that nobody takes another edge for it."""


def draw_to_scale(
    spot: Spot,
    plan: Plan,
    laid: LaidOut,
    layouts: tuple[Layout, ...],
    look: dict[str, Look],
    needed: float,
    *,
    columns: int,
    asks_head: bool,
) -> float:
    """Draw the bed with its stakes at its spot; gives the y in points below it.

    It leaves room for so many columns beside it. A slim bed without any is drawn once more, enlarged, where that
    leaves as much height as is `needed` for the rest. Where it `asks_head` there is a line to write on which end of
    the bed the head is.
    """
    figure = draw_turn(laid, layouts, look, plan.place.units, over=on_paper(plan, laid.bed.id))
    page, fit = spot.page, spot.fit(needed, columns)
    y = spot.top - 17
    end = draw_scale_line(page, fit.scale, plan, y)
    if asks_head:
        _ask_for_head(page, end, y)
    along, base = fit.scale.on_paper(MM), y - 18
    frame = Frame(fit.left, base - 8 - fit.row.height - figure.rim * along, along, along)
    drip = drip_drawn(laid, layouts, along)
    y = _bed(page, figure, fit.row, frame, drip) - figure.rim * along
    draw_obstacle_names(page, laid.bed, layouts, figure.marks, frame)
    y -= draw_corners(page, laid.bed, frame)
    kept = with_kept(laid, layouts)
    y -= draw_below(page, kept, look, frame, y + _FREE)
    draw_names(page, plan, laid, layouts, look, frame, base)
    y = _tape(page, plan, laid, Frame(fit.left, y, along, along))
    _draw_keys(page, fit.row.every, (fit.right, y - 9), is_dripped=bool(drip))
    wide = (fit.right - MARGIN - 1) / figure.length
    row = spot.row(MARGIN + 1, wide, fit.right)
    rim = figure.rim * _ENLARGED / figure.width
    below = y - _ENLARGED - 2 * rim - row.height - 24 - (BELOW_KEPT if kept else 0.0)
    if not columns and figure.width * along < _SLIM and below - 14 - FOOT_AT >= needed:
        page.setFont(FACE, 9)
        page.drawString(MARGIN, y - 9, _("The same, enlarged and not to scale:"))
        stretched = Frame(MARGIN + 1, y - 18 - row.height - rim, wide, _ENLARGED / figure.width)
        y = _bed(page, figure, row, stretched, drip) - rim
        draw_obstacle_names(page, laid.bed, layouts, figure.marks, stretched)
        y -= draw_below(page, kept, look, stretched, y + _FREE)
    return y - 14


def _draw_keys(page: Canvas, every: int, corner: tuple[float, float], *, is_dripped: bool) -> None:
    """What drip lines look like, and how many stakes are numbered, up to a lower right corner."""
    said = [DRIP_KEY] if is_dripped else []
    if every > 1:
        said.append(_("one stake of {count} is numbered").format(count=every))
    page.setFont(FACE, 9)
    page.drawRightString(*corner, " ".join(said))


def draw_scale_line(page: Canvas, scale: DrawingScale, plan: Plan, y: float) -> float:
    """Draw the scale and the bar to measure before use; gives the x in points where the bar ends."""
    length, words = check_length(plan.place.units)
    page.setFont(BOLD, 12)
    said = _("To scale {scale}").format(scale=scale.words)
    page.drawString(MARGIN, y, said)
    x = MARGIN + pdfmetrics.stringWidth(said, BOLD, 12) + 22
    page.setFont(FACE, 10)
    said = _("measure before use: this bar is {length}").format(length=words)
    page.drawString(x, y, said)
    x += pdfmetrics.stringWidth(said, FACE, 10) + 10
    page.setLineWidth(0.5 * mm)
    page.line(x, y + 3.5, x + length, y + 3.5)
    for end in (x, x + length):
        page.line(end, y - 1.5, end, y + 8.5)
    return float(x + length)


def _ask_for_head(page: Canvas, left: float, y: float) -> None:
    """A line to write on which end of the bed the head is, where the plan does not know."""
    page.setFont(FACE, 10)
    words, right = _("head at"), page._pagesize[0] - MARGIN
    begin = max(left + 14, right - _HEAD_AT)
    line = begin + pdfmetrics.stringWidth(words, FACE, 10) + 4
    page.drawString(begin, y, words)
    page.setLineWidth(0.18 * mm)
    page.line(line, y - 1, right, y - 1)


def _bed(page: Canvas, figure: BedFigure, row: StakeRow, frame: Frame, drip: tuple[Mark, ...]) -> float:
    """Draw what stands in the bed, its base line and the numbers of its stakes; gives the y in points below it.

    Nothing is drawn of what a block that does not fit would need beyond the ends of the bed.
    """
    rim = figure.rim * frame.along + _STICKS_OUT
    page.saveState()
    path = page.beginPath()
    path.rect(frame.left - rim, 0, figure.length * frame.along + 2 * rim, page._pagesize[1])
    page.clipPath(path, stroke=0, fill=0)
    render(page, (*drip, *figure.marks), frame)
    page.restoreState()
    _thick_edge(page, figure, frame)
    row.draw(page, frame.top + figure.rim * frame.across + _STICKS_OUT + 2)
    return frame.place(figure.length, figure.width)[1] - _FREE


def _thick_edge(page: Canvas, figure: BedFigure, frame: Frame) -> None:
    """The line that tape and stakes lie along, also where the bed draws back from it."""
    page.setLineWidth(THICK)
    page.line(*frame.place(0, 0), *frame.place(figure.length, 0))


def _tape(page: Canvas, plan: Plan, laid: LaidOut, frame: Frame) -> float:
    """The tape's readings below the bed, a scale bar for the whole of it; head and foot are named at its ends."""
    length, units = laid.bed.length.nm, plan.place.units
    right, low = frame.place(length / MM, 0)[0], frame.top - 14
    page.setLineWidth(0.18 * mm)
    page.setFont(FACE, 9)
    head, foot = _("0 HEAD"), _("FOOT {reading}").format(reading=tape(length, units))
    free_from = frame.left + pdfmetrics.stringWidth(head, BOLD, 9) + 5
    free_to = right - pdfmetrics.stringWidth(foot, BOLD, 9) - 5
    for tick in ticks(0, length, units, frame.along * 1.25):
        x = frame.left + tick.at / MM * frame.along
        page.line(x, frame.top, x, frame.top - (5 if tick.words else 2.5))
        half = pdfmetrics.stringWidth(tick.words, FACE, 9) / 2
        if tick.words and free_from < x - half and x + half < free_to:
            page.drawCentredString(x, low, tick.words)
    page.line(right, frame.top, right, frame.top - 5)
    page.setFont(BOLD, 9)
    if free_from < free_to:
        page.drawString(frame.left, low, head)
        page.drawRightString(right, low, foot)
    else:
        page.drawRightString(frame.left - 2, low, head)
        page.drawString(right + 2, low, foot)
    return frame.top - 18
