"""What the canvas shows: tape, strips, captions, selection, and the trial under the hand."""

from datetime import date

from attrs import frozen
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gardenplot.drawing.bed import BedFigure, draw_bed
from gardenplot.drawing.captions import Caption, captions
from gardenplot.drawing.covers import EVERY_LAYER, Layer, over_bed
from gardenplot.drawing.detail import Detail, detail_at
from gardenplot.drawing.handles import Handle
from gardenplot.drawing.letters import Look, looks_in_hand
from gardenplot.drawing.spacings import Dimension, spacings
from gardenplot.drawing.strips import Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures.stage import Trial
from gardenplot.layout import lay_out_bed, standing
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window.canvas_band import Band
from gardenplot.window.canvas_captions import caption_lines, paint_captions
from gardenplot.window.canvas_faults import paint_faults
from gardenplot.window.canvas_handles import Held, paint_ground, paint_handles
from gardenplot.window.canvas_names import paint_bed_name, paint_flag, paint_zero
from gardenplot.window.canvas_selection import paint_over, paint_selection
from gardenplot.window.canvas_spacing import paint_spacings
from gardenplot.window.canvas_tape import paint_tape
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.hand_box import Lines, box_of, paint_lines, seen_of
from gardenplot.window.hand_lines import hand_lines
from gardenplot.window.painting import Scale
from gardenplot.window.strip_pictures import StripPictures
from gardenplot.window.theme import colour, palette


@frozen
class Scene:
    """All that the canvas shows at one moment; `left` and `top` are where tape zero and the strips begin.

    While the hand tries something, `plan` is the trial's and `before` the plan that it would change.
    """

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
    layers: frozenset[Layer] = EVERY_LAYER
    before: Plan | None = None

    @property
    def look(self) -> dict[str, Look]:
        """The look of each planting, which no trial changes."""
        return looks_in_hand(self.before or self.plan, self.plan)


def paint_scene(
    painter: QPainter, frame: QRect, scene: Scene, pictures: StripPictures, exposed: QRectF | None = None
) -> None:
    """Paint the canvas, or the part of it that is exposed."""
    inks, look = palette(), scene.look
    seen = QRectF(frame) if exposed is None else exposed
    painter.fillRect(seen, colour(inks, Ink.PAPER))
    if not scene.plan.beds and scene.strips.ground is None:
        return
    painter.save()
    painter.setClipRect(seen.intersected(QRectF(frame.adjusted(0, TAPE, 0, 0))))
    lying = scene.strips.lying(seen.top() - scene.top - FRAMES_REACH, seen.bottom() - scene.top + FRAMES_REACH)
    easel = Easel(pictures, look, inks, scene.strips.named(scene.bed))
    for part in (_soil, _over):
        for strip in lying:
            part(painter, frame, scene, strip, easel)
    if not scene.strips.has_captions:
        paint_zero(painter, scene.strips, QPointF(scene.left, scene.top), inks)
    if scene.strips.ground is not None:
        paint_ground(painter, frame, _held(scene), inks)
    paint_over(painter, frame, scene, inks)
    painter.restore()
    if seen.top() < TAPE:
        paint_tape(painter, frame, scene.strips, scene.left, scene.plan.place.units, inks)
    lines = lines_under(scene)
    if lines:
        paint_lines(painter, frame, lines_box(scene, frame, lines), lines, inks)


def lines_under(scene: Scene) -> Lines:
    """The lines under the hand; none where it tries nothing."""
    if scene.trial is None or scene.hand is None:
        return ()
    return hand_lines(scene.before or scene.plan, scene.trial, scene.day, scene.look)


def lines_box(scene: Scene, frame: QRect, lines: Lines) -> QRectF:
    """Where these lines stand."""
    bed = scene.trial.bed if scene.trial is not None else None
    return box_of(frame, scene.hand or QPointF(), lines, seen_of(scene.strips, scene.top, (bed,)))


FRAMES_REACH = 8
"""Pixels by which what is selected stands out of its strip."""


@frozen
class Easel:
    """What strips are painted with: pictures of beds, the looks of plantings, the colours, whose names find room."""

    pictures: StripPictures
    look: dict[str, Look]
    inks: Palette
    named: frozenset[str]


def _held(scene: Scene) -> Held:
    return Held(scene.strips, scene.left, scene.top, scene.plan.place.units, scene.handle, scene.trial, scene.focused)


def _sharp_top(painter: QPainter, scene: Scene, strip: Strip) -> float:
    """The top of a strip on a whole pixel of the screen."""
    sharp = painter.deviceTransform().m11()
    return round((strip.top + scene.top) * sharp) / sharp


def _begin(painter: QPainter, frame: QRect, scene: Scene, strip: Strip) -> tuple[float, float]:
    """Put the painter to the head of a strip's base line; what of it is in sight, from and to in pixels."""
    gutter = scene.strips.gutter - 10.0
    painter.save()
    painter.setClipRect(QRectF(gutter, TAPE, frame.width(), frame.height()), Qt.ClipOperation.IntersectClip)
    painter.translate(scene.left, _sharp_top(painter, scene, strip))
    return gutter - scene.left, float(frame.width() - scene.left)


def _soil(painter: QPainter, frame: QRect, scene: Scene, strip: Strip, easel: Easel) -> None:
    """The bed itself with what stands in it."""
    strips = scene.strips
    first, last = _begin(painter, frame, scene, strip)
    scale = Scale(strips.along, strips.across, max(0.0, first / strips.along), last / strips.along)
    easel.pictures.paint(painter, _figure(scene, strip, easel.look), scale, strips.headroom, easel.inks)
    painter.restore()


def _over(painter: QPainter, frame: QRect, scene: Scene, strip: Strip, easel: Easel) -> None:
    """What lies over the beds, and their names: where beds lie close, it reaches over the next one."""
    strips, inks = scene.strips, easel.inks
    selected, strip_top = scene.bed == strip.bed and scene.planting is None, _sharp_top(painter, scene, strip)
    first, last = _begin(painter, frame, scene, strip)
    paint_selection(painter, scene, strip, inks)
    _spot(painter, scene, strip, inks)
    paint_faults(painter, scene, strip, inks)
    if strips.has_captions:
        top, bottom = TAPE - strip_top, frame.height() - strip_top
        paint_spacings(painter, _spacings(scene, strip, (first, last), (top, bottom)), strips.zoom, inks)
        sight = QRectF(QPointF(max(0.0, first + 10), top), QPointF(last, bottom))
        shown = _captions(scene, strip, easel.look)
        lines = caption_lines(_rested(scene, strip, easel.look) if scene.trial else shown, strips.along, sight)
        paint_captions(painter, shown, strips.along, strip.height + 9, sight, lines, inks)
        if scene.left > strips.gutter - 10:
            paint_flag(painter, inks)
    if selected:
        paint_handles(painter, strip.laid.bed, _held(scene), inks)
    painter.restore()
    if strip.bed in easel.named:
        at, units = QPointF(0, strip_top), scene.plan.place.units
        paint_bed_name(painter, strip, at, strips, units, inks, selected=selected, least=TAPE)


def _figure(scene: Scene, strip: Strip, look: dict[str, Look]) -> BedFigure:
    told = scene.strips.has_captions
    detail = detail_at(strip.laid, scene.strips.across) if told else Detail.BLOCKS
    over = over_bed(scene.plan, strip.bed, scene.day, scene.layers)
    return draw_bed(strip.laid, scene.day, look, scene.plan.place.units, detail, over)


def _captions(scene: Scene, strip: Strip, look: dict[str, Look]) -> tuple[Caption, ...]:
    """What is written under a strip; of the block in the hand the lines there tell."""
    dragged = scene.trial.planting if scene.trial else None
    shown = captions(scene.plan, strip.laid, scene.day, look)
    return tuple(one for one in shown if one.planting != dragged)


def _rested(scene: Scene, strip: Strip, look: dict[str, Look]) -> tuple[Caption, ...]:
    """What was written under it before the hand took hold, in lines that are kept until it lets go."""
    plan = scene.before or scene.plan
    known = [bed for bed in plan.beds if bed.id == strip.bed]
    return captions(plan, lay_out_bed(plan, known[0]), scene.day, look) if known else ()


def _spacings(
    scene: Scene, strip: Strip, across: tuple[float, float], down: tuple[float, float]
) -> tuple[Dimension, ...]:
    """The spacings dimensioned in a bed, of which so many pixels are in sight."""
    strips, units = scene.strips, scene.plan.place.units
    along = across[0] / strips.along * MM, across[1] / strips.along * MM
    beside = down[0] / strips.across * MM, down[1] / strips.across * MM
    shown = standing(strip.laid, scene.day)
    return tuple(one for layout in shown for one in spacings(layout, strips.zoom, along, beside, units))


def _spot(painter: QPainter, scene: Scene, strip: Strip, inks: Palette) -> None:
    """The stretch that a finding is about, bracketed above the bed."""
    if scene.spot is None or scene.spot[0] != strip.bed:
        return
    left, right = (at / MM * scene.strips.along for at in scene.spot[1:])
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2.5))
    painter.drawLine(QPointF(left, -8), QPointF(right, -8))
    for x in (left, right):
        painter.drawLine(QPointF(x, -8), QPointF(x, strip.height + 8))
