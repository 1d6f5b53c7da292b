"""The bed to a stated scale with its check bar and its tape; a slim bed also enlarged across, not to scale."""

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.bed import BedFigure, draw_turn
from gardenplot.drawing.covers import on_paper
from gardenplot.drawing.letters import Look
from gardenplot.drawing.marks import Mark
from gardenplot.drawing.stakes import Stake
from gardenplot.drawing.tape import ticks
from gardenplot.layout import LaidOut, Layout
from gardenplot.plan import Bed, Plan
from gardenplot.sheets.block_names import draw_names
from gardenplot.sheets.corner_marks import BELOW_CORNERS, draw_corners, labels_above
from gardenplot.sheets.drip_drawn import DRIP_KEY, drip_drawn
from gardenplot.sheets.page_parts import FOOT_AT, GUTTER, MARGIN, SIDE_WIDTH, stakes_width
from gardenplot.sheets.paper import BOLD, FACE, DrawingScale, check_length, scale_for
from gardenplot.sheets.render import Frame, render
from gardenplot.sheets.stake_row import StakeRow, stake_row
from gardenplot.units import MM, Units
from gardenplot.units.figures import tape
from gardenplot.words import _

_STICKS_OUT = 4.0
"""Points by which marks of plants and stakes at the ends of a bed may stand out of it."""
_SLIM = 13 * mm
_ENLARGED = 15 * mm
_HIGHEST: float = 62 * mm
"""A bed is drawn no higher than this, so that its stakes stand on the same page."""
_STILL_READ = 8 * mm
"""A bed is drawn lower than the highest where that keeps all of it on one page, but not lower than this."""
_BESIDE = 8.0
"""Points by which the label of a stake at the very end of the room stands out of it."""
_STILL_SEEN = 3 * mm
"""What is left of that where the numbers of stakes need lines that lead to their places."""
_NUMBERS = 10.0
"""Points above a bed for the numbers of its stakes on one line, which stand between it and the names."""
_ROUND_ABOUT = 81.0 + _NUMBERS
"""Points above and below a bed for its scale, its letters, its stakes and its tape."""
_HEAD_AT = 190.0
"""Points for the words and the line on which it is written where the head is."""
THICK = 2.2
"""Points of width of the base line, thicker than all else, so that nobody takes another edge for it."""


SCALE_LINE = 26.0
"""Points that the scale and its bar take above the bed."""
_AROUND = 120.0
"""Points left and right of a bed for its name and the words at the ends of its tape."""


def is_compact(page: Canvas, laid: LaidOut, units: Units) -> bool:
    """Whether a bed leaves room for the side column, however large it is drawn."""
    scale = scale_for(laid.bed.length.nm, laid.bed.width.nm, (_width(page, 0), _HIGHEST), units)
    return scale.on_paper(laid.bed.length.nm) + _AROUND <= stakes_width(page)


def is_larger_beside(page: Canvas, laid: LaidOut, units: Units, top: float, needed: float, beside: float) -> bool:
    """Whether a bed is drawn larger where it leaves room for the side column beside it.

    So much height is needed below it where that stands there as well, and so much where it does not.
    """
    whole, slim = drawn_at(page, laid, units, top, needed, 0), drawn_at(page, laid, units, top, beside, 1)
    return slim is not None and (whole is None or slim < whole)


def drawn_at(
    page: Canvas, laid: LaidOut, units: Units, top: float, needed: float, columns: int
) -> int | None:  # fmt: skip
    """One to how many a bed is drawn with so many columns beside it, and so much height needed below it.

    None where that leaves too little height for it.
    """
    if not has_room(laid.bed, top, needed):
        return None
    room = _width(page, columns), _height_for(top - FOOT_AT - needed - _round_about(laid.bed))
    return scale_for(laid.bed.length.nm, laid.bed.width.nm, room, units).ratio


def _width(page: Canvas, columns: int) -> float:
    """Points along which a bed has room with so many columns beside it, its name and its tape with it."""
    return columns_left(page, columns) - (_AROUND if columns else 2)


def columns_left(page: Canvas, columns: int) -> float:
    """Points of width that so many columns at the right of a page leave."""
    return float(page._pagesize[0] - 2 * MARGIN - columns * (SIDE_WIDTH + GUTTER))


def draw_to_scale(
    page: Canvas,
    plan: Plan,
    laid: LaidOut,
    layouts: tuple[Layout, ...],
    look: dict[str, Look],
    driven: tuple[Stake, ...],
    top: float,
    needed: float,
    *,
    columns: int,
    asks_head: bool,
) -> float:
    """Draw the bed with its stakes from y `top` downwards; gives the y in points below it.

    It leaves room for so many columns beside it. A slim bed without any is drawn once more, enlarged, where that
    leaves as much height as is `needed` for the rest. Where it `asks_head` there is a line to write on which end of
    the bed the head is.
    """
    figure = draw_turn(laid, layouts, look, plan.place.units, over=on_paper(plan, laid.bed.id))
    above = labels_above(laid.bed, driven)
    free = top - FOOT_AT - needed - _round_about(laid.bed)
    fit = _fit(page, laid, figure, above, plan.place.units, free, columns)
    y = top - 17
    end = draw_scale_line(page, fit.scale, plan, y)
    if asks_head:
        _ask_for_head(page, end, y)
    along, base = fit.scale.on_paper(MM), y - 18
    frame = Frame(fit.left, base - 8 - fit.row.height - figure.rim * along, along, along)
    drip = drip_drawn(laid, layouts, along)
    y = _bed(page, figure, fit.row, frame, drip) - figure.rim * along
    y -= draw_corners(page, laid.bed, frame)
    draw_names(page, plan, laid, layouts, look, frame, base)
    y = _tape(page, plan, laid, Frame(fit.left, y, along, along))
    said = [DRIP_KEY] if drip else []
    if fit.row.every > 1:
        said.append(_("one stake of {count} is numbered").format(count=fit.row.every))
    page.setFont(FACE, 9)
    page.drawRightString(fit.right, y - 9, " ".join(said))
    wide = (fit.right - MARGIN - 1) / figure.length
    row = _row(above, MARGIN + 1, wide, fit.right)
    rim = figure.rim * _ENLARGED / figure.width
    below = y - _ENLARGED - 2 * rim - row.height - 24
    if not columns and figure.width * along < _SLIM and below - 14 - FOOT_AT >= needed:
        page.setFont(FACE, 9)
        page.drawString(MARGIN, y - 9, _("The same, enlarged and not to scale:"))
        stretched = Frame(MARGIN + 1, y - 18 - row.height - rim, wide, _ENLARGED / figure.width)
        y = _bed(page, figure, row, stretched, drip) - rim
    return y - 14


@frozen
class _Fit:
    """A bed on its page: the scale, where it begins and where its room ends in points, and the row of numbers."""

    scale: DrawingScale
    left: float
    right: float
    row: StakeRow


def _fit(
    page: Canvas, laid: LaidOut, figure: BedFigure, above: list[tuple[str, int]], units: Units, free: float,
    columns: int,
) -> _Fit:  # fmt: skip
    """A bed as large as so much height lets it be, also below numbers that need more than a line."""
    wide = columns_left(page, columns) - (0 if columns else 2)
    rims = 2 * round(figure.rim * MM)
    sides = laid.bed.length.nm + rims, laid.bed.width.nm + rims
    high = _height_for(free)
    fit = None
    while fit is None or fit.scale.on_paper(sides[1]) > high - fit.row.height + _NUMBERS >= _STILL_SEEN:
        lower = high if fit is None else high - fit.row.height + _NUMBERS
        scale = scale_for(*sides, (_width(page, columns), lower), units)
        left, right = MARGIN + 1 + (wide - figure.length * scale.on_paper(MM)) / 2, MARGIN + 1 + wide
        fit = _Fit(scale, left, right, _row(above, left, scale.on_paper(MM), right))
    return fit


def _row(above: list[tuple[str, int]], left: float, along: float, right: float) -> StakeRow:
    """The labels over a bed that begins at an x, so many points to the millimetre."""
    return stake_row([(words, left + at / MM * along) for words, at in above], MARGIN - _BESIDE, right + _BESIDE)


def has_room(bed: Bed, top: float, needed: float) -> bool:
    """Whether a bed drawn as low as may be leaves as much height as is `needed` for all else on its page."""
    return bool(top - FOOT_AT - needed - _round_about(bed) >= _STILL_READ)


def _round_about(bed: Bed) -> float:
    """Points above and below a bed for all that is told of it there."""
    return _ROUND_ABOUT + (BELOW_CORNERS if bed.outline else 0.0)


def _height_for(free: float) -> float:
    """How high a bed may be drawn, in points, where so much is free for it."""
    return min(_HIGHEST, free) if free >= _STILL_READ else _HIGHEST


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
    return frame.place(figure.length, figure.width)[1] - 6


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
