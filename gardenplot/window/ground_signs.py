"""Words on the ground painted: names of beds, letters of blocks, names of tunnels and paths, shares of slopes."""

from math import cos, radians, sin

from attrs import evolve
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from gardenplot.drawing.ground import Says, Sign
from gardenplot.drawing.ground_under import Eye
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.theme import colour, drawing_font

_ASLANT = 1e-6
_AWAY = 8.0
"""Pixels between a bed and its name."""
_SLIMMEST = 7.0
"""Pixels across a bed below which its blocks have no letters and names of beds are small."""
_SLIMMEST_NAMED = 4.5
"""Pixels across the median bed below which only the chosen one is named."""
_LEAST_NAME = 26.0
"""Pixels of room below which a name is left out."""


def paint_signs(
    painter: QPainter, frame: QRectF, signs: tuple[Sign, ...], eye: Eye, chosen: str | None, inks: Palette
) -> None:
    """Paint all words that are in sight and have room."""
    usual = usual_width(signs, eye.scale)
    for each in signs:
        is_chosen = each.says is Says.BED and each.about == chosen
        font = _font_of(each, usual, chosen=is_chosen)
        sign = _placed(each, eye.scale, font)
        sign = _in_sight(sign, eye, frame)
        at = QPointF(*eye.pixels(sign.at))
        if not frame.adjusted(-300, -300, 300, 300).contains(at):
            continue
        painter.save()
        painter.translate(at)
        painter.rotate(sign.turn)
        if sign.says is Says.BLOCK:
            _letter(painter, sign, eye.scale, inks)
        else:
            ink = colour(inks, Ink.ACCENT if is_chosen else sign.ink)
            _name(painter, sign, eye.scale, font, ink, colour(inks, Ink.PAPER, 0.8))
        painter.restore()


def _in_sight(sign: Sign, eye: Eye, frame: QRectF) -> Sign:
    """The words of a block in the middle of that part of it which is in sight, if it is partly out of it."""
    if sign.says is not Says.BLOCK:
        return sign
    way = cos(radians(sign.turn)), sin(radians(sign.turn))
    x, y = eye.pixels(sign.at)
    first, last = -sign.room / 2 * eye.scale, sign.room / 2 * eye.scale
    for at, step, low, high in ((x, way[0], frame.left(), frame.right()), (y, way[1], frame.top(), frame.bottom())):
        if abs(step) > _ASLANT:
            ends = sorted(((low + _AWAY - at) / step, (high - _AWAY - at) / step))
            first, last = max(first, ends[0]), min(last, ends[1])
    if first >= last or last - first >= sign.room * eye.scale:
        return sign
    middle = (first + last) / 2
    spot = eye.spot(x + middle * way[0], y + middle * way[1])
    return evolve(sign, at=spot, room=(last - first) / eye.scale)


def _placed(sign: Sign, scale: float, font: QFont | None) -> Sign:
    """The sign itself, or where it stands elsewhere if only there it has room."""
    other = sign.elsewhere
    if font is None or other is None:
        return sign
    metrics = QFontMetricsF(font)
    width = metrics.horizontalAdvance(sign.words[-1])
    has_room = width <= sign.room * scale - 2 * _AWAY
    is_freer = metrics.height() <= other.height * scale and width <= other.room * scale
    return other if not has_room and is_freer else sign


def _name(painter: QPainter, sign: Sign, scale: float, font: QFont | None, ink: QColor, ground: QColor) -> None:
    """Words on a line, cut where something else begins; those of a slim bed are smaller, or left out."""
    away = 0.0 if sign.above else _AWAY
    room = sign.room * scale - 2 * away
    if font is None or room < _LEAST_NAME:
        return
    metrics = QFontMetricsF(font)
    words = next((one for one in sign.words if metrics.horizontalAdvance(one) <= room), sign.words[-1])
    words = metrics.elidedText(words, Qt.TextElideMode.ElideRight, room)
    width, height = metrics.horizontalAdvance(words), metrics.height()
    left = {0: -width / 2, 1: away, -1: -away - width}[sign.side]
    painter.setFont(font)
    top = -height - sign.above if sign.above else -height / 2
    if sign.says is Says.BED or sign.above:
        painter.fillRect(QRectF(left - 2, top + 2, width + 4, height - 3), ground)
    painter.setPen(ink)
    painter.drawText(QPointF(left, top + metrics.ascent()), words)


def _font_of(sign: Sign, usual: float, *, chosen: bool) -> QFont | None:
    """The font of a sign; names of beds have one size in a drawing, by the `usual` pixels across a bed."""
    if sign.says is not Says.BED:
        return drawing_font(13 if sign.says is Says.STRIP else 12, bold=sign.says is Says.STRIP)
    if chosen or usual >= _SLIMMEST:
        return drawing_font(12, bold=True)
    return drawing_font(10) if usual >= _SLIMMEST_NAMED else None


def usual_width(signs: tuple[Sign, ...], scale: float) -> float:
    """How many pixels the median bed measures across."""
    widths = sorted(sign.height * scale for sign in signs if sign.says is Says.BED)
    return widths[len(widths) // 2] if widths else 0.0


def _letter(painter: QPainter, sign: Sign, scale: float, inks: Palette) -> None:
    """A letter on a chip of paper, with the crop's name where there is room for it; bare where the bed is slim."""
    high, room = sign.height * scale, sign.room * scale
    font = drawing_font(13 if high >= 18 else 11 if high >= 12 else 9, bold=True)
    metrics = QFontMetricsF(font)
    words = next((one for one in sign.words if metrics.horizontalAdvance(one) + 12 <= room), None)
    if words is None or high < _SLIMMEST:
        return
    width, height = metrics.horizontalAdvance(words) + 10, min(high - 1, 19.0)
    chip = QRectF(-width / 2, -height / 2, width, height)
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.setBrush(colour(inks, Ink.PAPER))
    painter.drawRoundedRect(chip, 3, 3)
    painter.setFont(font)
    painter.setPen(colour(inks, sign.ink))
    painter.drawText(chip, Qt.AlignmentFlag.AlignCenter, words)
