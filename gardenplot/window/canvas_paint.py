"""What the canvas shows: tape, strips, captions, selection, and the trial under the hand."""

from collections.abc import Iterator
from datetime import date
from functools import reduce
from typing import TYPE_CHECKING, NamedTuple

from attrs import frozen
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gardenplot.drawing.captions import Caption, captions
from gardenplot.drawing.covers import EVERY_LAYER, Layer
from gardenplot.drawing.handles import Handle
from gardenplot.drawing.letters import Look, looks_in_hand
from gardenplot.drawing.spacings import Dimension, spacings
from gardenplot.drawing.strips import Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.layout import lay_out_bed, standing
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window import canvas_handles, hand_lines
from gardenplot.window.canvas_band import Band
from gardenplot.window.canvas_captions import caption_lines, paint_captions
from gardenplot.window.canvas_drawn import Drawn
from gardenplot.window.canvas_faults import paint_faults
from gardenplot.window.canvas_names import paint_bed_name, paint_flag, paint_zero
from gardenplot.window.canvas_selection import marked_in, paint_over, paint_selection
from gardenplot.window.canvas_spacing import paint_spacings
from gardenplot.window.canvas_tape import paint_tape
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.hand_box import Lines, box_of, paint_lines, seen_of
from gardenplot.window.painting import Scale
from gardenplot.window.strip_pictures import StripPictures, reach_above
from gardenplot.window.theme import colour, palette

if TYPE_CHECKING:
    from gardenplot.gestures.stage import Trial


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
    trial: "Trial | None" = None
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
    painter: QPainter, frame: QRect, scene: Scene, pictures: StripPictures, exposed: tuple[QRectF, ...] = ()
) -> None:
    """Paint the canvas, or the parts of it that are exposed."""
    inks, look = palette(), scene.look
    seen = reduce(QRectF.united, exposed, QRectF()) if exposed else QRectF(frame)
    parts = () if any(part.contains(QRectF(frame)) for part in exposed) else exposed
    painter.fillRect(seen, colour(inks, Ink.PAPER))
    if not scene.plan.beds and scene.strips.ground is None:
        return
    painter.save()
    painter.setClipRect(seen.intersected(QRectF(frame.adjusted(0, TAPE, 0, 0))))
    lying = _lying(scene, seen)
    pictures.keep({one.laid.bed.id for one in _lying(scene, QRectF(frame))})
    # Where captions lie between them, beds are far enough apart for the names of all.
    named = frozenset(one.bed for one in lying) if scene.strips.has_captions else scene.strips.named(scene.bed)
    easel = Easel(pictures, look, inks, parts, painter.deviceTransform().m11())
    pictures.drawn.follow(scene)
    beds = [Placed(strip, pictures.drawn.of(scene, strip, look), easel.top_of(scene, strip)) for strip in lying]
    _soil(painter, frame, scene, beds, easel)
    has_captions = scene.strips.has_captions
    touched = frozenset[str | None]() if has_captions else _touched(scene)
    for one in beds:
        bed = one.strip.laid.bed.id
        if has_captions or bed in touched or one.drawn.faults:
            _over(painter, frame, scene, one, easel)
        if bed in named:
            _name(painter, scene, one, easel)
    if not scene.strips.has_captions:
        paint_zero(painter, scene.strips, QPointF(scene.left, scene.top), inks)
    if scene.strips.ground is not None:
        canvas_handles.paint_ground(painter, frame, _held(scene), inks)
    paint_over(painter, frame, scene, inks)
    painter.restore()
    if seen.top() < TAPE:
        paint_tape(painter, frame, scene.strips, scene.left, scene.plan.place.units, inks)
    lines = lines_under(scene)
    if lines:
        paint_lines(painter, frame, lines_box(scene, frame, lines), lines, inks)


def make_ready(sight: QRectF, frame: QRect, scene: Scene, pictures: StripPictures, sharp: float) -> Iterator[None]:
    """Make what a part of the canvas is painted of, step by step; `sharp` as of an easel."""
    look, scale, room = scene.look, _scale(frame, scene), scene.strips.headroom
    yield
    for strip in _lying(scene, sight):
        pictures.drawn.follow(scene)
        figure = pictures.drawn.of(scene, strip, look).figure
        yield
        pictures.of(figure, scale, room, palette(), sharp)
        yield


def lines_under(scene: Scene) -> Lines:
    """The lines under the hand; none where it tries nothing."""
    if scene.trial is None or scene.hand is None:
        return ()
    return hand_lines.hand_lines(scene.before or scene.plan, scene.trial, scene.day)


def lines_box(scene: Scene, frame: QRect, lines: Lines) -> QRectF:
    """Where these lines stand."""
    bed = scene.trial.bed if scene.trial is not None else None
    return box_of(frame, scene.hand or QPointF(), lines, seen_of(scene.strips, scene.top, (bed,)))


_FRAMES_REACH = 8
"""Pixels by which what is selected stands out of its strip."""
_RIM = 10.0
"""Pixels left of a strip's head in which its rim is seen."""
_NEAR = 12
"""Pixels round a strip in which lies what is painted over it, all but its flag, its captions and its name."""
_WRITTEN, _TALL = 50, 56
"""Pixels below a strip at which its captions end, and below its top at which the name of a low one ends."""


def reach_of(strips: Strips) -> tuple[float, float]:
    """How many pixels above a strip and below it anything lies that belongs to it."""
    return max(strips.headroom, _FRAMES_REACH), max(strips.captions, _FRAMES_REACH)


def _lying(scene: Scene, seen: QRectF) -> tuple[Strip, ...]:
    """The strips of which something may lie in a part of the canvas."""
    strips = scene.strips
    above, below = (
        reach - usual for reach, usual in zip(reach_of(strips), (strips.headroom, strips.captions), strict=True)
    )
    return strips.lying(seen.top() - scene.top - below, seen.bottom() - scene.top + above)


@frozen
class Easel:
    """What strips are painted with: pictures of beds, looks of plantings, colours, pixels of the screen to a pixel.

    What lies in none of the `parts` of the canvas is seen by nobody, so that it need not be painted; without any, all
    of the canvas is seen.
    """

    pictures: StripPictures
    look: dict[str, Look]
    inks: Palette
    parts: tuple[QRectF, ...]
    sharp: float

    def is_seen(self, left: float, top: float, right: float, bottom: float) -> bool:
        """Whether anything between these edges is seen."""
        if not self.parts:
            return True
        frame = QRectF(QPointF(left, top), QPointF(right, bottom))
        return any(part.intersects(frame) for part in self.parts)

    def top_of(self, scene: Scene, strip: Strip) -> float:
        """The top of a strip on a whole pixel of the screen."""
        return round((strip.top + scene.top) * self.sharp) / self.sharp


class Placed(NamedTuple):
    """A strip, its bed as it is drawn, and the top of it on the canvas."""

    strip: Strip
    drawn: Drawn
    top: float


def _touched(scene: Scene) -> frozenset[str | None]:
    """The beds that are chosen, in which something is chosen or pushed, or that a finding is about."""
    marked = marked_in(scene)
    beds = (one.bed for one in scene.plan.plantings if one.id in marked) if marked else ()
    return frozenset((*beds, scene.bed, scene.spot[0] if scene.spot else None))


def _held(scene: Scene) -> "canvas_handles.Held":
    return canvas_handles.Held(
        scene.strips, scene.left, scene.top, scene.plan.place.units, scene.handle, scene.trial, scene.focused
    )


def _begin(painter: QPainter, frame: QRect, scene: Scene, top: float) -> tuple[float, float]:
    """Put the painter to the head of a strip's base line; what of it is in sight, from and to in pixels."""
    painter.save()
    _clip(painter, frame, scene)
    painter.translate(scene.left, top)
    return _sight(frame, scene)


def _clip(painter: QPainter, frame: QRect, scene: Scene) -> None:
    """Keep the painter to where strips lie."""
    lie = QRectF(scene.strips.gutter - _RIM, TAPE, frame.width(), frame.height())
    painter.setClipRect(lie, Qt.ClipOperation.IntersectClip)


def _sight(frame: QRect, scene: Scene) -> tuple[float, float]:
    """What of strips is in sight, from and to in pixels from the head."""
    return scene.strips.gutter - _RIM - scene.left, float(frame.width() - scene.left)


def _scale(frame: QRect, scene: Scene) -> Scale:
    """The scale of strips, and what of them is in sight."""
    (first, last), along = _sight(frame, scene), scene.strips.along
    return Scale(along, scene.strips.across, max(0.0, first / along), last / along)


def _soil(painter: QPainter, frame: QRect, scene: Scene, beds: list[Placed], easel: Easel) -> None:
    """The beds themselves with what stands in them."""
    across, headroom = scene.strips.across, scene.strips.headroom

    def is_in_sight(one: Placed) -> bool:
        reach = reach_above(one.drawn.figure, across, headroom) + 1
        return easel.is_seen(0, one.top - reach, frame.width(), one.top + one.strip.height + reach)

    painter.save()
    _clip(painter, frame, scene)
    seen = [(one.drawn.figure, one.top) for one in beds if not easel.parts or is_in_sight(one)]
    easel.pictures.paint(painter, seen, scene.left, _scale(frame, scene), headroom, easel.inks)
    painter.restore()


def _over(painter: QPainter, frame: QRect, scene: Scene, one: Placed, easel: Easel) -> None:
    """What lies over a bed: where beds lie close, it reaches over the next one."""
    strips, (strip, _drawn, top) = scene.strips, one
    first, last = _begin(painter, frame, scene, top)
    sight = QRectF(QPointF(first, TAPE - top), QPointF(last, frame.height() - top))
    if easel.is_seen(0, top - _NEAR, frame.width(), top + strip.height + _NEAR):
        _near(painter, scene, one, sight, easel.inks)
    if strips.has_captions:
        foot = top + strip.height
        # Captions that would stand below what can be seen lie on the bed instead.
        head = foot if foot + strips.captions <= frame.height() else top
        if easel.is_seen(0, head, frame.width(), foot + _WRITTEN):
            _written(painter, scene, strip, sight, easel)
        flies = scene.left > strips.gutter - _RIM
        if flies and easel.is_seen(scene.left - _NEAR, top - strips.headroom, scene.left + _NEAR, top + _NEAR):
            paint_flag(painter, easel.inks)
    if _is_selected(scene, strip):
        canvas_handles.paint_handles(painter, strip.laid.bed, _held(scene), easel.inks)
    painter.restore()


def _name(painter: QPainter, scene: Scene, one: Placed, easel: Easel) -> None:
    """The name of a bed, left of it."""
    strips, (strip, _drawn, top) = scene.strips, one
    if easel.is_seen(0, top - _NEAR, strips.gutter, top + max(strip.height, _TALL) + _NEAR):
        at, units, selected = QPointF(0, top), scene.plan.place.units, _is_selected(scene, strip)
        paint_bed_name(painter, strip, at, strips, units, easel.inks, selected=selected, least=TAPE)


def _is_selected(scene: Scene, strip: Strip) -> bool:
    """Whether a bed is chosen itself, and nothing that stands in it."""
    return scene.bed == strip.bed and scene.planting is None


def _near(painter: QPainter, scene: Scene, one: Placed, sight: QRectF, inks: Palette) -> None:
    """What lies on a bed and close round it."""
    paint_selection(painter, scene, one.strip, inks)
    _spot(painter, scene, one.strip, inks)
    paint_faults(painter, scene, one.strip, one.drawn.faults, inks)
    if scene.strips.has_captions:
        paint_spacings(painter, _spacings(scene, one.strip, sight), scene.strips.zoom, inks)


def _written(painter: QPainter, scene: Scene, strip: Strip, sight: QRectF, easel: Easel) -> None:
    """The captions of a bed."""
    room = QRectF(sight)
    room.setLeft(max(0.0, sight.left() + 10))
    shown = _captions(scene, strip, easel.look)
    lines = caption_lines(_rested(scene, strip, easel.look) if scene.trial else shown, scene.strips.along, room)
    paint_captions(painter, shown, scene.strips.along, strip.height + 9, room, lines, easel.inks)


def _captions(scene: Scene, strip: Strip, look: dict[str, Look]) -> tuple[Caption, ...]:
    """What is written under a strip; of the block in the hand the lines there tell."""
    dragged = scene.trial.planting if scene.trial else None
    shown = captions(scene.plan, strip.laid, scene.day, look)
    return tuple(one for one in shown if one.planting != dragged)


def _rested(scene: Scene, strip: Strip, look: dict[str, Look]) -> tuple[Caption, ...]:
    """What was written under it before the hand took hold, in lines that are kept until it lets go."""
    plan, bed_id = scene.before or scene.plan, strip.bed
    known = next((bed for bed in plan.beds if bed.id == bed_id), None)
    return captions(plan, lay_out_bed(plan, known), scene.day, look) if known is not None else ()


def _spacings(scene: Scene, strip: Strip, sight: QRectF) -> tuple[Dimension, ...]:
    """The spacings dimensioned in a bed, of which so many pixels are in sight."""
    strips, units = scene.strips, scene.plan.place.units
    along = sight.left() / strips.along * MM, sight.right() / strips.along * MM
    beside = sight.top() / strips.across * MM, sight.bottom() / strips.across * MM
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
