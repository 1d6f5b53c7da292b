"""Pieces of a spacing strip at true size: cut line, marks with their figures, its words, and the edge to glue."""

from collections.abc import Iterable
from itertools import pairwise

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.joins import cuts
from gardenplot.drawing.spacing_marks import Mark, Purpose, Strip, What
from gardenplot.sheets.board_page import TAB, draw_glue, draw_join
from gardenplot.sheets.paper import BOLD, FACE, POINT_PER_MM, fitted, printable
from gardenplot.units import MM, Units
from gardenplot.units.figures import offset
from gardenplot.words import _

HEIGHT: float = 38 * mm
"""Points of height of a piece: it goes on a board 38 mm, or 1 1/2 in, wide."""
TICK: float = 6 * mm
"""Points that a mark reaches in from the edge of its strip."""
_SHORT = 100 * MM
"""A strip that is shorter has its words on a flag at its end."""
_FLAG: float = 155 * mm
_PAD: float = 3 * mm
_FIGURE, _BESIDE = 17, 9
_Span = tuple[float, float]
"""From where to where something stands, in points."""
_UPPER, _LOWER = 31.5, 19.0
"""Points from the upper or lower edge to the figures of its marks."""


@frozen
class Said:
    """The words on a piece: whose strip and what it is, what its ends are laid on, of which plan and blocks it is."""

    name: str
    title: str
    begins: str
    ends: str
    sides: tuple[str, str]
    about: str
    edges: str = ""


@frozen
class Piece:
    """A piece of a strip from one cut to the next, in nm of its strip; which one of how many."""

    strip: Strip
    said: Said
    begin: int
    end: int
    number: int
    pieces: int

    @property
    def is_last(self) -> bool:
        """Whether no piece comes behind it."""
        return self.number == self.pieces

    @property
    def has_flag(self) -> bool:
        """Whether it is too short for its own words."""
        return self.end - self.begin < _SHORT and self.is_last

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks on it."""
        return tuple(mark for mark in self.strip.marks if self.begin <= mark.at <= self.end)


def pieces_of(strip: Strip, said: Said, most: int) -> tuple[Piece, ...]:
    """A strip in pieces of at most `most` nm."""
    between = cuts(strip.begin, strip.end, tuple(mark.at for mark in strip.marks), most)
    return tuple(
        Piece(strip, said, begin, end, number, len(between) - 1)
        for number, (begin, end) in enumerate(pairwise(between), 1)
    )


@frozen
class _Place:
    """A piece on its page: the points of its upper left corner."""

    piece: Piece
    left: float
    top: float

    def x(self, at: int) -> float:
        """Where a place on the strip lies on the page."""
        return self.left + (at - self.piece.begin) / MM * POINT_PER_MM

    @property
    def right(self) -> float:
        """Where it ends, without what is glued or only carries words."""
        return self.x(self.piece.end)

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.top - HEIGHT


def draw_piece(page: Canvas, piece: Piece, left: float, top: float, units: Units) -> None:
    """Draw a piece with its upper left corner at a point."""
    place = _Place(piece, left, top)
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
    _draw_marks(page, place, units)
    _draw_words(page, place)


def _draw_ends(page: Canvas, place: _Place) -> None:
    """Where the 0 of a strip and its length are no cuts, a dashed line."""
    strip, piece = place.piece.strip, place.piece
    page.setLineWidth(0.5 * mm)
    page.setDash(3 * mm, 1.5 * mm)
    for at, cut in ((0, strip.begin), (strip.length, strip.end)):
        if at != cut and piece.begin <= at <= piece.end:
            page.line(place.x(at), place.bottom, place.x(at), place.top)
    page.setDash()


def _draw_marks(page: Canvas, place: _Place, units: Units) -> None:
    strip = place.piece.strip
    halves = {lower: _half_width(strip, lower=lower) for lower in (False, True)}
    has_ticks = strip.repeats and not any(mark.lower for mark in strip.marks)
    for mark in place.piece.marks:
        _draw_mark(page, place, mark, halves[mark.lower])
        if has_ticks:
            page.line(place.x(mark.at), place.bottom, place.x(mark.at), place.bottom + TICK / 2)
    for lower in (False, True):
        _draw_figures(page, place, _Figures.of(strip, units, lower=lower), lower=lower)


def _draw_mark(page: Canvas, place: _Place, mark: Mark, half: float) -> None:
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


def _draw_centre(page: Canvas, place: _Place, x: float) -> None:
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


@frozen
class _Figures:
    """The marks whose figures are shown: all, or every so many; with their unit and number where there is room."""

    marks: tuple[Mark, ...]
    units: Units
    bare: bool
    numbered: str
    rows: dict[What, str]

    @classmethod
    def of(cls, strip: Strip, units: Units, *, lower: bool) -> "_Figures":
        """As many figures with as many words as have room between the marks of one edge."""
        marks = tuple(mark for mark in strip.marks if mark.lower is lower and mark.what is not What.CENTRE)
        numbered = _("ring {number}") if strip.purpose is Purpose.RADII else _("row {number}")
        has_others = any(mark.what is What.OTHER for mark in strip.marks) and not strip.cell[0]
        rows = {What.PLANT: _("rows 1, 3 …"), What.OTHER: _("rows 2, 4 …")} if has_others else {}
        ways = ((1, False), *((step, True) for step in (1, 2, 5, 10, 20, 50, 100, 200, 500)))
        all_ways = (cls(marks[::step], units, bare, numbered, rows) for step, bare in ways)
        return next((shown for shown in all_ways if shown.has_room), cls(marks[:1], units, True, numbered, rows))

    @property
    def has_room(self) -> bool:
        """Whether no figure comes near to the next."""
        return all(
            (after.at - one.at) / MM * POINT_PER_MM >= self.reach(one)[1] + self.reach(after)[0] + 6
            for one, after in pairwise(self.marks)
        )

    def beside(self, mark: Mark) -> tuple[str, ...]:
        """What is set smaller behind a figure, from the most to nothing for where there is no room."""
        unit = offset(mark.at, self.units).unit
        most = " · ".join(part for part in (unit, self.row(mark)) if part)
        return ("",) if self.bare else tuple(dict.fromkeys((most, unit, "")))

    def row(self, mark: Mark) -> str:
        """Which row or rows a mark is of; nothing where its strip marks but one kind."""
        return self.numbered.format(number=mark.number) if mark.number else self.rows.get(mark.what, "")

    def reach(self, mark: Mark) -> tuple[float, float]:
        """How many points a figure reaches left and right of its mark, with what is set smaller behind it."""
        half = pdfmetrics.stringWidth(offset(mark.at, self.units).number, BOLD, _FIGURE) / 2
        return half, half + _beside_width(self.beside(mark)[0])


def _beside_width(words: str) -> float:
    return pdfmetrics.stringWidth(words, FACE, _BESIDE) + 2 if words else 0.0


def _draw_figures(page: Canvas, place: _Place, shown: _Figures, *, lower: bool) -> None:
    """The figures of one edge; one that would lie over another is left out, its mark stands for itself."""
    here = tuple(mark for mark in shown.marks if place.piece.begin <= mark.at <= place.piece.end)
    taken = list[_Span]()
    if not lower and not place.piece.has_flag:
        taken = _draw_end_figures(page, place, here, shown)
    for mark in here:
        most, *less = shown.beside(mark)
        before = shown.row(mark) if less else ""
        for words, is_before in ((most, False), (before, True), *((words, False) for words in less)):
            span = _span(place, mark, shown, words, is_before=is_before)
            if span is not None and _is_free(span, taken):
                taken.append(span)
                number = offset(mark.at, shown.units).number
                _draw_figure(page, place, span, number, (words, "") if is_before else ("", words), lower=lower)
                break


def _draw_figure(
    page: Canvas, place: _Place, span: _Span, number: str, beside: tuple[str, str], *, lower: bool
) -> None:
    """A figure, and what is set smaller before it and behind it."""
    base = place.bottom + _LOWER if lower else place.top - _UPPER
    page.setFont(BOLD, _FIGURE)
    page.drawString(span[0] + _beside_width(beside[0]), base, number)
    page.setFont(FACE, _BESIDE)
    page.drawString(span[0], base, beside[0])
    page.drawRightString(span[1], base, beside[1])


def _span(place: _Place, mark: Mark, shown: _Figures, beside: str, *, is_before: bool = False) -> _Span | None:
    """From where to where a figure stands: its middle at its mark, or aside where the piece ends or a line is.

    None where what stands behind the figure, or before it, lacks room, so that it would push the figure aside.
    """
    half = shown.reach(mark)[0]
    strip, x = place.piece.strip, place.x(mark.at)
    low, high = place.left + 4, place.right - 4
    if mark.at == strip.length != strip.end:
        high = x - 4
    elif mark.at == 0 != strip.begin:
        low = x + 4
    width = 2 * half + _beside_width(beside)
    left = max(low, min(x - half, high - 2 * half))
    if is_before:
        left -= _beside_width(beside)
        return (left, left + width) if beside and left >= low else None
    if left + width <= high:
        return left, left + width
    if beside:
        return None
    return (place.right + 4, place.right + 4 + width) if place.piece.has_flag else (high - width, high)


def _is_free(span: _Span, taken: Iterable[_Span]) -> bool:
    return all(span[1] + 4 <= left or right + 4 <= span[0] for left, right in taken)


def _draw_end_figures(page: Canvas, place: _Place, marks: tuple[Mark, ...], shown: _Figures) -> list[_Span]:
    """The 0 and the length of a strip where no mark is, with the unit where a mark's figure leaves room for it."""
    strip, piece, found = place.piece.strip, place.piece, list[_Span]()
    figures = [span for mark in marks if (span := _span(place, mark, shown, "")) is not None]
    for at in dict.fromkeys((0, strip.length)):
        if not piece.begin <= at <= piece.end or any(mark.at == at for mark in marks):
            continue
        length = offset(at, shown.units)
        figure = length.number if at else "0"
        for unit in (length.unit, "") if at else ("",):
            width = pdfmetrics.stringWidth(figure, BOLD, _FIGURE) + _beside_width(unit)
            left = place.x(at) - 4 - width if at else place.x(at) + 4
            if _is_free((left, left + width), figures):
                break
        found.append((left, left + width))
        _draw_figure(page, place, found[-1], figure, ("", unit), lower=False)
    return found


def _draw_words(page: Canvas, place: _Place) -> None:
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
    _draw_line(page, _directions(piece), (left, right), y - 12, BOLD)
    _draw_line(page, (said.about, small), (left, right), y - 23, FACE)


def _draw_title(page: Canvas, said: Said, at: tuple[float, float], room: float) -> None:
    """Whose strip it is and what it marks, smaller where that lacks room; the name is cut rather than the rest."""
    whole = printable(said.name + said.title)
    size = next((size for size in (12, 10, 9) if pdfmetrics.stringWidth(whole, BOLD, size) <= room), 9)
    name = fitted(said.name, BOLD, size, room - pdfmetrics.stringWidth(said.title, BOLD, size))
    page.setFont(BOLD, size)
    page.drawString(*at, fitted(name + said.title, BOLD, size, room))


def _directions(piece: Piece) -> tuple[str, str]:
    one, other = piece.said.sides
    first = piece.said.begins if piece.number == 1 else piece.said.edges
    if piece.pieces == 1 and piece.said.edges:
        first = f"{first} · {piece.said.edges}"
    last = piece.said.ends if piece.is_last else ""
    return "   ".join(part for part in (one, first) if part), "   ".join(part for part in (last, other) if part)


def _words_room(place: _Place) -> tuple[float, float]:
    """From where to where words may stand, clear of lines that go across the strip."""
    piece, strip = place.piece, place.piece.strip
    if piece.has_flag:
        return place.right + _PAD, place.right + _FLAG - _PAD
    first = 0 if piece.number == 1 else piece.begin
    last = strip.length if piece.is_last else piece.end
    return place.x(max(first, piece.begin)) + _PAD, place.x(last) - _PAD


def _draw_line(page: Canvas, words: tuple[str, str], room: tuple[float, float], y: float, face: str) -> None:
    """Words at both ends of a line, those at the left cut where they lack room."""
    page.setFont(face, _BESIDE)
    page.drawRightString(room[1], y, words[1])
    taken = pdfmetrics.stringWidth(words[1], face, _BESIDE)
    page.drawString(room[0], y, fitted(words[0], face, _BESIDE, room[1] - room[0] - taken - 8))
