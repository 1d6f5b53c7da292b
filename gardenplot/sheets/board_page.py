"""Heading and foot of pages at true size: the lengths to measure before use, and how the pieces are put together."""

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.book import About, Book
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, check_length, fitted
from gardenplot.units import Units
from gardenplot.words import _

SIDE: float = 7 * mm
"""Points left and right of what is drawn at true size; most printers leave 5 mm white."""
TAB: float = 12 * mm
"""Points of the edge on which the next piece is glued."""
HEAD = 48.0
"""Points from the upper margin to where pieces begin."""
FOOT = MARGIN + 28
"""Pieces end above this height in points."""
UPRIGHT_BAR = 30.0
"""Points at the right of a page that a check length down the page takes."""
_STOP = _("Not so? Print it again at 100 %, not fitted to the page.")


def draw_board_head(book: Book, title: str, beside: str, units: Units, *, both_ways: bool = False) -> float:
    """Draw the heading with its check length, also one down the page; gives the y in points below it."""
    page = book.canvas
    width, height = page._pagesize
    right, top = width - SIDE, height - MARGIN
    room = right - SIDE - pdfmetrics.stringWidth(beside, BOLD, 12) - 12
    size = next((size for size in (14, 12) if pdfmetrics.stringWidth(title, BOLD, size) <= room), 11)
    page.setFont(BOLD, size)
    page.drawString(SIDE, top - 12, fitted(title, BOLD, size, room))
    page.setFont(BOLD, 12)
    page.drawRightString(right, top - 12, beside)
    length, words = check_length(units)
    said = _("Measure before use: this bar is {length}").format(length=words)
    if both_ways:
        said = _("Measure before use: both bars are {length}").format(length=words)
    page.setFont(BOLD, 10)
    page.drawString(SIDE, top - 31, said)
    x = SIDE + pdfmetrics.stringWidth(said, BOLD, 10) + 10
    _bar(page, (x, top - 27.5), (x + length, top - 27.5))
    if both_ways:
        _bar(page, (right - 5, top - HEAD - 14 - length), (right - 5, top - HEAD - 14))
    _draw_stop(page, x + length + 12, right, top)
    return float(top - HEAD)


def _draw_stop(page: Canvas, left: float, right: float, top: float) -> None:
    """What to do where a bar is not true, beside it or below where there is no room."""
    page.setFont(FACE, 9)
    if pdfmetrics.stringWidth(_STOP, FACE, 9) <= right - left:
        page.drawString(left, top - 31, _STOP)
    else:
        page.drawString(SIDE, top - 42, _STOP)


def _bar(page: Canvas, one: tuple[float, float], other: tuple[float, float]) -> None:
    """A bar with a tick square across each end."""
    page.setLineWidth(0.5 * mm)
    page.line(*one, *other)
    across = (0, 5) if one[1] == other[1] else (5, 0)
    for x, y in (one, other):
        page.line(x - across[0], y - across[1], x + across[0], y + across[1])


def draw_board_foot(book: Book, legend: str, about: About) -> None:
    """Draw how the pieces of the page are cut and joined, what plan they are of, and which page this is."""
    page = book.canvas
    right = page._pagesize[0] - SIDE
    size = 10 if pdfmetrics.stringWidth(legend, FACE, 10) <= right - SIDE else 9
    page.setFont(FACE, size)
    page.drawString(SIDE, MARGIN + 12, fitted(legend, FACE, size, right - SIDE))
    page.setFont(FACE, 9)
    page.drawString(SIDE, MARGIN, fitted(" · ".join(about.said), FACE, 9, right - SIDE - 90))
    book.number_page(right, MARGIN, 9)


def draw_glue(page: Canvas, box: tuple[float, float, float, float]) -> None:
    """A hatched edge on which the next piece is glued: left, bottom, right, top."""
    left, bottom, right, top = box
    page.saveState()
    path = page.beginPath()
    path.rect(left, bottom, right - left, top - bottom)
    page.clipPath(path, stroke=0, fill=0)
    page.setLineWidth(0.18 * mm)
    rise, step = top - bottom, 4 * mm
    at = left - rise
    while at < right:
        page.line(at, bottom, at + rise, top)
        at += step
    page.restoreState()


def draw_join(page: Canvas, middle: tuple[float, float], number: int) -> None:
    """The number of a join, white in a black box below its word; all of it 32 points high."""
    x, y = middle[0], middle[1] - 5
    words = str(number)
    half = max(8.0, pdfmetrics.stringWidth(words, BOLD, 12) / 2 + 3)
    page.setFillGray(1)
    page.rect(x - half - 3, y - 11, 2 * half + 6, 32, stroke=0, fill=1)
    page.setFillGray(0)
    page.setFont(FACE, 9)
    page.drawCentredString(x, y + 11, _("join"))
    page.rect(x - half, y - 8, 2 * half, 16, stroke=0, fill=1)
    page.setFillGray(1)
    page.setFont(BOLD, 12)
    page.drawCentredString(x, y - 4.3, words)
    page.setFillGray(0)
