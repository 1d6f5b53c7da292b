"""The stake table in walking order: tape readings in the largest type, a box to tick, room for the actual."""

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.stakes import Stake
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _

_HEADING = 15.0
_LOWEST, _HIGHEST = 21.0, 36.0
MOST_STAKES = 18
_GREY = 0.93


def most_rows(room: float) -> int:
    """How many stakes fit into so many points of height, 18 at most."""
    return min(MOST_STAKES, int((room - _HEADING) / _LOWEST))


def draw_table(
    page: Canvas, rows: tuple[Stake, ...], units: Units, corner: tuple[float, float], width: float, room: float
) -> None:
    """Draw the table with its upper left corner at a point of the page."""
    if not rows:
        return
    left, top = corner
    height = max(_LOWEST, min(_HIGHEST, (room - _HEADING) / len(rows)))
    columns = _columns(left, width)
    page.setFont(FACE, 9)
    for name, words in _HEADINGS.items():
        _put(page, words, columns[name], top - 10)
    page.setLineWidth(0.35 * mm)
    page.line(left, top - _HEADING, left + width, top - _HEADING)
    for number, stake in enumerate(rows):
        bottom = top - _HEADING - (number + 1) * height
        if number % 2 == 0:
            page.setFillGray(_GREY)
            page.rect(left, bottom, width, height, stroke=0, fill=1)
            page.setFillGray(0)
        _row(page, stake, units, columns, bottom, height)
    end = top - _HEADING - len(rows) * height
    page.line(left, end, left + width, end)


_Column = tuple[float, float, str]
"""Left and right in points, and to which side the words are set."""
_HEADINGS = {
    "stake": _("stake"),
    "tape": _("tape"),
    "here": _("here"),
    "rows": _("rows × plants"),
    "plants": _("plants"),
    "set": _("set"),
    "actual": _("actual"),
}


def _columns(left: float, width: float) -> dict[str, _Column]:
    widths = {"stake": 28.0, "tape": 78.0, "here": 0.0, "rows": 82.0, "plants": 38.0, "set": 28.0, "actual": 60.0}
    widths["here"] = width - sum(widths.values())
    sides = {"stake": "centre", "tape": "right", "plants": "right", "set": "centre"}
    columns, x = {}, left
    for name, wide in widths.items():
        columns[name] = (x + 4, x + wide - 4, sides.get(name, "left"))
        x += wide
    return columns


def _put(page: Canvas, words: str, column: _Column, y: float) -> None:
    left, right, side = column
    if side == "right":
        page.drawRightString(right, y, words)
    elif side == "centre":
        page.drawCentredString((left + right) / 2, y, words)
    else:
        page.drawString(left, y, words)


def _row(page: Canvas, stake: Stake, units: Units, columns: dict[str, _Column], bottom: float, height: float) -> None:
    middle = bottom + height / 2
    page.setFont(BOLD, 14)
    _put(page, str(stake.number), columns["stake"], middle - 5)
    page.setFont(BOLD, 17)
    _put(page, tape(stake.at, units).number, columns["tape"], middle - 6)
    _here(page, stake, columns["here"], middle)
    rows_left, rows_right, _side = columns["rows"]
    size = 14 if pdfmetrics.stringWidth(stake.rows, BOLD, 14) <= rows_right - rows_left else 9
    page.setFont(BOLD, size)
    _put(page, fitted(stake.rows, BOLD, size, rows_right - rows_left), columns["rows"], middle - 5)
    if stake.plants is not None:
        page.setFont(BOLD, 14)
        _put(page, str(stake.plants), columns["plants"], middle - 5)
    page.setLineWidth(0.35 * mm)
    left, right, _side = columns["set"]
    page.setFillGray(1)
    page.rect((left + right) / 2 - 7, middle - 7, 14, 14, stroke=1, fill=1)
    page.setFillGray(0)
    left, right, _side = columns["actual"]
    page.setLineWidth(0.18 * mm)
    page.line(left, middle - 8, right, middle - 8)


def _here(page: Canvas, stake: Stake, column: _Column, middle: float) -> None:
    left, right, _side = column
    if len(stake.here) == 1 and pdfmetrics.stringWidth(stake.here[0], FACE, 12) <= right - left:
        page.setFont(FACE, 12)
        page.drawString(left, middle - 4, stake.here[0])
        return
    lines = _lines(stake.here, right - left)[:2]
    page.setFont(FACE, 10)
    y = middle + 2.5 if len(lines) == 2 else middle - 3.5
    for line in lines:
        page.drawString(left, y, line)
        y -= 10.5


def _lines(parts: tuple[str, ...], room: float) -> list[str]:
    """The words of a stake in lines of 10 pt: a line each, one that is too long broken at a dot."""
    if len(parts) > 1:
        return [fitted(part, FACE, 10, room) for part in (parts[0], "; ".join(parts[1:]))]
    head, dot, tail = parts[0].partition(" · ")
    if dot:
        return [fitted(head, FACE, 10, room), fitted(tail, FACE, 10, room)]
    words, line = parts[0].split(" "), ""
    while words and pdfmetrics.stringWidth(f"{line} {words[0]}", FACE, 10) <= room:
        line = f"{line} {words.pop(0)}".strip()
    return [line, fitted(" ".join(words), FACE, 10, room)] if words else [line]
