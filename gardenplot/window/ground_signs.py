"""Words on the ground painted: names of beds, letters of blocks, names of tunnels and paths, shares of slopes."""

from collections.abc import Iterator
from functools import lru_cache
from math import cos, radians, sin

from attrs import evolve, frozen
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from gardenplot.drawing.ground import GroundFigure, Says, Sign, Stand
from gardenplot.drawing.ground_placing import Corners, Taken, box_of, turned_box
from gardenplot.drawing.ground_under import Eye
from gardenplot.drawing.marks import Point
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.theme import colour, drawing_font

_ASLANT = 1e-6
_AWAY = 8.0
"""Pixels between a bed and its name."""
_SLIMMEST = 7.0
"""Pixels across a bed below which its blocks have no letters and names of beds are small."""
_SLIMMEST_NAMED = 4.5
"""Pixels across the median bed below which only the chosen ones are named."""
_LEAST_NAME = 26.0
"""Pixels of room below which a name is left out."""
_SHORTER = (1.0, 0.7, 0.45)
"""To what shares of its width a name is cut where it finds no room whole."""
_ORDER = (Says.STRIP, Says.BED, Says.SLOPE)
"""What is placed before what; chosen beds go first of all."""


@frozen(eq=False)
class Placed:
    """Words as they are written: from where in pixels from the peg, in which font, and the corners round them."""

    sign: Sign
    words: str
    at: Point
    left: float
    top: float
    font: QFont
    corners: Corners


def paint_signs(
    painter: QPainter, frame: QRectF, figure: GroundFigure, eye: Eye, inks: Palette, chosen: tuple[str, ...] = (),
    *, hindrances: tuple[Corners, ...] = (), kept: tuple[QRectF, ...] = (), only: tuple[str, ...] | None = None,
    without: tuple[str, ...] = (),
) -> None:  # fmt: skip
    """Paint all words that are in sight and find room, or those of some beds, or all without those of some beds.

    `hindrances` are what they keep clear of besides the ground's own, in pixels from the peg; `kept` parts of the
    view in which there are no words.
    """
    found = placed_signs(figure.signs, figure.solid, figure.lines, eye.scale, chosen, hindrances)
    for one in found:
        if _is_wanted(one.sign, only, without) and _shows(one.corners, eye, frame, kept):
            ink = Ink.ACCENT if one.sign.says is Says.BED and one.sign.about in chosen else one.sign.ink
            _write(painter, one, eye, colour(inks, ink), inks)
    for sign in figure.signs:
        if sign.says is Says.BLOCK and _is_wanted(sign, only, without):
            _letter(painter, _in_sight(sign, eye, frame), eye, inks, kept)


def _is_wanted(sign: Sign, only: tuple[str, ...] | None, without: tuple[str, ...]) -> bool:
    return (only is None or sign.bed in only) and sign.bed not in without


def _shows(corners: Corners, eye: Eye, frame: QRectF, kept: tuple[QRectF, ...]) -> bool:
    left, top, right, bottom = box_of(corners)
    area = QRectF(left + eye.left, top + eye.top, right - left, bottom - top)
    return area.intersects(frame) and not any(area.intersects(one) for one in kept)


@lru_cache(maxsize=8)
def placed_signs(
    signs: tuple[Sign, ...],
    solid: tuple[Corners, ...],
    lines: tuple[Corners, ...],
    scale: float,
    chosen: tuple[str, ...],
    hindrances: tuple[Corners, ...] = (),
) -> tuple[Placed, ...]:
    """All names and slopes that find room, so that none lies on a bed or on another; blocks have theirs in beds."""
    usual, found = _usual_width(signs, scale), list[Placed]()
    hard = Taken((*(_pixels(one, scale) for one in solid), *hindrances))
    soft = Taken(_pixels(one, scale) for one in lines)
    for sign in sorted((one for one in signs if one.says in _ORDER), key=lambda one: _rank(one, chosen)):
        is_chosen = _rank(sign, chosen) < 0
        font = _font_of(sign, usual, chosen=is_chosen)
        if font is None:
            continue
        best = _free(_tried(sign, scale, font), hard, soft)
        if best is None and is_chosen:
            best = next(_tried(sign, scale, font), None)
        if best is not None:
            hard.take(best.corners)
            found.append(best)
    return tuple(found)


def _free(tried: Iterator[Placed], hard: Taken, soft: Taken) -> Placed | None:
    """The first that is free of all, else the first that is free of what is hard."""
    clear: Placed | None = None
    for one in tried:
        if hard.is_free(one.corners):
            if soft.is_free(one.corners):
                return one
            clear = clear or one
    return clear


def _rank(sign: Sign, chosen: tuple[str, ...]) -> int:
    return -1 if sign.says is Says.BED and sign.about in chosen else _ORDER.index(sign.says)


def _pixels(corners: Corners, scale: float) -> Corners:
    return tuple((x * scale, y * scale) for x, y in corners)


def _tried(sign: Sign, scale: float, font: QFont) -> Iterator[Placed]:
    """A sign wherever it may stand, whole and then cut shorter."""
    metrics = QFontMetricsF(font)
    height, seen = metrics.height(), set[str]()
    for share in _SHORTER:
        for full in sign.words:
            words = full if share == 1.0 else metrics.elidedText(
                full, Qt.TextElideMode.ElideRight, share * metrics.horizontalAdvance(full)
            )  # fmt: skip
            width = metrics.horizontalAdvance(words)
            if words in seen or (share < 1.0 and width < _LEAST_NAME):
                continue
            seen.add(words)
            for stand in sign.stands:
                at = stand.at[0] * scale, stand.at[1] * scale
                left, top = _beside(stand, width, height)
                corners = turned_box(at, sign.turn, left - 2, top + 1, width + 4, height - 2)
                yield Placed(sign, words, at, left, top, font, corners)


def _beside(stand: Stand, width: float, height: float) -> Point:
    """Where words begin, from the place that they stand at."""
    away = 0.0 if stand.above else _AWAY
    left = {0: -width / 2, 1: away, -1: -away - width}[stand.side]
    if stand.above > 0:
        return left, -height - stand.above
    return left, -stand.above if stand.above < 0 else -height / 2


def _write(painter: QPainter, one: Placed, eye: Eye, ink: QColor, inks: Palette) -> None:
    painter.save()
    painter.translate(one.at[0] + eye.left, one.at[1] + eye.top)
    painter.rotate(one.sign.turn)
    metrics = QFontMetricsF(one.font)
    frame = QRectF(one.left - 2, one.top + 2, metrics.horizontalAdvance(one.words) + 4, metrics.height() - 3)
    if one.sign.says is not Says.STRIP:
        painter.fillRect(frame, colour(inks, Ink.PAPER, 0.8))
    painter.setFont(one.font)
    painter.setPen(ink)
    painter.drawText(QPointF(one.left, one.top + metrics.ascent()), one.words)
    painter.restore()


def _in_sight(sign: Sign, eye: Eye, frame: QRectF) -> Sign:
    """The words of a block in the middle of that part of it which is in sight, if it is partly out of it."""
    way = cos(radians(sign.turn)), sin(radians(sign.turn))
    x, y = eye.pixels(sign.stands[0].at)
    first, last = -sign.room / 2 * eye.scale, sign.room / 2 * eye.scale
    for at, step, low, high in ((x, way[0], frame.left(), frame.right()), (y, way[1], frame.top(), frame.bottom())):
        if abs(step) > _ASLANT:
            ends = sorted(((low + _AWAY - at) / step, (high - _AWAY - at) / step))
            first, last = max(first, ends[0]), min(last, ends[1])
    if first >= last or last - first >= sign.room * eye.scale:
        return sign
    middle = (first + last) / 2
    spot = eye.spot(x + middle * way[0], y + middle * way[1])
    return evolve(sign, stands=(Stand(spot, 0),), room=(last - first) / eye.scale)


def _font_of(sign: Sign, usual: float, *, chosen: bool) -> QFont | None:
    """The font of a sign; names of beds have one size in a drawing, by the `usual` pixels across a bed."""
    if sign.says is not Says.BED:
        return drawing_font(13 if sign.says is Says.STRIP else 12, bold=sign.says is Says.STRIP)
    if chosen or usual >= _SLIMMEST:
        return drawing_font(12, bold=True)
    return drawing_font(10) if usual >= _SLIMMEST_NAMED else None


def _usual_width(signs: tuple[Sign, ...], scale: float) -> float:
    """How many pixels the median bed measures across."""
    widths = sorted(sign.height * scale for sign in signs if sign.says is Says.BED)
    return widths[len(widths) // 2] if widths else 0.0


def _letter(painter: QPainter, sign: Sign, eye: Eye, inks: Palette, kept: tuple[QRectF, ...]) -> None:
    """A letter on a chip of paper, with the crop's name where there is room for it; bare where the bed is slim."""
    high, room = sign.height * eye.scale, sign.room * eye.scale
    font = drawing_font(13 if high >= 18 else 11 if high >= 12 else 9, bold=True)
    metrics = QFontMetricsF(font)
    words = next((one for one in sign.words if metrics.horizontalAdvance(one) + 12 <= room), None)
    if words is None or high < _SLIMMEST:
        return
    at = eye.pixels(sign.stands[0].at)
    width, height = metrics.horizontalAdvance(words) + 10, min(high - 1, 19.0)
    chip = QRectF(-width / 2, -height / 2, width, height)
    left, top, right, bottom = box_of(turned_box(at, sign.turn, chip.left(), chip.top(), width, height))
    if any(QRectF(left, top, right - left, bottom - top).intersects(one) for one in kept):
        return
    painter.save()
    painter.translate(*at)
    painter.rotate(sign.turn)
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.setBrush(colour(inks, Ink.PAPER))
    painter.drawRoundedRect(chip, 3, 3)
    painter.setFont(font)
    painter.setPen(colour(inks, sign.ink))
    painter.drawText(chip, Qt.AlignmentFlag.AlignCenter, words)
    painter.restore()
