"""The stake table in walking order: tape readings in the largest type, a box to tick, room for the actual."""

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.stakes import Here, Stake
from gardenplot.sheets.paper import BOLD, FACE, fitted
from gardenplot.units import Units
from gardenplot.units.figures import grouped, tape
from gardenplot.words import _

_HEADING = 15.0
_LOWEST, _HIGHEST = 21.0, 36.0
MOST_STAKES = 18
_GREY = 0.93
_LONG = 40
"""Letters that fit on one line beside a stake."""


def fitting(rows: tuple[Stake, ...], room: float) -> int:
    """How many of the stakes fit into so many points of height, 18 at most and one at least."""
    taken, lines = 0, 0.0
    for stake in rows[:MOST_STAKES]:
        lines += _share(stake)
        if taken and _HEADING + lines * _LOWEST > room:
            break
        taken += 1
    return taken


def height_of(rows: tuple[Stake, ...]) -> float:
    """The least height in points of a table of so many stakes, or of the most that a page takes."""
    return _HEADING + _LOWEST * sum(map(_share, rows[:MOST_STAKES]))


def _share(stake: Stake) -> float:
    """The height of a stake's row, in rows of two lines; what has no name to cut may need two of several lines."""
    if len(stake.notes) == 1:
        return 1.0
    lines = sum(1 + (not note.name and len(note.says) > _LONG) for note in stake.notes)
    return max(1.0, lines / 2 + 0.2 * (lines > 2))


def draw_table(
    page: Canvas, rows: tuple[Stake, ...], units: Units, corner: tuple[float, float], width: float, room: float
) -> float:
    """Draw the table with its upper left corner at a point of the page; gives the y in points of its end."""
    if not rows:
        return corner[1]
    left, top = corner
    share = max(_LOWEST, min(_HIGHEST, (room - _HEADING) / sum(map(_share, rows))))
    columns = _columns(left, width)
    page.setFont(FACE, 9)
    for name, words in _HEADINGS.items():
        _put(page, words, columns[name], top - 10)
    page.setLineWidth(0.35 * mm)
    page.line(left, top - _HEADING, left + width, top - _HEADING)
    bottom = top - _HEADING
    for number, stake in enumerate(rows):
        height = share * _share(stake)
        bottom -= height
        if number % 2 == 0:
            page.setFillGray(_GREY)
            page.rect(left, bottom, width, height, stroke=0, fill=1)
            page.setFillGray(0)
        _row(page, stake, units, columns, bottom, height)
    page.line(left, bottom, left + width, bottom)
    return bottom


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
    _rows(page, stake.rows, columns["rows"], middle)
    if stake.plants is not None:
        page.setFont(BOLD, 14)
        _put(page, grouped(stake.plants), columns["plants"], middle - 5)
    page.setLineWidth(0.35 * mm)
    left, right, _side = columns["set"]
    page.setFillGray(1)
    page.rect((left + right) / 2 - 7, middle - 7, 14, 14, stroke=1, fill=1)
    page.setFillGray(0)
    left, right, _side = columns["actual"]
    page.setLineWidth(0.18 * mm)
    page.line(left, middle - 8, right, middle - 8)


def _rows(page: Canvas, words: str, column: _Column, middle: float) -> None:
    """Rows by plants, as large as there is room for, on two lines rather than cut short."""
    room = column[1] - column[0]
    size = next((one for one in (14, 12, 10) if pdfmetrics.stringWidth(words, BOLD, one) <= room), 9)
    lines = [words]
    if pdfmetrics.stringWidth(words, BOLD, size) > room and " + " in words:
        size, (first, last) = 10, words.rsplit(" + ", 1)
        lines = [first, f"+ {last}"]
    page.setFont(BOLD, size)
    for number, line in enumerate(lines):
        _put(page, fitted(line, BOLD, size, room), column, middle - 5 + 5.5 * (len(lines) - 1) - 11 * number)


def _here(page: Canvas, stake: Stake, column: _Column, middle: float) -> None:
    left, right, _side = column
    room = right - left
    if len(stake.notes) == 1 and pdfmetrics.stringWidth(stake.here[0], FACE, 12) <= room:
        page.setFont(FACE, 12)
        page.drawString(left, middle - 4, stake.here[0])
        return
    size, lines = 10, _two_lines(stake.notes[0], room)
    if len(stake.notes) > 1:
        size = 10 if all(pdfmetrics.stringWidth(words, FACE, 10) <= room for words in stake.here) else 9
        lines = [line for note in stake.notes for line in _lines(note, room, size)]
    page.setFont(FACE, size)
    y = middle + 5.25 * len(lines) - 8.5
    for line in lines:
        page.drawString(left, y, line)
        y -= 10.5


def _lines(note: Here, room: float, size: int) -> list[str]:
    """A note among others: on one line, unless it has no name that could be cut."""
    return [_one_line(note, room, size)] if note.name or len(note.says) <= _LONG else _two_lines(note, room)


def _one_line(note: Here, room: float, size: int = 10) -> str:
    """A note on one line: its name is cut where it must be, never its reading."""
    tail = f" {note.says}" + (f" · {note.more}" if note.more else "")
    if not note.name:
        return fitted(tail.strip(), FACE, size, room)
    return fitted(note.name, FACE, size, max(16.0, room - pdfmetrics.stringWidth(tail, FACE, size))) + tail


def _two_lines(note: Here, room: float) -> list[str]:
    if note.more:
        return [_one_line(Here(note.says, note.name), room), fitted(note.more, FACE, 10, room)]
    words, line = str(note).split(" "), ""
    while words and pdfmetrics.stringWidth(f"{line} {words[0]}", FACE, 10) <= room:
        line = f"{line} {words.pop(0)}".strip()
    return [line, fitted(" ".join(words), FACE, 10, room)] if words else [line]
