"""What stands at the head of each strip: the flag at tape zero, the name and size of the bed; of many some names."""

from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from gardenplot.drawing.shape_words import size_words
from gardenplot.drawing.strips import GUTTER, Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.plan import Bed
from gardenplot.units import Units
from gardenplot.units.figures import as_measured
from gardenplot.window.kept_pictures import KeptPictures
from gardenplot.window.lettering import lettering, write
from gardenplot.window.theme import colour, drawing_font

_LEFT, _AROUND = 12.0, 28.0
"""Pixels left of a name, and left and right of it together."""
_WIDEST, _WIDEST_SHARE = 240.0, 0.3
"""The widest gutter in pixels and as a share of the canvas."""
_TALL = 56.0
"""Pixels that a name in two lines and a size take."""
_TICK = 6.0
"""The length in pixels of the tick between a name and its bed, where beds lie close."""
_NAME_PX, _CLOSE_PX, _SIZE_PX = 14, 12, 12
_CLOSE_TALL = 20.0
"""Pixels that a name in one line takes."""
_KEPT = KeptPictures(512)


def paint_flag(painter: QPainter, inks: Palette) -> None:
    """The flag at the head stake: here the tape's zero lies."""
    accent = colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 1.6))
    painter.drawLine(QPointF(-2, -20), QPointF(-2, 2))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    painter.drawPolygon(QPolygonF([QPointF(-2, -20), QPointF(9, -16), QPointF(-2, -12)]))


def paint_zero(painter: QPainter, strips: Strips, at: QPointF, inks: Palette) -> None:
    """One line at the tape's zero past all beds, where these lie too close for a flag each."""
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.6))
    painter.drawLine(at - QPointF(2, 0), at + QPointF(-2, strips.height))


def paint_bed_name(
    painter: QPainter,
    strip: Strip,
    at: QPointF,
    strips: Strips,
    units: Units,
    inks: Palette,
    *,
    selected: bool,
    least: float = 0.0,
) -> None:
    """The name left of a bed and below it the size; where beds lie close, the name alone with a tick at its bed.

    Beside a bed that begins above the height `least` in pixels, they stay as far down as that while the bed reaches.
    """
    bed, close = strip.laid.bed, not strips.has_captions
    if selected:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
        painter.drawLine(at + QPointF(4, 0), at + QPointF(4, max(strip.height, 4 if close else 36)))
    ink = inks[Ink.ACCENT if selected else Ink.INK]
    if close:
        (name,) = name_lines(bed.name, strips.gutter, close=True)
        frame = QRectF(at.x(), at.y() + (strip.height - _CLOSE_TALL) / 2, strips.gutter, _CLOSE_TALL)
        _KEPT.show(painter, frame, _paint_close, name, strips.gutter, ink)
        return
    at += QPointF(_LEFT, max(0.0, min(least - at.y(), strip.height - _TALL)))
    names, size = name_lines(bed.name, strips.gutter), _size(bed, units)
    wide = max(lettering(size, _SIZE_PX).width, *(lettering(one, _NAME_PX, bold=True).width for one in names))
    frame = QRectF(at.x(), at.y(), wide + 1, _TALL)
    _KEPT.show(painter, frame, _paint_name, names, size, ink, inks[Ink.SECOND])


def _paint_close(painter: QPainter, name: str, gutter: int, ink: str) -> None:
    """Paint a name in one line, and a tick at its bed."""
    painter.setPen(QColor(ink))
    middle = _CLOSE_TALL / 2
    write(painter, QPointF(_LEFT, middle + 4), name, _CLOSE_PX, bold=True)
    painter.drawLine(QPointF(gutter - _TICK - 4, middle), QPointF(gutter - 4, middle))


def _paint_name(painter: QPainter, names: tuple[str, ...], size: str, ink: str, quiet: str) -> None:
    """Paint a name in its lines, and the size below."""
    painter.setPen(QColor(ink))
    for number, line in enumerate(names, 1):
        write(painter, QPointF(0, 16 * number), line, _NAME_PX, bold=True)
    painter.setPen(QColor(quiet))
    write(painter, QPointF(0, 16 * len(names) + 17), size, _SIZE_PX)


def gutter_for(beds: tuple[Bed, ...], units: Units, width: float) -> int:
    """How wide a gutter the names and sizes of beds need, at most a share of the width of all."""
    names = (lettering(bed.name, _NAME_PX, bold=True).width for bed in beds)
    sizes = (lettering(_size(bed, units), _SIZE_PX).width for bed in beds)
    widest = max((*names, *sizes), default=0.0) + _AROUND
    return round(max(GUTTER, min(widest, _WIDEST, _WIDEST_SHARE * width)))


@lru_cache(maxsize=1024)
def name_lines(name: str, gutter: int, *, close: bool = False) -> tuple[str, ...]:
    """A name in two lines at most, or in one where beds lie close; where it finds no room it ends in "…"."""
    px = _CLOSE_PX if close else _NAME_PX
    metrics, room, first = QFontMetricsF(drawing_font(px, bold=True)), gutter - _AROUND, ""
    words = name.split(" ")
    while not close and words and metrics.horizontalAdvance(" ".join((first, words[0])).strip()) <= room:
        first = " ".join((first, words.pop(0))).strip()
    rest = metrics.elidedText(" ".join(words), Qt.TextElideMode.ElideRight, room)
    return tuple(line for line in (first, rest) if line) or ("",)


def is_cut(name: str, strips: Strips) -> bool:
    """Whether a name is not written whole left of its bed."""
    return " ".join(name_lines(name, strips.gutter, close=not strips.has_captions)) != " ".join(name.split())


@lru_cache(maxsize=1024)
def _size(bed: Bed, units: Units) -> str:
    return size_words(bed, units, as_measured)
