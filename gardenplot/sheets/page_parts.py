"""Heading and foot of every page: what it is, which tape to bring, what to beware of."""

from datetime import date

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.carried import tape_number, whole_words
from gardenplot.drawing.days import day_words
from gardenplot.drawing.shape_words import shape_lines, size_words
from gardenplot.drawing.stake_numbers import turn_words
from gardenplot.drawing.tape_legs import is_taped
from gardenplot.plan import Bed
from gardenplot.sheets.book import About, Book
from gardenplot.sheets.paper import BOLD, FACE, fitted, width_of
from gardenplot.units import Units
from gardenplot.units.figures import exactly
from gardenplot.words import _

MARGIN = 10 * mm
FOOT_AT = MARGIN + 26
"""Everything else ends above this height in points."""
SIDE_WIDTH = 226.0
"""Width of the side column in points."""
GUTTER = 20.0
"""Points between the stakes and the side column."""
_SHAPE_LINE = 18.0
_LINES = (10, 9, 8)
"""Sizes in points of the line below the title."""
_UNITS = {
    Units.METRIC: (
        _("metres and centimetres"),
        _("bring a metric tape of {length} or more"),
    ),
    Units.FEET_AND_INCHES: (
        _("feet and inches"),
        _("bring a tape in feet and inches, {length} or more"),
    ),
    Units.DECIMAL_FEET: (
        _("feet and hundredths of a foot"),
        _("bring an engineer's tape of {length} or more"),
    ),
}
_NUMBER, _ON = 84.0, 176.0
"""Points that the number of a page takes at its foot, and with the page that it goes on with."""
CAUTION = _(
    "Ask where cables and pipes lie before driving stakes. Distances are only as good as the tape. "
    "The seed packet and local advice come before this sheet."
)


@frozen
class Head:
    """What stands in the heading of a sheet; `begins` is the first day of what is planned, or of what is planted.

    `lies` tells on which side the bed's head is, if that is known.
    """

    bed: Bed
    about: About
    begins: date | None
    is_planted: bool
    turn: tuple[int, int]
    units: Units
    lies: str = ""
    lacks: tuple[str, ...] = ()
    """What of the plantings does not fit the bed, a line each."""

    @property
    def known(self) -> tuple[str, ...]:
        """What to know before the first reading, a line each."""
        return *shape_lines(self.bed, self.units), *self.lacks


def stakes_width(page: Canvas) -> float:
    """Points that are left for the stakes beside the side column."""
    return float(page._pagesize[0] - 2 * MARGIN - SIDE_WIDTH - GUTTER)


def head_height(head: Head) -> float:
    """Points from the edge of the paper to below the heading."""
    return float(MARGIN + 42 + _SHAPE_LINE * len(head.known))


def draw_head(book: Book, head: Head, *, continued: bool) -> float:
    """Draw the heading; gives the y in points below it."""
    page = book.canvas
    width, height = page._pagesize
    right = width - MARGIN
    units, bring = tape_to_bring(head.bed, head.units)
    title = head.bed.name + (_(", continued") if continued else "")
    _title(page, title, size_words(head.bed, head.units, exactly), units, height - MARGIN - 18)
    if not continued:
        book.bookmark(_outline_words(head), head.bed.id)
    _below_title(page, head, bring, height - MARGIN - 34)
    page.setLineWidth(0.5 * mm)
    page.line(MARGIN, height - MARGIN - 42, right, height - MARGIN - 42)
    return _shape(page, head, height - MARGIN - 42)


def _title(page: Canvas, title: str, size: str, units: str, base: float) -> None:
    """The bed's name, behind it how large it is, and at the right in which units."""
    right, sizes = page._pagesize[0] - MARGIN, pdfmetrics.stringWidth(size, BOLD, 14)
    page.setFont(BOLD, 14)
    page.drawRightString(right, base + 4, units)
    room = right - MARGIN - pdfmetrics.stringWidth(units, BOLD, 14) - sizes - 40
    said = fitted(title, BOLD, 22, room)
    page.setFont(BOLD, 22)
    page.drawString(MARGIN, base, said)
    page.setFont(BOLD, 14)
    page.drawString(MARGIN + width_of(said, BOLD, 22) + 16, base, size)


def _below_title(page: Canvas, head: Head, bring: str, base: float) -> None:
    """The sheet in a line and the tape to bring, both smaller where they lack room, and with less rather than cut."""
    whole = page._pagesize[0] - 2 * MARGIN - 14
    ways = [(_line(head, left_out), size) for left_out in (0, 1, 2) for size in _LINES]
    line, size = next((way for way in ways if _wide(*way) + _wide(bring, way[1]) <= whole), ways[-1])
    page.setFont(FACE, size)
    page.drawRightString(page._pagesize[0] - MARGIN, base, bring)
    page.drawString(MARGIN, base, fitted(line, FACE, size, whole - _wide(bring, size)))


def _wide(words: str, size: int) -> float:
    return float(pdfmetrics.stringWidth(words, FACE, size))


def _shape(page: Canvas, head: Head, top: float) -> float:
    """What to know of the bed's shape and of what does not fit it, on every page, since all readings hang on it."""
    page.setFont(BOLD, 14)
    for line in head.known:
        top -= _SHAPE_LINE
        page.drawString(MARGIN, top, fitted(line, BOLD, 14, page._pagesize[0] - 2 * MARGIN))
    return float(top)


def _outline_words(head: Head) -> str:
    return head.bed.name if head.turn[1] == 1 else f"{head.bed.name}, {turn_words(*head.turn)}"


def _line(head: Head, left_out: int) -> str:
    """The sheet in a line; without the day it begins, then without where the head lies, if so much is left out."""
    parts = [] if left_out > 1 else [head.lies]
    if head.turn[1] > 1:
        parts.append(turn_words(*head.turn))
    if head.begins is not None and not left_out:
        words = _("in the ground since {day}") if head.is_planted else _("planned from {day}")
        parts.append(words.format(day=day_words(head.begins)))
    return " · ".join(part for part in (*parts, *head.about.said) if part)


def tape_to_bring(bed: Bed, units: Units) -> tuple[str, str]:
    """The units of a sheet in words, and the tape to bring: whole metres or feet that reach over the diagonal.

    Where no tape reaches so far, one to measure on with in legs.
    """
    words, bring = _UNITS[units]
    length = whole_words(tape_number(bed, units).whole or 0, units)
    zero = (
        _("zero at the inner side of the head stake")
        if bed.box is None
        else _("zero at the inner face of the head board")
    )
    said = f"{bring.format(length=length)} · {zero}"
    if is_taped(bed, units):
        return words, said
    return words, said + _("; measure on in legs of {leg} from a stake at each").format(leg=length)


def draw_foot(book: Book, *, more: bool) -> None:
    """Draw the caution and the page number."""
    page = book.canvas
    width, _height = page._pagesize
    room = width - 2 * MARGIN - (_ON if more else _NUMBER)
    page.setFont(FACE, 9 if pdfmetrics.stringWidth(CAUTION, FACE, 9) <= room else 8)
    page.drawString(MARGIN, MARGIN, CAUTION)
    book.number_page(width - MARGIN, MARGIN, 9, more=more)
