"""The drawing of each bed at a standard scale over as many pages as it needs, with match lines where they join.

Parts of a slim bed stand below each other on a page, as many as there is room for.
"""

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.bed import BedFigure, draw_turn
from gardenplot.drawing.covers import on_paper
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.marks import Mark
from gardenplot.drawing.part import Window, seen
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.stakes import stakes
from gardenplot.drawing.tape import ticks
from gardenplot.drawing.tiles import Span, Tile, cut, tiles
from gardenplot.layout import LaidOut
from gardenplot.layout.zone import corners_of
from gardenplot.plan import Plan
from gardenplot.sheets.bed_drawing import THICK, draw_scale_line
from gardenplot.sheets.bed_sheet import BedTurn, bed_turns, head_of
from gardenplot.sheets.block_names import draw_names
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.corner_marks import corners_room, draw_corners
from gardenplot.sheets.drip_drawn import DRIP_KEY, drip_drawn
from gardenplot.sheets.kept_letters import draw_at_rings, with_kept
from gardenplot.sheets.list_page import draw_fitted
from gardenplot.sheets.obstacle_names import draw_obstacle_names
from gardenplot.sheets.page_parts import FOOT_AT, MARGIN, Head, draw_foot, draw_head, head_height
from gardenplot.sheets.paper import BOLD, FACE, SIZES, DrawingScale, Paper, scale_of, scales
from gardenplot.sheets.render import Frame, render
from gardenplot.sheets.stake_lines import LINE, LINES, StakesBelow, stakes_below
from gardenplot.units import MM, Units
from gardenplot.units.figures import offset, tape
from gardenplot.words import _

_OVERLAP: float = 8 * mm
"""What a page shows beyond a match line, on paper."""
_ACROSS_TAPE = 40.0
"""Points left of the drawing for the tape across the bed."""
_SCALE, _ABOVE, _BELOW = 17.0, 43.0, 66.0
"""Points for the scale, above each part for its joins and names, and below it for the tape and the stakes."""
_OUT = 8.0
"""Points of the margin that the reading of the foot may take."""
_NAMED = 3.0
"""Points that corners with names on the base line take above the drawing: the names of blocks stand higher there."""
_USUAL = 10
_MOST_PAGES = 12
"""A bed that needs several pages is drawn at 1 : 10 (1 in = 1 ft), smaller where it would take more than so many."""
_HOW_TO_JOIN = _("To join: cut along one match line and lay it on the same line of the next part.")
_WHAT_LINE = _("Thick line: base line, left as seen from the head; tape and stakes lie along it.")
_WHAT_CORNERS = _("c1, c2 …: corners of the bed.")
_CLOSER = 2.4
"""So much closer together stand the words of the tape across, which are as high as they are short."""
_FINDER = 9.0, 17.0
"""Points that the parts of a bed are high where they are shown small, at least and at most."""
_STICKS_OUT = 2 * mm
"""How far stakes and match lines stand out of the bed on paper."""


def add_drawing(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the drawing of each bed, turn by turn; raises NothingToPrintError where there is no bed."""
    found, look = bed_turns(plan, choices), looks(plan)
    if not found:
        raise NothingToPrintError(_("there is no bed in the plan, so there is no drawing"))
    for number, bed_turn in enumerate(found):
        told(number, len(found))
        _add_bed(book, plan, bed_turn, look, head_of(plan, bed_turn, look, said), choices)


def _add_bed(book: Book, plan: Plan, bed_turn: BedTurn, look: dict[str, Look], head: Head, choices: Choices) -> None:
    laid, layouts = bed_turn.laid, bed_turn.layouts
    figure = draw_turn(laid, layouts, look, plan.place.units, over=on_paper(plan, laid.bed.id))
    around = corners_room(laid.bed)
    ground = _Ground(laid.bed.length.nm, laid.bed.width.nm, round(figure.rim * MM), _room(book.paper, head, around),
                     plan.place.units, around)  # fmt: skip
    scale = _scale(ground, choices.scale)
    parts = tiles(*ground.cut(scale), corners_of(laid.bed))
    below = {part: stakes_below(stakes(plan, laid, layouts, look), part.along, plan.place.units) for part in parts}
    drip = drip_drawn(laid, layouts, scale.on_paper(MM))
    drawn = _Tiled(plan, laid, figure, drip, scale, _pages(ground, scale, below), book.page_number)
    for number, here in enumerate(drawn.pages):
        page = book.lying()
        top = draw_head(book, head, continued=number > 0) - _SCALE
        _draw_scale(page, drawn, here, top)
        for tile in here:
            frame = _frame(drawn, tile, top - ground.above, around)
            _draw_joins(page, drawn, tile, top - 17)
            _draw_ground(page, drawn, tile, frame)
            draw_obstacle_names(page, laid.bed, layouts, figure.marks, frame, _own(tile))
            draw_corners(page, laid.bed, frame, over_pages=True)
            draw_at_rings(page, with_kept(laid, layouts), look, figure.marks, frame)
            draw_names(page, plan, laid, layouts, look, frame, top - _ABOVE + (10 if around else 7))
            _draw_tapes(page, drawn, tile, frame, around)
            low = frame.place(0, tile.across.end / MM)[1] - _STICKS_OUT - around - 32
            below[tile].draw(page, frame, low, int((low - FOOT_AT) / LINE) + 1)
            top -= ground.height(scale, tile, below[tile])
        _draw_words(page, drawn, here)
        draw_foot(book, more=False)
        book.end_page()


def _pages(ground: "_Ground", scale: DrawingScale, below: dict[Tile, StakesBelow]) -> tuple[tuple[Tile, ...], ...]:
    """The parts of each page: as many as there is room for, with their stakes; one of a bed that is cut across."""
    pages, left = list[list[Tile]](), 0.0
    for tile, stakes_here in below.items():
        high = ground.height(scale, tile, stakes_here)
        if not pages or tile.line or high > left:
            pages.append([])
            left = ground.room[1] + ground.others if ground.is_in_one(scale) else 0.0
        pages[-1].append(tile)
        left -= high
    return tuple(map(tuple, pages))


@frozen
class _Ground:
    """A bed's length, width and rim in nm, and the points along and across that a page has for a part of it.

    So many points left of a part and below it are for the names of corners.
    """

    length: int
    width: int
    rim: int
    room: tuple[float, float]
    units: Units
    around: float

    @property
    def above(self) -> float:
        """Points above a part, those for the names of corners between it and the names of blocks."""
        return _ABOVE + (_NAMED if self.around else 0.0)

    @property
    def others(self) -> float:
        """Points above and below a part for all that stands there, where its stakes need no more than is usual."""
        return self.above + _BELOW + self.around

    def cut(self, scale: DrawingScale) -> tuple[tuple[Span, ...], tuple[Span, ...]]:
        """The stretches along and across that pages show at a scale."""
        overlap = _nm(_OVERLAP, scale)
        along, across = (
            cut(length, self.rim, _nm(room, scale), overlap, self.units)
            for length, room in zip((self.length, self.width), self.room, strict=True)
        )
        return along, across

    def is_in_one(self, scale: DrawingScale) -> bool:
        """Whether no match line runs along the bed."""
        return len(self.cut(scale)[1]) == 1

    def height(self, scale: DrawingScale, tile: Tile, below: StakesBelow) -> float:
        """Points of height that a part takes with all that stands above and below it."""
        others = self.others + LINE * (below.lines(self.room[0]) - LINES)
        return scale.on_paper(tile.across.end - tile.across.start) + others

    def pages(self, scale: DrawingScale) -> int:
        """How many pages the bed takes at a scale, where its stakes need no more room than is usual."""
        along, across = self.cut(scale)
        on_page = int((self.room[1] + self.others) / (scale.on_paper(self.width + 2 * self.rim) + self.others))
        return -(-len(along) // max(1, on_page)) if len(across) == 1 else len(along) * len(across)


@frozen
class _Tiled:
    """A bed at a scale, in parts on pages, of which `first` is the number of the first one."""

    plan: Plan
    laid: LaidOut
    figure: BedFigure
    drip: tuple[Mark, ...]
    scale: DrawingScale
    pages: tuple[tuple[Tile, ...], ...]
    first: int

    @property
    def tiles(self) -> tuple[Tile, ...]:
        """All parts."""
        return tuple(tile for page in self.pages for tile in page)

    def page_of(self, column: int, line: int) -> int:
        """The number of the page that shows a part."""
        return self.first + next(
            number for number, page in enumerate(self.pages)
            if any((tile.column, tile.line) == (column, line) for tile in page)
        )  # fmt: skip


def _nm(points: float, scale: DrawingScale) -> int:
    """So many points of paper in nm of ground."""
    return int(points / scale.on_paper(MM) * MM)


def _room(paper: Paper, head: Head, around: float) -> tuple[float, float]:
    """Points along and across that a part of a bed with so many points around it has on a page."""
    width, height = SIZES[paper]
    high = height - head_height(head) - _SCALE - _ABOVE - _BELOW - FOOT_AT
    return width - 2 * MARGIN - _ACROSS_TAPE - around, high - around - (_NAMED if around else 0.0)


def _scale(ground: _Ground, ratio: int | None) -> DrawingScale:
    """The scale that was chosen, else the largest usual one that does not take too many pages."""
    if ratio is not None:
        return scale_of(ratio, ground.units)
    found = scales(ground.units)
    for scale in found:
        pages = ground.pages(scale)
        if pages == 1 or (scale.ratio >= _USUAL and pages <= _MOST_PAGES):
            return scale
    return found[-1]


def _window(tile: Tile) -> Window:
    """What a page shows of the bed."""
    return Window(*(at / MM for at in (tile.along.start, tile.across.start, tile.along.end, tile.across.end)))


def _own(tile: Tile) -> Window:
    """What of the bed a page has for itself, between the match lines."""
    (left, right), (top, bottom) = tile.along.own, tile.across.own
    return Window(left / MM, top / MM, right / MM, bottom / MM)


def _frame(drawn: _Tiled, tile: Tile, top: float, around: float) -> Frame:
    """Where the part lies on its page: its upper left corner below `top`, right of the tape across."""
    along = drawn.scale.on_paper(MM)
    window = _window(tile)
    left = MARGIN + _ACROSS_TAPE + around - window.left * along
    return Frame(left, top + window.top * along, along, along, window)


def _draw_scale(page: Canvas, drawn: _Tiled, here: tuple[Tile, ...], base: float) -> None:
    """The scale, the bar to measure, and which parts of the bed this page shows."""
    end = draw_scale_line(page, drawn.scale, drawn.plan, base)
    if len(drawn.pages) == 1:
        return
    room = page._pagesize[0] - MARGIN - end - 24
    first, width = min(one.along.start for one in drawn.tiles), max(one.across.end for one in drawn.tiles)
    length, over = max(one.along.end for one in drawn.tiles) - first, min(one.across.start for one in drawn.tiles)
    along = min(room / length, _FINDER[1] / (width - over))
    # A long bed would be a dash: which page this is matters there, and not how wide the bed is.
    across = max(along, _FINDER[0] / (width - over))
    left, top = page._pagesize[0] - MARGIN - length * along, base + 13
    page.setLineWidth(0.18 * mm)
    for one in drawn.tiles:
        x1, x2 = ((at - first) * along for at in one.along.own)
        y1, y2 = ((at - over) * across for at in one.across.own)
        page.rect(left + x1, top - y2, x2 - x1, y2 - y1, stroke=1, fill=1 if one in here else 0)


def _draw_joins(page: Canvas, drawn: _Tiled, tile: Tile, base: float) -> None:
    """Which pages join this one, and at which readings."""
    units, right = drawn.plan.place.units, page._pagesize[0] - MARGIN
    page.setFont(BOLD, 11)
    before, after = tile.along.before, tile.along.after
    joins, here = _("joins page {page} at {reading}"), drawn.page_of(tile.column, tile.line)
    if before is not None:
        other = drawn.page_of(tile.column - 1, tile.line)
        words = joins if other != here else _("joins what stands above at {reading}")
        page.drawString(MARGIN, base, f"← {words.format(page=other, reading=tape(before, units))}")
    if after is not None:
        other = drawn.page_of(tile.column + 1, tile.line)
        words = joins if other != here else _("joins what stands below at {reading}")
        page.drawRightString(right, base, f"{words.format(page=other, reading=tape(after, units))} →")
    sides = []
    if tile.across.before is not None:
        words = joins.format(
            page=drawn.page_of(tile.column, tile.line - 1), reading=offset(tile.across.before, units)
        )
        sides.append(f"↑ {words}")
    if tile.across.after is not None:
        words = joins.format(page=drawn.page_of(tile.column, tile.line + 1), reading=offset(tile.across.after, units))
        sides.append(f"↓ {words}")
    page.drawCentredString((MARGIN + right) / 2, base, "     ".join(sides))


def _draw_words(page: Canvas, drawn: _Tiled, here: tuple[Tile, ...]) -> None:
    """How to join the parts, and what is what in them."""
    said = [_HOW_TO_JOIN] if len(drawn.tiles) > 1 else []
    if any(_shows_thick_line(tile) for tile in here):
        said.append(_WHAT_LINE)
    if corners_room(drawn.laid.bed):
        said.append(_WHAT_CORNERS)
    if drawn.drip:
        said.append(DRIP_KEY)
    draw_fitted(page, "   ".join(said), (MARGIN, MARGIN + 14), page._pagesize[0] - 2 * MARGIN, FACE, 9)


def _shows_thick_line(tile: Tile) -> bool:
    return tile.across.start <= 0 <= tile.across.end


def _draw_ground(page: Canvas, drawn: _Tiled, tile: Tile, frame: Frame) -> None:
    """The part of the bed, and the match lines at its ends."""
    window = _window(tile)
    (left, top), (right, bottom) = frame.place(window.left, window.top), frame.place(window.right, window.bottom)
    # Stakes stand out of the bed; where a page goes on to the next, nothing is drawn beyond what both show.
    over = [0.0 if at is not None else _STICKS_OUT for at in (
        tile.along.before, tile.along.after, tile.across.before, tile.across.after
    )]  # fmt: skip
    page.saveState()
    path = page.beginPath()
    path.rect(left - over[0], bottom - over[3], right - left + over[0] + over[1], top - bottom + over[2] + over[3])
    page.clipPath(path, stroke=0, fill=0)
    render(page, tuple(seen((*drawn.drip, *drawn.figure.marks), window)), frame)
    page.restoreState()
    if _shows_thick_line(tile):
        page.setLineWidth(THICK)
        ends = max(0, tile.along.start), min(drawn.laid.bed.length.nm, tile.along.end)
        page.line(*frame.place(ends[0] / MM, 0), *frame.place(ends[1] / MM, 0))
    page.setLineWidth(0.5 * mm)
    page.setDash([10, 3, 2, 3])
    for at in (tile.along.before, tile.along.after):
        if at is not None:
            x = frame.place(at / MM, 0)[0]
            page.line(x, bottom - _STICKS_OUT, x, top + _STICKS_OUT)
    for at in (tile.across.before, tile.across.after):
        if at is not None:
            y = frame.place(0, at / MM)[1]
            page.line(left - _STICKS_OUT, y, right + _STICKS_OUT, y)
    page.setDash()


def _draw_foot_end(page: Canvas, drawn: _Tiled, tile: Tile, frame: Frame, low: float) -> float:
    """Name the foot with its reading below the bed; gives the x in points that other readings keep left of."""
    length = drawn.laid.bed.length.nm
    if tile.along.end < length:
        return float(page._pagesize[0])
    words = _("FOOT {reading}").format(reading=tape(length, drawn.plan.place.units))
    x, half = frame.place(length / MM, 0)[0], pdfmetrics.stringWidth(words, BOLD, 10) / 2
    middle = min(x, page._pagesize[0] - MARGIN + _OUT - half)
    page.line(x, low, x, low - 6)
    page.setFont(BOLD, 10)
    page.drawCentredString(middle, low - 16, words)
    return float(middle - half - 24)


def _draw_tapes(page: Canvas, drawn: _Tiled, tile: Tile, frame: Frame, around: float) -> None:
    """The tape below the bed and the tape across it, left of it, both so many points away from it."""
    units, bed = drawn.plan.place.units, drawn.laid.bed
    left, bottom = frame.place(tile.along.start / MM, tile.across.end / MM)
    page.setLineWidth(0.18 * mm)
    low = bottom - _STICKS_OUT - around
    foot = _draw_foot_end(page, drawn, tile, frame, low)
    for tick in ticks(max(0, tile.along.start), min(drawn.laid.bed.length.nm, tile.along.end), units, frame.along):
        x = frame.place(tick.at / MM, 0)[0]
        page.line(x, low, x, low - (6 if tick.words else 3))
        if tick.words and x < foot:
            words = _("0 HEAD") if tick.at == 0 else tick.words
            page.setFont(BOLD if tick.at == 0 else FACE, 10)
            page.drawCentredString(x, low - 16, words)
    side = left - _STICKS_OUT - around
    for tick in ticks(max(0, tile.across.start), min(bed.width.nm, tile.across.end), units, _CLOSER * frame.along):
        y = frame.place(0, tick.at / MM)[1]
        page.line(side, y, side - (6 if tick.words else 3), y)
        if tick.words:
            page.setFont(FACE, 10)
            read = offset(tick.at, units)
            page.drawRightString(side - 8, y - 3.5, str(read) if tick.at == 0 else read.number)
