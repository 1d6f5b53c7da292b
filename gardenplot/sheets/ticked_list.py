"""Lists in parts with headings, a line a row with a box to tick, every second line shaded, over pages."""

from collections.abc import Callable, Iterable
from itertools import accumulate
from typing import Generic, TypeVar

from attrs import evolve, frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.progress import Told, untold
from gardenplot.sheets.book import Book
from gardenplot.sheets.list_page import ListHead, draw_list_head, list_room
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.words import _

HEADING, ROW = 27.0, 21.0
"""Points of height of a part's heading and of a row."""
BOX = 12.0
_GREY = 0.93

Row = TypeVar("Row")
DrawRow = Callable[[Canvas, Row, float, float], None]
"""Draws a row below a height, between the left margin and the right."""


def one_line_high(_row: object) -> float:
    """The height in points of a row of one line."""
    return ROW


@frozen
class Part(Generic[Row]):
    """Rows under a heading, with words at its right; what goes on over a page is told so.

    Rows are as high as `height_of` says, and lower than a page. A part that is about a `thing` has a bookmark. One
    that `flows` is begun wherever its first row has room.
    """

    name: str
    beside: str
    rows: tuple[Row, ...]
    continued: bool = False
    height_of: Callable[[Row], float] = one_line_high
    thing: str = ""
    flows: bool = False

    @property
    def height(self) -> float:
        """Points of height."""
        return HEADING + sum(map(self.height_of, self.rows))

    def fitting(self, room: float) -> int:
        """How many of its rows fit into so many points with the heading, one at least."""
        ends = accumulate(map(self.height_of, self.rows), initial=HEADING)
        return max(1, sum(end <= room for end in ends) - 1)


def paged(parts: Iterable[Part[Row]], room: float) -> list[list[Part[Row]]]:
    """Parts on pages; one is kept whole where a page can hold it and is not begun in the last lines of one."""
    pages: list[list[Part[Row]]] = []
    left = 0.0
    for one in parts:
        rest = one
        while rest.rows:
            least = HEADING + rest.height_of(rest.rows[0])
            whole = least if one.flows else rest.height
            if left < max(least, min(whole, room)) and (whole <= room or left < max(least, room / 2)):
                pages.append([])
                left = room
            taken = rest.fitting(left)
            part = evolve(rest, rows=rest.rows[:taken])
            pages[-1].append(part)
            left -= part.height
            rest = evolve(rest, rows=rest.rows[taken:], continued=True)
    return pages


def add_list(
    book: Book, parts: Iterable[Part[Row]], draw_row: DrawRow[Row], head: ListHead, told: Told = untold, *,
    closer: float = 1.0,
) -> None:  # fmt: skip
    """Add the pages of a list; none where there is no row.

    Rows may stand `closer`, at such a share of their height, where that saves a page.
    """
    pages, share = _saving(tuple(parts), list_room(book.paper, head.caution), closer)
    for number, inside in enumerate(pages):
        told(number, len(pages))
        y = draw_list_head(book, head)
        for part in inside:
            if part.thing and not part.continued:
                book.bookmark(part.name, part.thing)
            y = _draw(book.canvas, part, draw_row, y, share)
        book.end_page()


def _saving(parts: tuple[Part[Row], ...], room: float, closer: float) -> tuple[list[list[Part[Row]]], float]:
    """The pages of a list and the share of their heights that its rows have."""
    usual = paged(parts, room)
    dense = paged(parts, room / closer) if closer < 1 < len(usual) else usual
    return (dense, closer) if len(dense) < len(usual) else (usual, 1.0)


def _draw(page: Canvas, part: Part[Row], draw_row: DrawRow[Row], top: float, share: float) -> float:
    """Draw a part with its rows, at a share of their heights; gives the y in points below it."""
    high = HEADING * share
    right = page._pagesize[0] - MARGIN
    tail = _(", continued") if part.continued else ""
    room = right - MARGIN - pdfmetrics.stringWidth(part.beside, FACE, 12) - pdfmetrics.stringWidth(tail, BOLD, 14)
    page.setFont(BOLD, 14)
    page.drawString(MARGIN, top - high + 7, fitted(part.name, BOLD, 14, room - 14) + tail)
    page.setFont(FACE, 12)
    page.drawRightString(right, top - high + 7, part.beside)
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, top - high + 1, right, top - high + 1)
    y = top - high
    for number, row in enumerate(part.rows):
        height = part.height_of(row) * share
        if number % 2:
            page.setFillGray(_GREY)
            page.rect(MARGIN, y - height, right - MARGIN, height, stroke=0, fill=1)
            page.setFillGray(0)
        draw_row(page, row, y, right)
        y -= height
    return y
