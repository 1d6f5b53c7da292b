"""Heading and foot of pages that are lists, upright: what it is, of which plan, which page of how many."""

from datetime import date
from io import BytesIO

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot import __version__
from gardenplot.drawing.days import day_words
from gardenplot.plan import Plan
from gardenplot.sheets.page_parts import MARGIN, version_of
from gardenplot.sheets.paper import BOLD, FACE, SIZES, Paper, broken, fitted, load_face
from gardenplot.words import _

HEAD = 46.0
"""Points from the upper margin to where a list begins."""
LIST_FOOT = MARGIN + 16
"""A list ends above this height in points."""
_CAUTION_PITCH = 11.0


@frozen
class ListHead:
    """What stands in the heading and at the foot of each page of a list."""

    title: str
    plan_name: str
    version: str
    printed: date | None
    caution: str
    pages: int


def list_canvas(content: BytesIO, paper: Paper, title: str) -> Canvas:
    """A canvas for upright pages; the same that is drawn on it gives the same bytes."""
    load_face()
    height, width = SIZES[paper]
    page = Canvas(content, pagesize=(width, height), invariant=1, pageCompression=1, lang="en", initialFontName=FACE)
    page.setTitle(title)
    page.setCreator(f"gardenplot {__version__}")
    return page


def list_head(plan: Plan, title: str, name: str, printed: date | None, caution: str, pages: int) -> ListHead:
    """The heading of a list of a plan."""
    return ListHead(title, name or plan.place.name, version_of(plan), printed, caution, pages)


def list_room(paper: Paper) -> float:
    """Points of height that a list has on a page."""
    return float(SIZES[paper][0] - MARGIN - HEAD - LIST_FOOT)


def draw_list_head(page: Canvas, head: ListHead, beside: str = "") -> float:
    """Draw heading and foot, at the right what this page is about; gives the y in points where the list begins."""
    width, height = page._pagesize
    right = width - MARGIN
    page.setFont(BOLD, 22)
    page.drawString(MARGIN, height - MARGIN - 18, head.title)
    page.setFont(BOLD, 17)
    page.drawRightString(right, height - MARGIN - 18, beside)
    number = _("page {number} of {pages}").format(number=page.getPageNumber(), pages=head.pages)
    page.setFont(FACE, 10)
    page.drawRightString(right, height - MARGIN - 34, number)
    page.drawString(MARGIN, height - MARGIN - 34, fitted(_line(head), FACE, 10, right - MARGIN - 90))
    page.setLineWidth(0.5 * mm)
    page.line(MARGIN, height - MARGIN - 42, right, height - MARGIN - 42)
    _draw_caution(page, head.caution, right - MARGIN)
    return float(height - MARGIN - HEAD)


def _line(head: ListHead) -> str:
    parts = [_("version {version}").format(version=head.version)]
    if head.printed is not None:
        parts.append(_("printed {day}").format(day=day_words(head.printed)))
    return " · ".join(part for part in (*parts, head.plan_name) if part)


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
    page.rect(left, bottom, side, side)
    if ticked:
        page.setLineWidth(0.5 * mm)
        page.line(left + 0.2 * side, bottom + 0.5 * side, left + 0.42 * side, bottom + 0.24 * side)
        page.line(left + 0.42 * side, bottom + 0.24 * side, left + 0.84 * side, bottom + 0.84 * side)
