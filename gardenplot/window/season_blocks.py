"""Painting the plantings on a season map: what is in the ground has whole sides, what is planned broken ones."""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gardenplot.drawing.marks import Outline, box
from gardenplot.drawing.season_map import MapBlock
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.lettering import lettering, write_within
from gardenplot.window.painting import Scale, paint
from gardenplot.window.season_axes import Axes
from gardenplot.window.theme import colour

_LINE, _LOW, _LOWEST = 18.0, 15.0, 8.5
"""Pixels of a line of words; up to which it is one of small words, and below which it is none."""
_APART = 3.0
"""Pixels between kept places below which their lines would be no more than a hatch."""
_QUIET = 0.45
"""How much of its ink the hatch of a planting has: here it fills far more ground than on a bed."""
_PLANNED = [5.0, 3.0]
"""Dashes and gaps of a side that is no more than planned, in widths of its line."""


def fill_block(painter: QPainter, axes: Axes, block: MapBlock, inks: Palette) -> None:
    """Paint the ground of one planting with its hatch."""
    frame = axes.frame(block)
    if frame.bottom() < axes.top or frame.top() > axes.bottom:
        return
    painter.fillRect(frame, colour(inks, Ink.PAPER))
    corners = box(frame.left(), frame.top(), frame.right(), frame.bottom())
    ground = Outline(corners, fill=block.look.ink, tint=0.3, hatch=block.look.hatch)
    painter.setOpacity(_QUIET)
    paint(painter, (ground,), Scale(1, 1, 0, axes.width), inks)
    painter.setOpacity(1)


def outline_block(painter: QPainter, axes: Axes, block: MapBlock, inks: Palette, *, chosen: bool) -> None:
    """Paint the sides of one planting, the places kept in it, and the day from which it can be cut."""
    frame = axes.frame(block)
    if frame.bottom() < axes.top or frame.top() > axes.bottom:
        return
    _kept(painter, axes, frame, block, inks)
    _sides(painter, frame, block, inks)
    _ready(painter, axes, frame, block, inks)
    if chosen:
        _raising(painter, axes, frame, block, inks)
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(frame.adjusted(-2, -2, 2, 2))


def _sides(painter: QPainter, frame: QRectF, block: MapBlock, inks: Palette) -> None:
    """Whole where it came about, broken where it is planned, none where no day is said."""
    left, right = QLineF(frame.topLeft(), frame.bottomLeft()), QLineF(frame.topRight(), frame.bottomRight())
    sides = [(left, block.begun), (right, block.begun)]
    if block.first is not None:
        sides.append((QLineF(frame.topLeft(), frame.topRight()), block.begun))
    if block.last is not None:
        sides.append((QLineF(frame.bottomLeft(), frame.bottomRight()), block.cleared))
    for side, came in sides:
        pen = QPen(colour(inks, block.look.ink), 2.0 if came else 1.4)
        if not came:
            pen.setDashPattern(_PLANNED)
            pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        painter.drawLine(side)


def _kept(painter: QPainter, axes: Axes, frame: QRectF, block: MapBlock, inks: Palette) -> None:
    """Lines at the readings that are kept for crops that follow, down to the day that these go in."""
    for one in block.kept:
        lines = [axes.x(reading) for reading in one.readings]
        if len(lines) > 1 and (lines[-1] - lines[0]) / (len(lines) - 1) < _APART:
            continue
        painter.setPen(QPen(colour(inks, one.look.ink), 1.2, Qt.PenStyle.DotLine))
        end = min(frame.bottom(), axes.y(one.until, axes.season.span.last))
        painter.drawLines([QLineF(x, frame.top() + 1, x, end) for x in lines])


def _ready(painter: QPainter, axes: Axes, frame: QRectF, block: MapBlock, inks: Palette) -> None:
    """A thin line from side to side on the day from which it can be cut, and its word where there is room."""
    if block.ready is None:
        return
    y = axes.y(block.ready, block.ready)
    if not frame.top() + 2 < y < frame.bottom() - 2:
        return
    painter.setPen(QPen(colour(inks, block.look.ink), 1))
    painter.drawLine(QPointF(frame.left(), y), QPointF(frame.right(), y))


def _raising(painter: QPainter, axes: Axes, frame: QRectF, block: MapBlock, inks: Palette) -> None:
    """Of the one that is chosen, when it is in its trays: a broken line up to the day that they are sown."""
    if block.sow is None or block.first is None:
        return
    x, y = frame.left() + 6, axes.y(block.sow, block.sow)
    painter.setPen(QPen(colour(inks, block.look.ink), 1.2, Qt.PenStyle.DashLine))
    painter.drawLine(QPointF(x, frame.top() - 3), QPointF(x, y))
    painter.setPen(QPen(colour(inks, block.look.ink), 1.2))
    painter.drawLine(QPointF(x - 4, y), QPointF(x + 4, y))


def write_block(painter: QPainter, axes: Axes, block: MapBlock, inks: Palette) -> None:
    """Write the letter in its box, and beside it on paper what there is room for: the day that it is out goes first.

    In a planting that is too low for a whole line both are as low as it is.
    """
    seen = axes.frame(block).intersected(QRectF(QPointF(axes.gutter, axes.top), QPointF(axes.width, axes.bottom)))
    high = min(_LINE, seen.height() - 2)
    size = 12 if high > _LOW else 11
    chip = max(18.0, lettering(block.look.letter, size, bold=True).width + 10)
    if seen.width() < chip + 6 or high < _LOWEST:
        return
    rim = min(4.0, (seen.height() - high) / 2)
    box_of = QRectF(seen.left() + max(1.0, rim), seen.top() + rim, chip, high)
    painter.fillRect(box_of, colour(inks, block.look.ink))
    painter.setPen(colour(inks, Ink.PAPER))
    write_within(painter, box_of, block.look.letter, size, bold=True)
    room = seen.right() - box_of.right() - 12
    lines = block.lines if seen.height() >= 2 * _LINE + 6 else (block.line,)
    for number, words in enumerate(lines):
        shown = next((one for one in words if lettering(one, size).width <= room), "")
        if shown:
            at = QRectF(box_of.right(), box_of.top() + high * number, lettering(shown, size).width + 12, high)
            painter.fillRect(at, colour(inks, Ink.PAPER))
            painter.setPen(colour(inks, Ink.SECOND if number else Ink.INK))
            write_within(painter, at, shown, size)
