"""Heading and foot of pages that are lists, upright: what it is, of which plan, which page of how many."""

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.book import About, Book
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, SIZES, Paper, broken, fitted

HEAD = 46.0
"""Points from the upper margin to where a list begins."""
LIST_FOOT = MARGIN + 16
"""A list ends above this height in points, higher where its caution has more than two lines."""
_CAUTION_PITCH = 11.0
_LINES_AT_FOOT = 2


@frozen
class ListHead:
    """What stands in the heading and at the foot of each page of a list."""

    title: str
    about: About
    caution: str


def list_room(paper: Paper, caution: str = "") -> float:
    """Points of height that a list has on a page above its caution."""
    height, width = SIZES[paper]
    lines = len(broken(caution, FACE, 9, width - 2 * MARGIN))
    return float(height - MARGIN - HEAD - LIST_FOOT - _CAUTION_PITCH * max(0, lines - _LINES_AT_FOOT))


def draw_list_head(book: Book, head: ListHead, beside: str = "") -> float:
    """Draw heading and foot, at the right what this page is about; gives the y in points where the list begins."""
    page = book.upright()
    width, height = page._pagesize
    right = width - MARGIN
    page.setFont(BOLD, 22)
    page.drawString(MARGIN, height - MARGIN - 18, head.title)
    page.setFont(BOLD, 17)
    page.drawRightString(right, height - MARGIN - 18, beside)
    book.number_page(right, height - MARGIN - 34, 10)
    page.setFont(FACE, 10)
    page.drawString(MARGIN, height - MARGIN - 34, fitted(" · ".join(head.about.said), FACE, 10, right - MARGIN - 90))
    page.setLineWidth(0.5 * mm)
    page.line(MARGIN, height - MARGIN - 42, right, height - MARGIN - 42)
    _draw_caution(page, head.caution, right - MARGIN)
    return float(height - MARGIN - HEAD)


def _draw_caution(page: Canvas, caution: str, room: float) -> None:
    page.setFont(FACE, 9)
    lines = broken(caution, FACE, 9, room)
    for number, line in enumerate(lines):
        page.drawString(MARGIN, MARGIN + _CAUTION_PITCH * (len(lines) - 1 - number) - 4, line)


def draw_fitted(page: Canvas, words: str, corner: tuple[float, float], room: float, face: str, size: int) -> None:
    """Draw words on one line from a point on, smaller where they lack room, and cut only where 8 pt are too large."""
    fits = next((one for one in range(size, 8, -1) if pdfmetrics.stringWidth(words, face, one) <= room), 8)
    page.setFont(face, fits)
    page.drawString(*corner, fitted(words, face, fits, room))


def draw_box(page: Canvas, left: float, middle: float, side: float, *, ticked: bool = False) -> None:
    """A box to tick, with its middle at a height; a tick in it where the job is done."""
    bottom = middle - side / 2
    page.setLineWidth(0.35 * mm)
    page.setFillGray(1)
    page.rect(left, bottom, side, side, stroke=1, fill=1)
    page.setFillGray(0)
    if ticked:
        page.setLineWidth(0.5 * mm)
        page.line(left + 0.2 * side, bottom + 0.5 * side, left + 0.42 * side, bottom + 0.24 * side)
        page.line(left + 0.42 * side, bottom + 0.24 * side, left + 0.84 * side, bottom + 0.84 * side)
