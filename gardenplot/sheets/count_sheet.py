"""The count sheet: what to count at the beds, a box for each row, what was planted beside it, upright, in black.

A line is a planting: what it is, where it stands, what was planted and what its order needs; below it a box for each
row, at the right one for their sum, above that room for the day.
"""

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.count_list import BLANK, CountBlock, CountBox, count_turns
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.so_many import so_many_plants
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_fitted
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, broken
from gardenplot.sheets.ticked_list import Part, add_list
from gardenplot.units.figures import grouped
from gardenplot.words import _

_FIGURE, _WORD = 14, 10
"""Sizes in points of figures and of the words beside them."""
_TITLE, _LINE, _BOXES, _SPARE = 25.0, 19.0, 31.0, 7.0
"""Points of height of the line of the name, of others, of a line of boxes, and below them."""
_INDENT, _SUM = 32.0, 130.0
"""Points from the left margin to all but the letter, and the width of the last column, that of the sum."""
_BOX_WIDTH, _BOX_HEIGHT = 38.0, 22.0
_GAP, _APART = 3.0, 8.0
"""Points between a box and what stands beside it, and at least from one row to the next."""
_CAUTION = _(
    "Rows are counted from the left edge as seen from the head, those across from the head, rings from the "
    "outside in. Count what is fit to grow on."
)


def add_counts(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add what is to be counted, bed by bed; raises NothingToPrintError where nothing is planted."""
    turns = count_turns(plan, choices.beds)
    if not turns:
        raise NothingToPrintError(_("nothing is planted in the plan, so there is no count sheet"))
    width = book.upright()._pagesize[0] - 2 * MARGIN

    def height(block: CountBlock) -> float:
        return _height(block, width)

    parts = (
        Part(turn.name, so_many_plants(turn.plants), turn.blocks, height_of=height, thing=turn.bed) for turn in turns
    )
    add_list(book, parts, _draw_block, ListHead(_("Count sheet"), said, _CAUTION), told)


@frozen
class _Slots:
    """How the boxes of a planting stand: so many on a line, so far apart, each so far from where its label begins."""

    per_line: int
    pitch: float
    lines: int
    label: float


def _slots(block: CountBlock, width: float) -> _Slots:
    room = width - _INDENT - _SUM
    label = max(map(_label_width, block.boxes), default=0.0)
    of = max((_of_width(box.plants) for box in block.boxes), default=0.0)
    most = max(1, int(room // (label + _BOX_WIDTH + _GAP + of + _APART)))
    lines = -(-len(block.boxes) // most)
    return _Slots(-(-len(block.boxes) // lines) if lines else most, room / most, lines, label)


def _label_width(box: CountBox) -> float:
    """Points from the left of a row's number to its box."""
    at = pdfmetrics.stringWidth(f" {box.at}", FACE, _FIGURE) if box.at else 0.0
    return float(pdfmetrics.stringWidth(box.rows, BOLD, _FIGURE) + at + _GAP)


def _of_width(plants: int) -> float:
    of = _("of {plants}").format(plants="")
    return float(pdfmetrics.stringWidth(of, FACE, _WORD) + pdfmetrics.stringWidth(grouped(plants), FACE, _FIGURE))


def _height(block: CountBlock, width: float) -> float:
    lines = _slots(block, width).lines + bool(block.sample)
    return _TITLE + _LINE * (1 + len(_needs(block, width))) + _BOXES * max(1, lines) + _SPARE


def _needs(block: CountBlock, width: float) -> list[str]:
    """What its order needs, in lines."""
    return broken(block.needs, FACE, _FIGURE, width - _INDENT - 4) if block.needs else []


def _draw_block(page: Canvas, block: CountBlock, top: float, right: float) -> None:
    left = MARGIN + _INDENT
    draw_fitted(page, block.letter, (MARGIN + 4, top - 21), _INDENT - 8, BOLD, 22)
    draw_fitted(page, block.name, (left, top - 19), right - left - _SUM - 8, BOLD, _FIGURE)
    _draw_day(page, top - 19, right)
    y = top - _TITLE - 13
    page.setFont(BOLD, _FIGURE)
    page.drawString(left, y, block.readings)
    at = left + max(122.0, pdfmetrics.stringWidth(block.readings, BOLD, _FIGURE) + 14)
    page.setFont(FACE, _FIGURE)
    days = pdfmetrics.stringWidth(block.days, FACE, _FIGURE)
    page.drawRightString(right - 4, y, block.days)
    draw_fitted(page, block.planted, (at, y), right - 4 - at - days - 12, FACE, _FIGURE)
    page.setFont(FACE, _FIGURE)
    for line in _needs(block, right - MARGIN):
        y -= _LINE
        page.drawString(left, y, line)
    _draw_boxes(page, block, y - 6, right)


def _draw_day(page: Canvas, base: float, right: float) -> None:
    """Room for the day of the count."""
    page.setFont(FACE, _WORD)
    words = _("counted on")
    start = right - _SUM
    page.drawString(start, base, words)
    page.setLineWidth(0.18 * mm)
    page.line(start + pdfmetrics.stringWidth(words, FACE, _WORD) + _GAP, base - 2, right - 4, base - 2)


def _draw_boxes(page: Canvas, block: CountBlock, top: float, right: float) -> None:
    """A box for each row, then their sum at the right of the first line; below them room for a part."""
    slots, left = _slots(block, right - MARGIN), MARGIN + _INDENT
    if block.boxes:
        draw_fitted(page, block.rows, (MARGIN + 4, top - _BOXES / 2 - 4), _INDENT - 6, FACE, _WORD)
    for number, box in enumerate(block.boxes):
        line, column = divmod(number, slots.per_line)
        _draw_cell(page, box, left + column * slots.pitch, top - _BOXES * line - _BOXES / 2, slots.label)
    middle, start = top - _BOXES / 2, right - _SUM
    words = _("in all")
    page.setFont(BOLD, _WORD)
    page.drawString(start, middle - 4, words)
    _draw_blank(page, start + 31, middle, 0.5)
    _draw_of(page, block.plants, start + 31 + _BOX_WIDTH + _GAP, middle)
    if block.sample:
        _draw_sample(page, block.sample, left, top - _BOXES * slots.lines - _BOXES / 2)


def _draw_cell(page: Canvas, box: CountBox, left: float, middle: float, label: float) -> None:
    page.setFont(BOLD, _FIGURE)
    page.drawString(left, middle - 5, box.rows)
    if box.at:
        page.setFont(FACE, _FIGURE)
        page.drawString(left + pdfmetrics.stringWidth(f"{box.rows} ", BOLD, _FIGURE), middle - 5, box.at)
    _draw_blank(page, left + label, middle, 0.35)
    _draw_of(page, box.plants, left + label + _BOX_WIDTH + _GAP, middle)


def _draw_blank(page: Canvas, left: float, middle: float, line: float) -> None:
    """A white box to write in, also where the line is shaded; its outline is so many mm thick."""
    page.setLineWidth(line * mm)
    page.setFillGray(1)
    page.rect(left, middle - _BOX_HEIGHT / 2, _BOX_WIDTH, _BOX_HEIGHT, stroke=1, fill=1)
    page.setFillGray(0)


def _draw_of(page: Canvas, plants: int, left: float, middle: float) -> None:
    of = _("of {plants}").format(plants="")
    page.setFont(FACE, _WORD)
    page.drawString(left, middle - 5, of)
    page.setFont(FACE, _FIGURE)
    page.drawString(left + pdfmetrics.stringWidth(of, FACE, _WORD), middle - 5, grouped(plants))


def _draw_sample(page: Canvas, words: str, left: float, middle: float) -> None:
    """A sentence with a box for each blank."""
    page.setFont(FACE, 12)
    first, *others = words.split(BLANK)
    page.drawString(left, middle - 4, first)
    left += pdfmetrics.stringWidth(first, FACE, 12)
    for rest in others:
        _draw_blank(page, left, middle, 0.35)
        page.setFont(FACE, 12)
        page.drawString(left + _BOX_WIDTH, middle - 4, rest)
        left += _BOX_WIDTH + pdfmetrics.stringWidth(rest, FACE, 12)
