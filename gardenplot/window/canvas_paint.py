"""What the canvas shows: tape, strips, captions, selection, and the trial under the hand."""

from datetime import date

from attrs import frozen
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QPolygonF

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.captions import Caption, captions
from gardenplot.drawing.handles import Handle
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.shape_words import size_words
from gardenplot.drawing.strips import GUTTER, Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.drawing.tape import ticks
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Plan, bed_of
from gardenplot.units import MM
from gardenplot.units.figures import span
from gardenplot.window.canvas_band import Band
from gardenplot.window.canvas_handles import Held, paint_ground, paint_handles
from gardenplot.window.canvas_selection import paint_over, paint_selection
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.hand_lines import hand_lines, paint_lines
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour, drawing_font, palette
from gardenplot.words import _


@frozen
class Scene:
    """All that the canvas shows at one moment; `left` and `top` are where tape zero and the strips begin."""

    plan: Plan
    strips: Strips
    day: date | None
    planting: str | None
    bed: str | None
    left: int
    top: int
    trial: Trial | None = None
    hand: QPointF | None = None
    spot: tuple[str, int, int] | None = None
    handle: Handle | None = None
    focused: bool = False
    others: tuple[str, ...] = ()
    band: Band | None = None


def paint_scene(painter: QPainter, frame: QRect, scene: Scene) -> None:
    """Paint the whole canvas."""
    inks = palette()
    look = looks(scene.plan)
    painter.fillRect(frame, colour(inks, Ink.PAPER))
    if not scene.plan.beds and scene.strips.ground is None:
        _empty(painter, frame, inks)
        return
    painter.save()
    painter.setClipRect(frame.adjusted(0, TAPE, 0, 0))
    for strip in scene.strips.strips:
        top = strip.top + scene.top
        if top + strip.height + 60 > TAPE and top - 40 < frame.bottom():
            _strip(painter, frame, scene, strip, look, inks)
    if scene.strips.ground is not None:
        paint_ground(painter, frame, _held(scene), inks)
    paint_over(painter, scene, inks)
    painter.restore()
    _tape(painter, frame, scene, inks)
    if scene.trial is not None and scene.hand is not None:
        paint_lines(painter, frame, scene.hand, hand_lines(scene.trial, scene.day, look), inks)


def _held(scene: Scene) -> Held:
    return Held(scene.strips, scene.left, scene.top, scene.plan.place.units, scene.handle, scene.trial, scene.focused)


def _empty(painter: QPainter, frame: QRect, inks: Palette) -> None:
    painter.setPen(colour(inks, Ink.SECOND))
    painter.setFont(drawing_font(17))
    words = _("No bed yet. Bed ▸ Add bed … makes the first one.")
    painter.drawText(frame, Qt.AlignmentFlag.AlignCenter, words)


def _strip(painter: QPainter, frame: QRect, scene: Scene, strip: Strip, look: dict[str, Look], inks: Palette) -> None:
    strips, top = scene.strips, strip.top + scene.top
    figure = draw_bed(strip.laid, scene.day, look, scene.plan.place.units)
    first = max(0.0, (GUTTER - scene.left) / strips.along)
    last = (frame.width() - scene.left) / strips.along
    painter.save()
    painter.setClipRect(QRectF(GUTTER - 10, TAPE, frame.width(), frame.height()), Qt.ClipOperation.IntersectClip)
    painter.translate(scene.left, top)
    paint(painter, figure.marks, Scale(strips.along, strips.across, first, last), inks)
    paint_selection(painter, scene, strip, inks)
    _spot(painter, scene, strip, inks)
    dragged = scene.trial.planting if scene.trial else None
    shown = tuple(one for one in captions(scene.plan, strip.laid, scene.day, look) if one.planting != dragged)
    _captions(painter, shown, strip, strips, frame.width() - scene.left, inks)
    if scene.left > GUTTER - 10:
        _flag(painter, inks)
    if scene.bed == strip.bed and scene.planting is None:
        paint_handles(painter, strip.laid.bed, _held(scene), inks)
    painter.restore()
    _bed_name(painter, scene, strip, top, inks)


def _flag(painter: QPainter, inks: Palette) -> None:
    """The flag at the head stake: here the tape's zero lies."""
    accent = colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 1.6))
    painter.drawLine(QPointF(-2, -20), QPointF(-2, 2))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    painter.drawPolygon(QPolygonF([QPointF(-2, -20), QPointF(9, -16), QPointF(-2, -12)]))


def _bed_name(painter: QPainter, scene: Scene, strip: Strip, top: float, inks: Palette) -> None:
    bed, units = bed_of(scene.plan, strip.bed), scene.plan.place.units
    selected = scene.bed == strip.bed and scene.planting is None
    font = drawing_font(14, bold=True)
    painter.setFont(font)
    painter.setPen(colour(inks, Ink.ACCENT if selected else Ink.INK))
    name = QFontMetricsF(font).elidedText(bed.name, Qt.TextElideMode.ElideRight, GUTTER - 28)
    painter.drawText(QPointF(12, top + 16), name)
    painter.setFont(drawing_font(12))
    painter.setPen(colour(inks, Ink.SECOND))
    painter.drawText(QPointF(12, top + 33), size_words(bed, units, span))
    if selected:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
        painter.drawLine(QPointF(4, top), QPointF(4, top + max(strip.height, 36)))


def _spot(painter: QPainter, scene: Scene, strip: Strip, inks: Palette) -> None:
    """The stretch that a finding is about, bracketed above the bed."""
    if scene.spot is None or scene.spot[0] != strip.bed:
        return
    left, right = (at / MM * scene.strips.along for at in scene.spot[1:])
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2.5))
    painter.drawLine(QPointF(left, -8), QPointF(right, -8))
    for x in (left, right):
        painter.drawLine(QPointF(x, -8), QPointF(x, strip.height + 8))


def _captions(
    painter: QPainter, shown: tuple[Caption, ...], strip: Strip, strips: Strips, right: float, inks: Palette
) -> None:
    """Captions in one line where each has room before the next, else in two by turns; `right` is where sight ends."""
    metrics = QFontMetricsF(drawing_font(13))
    starts = [caption.at * strips.along for caption in shown]
    one_line = all(
        metrics.horizontalAdvance(caption.words[0]) + 34 <= after - start
        for caption, start, after in zip(shown, starts, starts[1:], strict=False)
    )
    step = 1 if one_line else 2
    for number, caption in enumerate(shown):
        room = starts[number + step] - starts[number] if number + step < len(starts) else right - starts[number]
        line = 0 if one_line else number % 2
        _caption(painter, caption, QPointF(starts[number], strip.height + 9 + 22 * line), room, inks)


def _caption(painter: QPainter, caption: Caption, at: QPointF, room: float, inks: Palette) -> None:
    bold, plain = drawing_font(12, bold=True), drawing_font(13)
    box = QRectF(at.x(), at.y(), max(18, QFontMetricsF(bold).horizontalAdvance(caption.look.letter) + 10), 18)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(inks, caption.look.ink))
    painter.drawRoundedRect(box, 3, 3)
    painter.setFont(bold)
    painter.setPen(colour(inks, Ink.PAPER))
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, caption.look.letter)
    metrics = QFontMetricsF(plain)
    words = next(one for one in caption.words if metrics.horizontalAdvance(one) + box.width() + 14 <= room or not one)
    painter.setFont(plain)
    painter.setPen(colour(inks, Ink.INK))
    painter.drawText(QPointF(box.right() + 7, box.bottom() - 4), words)


def _tape(painter: QPainter, frame: QRect, scene: Scene, inks: Palette) -> None:
    """The tape: its zero is the open circle, its ticks are the strips' own readings."""
    painter.fillRect(QRect(0, 0, frame.width(), TAPE), colour(inks, Ink.PAPER))
    along, base = scene.strips.along, TAPE - 12.5
    ink, units = colour(inks, Ink.INK), scene.plan.place.units
    painter.setFont(drawing_font(12))
    painter.setPen(colour(inks, Ink.SECOND))
    painter.drawText(QPointF(12, base + 2), _("tape"))
    painter.save()
    painter.setClipRect(QRectF(GUTTER - 10, 0, frame.width(), TAPE))
    longest = scene.strips.longest if scene.strips.ground is None else (frame.width() - scene.left) / along
    end = scene.left + longest * along
    painter.setPen(QPen(ink, 1.2))
    painter.drawLine(QPointF(max(scene.left, GUTTER - 10), base), QPointF(end, base))
    first, last = round((GUTTER - 30 - scene.left) / along * MM), round((frame.width() - scene.left) / along * MM)
    for tick in ticks(first, min(last, round(longest * MM)), units, along):
        x = scene.left + tick.at / MM * along
        painter.drawLine(QPointF(x, base), QPointF(x, base - (9 if tick.words else 4)))
        if tick.words:
            painter.drawText(QRectF(x - 40, base - 27, 80, 16), Qt.AlignmentFlag.AlignCenter, tick.words)
    if scene.left > GUTTER - 10:
        painter.setBrush(colour(inks, Ink.PAPER))
        painter.setPen(QPen(ink, 1.4))
        painter.drawEllipse(QPointF(scene.left, base), 4, 4)
    painter.restore()
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.drawLine(QPointF(0, TAPE - 0.5), QPointF(frame.width(), TAPE - 0.5))
