"""Pieces of a spacing strip at true size: cut line, marks with their figures, its words, and the edge to glue."""

from itertools import pairwise

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.spacing_marks import Mark, Strip, What
from gardenplot.sheets.board_page import TAB, draw_glue, draw_join
from gardenplot.sheets.paper import BOLD, FACE, POINT_PER_MM, fitted, printable
from gardenplot.sheets.strip_figures import Figures, draw_figures, draw_length, has_ticks
from gardenplot.sheets.strip_piece import HEIGHT, Piece, Place, Said
from gardenplot.units import MM, Units
from gardenplot.words import _

TICK: float = 6 * mm
"""Points that a mark reaches in from the edge of its strip."""
_FLAG: float = 155 * mm
_PAD: float = 3 * mm
_SMALL = 9


def draw_piece(page: Canvas, piece: Piece, left: float, top: float, units: Units) -> None:
    """Draw a piece with its upper left corner at a point."""
    place = Place(piece, left, top)
    end = place.right
    if not piece.is_last:
        end += TAB
        draw_glue(page, (place.right, place.bottom, end, top))
        draw_join(page, ((place.right + end) / 2, (top + place.bottom) / 2), piece.number)
    elif piece.has_flag:
        end += _FLAG
    page.setLineWidth(0.35 * mm)
    page.rect(left, place.bottom, end - left, HEIGHT)
    if end > place.right:
        page.setLineWidth(0.5 * mm)
        page.line(place.right, place.bottom, place.right, top)
    _draw_ends(page, place)
    _draw_words(page, place, _draw_marks(page, place, units))


def _draw_ends(page: Canvas, place: Place) -> None:
    """Where the 0 of a strip and its length are no cuts, a dashed line."""
    strip, piece = place.piece.strip, place.piece
    page.setLineWidth(0.5 * mm)
    page.setDash(3 * mm, 1.5 * mm)
    for at, cut in ((0, strip.begin), (strip.length, strip.end)):
        if at != cut and piece.begin <= at <= piece.end:
            page.line(place.x(at), place.bottom, place.x(at), place.top)
    page.setDash()


def _draw_marks(page: Canvas, place: Place, units: Units) -> str:
    """All marks with their figures, and the length of the strip; gives that where it had no room."""
    strip = place.piece.strip
    halves = {lower: _half_width(strip, lower=lower) for lower in (False, True)}
    is_ticked = has_ticks(strip)
    for mark in place.piece.marks:
        _draw_mark(page, place, mark, halves[mark.lower])
        if is_ticked:
            page.line(place.x(mark.at), place.bottom, place.x(mark.at), place.bottom + TICK / 2)
    shown = {lower: Figures.of(strip, units, lower=lower) for lower in (False, True)}
    end, length = draw_length(page, place, shown)
    for lower in (False, True):
        draw_figures(page, place, shown[lower], end[lower], lower=lower)
    return length


def _draw_mark(page: Canvas, place: Place, mark: Mark, half: float) -> None:
    """A line in from the edge, with a triangle on the edge for a plant, open for every second row."""
    x, edge, way = place.x(mark.at), place.top, -1
    if mark.lower:
        edge, way = place.bottom, 1
    page.setLineWidth(0.5 * mm)
    page.line(x, edge, x, edge + way * TICK)
    if mark.what is What.CENTRE:
        _draw_centre(page, place, x)
        return
    if mark.what is What.SIDE:
        return
    path = page.beginPath()
    path.moveTo(x, edge)
    path.lineTo(x - half, edge + way * 4 * mm)
    path.lineTo(x + half, edge + way * 4 * mm)
    path.close()
    page.setLineWidth(0.35 * mm)
    page.setFillGray(0 if mark.what is What.PLANT else 1)
    page.drawPath(path, stroke=1, fill=1)
    page.setFillGray(0)
    if mark.what is not What.PLANT:
        page.setLineWidth(0.5 * mm)
        page.line(x, edge, x, edge + way * TICK)


def _draw_centre(page: Canvas, place: Place, x: float) -> None:
    """A bar across the centre line, and its word where no other mark is; on its flag where a strip is too narrow."""
    page.line(x - 1.5 * mm, place.bottom + TICK, x + 1.5 * mm, place.bottom + TICK)
    words = _("centre")
    width = pdfmetrics.stringWidth(words, BOLD, 10)
    others = [place.x(mark.at) for mark in place.piece.marks if mark.lower and mark.what is not What.CENTRE]
    free = [
        left
        for left in (x + 6, x - 6 - width)
        if place.left + 2 <= left <= place.right - 2 - width
        and not any(left - 8 < other < left + width + 8 for other in others)
    ]
    if place.piece.has_flag:
        free.append(place.right + 4)
    if free:
        page.setFont(BOLD, 10)
        page.drawString(free[0], place.bottom + 3, words)


def _half_width(strip: Strip, *, lower: bool) -> float:
    """Half of a triangle's width in points, at one edge: less where marks stand closer than it is wide."""
    at = [mark.at for mark in strip.marks if mark.lower is lower]
    least = min((after - one for one, after in pairwise(at) if after > one), default=20 * MM)
    return float(min(2 * mm, least / MM * POINT_PER_MM / 3))


def _draw_words(page: Canvas, place: Place, length: str) -> None:
    """What the strip is, what its ends are laid on, and of which plan it is: on the piece or on its flag."""
    piece, said = place.piece, place.piece.said
    left, right = _words_room(place)
    if piece.number > 1:
        draw_join(page, (left + 6, (place.top + place.bottom) / 2), piece.number - 1)
        left += 24
    y = place.top - 45.5
    which = _("piece {number} of {pieces}").format(number=piece.number, pieces=piece.pieces)
    large, small = (which, "") if piece.pieces > 1 else ("", which)
    page.setFont(BOLD, 12)
    page.drawRightString(right, y, large)
    room = right - left - pdfmetrics.stringWidth(large, BOLD, 12) - 10
    _draw_title(page, said, (left, y), room)
    whole, least = (_directions(piece, length, is_all=is_all) for is_all in (True, False))
    has_room = pdfmetrics.stringWidth("   ".join(whole), BOLD, _SMALL) <= right - left
    _draw_line(page, whole if has_room else least, (left, right), y - 12, BOLD)
    _draw_line(page, (said.about, small), (left, right), y - 23, FACE)


def _draw_title(page: Canvas, said: Said, at: tuple[float, float], room: float) -> None:
    """Whose strip it is and what it marks, smaller where that lacks room; the name is cut rather than the rest."""
    whole = printable(said.name + said.title)
    size = next((size for size in (12, 10, 9) if pdfmetrics.stringWidth(whole, BOLD, size) <= room), 9)
    name = fitted(said.name, BOLD, size, room - pdfmetrics.stringWidth(said.title, BOLD, size))
    page.setFont(BOLD, size)
    page.drawString(*at, fitted(name + said.title, BOLD, size, room))


def _directions(piece: Piece, length: str, *, is_all: bool) -> tuple[str, str]:
    """What is said of the two ends of a piece, with its strip's length where no figure tells it.

    The first says too which marks are at which edge, where it has room for all.
    """
    one, other = piece.said.sides
    first = piece.said.begins if piece.number == 1 else piece.said.edges
    if piece.number == 1 and piece.said.edges and (is_all or piece.is_last):
        first = f"{first} · {piece.said.edges}"
    last = piece.said.ends if piece.is_last else ""
    if length:
        last = f"{length}: {last}" if last else _("this end {length}").format(length=length)
    return "   ".join(part for part in (one, first) if part), "   ".join(part for part in (last, other) if part)


def _words_room(place: Place) -> tuple[float, float]:
    """From where to where words may stand, clear of lines that go across the strip."""
    piece, strip = place.piece, place.piece.strip
    if piece.has_flag:
        return place.right + _PAD, place.right + _FLAG - _PAD
    first = 0 if piece.number == 1 else piece.begin
    last = strip.length if piece.is_last else piece.end
    return place.x(max(first, piece.begin)) + _PAD, place.x(last) - _PAD


def _draw_line(page: Canvas, words: tuple[str, str], room: tuple[float, float], y: float, face: str) -> None:
    """Words at both ends of a line, those at the left cut where they lack room."""
    page.setFont(face, _SMALL)
    page.drawRightString(room[1], y, words[1])
    taken = pdfmetrics.stringWidth(words[1], face, _SMALL)
    page.drawString(room[0], y, fitted(words[0], face, _SMALL, room[1] - room[0] - taken - 8))
