"""What the canvas shows: tape, strips, captions, selection, and the trial under the hand."""

from datetime import date

from attrs import frozen
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gardenplot.drawing.bed import BedFigure, draw_bed
from gardenplot.drawing.captions import Caption, captions
from gardenplot.drawing.covers import EVERY_LAYER, Layer, over_bed
from gardenplot.drawing.detail import detail_at
from gardenplot.drawing.handles import Handle
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.strips import Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window.canvas_captions import paint_captions
from gardenplot.window.canvas_handles import Held, paint_ground, paint_handles
from gardenplot.window.canvas_names import paint_bed_name, paint_flag
from gardenplot.window.canvas_tape import paint_tape
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.hand_lines import hand_lines, paint_lines
from gardenplot.window.painting import Scale
from gardenplot.window.strip_pictures import StripPictures
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
    layers: frozenset[Layer] = EVERY_LAYER


def paint_scene(
    painter: QPainter, frame: QRect, scene: Scene, pictures: StripPictures, exposed: QRectF | None = None
) -> None:
    """Paint the canvas, or the part of it that is exposed."""
    inks, look = palette(), looks(scene.plan)
    seen = QRectF(frame) if exposed is None else exposed
    painter.fillRect(seen, colour(inks, Ink.PAPER))
    if not scene.plan.beds and scene.strips.ground is None:
        _empty(painter, frame, inks)
        return
    painter.save()
    painter.setClipRect(seen.intersected(QRectF(frame.adjusted(0, TAPE, 0, 0))))
    for strip in scene.strips.lying(seen.top() - scene.top, seen.bottom() - scene.top):
        _strip(painter, frame, scene, strip, Easel(pictures, look, inks))
    if scene.strips.ground is not None:
        paint_ground(painter, frame, _held(scene), inks)
    painter.restore()
    if seen.top() < TAPE:
        paint_tape(painter, frame, scene.strips, scene.left, scene.plan.place.units, inks)
    if scene.trial is not None and scene.hand is not None:
        paint_lines(painter, frame, scene.hand, hand_lines(scene.trial, scene.day, look), inks)


@frozen
class Easel:
    """What strips are painted with: pictures of beds, the looks of plantings, the colours."""

    pictures: StripPictures
    look: dict[str, Look]
    inks: Palette


def _held(scene: Scene) -> Held:
    return Held(scene.strips, scene.left, scene.top, scene.plan.place.units, scene.handle, scene.trial, scene.focused)


def _empty(painter: QPainter, frame: QRect, inks: Palette) -> None:
    painter.setPen(colour(inks, Ink.SECOND))
    painter.setFont(drawing_font(17))
    words = _("No bed yet. Bed ▸ Add bed … makes the first one.")
    painter.drawText(frame, Qt.AlignmentFlag.AlignCenter, words)


def _strip(painter: QPainter, frame: QRect, scene: Scene, strip: Strip, easel: Easel) -> None:
    strips, inks = scene.strips, easel.inks
    sharp = painter.deviceTransform().m11()
    top = round((strip.top + scene.top) * sharp) / sharp
    first, last = (strips.gutter - 10.0 - scene.left), float(frame.width() - scene.left)
    painter.save()
    painter.setClipRect(
        QRectF(strips.gutter - 10, TAPE, frame.width(), frame.height()), Qt.ClipOperation.IntersectClip
    )
    painter.translate(scene.left, top)
    scale = Scale(strips.along, strips.across, max(0.0, first / strips.along), last / strips.along)
    easel.pictures.paint(painter, _figure(scene, strip, easel.look), scale, strips.headroom, inks)
    _selection(painter, scene, strip, inks)
    _spot(painter, scene, strip, inks)
    if strips.has_captions:
        dragged = scene.trial.planting if scene.trial else None
        shown = tuple(one for one in _captions(scene, strip, easel.look) if one.planting != dragged)
        paint_captions(painter, shown, strips.along, strip.height + 9, (max(0.0, first + 10), last), inks)
        if scene.left > strips.gutter - 10:
            paint_flag(painter, inks)
    if scene.bed == strip.bed and scene.planting is None:
        paint_handles(painter, strip.laid.bed, _held(scene), inks)
    painter.restore()
    selected = scene.bed == strip.bed and scene.planting is None
    paint_bed_name(painter, strip, QPointF(0, top), strips, scene.plan.place.units, inks, selected=selected)


def _figure(scene: Scene, strip: Strip, look: dict[str, Look]) -> BedFigure:
    detail = detail_at(strip.laid, scene.strips.across)
    over = over_bed(scene.plan, strip.bed, scene.day, scene.layers)
    return draw_bed(strip.laid, scene.day, look, scene.plan.place.units, detail, over)


def _captions(scene: Scene, strip: Strip, look: dict[str, Look]) -> tuple[Caption, ...]:
    return captions(scene.plan, strip.laid, scene.day, look)


def _selection(painter: QPainter, scene: Scene, strip: Strip, inks: Palette) -> None:
    chosen = scene.trial.planting if scene.trial else scene.planting
    layout = next((one for one in strip.laid.layouts if one.planting == chosen), None)
    if layout is None:
        return
    left, right = layout.start / MM * scene.strips.along, layout.end / MM * scene.strips.along
    accent = colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(QRectF(left - 2, -3, right - left + 4, strip.height + 6), 2, 2)
    painter.setPen(QPen(accent, 1.5))
    painter.setBrush(colour(inks, Ink.PAPER))
    for x in (left, right):
        painter.drawRoundedRect(QRectF(x - 4, strip.height / 2 - 8, 8, 16), 2, 2)
    if scene.focused and scene.trial is None:
        painter.setPen(QPen(accent, 1, Qt.PenStyle.DotLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(QRectF(left - 6, -7, right - left + 12, strip.height + 14), 3, 3)


def _spot(painter: QPainter, scene: Scene, strip: Strip, inks: Palette) -> None:
    """The stretch that a finding is about, bracketed above the bed."""
    if scene.spot is None or scene.spot[0] != strip.bed:
        return
    left, right = (at / MM * scene.strips.along for at in scene.spot[1:])
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2.5))
    painter.drawLine(QPointF(left, -8), QPointF(right, -8))
    for x in (left, right):
        painter.drawLine(QPointF(x, -8), QPointF(x, strip.height + 8))
