"""The ground painted: the peg and its lines, tunnels, paths, beds, names, what is chosen, north and scale."""

from collections.abc import Iterable, Sequence
from datetime import date
from functools import cached_property

from attrs import frozen
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPixmap, QPolygonF

from gardenplot.drawing.covers import EVERY_LAYER, Layer
from gardenplot.drawing.ground import GroundBed, GroundFigure, bed_marks
from gardenplot.drawing.ground_placing import Corners
from gardenplot.drawing.ground_under import Eye, handle_at
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.marks import Mark
from gardenplot.drawing.style import Ink, Palette
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.units.figures import span
from gardenplot.window.ground_beside import kept_free, paint_beside
from gardenplot.window.ground_signs import paint_signs
from gardenplot.window.lettering import lettering, write
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour, drawing_font, palette
from gardenplot.words import _

_SMALL = 12
_BEYOND = 24.0
"""Pixels by which the lines through the peg reach beyond all that lies on the ground."""


@frozen(slots=False)
class GroundScene:
    """All that the view of the ground shows at one moment; `turning` is whether the hand turns the chosen beds.

    The first of the chosen beds leads: it has the flag, the distances and the handle.
    """

    plan: Plan
    figure: GroundFigure
    eye: Eye
    day: date | None
    beds: tuple[str, ...]
    planting: str | None
    focused: bool = False
    turning: bool = False
    layers: frozenset[Layer] = EVERY_LAYER

    @cached_property
    def _marks(self) -> dict[str, tuple[Mark, ...]]:
        """The marks of beds as far as they were asked for."""
        return {}

    @cached_property
    def _look(self) -> dict[str, Look]:
        return looks(self.plan)

    def marks_of(self, one: GroundBed) -> tuple[Mark, ...]:
        """The marks of a bed in its own frame."""
        if one.bed not in self._marks:
            self._marks[one.bed] = bed_marks(self.plan, self._look, one, self.day, self.eye.scale, self.layers)
        return self._marks[one.bed]

    @property
    def chosen(self) -> tuple[GroundBed, ...]:
        """The chosen beds as they lie, the one that leads first."""
        found = (self.figure.bed_of(bed) for bed in self.beds)
        return tuple(one for one in found if one is not None)

    @property
    def lead(self) -> GroundBed | None:
        """The chosen bed that leads."""
        return next(iter(self.chosen), None)


def paint_empty(painter: QPainter, frame: QRectF) -> None:
    """Paint the view of a plan in which nothing lies on the ground."""
    inks = palette()
    painter.fillRect(frame, colour(inks, Ink.PAPER))
    painter.setPen(colour(inks, Ink.SECOND))
    painter.setFont(drawing_font(17))
    painter.drawText(frame, Qt.AlignmentFlag.AlignCenter, _("No bed yet. Bed ▸ Add bed … makes the first one."))


def paint_ground(
    painter: QPainter, frame: QRectF, scene: GroundScene, still: QPixmap, *, only: tuple[str, ...] | None = None
) -> None:
    """Paint upon `still`, which shows all but the chosen beds, these and the words, or those of some beds only."""
    inks = palette()
    painter.drawPixmap(frame.topLeft(), still)
    chosen = scene.chosen
    if chosen:
        _distances(painter, chosen[0], scene, inks)
    for one in reversed(chosen):
        _bed(painter, one, scene, inks)
    paint_unplaced(painter, (_polygon(one, scene.eye) for one in chosen if not one.is_placed))
    _marks(painter, scene.figure.over, scene, inks)
    _signs(painter, frame, scene, only=only)
    _outlined(painter, chosen, scene.eye, inks)
    if chosen:
        _lead(painter, chosen[0], scene, inks)
    paint_beside(painter, frame, scene.plan, scene.eye, inks)


def paint_still(painter: QPainter, frame: QRectF, scene: GroundScene, others: Sequence[GroundBed]) -> None:
    """Paint what stays while the chosen beds are moved: peg, tunnels, paths and all other beds in sight."""
    inks = palette()
    painter.fillRect(frame, colour(inks, Ink.PAPER))
    _peg(painter, scene, inks)
    _marks(painter, scene.figure.under, scene, inks)
    for one in others:
        _bed(painter, one, scene, inks)


def shown_still(frame: QRectF, scene: GroundScene, others: Sequence[GroundBed]) -> tuple[object, ...]:
    """All that `paint_still` shows, to see whether a picture of it still holds."""
    beds = tuple((one.frame, scene.marks_of(one)) for one in others)
    return frame, scene.eye, scene.figure.reach, scene.figure.under, beds


def unplaced(scene: GroundScene, others: Sequence[GroundBed]) -> tuple[QPolygonF, ...]:
    """The outlines of those beds that have no place yet."""
    return tuple(_polygon(one, scene.eye) for one in others if not one.is_placed)


def paint_unplaced(painter: QPainter, outlines: Iterable[QPolygonF]) -> None:
    """Dash the outlines of beds that have no place yet."""
    painter.setPen(QPen(colour(palette(), Ink.SECOND), 1.2, Qt.PenStyle.DashLine))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for outline in outlines:
        painter.drawPolygon(outline)


def others_in(frame: QRectF, scene: GroundScene) -> tuple[GroundBed, ...]:
    """The beds in sight that are not chosen."""
    beds = (one for one in scene.figure.beds if one.bed not in scene.beds)
    return tuple(one for one in beds if _is_seen(one, frame, scene.eye))


def paint_names(painter: QPainter, frame: QRectF, scene: GroundScene) -> None:
    """Paint the words that stay while the hand moves the chosen beds."""
    _signs(painter, frame, scene, without=scene.beds)


def _signs(
    painter: QPainter,
    frame: QRectF,
    scene: GroundScene,
    *,
    only: tuple[str, ...] | None = None,
    without: tuple[str, ...] = (),
) -> None:
    hindrances, kept = hindrances_of(scene), kept_free(frame, scene.plan, scene.eye)
    paint_signs(
        painter, frame, scene.figure, scene.eye, palette(), scene.beds,
        hindrances=hindrances, kept=kept, only=only, without=without,
    )  # fmt: skip


def hindrances_of(scene: GroundScene) -> tuple[Corners, ...]:
    """What names keep clear of besides beds and walls: the peg, flag, handle and distances of the leading bed."""
    found = [QRectF(-8, -8, 16, 16), QRectF(-40, -20, 32, 16)]
    chosen, peg = scene.lead, QPointF(scene.eye.left, scene.eye.top)
    if chosen is not None:
        head = _head(chosen, scene)
        handle = QPointF(*handle_at(chosen, scene.eye))
        marks = [QRectF(head.x() - 2, head.y() - 20, 13, 20), QRectF(handle.x() - 10, handle.y() - 10, 20, 20)]
        marks += (_box_of(at, words) for at, words in _distance_words(chosen, scene))
        found += (mark.translated(-peg) for mark in marks)
    return tuple(((one.left(), one.top()), (one.right(), one.top()), (one.right(), one.bottom()),
                  (one.left(), one.bottom())) for one in found)  # fmt: skip


def _marks(painter: QPainter, marks: tuple[Mark, ...], scene: GroundScene, inks: Palette) -> None:
    """Marks in mm on the ground."""
    painter.save()
    painter.translate(scene.eye.left, scene.eye.top)
    paint(painter, marks, _scale(scene), inks)
    painter.restore()


def _scale(scene: GroundScene) -> Scale:
    """All of the ground is in sight as far as marks go; what is not lies outside the painter's frame."""
    return Scale(scene.eye.scale, scene.eye.scale, 0.0, 1e9)


def _peg(painter: QPainter, scene: GroundScene, inks: Palette) -> None:
    """The peg that the ground is measured from, an open circle, and the lines through it."""
    at = QPointF(scene.eye.left, scene.eye.top)
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    left, top = scene.eye.pixels(scene.figure.reach[:2])
    right, bottom = scene.eye.pixels(scene.figure.reach[2:])
    reach_left, reach_up = (at.x() - left and _BEYOND), (at.y() - top and _BEYOND)
    painter.drawLine(QPointF(left - reach_left, at.y()), QPointF(right + _BEYOND, at.y()))
    painter.drawLine(QPointF(at.x(), top - reach_up), QPointF(at.x(), bottom + _BEYOND))
    painter.setPen(QPen(colour(inks, Ink.INK), 1.4))
    painter.setBrush(colour(inks, Ink.PAPER))
    painter.drawEllipse(at, 4, 4)
    painter.setFont(drawing_font(12))
    painter.setPen(colour(inks, Ink.SECOND))
    frame = QRectF(at.x() - 108, at.y() - 20, 100, 16)
    painter.drawText(frame, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, _("peg"))


def _polygon(one: GroundBed, eye: Eye) -> QPolygonF:
    return QPolygonF([QPointF(*eye.pixels(corner)) for corner in one.corners])


def _is_seen(one: GroundBed, frame: QRectF, eye: Eye) -> bool:
    return _polygon(one, eye).boundingRect().adjusted(-8, -8, 8, 8).intersects(frame)


def _bed(painter: QPainter, one: GroundBed, scene: GroundScene, inks: Palette) -> None:
    """A bed in its own frame, as on its strip but true to scale both ways."""
    painter.save()
    painter.translate(*scene.eye.pixels((one.frame.x / MM, one.frame.y / MM)))
    painter.rotate(float(one.frame.turn))
    scale = scene.eye.scale
    paint(painter, scene.marks_of(one), Scale(scale, scale, 0.0, one.laid.bed.length.nm / MM), inks)
    painter.setPen(QPen(colour(inks, Ink.INK), 1.2))
    painter.setBrush(colour(inks, Ink.PAPER))
    radius = min(3.0, one.laid.bed.width.nm / MM * scale / 5)
    painter.drawEllipse(QPointF(0, 0), radius, radius)
    painter.restore()


def _outlined(painter: QPainter, chosen: tuple[GroundBed, ...], eye: Eye, inks: Palette) -> None:
    """The outlines of the chosen beds."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
    for one in chosen:
        painter.drawPolygon(_polygon(one, eye))


def _lead(painter: QPainter, one: GroundBed, scene: GroundScene, inks: Palette) -> None:
    """The chosen bed that leads: the flag at its head, what is chosen in it, and the handle that turns it."""
    accent, eye = colour(inks, Ink.ACCENT), scene.eye
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _block(painter, one, scene, inks)
    head = QPointF(*eye.pixels((one.frame.x / MM, one.frame.y / MM)))
    painter.setPen(QPen(accent, 1.6))
    painter.drawLine(head, head - QPointF(0, 20))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    painter.drawPolygon(QPolygonF([head - QPointF(0, 20), head + QPointF(11, -16), head - QPointF(0, 12)]))
    handle = QPointF(*handle_at(one, eye))
    bed = one.laid.bed
    x, y = one.frame.to_ground(bed.length.nm, bed.width.nm / 2)
    painter.setPen(QPen(accent, 1.2))
    painter.drawLine(QPointF(*eye.pixels((x / MM, y / MM))), handle)
    painter.setBrush(accent if scene.turning else colour(inks, Ink.PAPER))
    painter.setPen(QPen(accent, 1.5))
    painter.drawEllipse(handle, 5.5, 5.5)
    if scene.focused:
        painter.setPen(QPen(accent, 1, Qt.PenStyle.DotLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(handle, 9.5, 9.5)


def _block(painter: QPainter, one: GroundBed, scene: GroundScene, inks: Palette) -> None:
    """The chosen planting in its bed."""
    layout = next((each for each in one.laid.layouts if each.planting == scene.planting), None)
    if layout is None:
        return
    width = one.laid.bed.width.nm
    spots = (one.frame.to_ground(x, y) for y, ends in ((0, (0, 1)), (width, (1, 0)))
             for x in ((layout.start, layout.end)[end] for end in ends))  # fmt: skip
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 3))
    painter.drawPolygon(QPolygonF([QPointF(*scene.eye.pixels((x / MM, y / MM))) for x, y in spots]))


def _head(one: GroundBed, scene: GroundScene) -> QPointF:
    return QPointF(*scene.eye.pixels((one.frame.x / MM, one.frame.y / MM)))


def _distance_words(one: GroundBed, scene: GroundScene) -> list[tuple[QPointF, str]]:
    """How far the head's end of the base line lies from the lines through the peg, and where that is written."""
    head, units = _head(one, scene), scene.plan.place.units
    down, across = str(span(one.frame.y, units)), str(span(one.frame.x, units))
    found = [(QPointF(head.x() + 5, scene.eye.top - 5), down)]
    if lettering(across, _SMALL).width + 14 < abs(head.x() - scene.eye.left):
        found.append((QPointF(min(head.x(), scene.eye.left) + 5, head.y() - 5), across))
    return found


def _box_of(at: QPointF, words: str) -> QRectF:
    line = lettering(words, _SMALL)
    return QRectF(at.x() - 2, at.y() - line.ascent, line.width + 4, line.height)


def _distances(painter: QPainter, one: GroundBed, scene: GroundScene, inks: Palette) -> None:
    """The lines from the head's end of the base line to the lines through the peg, and their lengths."""
    head, accent = _head(one, scene), colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 1, Qt.PenStyle.DashLine))
    painter.drawLine(QPointF(scene.eye.left, head.y()), head)
    painter.drawLine(QPointF(head.x(), scene.eye.top), head)
    painter.setPen(accent)
    for at, words in _distance_words(one, scene):
        painter.fillRect(_box_of(at, words), colour(inks, Ink.PAPER, 0.8))
        write(painter, at, words, _SMALL)
