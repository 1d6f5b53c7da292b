"""What stands on the view of the ground at its own size: north, the scale bar, the way to a peg out of sight."""

from math import atan2, degrees, hypot

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPolygonF

from gardenplot.drawing.ground_marks import north_letter, north_marks, scale_bar
from gardenplot.drawing.ground_under import Eye
from gardenplot.drawing.ground_words import loose_line, peg_words
from gardenplot.drawing.style import Ink, Palette
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window.lettering import lettering, write, write_within
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour
from gardenplot.words import _

_PLAIN = Scale(1.0, 1.0, 0.0, 0.0)
_PX, _NORTH_PX = 12, 14
_ROOMY = 260.0
"""The height in pixels of a view from which the north arrow has its full size."""
_INSET = 14.0
"""How near to the edge of the view the arrow to the peg stands, in pixels."""


def paint_beside(painter: QPainter, frame: QRectF, plan: Plan, eye: Eye, inks: Palette) -> None:
    """Paint them on paper, so that each is read whatever lies below."""
    _north(painter, frame, plan, inks)
    _bar(painter, frame, plan, eye, inks)
    _way_to_peg(painter, frame, plan, eye, inks)


def kept_free(frame: QRectF, plan: Plan, eye: Eye) -> tuple[QRectF, ...]:
    """The parts of the view in which no words of the ground stand."""
    north = () if plan.place.north is None else (_north_frame(frame),)
    away = _peg_sign(frame, plan, eye)
    return (*north, _bar_frame(frame, plan, eye), *(() if away is None else (away[1],)))


def _north_times(frame: QRectF) -> float:
    """How large the north arrow is, smaller where the view is low."""
    return max(0.5, min(1.0, frame.height() / _ROOMY))


def _north_frame(frame: QRectF) -> QRectF:
    times = _north_times(frame)
    return QRectF(frame.right() - 8 - 96 * times, frame.top() + 16 * times, 96 * times, 96 * times)


def _north(painter: QPainter, frame: QRectF, plan: Plan, inks: Palette) -> None:
    north = plan.place.north
    if north is None:
        return
    area = _north_frame(frame)
    painter.save()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(inks, Ink.PAPER, 0.85))
    painter.drawEllipse(area)
    painter.translate(area.center())
    painter.scale(_north_times(frame), _north_times(frame))
    paint(painter, north_marks(north), _PLAIN, inks)
    painter.setPen(colour(inks, Ink.INK))
    x, y = north_letter(north)
    write_within(painter, QRectF(x - 12, y - 10, 24, 20), _("N"), _NORTH_PX, bold=True)
    painter.restore()


def _bar_frame(frame: QRectF, plan: Plan, eye: Eye) -> QRectF:
    """The paper that the scale bar stands on, with a word on beds that have no place."""
    bar, loose = scale_bar(plan.place.units, eye.scale), loose_line(plan)
    width = bar.pixels + lettering(str(bar.words), _PX).width + 38
    width += lettering(loose, _PX).width + 16 if loose else 0
    return QRectF(frame.left() + 12, frame.bottom() - 40, min(width, frame.width() - 24), 32)


def _bar(painter: QPainter, frame: QRectF, plan: Plan, eye: Eye, inks: Palette) -> None:
    bar, area = scale_bar(plan.place.units, eye.scale), _bar_frame(frame, plan, eye)
    painter.save()
    painter.fillRect(area, colour(inks, Ink.PAPER))
    painter.setClipRect(area)
    painter.translate(area.left() + 12, area.top() + 14)
    paint(painter, bar.marks, _PLAIN, inks)
    painter.setPen(colour(inks, Ink.INK))
    write(painter, QPointF(bar.pixels + 7, 9), str(bar.words), _PX)
    painter.setPen(colour(inks, Ink.SECOND))
    write(painter, QPointF(bar.pixels + lettering(str(bar.words), _PX).width + 34, 9), loose_line(plan), _PX)
    painter.restore()


def _peg_sign(frame: QRectF, plan: Plan, eye: Eye) -> tuple[QPointF, QRectF, str] | None:
    """The tip of an arrow at the edge of the view, and words with their frame; None for a peg in sight."""
    if frame.adjusted(-4, -4, 4, 4).contains(QPointF(eye.left, eye.top)):
        return None
    tip = QPointF(
        max(frame.left() + _INSET, min(eye.left, frame.right() - _INSET)),
        max(frame.top() + _INSET, min(eye.top, frame.bottom() - _INSET)),
    )
    middle = frame.center()
    words = peg_words(round(hypot(eye.left - middle.x(), eye.top - middle.y()) / eye.scale * MM), plan.place.units)
    width = lettering(words, _PX).width + 8
    left = tip.x() + 10 if tip.x() < middle.x() else tip.x() - 10 - width
    top = max(frame.top() + 4, min(tip.y() - 9, frame.bottom() - 62))
    return tip, QRectF(left, top, width, 18), words


def _way_to_peg(painter: QPainter, frame: QRectF, plan: Plan, eye: Eye, inks: Palette) -> None:
    found = _peg_sign(frame, plan, eye)
    if found is None:
        return
    tip, area, words = found
    painter.fillRect(area, colour(inks, Ink.PAPER, 0.85))
    painter.setPen(colour(inks, Ink.ACCENT))
    write_within(painter, area, words, _PX)
    painter.save()
    painter.translate(tip)
    painter.rotate(degrees(atan2(eye.top - tip.y(), eye.left - tip.x())))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(inks, Ink.ACCENT))
    painter.drawPolygon(QPolygonF([QPointF(8, 0), QPointF(-3, -5.5), QPointF(-3, 5.5)]))
    painter.restore()
